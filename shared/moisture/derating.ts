// How long may a moisture-sensitive part lie in a given climate, before it must be reflowed or baked?
// Method: table 7-1 of IPC/JEDEC J-STD-033 as data, in days by package class, level, temperature and relative humidity; a climate between
// two columns or rows counts as the next worse one. Class A was checked cell by cell against a published copy of the table; classes B and C
// are from memory and are checked for order only. Method refused: interpolation, which the standard does not give.

import { lifeKey } from '../floor/moisture-rules.ts';
import type { MoistureLevel, PackageClass } from './levels.ts';
import type { OwnValues, ValueSource } from './values.ts';

/** Columns of the table: relative humidity in %. */
export const tableHumidities = [5, 10, 20, 30, 40, 50, 60, 70, 80, 90] as const;

/** Rows of the table: temperature in °C. */
export const tableTemperatures = [20, 25, 30, 35] as const;

/** A temperature that the table has a row for. */
export type TableTemperature = (typeof tableTemperatures)[number];

/** Levels that the table has rows for. Level 1 has no limit, level 2 one year, level 6 what the label says. */
export const tableLevels = ['2a', '3', '4', '5', '5a'] as const satisfies readonly MoistureLevel[];

/** A level that the table has rows for. */
export type TableLevel = (typeof tableLevels)[number];

// Days at 5, 10, 20 ... 90 % relative humidity; "-" = no limit.
const table: Readonly<
  Record<PackageClass, Readonly<Record<TableLevel, Readonly<Record<TableTemperature, string>>>>>
> = {
  A: {
    '2a': {
      35: '- - 94 44 32 26 16 7 5 4',
      30: '- - 124 60 41 33 28 10 7 6',
      25: '- - 167 78 53 42 36 14 10 8',
      20: '- - 231 103 69 57 47 19 13 10',
    },
    '3': {
      35: '- - 8 7 6 6 6 4 3 3',
      30: '- - 10 9 8 7 7 5 4 4',
      25: '- - 13 11 10 9 9 7 6 5',
      20: '- - 17 14 13 12 12 10 8 7',
    },
    '4': {
      35: '- 3 3 3 2 2 2 2 1 1',
      30: '- 5 4 4 4 3 3 3 2 2',
      25: '- 6 5 5 5 5 4 3 3 3',
      20: '- 8 7 7 7 7 6 5 4 4',
    },
    '5': {
      35: '- 2 2 2 2 1 1 1 1 1',
      30: '- 4 3 3 2 2 2 2 1 1',
      25: '- 5 5 4 4 3 3 2 2 2',
      20: '- 7 7 6 5 5 4 3 3 3',
    },
    '5a': {
      35: '- 1 1 1 1 1 1 1 1 1',
      30: '- 2 1 1 1 1 1 1 1 1',
      25: '- 3 2 2 2 2 2 1 1 1',
      20: '- 5 4 3 3 3 2 2 2 2',
    },
  },
  B: {
    '2a': {
      35: '- - - - 58 30 22 3 2 1',
      30: '- - - - 86 39 28 4 3 2',
      25: '- - - - 148 51 37 6 4 3',
      20: '- - - - - 69 49 8 5 4',
    },
    '3': {
      35: '- - 12 9 7 6 5 2 2 1',
      30: '- - 19 12 9 8 7 3 2 2',
      25: '- - 25 15 12 10 9 5 3 3',
      20: '- - 32 19 15 13 12 7 5 4',
    },
    '4': {
      35: '- 5 4 3 3 2 2 1 1 1',
      30: '- 7 5 4 4 3 3 2 2 1',
      25: '- 9 7 5 5 4 4 3 2 2',
      20: '- 11 9 7 6 6 5 4 3 3',
    },
    '5': {
      35: '- 3 2 2 2 2 1 1 1 1',
      30: '- 4 3 3 2 2 2 1 1 1',
      25: '- 5 4 3 3 3 3 2 1 1',
      20: '- 6 5 5 4 4 4 3 3 2',
    },
    '5a': {
      35: '- 1 1 1 1 1 1 1 0.5 0.5',
      30: '- 2 1 1 1 1 1 1 0.5 0.5',
      25: '- 2 2 2 2 2 2 1 1 1',
      20: '- 3 2 2 2 2 2 2 2 1',
    },
  },
  C: {
    '2a': {
      35: '- - - - - - 17 1 0.5 0.5',
      30: '- - - - - - 28 1 1 1',
      25: '- - - - - - - 2 1 1',
      20: '- - - - - - - 2 2 1',
    },
    '3': {
      35: '- - - - - 8 5 1 0.5 0.5',
      30: '- - - - - 11 7 1 1 1',
      25: '- - - - - 14 10 2 1 1',
      20: '- - - - - 20 13 2 2 1',
    },
    '4': {
      35: '- - - 7 4 3 2 1 0.5 0.5',
      30: '- - - 9 5 4 3 1 1 1',
      25: '- - - 12 7 5 4 2 1 1',
      20: '- - - 17 9 7 6 2 2 1',
    },
    '5': {
      35: '- - 7 3 2 2 1 1 0.5 0.5',
      30: '- - 13 5 3 2 2 1 1 1',
      25: '- - 18 6 4 3 3 2 1 1',
      20: '- - 26 8 6 5 4 2 2 1',
    },
    '5a': {
      35: '- 7 2 1 1 1 1 1 0.5 0.5',
      30: '- 10 3 2 1 1 1 1 1 0.5',
      25: '- 13 5 3 2 2 2 1 1 1',
      20: '- 18 6 3 2 2 2 2 2 1',
    },
  },
};

