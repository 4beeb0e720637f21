// Two dialects that use letters of their own in places where identifiers of MH10.8.2 are expected: two-letter tags inside
// a 06 envelope, and one-letter tags in a list with semicolons.
// Method: a dialect is recognised only where a reading as MH10.8.2 is impossible for some piece (a quantity that begins
// with T, a date of four digits after D); where both readings stand, the piece is a question.

import { isDigit } from './characters.ts';
import type { Basket, ElementKind, LabelElement } from './elements.ts';
import { identifierLength } from './identifiers.ts';
import type { LabelExpectation, LabelFieldName } from './reading.ts';

type Tag = readonly [title: string, field: LabelFieldName | null, kind: ElementKind];

const TWO_LETTERS: Readonly<Record<string, Tag>> = {
  PN: ["maker's part number", 'supplierPart', 'text'],
  QT: ['quantity', 'quantity', 'quantity'],
  BT: ['lot', 'lot', 'text'],
  DC: ['date code', 'dateCode', 'code'],
  LT: ['label id', 'reel', 'text'],
  RV: ['revision', null, 'text'],
  PO: ['order', 'order', 'text'],
  BX: ['box', null, 'text'],
};

function tagOf(text: string): string | null {
  const tag = text.slice(0, 2);
  return Object.hasOwn(TWO_LETTERS, tag) ? tag : null;
}

function element(id: string, tag: Tag, value: string): LabelElement {
  return { id, title: tag[0], value, field: tag[1], rank: 0, kind: tag[2] };
}

/** Whether an element cannot be MH10.8.2: `QT1500` is no quantity, `DC26055` no date YYMMDD. */
function breaksMh10(text: string): boolean {
  return /^QT\s*\d/.test(text) || /^DC\s*[0-9A-Z]/.test(text);
}

/** Whether an element can only be MH10.8.2: digits before the letter, or a quantity in digits. */
function provesMh10(text: string): boolean {
  return identifierLength(text, 0) > 1 || (text[0] === 'Q' && isDigit(text.charCodeAt(1)));
}

/**
 * Reads the elements of a 06 envelope that carries two-letter tags instead of identifiers; false = it does not.
 * Where only the tag PN and others that MH10.8.2 could mean too are there, PN becomes a question and the rest is read on.
 */
export function collectTwoLetterTags(
  texts: readonly string[],
  basket: Basket,
  expected: LabelExpectation | undefined,
): boolean {
  if (texts.some(provesMh10)) return false;
  let tagged = 0;
  let broken = false;
  for (const text of texts) {
    if (tagOf(text) !== null) tagged += 1;
    if (breaksMh10(text)) broken = true;
  }
  if (tagged === 0 || tagged * 2 < texts.length) return false;
  if (!broken || tagged < 2) return askAboutTags(texts, tagged, basket, expected);
  const tags: string[] = [];
  for (const text of texts) {
    const tag = tagOf(text);
    const value = text.slice(2).trim();
    if (tag === null) {
      basket.unidentified.push(text);
      basket.warnings.push({ code: 'no-identifier', text });
    } else {
      tags.push(tag);
      if (value !== '') basket.elements.push(element(tag, TWO_LETTERS[tag] as Tag, value)); // tagOf() found it
    }
  }
  basket.warnings.push({ code: 'tags-not-mh10', tags });
  return true;
}

/** All elements could be tags and could be identifiers: each with a field in either reading is asked about. */
function askAboutTags(
  texts: readonly string[],
  tagged: number,
  basket: Basket,
  expected: LabelExpectation | undefined,
): boolean {
  const part = texts.find((text) => text.startsWith('PN'));
  if (tagged < texts.length || part === undefined) return false;
  const asTag = part.slice(2).trim();
  const asIdentifier = part.slice(1).trim();
  const tagKnown = expected?.supplierParts.has(asTag) ?? false;
  const identifierKnown = expected?.parts.has(asIdentifier) ?? false;
  if (identifierKnown && !tagKnown) return false;
  for (const text of texts) {
    const tag = TWO_LETTERS[text.slice(0, 2)] as Tag; // every text is tagged here
    const value = text.slice(2).trim();
    if (value === '') continue;
    if (tagKnown && !identifierKnown) {
      basket.elements.push(element(text.slice(0, 2), tag, value));
    } else {
      const candidates = tag[1] === null ? [] : [{ field: tag[1], value }];
      if (text === part) candidates.push({ field: 'part', value: asIdentifier });
      basket.ambiguous.push({ text, candidates });
      basket.warnings.push({ code: 'identifier-unconfirmed', text });
    }
  }
  return true;
}

const ONE_LETTER: Readonly<Record<string, Tag>> = {
  R: ['reel', 'reel', 'text'],
  P: ["site's part number", 'part', 'text'],
  D: ['date code', 'dateCode', 'code'],
  L: ['lot', 'lot', 'text'],
  V: ['supplier', 'supplier', 'text'],
  Q: ['quantity', 'quantity', 'quantity'],
  S: ["maker's part number", 'supplierPart', 'text'],
};

/**
 * Reads a list of one-letter tags (`RVS1;PSC5;D2113;L0001;VVS1;Q5000;SLTST-1`); false = it is none. A tag R, or four
 * digits after D, shows that the letters are not those of MH10.8.2.
 */
export function collectOneLetterTags(pieces: readonly string[], basket: Basket): boolean {
  const letters = new Set<string>();
  let shown = false;
  for (const piece of pieces) {
    const letter = piece[0] ?? '';
    if (!Object.hasOwn(ONE_LETTER, letter) || letters.has(letter)) return false;
    letters.add(letter);
    if (letter === 'R' || /^D\d{4}$/.test(piece)) shown = true;
    if (letter === 'Q' && !/^Q\s*\d/.test(piece)) return false;
  }
  if (!shown || letters.size < 3) return false;
  for (const piece of pieces) {
    const letter = piece[0] as string; // checked above
    const value = piece.slice(1).trim();
    if (value !== '') basket.elements.push(element(letter, ONE_LETTER[letter] as Tag, value));
  }
  basket.warnings.push({ code: 'one-letter-tags', text: pieces.join(';') });
  return true;
}
