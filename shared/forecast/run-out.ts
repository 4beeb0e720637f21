// When does a slot run out, when may it be spliced, and does it outlast the run?
// Method: placements still to come (placements.ts) over placements per panel give panels; panels times the panel's time give
// working time; the shift calendar turns that into moments. Clock time without the calendar was refused: a break is not work.

import { compareSlots } from '../floor/address.ts';
import { panelsUntil, perPanelAfter, placementsUntil, type SlotUse } from './beside.ts';
import type { Moments } from './normal.ts';
import { type PlacementLaw, placementLaw, type ReelOutlook } from './placements.ts';
import { type WorkingTime, workingMoment } from './working-time.ts';

/**
 * One slot: what it uses (a share of a part's load may be a fraction), what its reel holds, and the feeder's tape lengths where they are known
 * (pitch, hub and intake, or none).
 */
export interface SlotLoad extends ReelOutlook, SlotUse {
  /** The slot's address. */
  readonly slot: string;
  /** Pocket pitch along the tape, mm. */
  readonly pitchMm?: number;
  /** Tape length from the hub to the pick point, mm. */
  readonly hubToPickMm?: number;
  /** Tape length from the feeder's intake to the pick point, mm. */
  readonly intakeToPickMm?: number;
  /** Empty tape behind the last part, mm; absent: the lengths are measured to the last part. */
  readonly trailerMm?: number;
}

/** What all slots of a line have in common at one moment. */
export interface LinePace {
  /** Now, ms since 1970. */
  readonly nowMs: number;
  /** Mean working seconds from one panel to the next, above 0. */
  readonly panelSeconds: number;
  /** Standard deviation of one panel's time, s; independent from panel to panel, so n panels have variance n·sd². */
  readonly panelSd?: number;
  /** Standard deviation of the mean itself, s (`panelTimeEstimate().meanSd`); the same for all panels: n panels have n²·sd². */
  readonly panelMeanSd?: number;
  /** Panels still to be done in this run, 0 or more. */
  readonly panelsLeft: number;
  readonly calendar: WorkingTime;
}

/** Early (5 % point), expected (mean) and late (95 % point), ms since 1970. */
export interface MomentSpread {
  readonly early: number;
  readonly expected: number;
  readonly late: number;
}

/** The answer for one slot. Moments in ms since 1970, fractions kept. */
export interface SlotForecast {
  readonly slot: string;
  /** Whole panels that the expected placements cover. */
  readonly fullPanels: number;
  /** Placements still to come: mean and standard deviation. */
  readonly placements: { readonly mean: number; readonly sd: number };
  /** Working seconds to the expected run-out. */
  readonly workSeconds: number;
  readonly runOutMs: MomentSpread;
  /** Expected opening and closing of the splice window; null where the feeder's lengths are not known. */
  readonly windowMs: { readonly opens: number; readonly closes: number } | null;
  /** Parts left at which the window opens and closes; null where the feeder's lengths are not known. */
  readonly windowParts: { readonly opens: number; readonly closes: number } | null;
  /** Probability that the reel runs out before the run's panels are done. */
  readonly risk: number;
  /** True where `risk` is below 0.05: the run ends first, no splice is due. */
  readonly outlasts: boolean;
}

/** The shares at which early and late stand. */
export const SPREAD_SHARES = [0.05, 0.95] as const;
/** Below this risk the run is said to end first. */
export const OUTLAST_RISK = 0.05;

/** Whole number below x, where a rounding error of the division must not cost one: 0.3 / 0.1 is 3. */
export function wholeBelow(x: number): number {
  const near = Math.round(x);
  return Math.abs(x - near) <= 1e-9 * Math.max(1, Math.abs(x)) ? near : Math.floor(x);
}

/**
 * Seconds per panel from a rate: `3600 · N / (cph · u)`. `placements`: all placements per panel of the slowest machine;
 * `cph`: its nominal rate, placements per hour; `share`: the part of that rate really reached, above 0 up to 1.
 * Example: 1234 placements at 60 000 per hour and 0.8 give 92.55 s.
 */
export function panelSecondsFromRate(rate: {
  readonly placements: number;
  readonly cph: number;
  readonly share: number;
}): number {
  return (3600 * rate.placements) / (rate.cph * rate.share);
}

/** Variance of the panels' time, written in placements of this slot (divide seconds by seconds per placement). */
function timeSmear(pace: LinePace, load: SlotLoad, moments: Moments): number {
  const panels = panelsUntil(load, moments.mean);
  const one = pace.panelSd ?? 0;
  const mean = pace.panelMeanSd ?? 0;
  const seconds = panels * one * one + panels * panels * mean * mean;
  return seconds / (pace.panelSeconds / perPanelAfter(load, panels)) ** 2;
}

