// Which loaded slots run out first, by the count in the log.

import type { SetupSlot } from '../shared/floor/kinds.ts';
import { slotLeft } from '../shared/floor/remaining.ts';
import type { FloorState, SlotState } from '../shared/floor/state.ts';
import { wantedOn } from '../shared/floor/wanted.ts';
import { lineFigures } from './plant.ts';

/** A loaded slot, and for how many more panels it has parts. */
export interface DueSlot {
  readonly loaded: SlotState;
  readonly wanted: SetupSlot;
  readonly panels: number;
}

/** Loaded slots of the line's chosen setup that use parts and have no tape joined behind the running one, first to run out first. */
export function dueSlots(state: FloorState, line: string): readonly DueSlot[] {
  const setup = state.chosen.get(line) ?? '';
  const due: DueSlot[] = [];
  for (const loaded of state.slots.values()) {
    const wanted = loaded.line === line ? wantedOn(state, setup, loaded.slot) : null;
    if (!wanted || wanted.perPanel === 0) continue;
    const left = slotLeft(state, loaded, state.rules.get(line)?.loss ?? lineFigures.loss);
    if (left.parts === null || left.runningIndex < loaded.tapes.length - 1) continue;
    due.push({ loaded, wanted, panels: left.parts / wanted.perPanel });
  }
  return due.sort((a, b) => a.panels - b.panels || (a.loaded.slot < b.loaded.slot ? -1 : 1));
}
