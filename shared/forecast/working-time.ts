// When is a given amount of work done, if the line stands still during some stretches?
// Method: stops are sorted and merged once, and the work done up to each stop's start is kept, so that a moment is found by
// bisection (log n). Walking minute by minute was refused: slow, and wrong by up to a step.

/** A stretch in which no panel is placed: from `fromMs` to `toMs`, milliseconds since 1970 UTC. */
export interface Stop {
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * Stops, sorted, merged and summed. Made by `workingTime`; plain values, safe to pass between threads.
 * `workAtMs[i]` = the start of stop i less all the stopped time before it (a clock that stands still in stops).
 */
export interface WorkingTime {
  readonly fromMs: readonly number[];
  readonly toMs: readonly number[];
  readonly workAtMs: readonly number[];
  readonly stoppedMs: readonly number[];
}

/** Two moments closer than this are the same: 1 µs, four times the step of a double at today's dates. */
const SAME_MS = 1e-3;

/** A line that never stops. */
export const neverStopping: WorkingTime = { fromMs: [], toMs: [], workAtMs: [], stoppedMs: [0] };

/**
 * Sorts and merges stops (any order, overlapping or touching allowed; empty ones are dropped).
 * Throws RangeError where a stop ends before it starts or is not finite: check input before. Cost n log n.
 */
export function workingTime(stops: readonly Stop[]): WorkingTime {
  for (const stop of stops) {
    if (!(Number.isFinite(stop.fromMs) && Number.isFinite(stop.toMs) && stop.fromMs <= stop.toMs)) {
      throw new RangeError(
        `Cannot use stop as its end must not lie before its start: current value is ${stop.fromMs}..${stop.toMs}`,
      );
    }
  }
  const sorted = stops.filter((stop) => stop.toMs > stop.fromMs).sort((a, b) => a.fromMs - b.fromMs);
  const fromMs: number[] = [];
  const toMs: number[] = [];
  for (const stop of sorted) {
    const last = toMs.length - 1;
    if (last >= 0 && stop.fromMs <= toMs[last]! + SAME_MS) toMs[last] = Math.max(toMs[last]!, stop.toMs);
    else {
      fromMs.push(stop.fromMs);
      toMs.push(stop.toMs);
    }
  }
  const workAtMs: number[] = [];
  const stoppedMs: number[] = [0];
  for (let i = 0; i < fromMs.length; i++) {
    const before = stoppedMs[i]!;
    workAtMs.push(fromMs[i]! - before);
    stoppedMs.push(before + toMs[i]! - fromMs[i]!);
  }
  return { fromMs, toMs, workAtMs, stoppedMs };
}

/** How many entries of the rising list `values` are smaller than `limit`. */
function countBelow(values: readonly number[], limit: number): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[middle]! < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The clock that stands still in stops, at `atMs`. */
function workClock(calendar: WorkingTime, atMs: number): number {
  const begun = countBelow(calendar.fromMs, atMs);
  if (begun === 0) return atMs;
  const inside = atMs <= calendar.toMs[begun - 1]!;
  return inside ? calendar.workAtMs[begun - 1]! : atMs - calendar.stoppedMs[begun]!;
}

/**
 * The earliest moment, not before `fromMs`, by which `workSeconds` of working time have passed; milliseconds since 1970,
 * fractions kept. A moment that falls on a stop's edge is the stop's start; no work at all is done at once, even inside a stop.
 * Example: from 08:50 with a stop 09:00-09:15, 900 s of work are done at 09:20, 600 s at 09:00.
 * Throws RangeError for negative or infinite work. Cost log n.
 */
export function workingMoment(calendar: WorkingTime, fromMs: number, workSeconds: number): number {
  if (!(workSeconds >= 0 && Number.isFinite(workSeconds))) {
    throw new RangeError(
      `Cannot find moment as workSeconds must be 0 or more: current value is ${workSeconds}`,
    );
  }
  if (workSeconds === 0) return fromMs;
  const target = workClock(calendar, fromMs) + workSeconds * 1000;
  const passed = countBelow(calendar.workAtMs, target - SAME_MS);
  return Math.max(fromMs, target + calendar.stoppedMs[passed]!);
}

/** Working seconds between two moments (negative where `toMs` lies before `fromMs`). Cost log n. */
export function workingSeconds(calendar: WorkingTime, fromMs: number, toMs: number): number {
  return (workClock(calendar, toMs) - workClock(calendar, fromMs)) / 1000;
}
