// A label that comes code by code, in words: what it has named, and what to scan besides.

import { type Desk, missingPieces, type ReelInHand } from '../../../shared/desk/model.ts';
import type { LabelTold } from '../desk/away.ts';
import { dockWords } from '../words/dock.ts';
import { say } from '../words/words.ts';

/** What a reel in hand is called: by its part, else by what else its label says. */
export const reelName = (reel: ReelInHand): string | null => reel.part ?? reel.supplierPart ?? reel.reel;

/** The next code to scan of the label in hand, in a word; null where none comes code by code. */
export function nextPiece({ partial }: Desk): string | null {
  const piece = partial && missingPieces(partial)[0];
  return piece ? say(dockWords).pieceWanted[piece] : null;
}

/** What is still to be scanned of the label in hand; null where none comes code by code. */
export function labelSoFar({ partial }: Desk): string | null {
  if (partial === null) return null;
  const words = say(dockWords);
  const wanted = missingPieces(partial).map((piece) => words.pieces[piece]);
  return words.scanAlso(reelName(partial) ?? '', wanted.join(', '));
}

/** Why a label was not taken, and what to do. */
export function labelTold(told: LabelTold): string {
  const words = say(dockWords);
  switch (told.tell) {
    case 'half-label':
      return words.halfLabel;
    case 'no-part':
      return words.noPart;
    case 'symbols-missing':
      return words.symbolsMissing(told.have, told.of);
    case 'wrong-keyboard':
      return words.wrongKeyboard(told.layout);
  }
}
