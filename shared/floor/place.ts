// Which places a line has: machine, bank and the positions within it.

import { parseSlot } from './address.ts';
import type { FloorState } from './state.ts';

/** True where the line has such a place. */
export function isOnLinePlace(state: FloorState, line: string, slot: string): boolean {
  const address = parseSlot(slot);
  const machine = state.lines.get(line)?.machines.find((candidate) => candidate.machine === address?.machine);
  const bank = machine?.banks.find((candidate) => candidate.bank === address?.bank);
  return (
    bank !== undefined && address !== null && address.position >= 1 && address.position <= bank.positions
  );
}
