// Since when does a line stand that somebody stops only now? Pure: floor and moment in, an offer for that person out.

import { buildingOn } from '../../../shared/floor/building.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { lineTold } from '../../../shared/floor/told-states.ts';
import { stoodFrom } from '../../../shared/forecast/counting.ts';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { lastCountMs, measuringTime, runPace } from '../../../shared/outlook/run-pace.ts';

/** The last panel and one cycle, ms since 1970; null where counts are not missed, or the line does not run. */
export function stoodOffer(floor: FloorState, line: string, nowMs: number): number | null {
  const run = buildingOn(floor, line);
  if (run?.phase !== 'running') return null;
  const calendar = measuringTime(lineCalendar(floor, line, nowMs), run, {
    nowMs,
    told: lineTold(floor, run, nowMs),
  });
  const panelSeconds = runPace(run, calendar).seconds ?? run.panelSeconds;
  return stoodFrom({ nowMs, lastMs: lastCountMs(run), panelSeconds, calendar });
}
