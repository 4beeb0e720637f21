// The clock of a floor life: what a piece of time on the floor, in dry storage or in the oven does to it.
// Method: J-STD-033 piece by piece: the floor lets it run at the pace of its climate, dry storage undoes a short exposure, pauses the clock or
// lets it run by level, a bake as long as its row starts it again. Pause and undo rules are from memory.

import { bakeOptions, hotBakeCelsius, hottestBakeCelsius } from './bake.ts';
import { climateLife, isMildClimate, type PartMoisture } from './climate-life.ts';
import { type DryRule, standardClimate } from './levels.ts';
import { type FloorLifeNote, floorLifeNote } from './notes.ts';
import type { Climate, Piece } from './timeline.ts';
import type { ValueSource } from './values.ts';

/** A bake that was too short: what was told of it, and the hours that the table wants at that temperature (null: it gives none). */
export interface BakeTooShort {
  readonly hours: number;
  readonly celsius: number | null;
  readonly wanted: number | null;
  /** On what the hours wanted rest; null where there are none. */
  readonly source: ValueSource | null;
}

/** The clock as it stands. */
export interface Clock {
  usedSeconds: number;
  fraction: number;
  /** Exposure that dry storage would have to undo, seconds. */
  exposureSeconds: number;
  /** Whether all of it was at 30 °C and 60 % or better. */
  mild: boolean;
  expiredMs: number | null;
  exceededSeconds: number;
  running: boolean;
  shortBake: BakeTooShort | null;
  /** Hours in all above 90 °C, bakes of an unknown temperature among them; nothing sets them back. */
  hotHours: number;
  climate: Climate;
  readonly climates: Set<string>;
}

/** What the clock runs for. */
export interface Setting {
  /** The floor's climate where none is recorded. */
  readonly usual: Climate;
  readonly part: PartMoisture;
  readonly rule: DryRule | null;
  readonly nowMs: number;
  readonly thicknessMm: number | null;
  /** Whether the bake row of large ball grid arrays and stacked dies may hold. */
  readonly isLarge: boolean;
  readonly note: (note: FloorLifeNote) => void;
}

/** The name of a climate, for telling how many a clock has run in. */
export function climateKey({ celsius, humidity }: Climate): string {
  return `${celsius} ${humidity}`;
}

// A whole floor life is not exceeded by the last digit of a sum of fractions.
const sumTolerance = 1e-12;

function restart(clock: Clock): void {
  clock.usedSeconds = 0;
  clock.fraction = 0;
  clock.exposureSeconds = 0;
  clock.mild = true;
  clock.expiredMs = null;
  clock.exceededSeconds = 0;
  clock.climates.clear();
}

/** A piece of time in a climate in which the clock runs. */
type Exposure = Pick<Piece, 'fromMs' | 'toMs'> & Climate;

/** Lets the clock run for a piece of time. */
function expose(clock: Clock, piece: Exposure, setting: Setting): void {
  const climate: Climate = { celsius: piece.celsius, humidity: piece.humidity };
  const seconds = (piece.toMs - piece.fromMs) / 1000;
  const life = climateLife(setting.part, climate);
  for (const note of life.notes) setting.note(note);
  const share = life.seconds === 0 ? (seconds > 0 ? Number.POSITIVE_INFINITY : 0) : seconds / life.seconds;
  const open = 1 - clock.fraction;
  clock.usedSeconds += seconds;
  clock.fraction += share;
  clock.mild &&= isMildClimate(climate);
  clock.running = true;
  clock.climates.add(climateKey(climate));
  if (clock.expiredMs !== null) clock.exceededSeconds += seconds;
  else if (clock.fraction > 1 + sumTolerance) {
    const lastedSeconds = Math.max(0, Math.min(seconds, open * life.seconds));
    clock.expiredMs = piece.fromMs + lastedSeconds * 1000;
    clock.exceededSeconds = seconds - lastedSeconds;
  }
}

