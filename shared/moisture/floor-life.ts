// How much of its floor life has a reel used, how much is left, and when does it end?
// Method: IPC/JEDEC J-STD-033: the clock runs outside dry storage at the pace of table 7-1, stands still in dry storage (levels 2, 2a, 3), starts
// again after dry storage that undoes a short exposure, and after a bake. Adding stretches in different climates is this tool's
// own rule: each uses up its share of the life of its own climate. Pause and undo rules are from memory.

import { fail, ok, type Result } from '../kit/result.ts';
import { bakeOptions } from './bake.ts';
import { climateLife, isMildClimate, type PartMoisture } from './climate-life.ts';
import {
  classOfThickness,
  type DryRule,
  dryRuleOf,
  type MoistureLevel,
  type PackageClass,
  standardClimate,
} from './levels.ts';
import { type FloorLifeNote, floorLifeNote } from './notes.ts';
import { type Climate, makeTimeline, type Piece, type Stretch } from './timeline.ts';

/** The question: one reel, from the opening of its bag until now. Moments in ms since 1970. */
export interface FloorLifeInput {
  readonly level: MoistureLevel;
  /** Body thickness in mm, > 0; null = not known. */
  readonly thicknessMm: number | null;
  /** The package class where it is known better than by thickness. */
  readonly packageClass?: PackageClass;
  /** Level 6 only: the time on the label in seconds. */
  readonly timeOnLabelSeconds?: number;
  /** The floor's climate wherever none is recorded; absent: 30 °C and 60 %, which is noted. */
  readonly climate?: Climate;
  readonly openedMs: number;
  readonly nowMs: number;
  /** In any order; gaps and overlaps are settled to the worse side and noted. */
  readonly history: readonly Stretch[];
}

/** The answer. */
export interface FloorLife {
  /** Exposure in seconds since the bag was opened or the life last started again. */
  readonly usedSeconds: number;
  /** Share of the floor life used, 0 = none, 1 = all; above 1 it is exceeded. */
  readonly usedFraction: number;
  /** Seconds left in `climate`, >= 0; null = no limit there. */
  readonly leftSeconds: number | null;
  /** When it ends if the reel stays where it is, or when it ended; null while the clock stands still or has no limit. */
  readonly expiresMs: number | null;
  /** Seconds of exposure beyond the end of the floor life, 0 while it lasts. */
  readonly exceededSeconds: number;
  readonly packageClass: PackageClass | null;
  /** The climate of the last stretch on the floor, for which `leftSeconds` holds. */
  readonly climate: Climate;
  /** Whether the clock runs at `nowMs`. */
  readonly running: boolean;
  /** The newest bake, where it was shorter than the table grants and so has reset nothing; null else. */
  readonly shortBake: ShortBake | null;
  readonly notes: readonly FloorLifeNote[];
}

/** A bake that was too short: what was told of it, and the hours that the table wants at that temperature (null: it gives none). */
export interface ShortBake {
  readonly hours: number;
  readonly celsius: number | null;
  readonly wanted: number | null;
}

/** Why a question cannot be answered: `index` is the stretch's place in `history`. */
export type FloorLifeError =
  | { readonly code: 'openedAfterNow' }
  | { readonly code: 'thicknessNotPositive'; readonly thicknessMm: number }
  | { readonly code: 'stretchEndsBeforeItStarts'; readonly index: number }
  | { readonly code: 'humidityOutOfRange'; readonly index: number; readonly humidity: number };

interface Clock {
  usedSeconds: number;
  fraction: number;
  /** Exposure that dry storage would have to undo, seconds. */
  exposureSeconds: number;
  /** Whether all of it was at 30 °C and 60 % or better. */
  mild: boolean;
  expiredMs: number | null;
  exceededSeconds: number;
  running: boolean;
  shortBake: ShortBake | null;
  climate: Climate;
  readonly climates: Set<string>;
}

