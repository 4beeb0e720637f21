// Which reels run short as soon as the next run begins? Asked while nothing is built: then a reel can be spliced or changed in peace.
// Method: the outlook of the planned run, as if it began now; what would be warned of at its first panel begins short. Waiting for the
// run was refused: a reel kept from the last one may be gone before anybody can get there.

import { noSkips } from '../floor/remaining.ts';
import type { FloorState, Run } from '../floor/state.ts';
import { newestRunOf } from '../forecast/reel-lasts.ts';
import { type LookAt, lineOutlook, type SlotOutlook } from './line.ts';

/** What is known of a run before it begins. */
export interface PlannedRun {
  /** Panels to build, above 0. */
  readonly panelsWanted: number;
  /** Nominal seconds from panel to panel, above 0. */
  readonly panelSeconds: number;
}

/** Panels and seconds a panel where the line has never built anything. */
const USUAL: PlannedRun = { panelsWanted: 500, panelSeconds: 30 };

/** The run to take for the next one: the newest of this setup on the line, else the newest on the line; null where there was none. */
export function lastRunLike(floor: FloorState, line: string): Run | null {
  const ofLine = [...floor.runs.values()].filter((run) => run.line === line);
  return newestRunOf(floor, line, floor.chosen.get(line)) ?? ofLine.at(-1) ?? null;
}

/**
 * Slots of the line's chosen setup that must be gone to as soon as a run begins, soonest first. Without `planned` the last run is
 * taken for the next. Empty where no setup is chosen.
 */
export function beginsShort(
  floor: FloorState,
  line: string,
  at: Omit<LookAt, 'run' | 'remembered'> & { readonly planned?: PlannedRun },
): readonly SlotOutlook[] {
  const setup = floor.setups.get(floor.chosen.get(line) ?? '');
  if (!setup) return [];
  const { planned = lastRunLike(floor, line) ?? USUAL, ...look } = at;
  const run: Run = {
    run: '',
    line,
    setup: setup.setup,
    product: setup.product,
    panelPrefix: null,
    panelsWanted: planned.panelsWanted,
    panelSeconds: planned.panelSeconds,
    panelSd: 0,
    done: 0,
    skips: noSkips,
    said: [],
    scrapped: 0,
    scraps: [],
    phase: 'running',
    startedMs: at.nowMs,
    sinceMs: at.nowMs,
    stopReason: null,
    counts: [],
    batches: [],
    voids: [],
    stops: [],
    serials: 0,
    lastSerial: null,
  };
  const outlook = lineOutlook(floor, line, { ...look, run });
  return outlook?.slots.filter((slot) => slot.warning.level !== 'quiet') ?? [];
}
