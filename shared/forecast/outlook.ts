// After the next splice, when is the one after? Does what lies at the line last the run, and what must the store bring, by when?
// Method: reels of one part on one slot are one long tape: each reel's run-out is the forecast of all parts up to its end, so that the
// spread grows as the shift goes on. Reel-by-reel guesses from the last moment were refused: their spreads would not add up.

import { sortByWalk } from '../floor/address.ts';
import { comparePlaces } from '../floor/place-order.ts';
import type { PackageKind } from '../floor/vocabulary.ts';
import { panelsUntil, placementsUntil } from './beside.ts';
import { placementsAt, riskOfFewerThan } from './placements.ts';
import type { LinePace, MomentSpread, SlotForecast, SlotLoad } from './run-out.ts';
import { forecastSlot } from './run-out.ts';

/** A reel that waits at the line for a slot, in the order in which it will be spliced. */
export interface WaitingReel {
  readonly reel: string;
  readonly parts: number;
  readonly sd: number;
}

/** What each splice itself costs: parts, and the deviation of that. */
export interface SpliceParts {
  readonly parts: number;
  readonly sd: number;
}

/** One reel's end: the splice onto the next. */
export interface ReelEnd {
  /** The reel's id; null for the one that is running. */
  readonly reel: string | null;
  readonly runOutMs: MomentSpread;
  readonly windowMs: SlotForecast['windowMs'];
  /** Probability that the run still needs parts when this reel ends. */
  readonly risk: number;
  /** True where the run ends first: this splice is not due. */
  readonly outlasts: boolean;
}

/** What a slot needs for the rest of the run. */
export interface SlotNeeds {
  readonly slot: string;
  readonly ends: readonly ReelEnd[];
  /** True where running and waiting reels last the run (risk below 5 %). */
  readonly lasts: boolean;
  /** Null where it lasts; else what the store must bring. */
  readonly bring: {
    /** Parts missing so that the run is done with 95 % probability, rounded up. */
    readonly parts: number;
    /** When they must lie at the line: the early closing of the last reel's window, or its early run-out. */
    readonly byMs: number;
  } | null;
}

/** Parts up to the end of `upTo` waiting reels, as one load whose window is that of the last reel. */
function joined(load: SlotLoad, waiting: readonly WaitingReel[], upTo: number, cost: SpliceParts): SlotLoad {
  const reels = waiting.slice(0, upTo);
  const all = reels.reduce((sum, reel) => sum + reel.parts - cost.parts, load.left);
  return {
    ...load,
    left: Math.max(0, all),
    sd: Math.hypot(load.sd, upTo * cost.sd, Math.sqrt(upTo * cost.parts), ...reels.map((reel) => reel.sd)),
  };
}

/** Fewest further parts with which the run is done with 95 % probability. */
function partsShort(load: SlotLoad, wanted: number): number {
  let high = 1;
  const isShort = (parts: number) => riskOfFewerThan({ ...load, left: load.left + parts }, wanted) >= 0.05;
  while (isShort(high)) high *= 2;
  let low = high >> 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isShort(middle)) low = middle + 1;
    else high = middle;
  }
  return high;
}

/**
 * The ends of the running reel and of those that wait, and what is missing. Each splice takes off what it costs itself (default: nothing).
 * A loss of 1 (every part lost) throws: nothing would ever be enough.
 */
export function slotNeeds(
  pace: LinePace,
  load: SlotLoad,
  waiting: readonly WaitingReel[],
  cost: SpliceParts = { parts: 0, sd: 0 },
): SlotNeeds {
  if (load.loss >= 1)
    throw new RangeError(`Cannot look ahead as loss must be below 1: current value is ${load.loss}`);
  const ends: ReelEnd[] = [];
  for (let upTo = 0; upTo <= waiting.length; upTo++) {
    const forecast = forecastSlot(pace, joined(load, waiting, upTo, cost));
    const { runOutMs, windowMs, risk, outlasts } = forecast;
    ends.push({
      reel: upTo === 0 ? null : waiting[upTo - 1]!.reel,
      runOutMs,
      windowMs,
      risk,
      outlasts,
    });
  }
  const last = ends[ends.length - 1]!;
  if (last.outlasts) return { slot: load.slot, ends, lasts: true, bring: null };
  const all = joined(load, waiting, waiting.length, cost);
  const closesEarlyMs =
    last.windowMs === null
      ? last.runOutMs.early
      : last.windowMs.closes - (last.runOutMs.expected - last.runOutMs.early);
  return {
    slot: load.slot,
    ends,
    lasts: false,
    bring: {
      parts: Math.ceil(partsShort(all, placementsUntil(load, pace.panelsLeft)) + cost.parts),
      byMs: Math.max(pace.nowMs, Math.min(closesEarlyMs, last.runOutMs.early)),
    },
  };
}

/** Something to fetch from the store. */
export interface PickNeed {
  readonly part: string;
  readonly slot: string;
  readonly parts: number;
  /** Parts on one reel of this part as the store keeps it. */
  readonly reelQuantity: number;
  readonly byMs: number;
  /** Where it lies in the store, such as `R03-S12`; empty where nobody said. */
  readonly place: string;
  /** What it comes in; absent: tape. */
  readonly comesIn?: PackageKind;
}

/** One stop on the way through the store. */
export interface PickLine {
  readonly place: string;
  readonly part: string;
  readonly reels: number;
  /** What it comes in; absent: tape. */
  readonly comesIn?: PackageKind;
  readonly byMs: number;
  readonly slots: readonly string[];
}

/** The pick list in walking order, and so the slots of each line: one line for a part at a place, reels for each slot rounded up (a reel cannot stand on two slots). */
export function pickList(needs: readonly PickNeed[]): PickLine[] {
  const lines = new Map<string, PickLine>();
  for (const need of sortByWalk(needs, ({ slot }) => slot)) {
    const key = JSON.stringify([need.place, need.part]);
    const reels = Math.ceil(need.parts / need.reelQuantity);
    const line = lines.get(key);
    lines.set(key, {
      place: need.place,
      part: need.part,
      reels: (line?.reels ?? 0) + reels,
      ...(need.comesIn === undefined ? {} : { comesIn: need.comesIn }),
      byMs: Math.min(line?.byMs ?? Infinity, need.byMs),
      slots: [...(line?.slots ?? []), need.slot],
    });
  }
  return [...lines.values()].sort(
    (a, b) => comparePlaces(a.place, b.place) || (a.part < b.part ? -1 : a.part > b.part ? 1 : 0),
  );
}

/** Placements of a reel at the 5 % and 95 % points, for a screen that says "enough for … panels". */
export function panelsCovered(load: SlotLoad): { readonly least: number; readonly most: number } {
  const [least, most] = placementsAt(load, [0.05, 0.95], { variance: 0 });
  return { least: Math.floor(panelsUntil(load, least!)), most: Math.floor(panelsUntil(load, most!)) };
}
