// How far may a figure be off before we would be wrong once in a million? Bounds on counts, losses and missed panels, by the spreads
// that the line states. Method: one bound for every figure, both ways, so that "sure" and "perhaps" are one law's two sides.
// Refused: a 5 % point, which is wrong once in twenty reels; and the learnt mean of a loss as a bound, since one reel may lose anything
// up to what a feeder can lose at all.

import type { SetupSlot } from '../floor/kinds.ts';
import {
  boardsOf,
  isPrinted,
  labelShareOf,
  placedDoubt,
  tapeSd,
  UNLIKELY_LOSS,
  usedPlacements,
  windowOf,
} from '../floor/remaining.ts';
import type { FloorState, Setup, SlotState } from '../floor/state.ts';
import { partPerPanel } from '../floor/turns.ts';
import { perPanelOf } from '../floor/wanted.ts';

/** What is left in doubt on either side. */
export const IN_DOUBT = 1e-6;
/** Deviations of a normal law beyond which lies one in a million, on one side. */
export const DEVIATIONS = 4.7535;

/** A figure between two bounds; `high` Infinity where nothing bounds it. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
}

/** Both bounds hold: what lies within both; where they exclude each other one of them is wrong, and all of both is left. */
export function meet(one: Bounds, other: Bounds): Bounds {
  const low = Math.max(one.low, other.low);
  const high = Math.min(one.high, other.high);
  return low <= high ? { low, high } : join(one, other);
}

/** Either bound holds. */
export function join(one: Bounds, other: Bounds): Bounds {
  return { low: Math.min(one.low, other.low), high: Math.max(one.high, other.high) };
}

/** The most panels of `panels` that went uncounted, but for one case in a million (binomial law). `share`: the most that pass uncounted. */
export function mostMissed(panels: number, share: number): number {
  if (panels <= 0 || share <= 0) return 0;
  const all = Math.ceil(panels);
  const mean = all * share;
  if (mean > 500) {
    // Bernstein's bound, where the law's first terms are too small for numbers.
    const doubt = Math.log(1 / IN_DOUBT);
    return Math.min(all, Math.ceil(mean + Math.sqrt(2 * mean * doubt) + (2 * doubt) / 3));
  }
  let term = Math.exp(all * Math.log1p(-share));
  let below = term;
  let missed = 0;
  while (missed < all && 1 - below > IN_DOUBT) {
    term *= ((all - missed) / (missed + 1)) * (share / (1 - share));
    missed += 1;
    below += term;
  }
  return missed;
}

/** Placements that `parts` give, by what feeders may lose. */
function placementsOf(parts: Bounds): Bounds {
  // Parts below none were placed already: losses then move the joint the other way.
  const kept = 1 - UNLIKELY_LOSS;
  return {
    low: parts.low >= 0 ? parts.low * kept : parts.low,
    high: parts.high >= 0 ? parts.high : parts.high * kept,
  };
}

/** Placements taken from a slot since its counts began. */
export function placedSince(state: FloorState, slot: SlotState): number {
  return slot.ledger.dropped + usedPlacements(state, slot);
}

/** The most placements a panel that any setup wants from the slot: an earlier run may have taken more than this one. */
function mostPerPanel(state: FloorState, slot: string): number {
  let most = 0;
  for (const setup of state.setups.keys()) most = Math.max(most, perPanelOf(state, setup, slot));
  return most;
}

/** Slots of a setup that serve every board of a panel alike; a setup never changes once it was taken in. */
const alike = new WeakMap<Setup, ReadonlySet<string>>();

/**
 * The slots that are taken to serve every board alike: the boards of the panel are all one product as far as the setup tells, since each
 * part's placements are a multiple of the boards, and no other slot shares the part, so that none serves only some of them.
 */
