// What a part should measure, read out of what people wrote: a note on the setup sheet, or a code typed by hand.
// Method: every word of the text is tried as a value code (labels/value-codes.ts) and as a number with a unit or printed
// in plain (labels/plain-values.ts); all readings are given and a person picks. Refused: reading the site's part number by itself, which may end in figures that are no value.

import { twelveFigures } from '../kit/figures.ts';
import { readPlainValue } from '../labels/plain-values.ts';
import { readValueCode, type ValueReading } from '../labels/value-codes.ts';

/** Units in which values are typed, and what one of them is in SI. */
export const valueUnits = {
  mΩ: 1e-3,
  Ω: 1,
  kΩ: 1e3,
  MΩ: 1e6,
  pF: 1e-12,
  nF: 1e-9,
  µF: 1e-6,
  nH: 1e-9,
  µH: 1e-6,
  mH: 1e-3,
  mV: 1e-3,
  V: 1,
} as const;
export type ValueUnit = keyof typeof valueUnits;

/** A value with its limits; `plusPercent` and `minusPercent` null where the text states none (a jumper has none). */
export interface ExpectedValue {
  readonly nominal: number;
  readonly unit: ValueUnit;
  readonly plusPercent: number | null;
  readonly minusPercent: number | null;
}

const scales: Readonly<Record<'Ω' | 'F', readonly ValueUnit[]>> = {
  Ω: ['MΩ', 'kΩ', 'Ω', 'mΩ'],
  F: ['µF', 'nF', 'pF'],
};

/** A value in SI in the unit in which people say it: 4700 Ω is 4.7 kΩ. */
export function inPlainUnit(
  value: number,
  si: 'Ω' | 'F',
): { readonly quantity: number; readonly unit: ValueUnit } {
  const units = scales[si];
  const unit =
    value === 0
      ? si === 'Ω'
        ? 'Ω'
        : 'pF'
      : (units.find((each) => value / valueUnits[each] >= 0.999_999) ?? (si === 'Ω' ? 'mΩ' : 'pF'));
  // Twelve figures: what a division by a power of ten leaves behind them is no part of the value.
  return { quantity: twelveFigures(value / valueUnits[unit]), unit };
}

const unitWords: Readonly<Record<string, ValueUnit>> = {
  mohm: 'mΩ',
  ohm: 'Ω',
  ohms: 'Ω',
  kohm: 'kΩ',
  Mohm: 'MΩ',
  uF: 'µF',
  uH: 'µH',
};

function readUnit(text: string): ValueUnit | null {
  if (Object.hasOwn(valueUnits, text)) return text as ValueUnit; // just looked up
  return Object.hasOwn(unitWords, text) ? (unitWords[text] ?? null) : null;
}

const numberWithUnit =
  /(?<![\w.,-])(\d+(?:[.,]\d+)?)\s*(mΩ|kΩ|MΩ|Ω|mohm|kohm|Mohm|ohms?|pF|nF|µF|uF|nH|µH|uH|mH|mV|V)(?!\w)/g;
const percentMark = /±\s*(\d+(?:[.,]\d+)?)\s*%/;
/** In a note, `R5` is a place on the board and `100` may be anything: only figures before the letter are a value there. */
const plainCode = /^\d+[kKMRrnpuµ]\d*[A-Z]?$/;
/** Values printed in plain that a note may hold: a decimal mark and a prefix right behind, or the ohm written out. */
const plainInNote =
  /(?<![\w.,-])\d+(?:[.,]\d+[kKMGRpnuµ](?:[Oo]hms?)?|(?:[.,]\d+)?\s*[kKMG]?\s*[Oo]hms?)(?![\w,.]*\w)/g;

/**
 * Every value that a text may state; empty where it states none. The first `± … %` of the text counts for all of them.
 * `isNote`: the text is free, so only what can hardly be anything else counts.
 */
export function expectedValues(
  written: string,
  { isNote = false }: { readonly isNote?: boolean } = {},
): readonly ExpectedValue[] {
  // The ohm and micro signs each have two characters; one of each is left.
  const text = written.normalize('NFKC').replaceAll('\u03bc', 'µ');
  const plain = isNote
    ? [...text.matchAll(plainInNote)].flatMap(([part]) => readPlainValue(part))
    : readPlainValue(text);
  const stated = percentMark.exec(text)?.[1];
  // A bare `5 %` behind the value counts too, where the whole text is a value.
  const plainPercent = isNote ? null : (plain[0]?.tolerance?.plus ?? null);
  const percent = stated === undefined ? plainPercent : Number(stated.replace(',', '.'));
  const found: ExpectedValue[] = [];
  for (const [, figure = '', word = ''] of text.matchAll(numberWithUnit)) {
    const unit = readUnit(word);
    if (unit === null) continue;
    const nominal = Number(figure.replace(',', '.'));
    found.push({ nominal, unit, plusPercent: percent, minusPercent: percent });
  }
  const add = ({ value, unit: si, tolerance }: ValueReading) => {
    const { quantity, unit } = inPlainUnit(value, si);
    const limits = tolerance === null ? null : toPercent(tolerance, value);
    found.push({
      nominal: quantity,
      unit,
      plusPercent: percent ?? limits?.plus ?? null,
      minusPercent: percent ?? limits?.minus ?? null,
    });
  };
  // A number with its unit stays in the unit that it was written in.
  plain.filter((reading) => !found.some((each) => isSame(each, reading))).forEach(add);
  for (const word of isNote || plain.length === 0 ? wordsBeside(text, isNote) : [])
    readValueCode(word).forEach(add);
  const seen = new Set<string>();
  return found.filter((each) => {
    const key = `${each.nominal} ${each.unit} ${each.plusPercent}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** The words of the text that are no part of a number with its unit: the `100` of `100 nF` is no code. */
function wordsBeside(text: string, isNote: boolean): readonly string[] {
  const rest = text.replace(numberWithUnit, ' ').replace(isNote ? plainInNote : '', ' ');
  return rest.split(/[\s,;()]+/).filter((word) => !isNote || plainCode.test(word));
}

function isSame({ nominal, unit }: ExpectedValue, reading: ValueReading): boolean {
  const wanted = inPlainUnit(reading.value, reading.unit);
  const inSi = nominal * valueUnits[unit];
  return unit.at(-1) === wanted.unit.at(-1) && Math.abs(inSi - reading.value) <= 1e-9 * reading.value;
}

function toPercent(
  tolerance: { readonly plus: number; readonly minus: number; readonly unit: '%' | 'pF' },
  value: number,
): { plus: number; minus: number } {
  if (tolerance.unit === '%') return tolerance;
  const share = (picofarads: number) => twelveFigures(((picofarads * 1e-12) / value) * 100);
  return { plus: share(tolerance.plus), minus: share(tolerance.minus) };
}