interface Setting {
  /** The floor's climate where none is recorded. */
  readonly usual: Climate;
  readonly part: PartMoisture;
  readonly rule: DryRule | null;
  readonly nowMs: number;
  readonly thicknessMm: number | null;
  readonly note: (note: FloorLifeNote) => void;
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
  clock.climates.add(`${climate.celsius} ${climate.humidity}`);
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
  const { rule } = setting;
  clock.running = false;
  if (rule === null || clock.exposureSeconds === 0) return;
  const neededSeconds = rule.undoTimes * clock.exposureSeconds;
  const undoes =
    clock.expiredMs === null &&
    clock.mild &&
    clock.exposureSeconds <= rule.undoExposureSeconds &&
    (run.humidity ?? 100) <= rule.undoHumidity &&
    (run.toMs - run.fromMs) / 1000 >= neededSeconds;
  if (undoes) {
    restart(clock);
    setting.note(floorLifeNote('resetByDryStorage', { at: run.fromMs + neededSeconds * 1000 }));
  } else if (rule.pauseHumidity === null) {
    expose(clock, { ...run, ...clock.climate }, setting);
    if ((run.humidity ?? 100) > rule.undoHumidity) clock.exposureSeconds += (run.toMs - run.fromMs) / 1000;
    setting.note(floorLifeNote('noPause'));
  } else if (clock.expiredMs === null) setting.note(floorLifeNote('paused'));
}

