// What follows a right load: the slot that is next, or that every slot is loaded. Nothing where none is empty and yet some are not right: a reel that
// waits for a lead is not loaded.

import type { ShownVerdict } from '../desk/desk.ts';
import { verdictWords } from '../words/verdict.ts';
import { say } from '../words/words.ts';

/** The sentence in the language in use; empty for none. `spoken`: how a slot's code is said. */
export function nextSaid(
  { next, isAllLoaded }: Pick<ShownVerdict, 'next' | 'isAllLoaded'>,
  spoken: (code: string) => string,
): string {
  const words = say(verdictWords);
  if (next !== null) return words.nextIs(spoken(next));
  return isAllLoaded ? words.allLoaded : '';
}
