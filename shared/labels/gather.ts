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
import { type IsoWeek, LABEL_MSL, type LabelFieldName, type LabelMsl, type LabelReading } from './reading.ts';

type TextField = 'part' | 'supplierPart' | 'lot' | 'reel' | 'supplier' | 'order';

/** Turns what the parsers found into a reading. */
export function gather(basket: Basket): LabelReading {
  const { elements, unidentified, ambiguous, warnings, rules } = basket;
  const best = findBest(elements);
  const quantity = gatherQuantity(basket, best);
  const date = gatherDateCode(basket, best);
  const reading: LabelReading = {
    part: gatherText(basket, best, 'part'),
    supplierPart: gatherText(basket, best, 'supplierPart'),
    quantity: quantity.quantity,
    unit: quantity.unit,
    lot: gatherText(basket, best, 'lot'),
    dateCode: date.dateCode,
    made: date.made,
    expires: gatherExpiry(basket, best),
    reel: gatherText(basket, best, 'reel'),
    supplier: gatherText(basket, best, 'supplier'),
    country: gatherCountry(basket, best),
    msl: gatherMsl(basket, best),
    order: gatherText(basket, best, 'order'),
    fields: elements.map(({ id, title, value }) => ({ id, title, value })),
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

/** The elements of best rank for each field that differ from each other; most often one, or none. */
type Best = Record<LabelFieldName, LabelElement[] | undefined>;

/** All fields from the start: an object that grows by one field after another costs more than the fields. */
function noneBest(): Best {
  return {
    part: undefined,
    supplierPart: undefined,
    quantity: undefined,
    lot: undefined,
    dateCode: undefined,
    made: undefined,
    expires: undefined,
    reel: undefined,
    supplier: undefined,
    country: undefined,
    msl: undefined,
    order: undefined,
  };
}

function findBest(elements: readonly LabelElement[]): Best {
  const best = noneBest();
  // Values that differ are rare: most labels need no memory of them.
  let values: Map<LabelFieldName, Set<string>> | null = null;
  for (const element of elements) {
    const { field, rank, value } = element;
    if (field === null) continue;
    const found = best[field];
    const first = found?.[0];
    if (found === undefined || first === undefined || rank < first.rank) {
      best[field] = [element];
      values?.delete(field);
    } else if (rank === first.rank && value !== first.value) {
      values ??= new Map();
      const seen: Set<string> = values.get(field) ?? new Set([first.value]);
      values.set(field, seen);
      if (!seen.has(value)) found.push(element);
      seen.add(value);
    }
  }
  return best;
}

/** The one element that states a field; asks where several differ. */
function only(basket: Basket, best: Best, field: LabelFieldName): LabelElement | null {
  const found = best[field];
  if (found === undefined) return null;
  if (found.length === 1) return found[0] ?? null;
  const values = found.map((element) => element.value);
  basket.warnings.push({ code: 'conflict', field, values });
  basket.ambiguous.push({
    text: values.join(' '),
    candidates: values.map((value) => ({ field, value })),
  });
  return null;
}

function gatherText(basket: Basket, best: Best, field: TextField): string | null {
  return only(basket, best, field)?.value ?? null;
}

function gatherQuantity(basket: Basket, best: Best): { quantity: number | null; unit: string | null } {
  const element = only(basket, best, 'quantity');
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

function gatherDateCode(basket: Basket, best: Best): { dateCode: string | null; made: IsoWeek | null } {
  const stated = only(basket, best, 'dateCode');
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

function gatherExpiry(basket: Basket, best: Best): string | null {
  const element = only(basket, best, 'expires');
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

function gatherCountry(basket: Basket, best: Best): string | null {
  const element = only(basket, best, 'country');
  if (element === null) return null;
  if (isCountryCode(element.value)) return element.value;
  basket.warnings.push({ code: 'country-unlisted', text: element.value });
  return null;
}

function gatherMsl(basket: Basket, best: Best): LabelMsl | null {
  const element = only(basket, best, 'msl');
  if (element === null) return null;
  const level = parseMsl(element.value);
  if (level === null) basket.warnings.push({ code: 'msl-unlisted', text: element.value });
  return level;
}

/** Reads a moisture sensitivity level as labels print it: `3`, `2a`, `2A`, `MSL 3`, `LEVEL 3`; null where it is none. */
export function parseMsl(printed: string): LabelMsl | null {
  let text = printed.trim().toLowerCase();
  for (const word of ['msl', 'level']) {
    if (text.startsWith(word)) text = text.slice(word.length).trim();
  }
  return LABEL_MSL.find((level) => level === text) ?? null;
}
