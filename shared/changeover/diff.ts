// From what is loaded to what is wanted: what stays as it is, moves, comes out, goes in?
// Method: a feeder is its part and its width. Equal on the same slot: keep. Wanted elsewhere: move, taking first the
// feeders that are in somebody's way and must leave their place anyhow. What is left over comes out only where a wanted
// feeder needs one of its positions. Handlings are fewest: each move saves one feeder put in and often one taken out.
// What a floor knows beyond part and width (alternates, pitch, blocks) comes in as a rule; such a feeder is matched after the equal
// ones, in walking order, so that a rare pair may be missed.
// Lanes of one feeder: each is a place of its own, with a reel that stays or changes; the feeder itself stays, moves and comes out with all of
// them. It moves only where every lane serves the same lane of its new place.
// Refused: clearing everything that the next job does not want; moving a reel from lane to lane, which is two handlings anyhow.

import {
  bankKey,
  compareSlots,
  feederKey,
  isLane,
  isLaneBeside,
  isSameLane,
  isSameSlot,
  parseSlot,
  placeKey,
  placesTaken,
  positionsUnder,
  type SlotAddress,
  sortByWalk,
} from '../floor/address.ts';
import { fail, ok, type Result } from '../kit/result.ts';
import { byFeeder, type LaneOf } from './feeder-lanes.ts';

/** A feeder on a slot, or one of its lanes with the reel on it. */
export interface PlacedFeeder {
  readonly slot: string;
  readonly part: string;
  /** Positions taken, whole, >= 1. */
  readonly width: number;
  /** Feeders of one kind may trade places; absent: those of the same part and width. */
  readonly kind?: string;
  /** In a difference: the other lanes of the feeder, which come and go with it. */
  readonly lanes?: readonly LaneOf[];
  /** In a difference: the feeder stays where it is, and the reel on this lane alone is meant. */
  readonly laneOnly?: true;
}

