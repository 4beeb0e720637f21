// Where on this line is a slot? A line has machines, banks and positions; a slot's text may leave some of that out.
// Method: a machine or bank that the text does not name is the line's only one, else a nameless one of its own, so that every slot
// of a setup has a place on the line and none falls off the map.

import { bankKey, parseSlot, type SlotAddress } from './address.ts';
import type { SetupSlot } from './kinds.ts';
import type { FloorState, Line } from './state.ts';

/** What a machine or a bank is called in a line's own record where the plant's slots do not name it. */
export const NAMELESS = '–';

/** A slot's place on a line. */
export interface LinePlace {
  readonly machine: string;
  readonly bank: string;
  /** Null = a place of its own, in a bank without positions. */
  readonly position: number | null;
  readonly lane: string | null;
}

/** The place that a slot has on a line, whether the line's record has it yet or not. */
export function placeOnLine(line: Pick<Line, 'machines'>, slot: string): LinePlace {
  const address = parseSlot(slot);
  const machine = machineOf(line, address);
  const banks = line.machines.find((each) => each.machine === machine)?.banks ?? [];
  return {
    machine,
    bank: bankOn(banks, address),
    position: address.position,
    lane: address.lane,
  };
}

function machineOf(line: Pick<Line, 'machines'>, { machine, position }: SlotAddress): string {
  const [only, ...others] = line.machines;
  if (machine !== null) {
    // A line's record keeps the machine's name as the plant wrote it.
    const spelt = line.machines.find((each) => each.machine.toUpperCase() === machine);
    return spelt?.machine ?? machine;
  }
  return only && others.length === 0 && position !== null ? only.machine : NAMELESS;
}

function bankOn(banks: readonly { readonly bank: string }[], { bank, position }: SlotAddress): string {
  const [only, ...others] = banks;
  if (bank !== null) return banks.find((each) => each.bank.toUpperCase() === bank)?.bank ?? bank;
  return only && others.length === 0 && position !== null ? only.bank : NAMELESS;
}

/**
 * True where the line surely has such a place: its bank is there and reaches that far. A text that leaves out machine or bank may be
 * anything (a feeder `F-9`), so it counts only where the line's own slots leave it out too; a lane only where a setup names it.
 */
export function isOnLinePlace(state: FloorState, line: string, slot: string): boolean {
  const known = state.lines.get(line);
  if (!known) return false;
  const stated = parseSlot(slot);
  const { machine, bank, position, lane } = placeOnLine(known, slot);
  if (lane !== null) return false;
  if (stated.machine === null && machine !== NAMELESS) return false;
  if (stated.bank === null && bank !== NAMELESS) return false;
  const banks = known.machines.find((each) => each.machine === machine)?.banks ?? [];
  const last = banks.find((each) => each.bank === bank)?.positions ?? 0;
  return position !== null && position <= last;
}

/** True where trays stand on the slot, as the line's record has it. It may be of an earlier setup: `goesOnTray` asks the one in hand too. */
export function standsOnTrays(line: Pick<Line, 'machines'> | undefined, slot: string): boolean {
  if (line === undefined) return false;
  const { machine, bank } = placeOnLine(line, slot);
  const banks = line.machines.find((each) => each.machine === machine)?.banks;
  return banks?.find((each) => each.bank === bank)?.holds === 'trays';
}

/**
 * True where no feeder goes onto the slot: the line's record has trays there, and what the setup wants there (null: nothing) is not said to
 * come in something else or on a tape of some width. A bank that had trays alone is written so once, and a later setup may use it otherwise.
 */
export function goesOnTray(
  line: Pick<Line, 'machines'> | undefined,
  slot: string,
  wanted: Pick<SetupSlot, 'comesIn' | 'tapeWidthMm'> | null,
): boolean {
  if (!standsOnTrays(line, slot)) return false;
  if (wanted === null) return true;
  return wanted.comesIn === undefined ? wanted.tapeWidthMm === null : wanted.comesIn === 'tray';
}

/** The key of a bank as a line's record names it, as `bankKey` of the slots in it. */
export function recordedBankKey(machine: string, bank: string): string {
  const stated = (name: string) => (name === NAMELESS ? null : name.toUpperCase());
  return bankKey({ machine: stated(machine), bank: stated(bank) });
}
