// What the trace asks of a line: its runs, what has passed a slot's machine, and how far a slot's counts may be off.

import { newestRun } from '../floor/building.ts';
import { panelsInLine } from '../floor/in-line.ts';
import { feedersOf, linesFeeding } from '../floor/lanes.ts';
import type { FloorState, Run, SlotState } from '../floor/state.ts';
import { perPanelOf } from '../floor/wanted.ts';
import { type Bounds, type EndsAt, placedSince } from './doubt.ts';

/** How many panels have passed the slot's machine beyond those counted, the one at work among them. */
export function reachOf(
  state: FloorState,
  line: string,
  slot: string,
): { reach: Bounds; isGuess: boolean; missed: number } {
  const { least, most, missed, isGuess } = panelsInLine(state, line, slot);
  // The panel at work may have got some of its parts before and some after.
  return { reach: { low: least, high: most + 1 }, isGuess, missed };
}

/** Where the trace keeps open stretches of a slot (`key`: its `slotKey`) in a line's run: each lane of a conveyor has its own. */
export function openKey(line: string, key: string): string {
  return feedersOf(line) === line ? key : `${key} ${line}`;
}

/** With what the ends of a slot's tapes are computed in a run. */
export function endsAt(state: FloorState, slot: SlotState, run: Run): EndsAt {
  const { reach, missed } = reachOf(state, run.line, slot.slot);
  const at = { setup: run.setup, reach, missed, lag: lagSince(state, slot, run), early: 0 };
  const others = linesFeeding(state, run.line).filter((line) => line !== run.line);
  if (others.length === 0) return at;
  const beside = others.map((line) => {
    const newest = newestRun(state, line);
    const { low, high } = reachOf(state, line, slot.slot).reach;
    return { low: Math.min(0, low), high: Math.max(0, high) + (newest ? lagSince(state, slot, newest) : 0) };
  });
  return {
    ...at,
    beside: { low: sum(beside.map(({ low }) => low)), high: sum(beside.map(({ high }) => high)) },
  };
}

const sum = (figures: readonly number[]) => figures.reduce((all, each) => all + each, 0);

/** The most panels that had passed and were not entered when a slot's counts began. */
function lagSince(state: FloorState, slot: SlotState, newest: Run): number {
  const [first] = slot.tapes;
  if (first && slot.ledger.chain === first.entry) return lagAt(state, newest.line, first.atMs);
  // Begun by a count, or with a tape that is gone: in one of the runs that have taken what was placed since.
  let placed = placedSince(state, slot);
  let lag = 0;
  for (let run: Run | null = newest; run !== null; run = runBefore(state, run)) {
    lag = Math.max(lag, mostAtOnce(run));
    placed -= perPanelOf(state, run.setup, slot.slot) * run.done;
    if (placed <= 0) break;
  }
  return lag;
}

/** The most panels that had passed and were not entered at a moment: none where no run was going on. */
export function lagAt(state: FloorState, line: string, atMs: number): number {
  let lag = 0;
  for (const run of state.runs.values()) {
    // Panels that were still in the line are counted after the end.
    const lastMs = Math.max(run.sinceMs, run.counts.at(-1)?.[1] ?? 0);
    const wasOver = run.phase === 'ended' && lastMs < atMs;
    if (run.line === line && run.startedMs <= atMs && !wasOver) lag = Math.max(lag, mostAtOnce(run));
  }
  return lag;
}

const mostAtOnce = ({ batches }: Run): number =>
  batches.reduce((most, [, panels]) => Math.max(most, panels - 1), 0);

/** The run before another on its line. */
export function runBefore(state: Pick<FloorState, 'runs'>, run: Run): Run | null {
  let before: Run | null = null;
  for (const each of state.runs.values()) {
    if (each.line !== run.line || each.startedMs >= run.startedMs) continue;
    if (each.startedMs >= (before?.startedMs ?? 0)) before = each;
  }
  return before;
}