function servingAll(setup: Setup): ReadonlySet<string> {
  const known = alike.get(setup);
  if (known) return known;
  const boards = setup.boardsPerPanel ?? 1;
  const used = setup.slots.filter(({ perPanel }) => perPanel > 0);
  const byPart = new Map<string, SetupSlot[]>();
  for (const slot of used) byPart.set(slot.part, [...(byPart.get(slot.part) ?? []), slot]);
  const isOneProduct = [...byPart.values()].every((slots) => partPerPanel(slots) % boards === 0);
  const all = isOneProduct ? used.filter(({ part }) => byPart.get(part)?.length === 1) : [];
  const names = new Set(all.map(({ slot }) => slot));
  alike.set(setup, names);
  return names;
}

/**
 * True where a panel may carry nothing from a slot that its setup uses: it has several boards, boards may be skipped, and the slot may
 * serve only some of them. A panel is taken to have at least one board built.
 */
export function mayGoWithout(state: FloorState, setup: string, slot: string): boolean {
  const taken = state.setups.get(setup);
  return taken !== undefined && boardsOf(state, setup) > 1 && !servingAll(taken).has(slot);
}

/** What one panel takes from a slot: at least with all boards but one skipped, at most with none. */
export function takenByPanel(state: FloorState, setup: string, slot: string): Bounds {
  const high = perPanelOf(state, setup, slot);
  return { low: mayGoWithout(state, setup, slot) ? 0 : high / boardsOf(state, setup), high };
}

/** Panels that so many placements serve; Infinity where they may serve any number. */
function panelsOf(placements: number, perPanel: number): number {
  return placements === 0 ? 0 : placements / perPanel;
}

/** The most panels that so many placements serve; placed already, they may all have been another lane's. */
function panelsAtMost(placements: number, panel: Bounds, { beside }: EndsAt): number {
  if (placements >= 0) return panelsOf(placements, panel.low);
  return beside ? 0 : panelsOf(placements, panel.high);
}

/** True where what the slot gave so far hangs on skipped boards that nobody entered. */
function isUseOpen(state: FloorState, slot: SlotState): boolean {
  const { unknown, variance, sd } = placedDoubt(state, slot);
  return unknown || variance > 0 || sd > 0;
}

/** What the ends of a slot's tapes are computed with. */
export interface EndsAt {
  readonly setup: string;
  /** Panels that have passed the machine beyond those counted. */
  readonly reach: Bounds;
  /** The share of panels that pass uncounted. */
  readonly missed: number;
  /** Panels that had passed and were not entered yet when the slot's counts began, at most. */
  readonly lag: number;
  /** Panels by which the counts may have begun too late: a held reel that was put on before a lead cleared it. */
  readonly early: number;
  /**
   * Panels of the conveyor's other lanes by which the slot's counts may be off; absent where none feeds from it. They take from the slot too:
   * how many panels of this lane its parts serve is bounded above alone.
   */
  readonly beside?: Bounds;
}

/** Panels that a slot's counts are off, since its machine was so many panels ahead of them or behind when they began. */
function shiftOf(state: FloorState, slot: Pick<SlotState, 'slot'>, at: EndsAt): Bounds {
  const { low: least } = takenByPanel(state, at.setup, slot.slot);
  const most = Math.max(least, mostPerPanel(state, slot.slot));
  const { low, high } = at.beside ?? { low: 0, high: 0 };
  return {
    low: panelsOf((Math.min(0, at.reach.low) + low - at.early) * most, least),
    high: panelsOf((Math.max(0, at.reach.high) + high + at.lag) * most, least),
  };
}

/**
 * Where the tapes of a slot end, one for each but the last: panels from now on, as they will be counted. By counts alone, from what was
 * put on since the last true count; `low` may lie in the past.
 */
