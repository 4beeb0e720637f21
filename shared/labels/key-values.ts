// Lists of words and values: `{qty:100,pm:MK-1}` and `QTY:1000 MPN:MK-1 CoO:TH`.
// Method: every colon or equals sign is looked at backwards for a word; the words found cut the text into values, and the
// character that stands before the words tells whether a value may hold blanks or commas. Refused: splitting at commas
// first, which cuts a value that holds one.

import { isDigit, isLetter } from './characters.ts';
import { type Basket, type ElementKind, identifiedElement, type LabelElement } from './elements.ts';
import { identifierAt, identifierLength } from './identifiers.ts';
import { isRemark } from './pieces.ts';
import { parseQuantity } from './quantity.ts';
import type { LabelExpectation, LabelFieldName } from './reading.ts';

type Word = readonly [title: string, field: LabelFieldName | null, kind?: ElementKind, rank?: number];

/** A data identifier that is used as a key, `1P:MK-1`, means what it means in front of a value. */
function identifierWord(key: string): Word | undefined {
  const length = identifierLength(key, 0);
  const identifier = length > 0 && length === key.length ? identifierAt(key, 0, length) : undefined;
  if (identifier === undefined || !identifier.separate) return undefined;
  const { title, field, kind, rank } = identifiedElement(identifier, '');
  return [title, field, kind, rank];
}

const MAKERS_PART: Word = ["maker's part number", 'supplierPart'];
const SITES_PART: Word = ["customer's part number", 'part'];
const SOME_PART: Word = ['part number, the seller does not say whose', null];
const LOT: Word = ['lot', 'lot'];
const DATE: Word = ['date code', 'dateCode', 'code'];
const EXPIRY: Word = ['expiry date', 'expires', 'YYYYMMDD'];
const COUNTRY: Word = ['country of origin', 'country', 'country'];
const ORDER: Word = ['purchase order', 'order'];
const REEL: Word = ['package id', 'reel'];
const MAKER: Word = ['maker', 'supplier'];
const QUANTITY: Word = ['quantity', 'quantity', 'quantity'];
const MSL: Word = ['moisture sensitivity level', 'msl', 'msl'];

/** Words in upper case without marks between (common practice). */
const WORDS: ReadonlyMap<string, Word> = new Map([
  ['QTY', QUANTITY],
  ['QUANTITY', QUANTITY],
  ['QNTY', QUANTITY],
  ['MPN', MAKERS_PART],
  ['MFRPN', MAKERS_PART],
  ['MFRPART', MAKERS_PART],
  ['SUPPLIERPART', MAKERS_PART],
  ['SUPPLIERPARTNO', MAKERS_PART],
  ['MANUFACTURERPART', MAKERS_PART],
  ['MFGPN', MAKERS_PART],
  ['MFRPARTNO', MAKERS_PART],
  ['MFGPARTNO', MAKERS_PART],
  ['MANUFACTURERPN', MAKERS_PART],
  ['MANUFACTURERPARTNUMBER', MAKERS_PART],
  ['SUPPLIERPN', MAKERS_PART],
  ['VENDORPN', MAKERS_PART],
  ['SPN', MAKERS_PART],
  ['CPN', SITES_PART],
  ['CUSTPN', SITES_PART],
  ['CUSTPART', SITES_PART],
  ['CUSTOMERPART', SITES_PART],
  ['CUSTOMERPN', SITES_PART],
  ['CUSTPARTNO', SITES_PART],
  ['CUSTOMERPARTNUMBER', SITES_PART],
  ['IPN', SITES_PART],
  ['PN', SOME_PART],
  ['PART', SOME_PART],
  ['PARTNO', SOME_PART],
  ['PARTNUMBER', SOME_PART],
  ['LOT', LOT],
  ['LOTNO', LOT],
  ['LOTNUMBER', LOT],
  ['LOTCODE', LOT],
  ['BATCH', LOT],
  ['BATCHNO', LOT],
  ['BATCHNUMBER', LOT],
  ['DC', DATE],
  ['DATECODE', DATE],
  ['EXP', EXPIRY],
  ['EXPIRY', EXPIRY],
  ['EXPIRES', EXPIRY],
  ['EXPDATE', EXPIRY],
  ['EXPIRYDATE', EXPIRY],
  ['EXPIRATIONDATE', EXPIRY],
  ['COO', COUNTRY],
  ['COUNTRY', COUNTRY],
  ['ORIGIN', COUNTRY],
  ['COUNTRYOFORIGIN', COUNTRY],
  ['MADEIN', COUNTRY],
  ['PO', ORDER],
  ['PONO', ORDER],
  ['PONUMBER', ORDER],
  ['ORDER', ORDER],
  ['REEL', REEL],
  ['REELID', REEL],
  ['RID', REEL],
  ['UID', REEL],
  ['MFR', MAKER],
  ['MFG', MAKER],
  ['MANUFACTURER', MAKER],
  ['VENDOR', MAKER],
  ['SUPPLIER', MAKER],
  ['MSL', MSL],
  ['REV', ['revision', null]],
  ['DESC', ['description', null]],
  ['DESCRIPTION', ['description', null]],
]);

