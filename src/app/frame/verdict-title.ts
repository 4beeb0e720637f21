// The headline of a verdict: what speaks against the reel where something does, else how it came out. Said on the screen and aloud.

import { reasonVerdicts } from '../../../shared/verdict/reasons.ts';
import type { ShownVerdict } from '../desk/desk.ts';
import { verdictWords } from '../words/verdict.ts';
import { say } from '../words/words.ts';

/** The headline, in the language in use. */
export function verdictTitle(shown: ShownVerdict): string {
  const words = say(verdictWords);
  const [first] = shown.reasons;
  if (first && reasonVerdicts[first.code] !== 'accepted') return words.reasons[first.code].title;
  return shown.verdict === 'accepted' ? words.accepted[shown.act] : words[shown.verdict];
}