/** A feeder that changes its slot. */
export interface FeederMove {
  /** The part on the feeder. */
  readonly part: string;
  readonly from: string;
  readonly to: string;
  readonly width: number;
  readonly kind?: string;
  /** The other lanes of the feeder, which go to the same lanes of the new place. */
  readonly lanes?: readonly { readonly part: string; readonly from: string; readonly to: string }[];
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

/** Every slot that a feeder of a difference stands on: its own, and those of its other lanes. */
export function everyLaneOf({ slot, lanes = [] }: Pick<PlacedFeeder, 'slot' | 'lanes'>): readonly string[] {
  return [slot, ...lanes.map((lane) => lane.slot)];
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
  const taken = new Map<string, PlacedFeeder[]>();
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
    for (const position of positionsUnder(feeder.slot, feeder.width)) {
      const there = taken.get(position) ?? [];
      // Lanes of one feeder share its positions.
      clash ??= there.filter(({ slot }) => !isLaneBeside(slot, feeder.slot)).at(-1);
      taken.set(position, [...there, feeder]);
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
  const takes = placesTaken(wanted);
  const isInTheWay = ({ slot, width }: PlacedFeeder) => takes(slot, width);
  const isWay: IsWay = (feeder) => feeder.some(isInTheWay);
  const free = loaded.filter((one) => !kept.has(one));
  const standing = standingFeeders(keep, { wanted, free, isInTheWay });
  const isOn = ({ slot }: PlacedFeeder) => isLane(slot) && standing.has(feederKey(slot));
  const { move, putIn, left } = matchMoves(
    byFeeder(free.filter((one) => !isOn(one))),
    byFeeder(open.filter((one) => !isOn(one))),
    { rule, isWay },
  );
  const reels = free.filter(isOn);
  const bySlot = (list: readonly PlacedFeeder[]) => sortByWalk(list, (feeder) => feeder.slot);
  return ok({
    keep: bySlot(keep),
    move: sortByWalk(move, (one) => one.from),
    takeOut: bySlot([...left.filter(isWay).map(joined), ...reels.filter(isInTheWay).map(alone)]),
    putIn: bySlot([...putIn.map(joined), ...open.filter(isOn).map(alone)]),
    stay: bySlot([
      ...left.filter((feeder) => !isWay(feeder)).map(joined),
      ...reels.filter((one) => !isInTheWay(one)).map(alone),
    ]),
  });
}

/** A feeder by its lanes; one without lanes is alone. */
type Feeder = readonly PlacedFeeder[];
/** Whether what is loaded takes a position that is wanted for something else than a lane beside it. */
type InTheWay = (one: PlacedFeeder) => boolean;
/** The same of a feeder with all its lanes. */
type IsWay = (feeder: Feeder) => boolean;

/** A feeder with several lanes as the first of them and the others with it. */
function joined(feeder: Feeder): PlacedFeeder {
  const [first, ...others] = feeder as readonly [PlacedFeeder, ...PlacedFeeder[]]; // none is empty
  if (!isLane(first.slot)) return first;
  const lanes = others.map(({ slot, part }) => ({ slot, part }));
  const width = Math.max(...feeder.map((one) => one.width));
  // What hangs on it besides is known of no other: it trades places with none.
  const one = { ...first, width, kind: JSON.stringify(['lanes', first.slot]) };
  return lanes.length === 0 ? one : { ...one, lanes };
}

/** A reel whose feeder stays: it trades places with no feeder. */
function alone(one: PlacedFeeder): PlacedFeeder {
  return { ...one, kind: JSON.stringify(['lane', one.slot]), laneOnly: true };
}

/** Feeders with lanes that stay on the machine, since one of their lanes does: what is kept, or is in nobody's way beside a lane that is wanted. */
function standingFeeders(
  keep: readonly PlacedFeeder[],
  more: {
    readonly wanted: readonly PlacedFeeder[];
    readonly free: readonly PlacedFeeder[];
    readonly isInTheWay: InTheWay;
  },
): ReadonlySet<string> {
  const keyOf = ({ slot }: PlacedFeeder) => feederKey(slot);
  const isOfLane = ({ slot }: PlacedFeeder) => isLane(slot);
  const wanted = new Set(more.wanted.filter(isOfLane).map(keyOf));
  const beside = byFeeder(more.free.filter(isOfLane))
    .filter((feeder) => !feeder.some(more.isInTheWay))
    .flatMap((feeder) => feeder.map(keyOf))
    .filter((key) => wanted.has(key));
  return new Set([...keep.filter(isOfLane).map(keyOf), ...beside]);
}

/** True where the feeder, with every reel on it, is good for the place, which wants the same lanes. */
function servesAll(feeder: Feeder, place: Feeder, rule: FeederRule): boolean {
  if (feeder.length !== place.length) return false;
  return feeder.every((one) => {
    const wanted = place.find(({ slot }) => isSameLane(slot, one.slot));
    return wanted !== undefined && rule.serves(one, wanted);
  });
}

/** Which free feeder goes to which open place: those of the place's own part first, then whatever else serves it. */
function matchMoves(
  free: readonly Feeder[],
  open: readonly Feeder[],
  more: { readonly rule: FeederRule; readonly isWay: IsWay },
): { move: FeederMove[]; putIn: Feeder[]; left: Feeder[] } {
  const { rule, isWay } = more;
  const partOf = (feeder: Feeder) => feeder[0]?.part ?? '';
  const pools = new Map<string, Feeder[]>();
  for (const feeder of free) pools.set(partOf(feeder), [...(pools.get(partOf(feeder)) ?? []), feeder]);
  for (const pool of pools.values()) pool.sort((x, y) => Number(isWay(y)) - Number(isWay(x)));
  const move: FeederMove[] = [];
  const take = (place: Feeder, pool: Feeder[] | undefined): boolean => {
    const at = pool?.findIndex((feeder) => servesAll(feeder, place, rule)) ?? -1;
    const [source] = at < 0 ? [] : (pool?.splice(at, 1) ?? []);
    if (!source) return false;
    move.push(moveOf(joined(source), place));
    return true;
  };
  const without = open.filter((place) => !take(place, pools.get(partOf(place))));
  const putIn = without.filter((place) => ![...pools.values()].some((pool) => take(place, pool)));
  return { move, putIn, left: [...pools.values()].flat() };
}

/** A feeder on its way to a place, lane by lane where it has several. */
function moveOf({ slot, part, width, kind, lanes }: PlacedFeeder, place: Feeder): FeederMove {
  const toOf = (from: string) => place.find((one) => isSameLane(one.slot, from))?.slot ?? '';
  const plain: FeederMove = { part, from: slot, to: toOf(slot), width };
  const one = kind === undefined ? plain : { ...plain, kind };
  if (lanes === undefined) return one;
  return { ...one, lanes: lanes.map((lane) => ({ part: lane.part, from: lane.slot, to: toOf(lane.slot) })) };
}
