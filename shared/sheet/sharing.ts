// Do the slots of one part split its placements, or are they used in turn? One word in one row speaks for the part.

import type { ProblemSink } from './problems.ts';
import type { SheetSlot } from './slot.ts';

/** Placements per panel of one part that its rows state; null where one that would add to it is not stated. */
export function statedUsage(slots: readonly SheetSlot[]): number | null {
  let beside = 0;
  let inTurn: number | null = null;
  for (const { perPanel, sharing } of slots) {
    if (sharing === 'inTurn') inTurn = Math.max(inTurn ?? 0, perPanel ?? 0);
    else if (perPanel === null) return null;
    else beside += perPanel;
  }
  const isOpen = slots.some(({ perPanel, sharing }) => sharing === 'inTurn' && perPanel !== null);
  return inTurn !== null && !isOpen ? null : beside + (inTurn ?? 0);
}

/**
 * Rows of a part of which one says "in turn" and none "split" are all used in turn, in the order of the sheet; each takes the whole
 * usage while it feeds, so a row that states none takes the others' figure, and one that states another is an error.
 */
export function resolveSharing(
  slots: readonly SheetSlot[],
  at: { readonly column: string | null; readonly sink: ProblemSink },
): readonly SheetSlot[] {
  const byPart = new Map<string, SheetSlot[]>();
  for (const slot of slots) {
    const key = slot.part.toUpperCase();
    byPart.set(key, [...(byPart.get(key) ?? []), slot]);
  }
  const byRow = new Map<number, SheetSlot>();
  for (const group of byPart.values()) {
    if (!group.some(({ sharing }) => sharing === 'inTurn')) continue;
    const isMixed = group.some(({ sharing }) => sharing === 'split');
    const turns = isMixed ? group.filter(({ sharing }) => sharing === 'inTurn') : group;
    const wanted = turns.find(({ perPanel }) => perPanel !== null)?.perPanel ?? null;
    for (const slot of turns) {
      const { row, part, perPanel } = slot;
      if (perPanel !== null && perPanel !== wanted)
        at.sink.add(
          'turnUsageDiffers',
          { row, column: at.column },
          { part, wanted: wanted ?? 0, found: perPanel },
        );
      byRow.set(row, { ...slot, sharing: 'inTurn', perPanel: perPanel ?? wanted });
    }
  }
  return byRow.size === 0 ? slots : slots.map((slot) => byRow.get(slot.row) ?? slot);
}
