// What the identified pieces of one label state together.
// Method: per field the identifier of best rank wins; two different values at the same rank are a conflict, which leaves
// the field null and asks. Refused: the last or first value wins, which accepts a wrong lot in silence.

import { isCountryCode } from './countries.ts';
import {
  type DateCodeReading,
  dateToIsoWeek,
  daysInMonth,
  formatDate,
  parseDate,
  parseIsoLikeDate,
  parseWeek,
  readDateAs,
  readDateCode,
} from './dates.ts';
import type { Basket, LabelElement } from './elements.ts';
import { parseQuantity } from './quantity.ts';
import {
  type IsoWeek,
  type LabelField,
  type LabelFieldName,
  type LabelMsl,
  type LabelReading,
  labelMsls,
} from './reading.ts';

type TextField = 'part' | 'supplierPart' | 'lot' | 'reel' | 'supplier' | 'order';

/** Turns what the parsers found into a reading. */
export function gather(basket: Basket): LabelReading {
  const { elements, unidentified, ambiguous, warnings, rules } = basket;
  const quantity = gatherQuantity(basket);
  const date = gatherDateCode(basket);
  const reading: LabelReading = {
    part: gatherText(basket, 'part'),
    supplierPart: gatherText(basket, 'supplierPart'),
    quantity: quantity.quantity,
    unit: quantity.unit,
    lot: gatherText(basket, 'lot'),
    dateCode: date.dateCode,
    made: date.made,
    expires: gatherExpiry(basket),
    reel: gatherText(basket, 'reel'),
    supplier: gatherText(basket, 'supplier'),
    country: gatherCountry(basket),
    msl: gatherMsl(basket),
    order: gatherText(basket, 'order'),
    fields: fieldsOf(elements),
    unidentified,
    ambiguous,
    warnings,
    rules,
  };
  if (elements.length === 0 && unidentified.length === 0 && ambiguous.length === 0) {
    if (warnings.length === 0) warnings.push({ code: 'no-code' });
  } else if (reading.part === null && reading.supplierPart === null) {
    warnings.push({ code: 'no-part-number' });
  }
  return reading;
}

function fieldsOf(elements: readonly LabelElement[]): LabelField[] {
  const fields: LabelField[] = [];
  for (const { id, title, value } of elements) fields.push({ id, title, value });
  return fields;
}

/**
 * The one element of best rank that states a field; asks where several differ. Every field looks through all elements:
 * a label has a handful of either, and a table of them costs more than it saves.
 */
function only(basket: Basket, field: LabelFieldName): LabelElement | null {
  let best: LabelElement | null = null;
  let values: Set<string> | null = null;
  for (const element of basket.elements) {
    if (element.field !== field) continue;
    if (best === null || element.rank < best.rank) {
      best = element;
      values = null;
    } else if (element.rank === best.rank && element.value !== best.value) {
      values ??= new Set([best.value]);
      values.add(element.value);
    }
  }
  if (values === null) return best;
  const differing = [...values];
  basket.warnings.push({ code: 'conflict', field, values: differing });
  basket.ambiguous.push({
    text: differing.join(' '),
    candidates: differing.map((value) => ({ field, value })),
  });
  return null;
}

function gatherText(basket: Basket, field: TextField): string | null {
  return only(basket, field)?.value ?? null;
}

function gatherQuantity(basket: Basket): { quantity: number | null; unit: string | null } {
  const element = only(basket, 'quantity');
  if (element === null) return { quantity: null, unit: null };
  const read = parseQuantity(element.value);
  if (read === null) {
    basket.warnings.push({ code: 'quantity-unreadable', text: element.value });
    return { quantity: null, unit: null };
  }
  if (read.marks) {
    basket.warnings.push({ code: 'quantity-marks', text: element.value, quantity: read.quantity });
  }
  return { quantity: read.quantity, unit: read.unit };
}

