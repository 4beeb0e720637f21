// The slot map as places in a row: each feeder takes its positions, gaps are places that the setup does not use. Lanes of one feeder share
// its positions and stand side by side on them; trays of a lift are places like any other, one above the other.

import { sortByWalk } from '../../../../shared/floor/address.ts';
import { placeOnLine } from '../../../../shared/floor/place.ts';
import type { SetupProgress, SlotPhase, SlotProgress } from '../../../../shared/floor/progress.ts';
import type { FloorState, Line, SlotState, Sweep } from '../../../../shared/floor/state.ts';

/** One place on the map. `phase` `spare` = the setup wants nothing there, and what stands there is in nobody's way: it may stay. */
export interface MapPlace {
  readonly slot: string;
  /** Null = a place of its own, shown by its text. */
  readonly position: number | null;
  /** The lane of a feeder with several that stands there; null = it has all of the position. */
  readonly lane: string | null;
  readonly positions: number;
  readonly phase: SlotPhase | 'spare';
  readonly seen: boolean;
  readonly progress: SlotProgress | null;
  /** The name of the lane that it is kept for; null or absent = of none. */
  readonly keptFor?: string | null;
  readonly loaded: SlotState | null;
}

/** One bank of a machine. */
export interface MapBank {
  readonly machine: string;
  readonly machineName: string;
  readonly bank: string;
  readonly bankName: string;
  readonly hasTrays: boolean;
  readonly positions: number;
  readonly places: readonly MapPlace[];
}

/**
 * Lays a line out bank by bank, in walking order. A slot that the line's record has no bank for gets one at the end: nothing that is
 * wanted or loaded falls off the map. `sweep`: the one that goes on. `lines`: whose names its lanes have.
 */
export function mapBanks(
  line: Line,
  progress: SetupProgress,
  sweep: Sweep | null,
  lines: ReadonlyMap<string, Pick<Line, 'name'>> = new Map(),
): readonly MapBank[] {
  const seen = new Set(sweep?.seen);
  const placesByBank = new Map<string, MapPlace[]>();
  const extraBanks: MapBank[] = [];
  const known = new Set(
    line.machines.flatMap(({ machine, banks }) => banks.map(({ bank }) => `${machine}\n${bank}`)),
  );
  const put = (place: Omit<MapPlace, 'position' | 'lane'>) => {
    const { machine, bank, position, lane } = placeOnLine(line, place.slot);
    const key = `${machine}\n${bank}`;
    const there = placesByBank.get(key);
    if (there) there.push({ ...place, position, lane });
    else placesByBank.set(key, [{ ...place, position, lane }]);
    if (known.has(key)) return;
    known.add(key);
    const machineName = line.machines.find((each) => each.machine === machine)?.name ?? machine;
    extraBanks.push({
      machine,
      machineName,
      bank,
      bankName: bank,
      hasTrays: false,
      positions: 0,
      places: [],
    });
  };
  for (const each of progress.slots) {
    const { keptFor } = each;
    put({ ...wantedPlace(each, seen), keptFor: keptFor && (lines.get(keptFor)?.name ?? keptFor) });
  }
  for (const each of progress.unwanted) put(extraPlace(each, { seen, inTheWay: progress.inTheWay }));
  const banks = line.machines.flatMap(({ machine, name, banks }) =>
    banks.map(({ bank, name: bankName, positions, holds }) => ({
      machine,
      machineName: name,
      bank,
      bankName,
      hasTrays: holds === 'trays',
      positions,
      places: [],
    })),
  );
  return [...banks, ...extraBanks].map((bank) => ({
    ...bank,
    places: sortByWalk(placesByBank.get(`${bank.machine}\n${bank.bank}`) ?? [], ({ slot }) => slot),
  }));
}

function wantedPlace(each: SlotProgress, seen: ReadonlySet<string>): Omit<MapPlace, 'position' | 'lane'> {
  return {
    slot: each.slot,
    positions: each.wanted.positions,
    phase: each.phase,
    seen: seen.has(each.slot),
    progress: each,
    loaded: each.loaded,
  };
}

function extraPlace(
  loaded: SlotState,
  { seen, inTheWay }: Record<'seen' | 'inTheWay', ReadonlySet<string>>,
): Omit<MapPlace, 'position' | 'lane'> {
  return {
    slot: loaded.slot,
    positions: 1,
    phase: inTheWay.has(loaded.slot) ? 'other' : 'spare',
    seen: seen.has(loaded.slot),
    progress: null,
    loaded,
  };
}

/** Loaded slots of a line that a sweep is to see, in walking order; what another lane keeps is seen in that one's. */
export function sweepSlots(progress: SetupProgress): readonly string[] {
  return progress.slots.flatMap((each) => (each.loaded !== null && each.keptFor === null ? [each.slot] : []));
}

