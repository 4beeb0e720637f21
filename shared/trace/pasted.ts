// On which panels may a jar of paste be? As stretches of panels like those of tapes, so that lots of paste are asked for like any other.
// Method: the printer stands before the first machine, so that as many panels as the line holds may have been printed with the jar before. Panels
// count once they leave the line: none is printed after it is counted.

import { MOST_A_MACHINE, mostInLine } from '../floor/in-line.ts';
import type { FloorState } from '../floor/state.ts';
import type { Stretch } from './stretches.ts';

/** Where paste stands among the slots of an answer. */
export const PASTE_SLOT = 'PASTE';

/** Jars on stencils as stretches of panels. */
export function pasteStretches(state: FloorState): readonly Stretch[] {
  return [...state.pasted.values()].flat().flatMap((pasted): Stretch[] => {
    const run = state.runs.get(pasted.run);
    if (run === undefined) return [];
    const { line, jar, paste, lot, fromTally, toTally, wasThere, entry, who, atMs } = pasted;
    const high = mostInLine(state, line) + MOST_A_MACHINE;
    return [
      {
        line,
        entry,
        who,
        lot,
        run: run.run,
        product: run.product,
        setup: run.setup,
        slot: PASTE_SLOT,
        feeder: null,
        reel: jar,
        part: paste,
        supplierPart: null,
        dateCode: null,
        from: wasThere
          ? { possible: 1, sure: 1, at: null }
          : { possible: fromTally + 1, sure: fromTally + high + 1, at: fromTally },
        to: toTally === null ? null : { sure: toTally, possible: toTally + high, at: toTally },
        there: toTally === null && run.phase !== 'ended',
        joined: null,
        reach: { low: 0, high },
        early: 0,
        guessed: ['in-line'],
        at: new Date(atMs).toISOString(),
      },
    ];
  });
}