export function endsByCount(state: FloorState, slot: SlotState, at: EndsAt): readonly Bounds[] {
  const panel = takenByPanel(state, at.setup, slot.slot);
  const isOpen = isUseOpen(state, slot);
  const share = labelShareOf(state, slot.line);
  const { ledger, tapes } = slot;
  const placed = placedSince(state, slot);
  const shift = shiftOf(state, slot, at);
  let parts = ledger.parts;
  let variance = ledger.variance;
  const ends: Bounds[] = [];
  for (const tape of [...tapes.slice(1)].reverse()) {
    // The tapes behind are in the sum with what they have in truth: their own doubt goes with them.
    parts = parts === null || tape.count === null ? null : parts - tape.count;
    variance -= tapeSd(tape, share) ** 2;
    if (parts === null || isOpen) {
      ends.unshift({ low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY });
      continue;
    }
    const doubt = DEVIATIONS * Math.sqrt(Math.max(0, variance));
    const end = placementsOf({
      low: parts - doubt - placed / (1 - UNLIKELY_LOSS),
      high: parts + doubt - placed,
    });
    const passed = (placed + Math.max(0, end.low)) / panel.high;
    const missed = mostMissed(passed, at.missed);
    // Panels to come may skip boards, and so may those that have passed.
    const low = at.beside
      ? Number.NEGATIVE_INFINITY
      : panelsOf(end.low, end.low >= 0 ? panel.high : panel.low);
    const high = panelsAtMost(end.high, panel, at);
    ends.unshift({ low: low + shift.low - missed, high: high + shift.high });
  }
  return ends;
}

/** The most panels that a slot's only tape can still serve by its count; Infinity where that is not known. */
export function mostByCount(state: FloorState, slot: SlotState, at: EndsAt): number {
  const { ledger } = slot;
  if (ledger.parts === null || isUseOpen(state, slot)) return Number.POSITIVE_INFINITY;
  const placed = placedSince(state, slot);
  const left = ledger.parts + DEVIATIONS * Math.sqrt(ledger.variance) - placed;
  const panel = takenByPanel(state, at.setup, slot.slot);
  const { high } = placementsOf({ low: 0, high: left });
  return panelsAtMost(high, panel, at) + shiftOf(state, slot, at).high;
}

/**
 * Where the end of a tape lies that another is joined to now, in panels from now on: it has left the hub at most, and has not reached the
 * feeder. Where the lengths are not known it still feeds, and that is all.
 */
export function endOfSplice(
  state: FloorState,
  slot: Pick<SlotState, 'line' | 'slot' | 'feeder' | 'tapes'>,
  at: EndsAt,
): Bounds {
  const panel = takenByPanel(state, at.setup, slot.slot);
  const window = windowOf(state, slot, at.setup);
  const sure = window && !at.beside ? Math.floor((window.closes * (1 - UNLIKELY_LOSS)) / panel.high) : 0;
  return {
    low: at.reach.low + sure - mostMissed(sure, at.missed),
    high: window ? at.reach.high + panelsOf(window.opens, panel.low) : Number.POSITIVE_INFINITY,
  };
}

/** Where the end of a tape lies at the latest that another was joined to before, in panels from now on. `isNewest`: by the newest splice. */
export function latestEnd(
  state: FloorState,
  slot: SlotState,
  at: EndsAt & { readonly isNewest: boolean },
): number {
  const panel = takenByPanel(state, at.setup, slot.slot);
  const window = windowOf(state, slot, at.setup);
  const { joint } = slot.ledger;
  const most = window ? at.reach.high + panelsOf(window.opens, panel.low) : Number.POSITIVE_INFINITY;
  if (!at.isNewest || joint === null || isUseOpen(state, slot)) return most;
  const since = placedSince(state, slot) - joint.placed;
  const { high } = placementsOf({ low: 0, high: joint.high - since });
  const last = panelsAtMost(high, panel, at);
  return Math.min(most, last + shiftOf(state, slot, at).high);
}

/** True where a slot's counts rest on a share that nobody entered. */
export function isLabelGuess(state: FloorState, slot: SlotState): boolean {
  return state.rules.get(slot.line)?.labelShare === undefined && slot.tapes.some(isPrinted);
}
