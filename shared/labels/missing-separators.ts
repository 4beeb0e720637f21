// What can be read for certain from an envelope whose separators are gone.
// Method: the first identifier is certain; a value whose length the standard fixes, a quantity whose digits end before
// exactly one possible identifier, and a last value without any capital letter (so without any identifier inside) are
// certain too, and so is where the next identifier begins. Part numbers count only where the setup knows them.
// Refused: cutting at everything that looks like an identifier.

import { isCountryCode } from './countries.ts';
import { parseDate, parseWeek } from './dates.ts';
import { type Basket, mh10Element } from './elements.ts';
import { parseGs1 } from './gs1.ts';
import { IDENTIFIERS, identifierLength } from './identifiers.ts';
import type { LabelCandidate, LabelExpectation } from './reading.ts';

// Longest part number that is looked for inside a run of text; keeps the search linear.
const LONGEST_PART = 60;

/** Whether a known identifier, or the end, stands at `at`. */
function isBoundary(body: string, at: number): boolean {
  if (at >= body.length) return true;
  const length = identifierLength(body, at);
  return length > 0 && IDENTIFIERS.has(body.slice(at, at + length));
}

/** Reads a body of MH10.8.2 elements without separators; what is not certain is kept as text and asked about. */
export function collectUnseparatedMh10(
  body: string,
  basket: Basket,
  expected: LabelExpectation | undefined,
): void {
  let at = 0;
  while (at < body.length) {
    const length = identifierLength(body, at);
    const id = body.slice(at, at + length);
    if (length === 0 || !IDENTIFIERS.has(id)) break;
    const end = certainEnd(body, id, at + length, expected);
    if (end === null) break;
    basket.elements.push(mh10Element(id, body.slice(at + length, end)));
    at = end;
  }
  if (at >= body.length) return;
  const rest = body.slice(at);
  basket.unidentified.push(rest);
  confirmBySetup(rest, basket, expected);
}

/** Where the value of `id` that begins at `from` ends, if that is certain. */
function certainEnd(
  body: string,
  id: string,
  from: number,
  expected: LabelExpectation | undefined,
): number | null {
  const identifier = IDENTIFIERS.get(id);
  if (identifier === undefined || from >= body.length) return null;
  if (identifier.kind === 'quantity') return endOfQuantity(body, from);
  if (identifier.kind === 'msl') return endOfMsl(body, from);
  if (identifier.length > 0) {
    const end = from + identifier.length;
    const value = body.slice(from, end);
    return isFixedValue(id, value) && isBoundary(body, end) ? end : null;
  }
  if (!/[A-Z]/.test(body.slice(from))) return body.length;
  if (id !== 'P' && id !== '1P') return null;
  const ends = knownPartEnds(body, from, id === 'P' ? expected?.parts : expected?.supplierParts);
  return ends.length === 1 ? (ends[0] ?? null) : null;
}

function isFixedValue(id: string, value: string): boolean {
  switch (id) {
    case '4L':
      return isCountryCode(value);
    case '10D':
      return parseWeek(value, 'YYWW') !== null;
    case '11D':
      return parseWeek(value, 'YYYYWW') !== null;
    case '12D':
    case '14D':
    case '16D':
    case '25D':
      return parseDate(value, 'YYYYMMDD') !== null;
    case '15D':
    case '17D':
      return parseDate(value, 'DDMMYYYY') !== null;
    default:
      return false;
  }
}

/** End of a quantity: its digits may be followed by exactly one possible identifier, which may begin with some of them. */
function endOfQuantity(body: string, from: number): number | null {
  let digits = from;
  while (digits < body.length && body.charCodeAt(digits) >= 48 && body.charCodeAt(digits) <= 57) digits += 1;
  if (digits === from) return null;
  if (digits === body.length) return digits;
  const ends: number[] = [];
  for (let end = Math.max(from + 1, digits - 3); end <= digits; end += 1) {
    if (isBoundary(body, end)) ends.push(end);
  }
  return ends.length === 1 ? (ends[0] ?? null) : null;
}

function endOfMsl(body: string, from: number): number | null {
  const digit = body[from] ?? '';
  if (!'123456'.includes(digit) || digit === '') return null;
  const lettered = (digit === '2' || digit === '5') && /[aA]/.test(body[from + 1] ?? '');
  const end = from + (lettered ? 2 : 1);
  return isBoundary(body, end) ? end : null;
}

/** Every end at which a part number that the setup knows is followed by an identifier or by the end. */
function knownPartEnds(body: string, from: number, known: ReadonlySet<string> | undefined): number[] {
  const ends: number[] = [];
  if (known === undefined || known.size === 0) return ends;
  const last = Math.min(body.length, from + LONGEST_PART);
  for (let end = from + 1; end <= last; end += 1) {
    if (known.has(body.slice(from, end)) && isBoundary(body, end)) ends.push(end);
  }
  return ends;
}

/** Looks for `P` or `1P` with a part number that the setup knows; one such reading is stated, several are asked about. */
function confirmBySetup(rest: string, basket: Basket, expected: LabelExpectation | undefined): void {
  const candidates: LabelCandidate[] = [];
  const seen = new Set<string>();
  const add = (field: 'part' | 'supplierPart', from: number, known: ReadonlySet<string> | undefined) => {
    for (const end of knownPartEnds(rest, from, known)) {
      const value = rest.slice(from, end);
      if (!seen.has(`${field} ${value}`)) candidates.push({ field, value });
      seen.add(`${field} ${value}`);
    }
  };
  for (let at = rest.indexOf('P'); at !== -1; at = rest.indexOf('P', at + 1)) {
    add('part', at + 1, expected?.parts);
    if (rest[at - 1] === '1') add('supplierPart', at + 1, expected?.supplierParts);
  }
  for (const field of ['part', 'supplierPart'] as const) {
    const found = candidates.filter((candidate) => candidate.field === field);
    const value = found[0]?.value;
    if (found.length !== 1 || value === undefined) continue;
    basket.elements.push(mh10Element(field === 'part' ? 'P' : '1P', value));
    basket.warnings.push({ code: 'confirmed-by-setup', field, value });
  }
  basket.ambiguous.push({ text: rest, candidates });
}

/** Reads a GS1 element string inside an envelope without separators: only values of predefined length are certain. */
export function collectUnseparatedGs1(body: string, basket: Basket): void {
  const { elements } = parseGs1(body);
  let at = 0;
  for (const element of elements) {
    const predefined = /^(0[0-4]|1[1-9]|20|3[1-6]|41)/.test(element.id);
    if (!predefined) break;
    basket.elements.push(element);
    at += element.id.length + element.value.length;
  }
  if (at < body.length) {
    basket.unidentified.push(body.slice(at));
    basket.ambiguous.push({ text: body.slice(at), candidates: [] });
  }
}
