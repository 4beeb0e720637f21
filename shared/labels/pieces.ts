// One code that holds several identified pieces in a row, separated by a printable character or by blanks.
// Method: the separator is the first one that cuts the code into at least two pieces with different identifiers, one of
// them telling; a piece without identifier is text, or may belong to the value before it, which then is a question.

import { type Basket, mh10Element } from './elements.ts';
import { type SeparateCode, splitSeparateCode } from './separate-codes.ts';
import { collectOneLetterTags } from './tags.ts';

const SEPARATORS = ['\n', '\r', '\t', ';', '|', ',', '@', ']', '~', '^', '#', ' / '];

/** At least two different identifiers, one of which says by its look that it is one, and the first piece has one. */
function speaks(pieces: readonly SeparateCode[]): boolean {
  const ids = new Set<string>();
  let telling = false;
  for (const { id } of pieces) {
    if (id === null) continue;
    ids.add(id);
    if (id.length > 1 || id === 'Q') telling = true;
  }
  return telling && ids.size >= 2 && pieces[0]?.id !== null;
}

/** Reads a code that is a row of identified pieces; false = it is none. */
export function collectPieces(text: string, basket: Basket): boolean {
  for (const separator of SEPARATORS) {
    if (!text.includes(separator)) continue;
    const parts = text.split(separator).filter((part) => part.trim() !== '');
    if (
      separator === ';' &&
      collectOneLetterTags(
        parts.map((part) => part.trim()),
        basket,
      )
    )
      return true;
    const pieces = parts.map((part) => splitSeparateCode(part.trim()));
    if (!speaks(pieces)) continue;
    readPieces(pieces, parts, separator, basket);
    return true;
  }
  if (!text.includes(' ') || !speaks(text.split(/ +/).map(splitSeparateCode))) return false;
  collectSpaced(text, basket);
  return true;
}

function readPieces(
  pieces: readonly SeparateCode[],
  parts: readonly string[],
  separator: string,
  basket: Basket,
): void {
  // S is the maker's number in lists of one-letter tags, a serial number in MH10.8.2: without digits in front of any
  // letter nothing tells which.
  const oneLetterOnly = separator === ';' && pieces.every(({ id }) => id === null || id.length === 1);
  for (const [index, piece] of pieces.entries()) {
    if (piece.id === null) {
      const goesOn = index > 0 && parts[index]?.startsWith(' ') === true && separator === ',';
      if (goesOn) reopen(piece.text, `${separator} ${piece.text}`, basket);
      else keepText(piece.text, basket);
    } else if (oneLetterOnly && piece.id === 'S') {
      basket.warnings.push({ code: 'identifier-unconfirmed', text: piece.text });
      basket.ambiguous.push({
        text: piece.text,
        candidates: [
          { field: 'reel', value: piece.value },
          { field: 'supplierPart', value: piece.value },
        ],
      });
    } else {
      basket.elements.push(mh10Element(piece.id, piece.value));
    }
  }
}

function keepText(text: string, basket: Basket): void {
  basket.unidentified.push(text);
  basket.warnings.push({ code: 'no-identifier', text });
}

/** The piece before may go on with this text: its value is taken back and asked about, unless it is complete by its kind. */
function reopen(text: string, continuation: string, basket: Basket): void {
  const last = basket.elements[basket.elements.length - 1];
  if (last === undefined || last.field === null || last.kind !== 'text') {
    keepText(text, basket);
    return;
  }
  basket.elements.pop();
  basket.warnings.push({ code: 'value-may-go-on', id: last.id, text });
  basket.ambiguous.push({
    text: `${last.id}${last.value}${continuation}`,
    candidates: [
      { field: last.field, value: last.value },
      { field: last.field, value: `${last.value}${continuation}` },
    ],
  });
}

/** Reads pieces separated by blanks; a piece without identifier makes the one before it a question. */
export function collectSpaced(text: string, basket: Basket): void {
  basket.warnings.push({ code: 'blank-separated', text });
  const pieces = text.split(/ +/).filter((piece) => piece !== '');
  let open: string | null = null;
  for (const [index, piece] of pieces.entries()) {
    const code = splitSeparateCode(piece);
    if (code.id !== null) {
      basket.elements.push(mh10Element(code.id, code.value));
      open = code.value;
    } else if (open !== null && !isRemark(piece)) {
      let rest = piece;
      for (let next = index + 1; next < pieces.length; next += 1) {
        const more = splitSeparateCode(pieces[next] ?? '');
        if (more.id !== null) break;
        rest += ` ${more.text}`;
      }
      reopen(piece, ` ${rest}`, basket);
      open = null;
    } else {
      keepText(piece, basket);
    }
  }
}

/** Words that labels print beside values and that belong to none. */
export function isRemark(text: string): boolean {
  return /^(?:rohs\d?|reach|pb-?free|pbf|lf|hf|halogen-?free|https?:\S*|www\.\S*)$/i.test(text);
}
