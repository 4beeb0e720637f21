// Which walks along the line serve the coming splices, who takes which, and what would save a missed one. Pure: an outlook
// becomes figures to plan with, and the answer a plan; the planning itself is heavy and done elsewhere. Windows are narrowed by
// their own spread first: a walk that comes as the tape leaves the hub comes too early half the time.

import { compareSlots } from '../floor/address.ts';
import { perPanelAfter } from '../forecast/beside.ts';
import type { Remedy } from '../forecast/remedy.ts';
import type { KnownWalk, MissedSplice, SpliceNeed, Walk } from '../forecast/walk-schedule.ts';
import type { WalkAnswer, WalkQuestion } from '../forecast/walks.ts';
import { type WorkingTime, workingMoment, workingSeconds } from '../forecast/working-time.ts';
import type { Outlook, SlotOutlook } from './line.ts';

/** How far ahead walks are laid out, ms: what lies beyond moves before anybody could go. */
const HORIZON_MS = 4 * 3_600_000;
/** Deviations by which a window is narrowed at its opening and at its closing. */
const NARROW_OPENING = 0.2;
const NARROW_CLOSING = 3;
/** A window keeps at least this share of its length, around the point that leaves it safest. */
const LEAST_SHARE = 0.25;
/** What lies in the last part of a window is left to what nobody foresees: a worn feeder's first reel, a slow hand. */
const MOST_SHARE = 0.3;
/** Splices are planned to take this much longer than the line's rule says: a walk is late as a whole where one hand was slow. */
const WORK_MARGIN = 1.25;
/** Missed splices whose remedies are looked for, soonest first: each costs some fifteen plans. */
export const REMEDIES_FOR = 3;
/** Deviations between the mean and the 5 % point of a normal law. */
const EARLY_DEVIATIONS = 1.645;

/** One splice to do, with its slot. */
export interface PlannedSplice {
  readonly slot: SlotOutlook;
  readonly beginsMs: number;
}

/** One walk. */
export interface PlannedWalk {
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
  readonly remedies: readonly Remedy[];
}

/** The walks of a line. */
export interface WalkPlan {
  readonly walks: readonly PlannedWalk[];
  readonly missed: readonly PlannedMiss[];
  /** What the next look takes as known, one list an operator. */
  readonly known: readonly (readonly KnownWalk[])[];
}

/**
 * The moments at which a slot's splice may begin and must be done, narrowed by the forecast's spread. Computed in working time: in a
 * break the tape stands, so a break makes a window longer but not safer.
 */
export function spliceNeed(slot: SlotOutlook, calendar: WorkingTime): SpliceNeed {
  const { runOutMs, windowMs } = slot.forecast;
  const deviationMs = (workingSeconds(calendar, runOutMs.early, runOutMs.expected) * 1000) / EARLY_DEVIATIONS;
  if (windowMs === null) {
    // Nobody measured the feeder: from the early bound on, the tape may end at any time.
    return { slot: slot.slot, opensMs: runOutMs.early - 2 * deviationMs, closesMs: runOutMs.early };
  }
  const lengthMs = workingSeconds(calendar, windowMs.opens, windowMs.closes) * 1000;
  let opens = NARROW_OPENING * deviationMs;
  let closes = Math.min(lengthMs - NARROW_CLOSING * deviationMs, MOST_SHARE * lengthMs);
  const least = LEAST_SHARE * lengthMs;
  if (closes - opens < least) {
    const middle = (lengthMs * NARROW_OPENING) / (NARROW_OPENING + NARROW_CLOSING);
    opens = middle - least / 2;
    closes = middle + least / 2;
  }
  const after = (workMs: number) =>
    workMs <= 0 ? windowMs.opens + workMs : workingMoment(calendar, windowMs.opens, workMs / 1000);
  return { slot: slot.slot, opensMs: after(opens), closesMs: after(closes) };
}

/**
 * A window that can only be reached outside its safe part is taken as far as it truly goes: coming late within it beats not
 * coming. One that is shorter than the work is begun as it opens. Nobody walks in a break: a window that one cuts is served before
 * it where there is time, else after it.
 */