/** A cell of the table: the climate it stands for (null bound = no such row or column) and its days. */
export interface TableLife {
  /** Seconds; `Infinity` where the table sets no limit. */
  readonly seconds: number;
  /** The row and column used, at or above the climate asked for. */
  readonly celsius: TableTemperature;
  readonly humidity: number;
  /** On what the cell rests. */
  readonly source: ValueSource;
}

const daySeconds = 86_400;

/** Levels whose floor life at 30 °C and 60 % was seen in published data sheets. */
const SEEN_LEVELS: readonly TableLevel[] = ['2a', '3', '5'];

/** One cell as it is in force: days, null = no limit, and on what it rests. */
export interface TableCell {
  readonly days: number | null;
  readonly source: ValueSource;
}

/**
 * A cell of table 7-1: the plant's own value where it entered one, else the shipped one. `humidity` one of `tableHumidities`. Shipped cells of
 * class A, level 3 of class C at 30 °C and 70 %, and 30 °C and 60 % at levels 2a, 3 and 5 (there every class has the level's own floor life, as data
 * sheets print it) were compared with published copies; the others are from memory.
 */
export function tableCell(
  level: TableLevel,
  packageClass: PackageClass,
  climate: { readonly celsius: TableTemperature; readonly humidity: (typeof tableHumidities)[number] },
  own: OwnValues | null = null,
): TableCell {
  const { celsius, humidity } = climate;
  const entered = own?.lives.get(lifeKey({ class: packageClass, level, celsius, humidity }));
  if (entered !== undefined) return { days: entered, source: 'own' };
  const text = table[packageClass][level][celsius].split(' ')[tableHumidities.indexOf(humidity)] ?? '';
  const isLevelsOwn = celsius === 30 && humidity === 60 && SEEN_LEVELS.includes(level);
  const isAnchor = packageClass === 'C' && level === '3' && celsius === 30 && humidity === 70;
  return {
    days: text === '-' ? null : Number(text),
    source: packageClass === 'A' || isLevelsOwn || isAnchor ? 'copy' : 'memory',
  };
}

/**
 * Floor life of table 7-1 at a climate, rounded up to the next worse row and column. `celsius` in °C (20 and below use the 20 °C row),
 * `humidity` in % relative humidity, 0 to 90; `own`: the plant's own values. Null above 35 °C or 90 %, where the table ends.
 */
export function tableFloorLife(
  level: TableLevel,
  packageClass: PackageClass,
  climate: { readonly celsius: number; readonly humidity: number },
  own: OwnValues | null = null,
): TableLife | null {
  const celsius = tableTemperatures.find((row) => climate.celsius <= row);
  const humidity = tableHumidities.find((column) => climate.humidity <= column);
  if (celsius === undefined || humidity === undefined) return null;
  const { days, source } = tableCell(level, packageClass, { celsius, humidity }, own);
  const seconds = days === null ? Number.POSITIVE_INFINITY : days * daySeconds;
  return { seconds, celsius, humidity, source };
}
