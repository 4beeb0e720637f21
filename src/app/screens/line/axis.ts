// The time axis that tapes lie along: from now to the right, in every language.

const HOUR_MS = 3_600_000;

/** Hours that the axis of the line may show. */
export const HORIZONS = [1, 2, 4, 8] as const;

/** What a word for now of six letters and half a time of day need beside each other, px of letters of the usual size. */
const NOW_PX = 80;
/** What each further letter of that word needs, px. */
const LETTER_PX = 9;
/** Between the middles of two labels that do not touch, px of letters of the usual size. */
const LABEL_PX = 60;

/** Where a moment lies. */
export interface Geometry {
  readonly nowMs: number;
  readonly zone: string;
  /** Of the axis, px. */
  readonly width: number;
  readonly hours: number;
  /** Size of letters; 1 where nobody asked for larger ones. */
  readonly scale: number;
  readonly toX: (ms: number) => number;
}

/** An axis of so many hours from a moment on, so wide; what is gone lies at its beginning. */
export function geometryOf(given: Omit<Geometry, 'toX'>): Geometry {
  const { nowMs, width, hours } = given;
  return { ...given, toX: (ms) => Math.max(0, ((ms - nowMs) / (hours * HOUR_MS)) * width) };
}

/** Moments at which the axis is labelled: whole steps of the clock, five or so across the width. */
export function axisTicks(fromMs: number, hours: number): readonly number[] {
  const stepMs = (hours * HOUR_MS) / 4;
  const first = Math.ceil(fromMs / stepMs) * stepMs;
  return [0, 1, 2, 3, 4].map((index) => first + index * stepMs).filter((ms) => ms < fromMs + hours * HOUR_MS);
}

/** The labelled moments beside the word for now, as many as the width has room for. */
export function ticksShown(
  { nowMs, hours, width, scale, toX }: Geometry,
  nowWord: string,
): readonly number[] {
  const now = (NOW_PX + Math.max(0, nowWord.length - 6) * LETTER_PX) * scale;
  const every = Math.ceil((4.5 * LABEL_PX * scale) / width);
  return axisTicks(nowMs + (HOUR_MS * hours * now) / width, hours)
    .filter((ms) => toX(ms) < width - (LABEL_PX * scale) / 2)
    .filter((_, index) => index % every === 0);
}

/** The least of the usual spans that reaches a moment, h; the longest where none does. */
export function hoursUntil(ms: number, nowMs: number): number {
  const spans = [0.5, 1, 2, 4, 8, 24, 48];
  return spans.find((hours) => ms - nowMs <= hours * HOUR_MS) ?? 96;
}
