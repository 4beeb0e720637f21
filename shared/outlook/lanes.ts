// What do the other lanes of a conveyor take from a slot meanwhile? A lane's run-out is foretold in its own panels: each of them goes with as many of
// the other lanes' as are built in its time, until those have built all that they want.
// Method: for constant paces what is left is a straight line with a bend where a lane's run ends; lanes that end first give all that they still
// take off the count. Refused: a common run-out for the conveyor, since each lane stops, ends and changes over by itself. A lane that stands
// takes nothing: the next look after it goes on says so.

import { panelsToGo } from '../floor/building.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import { runsBuilding } from '../floor/lanes.ts';
import { type Usage, usageOf } from '../floor/remaining.ts';
import type { FloorState, Run } from '../floor/state.ts';
import { lineTold } from '../floor/told-states.ts';
import { perPanelOf } from '../floor/wanted.ts';
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

/**
 * A slot's use in panels of one lane with what the others take: `placements` that are left for it, and placements that go with each of its
 * panels until they are gone. `own.perPanel` > 0, paces > 0 s.
 */
export function withLanes(
  own: { readonly placements: number; readonly perPanel: number; readonly panelSeconds: number },
  lanes: readonly LaneUse[],
): { readonly placements: number; readonly perPanel: number } {
  let { placements } = own;
  const byEnd = [...lanes].sort((a, b) => a.panelsLeft * a.panelSeconds - b.panelsLeft * b.panelSeconds);
  for (;;) {
    const perPanel = byEnd.reduce(
      (sum, lane) => sum + (lane.perPanel * own.panelSeconds) / lane.panelSeconds,
      own.perPanel,
    );
    const seconds = (placements / perPanel) * own.panelSeconds;
    const [first] = byEnd;
    if (!first || first.panelsLeft * first.panelSeconds >= seconds) return { placements, perPanel };
    placements = Math.max(0, placements - first.perPanel * first.panelsLeft);
    byEnd.shift();
  }
}
