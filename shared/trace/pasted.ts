// On which panels may a jar of paste be? As stretches of panels like those of tapes, so that lots of paste are asked for like any other.
// Method: the printer stands before the first machine, so that as many panels as the line holds may have been printed with the jar before. Panels
// count once they leave the line: none is printed after it is counted. Where paste was put on top of paste each is possible and none sure, until all
// came off.

import type { PasteStretch } from '../floor/fold-paste.ts';
import { MOST_A_MACHINE, mostInLine } from '../floor/in-line.ts';
import type { FloorState } from '../floor/state.ts';
import type { Stretch } from './stretches.ts';

/** Where paste stands among the slots of an answer. */
export const PASTE_SLOT = 'PASTE';

/** Jars on stencils as stretches of panels. Cost: linear in runs; within one, by the square of the jars that it had. */
export function pasteStretches(state: FloorState): readonly Stretch[] {
  return [...state.pasted.values()].flatMap(byRun).flatMap((inRun) =>
    inRun.flatMap((pasted): readonly Stretch[] => {
      const others = inRun.filter((other) => other !== pasted);
      const stretch = stretchOf(state, pasted, mixedFrom(pasted, others));
      return stretch === null ? [] : [stretch];
    }),
  );
}

/** The jars of a line, those of each run by themselves. */
function byRun(onLine: readonly PasteStretch[]): readonly (readonly PasteStretch[])[] {
  const runs = new Map<string, PasteStretch[]>();
  for (const pasted of onLine) {
    const inRun = runs.get(pasted.run);
    if (inRun) inRun.push(pasted);
    else runs.set(pasted.run, [pasted]);
  }
  return [...runs.values()];
}

/** How far the run was counted when this paste first lay with another; null where it never did. */
function mixedFrom({ fromTally, toTally }: PasteStretch, others: readonly PasteStretch[]): number | null {
  const end = (tally: number | null) => tally ?? Number.POSITIVE_INFINITY;
  const met = others
    .filter((other) => other.fromTally < end(toTally) && fromTally < end(other.toTally))
    .map((other) => Math.max(other.fromTally, fromTally));
  return met.length === 0 ? null : Math.min(...met);
}

function stretchOf(state: FloorState, pasted: PasteStretch, mixed: number | null): Stretch | null {
  const run = state.runs.get(pasted.run);
  if (run === undefined) return null;
  const { line, jar, paste, lot, fromTally, toTally, wasThere, entry, who, atMs } = pasted;
  const high = mostInLine(state, line) + MOST_A_MACHINE;
  const from = wasThere
    ? { possible: 1, sure: 1, at: null }
    : { possible: fromTally + 1, sure: fromTally + high + 1, at: fromTally };
  const last = toTally ?? mixed;
  const possible = toTally === null ? Number.POSITIVE_INFINITY : toTally + high;
  return {
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
    from: mixed !== null && mixed <= fromTally ? { ...from, sure: Number.POSITIVE_INFINITY } : from,
    to: last === null ? null : { sure: mixed ?? last, possible, at: last },
    there: toTally === null && run.phase !== 'ended',
    joined: null,
    reach: { low: 0, high },
    early: 0,
    guessed: ['in-line'],
    ...(mixed === null ? {} : { mixed: true as const }),
    at: new Date(atMs).toISOString(),
  };
}
