// What a component's value code says: letter codes of IEC 60062, three and four digits, EIA-96.
// Method: every system is tried, and every reading that a code allows is given; the caller knows what it is looking at.
// Refused: one best guess, which takes `10R` for 10 Ω where EIA-96 prints it for 1.24 Ω.

import { E_SERIES_NUMBERS, type ESeries, seriesOf } from './series.ts';

/** What a value code can stand on. */
export const valueKinds = ['resistor', 'capacitor'] as const;

/** A resistor or a capacitor. */
export type ValueKind = (typeof valueKinds)[number];

/** How a value is coded; `plain` = a number with its unit, in no code (plain-values.ts). */
export const valueSystems = ['IEC 60062', '3-digit', '4-digit', 'EIA-96', 'plain'] as const;

/** One system of value codes. */
export type ValueSystem = (typeof valueSystems)[number];

/** Limits around the value: `plus` up, `minus` down, both >= 0, in percent or in picofarads. */
export interface ValueTolerance {
  readonly plus: number;
  readonly minus: number;
  readonly unit: '%' | 'pF';
}

/** One reading of a value code. */
export interface ValueReading {
  readonly kind: ValueKind;
  /** In ohms or farads. */
  readonly value: number;
  readonly unit: 'Ω' | 'F';
  /** Null where the code states none. */
  readonly tolerance: ValueTolerance | null;
  readonly code: ValueSystem;
  /** Series of IEC 60063 that hold the value, coarse to fine; empty = no preferred number. */
  readonly series: readonly ESeries[];
}

/** Longer texts are no value codes. */
const LONGEST_CODE = 12;

const percent = (limit: number): ValueTolerance => ({ plus: limit, minus: limit, unit: '%' });
const picofarads = (limit: number): ValueTolerance => ({ plus: limit, minus: limit, unit: 'pF' });

// Tolerance letters of IEC 60062. B to N common to both; E, L, P, W, H, Q, S from memory.
const SYMMETRIC: Readonly<Record<string, number>> = {
  B: 0.1,
  C: 0.25,
  D: 0.5,
  F: 1,
  G: 2,
  H: 3,
  J: 5,
  K: 10,
  M: 20,
  N: 30,
};
const RESISTOR_ONLY: Readonly<Record<string, number>> = { E: 0.005, L: 0.01, P: 0.02, W: 0.05 };
const CAPACITOR_ONLY: Readonly<Record<string, ValueTolerance>> = {
  P: { plus: 100, minus: 0, unit: '%' },
  Q: { plus: 30, minus: 10, unit: '%' },
  S: { plus: 50, minus: 20, unit: '%' },
  T: { plus: 50, minus: 10, unit: '%' },
  Z: { plus: 80, minus: 20, unit: '%' },
};
// Below 10 pF the letters are limits in picofarads (F and G from memory).
const SMALL_CAPACITOR: Readonly<Record<string, number>> = { B: 0.1, C: 0.25, D: 0.5, F: 1, G: 2 };

const TEN_PICOFARADS = 1e-11;

/** The tolerance that a letter states for a value; `undefined` = no such letter. An empty letter states none. */
function toleranceOf(letter: string, kind: ValueKind, value: number): ValueTolerance | null | undefined {
  if (letter === '') return null;
  if (kind === 'capacitor') {
    const small = value < TEN_PICOFARADS ? own(SMALL_CAPACITOR, letter) : undefined;
    if (small !== undefined) return picofarads(small);
    const oneSided = own(CAPACITOR_ONLY, letter);
    if (oneSided !== undefined) return oneSided;
  }
  const limit = own(SYMMETRIC, letter) ?? (kind === 'resistor' ? own(RESISTOR_ONLY, letter) : undefined);
  return limit === undefined ? undefined : percent(limit);
}

function own<T>(table: Readonly<Record<string, T>>, key: string): T | undefined {
  return Object.hasOwn(table, key) ? table[key] : undefined;
}

/** Makes a reading of `digits` × 10^`power`; null where the tolerance letter is none. */
function reading(
  kind: ValueKind,
  code: ValueSystem,
  number: { readonly digits: number; readonly power: number; readonly letter: string },
): ValueReading | null {
  const { digits, power, letter } = number;
  // Through the decimal notation, so that 47 × 10^-10 is the nearest double to 4.7e-9.
  const value = Number(`${digits}e${power}`);
  const tolerance = toleranceOf(letter, kind, value);
  if (tolerance === undefined) return null;
  return { kind, value, unit: kind === 'resistor' ? 'Ω' : 'F', tolerance, code, series: seriesOf(digits) };
}

