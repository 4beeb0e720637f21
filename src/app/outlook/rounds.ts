// Which walks along the line serve the coming splices, who takes which, and what would save a missed one. Pure: an outlook
// becomes figures to plan with, and the answer a plan; the planning itself is heavy and done elsewhere. Windows are narrowed by
// their own spread first: a walk that comes as the tape leaves the hub comes too early half the time.

import type { Cure } from '../../../shared/forecast/cure.ts';
import type { KnownRound, MissedSplice, Round, SpliceNeed } from '../../../shared/forecast/rounds.ts';
import type { WalkAnswer, WalkQuestion } from '../../../shared/forecast/walks.ts';
import { compareSlots } from '../../../shared/setup/address.ts';
import type { Outlook, SlotOutlook } from './model.ts';

/** How far ahead walks are laid out, ms: what lies beyond moves before anybody could go. */
const HORIZON_MS = 4 * 3_600_000;
/** Deviations by which a window is narrowed at its opening and at its closing. */
const NARROW_OPENING = 0.2;
const NARROW_CLOSING = 3;
/** A window keeps at least this share of its length, around the point that leaves it safest. */
const LEAST_SHARE = 0.25;
/** What lies in the last part of a window is left to what nobody foresees: a worn feeder's first reel, a slow hand. */
const MOST_SHARE = 0.3;
/** Splices are planned to take this much longer than the line's rule says: a round is late as a whole where one hand was slow. */
const WORK_MARGIN = 1.25;
/** Missed splices whose cures are looked for, soonest first: each costs some fifteen plans. */
export const CURED = 3;
/** Deviations between the mean and the 5 % point of a normal law. */
const EARLY_DEVIATIONS = 1.645;

/** One splice to do, with its slot. */
export interface PlannedSplice {
  readonly slot: SlotOutlook;
  readonly beginsMs: number;
}

/** One walk. */
export interface PlannedRound {
  readonly operator: number;
  readonly startMs: number;
  readonly endMs: number;
  readonly splices: readonly PlannedSplice[];
}

/** A splice that no walk reaches, and what would save it, cheapest first. */
export interface PlannedMiss {
  readonly slot: SlotOutlook;
  readonly byMs: number;
  readonly reason: MissedSplice['reason'];
  readonly cures: readonly Cure[];
}

/** The walks of a line. */
export interface WalkPlan {
  readonly rounds: readonly PlannedRound[];
  readonly missed: readonly PlannedMiss[];
  /** What the next look takes as known, one list an operator. */
  readonly known: readonly (readonly KnownRound[])[];
}

/** The working moment at which a slot's splice may begin and must be done, narrowed by the forecast's spread. */
export function spliceNeed(slot: SlotOutlook): SpliceNeed {
  const { runOutMs, windowMs } = slot.forecast;
  const deviationMs = (runOutMs.expected - runOutMs.early) / EARLY_DEVIATIONS;
  if (windowMs === null) {
    // Nobody measured the feeder: from the early bound on, the tape may end at any time.
    return { slot: slot.slot, opensMs: runOutMs.early - 2 * deviationMs, closesMs: runOutMs.early };
  }
  const lengthMs = windowMs.closes - windowMs.opens;
  let opensMs = windowMs.opens + NARROW_OPENING * deviationMs;
  let closesMs = Math.min(
    windowMs.closes - NARROW_CLOSING * deviationMs,
    windowMs.opens + MOST_SHARE * lengthMs,
  );
  const leastMs = LEAST_SHARE * lengthMs;
  if (closesMs - opensMs < leastMs) {
    const middleMs = windowMs.opens + (lengthMs * NARROW_OPENING) / (NARROW_OPENING + NARROW_CLOSING);
    opensMs = middleMs - leastMs / 2;
    closesMs = middleMs + leastMs / 2;
  }
  return { slot: slot.slot, opensMs, closesMs };
}

/**
 * A window that can only be reached outside its safe part is taken as far as it truly goes: coming late within it beats not
 * coming. One that is shorter than the work is begun as it opens.
 */
