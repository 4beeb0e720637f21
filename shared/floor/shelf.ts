// Which reels off the line serve a slot, and in which order are they taken? The answers of fits.ts, for thousands of reels at once: what a label says is
// asked once for all that bear it, and blocks and ages only where one may be.

import { ageLimitOf, dateCodeReasons } from './age-limit.ts';
import { mayBeBlocked } from './blocks.ts';
import {
  ageReasons,
  blockReasons,
  comparisonOf,
  type Fit,
  type FitLife,
  type FitReason,
  fitVerdict,
  type PartFit,
  takesLabel,
} from './fits.ts';
import type { SetupSlot } from './kinds.ts';
import { orderOn, pickOrderOf } from './pick-order.ts';
import { plantDay } from './plant-day.ts';
import { growShelf, inPickOrder, shelfIndex } from './shelf-index.ts';
import type { FloorState, Reel } from './state.ts';

/** A reel off the line whose part a slot takes, and whether it may be used as it is. */
export interface ShelfReel {
  readonly reel: Reel;
  readonly fit: Fit;
}

/**
 * Answers slot by slot which reels off the line are of a part that it takes: its own part first, then alternates, each in the line's order
 * (`pickOrder` of its rules, else the oldest first) and those that nobody counted last. `lifeOf`: what is left of a reel's floor life as a part.
 * Cost: one walk over the reels, then for each slot the reels of the labels that may be of its parts.
 */
export function shelfFor(
  state: FloorState,
  at: { readonly line: string; readonly setup: string; readonly nowMs: number },
  lifeOf?: (reel: Reel, part: string) => FitLife | null,
): (wanted: SetupSlot) => readonly ShelfReel[] {
  const inOrder = pickOrderOf(state, at.line);
  const today = plantDay(state, at.line, at.nowMs);
  const order = orderOn(state, at.line);
  const isSuspect = mayBeBlocked(state);
  const labelsFor = shelfIndex(state.reels, comparisonOf(state, at.line));
  return (wanted) => {
    const found: ShelfReel[] = [];
    let labels = 0;
    for (const same of labelsFor([wanted.part, ...wanted.alternates])) {
      const [any] = same.reels;
      const taken = any ? takesLabel(state, { ...at, wanted }, any) : null;
      if (taken === null) continue;
      labels += 1;
      const part = taken.part ?? wanted.part;
      const asLabelled: Fit = { ...taken, verdict: fitVerdict(taken.reasons) };
      const isDated = ageLimitOf(state, at.line, part) !== null;
      for (const reel of inPickOrder(same, order, inOrder)) {
        const floorLife = lifeOf?.(reel, part) ?? null;
        const expires = state.expiries.get(reel.reel) ?? null;
        const { reel: id, lot } = reel;
        const isNamed =
          isSuspect(reel) || (taken.part !== null && isSuspect({ reel: id, lot, part: taken.part }));
        const more = [
          ...(isNamed ? blockReasons(state, reel, taken.part) : []),
          ...(reel.gone ? [{ code: 'reel-gone', reel: id } as const] : []),
          ...(expires === null && floorLife === null ? [] : ageReasons({ expires }, { today, floorLife })),
          ...(isDated ? dateCodeReasons(state, { line: at.line, part }, reel, { today }) : []),
        ];
        found.push({ reel, fit: more.length === 0 ? asLabelled : withReasons(taken, more) });
      }
    }
    if (labels < 2) return found;
    const isAlternate = ({ fit }: ShelfReel) => (fit.part === wanted.part ? 0 : 1);
    return found.sort((a, b) => isAlternate(a) - isAlternate(b) || inOrder(a.reel, b.reel));
  };
}

/** Packages that a step puts into the index. */
const AT_ONCE = 250;

/**
 * Makes ready what `shelfFor()` answers a setup's slots from, in steps small enough for a page that draws between them: first the packages are put
 * into the index, then each slot's are put in order. The index and the order are kept for the question, which judges the packages anew; at the end comes only that it is ready.
 */
export function* shelfSteps(
  state: FloorState,
  at: { readonly line: string; readonly setup: string; readonly nowMs: number },
  lifeOf?: (reel: Reel, part: string) => FitLife | null,
): Generator<undefined, true> {
  const comparison = comparisonOf(state, at.line);
  while (growShelf(state.reels, comparison, AT_ONCE) > 0) yield;
  const shelf = shelfFor(state, at, lifeOf);
  for (const wanted of state.setups.get(at.setup)?.slots ?? []) {
    yield;
    shelf(wanted);
  }
  return true;
}

/** The answer for one reel, of whose label all is said, with what is said of the reel alone. */
function withReasons(taken: PartFit, more: readonly FitReason[]): Fit {
  const reasons = [...taken.reasons, ...more];
  return { ...taken, reasons, verdict: fitVerdict(reasons) };
}
