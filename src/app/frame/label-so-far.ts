// A label that comes code by code, in words: what it has named, and what to scan besides.

import { type Desk, missingPieces, type ReelInHand } from '../desk/model.ts';
import { shellWords } from '../words/shell.ts';
import { say } from '../words/words.ts';

/** What a reel in hand is called: by its part, else by what else its label says. */
export const reelName = (reel: ReelInHand): string | null => reel.part ?? reel.supplierPart ?? reel.reel;

/** What is still to be scanned of the label in hand; null where none comes code by code. */
export function labelSoFar({ partial }: Desk): string | null {
  if (partial === null) return null;
  const words = say(shellWords);
  const wanted = missingPieces(partial).map((piece) => words.pieces[piece]);
  return words.scanAlso(reelName(partial) ?? '', wanted.join(', '));
}
