// What stands inside an opened envelope: GS1 identifiers (05), MH10.8.2 identifiers (06), text element identifiers (12),
// and the dialects that use a 06 envelope for something else.
// Method: the dialect is told from all elements together before any is read. Refused: reading element by element, which
// turns the tag `PN` into identifier P.

import { isDigits, isPrintableAscii } from './characters.ts';
import { type Basket, identifiedElement, type LabelElement, mh10Element } from './elements.ts';
import { type Envelope, findIntactSeparator } from './envelope.ts';
import { collectGs1, parseGs1 } from './gs1.ts';
import { IDENTIFIERS, type Identifier, identifierAt, identifierLength } from './identifiers.ts';
import { asMatLabel, SECOND_LOT } from './mat-label.ts';
import { collectUnseparatedGs1, collectUnseparatedMh10 } from './missing-separators.ts';
import { collectSpaced } from './pieces.ts';
import type { LabelExpectation } from './reading.ts';
import { collectTwoLetterTags } from './tags.ts';
import { collectTextElements } from './text-elements.ts';

const GS = '\x1d';

/** Puts the elements of an opened envelope into the basket. */
export function collectEnvelope(
  envelope: Envelope,
  basket: Basket,
  expected: LabelExpectation | undefined,
): void {
  for (const warning of envelope.warnings) basket.warnings.push(warning);
  if (envelope.unseparatedBody !== null) {
    collectUnseparated(envelope.format, envelope.unseparatedBody, basket, expected);
    return;
  }
  for (const { format, elements } of envelope.formats) {
    if (format === '05') for (const element of elements) collectGs1(element, parseGs1(element), basket);
    else if (format === '06') collectMh10(elements, envelope, basket, expected);
    else if (format === '12') collectTextElements(elements, basket);
    else {
      basket.warnings.push({ code: 'format-unread', format });
      for (const element of elements) basket.unidentified.push(element);
    }
  }
}

function collectUnseparated(
  format: string,
  body: string,
  basket: Basket,
  expected: LabelExpectation | undefined,
): void {
  if (body === '') return;
  basket.warnings.push({ code: 'separators-lost', text: body });
  if (format === '06') collectUnseparatedMh10(body, basket, expected);
  else if (format === '05') collectUnseparatedGs1(body, basket);
  else basket.unidentified.push(body);
}

/** Reads the elements of a 06 envelope, whichever dialect they speak. */
export function collectMh10(
  elements: readonly string[],
  envelope: Pick<Envelope, 'separator' | 'intact'>,
  basket: Basket,
  expected: LabelExpectation | undefined,
): void {
  if (envelope.separator === GS) {
    if (!collectTwoLetterTags(elements, basket, expected)) readElements(elements, basket);
    return;
  }
  if (envelope.separator === ' ') {
    collectSpaced(elements.join(' '), basket);
    return;
  }
  const strays: string[] = [];
  const pieces =
    envelope.intact || elements.every(isPrintableAscii)
      ? elements
      : elements.flatMap((text) => splitAtStrays(text, strays));
  if (strays.length > 0) {
    basket.warnings.push({
      code: 'separators-mixed',
      found: [envelope.separator, ...new Set(strays)],
    });
  }
  if (collectTwoLetterTags(pieces, basket, expected)) return;
  // One long element, or separators that differ: others may have been swallowed inside the values.
  const inside = !envelope.intact && (strays.length > 0 || pieces.length === 1);
  readElements(pieces, basket, { inside, gaps: !envelope.intact });
}

/** What a scanner that alters separators may have done: `gaps` it may have, so a value may hold another; `inside` it surely has. */
interface Doubt {
  readonly inside: boolean;
  readonly gaps: boolean;
}

const NO_DOUBT: Doubt = { inside: false, gaps: false };

function readElements(texts: readonly string[], basket: Basket, doubtful = NO_DOUBT): void {
  const read: LabelElement[] = [];
  const present = doubtful.gaps ? findPresent(texts) : null;
  for (let index = 0; index < texts.length; index += 1) {
    const text = texts[index] ?? '';
    let element = readMh10(text, basket);
    if (doubtful.gaps && index === texts.length - 1 && element !== null && element !== 'empty') {
      element = withoutEndLetter(element, text, basket);
    }
    if (element === 'empty') continue;
    if (element === null) {
      basket.unidentified.push(text);
      basket.warnings.push({ code: 'no-identifier', text });
    } else if (
      present !== null &&
      element.field !== null &&
      hidesIdentifier(element.value, present, doubtful.inside)
    ) {
      basket.warnings.push({ code: 'separators-lost', text });
      basket.ambiguous.push({ text, candidates: [{ field: element.field, value: element.value }] });
    } else {
      read.push(element);
    }
  }
  for (const element of asMatLabel(read)) {
    basket.elements.push(element);
    if (element.title === SECOND_LOT) basket.warnings.push({ code: 'second-lot', text: element.value });
  }
}

/** Reads one element: null = no identifier in front, `empty` = an identifier without a value, which states nothing. */
function readMh10(text: string, basket: Basket): LabelElement | 'empty' | null {
  const blank = text.charCodeAt(0) <= 32 ? text.length - text.trimStart().length : 0;
  let length = identifierLength(text, blank);
  let identifier: Identifier | undefined;
  if (length > 0) {
    identifier = identifierAt(text, blank, length);
  } else {
    // A scanner that types GS as Ctrl+] leaves the next letter in lower case.
    const printed = text.slice(blank, blank + identifierLength(text, blank, true));
    identifier = IDENTIFIERS.get(printed.toUpperCase());
    if (identifier !== undefined) {
      length = printed.length;
      basket.warnings.push({ code: 'identifier-lower-case', id: printed });
    }
  }
  if (length === 0) return text.trim() === '' ? 'empty' : null;
  const value = text.slice(blank + length).trim();
  if (value === '') return 'empty';
  if (identifier === undefined) {
    const id = text.slice(blank, blank + length);
    basket.warnings.push({ code: 'identifier-unlisted', id });
    return mh10Element(id, value);
  }
  return identifier.id === '6D' ? qualifiedDate(value) : identifiedElement(identifier, value);
}