function exposeOnFloor(clock: Clock, piece: Piece, setting: Setting): void {
  const climate = {
    celsius: piece.celsius ?? setting.usual.celsius,
    humidity: piece.humidity ?? setting.usual.humidity,
  };
  expose(clock, { ...piece, ...climate }, setting);
  clock.exposureSeconds += (piece.toMs - piece.fromMs) / 1000;
  if (piece.where === 'floor') clock.climate = climate;
}

/** Dry storage of one humidity class in one go: it undoes a short exposure, else pauses the clock, else lets it run. */
function store(clock: Clock, run: Piece, setting: Setting): void {
  const { rule, part } = setting;
  const humidity = run.humidity ?? 100;
  clock.running = false;
  if (rule === null) {
    // Level 6 knows neither pause nor undoing; level 1 has no clock.
    if (part.level === '6') expose(clock, { ...run, ...clock.climate }, setting);
    return;
  }
  if (clock.exposureSeconds === 0 && humidity <= (rule.pauseHumidity ?? rule.undoHumidity)) return;
  const neededSeconds = rule.undoTimes * clock.exposureSeconds;
  const undoes =
    clock.expiredMs === null &&
    clock.mild &&
    clock.exposureSeconds <= rule.undoExposureSeconds &&
    humidity <= rule.undoHumidity &&
    (run.toMs - run.fromMs) / 1000 >= neededSeconds;
  if (undoes) {
    restart(clock);
    setting.note(floorLifeNote('resetByDryStorage', { at: run.fromMs + neededSeconds * 1000 }));
  } else if (humidity > (rule.pauseHumidity ?? -1)) {
    expose(clock, { ...run, ...clock.climate }, setting);
    if (humidity > rule.undoHumidity) clock.exposureSeconds += (run.toMs - run.fromMs) / 1000;
    setting.note(floorLifeNote('noPause'));
  } else if (clock.expiredMs === null) setting.note(floorLifeNote('paused'));
}

/** Storage that is not dry: floor in its own air; where dry air would not stop the clock either, no better than the floor's. */
function storeDamp(clock: Clock, piece: Piece, setting: Setting): void {
  const humidity = piece.humidity ?? 100;
  setting.note(floorLifeNote('notDry', { humidity }));
  const isStrict = setting.rule !== null && setting.rule.undoTimes > 5;
  const air = isStrict
    ? {
        celsius: Math.max(piece.celsius ?? setting.usual.celsius, clock.climate.celsius),
        humidity: Math.max(humidity, clock.climate.humidity),
      }
    : {};
  exposeOnFloor(clock, { ...piece, ...air }, setting);
}

function bake(clock: Clock, piece: Piece, setting: Setting): void {
  clock.running = false;
  if (piece.celsius === null || piece.celsius > hotBakeCelsius)
    clock.hotHours += (piece.toMs - piece.fromMs) / 3_600_000;
  const endMs = piece.stretch?.toMs ?? null;
  if (endMs === null || endMs > setting.nowMs) {
    setting.note(floorLifeNote('bakeRunning'));
    return;
  }
  // A bake that the record also has on the floor in part ends where its own entry ends.
  if (piece.toMs !== endMs) return;
  const isApproved = piece.stretch?.isApproved === true;
  const short = isApproved ? null : shortBake(piece, setting, clock.exceededSeconds);
  clock.shortBake = short;
  if (short !== null) {
    const facts = {
      hours: Math.round(short.hours * 10) / 10,
      celsius: short.celsius ?? '?',
      wanted: short.wanted ?? 'more than any',
    };
    setting.note(short.celsius === null ? floorLifeNote('bakeUnknown') : floorLifeNote('bakeShort', facts));
    return;
  }
  restart(clock);
  setting.note(floorLifeNote('resetByBake', { at: endMs }));
}

/** Ovens at 90 and 40 °C must be dry: relative humidity in % at most. */
const OVEN_HUMIDITY = 5;

