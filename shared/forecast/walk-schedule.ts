// In which walks along the line are the coming splices done?
// Method: the search (walk-search.ts) gives the walks' starts and sizes; the places are filled by "earliest closing first"; a plan that the
// operator already knows is kept while it is as good. A fresh plan at every look was refused: walks that jump about are not trusted.

import { compareSlots } from '../floor/address.ts';
import { SAME_MS } from './walk-begins.ts';
import { searchWalks, type WalkShape } from './walk-search.ts';

/** One splice to do: its work begins at or after `opensMs` and ends at or before `closesMs`, ms since 1970. */
export interface SpliceNeed {
  readonly slot: string;
  readonly opensMs: number;
  readonly closesMs: number;
}

/** One walk: it starts, takes the walk, then its splices one after the other in this order without waiting. */
export interface Walk {
  readonly startMs: number;
  readonly endMs: number;
  /** `need`: place in the list asked about. */
  readonly splices: readonly { readonly need: number; readonly slot: string; readonly beginsMs: number }[];
}

/** Why a splice is missed: its window is shorter than the work, it closes before anyone can be there, or the others take the time. */
export const missReasons = ['windowTooShort', 'closesTooSoon', 'crowdedOut'] as const;
export type MissReason = (typeof missReasons)[number];

/** A splice that no walk reaches. `byMs`: when it would have had to be done. */
export interface MissedSplice {
  readonly need: number;
  readonly slot: string;
  readonly byMs: number;
  readonly reason: MissReason;
}

/** Walks in order of time. `proven`: no better plan exists; `kept`: the known plan was held on to. */
export interface WalkSchedule {
  readonly walks: readonly Walk[];
  readonly missed: readonly MissedSplice[];
  readonly proven: boolean;
  readonly kept: boolean;
}

/** A walk as it was last shown. */
export interface KnownWalk {
  readonly startMs: number;
  readonly slots: readonly string[];
}

/** What planning needs. */
export interface WalkScheduleAsk {
  readonly nowMs: number;
  /** From the start of a walk to the begin of its first splice, s, 0 or more. */
  readonly walkSeconds: number;
  /** One splice, s, 0 or more. */
  readonly eachSeconds: number;
  readonly splices: readonly SpliceNeed[];
  /** The plan last shown; absent for a fresh one. */
  readonly previous?: readonly KnownWalk[];
  /** A known start moves only where it must, or by at least this, s; default 60. */
  readonly holdSeconds?: number;
  /** See `SearchRules`; default by `usualEffort`. */
  readonly effort?: number;
}

/** Up to this many splices every plan is proven. */
const PROVEN_SPLICES = 24;
/** Up to this many, most are proven in a few ms; beyond, the effort keeps 200 splices below 50 ms on a desk computer. */
const MOSTLY_PROVEN_SPLICES = 80;
const HOLD_SECONDS = 60;

/** Search effort where none is given: without bound for a few splices, ample for some dozens, modest for hundreds. */
export function usualEffort(splices: number): number {
  if (splices <= PROVEN_SPLICES) return Infinity;
  return splices <= MOSTLY_PROVEN_SPLICES ? 100_000 : 1000;
}

interface Times {
  readonly nowMs: number;
  readonly walkMs: number;
  readonly eachMs: number;
}

/** Seconds to ms without the rounding dust of the product: 1.1 s is 1100 ms. */
function secondsToMs(seconds: number): number {
  const ms = seconds * 1000;
  const near = Math.round(ms);
  return Math.abs(ms - near) < 1e-6 ? near : ms;
}

function toWalk(
  splices: readonly SpliceNeed[],
  needs: readonly number[],
  at: Times & { startMs: number },
): Walk {
  const work = at.startMs + at.walkMs;
  return {
    startMs: at.startMs,
    endMs: work + needs.length * at.eachMs,
    splices: needs.map((need, i) => ({
      need,
      slot: splices[need]!.slot,
      beginsMs: work + i * at.eachMs,
    })),
  };
}

/** Fills the places of the walks, in order of time, with the splice that closes first among those that may stand there. */
function fill(splices: readonly SpliceNeed[], shapes: readonly WalkShape[], times: Times): Walk[] {
  const order = splices
    .map((_, need) => need)
    .sort((a, b) => {
      const x = splices[a]!;
      const y = splices[b]!;
      if (x.closesMs !== y.closesMs) return x.closesMs - y.closesMs;
      if (x.opensMs !== y.opensMs) return x.opensMs - y.opensMs;
      return compareSlots(x.slot, y.slot) || a - b;
    });
  return shapes.map((shape) => {
    const needs: number[] = [];
    for (let place = 0; place < shape.size; place++) {
      const begins = shape.startMs + times.walkMs + place * times.eachMs;
      const found = order.findIndex((need) => {
        const splice = splices[need]!;
        return splice.opensMs <= begins + SAME_MS && splice.closesMs >= begins + times.eachMs - SAME_MS;
      });
      if (found < 0) {
        throw new Error(`Cannot fill walk as a splice must fit each place: current value is place ${place}`);
      }
      needs.push(order[found]!);
      order.splice(found, 1);
    }
    return toWalk(splices, needs, { ...times, startMs: shape.startMs });
  });
}

function missReason(splice: SpliceNeed, times: Times): MissReason {
  const { nowMs, walkMs, eachMs } = times;
  if (splice.closesMs - splice.opensMs < eachMs - SAME_MS) return 'windowTooShort';
  return splice.closesMs < nowMs + walkMs + eachMs - SAME_MS ? 'closesTooSoon' : 'crowdedOut';
}

