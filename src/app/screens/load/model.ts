// The slot map as places in a row: each feeder takes its positions, gaps are places that the setup does not use.

import { sortByWalk } from '../../../../shared/floor/address.ts';
import { placeOnLine } from '../../../../shared/floor/place.ts';
import type { SetupProgress, SlotPhase, SlotProgress } from '../../../../shared/floor/progress.ts';
import type { Line, SlotState, Sweep } from '../../../../shared/floor/state.ts';

/** One place on the map. `phase` `spare` = the setup wants nothing there, and what stands there is in nobody's way: it may stay. */
export interface MapPlace {
  readonly slot: string;
  /** Null = a place of its own, shown by its text. */
  readonly position: number | null;
  readonly positions: number;
  readonly phase: SlotPhase | 'spare';
  readonly seen: boolean;
  readonly progress: SlotProgress | null;
  readonly loaded: SlotState | null;
}

/** One bank of a machine. */
export interface MapBank {
  readonly machine: string;
  readonly machineName: string;
  readonly bank: string;
  readonly bankName: string;
  readonly positions: number;
  readonly places: readonly MapPlace[];
}

/**
 * Lays a line out bank by bank, in walking order. A slot that the line's record has no bank for gets one at the end: nothing that is
 * wanted or loaded falls off the map.
 */
export function mapBanks(line: Line, progress: SetupProgress, sweep: Sweep | null): readonly MapBank[] {
  const seen = new Set(sweep?.endedMs === null ? sweep.seen : []);
  const placesByBank = new Map<string, MapPlace[]>();
  const extraBanks: MapBank[] = [];
  const known = new Set(
    line.machines.flatMap(({ machine, banks }) => banks.map(({ bank }) => `${machine}\n${bank}`)),
  );
  const put = (place: Omit<MapPlace, 'position'>) => {
    const { machine, bank, position } = placeOnLine(line, place.slot);
    const key = `${machine}\n${bank}`;
    const there = placesByBank.get(key);
    if (there) there.push({ ...place, position });
    else placesByBank.set(key, [{ ...place, position }]);
    if (known.has(key)) return;
    known.add(key);
    const machineName = line.machines.find((each) => each.machine === machine)?.name ?? machine;
    extraBanks.push({ machine, machineName, bank, bankName: bank, positions: 0, places: [] });
  };
  for (const each of progress.slots) put(wantedPlace(each, seen));
  for (const each of progress.unwanted) put(extraPlace(each, { seen, inTheWay: progress.inTheWay }));
  const banks = line.machines.flatMap(({ machine, name, banks }) =>
    banks.map(({ bank, name: bankName, positions }) => ({
      machine,
      machineName: name,
      bank,
      bankName,
      positions,
      places: [],
    })),
  );
  return [...banks, ...extraBanks].map((bank) => ({
    ...bank,
    places: sortByWalk(placesByBank.get(`${bank.machine}\n${bank.bank}`) ?? [], ({ slot }) => slot),
  }));
}

function wantedPlace(each: SlotProgress, seen: ReadonlySet<string>): Omit<MapPlace, 'position'> {
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
): Omit<MapPlace, 'position'> {
  return {
    slot: loaded.slot,
    positions: 1,
    phase: inTheWay.has(loaded.slot) ? 'other' : 'spare',
    seen: seen.has(loaded.slot),
    progress: null,
    loaded,
  };
}

/** Loaded slots of a line that a running sweep has not seen, in walking order. */
export function sweepMissing(progress: SetupProgress, sweep: Sweep): readonly string[] {
  return progress.slots
    .filter((each) => each.loaded !== null && !sweep.seen.includes(each.slot))
    .map((each) => each.slot);
}
