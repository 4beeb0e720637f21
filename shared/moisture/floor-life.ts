// How much of its floor life has a reel used, how much is left, and when does it end?
// Method: IPC/JEDEC J-STD-033: the clock runs outside dry storage at the pace of table 7-1, stands still in dry storage (levels 2, 2a, 3), starts
// again after dry storage that undoes a short exposure, and after a bake. Adding stretches in different climates is this tool's
// own rule: each uses up its share of the life of its own climate. Pause and undo rules are from memory.

import { fail, ok, type Result } from '../kit/result.ts';
import { bakeOptions, hotBakeLimitHours } from './bake.ts';
import { climateLife, type PartMoisture } from './climate-life.ts';
import {
  type BakeTooShort,
  type Clock,
  freshClock,
  leftOf,
  runClock,
  type Setting,
  usualClimate,
} from './clock.ts';
import { dryRuleOf, type MoistureLevel, type PackageClass } from './levels.ts';
import { type FloorLifeNote, floorLifeNote } from './notes.ts';
import { isLargeOrStacked, type PackageFacts, packageClassesOf } from './package.ts';
import { type AirSpan, type Climate, makeTimeline } from './timeline.ts';
import type { OwnValues, ValueSource } from './values.ts';

/** The question: one reel, from the opening of its bag until now. Moments in ms since 1970. */
export interface FloorLifeInput {
  readonly level: MoistureLevel;
  /** Body thickness in mm, > 0; null = not known. */
  readonly thicknessMm: number | null;
  /** The package class where it is known better than by thickness and package. */
  readonly packageClass?: PackageClass;
  /** What is known of the package; absent: nobody is asked, and the class follows from the thickness alone. */
  readonly package?: PackageFacts;
  /** What a package that nobody stated may be at its bake: `large`, the worse (absent too), or what its body alone says, which is noted. */
  readonly unknownBakesAs?: 'large' | 'body';
  /** The plant's own values of the tables. */
  readonly own?: OwnValues | null;
  /** True where the plant's edition lets a cabinet at 5 % or below stop the clock of levels 4, 5 and 5a. */
  readonly cabinetPauses?: boolean;
  /** Level 6 only: the time on the label in seconds. */
  readonly timeOnLabelSeconds?: number;
  /** The floor's climate wherever none is recorded; absent: 30 °C and 60 %, which is noted. */
  readonly climate?: Climate;
  readonly openedMs: number;
  readonly nowMs: number;
  /** In any order; gaps and overlaps are settled to the worse side and noted. */
  readonly history: readonly AirSpan[];
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
  /** The class whose life counts in `climate`; null where classes do not matter or nothing is known of the part. */
  readonly packageClass: PackageClass | null;
  /** Every class that it may belong to: the shortest life of them counts. */
  readonly packageClasses: readonly PackageClass[];
  /** On what the life in `climate` rests. */
  readonly source: ValueSource;
  /** Hours of bakes above 90 °C in all since the opening; a bake of unknown temperature counts. */
  readonly hotBakeHours: number;
  /** The climate of the last stretch on the floor, for which `leftSeconds` holds. */
  readonly climate: Climate;
  /** Whether the clock runs at `nowMs`. */
  readonly running: boolean;
  /** The newest bake, where it was shorter than the table grants and so has reset nothing; null else. */
  readonly shortBake: BakeTooShort | null;
  readonly notes: readonly FloorLifeNote[];
}

/** Why a question cannot be answered: `index` is the stretch's place in `history`. */
export type FloorLifeError =
  | { readonly code: 'openedAfterNow' }
  | { readonly code: 'thicknessNotPositive'; readonly thicknessMm: number }
  | { readonly code: 'stretchEndsBeforeItStarts'; readonly index: number }
  | { readonly code: 'humidityOutOfRange'; readonly index: number; readonly humidity: number };

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

function classNotes(
  input: FloorLifeInput,
  classes: readonly PackageClass[],
  source: ValueSource,
): FloorLifeNote[] {
  if (input.level === '1') return [floorLifeNote('levelWithoutLimit')];
  if (input.level === '6') return [floorLifeNote('labelTime'), floorLifeNote('levelSixBake')];
  if (input.level === '2') return [];
  const named = [...classes].sort().join(', ');
  const notes: FloorLifeNote[] = [];
  const isByThickness = input.packageClass === undefined && input.package === undefined;
  if (classes.length > 1) {
    const isThickness = input.thicknessMm === null && isByThickness;
    notes.push(floorLifeNote(isThickness ? 'classUnknown' : 'classOpen', { class: named }));
  } else if (isByThickness) notes.push(floorLifeNote('classByThickness', { class: named }));
  if (source === 'memory') notes.push(floorLifeNote('classFromMemory', { class: named }));
  if (source === 'own') notes.push(floorLifeNote('ownValues'));
  return notes;
}

function bakeNotes(clock: Clock): FloorLifeNote[] {
  if (clock.hotHours === 0) return [];
  const facts = { hours: Math.round(clock.hotHours * 10) / 10, most: hotBakeLimitHours };
  return [floorLifeNote(clock.hotHours > hotBakeLimitHours ? 'hotBakesOver' : 'hotBakes', facts)];
}

