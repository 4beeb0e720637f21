// Does a cell say that a part is not put on the board?
// Method: the marks of parts lists, alone in the cell or set off beside a value; columns of crosses, in which an empty cell is a no where
// the filled ones all say yes. Method refused: any text that merely holds the letters ("NF" in "100 NF").

import { parseFlag } from './cells.ts';

const wholeMark =
  /^(?:dnp|dnf|dni|dns|dnm|n[./ ]?\s?f\.?|n[./]?\s?m\.?|nc|n\.?\s?p\.?|no[ -]?(?:pop|load|fit|mount|stuff|place|populate)|(?:do not|don'?t) (?:place|fit|populate|mount|install|stuff|assemble|solder|load)|not (?:fitted|placed|mounted|populated|installed|assembled|stuffed|used|loaded)|unpopulated|unfitted|unmounted|unplaced|omit(?:ted)?|excluded?(?: from (?:the )?(?:bom|board|assembly|position files|placement))?|n\.?\s?b\.?|nicht (?:best[uü]ck(?:t|en)|best[uü]ecken|best[uü]eckt|montier(?:t|en))|unbest[uü]e?ckt|no (?:montar|montado|colocar|colocado|poblar)|sin montar|non mont[eé]e?|ne pas (?:monter|poser)|non pos[eé]e?)$/i;
// What all marks have a piece of: most cells have none.
const mayBeMark = /n|omit|exclu/i;
const markBeside =
  /(?:^|[\s([{,;:/_*-])(?:dnp|dnf|dni|dns|no[ -]?(?:pop|stuff|load|fit)|do not (?:place|fit|populate|mount|install|stuff|assemble)|not (?:fitted|placed|mounted|populated|installed)|nicht best[uü]e?ck(?:t|en)|no (?:montar|montado)|non mont[eé]e?|ne pas monter)(?:$|[\s)\]},;:/_*!.-])/i;

/** Whether a text is a mark that the part is not fitted (DNP and the like). */
export function isNotFittedMark(text: string): boolean {
  if (text === '' || !mayBeMark.test(text)) return false;
  return wholeMark.test(text.trim());
}

/**
 * Whether a value or a remark carries such a mark beside other words ("10k DNP", "(not fitted)"). `DNP-100` is a part number: a mark in
 * front needs a blank behind it.
 */
export function carriesNotFittedMark(text: string): boolean {
  if (text === '' || !mayBeMark.test(text)) return false;
  const plain = text.trim();
  if (isNotFittedMark(plain)) return true;
  return markBeside.test(plain) && !/^[a-z]{3,5}[-_/]\S+$/i.test(plain);
}

const fittedWords =
  /^(?:fitted|placed|fit|place|populated|populate|mounted|mount|installed|install|assembled|assemble|stuffed|stuff|loaded|load|best[uü]e?ckt|montado|colocado|mont[eé]|pos[eé]|\+|✔|✓|•|●|■)$/i;

/** What a cell of a column "fitted" says: yes, no, or null for neither. */
export function parseFitted(text: string): boolean | null {
  if (isNotFittedMark(text)) return false;
  return fittedWords.test(text) ? true : parseFlag(text);
}

/** What a cell of a column "not fitted" says: true = not fitted, false = fitted, null for neither. */
export function parseNotFitted(text: string): boolean | null {
  if (isNotFittedMark(text)) return true;
  return fittedWords.test(text) ? false : parseFlag(text);
}

/** Whether a column of crosses means "no" where it is empty: some cells are filled, and every filled one says yes. */
export function blankMeansNo(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell !== '');
  return (
    filled.length > 0 && filled.length < cells.length && filled.every((cell) => parseFitted(cell) === true)
  );
}