function bake(clock: Clock, piece: Piece, setting: Setting): void {
  clock.running = false;
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

/** Bodies of the table's three rows, thickest first: a body that nobody stated may be any of them. */
const ROW_BODIES_MM = [4.5, 2, 1.4] as const;

/**
 * What a bake is short of, null where it is as long as its row of the table grants. Where nobody stated the body, the longest row counts;
 * level 6 has no row, and its bake counts as told.
 */
function shortBake(piece: Piece, { part, thicknessMm }: Setting, exceededSeconds: number): ShortBake | null {
  const options = bakeOptions(part.level, thicknessMm ?? ROW_BODIES_MM[0], exceededSeconds);
  if (options === null && (part.level === '6' || part.level === '1')) return null;
  const { celsius } = piece;
  const hours = (piece.toMs - piece.fromMs) / 3_600_000;
  const fitting = celsius === null ? undefined : options?.find((option) => celsius >= option.celsius);
  if (fitting && hours >= fitting.hours) return null;
  return { hours, celsius, wanted: fitting?.hours ?? null };
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

function findError(input: FloorLifeInput): FloorLifeError | null {
  if (input.openedMs > input.nowMs) return { code: 'openedAfterNow' };
  if (input.thicknessMm !== null && !(input.thicknessMm > 0)) {
    return { code: 'thicknessNotPositive', thicknessMm: input.thicknessMm };
  }
  for (const [index, { fromMs, toMs, humidity }] of input.history.entries()) {
    if (toMs !== null && toMs < fromMs) return { code: 'stretchEndsBeforeItStarts', index };
    if (humidity !== null && !(humidity >= 0 && humidity <= 100)) {
      return { code: 'humidityOutOfRange', index, humidity };
    }
  }
  return null;
}

function classNotes(input: FloorLifeInput, packageClass: PackageClass | null): FloorLifeNote[] {
  if (input.level === '1') return [floorLifeNote('levelWithoutLimit')];
  if (input.level === '6') return [floorLifeNote('labelTime')];
  if (input.level === '2') return [];
  if (packageClass === null)
    return [floorLifeNote('classUnknown'), floorLifeNote('classFromMemory', { class: 'B and C' })];
  const notes: FloorLifeNote[] = [];
  if (input.packageClass === undefined)
    notes.push(floorLifeNote('classByThickness', { class: packageClass }));
  if (packageClass !== 'A') notes.push(floorLifeNote('classFromMemory', { class: packageClass }));
  return notes;
}

function closingNotes(clock: Clock, input: FloorLifeInput, leftSeconds: number | null): FloorLifeNote[] {
  const notes: FloorLifeNote[] = [];
  if (clock.climates.size > 1) notes.push(floorLifeNote('mixedClimates'));
  if (leftSeconds === null && input.level !== '1') notes.push(floorLifeNote('noLimitHere'));
  // Level 6 before its bake is not exceeded: it has not begun.
  if (leftSeconds !== 0 || (input.level === '6' && clock.fraction === Number.POSITIVE_INFINITY)) return notes;
  const hours = Math.round(clock.exceededSeconds / 360) / 10;
  notes.push(floorLifeNote('exceeded', { hours }));
  const options =
    input.thicknessMm === null ? null : bakeOptions(input.level, input.thicknessMm, clock.exceededSeconds);
  if (options !== null) {
    const text = options.map(({ celsius, hours: baked }) => `${baked} h at ${celsius} °C`).join(' or ');
    notes.push(floorLifeNote('bake', { options: text }));
  }
  return notes;
}

function runClock(pieces: readonly Piece[], clock: Clock, setting: Setting): void {
  for (const piece of joinDry(pieces, setting.rule)) {
    if (isDry(piece)) store(clock, piece, setting);
    else if (piece.where === 'bake') bake(clock, piece, setting);
    else {
      if (piece.where === 'dry') setting.note(floorLifeNote('notDry', { humidity: piece.humidity ?? 100 }));
      exposeOnFloor(clock, piece, setting);
    }
  }
}

/**
 * The floor life of one reel. Example: level 3, opened 20 h ago at 30 °C and 60 %, then 48 h at 10 % relative humidity: 20 h used, 148 h left.
 * Levels 4, 5 and 5a know no pause: dry storage that does not undo the exposure counts as floor (conservative reading). Fails
 * where moments or values contradict each other.
 */
export function floorLife(input: FloorLifeInput): Result<FloorLife, FloorLifeError> {
  const error = findError(input);
  if (error !== null) return fail(error);
  const packageClass =
    input.packageClass ?? (input.thicknessMm === null ? null : classOfThickness(input.thicknessMm));
  const part: PartMoisture = {
    level: input.level,
    packageClass,
    timeOnLabelSeconds: input.timeOnLabelSeconds ?? null,
  };
  const timeline = makeTimeline(input.history, input.openedMs, input.nowMs, input.climate);
  const notes: FloorLifeNote[] = [...classNotes(input, packageClass), ...timeline.notes];
  const note = (added: FloorLifeNote) => {
    if (!notes.some((known) => known.message === added.message)) notes.push(added);
  };
  // Level 6 is spent from the start: only a bake opens its time on the label.
  const spent = input.level === '6';
  const clock: Clock = {
    usedSeconds: 0,
    fraction: spent ? Number.POSITIVE_INFINITY : 0,
    exposureSeconds: 0,
    mild: true,
    expiredMs: spent ? input.openedMs : null,
    exceededSeconds: 0,
    running: timeline.pieces.length === 0,
    shortBake: null,
    climate: timeline.firstClimate,
    climates: new Set(),
  };
  const setting: Setting = {
    part,
    rule: dryRuleOf(input.level),
    usual: input.climate ?? standardClimate,
    nowMs: input.nowMs,
    thicknessMm: input.thicknessMm,
    note,
  };
  runClock(timeline.pieces, clock, setting);
  if (timeline.climateFromNow !== null) {
    clock.climate = timeline.climateFromNow;
    clock.running = true;
  }
  const leftSeconds = leftOf(clock, part);
  for (const added of closingNotes(clock, input, leftSeconds)) note(added);
  const endMs = leftSeconds === null || !clock.running ? null : input.nowMs + leftSeconds * 1000;
  return ok({
    usedSeconds: clock.usedSeconds,
    usedFraction: clock.fraction,
    leftSeconds,
    expiresMs: clock.expiredMs ?? endMs,
    exceededSeconds: clock.exceededSeconds,
    packageClass,
    climate: clock.climate,
    running: clock.running,
    shortBake: clock.shortBake,
    notes,
  });
}

function leftOf(clock: Clock, part: PartMoisture): number | null {
  if (clock.expiredMs !== null) return 0;
  const life = climateLife(part, clock.climate).seconds;
  if (!Number.isFinite(life)) return null;
  // In one climate the difference is exact, where the fraction would bring a rounding error.
  const onlyHere =
    clock.climates.size <= 1 && clock.climates.has(`${clock.climate.celsius} ${clock.climate.humidity}`);
  return Math.max(0, onlyHere ? life - clock.usedSeconds : (1 - clock.fraction) * life);
}

/** Whether a floor life lasts until a moment. */
export interface FloorLifeForecast {
  /** True where it ends before the moment. */
  readonly ends: boolean;
  /** Seconds of floor life left over at the moment, negative where they are missing; null = no limit. */
  readonly marginSeconds: number | null;
}

/**
 * Does the floor life last until `untilMs` (a run-out, say), if the reel lies on the floor from `nowMs` on in the climate of its last
 * stretch there? A moment that has passed asks whether it has ended already.
 */
export function floorLifeAt(
  life: Pick<FloorLife, 'leftSeconds'>,
  moments: { readonly nowMs: number; readonly untilMs: number },
): FloorLifeForecast {
  if (life.leftSeconds === null) return { ends: false, marginSeconds: null };
  const marginSeconds = life.leftSeconds - Math.max(0, moments.untilMs - moments.nowMs) / 1000;
  return { ends: marginSeconds < 0 || life.leftSeconds === 0, marginSeconds };
}
