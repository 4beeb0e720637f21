// Does an answer rest on which boards of a panel a slot serves? No setup tells that. Where boards may be skipped, a slot that is taken to
// serve all of them alike gives parts to every panel; one that serves some of them might have given none (doubt.ts says which is taken).

import { boardsOf } from '../floor/remaining.ts';
import type { FloorState, Run } from '../floor/state.ts';
import { mayGoWithout } from './doubt.ts';
import { guesses } from './joints.ts';
import type { Guess, Stretch } from './stretches.ts';

/** True where a slot is taken to serve all boards alike, and nobody said of all panels that no board was skipped. */
function isBoardsGuess(state: FloorState, run: Run, slot: string): boolean {
  if (boardsOf(state, run.setup) <= 1) return false;
  const isNoneSkipped = run.skips.boards === 0 && run.skips.panels >= run.done;
  return !isNoneSkipped && !mayGoWithout(state, run.setup, slot);
}

/** What a stretch rests on in its run that nobody has entered or measured. */
export function guessedOf(
  state: FloorState,
  stretch: Pick<Stretch, 'run' | 'slot' | 'guessed'>,
): readonly Guess[] {
  const run = state.runs.get(stretch.run);
  return run && isBoardsGuess(state, run, stretch.slot)
    ? guesses(stretch.guessed, 'boards')
    : stretch.guessed;
}