function readMade(element: LabelElement): DateCodeReading {
  const { kind, value } = element;
  switch (kind) {
    case 'code':
      return readDateCode(value);
    case 'YYWW':
    case 'YYYYWW':
    case 'YYMMDD':
    case 'YYYYMMDD':
    case 'DDMMYY':
    case 'DDMMYYYY':
    case 'MMDDYY':
    case 'YYDDD': {
      const read = readDateAs(value, kind);
      // A value of another length than its identifier promises is read like a date code of no promised format.
      return read.made === null && value.length !== kind.length ? readDateCode(value) : read;
    }
    case 'YYWWYYWW': {
      const week = value.slice(0, 4) === value.slice(4) ? parseWeek(value.slice(0, 4), 'YYWW') : null;
      return week === null ? { made: null, problem: 'unclear' } : { made: week, problem: null };
    }
    case 'gs1-date':
      return readDateAs(value, 'YYMMDD');
    case 'qualified-date': {
      const date = parseDate(value.slice(0, 8), 'YYYYMMDD');
      return date === null
        ? { made: null, problem: 'unclear' }
        : { made: dateToIsoWeek(date), problem: null };
    }
    default:
      return { made: null, problem: 'unclear' };
  }
}

function gatherDateCode(basket: Basket): { dateCode: string | null; made: IsoWeek | null } {
  const stated = only(basket, 'dateCode');
  let made: IsoWeek | null = null;
  let clash = false;
  const values: string[] = [];
  for (const element of basket.elements) {
    if (element.field !== 'dateCode') continue;
    const read = readMade(element);
    values.push(element.value);
    if (read.made === null) {
      basket.warnings.push({
        code: read.problem === 'no-such-week' ? 'no-such-week' : 'date-code-unclear',
        id: element.id,
        text: element.value,
      });
    } else if (made === null) {
      made = read.made;
    } else if (made.year !== read.made.year || made.week !== read.made.week) {
      clash = true;
    }
  }
  if (clash) {
    // Two different printed codes of one rank have been asked about already.
    if (stated !== null) basket.warnings.push({ code: 'conflict', field: 'made', values });
    made = null;
  }
  return { dateCode: stated?.value ?? null, made };
}

function gatherExpiry(basket: Basket): string | null {
  const element = only(basket, 'expires');
  if (element === null) return null;
  const { kind, value, id } = element;
  let date = parseIsoLikeDate(value);
  if (kind === 'DDMMYYYY') date = parseDate(value, 'DDMMYYYY');
  else if (kind === 'gs1-date' || kind === 'YYMMDD') date = parseDate(value, 'YYMMDD');
  else if (kind === 'DDMMYY' || kind === 'MMDDYY' || kind === 'YYDDD') date = parseDate(value, kind);
  else if (kind === 'qualified-date') date = parseDate(value.slice(0, 8), 'YYYYMMDD');
  if (date === null && kind === 'gs1-date' && value.endsWith('00')) {
    // GS1 General Specifications: a day 00 in an expiry date stands for the last day of the month.
    const first = parseDate(`${value.slice(0, 4)}01`, 'YYMMDD');
    if (first !== null) {
      basket.warnings.push({ code: 'day-not-printed', id, text: value });
      date = { ...first, day: daysInMonth(first.year, first.month) };
    }
  }
  if (date === null) {
    basket.warnings.push({ code: 'no-such-date', id, text: value });
    return null;
  }
  return formatDate(date);
}

function gatherCountry(basket: Basket): string | null {
  const element = only(basket, 'country');
  if (element === null) return null;
  if (isCountryCode(element.value)) return element.value;
  basket.warnings.push({ code: 'country-unlisted', text: element.value });
  return null;
}

function gatherMsl(basket: Basket): LabelMsl | null {
  const element = only(basket, 'msl');
  if (element === null) return null;
  const level = parseMsl(element.value);
  if (level === null) basket.warnings.push({ code: 'msl-unlisted', text: element.value });
  return level;
}

/** Reads a moisture sensitivity level as labels print it: `3`, `2a`, `2A`, `MSL 3`, `LEVEL 3`; null where it is none. */
export function parseMsl(printed: string): LabelMsl | null {
  for (const level of labelMsls) if (level === printed) return level;
  let text = printed.trim().toLowerCase();
  for (const word of ['msl', 'level']) {
    if (text.startsWith(word)) text = text.slice(word.length).trim();
  }
  return labelMsls.find((level) => level === text) ?? null;
}