function reachable(need: SpliceNeed, slot: SlotOutlook, outlook: Outlook): SpliceNeed {
  const { calendar, pace } = outlook;
  const eachMs = WORK_MARGIN * outlook.rules.spliceSeconds * 1000;
  const walkMs = outlook.rules.walkSeconds * 1000;
  const truly = slot.forecast.windowMs?.closes ?? slot.forecast.runOutMs.expected;
  const by = (opensMs: number, doneMs: number): SpliceNeed => {
    const closesMs =
      need.closesMs < doneMs ? Math.max(need.closesMs, Math.min(truly, doneMs)) : need.closesMs;
    return { ...need, opensMs, closesMs: Math.max(closesMs, opensMs + eachMs) };
  };
  const soonestMs = pace.nowMs + walkMs;
  const whole = by(need.opensMs, soonestMs + eachMs);
  const next = calendar.toMs.findIndex((toMs) => toMs + walkMs > Math.max(need.opensMs, pace.nowMs));
  const [breakFromMs = Number.POSITIVE_INFINITY, breakToMs = 0] = [
    calendar.fromMs[next],
    calendar.toMs[next],
  ];
  if (whole.closesMs <= breakFromMs) return whole;
  if (breakFromMs - Math.max(need.opensMs, soonestMs) >= eachMs) return { ...whole, closesMs: breakFromMs };
  const backMs = Math.max(need.opensMs, breakToMs + walkMs);
  return by(backMs, backMs + eachMs);
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
export interface WalkOptions {
  readonly operators: number;
  /** The plan last shown, which is held on to while it is as good. */
  readonly known?: readonly (readonly KnownWalk[])[];
  /** Whether the soonest missed splices are looked at closely. */
  readonly remedies?: boolean;
  /** Keeps who does what even where somebody is missed: sharing anew costs a hundred plans. */
  readonly keepShares?: boolean;
  /** Slots that somebody sees to already. */
  readonly without?: ReadonlySet<string>;
}

/** What an outlook asks of the planning: figures alone, so that a worker can do it. `slots`: in the order of the question's splices. */
export function walkQuestion(
  outlook: Outlook,
  options: WalkOptions,
): { readonly question: WalkQuestion; readonly slots: readonly SlotOutlook[] } {
  const slots = needsOf(outlook).filter((slot) => !options.without?.has(slot.slot));
  const question: WalkQuestion = {
    walks: {
      nowMs: outlook.pace.nowMs,
      walkSeconds: outlook.rules.walkSeconds,
      eachSeconds: WORK_MARGIN * outlook.rules.spliceSeconds,
      splices: slots.map((slot) => reachable(spliceNeed(slot, outlook.calendar), slot, outlook)),
    },
    operators: options.operators,
    walkingOrder: slots.map((slot) => slot.slot).sort(compareSlots),
    partsPerSecond: slots.map(
      (slot) => perPanelAfter(slot.load, 0) / ((1 - slot.loss.mean) * outlook.pace.panelSeconds),
    ),
    remediesFor: options.remedies === true ? REMEDIES_FOR : 0,
    keepShares: options.keepShares === true,
    ...(options.known === undefined ? {} : { known: options.known }),
  };
  return { question, slots };
}

/** The planning's answer, with the slots that it speaks of. */
export function toWalkPlan({ shares, remedies }: WalkAnswer, slots: readonly SlotOutlook[]): WalkPlan {
  const walks = shares
    .flatMap((share, operator) => share.walks.map((walk) => toPlanned(walk, slots, operator)))
    .sort((a, b) => a.startMs - b.startMs || a.operator - b.operator);
  const missed = shares.flatMap((share) => share.missed).sort((a, b) => a.byMs - b.byMs);
  return {
    walks,
    missed: missed.flatMap((miss, at) => {
      const slot = slots[miss.need];
      return slot ? [{ slot, byMs: miss.byMs, reason: miss.reason, remedies: remedies[at] ?? [] }] : [];
    }),
    known: shares.map((share) =>
      share.walks.map((walk) => ({
        startMs: walk.startMs,
        slots: walk.splices.map((splice) => splice.slot),
      })),
    ),
  };
}

function toPlanned(walk: Walk, slots: readonly SlotOutlook[], operator: number): PlannedWalk {
  return {
    operator,
    startMs: walk.startMs,
    endMs: walk.endMs,
    splices: walk.splices.flatMap((splice) => {
      const slot = slots[splice.need];
      return slot ? [{ slot, beginsMs: splice.beginsMs }] : [];
    }),
  };
}
