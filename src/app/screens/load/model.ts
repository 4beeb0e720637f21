// The slot map as places in a row: each feeder takes its positions, gaps are places that the setup does not use.

import { parseSlot } from '../../../../shared/floor/address.ts';
import type { SetupProgress, SlotPhase, SlotProgress } from '../../../../shared/floor/progress.ts';
import type { Line, SlotState, Sweep } from '../../../../shared/floor/state.ts';

/** One place on the map. `phase` `spare` = the setup wants nothing there, and what stands there is in nobody's way: it may stay. */
export interface MapPlace {
  readonly slot: string;
  readonly position: number;
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

/** Lays a line out bank by bank, in walking order. */
export function mapBanks(line: Line, progress: SetupProgress, sweep: Sweep | null): readonly MapBank[] {
  const seen = new Set(sweep?.endedMs === null ? sweep.seen : []);
  return line.machines.flatMap((machine) =>
    machine.banks.map((bank) => {
      const here = (slot: string) => {
        const address = parseSlot(slot);
        return address?.machine === machine.machine && address.bank === bank.bank;
      };
      const wanted = progress.slots.filter((each) => here(each.slot)).map((each) => wantedPlace(each, seen));
      const extra = progress.unwanted
        .filter((each) => here(each.slot))
        .map((each) => extraPlace(each, { seen, inTheWay: progress.inTheWay }));
      const places = [...wanted, ...extra].sort((a, b) => a.position - b.position);
      return {
        machine: machine.machine,
        machineName: machine.name,
        bank: bank.bank,
        bankName: bank.name,
        positions: bank.positions,
        places,
      };
    }),
  );
}

function wantedPlace(each: SlotProgress, seen: ReadonlySet<string>): MapPlace {
  return {
    slot: each.slot,
    position: parseSlot(each.slot)?.position ?? 0,
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
): MapPlace {
  return {
    slot: loaded.slot,
    position: parseSlot(loaded.slot)?.position ?? 0,
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