/** Short keys that only lists in braces use. */
const BRACE_WORDS: ReadonlyMap<string, Word> = new Map([
  ['PM', MAKERS_PART],
  ['PC', ["distributor's own part number", null]],
  ['ON', ['order', 'order']],
  ['PBN', ['pick batch', null]],
  ['MC', ["key of the distributor's own", null]],
  ['CC', ["key of the distributor's own", null]],
  ['PDI', ["key of the distributor's own", null]],
  ['HP', ["key of the distributor's own", null]],
  ['WC', ["key of the distributor's own", null]],
]);

/** A number for a name, made from its last letter to its first, so that it grows as a key is followed backwards. */
function mix(hash: number, letter: number): number {
  return (Math.imul(hash, 31) + letter) | 0;
}

function hashOf(name: string): number {
  let hash = 0;
  for (let at = name.length - 1; at >= 0; at -= 1) hash = mix(hash, name.charCodeAt(at));
  return hash;
}

/** Numbers of all names: a key whose number is not here is no word, and its name need not be made. */
const HASHES: ReadonlySet<number> = new Set([...WORDS.keys(), ...BRACE_WORDS.keys()].map(hashOf));

interface Entry {
  readonly key: string;
  readonly word: Word | null;
  /** Where the key begins, and where its value does. */
  readonly at: number;
  readonly from: number;
}

function isQuote(char: number): boolean {
  return char === 34 || char === 39;
}

const KEY_MARKS = new Set(Array.from('/.#_-', (mark) => mark.charCodeAt(0)));

/** Whether a character other than a letter or a quote may stand in a key. */
function isKeyMark(char: number): boolean {
  return isDigit(char) || KEY_MARKS.has(char);
}

/** A key begins with a letter, with up to three digits or a quote in front. */
function beginsLikeKey(text: string, from: number, end: number): boolean {
  let at = isQuote(text.charCodeAt(from)) ? from + 1 : from;
  for (let digits = 0; digits < 3 && isDigit(text.charCodeAt(at)); digits += 1) at += 1;
  return at < end && isLetter(text.charCodeAt(at));
}

function wordOf(key: string, braced: boolean): Word | null {
  const word = WORDS.get(key);
  if (word !== undefined) return word;
  const name = key.replace(/[^A-Za-z]/g, '').toUpperCase();
  return WORDS.get(name) ?? (braced ? BRACE_WORDS.get(name) : undefined) ?? null;
}

