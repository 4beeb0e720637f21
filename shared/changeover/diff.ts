// From what is loaded to what is wanted: what stays as it is, moves, comes out, goes in?
// Method: a feeder is its part and its width. Equal on the same slot: keep. Wanted elsewhere: move, taking first the
// feeders that are in somebody's way and must leave their place anyhow. What is left over comes out only where a wanted
// feeder needs one of its positions. Handlings are fewest: each move saves one feeder put in and often one taken out.
// What a floor knows beyond part and width (alternates, pitch, blocks) comes in as a rule; such a feeder is matched after the equal
// ones, in walking order, so that a rare pair may be missed.
// Refused: clearing everything that the next job does not want.

import {
  bankKey,
  compareSlots,
  isSameSlot,
  parseSlot,
  placeKey,
  positionsOf,
  type SlotAddress,
  sortByWalk,
} from '../floor/address.ts';
import { fail, ok, type Result } from '../kit/result.ts';

/** A feeder on a slot. */
export interface PlacedFeeder {
  readonly slot: string;
  readonly part: string;
  /** Positions taken, whole, >= 1. */
  readonly width: number;
  /** Feeders of one kind may trade places; absent: those of the same part and width. */
  readonly kind?: string;
}

/** A feeder that changes its slot. */
export interface FeederMove {
  /** The part on the feeder. */
  readonly part: string;
  readonly from: string;
  readonly to: string;
  readonly width: number;
  readonly kind?: string;
}

/** What a loaded feeder, its reel with it, is good for; both answers must be the same for feeders of one kind. */
export interface FeederRule {
  /** It may stay on the slot, which is its own. */
  readonly stays: (loaded: PlacedFeeder, wanted: PlacedFeeder) => boolean;
  /** It may be moved to the slot. */
  readonly serves: (loaded: PlacedFeeder, wanted: PlacedFeeder) => boolean;
}

/** Names the kind of a feeder: those of one kind may trade places. */
export function kindOf(feeder: Pick<PlacedFeeder, 'part' | 'width' | 'kind'>): string {
  return feeder.kind ?? JSON.stringify([feeder.part, feeder.width]);
}

const isEqual = (loaded: PlacedFeeder, wanted: PlacedFeeder): boolean =>
  loaded.part === wanted.part && loaded.width === wanted.width;

/** Where nothing more is known of a feeder than its part and width. */
const plainRule: FeederRule = { stays: isEqual, serves: isEqual };

/** What has to be done, without its order. */
export interface SetupDiff {
  readonly keep: readonly PlacedFeeder[];
  readonly move: readonly FeederMove[];
  readonly takeOut: readonly PlacedFeeder[];
  readonly putIn: readonly PlacedFeeder[];
  /** Not wanted, in nobody's way: may stay. */
  readonly stay: readonly PlacedFeeder[];
}

/** What is wrong with a setup. */
export const setupFaultCodes = ['width', 'slot-twice', 'overlap', 'slot-unknown'] as const;
/** One fault of one entry. */
export interface SetupFault {
  readonly code: (typeof setupFaultCodes)[number];
  readonly side: 'loaded' | 'wanted';
  /** Index of the entry in its list. */
  readonly at: number;
  readonly slot: string;
  readonly part: string;
  /** The entry that it clashes with. */
  readonly with?: { readonly slot: string; readonly part: string };
  /** Positions past the end of the bank, where the slot itself exists. */
  readonly over?: number;
  /** Last slot of the bank, where the bank exists and the slot lies past it. */
  readonly last?: number;
}

/** Last position of each bank, by `machine-bank`; a bank that is not listed does not exist. */
export type BankSizes = Readonly<Record<string, number>>;

/** Every fault of a setup: no whole width >= 1, a slot twice, feeders that overlap, a slot that is not there. */
export function setupFaults(
  setup: readonly PlacedFeeder[],
  side: 'loaded' | 'wanted',
  banks?: BankSizes,
): SetupFault[] {
  const faults: SetupFault[] = [];
  const taken = new Map<string, PlacedFeeder>();
  setup.forEach((feeder, at) => {
    const facts = { side, at, slot: feeder.slot, part: feeder.part };
    if (!Number.isSafeInteger(feeder.width) || feeder.width < 1) {
      faults.push({ code: 'width', ...facts });
      return;
    }
    const place = parseSlot(feeder.slot);
    if (banks !== undefined && place.position !== null) {
      const last = lastOf(banks, place);
      const start = place.position;
      const end = start + feeder.width - 1;
      if (last === undefined || start < 1) faults.push({ code: 'slot-unknown', ...facts });
      else if (start > last) faults.push({ code: 'slot-unknown', ...facts, last });
      else if (end > last) faults.push({ code: 'slot-unknown', ...facts, over: end - last });
    }
    let clash: PlacedFeeder | undefined;
    for (const position of positionsOf(feeder.slot, feeder.width)) {
      clash ??= taken.get(position);
      taken.set(position, feeder);
    }
    if (clash !== undefined) {
      const code = isSameSlot(clash.slot, feeder.slot) ? 'slot-twice' : 'overlap';
      faults.push({ code, ...facts, with: { slot: clash.slot, part: clash.part } });
    }
  });
  return faults;
}

