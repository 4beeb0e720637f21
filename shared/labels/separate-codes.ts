// Codes that each carry one element, or none: Code 128 and Code 39 with a data identifier in front, gathered into one label.
// Method: an identifier is believed where the label as a whole speaks in identifiers, or where the setup knows the value;
// a code alone that may as well be a bare part number is a question. Refused: longest prefix wins, which turns the part
// number `P2103-A` into part `2103-A`.

import { isCountryCode } from './countries.ts';
import { readDateAs } from './dates.ts';
import { type Basket, identifiedElement } from './elements.ts';
import { parseMsl } from './gather.ts';
import { type Identifier, identifierAt, identifierLength } from './identifiers.ts';
import { parseQuantity } from './quantity.ts';
import type { LabelCandidate, LabelExpectation } from './reading.ts';

/** One separate code, and the identifier that it may carry. */
export interface SeparateCode {
  readonly text: string;
  /** Null where no identifier of reel labels fits. */
  readonly id: string | null;
  readonly identifier: Identifier | null;
  readonly value: string;
}

/** Splits a separate code into identifier and value where the value is what the identifier promises. */
export function splitSeparateCode(text: string): SeparateCode {
  const bracketed = text[0] === '(' ? text.indexOf(')') : -1;
  const from = bracketed === -1 ? 0 : 1;
  const length = identifierLength(text, from);
  if (length === 0 || (bracketed !== -1 && bracketed !== from + length)) return bareCode(text);
  const identifier = identifierAt(text, from, length);
  if (identifier === undefined || !identifier.separate) return bareCode(text);
  let value = text.slice(bracketed === -1 ? length : bracketed + 1).trim();
  if (value[0] === ':' || value[0] === '=') value = value.slice(1).trim();
  if (value === '' || !isWellFormed(identifier, value)) return bareCode(text);
  return { text, id: identifier.id, identifier, value };
}

function bareCode(text: string): SeparateCode {
  return { text, id: null, identifier: null, value: text };
}

function isWellFormed(identifier: Identifier, value: string): boolean {
  switch (identifier.kind) {
    case 'quantity':
      return parseQuantity(value) !== null;
    case 'country':
      return isCountryCode(value);
    case 'msl':
      return parseMsl(value) !== null;
    case 'date':
      return (
        /^[0-9][0-9A-Z/.-]{2,11}$/.test(value) &&
        (identifier.length === 0 || value.length === identifier.length)
      );
    default:
      if (identifier.id === 'E') return /^[eE]?\d$/.test(value) || /^[A-Za-z]{2}$/.test(value);
      return value.length <= 60;
  }
}

/** An identifier that says by its look that it is one: digits in front, or Q before a number. */
function isTelling(code: SeparateCode): boolean {
  return code.id !== null && (code.id.length > 1 || code.id === 'Q');
}

/** A code that can stand alone: nobody numbers parts `10D2618`, `4LMY`, `13E3` or `1TLOT77`. */
function standsAlone(code: SeparateCode): boolean {
  if (code.id === null || code.id.length === 1 || code.id.endsWith('P')) return false;
  if (code.id.endsWith('S')) return code.value.length >= 6;
  if (code.id === '10D') return readDateAs(code.value, 'YYWW').made !== null;
  return true;
}

function bareCandidates(text: string): LabelCandidate[] {
  return [
    { field: 'part', value: text },
    { field: 'supplierPart', value: text },
  ];
}

/** What the setup says about a code: its value after the identifier, the whole code, both, or nothing. */
function askSetup(code: SeparateCode, expected: LabelExpectation): 'value' | 'whole' | 'both' | 'nothing' {
  const whole = expected.parts.has(code.text) || expected.supplierParts.has(code.text);
  const value =
    (code.id === 'P' && expected.parts.has(code.value)) ||
    (code.id === '1P' && expected.supplierParts.has(code.value));
  if (whole) return value ? 'both' : 'whole';
  return value ? 'value' : 'nothing';
}