const RESISTOR_LETTERS: Readonly<Record<string, number>> = {
  L: -3,
  R: 0,
  r: 0,
  K: 3,
  k: 3,
  M: 6,
  G: 9,
  T: 12,
};
const CAPACITOR_LETTERS: Readonly<Record<string, number>> = {
  p: -12,
  n: -9,
  u: -6,
  '\u00b5': -6,
  '\u03bc': -6,
  m: -3,
  F: 0,
};

/** IEC 60062: a letter stands for the decimal point and the power of ten, then perhaps a tolerance letter. */
function readLetterCode(code: string): (ValueReading | null)[] {
  const match = /^(\d{0,4})([A-Za-z\u00b5\u03bc])(\d{0,4})([A-Z]?)$/.exec(code);
  if (match === null) return [];
  const [, whole = '', point = '', part = '', letter = ''] = match;
  if (whole === '' && part === '') return [];
  const digits = Number(whole + part);
  const readings: (ValueReading | null)[] = [];
  const ohms = own(RESISTOR_LETTERS, point);
  if (ohms !== undefined) {
    readings.push(reading('resistor', 'IEC 60062', { digits, power: ohms - part.length, letter }));
  }
  const farads = own(CAPACITOR_LETTERS, point);
  if (farads !== undefined) {
    readings.push(reading('capacitor', 'IEC 60062', { digits, power: farads - part.length, letter }));
  }
  // On capacitors R is the decimal point of picofarads below ten.
  if ((point === 'R' || point === 'r') && part !== '' && whole.length <= 1 && digits > 0) {
    readings.push(reading('capacitor', '3-digit', { digits, power: -12 - part.length, letter }));
  }
  return readings;
}

/** Digits and a power of ten, then perhaps a tolerance letter; noughts only are a jumper of 0 Ω. */
function readDigits(code: string): (ValueReading | null)[] {
  if (/^0{1,4}$/.test(code)) {
    return [
      reading('resistor', code.length === 4 ? '4-digit' : '3-digit', { digits: 0, power: 0, letter: '' }),
    ];
  }
  const match = /^([1-9]\d{1,2})(\d)([A-Z]?)$/.exec(code);
  if (match === null) return [];
  const [, first = '', last = '', letter = ''] = match;
  const digits = Number(first);
  const power = Number(last);
  if (first.length === 3) return [reading('resistor', '4-digit', { digits, power, letter })];
  // On capacitors 8 and 9 stand for 0.01 and 0.1 (EIA-198).
  const farads = power >= 8 ? power - 10 : power;
  return [
    reading('resistor', '3-digit', { digits, power, letter }),
    reading('capacitor', '3-digit', { digits, power: farads - 12, letter }),
  ];
}

const EIA_96_POWERS: Readonly<Record<string, number>> = {
  Z: -3,
  Y: -2,
  R: -2,
  X: -1,
  S: -1,
  A: 0,
  B: 1,
  H: 1,
  C: 2,
  D: 3,
  E: 4,
  F: 5,
};

/** EIA-96: two digits for the place in E96, a letter for the power of ten; resistors of 1 %. */
function readEia96(code: string): (ValueReading | null)[] {
  const match = /^(\d\d)([A-Z])$/.exec(code);
  if (match === null) return [];
  const digits = E_SERIES_NUMBERS.E96[Number(match[1]) - 1];
  const power = own(EIA_96_POWERS, match[2] ?? '');
  if (digits === undefined || power === undefined) return [];
  return [reading('resistor', 'EIA-96', { digits, power, letter: 'F' })];
}

/**
 * Every reading that a value code allows, resistors and capacitors, or one kind only. Empty where it is no value code.
 * Sources: IEC 60062 letter codes; EIA-96 digits as the E96 series of IEC 60063 in order, multiplier letters as published.
 */
export function readValueCode(code: string, kind?: ValueKind): readonly ValueReading[] {
  const text = code.trim();
  if (text === '' || text.length > LONGEST_CODE) return [];
  const readings = [...readLetterCode(text), ...readDigits(text), ...readEia96(text)];
  return readings.filter(
    (one): one is ValueReading => one !== null && (kind === undefined || one.kind === kind),
  );
}