/** The word before a colon at `end`, up to two more words back where together they are one that is known. */
function keyBefore(text: string, end: number, low: number, braced: boolean): Entry | null {
  let last = end;
  while (last > low && text[last - 1] === ' ') last -= 1;
  let from = last;
  let best: Entry | null = null;
  let hash = 0;
  let quoted = false;
  for (let words = 0; words < 3; words += 1) {
    for (; from > low && last - from < 24; from -= 1) {
      const char = text.charCodeAt(from - 1);
      if (isLetter(char)) hash = mix(hash, char & ~32);
      else if (isQuote(char)) quoted = true;
      else if (!isKeyMark(char)) break;
    }
    if (!beginsLikeKey(text, from, last)) break;
    // Only identifiers are as short as three characters, and only names have a number that is known.
    const named = HASHES.has(hash);
    if (best === null || named || quoted || last - from <= 3) {
      const key = text.slice(from, last);
      const plain = quoted ? key.replace(/["']/g, '') : key;
      const word = identifierWord(plain) ?? (named ? wordOf(key, braced) : null);
      if (best === null || word !== null) best = { key: plain, word, at: from, from: end + 1 };
    }
    if (text[from - 1] !== ' ') break;
    from -= 1;
  }
  return best;
}

/** A key counts only at the start, or behind a blank or a mark that separates entries. */
function standsApart(text: string, at: number, braced: boolean): boolean {
  if (at === 0) return true;
  const before = text[at - 1] ?? '';
  if (before === ',' || before === ';') return true;
  return !braced && (before === ' ' || /[\s|@]/.test(before));
}

function findEntries(text: string, braced: boolean): Entry[] {
  const entries: Entry[] = [];
  for (let at = 0; at < text.length; at += 1) {
    const char = text.charCodeAt(at);
    if ((char !== 58 && char !== 61) || text.startsWith('//', at + 1)) continue;
    const low = entries[entries.length - 1]?.from ?? 0;
    const entry = keyBefore(text, at, low, braced);
    if (entry === null || !standsApart(text, entry.at, braced)) continue;
    // A word that is not known opens an entry only in braces: elsewhere it may stand inside a value.
    if (entry.word !== null || braced) entries.push(entry);
  }
  return entries;
}

/** Reads a list of words and values; false = it is none. */
export function collectKeyValues(
  text: string,
  basket: Basket,
  expected: LabelExpectation | undefined,
): boolean {
  const braced = text[0] === '{';
  const inner = braced ? text.slice(1, text.endsWith('}') ? -1 : undefined) : text;
  const entries = findEntries(inner, braced);
  if (
    (entries[0]?.at ?? 0) > 0 ||
    !entries.some((entry) => entry.word !== null) ||
    (braced && entries.length < 2)
  )
    return false;
  // One letter and a colon is too little to be a list: `T:100` may be a bare number, read in company with the others.
  if (entries.length === 1 && entries[0]?.key.length === 1) return false;
  const found: LabelElement[] = [];
  let index = 0;
  for (const entry of entries) {
    index += 1;
    const next = entries[index]?.at ?? inner.length;
    const place = { last: index === entries.length, braced };
    readEntry(entry, inner.slice(entry.from, next), place, found, basket);
  }
  settleSomePart(found, basket, expected);
  for (const element of found) basket.elements.push(element);
  return true;
}

interface Place {
  readonly last: boolean;
  readonly braced: boolean;
}

function unquote(value: string): string {
  const quoted = value.length >= 2 && (value[0] === '"' || value[0] === "'") && value.endsWith(value[0]);
  return quoted ? value.slice(1, -1) : value;
}

const OWN_KEY: Word = ["key of the label's own", null];

/** Whether a value surely holds no blank and no mark between entries: plain ASCII without them. */
function isOnePiece(value: string): boolean {
  for (let at = 0; at < value.length; at += 1) {
    const char = value.charCodeAt(at);
    if (char <= 32 || char >= 127 || char === 59 || char === 64 || char === 124) return false;
  }
  return true;
}

function readEntry(entry: Entry, slice: string, place: Place, found: LabelElement[], basket: Basket): void {
  const trimmed = slice.trim();
  const marked = !place.last && ';,|@'.includes(trimmed.at(-1) ?? ' ');
  let value = marked ? trimmed.slice(0, -1).trim() : trimmed;
  const word = entry.word ?? OWN_KEY;
  const field = word[1];
  const kind = word[2] ?? 'text';
  const rests: string[] = [];
  if (!place.braced && !marked && !isOnePiece(value)) {
    const cut = place.last ? /^[^;|@]*/.exec(value)?.[0] : value;
    if (cut !== undefined && cut.length < value.length) {
      rests.push(...value.slice(cut.length).split(/[;|@]/));
      value = cut.trim();
    }
    const words = value.split(/\s+/);
    if (words.length > 1 && !(kind === 'quantity' && parseQuantity(value) !== null) && field !== 'supplier') {
      const tail = words.slice(1);
      if (kind === 'text' && !tail.every(isRemark)) {
        askAboutBlanks(entry.key, field, words[0] ?? '', value, basket);
        return;
      }
      value = words[0] ?? '';
      rests.push(...tail);
    }
  }
  value = unquote(value);
  if (value !== '') found.push({ id: entry.key, title: word[0], value, field, rank: word[3] ?? 0, kind });
  for (const rest of rests) if (rest.trim() !== '') keepText(rest.trim(), basket);
}

function keepText(text: string, basket: Basket): void {
  basket.unidentified.push(text);
  basket.warnings.push({ code: 'no-identifier', text });
}

function askAboutBlanks(
  key: string,
  field: LabelFieldName | null,
  first: string,
  whole: string,
  basket: Basket,
): void {
  if (field === null) {
    keepText(whole, basket);
    return;
  }
  basket.warnings.push({ code: 'value-may-go-on', id: key, text: whole });
  basket.ambiguous.push({
    text: whole,
    candidates: [
      { field, value: first },
      { field, value: whole },
    ],
  });
}

/** A part number of which the label does not say whose it is counts only where the setup knows it and no other is there. */
function settleSomePart(found: LabelElement[], basket: Basket, expected: LabelExpectation | undefined): void {
  let at = -1;
  for (let index = 0; index < found.length; index += 1) {
    const element = found[index];
    if (element?.field === 'part' || element?.field === 'supplierPart') return;
    if (at === -1 && element?.title === SOME_PART[0]) at = index;
  }
  const some = found[at];
  if (some === undefined) return;
  const isPart = expected?.parts.has(some.value) ?? false;
  const isSupplierPart = expected?.supplierParts.has(some.value) ?? false;
  if (isPart !== isSupplierPart) {
    const field = isPart ? 'part' : 'supplierPart';
    found[at] = { ...some, field };
    basket.warnings.push({ code: 'confirmed-by-setup', field, value: some.value });
    return;
  }
  basket.warnings.push({ code: 'identifier-unconfirmed', text: some.value });
  basket.ambiguous.push({
    text: some.value,
    candidates: [
      { field: 'part', value: some.value },
      { field: 'supplierPart', value: some.value },
    ],
  });
}
