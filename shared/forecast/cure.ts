// A splice is missed: what would save it, and what does that cost?
// Method: each cure is tried on the plan itself. Cutting early is the window opened sooner, by halving, until the plan holds; what is cut off is
// what would have been used until the window opens. Rules of thumb were refused: a cure that only moves the miss to a neighbour is none.

import { planRounds, type RoundsAsk, type RoundsPlan } from './rounds.ts';

/** Ways to save a missed splice. */
export const CURE_KINDS = ['cutEarly', 'secondPerson', 'secondSlot'] as const;
export type CureKind = (typeof CURE_KINDS)[number];

/** One way to save it. Costs are in parts: what the site sets a person's walk or a second feeder at. */
export type Cure =
  | {
      readonly kind: 'cutEarly';
      readonly cost: number;
      /** When the work at this slot begins, before its window opens. */
      readonly beginsMs: number;
      /** Parts cut off with the old tape, rounded up. */
      readonly wastedParts: number;
      readonly plan: RoundsPlan;
    }
  | {
      readonly kind: 'secondPerson';
      readonly cost: number;
      /** The latest start of the second person's walk. */
      readonly startMs: number;
    }
  | {
      readonly kind: 'secondSlot';
      readonly cost: number;
      /** When the part must be loaded in the second slot at the latest. */
      readonly byMs: number;
    };

/** What a cure may cost, in parts of this reel; a site sets its own. */
export interface CureCosts {
  readonly secondPerson: number;
  readonly secondSlot: number;
}

/** A second person is worth 50 parts, a second slot 200 (assumption, for sites that have not set their own). */
export const USUAL_COSTS: CureCosts = { secondPerson: 50, secondSlot: 200 };

/** What is asked about one missed splice. */
export interface CureAsk {
  readonly rounds: RoundsAsk;
  /** Its place in `rounds.splices`. */
  readonly need: number;
  /** Parts that its reel loses a second, placed and lost: perPanel / ((1 − loss) · panelSeconds). */
  readonly partsPerSecond: number;
  /** Whether a second person and a free slot for the part are to be had. */
  readonly secondPerson: boolean;
  readonly secondSlot: boolean;
  readonly costs?: CureCosts;
}

/** Halving stops when the cut is known to this, ms. */
const CLOSE_ENOUGH_MS = 1000;

function withOpening(ask: RoundsAsk, need: number, opensMs: number): RoundsAsk {
  const splices = ask.splices.map((splice, i) => (i === need ? { ...splice, opensMs } : splice));
  return { ...ask, splices };
}

function cutEarly(ask: CureAsk): Cure | null {
  const { rounds, need } = ask;
  const splice = rounds.splices[need]!;
  const missedNow = planRounds(rounds).missed.length;
  const tryAt = (opensMs: number) => {
    const plan = planRounds(withOpening(rounds, need, opensMs));
    return plan.missed.length < missedNow && plan.missed.every((missed) => missed.need !== need)
      ? plan
      : null;
  };
  let low = Math.min(splice.opensMs, rounds.nowMs);
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
  const places = plan.rounds.flatMap((round) => round.splices);
  const beginsMs = places.find((place) => place.need === need)!.beginsMs; // tryAt() holds only plans that serve it
  const wastedParts = Math.ceil((Math.max(0, splice.opensMs - beginsMs) / 1000) * ask.partsPerSecond);
  return { kind: 'cutEarly', cost: wastedParts, beginsMs, wastedParts, plan };
}

/**
 * What would save a missed splice, cheapest first; empty where nothing would. A second person is offered where their own walk still ends
 * in time, a second slot while the window has not closed. Cost: about fifteen plans.
 */
export function curesFor(ask: CureAsk): Cure[] {
  const { rounds, need } = ask;
  const splice = rounds.splices[need];
  if (splice === undefined) {
    throw new RangeError(`Cannot find cure as need must be in the list: current value is ${need}`);
  }
  const costs = ask.costs ?? USUAL_COSTS;
  const cures: Cure[] = [];
  const cut = cutEarly(ask);
  if (cut !== null) cures.push(cut);
  const eachMs = rounds.eachSeconds * 1000;
  const startMs = splice.closesMs - eachMs - rounds.walkSeconds * 1000;
  const fits = splice.closesMs - splice.opensMs >= eachMs;
  if (ask.secondPerson && fits && startMs >= rounds.nowMs) {
    cures.push({ kind: 'secondPerson', cost: costs.secondPerson, startMs });
  }
  if (ask.secondSlot && splice.closesMs > rounds.nowMs) {
    cures.push({ kind: 'secondSlot', cost: costs.secondSlot, byMs: splice.closesMs });
  }
  return cures.sort((a, b) => a.cost - b.cost || CURE_KINDS.indexOf(a.kind) - CURE_KINDS.indexOf(b.kind));
}