function spliceWindow(
  load: SlotLoad,
  momentOfPlacements: (placements: number) => number,
): Pick<SlotForecast, 'windowMs' | 'windowParts'> {
  const { pitchMm, hubToPickMm, intakeToPickMm, trailerMm = 0 } = load;
  if (pitchMm === undefined || hubToPickMm === undefined || intakeToPickMm === undefined) {
    return { windowMs: null, windowParts: null };
  }
  // The trailer leaves the hub last: with it behind them, fewer parts are left when the tape's end is in reach.
  const partsAt = (mm: number) => Math.max(0, wholeBelow((mm - trailerMm) / pitchMm));
  const parts = { opens: partsAt(hubToPickMm), closes: partsAt(intakeToPickMm) };
  const momentAt = (partsLeft: number) =>
    momentOfPlacements((1 - load.loss) * Math.max(0, load.left - partsLeft));
  return { windowMs: { opens: momentAt(parts.opens), closes: momentAt(parts.closes) }, windowParts: parts };
}

function checkPace(pace: LinePace): void {
  if (!(pace.panelSeconds > 0 && Number.isFinite(pace.panelSeconds))) {
    throw new RangeError(
      `Cannot forecast as panelSeconds must be above 0: current value is ${pace.panelSeconds}`,
    );
  }
}

function checkLoad(load: SlotLoad): void {
  if (!(load.perPanel > 0)) {
    throw new RangeError(`Cannot forecast as perPanel must be above 0: current value is ${load.perPanel}`);
  }
  if (!(load.left >= 0 && Number.isFinite(load.left))) {
    throw new RangeError(`Cannot forecast as left must be 0 or more: current value is ${load.left}`);
  }
  if (!(load.loss >= 0 && load.loss <= 1)) {
    throw new RangeError(`Cannot forecast as loss must lie in 0..1: current value is ${load.loss}`);
  }
}

/** What takes the time of a forecast: points and risk of the law of placements, which do not depend on the moment. */
interface Law {
  readonly early: number;
  readonly late: number;
  readonly risk: number;
}

/**
 * Laws that a caller keeps between looks at the same line, by all that goes into them: made empty by the caller, filled here. It
 * changes no answer, only the time: between two panels a look differs in the moment alone.
 */
export type LawMemory = Map<string, Law>;
/** Laws kept: a few looks at a long line. */
const LAWS_KEPT = 2000;

function lawOf(
  load: SlotLoad,
  asked: { readonly of: PlacementLaw; readonly variance: number; readonly wanted: number },
  laws: LawMemory | undefined,
): Law {
  const computed = (): Law => {
    // The risk first: its law is the finer one, and serves both.
    const risk = asked.of.riskOfFewerThan(asked.wanted);
    const [early = 0, late = 0] = asked.of.at(SPREAD_SHARES, asked);
    return { early, late, risk };
  };
  if (laws === undefined) return computed();
  const { left, sd, taken, loss, lossStrength } = load;
  const key = `${left} ${sd} ${taken} ${loss} ${lossStrength} ${asked.variance} ${asked.wanted}`;
  const known = laws.get(key);
  if (known) return known;
  const law = computed();
  if (laws.size >= LAWS_KEPT) laws.clear();
  laws.set(key, law);
  return law;
}

/**
 * Forecast of one slot. Early and late are the 5 % and 95 % points of the working time to run-out: placements, count, learnt
 * loss and panel time together. `laws`: kept by the caller between looks, if at all. Throws RangeError for values out of range: check input before.
 * Example: 4000 parts, 12 per panel, 30 s per panel, no loss: 333 full panels, run-out after 10 000 s of work.
 */
export function forecastSlot(pace: LinePace, load: SlotLoad, laws?: LawMemory): SlotForecast {
  checkPace(pace);
  checkLoad(load);
  const secondsOf = (placements: number) => panelsUntil(load, placements) * pace.panelSeconds;
  const momentOfPlacements = (placements: number) =>
    workingMoment(pace.calendar, pace.nowMs, secondsOf(placements));
  const law = placementLaw(load);
  const { moments } = law;
  const asked = {
    of: law,
    variance: timeSmear(pace, load, moments),
    wanted: placementsUntil(load, pace.panelsLeft),
  };
  const { early, late, risk } = lawOf(load, asked, laws);
  return {
    slot: load.slot,
    fullPanels: wholeBelow(panelsUntil(load, moments.mean)),
    placements: { mean: moments.mean, sd: Math.sqrt(moments.variance) },
    workSeconds: secondsOf(moments.mean),
    runOutMs: {
      early: momentOfPlacements(early),
      expected: momentOfPlacements(moments.mean),
      late: momentOfPlacements(late),
    },
    ...spliceWindow(load, momentOfPlacements),
    risk,
    outlasts: risk < OUTLAST_RISK,
  };
}

/** Forecast of every slot of a line, ordered by expected run-out, then by working seconds, then in walking order. Cost n log n. */
export function forecastLine(pace: LinePace, loads: readonly SlotLoad[]): SlotForecast[] {
  return loads
    .map((load) => forecastSlot(pace, load))
    .sort(
      (a, b) =>
        a.runOutMs.expected - b.runOutMs.expected ||
        a.workSeconds - b.workSeconds ||
        compareSlots(a.slot, b.slot),
    );
}
