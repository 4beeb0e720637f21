// How long must a part be baked so that its floor life starts again?
// Source: IPC/JEDEC J-STD-033 table 4-1 (user bake): bodies up to 1.4 mm at levels 3 to 5a and up to 2 mm at levels 2a to 5 were found equal in
// a published copy of an earlier edition, the rest is from memory. A bake shorter than its row is held for a lead; the supplier's word and the
// site's own rule come first. Parts on tape and reel cannot usually stand 125 °C. Not to be mixed with the longer bake before dry packing.

import { bakeKey } from '../floor/moisture-rules.ts';
import type { BakeBody } from '../floor/vocabulary.ts';
import type { MoistureLevel } from './levels.ts';
import type { OwnValues, ValueSource } from './values.ts';

/** Temperatures of the table in °C: 125 (+10/-0), 90 (+8/-0, 5 % RH or below), 40 (+5/-0, 5 % RH or below). */
export const bakeTemperatures = [125, 90, 40] as const;

/** One temperature of the table. */
export type BakeTemperature = (typeof bakeTemperatures)[number];

/** One way to bake. */
export interface BakeOption {
  readonly celsius: BakeTemperature;
  readonly hours: number;
  readonly source: ValueSource;
}

// Hours where the floor life was exceeded by more than 72 h / by 72 h or less, at 125, 90 and 40 °C.
type BakeRow = readonly [readonly [number, number], readonly [number, number], readonly [number, number]];
/** A level that the table has rows for. */
export type BakedLevel = Exclude<MoistureLevel, '1' | '6'>;

const day = 24;
const thin: Readonly<Record<BakedLevel, BakeRow>> = {
  '2': [
    [5, 3],
    [17, 11],
    [8 * day, 5 * day],
  ],
  '2a': [
    [7, 5],
    [23, 13],
    [9 * day, 7 * day],
  ],
  '3': [
    [9, 7],
    [33, 23],
    [13 * day, 9 * day],
  ],
  '4': [
    [11, 7],
    [37, 23],
    [15 * day, 9 * day],
  ],
  '5': [
    [12, 7],
    [41, 24],
    [17 * day, 10 * day],
  ],
  '5a': [
    [16, 10],
    [54, 24],
    [22 * day, 10 * day],
  ],
};
const middle: Readonly<Record<BakedLevel, BakeRow>> = {
  '2': [
    [18, 15],
    [63, 2 * day],
    [25 * day, 20 * day],
  ],
  '2a': [
    [21, 16],
    [3 * day, 2 * day],
    [29 * day, 22 * day],
  ],
  '3': [
    [27, 17],
    [4 * day, 2 * day],
    [37 * day, 23 * day],
  ],
  '4': [
    [34, 20],
    [5 * day, 3 * day],
    [47 * day, 28 * day],
  ],
  '5': [
    [40, 25],
    [6 * day, 4 * day],
    [57 * day, 35 * day],
  ],
  '5a': [
    [48, 40],
    [8 * day, 6 * day],
    [79 * day, 56 * day],
  ],
};
const thick: Readonly<Record<BakedLevel, BakeRow>> = {
  '2': [
    [48, 48],
    [10 * day, 7 * day],
    [79 * day, 67 * day],
  ],
  '2a': [
    [48, 48],
    [10 * day, 7 * day],
    [79 * day, 67 * day],
  ],
  '3': [
    [48, 48],
    [10 * day, 8 * day],
    [79 * day, 67 * day],
  ],
  '4': [
    [48, 48],
    [10 * day, 10 * day],
    [79 * day, 67 * day],
  ],
  '5': [
    [48, 48],
    [10 * day, 10 * day],
    [79 * day, 67 * day],
  ],
  '5a': [
    [48, 48],
    [10 * day, 10 * day],
    [79 * day, 67 * day],
  ],
};

const shortOverrunSeconds = 72 * 3600;
/** Ball grid arrays above 17 × 17 mm and stacked dies: hours at 125 °C, at any level and overrun. */
const LARGE_HOURS = 96;
const rows = { thin, middle, thick } as const;
const SEEN_LEVELS: Readonly<Record<keyof typeof rows, readonly BakedLevel[]>> = {
  thin: ['3', '4', '5', '5a'],
  middle: ['2a', '3', '4', '5'],
  thick: [],
};

/** Above this no row of the table holds, °C: 125 (+10/-0). */
export const hottestBakeCelsius = 135;
/** Hours above `hotBakeCelsius` that a part may see in all, so that its leads can still be soldered; from memory (J-STD-033 section 4.2). */
export const hotBakeLimitHours = 96;
/** What counts as a hot bake: above this, °C. */
export const hotBakeCelsius = 90;

/** What a bake row is asked by. `thicknessMm`: body, > 0; null = not known, the longest row. */
export interface BakeQuestion {
  /** Level 6 takes the row of 5a, by a rule of this tool: the table has none. */
  readonly level: MoistureLevel;
  readonly thicknessMm: number | null;
  /** Seconds by which the floor life was exceeded, 0 where it was not. */
  readonly exceededSeconds: number;
  /** Whether the row of large ball grid arrays and stacked dies holds; absent: no. */
  readonly isLarge?: boolean;
  readonly own?: OwnValues | null;
}

/** The body row of a thickness in mm; null above 4.5 mm, where the table ends. */
function bodyOf(thicknessMm: number | null): keyof typeof rows | null {
  if (thicknessMm === null) return 'thick';
  if (!(thicknessMm > 0) || thicknessMm > 4.5) return null;
  return thicknessMm <= 1.4 ? 'thin' : thicknessMm <= 2 ? 'middle' : 'thick';
}

/** One cell of the bake table as it is in force: hours, and on what it rests; null where the table has none. */
export function bakeCell(
  body: BakeBody,
  level: BakedLevel | '6',
  cell: { readonly celsius: BakeTemperature; readonly isLong: boolean },
  own: OwnValues | null = null,
): { readonly hours: number; readonly source: ValueSource } | null {
  const entered = own?.bakes.get(bakeKey({ body, level, ...cell }));
  if (entered !== undefined) return { hours: entered, source: 'own' };
  if (body === 'large') return cell.celsius === 125 ? { hours: LARGE_HOURS, source: 'memory' } : null;
  if (level === '6') return null;
  const pair = rows[body][level][bakeTemperatures.indexOf(cell.celsius)];
  const hours = pair?.[cell.isLong ? 0 : 1] ?? 0; // three temperatures, three pairs
  return { hours, source: SEEN_LEVELS[body].includes(level) ? 'copy' : 'memory' };
}

/**
 * Ways to bake a part back to a full floor life, hottest first. Null for level 1, and where the table gives none (bodies above 4.5 mm that are
 * no large ball grid array). Partly from memory: each option says so.
 */
export function bakeOptions(question: BakeQuestion): readonly BakeOption[] | null {
  const { exceededSeconds, isLarge = false, own = null } = question;
  if (question.level === '1') return null;
  const body = bodyOf(question.thicknessMm);
  const isLong = exceededSeconds > shortOverrunSeconds;
  const level = question.level === '6' ? '5a' : question.level;
  const options = bakeTemperatures.flatMap((celsius): BakeOption[] => {
    const plain = body === null ? null : bakeCell(body, level, { celsius, isLong }, own);
    const large = isLarge
      ? bakeCell('large', question.level === '6' ? '6' : level, { celsius, isLong }, own)
      : null;
    const longest = [plain, large].filter((cell) => cell !== null).sort((a, b) => b.hours - a.hours)[0];
    return longest === undefined ? [] : [{ celsius, ...longest }];
  });
  return options.length === 0 ? null : options;
}
