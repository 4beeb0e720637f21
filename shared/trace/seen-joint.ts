// Where does a joint lie that a machine saw pass? Between the last panel that had surely passed it by then, and the last that its grey parts
// reach. Method: that, and what counts and the splice say; where these exclude each other all of both is left in doubt.

import type { FloorState, Run, SlotState } from '../floor/state.ts';
import { tallyOf } from '../floor/tally.ts';
import { type Bounds, meet, takenByPanel } from './doubt.ts';
import { guesses } from './joints.ts';
import { latest, latestTo } from './order.ts';
import type { Stretch } from './stretches.ts';

/** Bounds the tape that begins and the ones that have ended. `passed`: panels that have passed the machine by now; `grey`: parts in doubt. */
export function boundSeen(
  state: FloorState,
  at: {
    readonly run: Run;
    readonly open: ReadonlyMap<string, Stretch>;
    readonly was: SlotState;
    readonly now: SlotState;
    readonly passed: Bounds;
    readonly grey: number;
    readonly isGuess: boolean;
  },
): void {
  const { run, open, was, now, passed, grey } = at;
  const first = now.tapes[0]?.entry ?? '';
  const begins = open.get(first);
  const place = was.tapes.findIndex((tape) => tape.entry === first);
  const gone = was.tapes.slice(0, Math.max(0, place)).flatMap((tape) => open.get(tape.entry) ?? []);
  const before = gone.at(-1);
  if (!begins || !before) return;
  const tally = tallyOf(run);
  const { low: fewest } = takenByPanel(state, run.setup, now.slot);
  const seen = { low: passed.low, high: passed.high + (grey === 0 ? 0 : grey / fewest) };
  const known = {
    low: begins.from.possible - 1,
    high: before.to ? latestTo(run, before.to) : latest(run, begins.from.sure, begins.from.at) - 1,
  };
  const joint = meet(seen, known);
  const low = Math.max(0, Math.floor(joint.low));
  const high = Math.ceil(joint.high);
  // A slot that may rest, or be left out of a panel, is surely on none.
  const sure = begins.from.sure === Number.POSITIVE_INFINITY ? begins.from.sure : high + 1;
  begins.from = { possible: low + 1, sure, at: tally };
  for (const ended of gone) {
    const isLast = ended === before;
    const to = ended.to;
    ended.to = {
      sure: isLast ? low : Math.min(to?.sure ?? low, low),
      possible: isLast ? high : Math.min(to ? latestTo(run, to) : high, high),
      at: tally,
    };
    if (at.isGuess) ended.guessed = guesses(ended.guessed, 'in-line');
  }
  if (at.isGuess) begins.guessed = guesses(begins.guessed, 'in-line');
}