function missedOf(splices: readonly SpliceNeed[], walks: readonly Walk[], times: Times): MissedSplice[] {
  const done = new Set(walks.flatMap((walk) => walk.splices.map((splice) => splice.need)));
  return splices
    .map((splice, need) => ({ splice, need }))
    .filter(({ need }) => !done.has(need))
    .sort((a, b) => a.splice.closesMs - b.splice.closesMs || a.need - b.need)
    .map(({ splice, need }) => ({
      need,
      slot: splice.slot,
      byMs: splice.closesMs,
      reason: missReason(splice, times),
    }));
}

/** Earliest and latest start of a walk with these splices in this order, were it alone. */
function startRange(
  splices: readonly SpliceNeed[],
  needs: readonly number[],
  times: Times,
): { readonly low: number; readonly high: number } {
  let low = times.nowMs;
  let high = Infinity;
  needs.forEach((need, i) => {
    const before = times.walkMs + i * times.eachMs;
    low = Math.max(low, splices[need]!.opensMs - before);
    high = Math.min(high, splices[need]!.closesMs - before - times.eachMs);
  });
  return { low, high };
}

/** The known walks with what is still due in them; splices that are new since go where they fit. Null where one fits nowhere. */
function knownNeeds(
  splices: readonly SpliceNeed[],
  previous: readonly KnownWalk[],
  times: Times,
): number[][] | null {
  const open = new Set(splices.keys());
  const walks = previous.map((walk) =>
    walk.slots.flatMap((slot) => {
      for (const need of open) {
        if (splices[need]!.slot !== slot) continue;
        open.delete(need);
        return [need];
      }
      return [];
    }),
  );
  for (const need of open) {
    if (missReason(splices[need]!, times) !== 'crowdedOut') continue; // nobody can do it: no reason to plan anew
    const found = walks.some((walk, r) => {
      for (let place = 0; place <= walk.length; place++) {
        const tried = [...walk.slice(0, place), need, ...walk.slice(place)];
        const { low, high } = startRange(splices, tried, times);
        if (low <= high + SAME_MS) {
          walks[r] = tried;
          return true;
        }
      }
      return false;
    });
    if (!found) return null;
  }
  return walks.filter((walk) => walk.length > 0);
}

/** Times for known walks: each as late as it may, held where it stood if that is still allowed and near. Null where they no longer fit. */
function timeKnown(ask: WalkScheduleAsk, needs: readonly (readonly number[])[], times: Times): Walk[] | null {
  const holdMs = (ask.holdSeconds ?? HOLD_SECONDS) * 1000;
  const ranges = needs.map((walk) => startRange(ask.splices, walk, times));
  const lengths = needs.map((walk) => times.walkMs + walk.length * times.eachMs);
  const lowest: number[] = [];
  for (let r = 0; r < needs.length; r++) {
    const free = r === 0 ? times.nowMs : lowest[r - 1]! + lengths[r - 1]!;
    lowest.push(Math.max(free, ranges[r]!.low));
  }
  const walks: Walk[] = [];
  let limit = Infinity;
  for (let r = needs.length - 1; r >= 0; r--) {
    const latest = Math.min(ranges[r]!.high, limit - lengths[r]!);
    if (latest < lowest[r]! - SAME_MS) return null;
    const known = knownStart(ask, needs[r]!);
    const holds = known !== null && known >= lowest[r]! && known <= latest && latest - known < holdMs;
    const startMs = holds ? known : latest;
    walks.unshift(toWalk(ask.splices, needs[r]!, { ...times, startMs }));
    limit = startMs;
  }
  return walks;
}

function knownStart(ask: WalkScheduleAsk, needs: readonly number[]): number | null {
  const slots = new Set(needs.map((need) => ask.splices[need]!.slot));
  const walk = ask.previous?.find((known) => known.slots.some((slot) => slots.has(slot)));
  return walk?.startMs ?? null;
}

/**
 * Lays the splices out as walks: fewest missed, then fewest walks, then latest starts (the first as late as it can, then the
 * second, and so on). With `previous`, its walks are kept while they miss no more and are no more than a fresh plan's.
 * The order of `splices` does not matter but for ties between equal windows. Throws RangeError for negative or infinite times.
 */
export function scheduleWalks(ask: WalkScheduleAsk): WalkSchedule {
  const times: Times = {
    nowMs: ask.nowMs,
    walkMs: secondsToMs(ask.walkSeconds),
    eachMs: secondsToMs(ask.eachSeconds),
  };
  if (!(times.walkMs >= 0 && times.eachMs >= 0 && Number.isFinite(times.walkMs + times.eachMs))) {
    throw new RangeError(
      `Cannot plan walks as walkSeconds and eachSeconds must be 0 or more: current value is ${ask.walkSeconds}, ${ask.eachSeconds}`,
    );
  }
  const effort = ask.effort ?? usualEffort(ask.splices.length);
  const answer = searchWalks(ask.splices, { ...times, effort });
  const known = ask.previous === undefined ? null : knownNeeds(ask.splices, ask.previous, times);
  if (known !== null && known.length <= answer.shapes.length) {
    const walks = timeKnown(ask, known, times);
    const missed = walks === null ? null : missedOf(ask.splices, walks, times);
    if (walks !== null && missed !== null && missed.length <= answer.missed) {
      return { walks, missed, proven: answer.proven, kept: true };
    }
  }
  const walks = fill(ask.splices, answer.shapes, times);
  return { walks, missed: missedOf(ask.splices, walks, times), proven: answer.proven, kept: false };
}