function reachable(need: SpliceNeed, slot: SlotOutlook, outlook: Outlook): SpliceNeed {
  const eachMs = WORK_MARGIN * outlook.rules.spliceSeconds * 1000;
  const soonestMs = outlook.pace.nowMs + outlook.rules.walkSeconds * 1000 + eachMs;
  const truly = slot.forecast.windowMs?.closes ?? slot.forecast.runOutMs.expected;
  const closesMs =
    need.closesMs < soonestMs ? Math.max(need.closesMs, Math.min(truly, soonestMs)) : need.closesMs;
  return { ...need, closesMs: Math.max(closesMs, need.opensMs + eachMs) };
}

/** Slots that need a walk within the horizon: due before the run ends, and not joined already. */
export function needsOf(outlook: Outlook): readonly SlotOutlook[] {
  const untilMs = outlook.pace.nowMs + HORIZON_MS;
  return outlook.slots.filter((slot) => {
    const isJoined = slot.estimate.runningIndex < slot.loaded.tapes.length - 1;
    return !slot.forecast.outlasts && !isJoined && slot.forecast.runOutMs.early < untilMs;
  });
}

/** How walks are asked for. */
export interface WalkWish {
  readonly operators: number;
  /** The plan last shown, which is held on to while it is as good. */
  readonly known?: readonly (readonly KnownRound[])[];
  /** Whether the soonest missed splices are looked at closely. */
  readonly cures?: boolean;
  /** Keeps who does what even where somebody is missed: sharing anew costs a hundred plans. */
  readonly keepShares?: boolean;
  /** Slots that somebody sees to already. */
  readonly without?: ReadonlySet<string>;
}

/** What an outlook asks of the planning: figures alone, so that a worker can do it. `slots`: in the order of the question's splices. */
export function walkQuestion(
  outlook: Outlook,
  wish: WalkWish,
): { readonly question: WalkQuestion; readonly slots: readonly SlotOutlook[] } {
  const slots = needsOf(outlook).filter((slot) => !wish.without?.has(slot.slot));
  const question: WalkQuestion = {
    rounds: {
      nowMs: outlook.pace.nowMs,
      walkSeconds: outlook.rules.walkSeconds,
      eachSeconds: WORK_MARGIN * outlook.rules.spliceSeconds,
      splices: slots.map((slot) => reachable(spliceNeed(slot), slot, outlook)),
    },
    operators: wish.operators,
    walkingOrder: slots.map((slot) => slot.slot).sort(compareSlots),
    partsPerSecond: slots.map(
      (slot) => slot.wanted.perPanel / ((1 - slot.loss.mean) * outlook.pace.panelSeconds),
    ),
    cured: wish.cures === true ? CURED : 0,
    keepShares: wish.keepShares === true,
    ...(wish.known === undefined ? {} : { known: wish.known }),
  };
  return { question, slots };
}

/** The planning's answer, with the slots that it speaks of. */
export function toWalkPlan({ shares, cures }: WalkAnswer, slots: readonly SlotOutlook[]): WalkPlan {
  const rounds = shares
    .flatMap((share, operator) => share.rounds.map((round) => toPlanned(round, slots, operator)))
    .sort((a, b) => a.startMs - b.startMs || a.operator - b.operator);
  const missed = shares.flatMap((share) => share.missed).sort((a, b) => a.byMs - b.byMs);
  return {
    rounds,
    missed: missed.flatMap((miss, at) => {
      const slot = slots[miss.need];
      return slot ? [{ slot, byMs: miss.byMs, reason: miss.reason, cures: cures[at] ?? [] }] : [];
    }),
    known: shares.map((share) =>
      share.rounds.map((round) => ({
        startMs: round.startMs,
        slots: round.splices.map((splice) => splice.slot),
      })),
    ),
  };
}

function toPlanned(round: Round, slots: readonly SlotOutlook[], operator: number): PlannedRound {
  return {
    operator,
    startMs: round.startMs,
    endMs: round.endMs,
    splices: round.splices.flatMap((splice) => {
      const slot = slots[splice.need];
      return slot ? [{ slot, beginsMs: splice.beginsMs }] : [];
    }),
  };
}
