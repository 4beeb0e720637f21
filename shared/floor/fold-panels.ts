// Which boards of counted panels were skipped, and which panels were scrapped. A skipped board took no parts; a scrapped panel took its
// parts like any other, and as many more are to be built. Sees a count after the fold of runs: what that one did not take is none.

import { entryId } from '../log/entry.ts';
import { newestRun } from './building.ts';
import type { EntryOf } from './kinds.ts';
import { boardsOf, boardsSkipped, noSkips } from './remaining.ts';
import type { FloorState, Run, SkipsSeen } from './state.ts';

/** What was said of panels is kept for taking it back, so many a run. */
const KEPT = 192;

/** Applies one entry to what is known of skipped boards and scrapped panels. */
export function foldPanels(
  state: FloorState,
  entry: EntryOf<'panels.counted' | 'station.counted' | 'panels.scrapped' | 'entry.corrected'>,
): void {
  switch (entry.kind) {
    case 'panels.counted': {
      const id = entryId(entry);
      const { add, line, run: named } = entry.payload;
      const run = [named, state.current.get(line)]
        .map((each) => state.runs.get(each ?? ''))
        .find((each) => each?.counts.at(-1)?.[0] === id);
      const boards = run && boardsSkipped(entry.payload, boardsOf(state, run.setup));
      if (run && boards != null) {
        const said = [...run.said, [id, { boards, panels: add }] as const].slice(-KEPT);
        seeSkips(state, { ...run, said }, { boards, panels: add });
      }
      return;
    }
    case 'station.counted': {
      const id = entryId(entry);
      const run = newestRun(state, entry.payload.line);
      const { skipped } = entry.payload;
      // Where it rose by more than one, nothing is said of the others.
      if (run?.counts.at(-1)?.[0] !== id || (run.counts.at(-1)?.[2] ?? 0) < 1 || skipped === null) return;
      const boards = boardsSkipped({ add: 1, skipped }, boardsOf(state, run.setup));
      if (boards == null) return;
      const said = [...run.said, [id, { boards, panels: 1 }] as const].slice(-KEPT);
      seeSkips(state, { ...run, said }, { boards, panels: 1 });
      return;
    }
    case 'panels.scrapped': {
      const run = state.runs.get(entry.payload.run);
      if (!run) return;
      const { panels } = entry.payload;
      const scraps = [...run.scraps, [entryId(entry), panels] as const].slice(-KEPT);
      state.runs.set(run.run, { ...run, scrapped: run.scrapped + panels, scraps });
      return;
    }
    case 'entry.corrected':
      takeBack(state, entry.payload.of);
      return;
    default:
      entry satisfies never;
  }
}

function addSkips(one: SkipsSeen, other: SkipsSeen): SkipsSeen {
  return { boards: one.boards + other.boards, panels: one.panels + other.panels };
}

/** Skips of a setup's panels teach its other panels and its next run. */
function seeSkips(state: FloorState, run: Run, seen: SkipsSeen): void {
  state.runs.set(run.run, { ...run, skips: addSkips(run.skips, seen) });
  state.skips.set(run.setup, addSkips(state.skips.get(run.setup) ?? noSkips, seen));
}

function takeBack(state: FloorState, of: string): void {
  for (const run of state.runs.values()) {
    const skipped = run.said.find(([entry]) => entry === of);
    // What an ended run used stands in its slots as a figure.
    if (skipped && run.phase !== 'ended') {
      const [, { boards, panels }] = skipped;
      const said = run.said.filter((each) => each !== skipped);
      seeSkips(state, { ...run, said }, { boards: -boards, panels: -panels });
      return;
    }
    const scrap = run.scraps.find(([entry]) => entry === of);
    if (scrap) {
      const scraps = run.scraps.filter((each) => each !== scrap);
      state.runs.set(run.run, { ...run, scrapped: run.scrapped - scrap[1], scraps });
      return;
    }
  }
}