/**
 * A scanner that sends EOT as the letter V may leave it behind the last value: a number or date is read without it; a
 * text is left to a person where lower-case identifiers show that this scanner alters control characters.
 */
function withoutEndLetter(element: LabelElement, text: string, basket: Basket): LabelElement | 'empty' {
  const last = element.value.at(-1);
  if (last !== 'V' && last !== 'v') return element;
  const value = element.value.slice(0, -1);
  if (element.kind !== 'text') {
    if (!isDigits(value)) return element;
    basket.warnings.push({ code: 'trailer-uncertain', text });
    return { ...element, value };
  }
  const altered = basket.warnings.some(({ code }) => code === 'identifier-lower-case');
  if (!altered || element.field === null || value === '') return element;
  basket.warnings.push({ code: 'trailer-uncertain', text });
  basket.ambiguous.push({
    text,
    candidates: [
      { field: element.field, value: element.value },
      { field: element.field, value },
    ],
  });
  return 'empty';
}

// Qualifiers of ANSI X12 data element 374, from memory: which date a 6D is.
const MADE_QUALIFIERS = new Set(['094', '405']);
const EXPIRY_QUALIFIERS = new Set(['036']);

function qualifiedDate(value: string): LabelElement {
  const plain = mh10Element('6D', value);
  const qualifier = value.slice(8);
  if (MADE_QUALIFIERS.has(qualifier)) return { ...plain, field: 'dateCode', rank: 5 };
  return EXPIRY_QUALIFIERS.has(qualifier) ? { ...plain, field: 'expires', rank: 3 } : plain;
}

// Signs beyond ASCII that values may hold; any other that is no letter or digit is a mangled separator.
const VALUE_SIGNS = '°±²³®™µΩ€§';

/** Cuts at characters that no value holds, where a known identifier follows. Fills `strays` with what it cut at. */
function splitAtStrays(text: string, strays: string[]): string[] {
  if (isPrintableAscii(text)) return [text];
  const pieces: string[] = [];
  let from = 0;
  for (let at = 0; at < text.length; at += 1) {
    const char = text[at] ?? '';
    if ((char >= ' ' && char <= '~') || VALUE_SIGNS.includes(char) || /[\p{L}\p{N}]/u.test(char)) continue;
    const length = identifierLength(text, at + 1, true);
    if (length === 0 || !IDENTIFIERS.has(text.slice(at + 1, at + 1 + length).toUpperCase())) continue;
    pieces.push(text.slice(from, at));
    strays.push(char);
    from = at + 1;
  }
  pieces.push(text.slice(from));
  return pieces.filter((piece) => piece !== '');
}

/** Which of the identifiers that every label has stand in front of an element. */
interface Present {
  supplierPart: boolean;
  lot: boolean;
  quantity: boolean;
}

function findPresent(texts: readonly string[]): Present {
  const present = { supplierPart: false, lot: false, quantity: false };
  for (const text of texts) {
    const numbered = text[0] === '1';
    const letter = text[numbered ? 1 : 0];
    if (letter === 'T') present.lot = true;
    else if (letter === 'P' && numbered) present.supplierPart = true;
    else if (letter === 'Q' && !numbered) present.quantity = true;
  }
  return present;
}

/**
 * Whether a value looks as if another element had run into it: one that every label has and this one lacks, or any where
 * separators are known to be swallowed.
 */
function hidesIdentifier(value: string, present: Present, inside: boolean): boolean {
  if (inside && /[^0-9](?:1P|1T|3S|4L|9D|1[0-6]D|13E|31P|4K|11K)\S/.test(value)) return true;
  if (!present.supplierPart && value.indexOf('1P', 1) !== -1) return true;
  if (!present.lot && value.indexOf('1T', 1) !== -1) return true;
  return (inside || !present.quantity) && /.Q\d+$/.test(value);
}

function withoutEndMarks(text: string): string {
  let end = text.length;
  while (text[end - 1] === '\x04' || text[end - 1] === '\x1e') end -= 1;
  return text.slice(0, end);
}

/** Whether a code without a header is a run of identified elements between whole separators; reads it if so. */
export function collectHeaderless(
  text: string,
  basket: Basket,
  expected: LabelExpectation | undefined,
): boolean {
  const separator = findIntactSeparator(text);
  if (separator === '') return false;
  const pieces = text
    .split(separator)
    .map(withoutEndMarks)
    .filter((piece) => piece !== '');
  const first = pieces[0] ?? '';
  if (first.startsWith('[)')) {
    if (!first.endsWith('06') || first.length > 12) return false;
    basket.warnings.push({ code: 'header-damaged', found: first });
    collectMh10(pieces.slice(1), { separator, intact: true }, basket, expected);
    return true;
  }
  const length = identifierLength(first, 0);
  if (length === 0 || identifierAt(first, 0, length) === undefined) return false;
  basket.warnings.push({ code: 'header-damaged', found: '' });
  if (separator !== GS) basket.warnings.push({ code: 'separators-replaced', found: separator });
  collectMh10(pieces, { separator, intact: true }, basket, expected);
  return true;
}
