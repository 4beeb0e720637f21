// Which moisture sensitivity levels and package classes are there, and what do they allow in the standard climate?
// Levels: IPC/JEDEC J-STD-020 table 5-1; 2a, 3 and 5 were checked against published data sheets, the others are from memory.
// Package classes: J-STD-033 table 7-1 by body thickness; the packages named beside the thickness are from memory.

/** The moisture sensitivity levels of IPC/JEDEC J-STD-020. */
export const moistureLevels = ['1', '2', '2a', '3', '4', '5', '5a', '6'] as const;

/** One moisture sensitivity level. */
export type MoistureLevel = (typeof moistureLevels)[number];

const hourSeconds = 3600;

/**
 * Floor life in seconds at 30 °C / 60 % relative humidity or better. Level 1: no limit (`Infinity`, at 30 °C / 85 % or better). Level 6: null,
 * the time on the label holds, and the parts are baked before use.
 */
export const standardLifeSeconds: Readonly<Record<MoistureLevel, number | null>> = {
  '1': Number.POSITIVE_INFINITY,
  '2': 365 * 24 * hourSeconds,
  '2a': 672 * hourSeconds,
  '3': 168 * hourSeconds,
  '4': 72 * hourSeconds,
  '5': 48 * hourSeconds,
  '5a': 24 * hourSeconds,
  '6': null,
};

/** The climate that the standard floor life is stated for: 30 °C, 60 % relative humidity. */
export const standardClimate = { celsius: 30, humidity: 60 } as const;

/** Package classes of table 7-1: A thick, B middle, C thin. */
export const packageClasses = ['A', 'B', 'C'] as const;

/** One package class. */
export type PackageClass = (typeof packageClasses)[number];

/**
 * The package class by body thickness in mm, > 0: A from 3.1, B from 2.1 to below 3.1, C below 2.1. The table also names packages that belong
 * to a class whatever their thickness (every ball grid array of 1 mm and more to A, for one): `package.ts` knows them.
 */
export function classOfThickness(thicknessMm: number): PackageClass {
  if (!(thicknessMm > 0)) {
    throw new RangeError(
      `Cannot class a package as its body thickness must be above 0 mm: current value is ${thicknessMm}`,
    );
  }
  if (thicknessMm >= 3.1) return 'A';
  return thicknessMm >= 2.1 ? 'B' : 'C';
}

/** How a level's clock may be paused or set back in dry storage: J-STD-033 section 4.1 and table 4-3, from memory. */
export interface DryRule {
  /** The longest exposure, in seconds, that dry storage can still undo. */
  readonly undoExposureSeconds: number;
  /** Dry storage must last this many times the exposure to undo it. */
  readonly undoTimes: number;
  /** And be at this relative humidity in % or below. */
  readonly undoHumidity: number;
  /** Relative humidity in % at or below which the clock stands still; null: it never does. */
  readonly pauseHumidity: number | null;
}

const mildRule: DryRule = {
  undoExposureSeconds: 12 * hourSeconds,
  undoTimes: 5,
  undoHumidity: 10,
  pauseHumidity: 10,
};
const strictRule: DryRule = {
  undoExposureSeconds: 8 * hourSeconds,
  undoTimes: 10,
  undoHumidity: 5,
  pauseHumidity: null,
};

/**
 * The rule of dry storage for a level; null for levels 1 (no clock) and 6 (bake before use). `cabinetPauses`: the plant's own edition lets a
 * cabinet at 5 % relative humidity or below stop the clock of levels 4, 5 and 5a.
 */
export function dryRuleOf(level: MoistureLevel, cabinetPauses = false): DryRule | null {
  if (level === '1' || level === '6') return null;
  if (level !== '4' && level !== '5' && level !== '5a') return mildRule;
  return cabinetPauses ? { ...strictRule, pauseHumidity: strictRule.undoHumidity } : strictRule;
}
