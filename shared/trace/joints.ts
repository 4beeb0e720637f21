// Where do the tapes of a slot end, and the next begin? By the splice, by counts, and by what was told before.

import { isMixed } from '../floor/packs.ts';
import type { FloorState, Run, SlotState } from '../floor/state.ts';
import { turnGroup } from '../floor/turns.ts';
import { type Bounds, endsByCount, isLabelGuess, join, mayGoWithout, meet, placedSince } from './doubt.ts';
import { endsAt, reachOf } from './line.ts';
import { latest } from './order.ts';
import type { Guess, Stretch } from './stretches.ts';

/** `at` of a bound that follows from counts of parts: panels entered many at once leave it as it is. */
const BY_COUNT = -1;

/** Where the tapes of a slot end and the next begin, by all that is known now. */
export function boundJoints(
  state: FloorState,
  at: {
    readonly slot: SlotState;
    readonly run: Run;
    readonly open: ReadonlyMap<string, Stretch>;
    readonly tally: number;
  },
): void {
  const { slot, run, open, tally } = at;
  if (isMixed(slot)) return; // what lies loose has no joints
  const { reach } = reachOf(state, run.line, slot.slot);
  const rests = mayRest(state, run.setup, slot.slot);
  const early = Math.max(0, ...slot.tapes.map((tape) => open.get(tape.entry)?.early ?? 0));
  const ends = endsByCount(state, slot, { ...endsAt(state, slot, run), early });
  // Counts that have only begun may be off by panels that nobody has entered yet.
  const byCountAt = placedSince(state, slot) > 0 ? BY_COUNT : tally;
  const last = open.get(slot.tapes.at(-1)?.entry ?? '');
  if (last) last.to = null; // nothing ends it yet
  let next: Bounds & { readonly at: number | null } = {
    low: Number.POSITIVE_INFINITY,
    high: Number.POSITIVE_INFINITY,
    at: tally,
  };
  for (let place = slot.tapes.length - 1; place > 0; place--) {
    const own = open.get(slot.tapes[place]?.entry ?? '');
    const before = open.get(slot.tapes[place - 1]?.entry ?? '');
    const end = ends[place - 1];
    if (!own || !end) continue;
    const joined = own.joined
      ? { low: own.joined.low, high: latest(run, own.joined.high, own.joined.at) }
      : { low: 0, high: Number.POSITIVE_INFINITY };
    const byCount = { low: tally + end.low, high: tally + end.high };
    let joint = rests ? { low: joined.low, high: Number.POSITIVE_INFINITY } : meet(byCount, joined);
    const known = before?.to;
    // What may have happened already is not told away again.
    if (known && own.from.possible - 1 < tally + reach.high)
      joint = join(joint, {
        low: own.from.possible - 1,
        high: latest(run, own.from.sure, own.from.at) - 1,
      });
    // What counts say of a joint does not rest on how far the run was counted just then.
    const told = joint.high === byCount.high ? byCountAt : (own.joined?.at ?? tally);
    const toldAt = next.high < joint.high ? next.at : told;
    next = { low: Math.min(joint.low, next.low), high: Math.min(joint.high, next.high), at: toldAt };
    const low = Math.max(0, Math.floor(next.low));
    const high = Math.ceil(next.high);
    own.from = { possible: low + 1, sure: high + 1, at: toldAt };
    if (before) before.to = { sure: low, possible: high, at: toldAt };
    const guess = isLabelGuess(state, slot) ? guesses(own.guessed, 'label') : own.guessed;
    own.guessed = guess;
    if (before) before.guessed = guesses(before.guessed, ...guess);
  }
  if (!rests && !mayGoWithout(state, run.setup, slot.slot)) return;
  for (const tape of slot.tapes) {
    const stretch = open.get(tape.entry);
    if (stretch) stretch.from = { ...stretch.from, sure: Number.POSITIVE_INFINITY };
  }
}

/**
 * True where the slot is used in turn with others: when it feeds follows from counts alone, so no panel is surely its, and its tapes
 * may last longer than if it fed all the time.
 */
function mayRest(state: FloorState, setup: string, slot: string): boolean {
  const taken = state.setups.get(setup);
  return taken !== undefined && turnGroup(taken, slot).length > 0;
}

/** Guesses, each once. */
export function guesses(...all: readonly (Guess | readonly Guess[])[]): readonly Guess[] {
  return [...new Set(all.flat())].sort();
}
