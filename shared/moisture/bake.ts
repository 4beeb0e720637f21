// How long must a part be baked so that its floor life starts again?
// Source: IPC/JEDEC J-STD-033 table 4-1 (user bake), from memory throughout: shown as advice beside the word of the supplier and the
// site's own rule, never used to refuse; a bake shorter than it is held for a lead. Parts on tape and reel cannot usually stand 125 °C.

import type { MoistureLevel } from './levels.ts';

/** Temperatures of the table in °C: 125 (+10/-0), 90 (+8/-0, 5 % RH or below), 40 (+5/-0, 5 % RH or below). */
export const bakeTemperatures = [125, 90, 40] as const;

/** One temperature of the table. */
export type BakeTemperature = (typeof bakeTemperatures)[number];

/** One way to bake. */
export interface BakeOption {
  readonly celsius: BakeTemperature;
  readonly hours: number;
}

// Hours where the floor life was exceeded by more than 72 h / by 72 h or less, at 125, 90 and 40 °C.
type BakeRow = readonly [readonly [number, number], readonly [number, number], readonly [number, number]];
type BakedLevel = Exclude<MoistureLevel, '1' | '6'>;

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

/**
 * Ways to bake a part back to a full floor life. `thicknessMm`: body, > 0; `exceededSeconds`: by how much the floor life was exceeded, 0 where it
 * was not. Null for levels 1 and 6 and for bodies above 4.5 mm, where the table gives none. From memory.
 */
export function bakeOptions(
  level: MoistureLevel,
  thicknessMm: number,
  exceededSeconds: number,
): readonly BakeOption[] | null {
  if (level === '1' || level === '6' || !(thicknessMm > 0) || thicknessMm > 4.5) return null;
  const row = (thicknessMm <= 1.4 ? thin : thicknessMm <= 2 ? middle : thick)[level];
  const column = exceededSeconds > shortOverrunSeconds ? 0 : 1;
  return bakeTemperatures.map((celsius, at) => ({ celsius, hours: row[at]?.[column] ?? 0 })); // three temperatures, three pairs
}