/** The last position of the bank that an address lies in; what the address leaves out must leave one bank only. */
function lastOf(banks: BankSizes, address: SlotAddress): number | undefined {
  const { machine, bank } = address;
  const key = bankKey(address);
  if (Object.hasOwn(banks, key)) return banks[key];
  if (machine !== null && bank !== null) return undefined;
  const isIn = (each: string) =>
    (machine === null || each.startsWith(`${machine}-`)) && (bank === null || each.endsWith(`-${bank}`));
  const fitting = Object.entries(banks).filter(([each]) => isIn(each));
  return fitting.length === 1 ? fitting[0]?.[1] : undefined;
}

/** Parts on more than one slot, in walking order: allowed, but worth a word, since one of them is easily missed. */
export function partsTwice(setup: readonly PlacedFeeder[]): { part: string; slots: string[] }[] {
  const slots = new Map<string, string[]>();
  for (const { part, slot } of setup) slots.set(part, [...(slots.get(part) ?? []), slot]);
  return [...slots]
    .filter(([, where]) => where.length > 1)
    .map(([part, where]) => ({ part, slots: where.sort(compareSlots) }));
}

/**
 * The difference between two setups, each list in walking order; every fault of either where there are any. `rule`: what a feeder is
 * good for; without it the same part and width.
 */
export function diffSetups(
  loaded: readonly PlacedFeeder[],
  wanted: readonly PlacedFeeder[],
  banks?: BankSizes,
  rule: FeederRule = plainRule,
): Result<SetupDiff, readonly SetupFault[]> {
  const faults = [...setupFaults(loaded, 'loaded'), ...setupFaults(wanted, 'wanted', banks)];
  if (faults.length > 0) return fail(faults);
  const loadedAt = new Map(loaded.map((feeder) => [placeKey(feeder.slot), feeder]));
  const keep: PlacedFeeder[] = [];
  const open: PlacedFeeder[] = [];
  const kept = new Set<PlacedFeeder>();
  for (const feeder of wanted) {
    const there = loadedAt.get(placeKey(feeder.slot));
    if (there !== undefined && rule.stays(there, feeder)) {
      keep.push(feeder);
      kept.add(there);
    } else open.push(feeder);
  }
  const needed = new Set(wanted.flatMap((feeder) => positionsOf(feeder.slot, feeder.width)));
  const isInTheWay = (feeder: PlacedFeeder) =>
    positionsOf(feeder.slot, feeder.width).some((position) => needed.has(position));
  const free = loaded.filter((one) => !kept.has(one));
  const { move, putIn, left } = matchMoves(free, open, { rule, isInTheWay });
  const bySlot = (list: readonly PlacedFeeder[]) => sortByWalk(list, (feeder) => feeder.slot);
  return ok({
    keep: bySlot(keep),
    move: sortByWalk(move, (one) => one.from),
    takeOut: bySlot(left.filter(isInTheWay)),
    putIn: bySlot(putIn),
    stay: bySlot(left.filter((feeder) => !isInTheWay(feeder))),
  });
}

/** Which free feeder goes to which open slot: those of the slot's own part first, then whatever else serves it. */
function matchMoves(
  free: readonly PlacedFeeder[],
  open: readonly PlacedFeeder[],
  more: { readonly rule: FeederRule; readonly isInTheWay: (feeder: PlacedFeeder) => boolean },
): { move: FeederMove[]; putIn: PlacedFeeder[]; left: PlacedFeeder[] } {
  const { rule, isInTheWay } = more;
  const pools = new Map<string, PlacedFeeder[]>();
  for (const feeder of sortByWalk(free, (one) => one.slot))
    pools.set(feeder.part, [...(pools.get(feeder.part) ?? []), feeder]);
  for (const pool of pools.values()) pool.sort((x, y) => Number(isInTheWay(y)) - Number(isInTheWay(x)));
  const move: FeederMove[] = [];
  const take = (slot: PlacedFeeder, pool: PlacedFeeder[] | undefined): boolean => {
    const at = pool?.findIndex((feeder) => rule.serves(feeder, slot)) ?? -1;
    const [source] = at < 0 ? [] : (pool?.splice(at, 1) ?? []);
    if (!source) return false;
    const { part, width, kind } = source;
    const one: FeederMove = { part, from: source.slot, to: slot.slot, width };
    move.push(kind === undefined ? one : { ...one, kind });
    return true;
  };
  const slots = sortByWalk(open, (one) => one.slot);
  const without = slots.filter((slot) => !take(slot, pools.get(slot.part)));
  const putIn = without.filter((slot) => ![...pools.values()].some((pool) => take(slot, pool)));
  return { move, putIn, left: [...pools.values()].flat() };
}
