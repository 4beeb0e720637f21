// A splice is missed: what would save it, and what does that cost?
// Method: each remedy is tried on the plan itself. Cutting early is the window opened sooner, by halving, until the plan holds; what is cut off is
// what would have been used until the window opens. Rules of thumb were refused: a remedy that only moves the miss to a neighbour is none.

import { scheduleWalks, type WalkSchedule, type WalkScheduleAsk } from './walk-schedule.ts';

/** Ways to save a missed splice. */
export const remedyKinds = ['cut-early', 'second-person', 'second-slot'] as const;
export type RemedyKind = (typeof remedyKinds)[number];

/** One way to save it. Costs are in parts: what the site sets a person's walk or a second feeder at. */
export type Remedy =
  | {
      readonly kind: 'cut-early';
      readonly cost: number;
      /** When the work at this slot begins, before its window opens. */
      readonly beginsMs: number;
      /** Parts cut off with the old tape, rounded up. */
      readonly wastedParts: number;
      readonly plan: WalkSchedule;
    }
  | {
      readonly kind: 'second-person';
      readonly cost: number;
      /** The latest start of the second person's walk. */
      readonly startMs: number;
    }
  | {
      readonly kind: 'second-slot';
      readonly cost: number;
      /** When the part must be loaded in the second slot at the latest. */
      readonly byMs: number;
    };

/** What a remedy may cost, in parts of this reel; a site sets its own. */
export interface RemedyCosts {
  readonly secondPerson: number;
  readonly secondSlot: number;
}

/** A second person is worth 50 parts, a second slot 200 (assumption, for sites that have not set their own). */
export const USUAL_COSTS: RemedyCosts = { secondPerson: 50, secondSlot: 200 };

/** What is asked about one missed splice. */
export interface RemedyAsk {
  readonly walks: WalkScheduleAsk;
  /** Its place in `walks.splices`. */
  readonly need: number;
  /** Parts that its reel loses a second, placed and lost: perPanel / ((1 − loss) · panelSeconds). */
  readonly partsPerSecond: number;
  /** Whether a second person and a free slot for the part are to be had. */
  readonly secondPerson: boolean;
  readonly secondSlot: boolean;
  readonly costs?: RemedyCosts;
}

/** Halving stops when the cut is known to this, ms. */
const CLOSE_ENOUGH_MS = 1000;

function withOpening(ask: WalkScheduleAsk, need: number, opensMs: number): WalkScheduleAsk {
  const splices = ask.splices.map((splice, i) => (i === need ? { ...splice, opensMs } : splice));
  return { ...ask, splices };
}

function cutEarly(ask: RemedyAsk): Remedy | null {
  const { walks, need } = ask;
  const splice = walks.splices[need]!;
  const missedNow = scheduleWalks(walks).missed.length;
  const tryAt = (opensMs: number) => {
    const plan = scheduleWalks(withOpening(walks, need, opensMs));
    return plan.missed.length < missedNow && plan.missed.every((missed) => missed.need !== need)
      ? plan
      : null;
  };
  let low = Math.min(splice.opensMs, walks.nowMs);
  let plan = tryAt(low);
  if (plan === null) return null;
  let high = splice.opensMs;
  while (high - low > CLOSE_ENOUGH_MS) {
    const middle = (low + high) / 2;
    const better = tryAt(middle);
    if (better === null) high = middle;
    else {
      low = middle;
      plan = better;
    }
  }
  const places = plan.walks.flatMap((walk) => walk.splices);
  const beginsMs = places.find((place) => place.need === need)!.beginsMs; // tryAt() holds only plans that serve it
  const wastedParts = Math.ceil((Math.max(0, splice.opensMs - beginsMs) / 1000) * ask.partsPerSecond);
  return { kind: 'cut-early', cost: wastedParts, beginsMs, wastedParts, plan };
}

/**
 * What would save a missed splice, cheapest first; empty where nothing would. A second person is offered where their own walk still ends
 * in time, a second slot while the window has not closed. Cost: about fifteen plans.
 */
export function remediesFor(ask: RemedyAsk): Remedy[] {
  const { walks, need } = ask;
  const splice = walks.splices[need];
  if (splice === undefined) {
    throw new RangeError(`Cannot find remedy as need must be in the list: current value is ${need}`);
  }
  const costs = ask.costs ?? USUAL_COSTS;
  const remedies: Remedy[] = [];
  const cut = cutEarly(ask);
  if (cut !== null) remedies.push(cut);
  const eachMs = walks.eachSeconds * 1000;
  const startMs = splice.closesMs - eachMs - walks.walkSeconds * 1000;
  const fits = splice.closesMs - splice.opensMs >= eachMs;
  if (ask.secondPerson && fits && startMs >= walks.nowMs) {
    remedies.push({ kind: 'second-person', cost: costs.secondPerson, startMs });
  }
  if (ask.secondSlot && splice.closesMs > walks.nowMs) {
    remedies.push({ kind: 'second-slot', cost: costs.secondSlot, byMs: splice.closesMs });
  }
  return remedies.sort(
    (a, b) => a.cost - b.cost || remedyKinds.indexOf(a.kind) - remedyKinds.indexOf(b.kind),
  );
}
