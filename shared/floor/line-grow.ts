// Which machines, banks and positions must a line have for a setup's slots?
// Method: every address of the setup is a place; a bank reaches as far as its last feeder does. What the line has already stays:
// a setup that uses less takes nothing away. A new bank on which the setup has nothing but trays holds trays. A slot whose text has no number is a place of its own and needs no position.

import { compareNatural } from './address.ts';
import type { SetupSlot } from './kinds.ts';
import { placeOnLine } from './place.ts';
import type { Line } from './state.ts';

/** A bank that a setup needs longer than it is; `before` 0 = the bank or its machine is new. */
export interface GrownBank {
  readonly machine: string;
  readonly bank: string;
  readonly before: number;
  readonly after: number;
}

/** The line with room for the setup, and what was added. */
export interface GrownLine {
  readonly line: Line;
  /** In walking order; empty = the line has room for every slot. */
  readonly grown: readonly GrownBank[];
}

/** How new machines and banks are to be called. */
export interface PlaceNames {
  readonly machine: (machine: string) => string;
  readonly bank: (bank: string) => string;
}

/** The last position that each bank needs: machine -> bank -> position. */
function neededPositions(
  line: Line,
  slots: readonly SetupSlot[],
): ReadonlyMap<string, ReadonlyMap<string, number>> {
  const needed = new Map<string, Map<string, number>>();
  for (const slot of slots) {
    const { machine, bank, position } = placeOnLine(line, slot.slot);
    if (position === null) continue;
    const banks = needed.get(machine) ?? new Map<string, number>();
    banks.set(bank, Math.max(banks.get(bank) ?? 0, position + slot.positions - 1));
    needed.set(machine, banks);
  }
  return needed;
}

/** The banks on which the setup has something that comes in no trays: machine -> banks. */
function banksBesideTrays(
  line: Pick<Line, 'machines'>,
  slots: readonly SetupSlot[],
): ReadonlyMap<string, ReadonlySet<string>> {
  const found = new Map<string, Set<string>>();
  for (const { slot, comesIn } of slots) {
    if (comesIn === 'tray') continue;
    const { machine, bank } = placeOnLine(line, slot);
    found.set(machine, (found.get(machine) ?? new Set<string>()).add(bank));
  }
  return found;
}

function byPlace(a: GrownBank, b: GrownBank): number {
  return compareNatural(a.machine, b.machine) || compareNatural(a.bank, b.bank);
}

/** Gives a line the places that a setup's slots need. Machines and banks that are new stand in walking order behind those there. */
export function growLine(line: Line, slots: readonly SetupSlot[], names: PlaceNames): GrownLine {
  const needed = neededPositions(line, slots);
  const besideTrays = banksBesideTrays(line, slots);
  const grown: GrownBank[] = [];
  const known = new Set(line.machines.map(({ machine }) => machine));
  const fresh = [...needed.keys()]
    .filter((machine) => !known.has(machine))
    .sort(compareNatural)
    .map((machine) => ({ machine, name: names.machine(machine), banks: [] }));
  const machines = [...line.machines, ...fresh].map((machine) => {
    const wanted = needed.get(machine.machine) ?? new Map<string, number>();
    const banks = machine.banks.map((bank) => {
      const after = wanted.get(bank.bank) ?? 0;
      if (after <= bank.positions) return bank;
      grown.push({ machine: machine.machine, bank: bank.bank, before: bank.positions, after });
      return { ...bank, positions: after };
    });
    const there = new Set(banks.map(({ bank }) => bank));
    const added = [...wanted]
      .filter(([bank]) => !there.has(bank))
      .sort(([a], [b]) => compareNatural(a, b))
      .map(([bank, positions]) => {
        grown.push({ machine: machine.machine, bank, before: 0, after: positions });
        const fresh = { bank, name: names.bank(bank), positions };
        const isForTrays = besideTrays.get(machine.machine)?.has(bank) !== true;
        return isForTrays ? { ...fresh, holds: 'trays' as const } : fresh;
      });
    return { ...machine, banks: [...banks, ...added] };
  });
  return { line: { ...line, machines }, grown: grown.sort(byPlace) };
}
