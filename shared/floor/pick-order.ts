// Which reel off the line is taken first? By the line's rules the oldest, or the fullest.
// Method, oldest first (common practice): by date code, then opened reels before closed ones, then the smaller before the larger, so that
// few begun reels lie about. A date code that says no week stands behind those that do. Fullest first saves splices, breeds begun reels
// and asks for no age; a line may choose it. Reels that nobody counted come last in both, since nothing can be counted on them.

import { readDateCode } from '../labels/dates.ts';
import { compareText } from '../log/order.ts';
import type { FloorState, Reel } from './state.ts';
import type { PickOrder } from './vocabulary.ts';

// A reel's record never changes, so its week is read once and goes with it.
const weeks = new WeakMap<Reel, number>();

/** The week that a date code says, as a number that grows with time; Infinity where it says none. */
function weekOf(reel: Reel): number {
  let week = weeks.get(reel);
  if (week === undefined) {
    week = readWeek(reel);
    weeks.set(reel, week);
  }
  return week;
}

function readWeek({ dateCode }: Reel): number {
  const made = dateCode === null ? null : readDateCode(dateCode.trim()).made;
  return made === null ? Number.POSITIVE_INFINITY : made.year * 100 + made.week;
}

/** True where a reel has been on a slot, or was counted down on one: its bag and its leader are open. */
export function isOpened({ cameOff, basis }: Pick<Reel, 'cameOff' | 'basis'>): boolean {
  return cameOff !== undefined || basis === 'counted-down';
}

function compareNumbers(a: number, b: number): number {
  return a === b ? 0 : a - b;
}

/** By which order a line takes reels: the oldest first where nobody said. */
export function orderOn(state: FloorState, line: string): PickOrder {
  return state.rules.get(line)?.pickOrder ?? 'oldest-first';
}

/** The order in which a line takes reels off the line; a total one. */
export function pickOrderOf(state: FloorState, line: string): (a: Reel, b: Reel) => number {
  const isFullestFirst = orderOn(state, line) === 'fullest-first';
  return (a, b) => {
    const uncounted = Number(a.count === null) - Number(b.count === null);
    if (uncounted !== 0) return uncounted;
    const [left, right] = [a.count ?? 0, b.count ?? 0];
    const byOrder = isFullestFirst
      ? right - left
      : compareNumbers(weekOf(a), weekOf(b)) || Number(isOpened(b)) - Number(isOpened(a)) || left - right;
    return byOrder || compareText(a.reel, b.reel);
  };
}
