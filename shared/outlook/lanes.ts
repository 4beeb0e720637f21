// What do the other lanes of a conveyor take from a slot meanwhile? A lane's run-out is foretold in its own panels: each of them goes with as many of
// the other lanes' as are built in its time, until those have built all that they want.
// Method: for constant paces what is left is a straight line with a bend where a lane's run ends (`forecast/beside.ts`), for the running reel and
// for all that wait behind it. Refused: a common run-out for the conveyor, since each lane stops, ends and changes over by itself. A lane that stands
// takes nothing: the next look after it goes on says so.

import { panelsToGo } from '../floor/building.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import { runsBuilding } from '../floor/lanes.ts';
import { type Usage, usageOf } from '../floor/remaining.ts';
import type { FloorState, Run } from '../floor/state.ts';
import { lineTold } from '../floor/told-states.ts';
import { perPanelOf } from '../floor/wanted.ts';
import type { TakenBeside } from '../forecast/beside.ts';
import type { WorkingTime } from '../forecast/working-time.ts';
import { measuringTime, runPace } from './run-pace.ts';

/** A lane that builds beside, with its pace. */
export interface LaneRun {
  readonly run: Run;
  readonly panelSeconds: number;
  readonly panelsLeft: number;
}

/** What a lane takes from a slot: placements a panel, a panel every so many seconds, so many panels more. */
export interface LaneUse {
  readonly perPanel: number;
  readonly panelSeconds: number;
  readonly panelsLeft: number;
}

/** What a slot gives on the panels to come, and how many those are. */
export type ToUse = (wanted: SetupSlot) => {
  readonly usage: Usage;
  readonly panelsLeft: number;
  readonly panelSeconds: number;
  /** What the other lanes of the conveyor take from it meanwhile. */
  readonly lanes: readonly LaneUse[];
};

/** The other lanes of a line's conveyor that run now. */
export function lanesRunning(
  floor: FloorState,
  line: string,
  at: { readonly nowMs: number; readonly calendar: WorkingTime },
): readonly LaneRun[] {
  return runsBuilding(floor, line).flatMap((run): readonly LaneRun[] => {
    if (run.line === line || run.phase !== 'running') return [];
    const told = lineTold(floor, run, at.nowMs);
    const { seconds } = runPace(run, measuringTime(at.calendar, run, { nowMs: at.nowMs, told }));
    return [{ run, panelSeconds: seconds ?? run.panelSeconds, panelsLeft: panelsToGo(run) }];
  });
}

/** What running lanes take from a slot; none of those whose product wants nothing there. */
export function laneUses(floor: FloorState, lanes: readonly LaneRun[], slot: string): readonly LaneUse[] {
  return lanes.flatMap(({ run, panelSeconds, panelsLeft }) => {
    const { perPanel } = usageOf(floor, run.setup, perPanelOf(floor, run.setup, slot));
    return perPanel > 0 ? [{ perPanel, panelSeconds, panelsLeft }] : [];
  });
}

/** What other lanes take, in panels of a line that builds one every so many seconds (above 0). */
export function besideOf(lanes: readonly LaneUse[], panelSeconds: number): readonly TakenBeside[] {
  return lanes.flatMap((lane) => {
    const share = lane.panelSeconds / panelSeconds;
    return lane.panelsLeft > 0 ? [{ perPanel: lane.perPanel / share, panels: lane.panelsLeft * share }] : [];
  });
}