/** Those of them that a running sweep has not seen. */
export function sweepMissing(progress: SetupProgress, sweep: Sweep): readonly string[] {
  return sweepSlots(progress).filter((slot) => !sweep.seen.includes(slot));
}

/** What a place is on the map: a sweep's own mark hides how it is loaded. */
export type Standing = MapPlace['phase'] | 'seen';

/** What a person still has to do. */
const byHand = ['missing', 'held', 'other'] as const satisfies readonly SlotPhase[];

/** Standings with a number beside them: what a person still has to do, and apart from it what another lane keeps. */
export const counted = [...byHand, 'kept'] as const satisfies readonly Standing[];

/** True where a person still has something to do on the place, whether a sweep has seen it or not. */
export function needsHands({ phase }: Pick<MapPlace, 'phase'>): boolean {
  return byHand.some((each) => each === phase);
}

/** What stands on a place, as it is drawn. */
export function standingOn(place: Pick<MapPlace, 'phase' | 'seen'>): Standing {
  return place.seen ? 'seen' : place.phase;
}

/** A place as drawn in small: from which column, over how many; of a lane also which of how many that share them. */
export interface Cell {
  readonly place: MapPlace;
  /** From 1. */
  readonly column: number;
  readonly span: number;
  /** Which lane of how many, from 0; null for a place that has its columns alone. */
  readonly lane: { readonly at: number; readonly of: number } | null;
}

/** Places of a bank as they belong together: the lanes that share a position in one group, every other place in a group of its own. */
export function lanesOf(places: readonly MapPlace[]): readonly (readonly MapPlace[])[] {
  const groups: MapPlace[][] = [];
  for (const place of places) {
    const [before] = groups.at(-1) ?? [];
    const isBeside =
      place.lane !== null &&
      place.position !== null &&
      before?.position === place.position &&
      before.lane !== null;
    if (isBeside) groups.at(-1)?.push(place);
    else groups.push([place]);
  }
  return groups;
}

/**
 * Lays a bank out in columns of one position each; lanes share those of their feeder. Where two places claim a position all the same, the later
 * one stands behind the earlier: a place is never drawn over another.
 */
export function cellsOf({ places }: Pick<MapBank, 'places'>): readonly Cell[] {
  const cells: Cell[] = [];
  let free = 1;
  for (const group of lanesOf(places)) {
    const column = Math.max(free, group[0]?.position ?? free);
    const span = Math.max(...group.map(({ positions }) => positions));
    const of = group.length;
    cells.push(...group.map((place, at) => ({ place, column, span, lane: of === 1 ? null : { at, of } })));
    free = column + span;
  }
  return cells;
}

/** What a place is called within its bank: its position, with the lane as plants write it (`14`, `14A`, `14-2`), else its text. */
export function nameInBank({ slot, position, lane }: Pick<MapPlace, 'slot' | 'position' | 'lane'>): string {
  if (position === null) return slot;
  return lane === null ? String(position) : `${position}${/^\d/.test(lane) ? '-' : ''}${lane}`;
}

/** Columns that hold each of some banks as far as it is used, so that a position is as wide in all of them; at least 1. */
export function columnsOf(banks: readonly Pick<MapBank, 'places'>[]): number {
  return Math.max(1, ...banks.flatMap(cellsOf).map(({ column, span }) => column + span - 1));
}

/** The name of a bank among the banks of its line. */
export function keyOfBank({ machine, bank }: Pick<MapBank, 'machine' | 'bank'>): string {
  return `${machine}\n${bank}`;
}

/** The bank that a slot is in; null where it is in none. */
export function bankWith(banks: readonly MapBank[], slot: string | null): MapBank | null {
  return banks.find(({ places }) => places.some((place) => place.slot === slot)) ?? null;
}

/** How many places of some banks stand how. */
export function countStandings(banks: readonly MapBank[]): ReadonlyMap<Standing, number> {
  const counts = new Map<Standing, number>();
  for (const place of banks.flatMap(({ places }) => places)) {
    const is = standingOn(place);
    counts.set(is, (counts.get(is) ?? 0) + 1);
  }
  return counts;
}

/** How many slots of a bank the setup wants, and how many of them are right. */
export function progressOfBank({ places }: Pick<MapBank, 'places'>): {
  readonly wanted: number;
  readonly verified: number;
} {
  const wanted = places.filter(({ progress }) => progress !== null);
  return { wanted: wanted.length, verified: wanted.filter(({ phase }) => phase === 'verified').length };
}

/** A feeder that stands ready on a cart for a slot of a setup; null where none does. */
export function feederReady(
  floor: Pick<FloorState, 'carts'>,
  asked: { readonly line: string; readonly setup: string; readonly slot: string },
): { readonly feeder: string; readonly cart: string } | null {
  for (const [cart, places] of floor.carts)
    for (const { line, setup, slot, feeder } of places.values())
      if (line === asked.line && setup === asked.setup && slot === asked.slot && feeder !== null)
        return { feeder, cart };
  return null;
}
