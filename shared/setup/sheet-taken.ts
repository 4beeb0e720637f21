// From the slots of a sheet without errors to the slots of a setup, as the log takes them in.

import type { SetupSlot } from './kinds.ts';
import type { SheetSlot } from './sheet-slot.ts';
import { type PositionsByWidth, positionsForWidth } from './sheet-tapes.ts';

/**
 * Turns sheet slots into setup slots. `perPanel` that neither sheet nor placement file states becomes 0: the slot is verified but no
 * run-out is forecast, which a warning has said. Positions: as stated, else by the tape's width, else 1.
 */
export function toSetupSlots(
  slots: readonly SheetSlot[],
  positionsByWidth: PositionsByWidth = {},
): readonly SetupSlot[] {
  return slots.map((slot) => {
    const derived = slot.tapeWidth === null ? null : positionsForWidth(slot.tapeWidth, positionsByWidth);
    return {
      slot: slot.slot,
      part: slot.part,
      perPanel: slot.perPanel ?? 0,
      tapeWidthMm: slot.tapeWidth,
      pitchMm: slot.pitch,
      positions: slot.positions ?? derived ?? 1,
      alternates: [...slot.alternates],
      supplierParts: [...slot.supplierParts],
      critical: slot.critical,
      ...(slot.note === null ? {} : { note: slot.note }),
      ...(slot.polarity === null ? {} : { polarity: slot.polarity }),
      ...(slot.bodyThicknessMm === null ? {} : { bodyMm: slot.bodyThicknessMm }),
      ...(slot.msl === null ? {} : { msl: slot.msl }),
    };
  });
}