/** What a bake is short of, null where it is as long as its row of the table grants. Where nobody stated the body, the longest row counts. */
function shortBake(piece: Piece, setting: Setting, exceededSeconds: number): BakeTooShort | null {
  const { part, thicknessMm, isLarge } = setting;
  if (part.level === '1') return null;
  const options = bakeOptions({ level: part.level, thicknessMm, exceededSeconds, isLarge, own: part.own });
  const { celsius, humidity } = piece;
  const hours = (piece.toMs - piece.fromMs) / 3_600_000;
  const isKnown = celsius !== null && celsius <= hottestBakeCelsius;
  const fitting = isKnown ? options?.find((option) => celsius >= option.celsius) : undefined;
  const isDamp =
    fitting !== undefined && fitting.celsius < 125 && humidity !== null && humidity > OVEN_HUMIDITY;
  if (isDamp) setting.note(floorLifeNote('bakeDamp', { humidity }));
  if (fitting && !isDamp && hours >= fitting.hours) {
    if (fitting.celsius < 125 && humidity === null) setting.note(floorLifeNote('bakeAirAssumed'));
    return null;
  }
  const row = isDamp ? undefined : fitting;
  return { hours, celsius, wanted: row?.hours ?? null, source: row?.source ?? null };
}

/** Joins neighbouring dry pieces that the rule treats alike: a cabinet changed for another is one storage. */
function joinDry(pieces: readonly Piece[], rule: DryRule | null): Piece[] {
  const joined: Piece[] = [];
  const alike = (a: Piece, b: Piece) =>
    rule === null || (a.humidity ?? 100) <= rule.undoHumidity === (b.humidity ?? 100) <= rule.undoHumidity;
  for (const piece of pieces) {
    const last = joined.at(-1);
    if (last && isDry(last) && isDry(piece) && alike(last, piece)) {
      const humidity = Math.max(last.humidity ?? 100, piece.humidity ?? 100);
      joined[joined.length - 1] = { ...last, toMs: piece.toMs, humidity };
    } else joined.push(piece);
  }
  return joined;
}

const dryHumidity = 10;

/** Dry storage is at 10 % relative humidity or below (J-STD-033, from memory); above that a cabinet is a piece of floor. */
function isDry(piece: Piece): boolean {
  return piece.where === 'dry' && (piece.humidity ?? 100) <= dryHumidity;
}

/** Lets the clock run through a history, piece by piece. */
export function runClock(pieces: readonly Piece[], clock: Clock, setting: Setting): void {
  for (const piece of joinDry(pieces, setting.rule)) {
    if (isDry(piece)) store(clock, piece, setting);
    else if (piece.where === 'bake') bake(clock, piece, setting);
    else if (piece.where === 'dry') storeDamp(clock, piece, setting);
    else exposeOnFloor(clock, piece, setting);
  }
}

/** Seconds left in the clock's climate, null = no limit there. */
export function leftOf(clock: Clock, part: PartMoisture): number | null {
  if (clock.expiredMs !== null) return 0;
  const life = climateLife(part, clock.climate).seconds;
  if (!Number.isFinite(life)) return null;
  // In one climate the difference is exact, where the fraction would bring a rounding error.
  const onlyHere = clock.climates.size <= 1 && clock.climates.has(climateKey(clock.climate));
  return Math.max(0, onlyHere ? life - clock.usedSeconds : (1 - clock.fraction) * life);
}

/** A clock before the first piece. `spentSinceMs`: spent from then on until a bake (level 6); null: whole. */
export function freshClock(climate: Climate, spentSinceMs: number | null, running: boolean): Clock {
  return {
    usedSeconds: 0,
    fraction: spentSinceMs === null ? 0 : Number.POSITIVE_INFINITY,
    exposureSeconds: 0,
    mild: true,
    expiredMs: spentSinceMs,
    exceededSeconds: 0,
    running,
    shortBake: null,
    hotHours: 0,
    climate,
    climates: new Set(),
  };
}

/** The climate where none is recorded. */
export const usualClimate: Climate = standardClimate;