function closingNotes(
  clock: Clock,
  input: FloorLifeInput,
  leftSeconds: number | null,
  isLarge: boolean,
): FloorLifeNote[] {
  const notes: FloorLifeNote[] = bakeNotes(clock);
  const isBaked = input.history.some(({ where }) => where === 'bake');
  const isUnstated = input.unknownBakesAs === 'body' && (input.package?.family ?? null) === null;
  if (isBaked && isUnstated && !isLarge) notes.push(floorLifeNote('bakeRowByBody'));
  if (clock.climates.size > 1) notes.push(floorLifeNote('mixedClimates'));
  if (leftSeconds === null && input.level !== '1') notes.push(floorLifeNote('noLimitHere'));
  const { level, thicknessMm, own = null } = input;
  // Level 6 before its bake is not exceeded: it has not begun.
  if (leftSeconds !== 0 || (level === '6' && clock.fraction === Number.POSITIVE_INFINITY)) return notes;
  const hours = Math.round(clock.exceededSeconds / 360) / 10;
  notes.push(floorLifeNote('exceeded', { hours }));
  const { exceededSeconds } = clock;
  const options =
    thicknessMm === null ? null : bakeOptions({ level, thicknessMm, exceededSeconds, isLarge, own });
  if (options !== null) {
    const text = options.map(({ celsius, hours: baked }) => `${baked} h at ${celsius} °C`).join(' or ');
    notes.push(floorLifeNote('bake', { options: text }));
  }
  return notes;
}

/**
 * The floor life of one reel. Example: level 3, opened 20 h ago at 30 °C and 60 %, then 48 h at 10 % relative humidity: 20 h used, 148 h left.
 * Levels 4, 5 and 5a know no pause: dry storage that does not undo the exposure counts as floor (conservative reading). Fails
 * where moments or values contradict each other.
 */
export function floorLife(input: FloorLifeInput): Result<FloorLife, FloorLifeError> {
  const error = findError(input);
  if (error !== null) return fail(error);
  const { level, thicknessMm, nowMs, own = null } = input;
  const packageClasses =
    input.packageClass === undefined ? packageClassesOf(thicknessMm, input.package) : [input.packageClass];
  const timeOnLabelSeconds = input.timeOnLabelSeconds ?? null;
  const part: PartMoisture = { level, packageClasses, timeOnLabelSeconds, own };
  const timeline = makeTimeline(input.history, input.openedMs, nowMs, input.climate);
  const notes: FloorLifeNote[] = [...timeline.notes];
  const note = (added: FloorLifeNote) => {
    if (!notes.some((known) => known.message === added.message)) notes.push(added);
  };
  // Level 6 is spent from the start: only a bake opens its time on the label.
  const spentSinceMs = level === '6' ? input.openedMs : null;
  const clock = freshClock(timeline.firstClimate, spentSinceMs, timeline.pieces.length === 0);
  const isLarge = mayBeLarge(input);
  const setting: Setting = {
    part,
    rule: dryRuleOf(level, input.cabinetPauses),
    usual: input.climate ?? usualClimate,
    nowMs,
    thicknessMm,
    isLarge,
    note,
  };
  runClock(timeline.pieces, clock, setting);
  if (timeline.climateFromNow !== null) {
    clock.climate = timeline.climateFromNow;
    clock.running = true;
  }
  const leftSeconds = leftOf(clock, part);
  const here = climateLife(part, clock.climate);
  for (const added of closingNotes(clock, input, leftSeconds, isLarge)) note(added);
  const endMs = leftSeconds === null || !clock.running ? null : nowMs + leftSeconds * 1000;
  return ok({
    usedSeconds: clock.usedSeconds,
    usedFraction: clock.fraction,
    leftSeconds,
    expiresMs: clock.expiredMs ?? endMs,
    exceededSeconds: clock.exceededSeconds,
    packageClass: shownClass(input, packageClasses, here.packageClass),
    packageClasses,
    source: here.source,
    hotBakeHours: clock.hotHours,
    climate: clock.climate,
    running: clock.running,
    shortBake: clock.shortBake,
    notes: [...classNotes(input, packageClasses, here.source), ...notes],
  });
}

/** Whether the bake row of large packages and stacked dies may hold. */
function mayBeLarge({ package: facts, unknownBakesAs = 'large' }: FloorLifeInput): boolean {
  if (facts === undefined) return false;
  if (facts.family === null && unknownBakesAs === 'body')
    return facts.isStacked === true || (facts.bodyMm !== null && isLargeOrStacked(facts));
  return isLargeOrStacked(facts);
}

/** The class to show: the only one, else the one whose life counts in the climate; null where nothing is known of the part. */
function shownClass(
  { thicknessMm, package: facts }: FloorLifeInput,
  classes: readonly PackageClass[],
  shortest: PackageClass | null,
): PackageClass | null {
  const [first] = classes;
  if (classes.length === 1 && first !== undefined) return first;
  return thicknessMm === null && (facts?.family ?? null) === null ? null : (shortest ?? first ?? null);
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