function pushBare(text: string, expected: LabelExpectation, basket: Basket): void {
  for (const [field, set] of [
    ['part', expected.parts],
    ['supplierPart', expected.supplierParts],
  ] as const) {
    if (!set.has(text)) continue;
    basket.elements.push({ id: '', title: 'bare part number', value: text, field, rank: 0, kind: 'text' });
    basket.warnings.push({ code: 'confirmed-by-setup', field, value: text });
  }
}

function ask(code: SeparateCode, basket: Basket): void {
  const field = code.identifier?.field ?? null;
  const asIdentified: LabelCandidate[] = field === null ? [] : [{ field, value: code.value }];
  basket.ambiguous.push({ text: code.text, candidates: [...asIdentified, ...bareCandidates(code.text)] });
  basket.warnings.push({ code: 'identifier-unconfirmed', text: code.text });
}

/** How far the company of a code can be trusted. */
interface Company {
  /** The label speaks in identifiers. */
  readonly speaks: boolean;
  /** A part number stands somewhere on the label, or may: so a one-letter identifier is not the part number's first letter. */
  readonly partElsewhere: boolean;
  readonly others: number;
}

function judgeCompany(codes: readonly SeparateCode[], basket: Basket): Company {
  const ids = new Set<string>();
  for (const element of basket.elements) ids.add(element.id);
  const enveloped = ids.size > 0;
  let telling = 0;
  let bare = 0;
  for (const code of codes) {
    if (code.id === null) bare += 1;
    else ids.add(code.id);
    if (isTelling(code)) telling += 1;
  }
  return {
    speaks: enveloped || (ids.size >= 2 && telling > 0) || (ids.size >= 3 && ids.has('P')),
    partElsewhere: ids.has('P') || ids.has('1P') || enveloped || (bare > 0 && telling >= 2),
    others: codes.length - 1,
  };
}

function isBelieved(code: SeparateCode, company: Company): boolean {
  if (code.id === null) return false;
  if (standsAlone(code)) return true;
  if (code.id === 'Q') return company.speaks || company.others > 0;
  if (!company.speaks) return false;
  return code.id.length > 1 || company.partElsewhere;
}

/** Values that stand after `P` on one code and after `1P` on another: strong evidence that both begin with an identifier. */
function statedTwice(codes: readonly SeparateCode[]): ReadonlySet<string> {
  const valuesOf = (wanted: string) => codes.filter(({ id }) => id === wanted).map(({ value }) => value);
  const makers = new Set(valuesOf('1P'));
  return new Set(valuesOf('P').filter((value) => makers.has(value)));
}

/** What is to be done about a code: the setup's word, with that of a second code which states the same value. */
function decide(setup: ReturnType<typeof askSetup>, isTwin: boolean): typeof setup {
  if (!isTwin) return setup;
  return setup === 'both' ? 'value' : setup === 'whole' ? 'both' : setup;
}

/** Reads separate codes into the basket, in the company of what is in it already. */
export function collectSeparateCodes(
  texts: readonly string[],
  basket: Basket,
  expected: LabelExpectation | undefined,
): void {
  const codes = texts.map(splitSeparateCode);
  const company = judgeCompany(codes, basket);
  const twins = statedTwice(codes);
  for (const code of codes) {
    const said = expected === undefined ? 'nothing' : askSetup(code, expected);
    const isTwin = (code.id === 'P' || code.id === '1P') && twins.has(code.value);
    const setup = decide(said, isTwin);
    if (setup === 'whole' && expected !== undefined) {
      pushBare(code.text, expected, basket);
    } else if (setup === 'both') {
      ask(code, basket);
    } else if (
      code.identifier !== null &&
      (setup === 'value' || isTwin || isBelieved(code, company) || isQuantityForSetup(code, expected))
    ) {
      basket.elements.push(identifiedElement(code.identifier, code.value));
    } else if (code.id !== null) {
      ask(code, basket);
    } else {
      basket.unidentified.push(code.text);
      basket.warnings.push({ code: 'no-identifier', text: code.text });
    }
  }
}

/** A setup that does not know the whole code as a part number leaves the quantity as its only reading. */
function isQuantityForSetup(code: SeparateCode, expected: LabelExpectation | undefined): boolean {
  return code.id === 'Q' && expected !== undefined;
}
