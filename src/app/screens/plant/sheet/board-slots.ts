// From a board's rows to the slots of a setup: what is written down, and what is only a guess and is not.

import { parseSlot } from '../../../../../shared/floor/address.ts';
import type { Side } from '../../../../../shared/floor/vocabulary.ts';
import { labelMsls } from '../../../../../shared/labels/reading.ts';
import type { SheetSlot } from '../../../../../shared/sheet/slot.ts';
import { byWalk, type SlotRow } from './board-model.ts';

/**
 * The rows as slots of a setup. What the plant knows of a part comes along from the newest setup that names it: tape, feeder, moisture level. A usual
 * width of a package gives room and is not written down: nobody looked at the reel.
 */
export function boardSlots(rows: readonly SlotRow[], side: Side): readonly SheetSlot[] {
  return byWalk(rows).placed.map((row, index) => {
    const { known, board, widthFrom } = row;
    return {
      row: index + 1,
      slot: row.slot,
      address: parseSlot(row.slot),
      part: row.part,
      perPanel: row.perPanel,
      tapeWidth: widthFrom === 'usual' ? null : row.widthMm,
      pitch: widthFrom === 'setup' ? (known?.pitchMm ?? null) : null,
      sharing: null,
      alternates: [],
      supplierParts: board.supplierParts,
      description: null,
      package: board.package === '' ? null : board.package,
      pins: null,
      bodySizeMm: null,
      bodyThicknessMm: known?.bodyMm ?? null,
      msl: labelMsls.find((level) => level === known?.msl) ?? null,
      polarity: known?.polarity ?? null,
      feederType: known?.feederType ?? null,
      drive: known?.drive ?? null,
      pocketMm: known?.pocketMm ?? null,
      critical: known?.critical ?? false,
      positions: row.positions,
      side,
      designators: board.designators,
      note: null,
    };
  });
}
