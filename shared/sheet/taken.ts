// From the slots of a sheet without errors to the slots of a setup, as the log takes them in; and back, so that a new sheet can be
// compared with a setup that was taken in before.

import { parseSlot } from '../floor/address.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import { labelMsls } from '../labels/reading.ts';
import type { SheetSlot } from './slot.ts';
import { type PositionsByWidth, positionsForWidth } from './tapes.ts';

/**
 * Turns sheet slots into setup slots. `perPanel` that neither sheet nor placement file states becomes 0: the slot is verified but no
 * run-out is forecast, which a warning has said. Positions: as stated, else by the tape's width, else 1.
 */
export function toSetupSlots(
  slots: readonly SheetSlot[],
  positionsByWidth: PositionsByWidth = {},
): readonly SetupSlot[] {
  const turns = new Map<string, number>();
  return slots.map((slot) => {
    const part = slot.part.toUpperCase();
    const turn = slot.sharing === 'inTurn' ? (turns.get(part) ?? 0) + 1 : null;
    if (turn !== null) turns.set(part, turn);
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
      ...(turn === null ? {} : { turn }),
      ...(slot.note === null ? {} : { note: slot.note }),
      ...(slot.polarity === null ? {} : { polarity: slot.polarity }),
      ...(slot.feederType === null ? {} : { feederType: slot.feederType }),
      ...(slot.drive === null ? {} : { drive: slot.drive }),
      ...(slot.pocketMm === null ? {} : { pocketMm: slot.pocketMm }),
      ...(slot.comesIn === undefined ? {} : { comesIn: slot.comesIn }),
      ...(slot.bodyThicknessMm === null ? {} : { bodyMm: slot.bodyThicknessMm }),
      ...(slot.msl === null ? {} : { msl: slot.msl }),
    };
  });
}

/**
 * Slots of a setup as a sheet would give them, for `diffSheets`. What a setup does not keep (description, package, side, designators) is
 * empty: compare two setups turned back, never one of them with a sheet as it was read.
 */
export function fromSetupSlots(slots: readonly SetupSlot[]): readonly SheetSlot[] {
  return slots.map((slot, index) => ({
    row: index + 1,
    slot: slot.slot,
    address: parseSlot(slot.slot),
    part: slot.part,
    perPanel: slot.perPanel,
    tapeWidth: slot.tapeWidthMm,
    pitch: slot.pitchMm,
    sharing: slot.turn === undefined ? null : 'inTurn',
    alternates: slot.alternates,
    supplierParts: slot.supplierParts,
    description: null,
    package: null,
    pins: null,
    bodySizeMm: null,
    bodyThicknessMm: slot.bodyMm ?? null,
    msl: labelMsls.find((level) => level === slot.msl) ?? null,
    polarity: slot.polarity ?? null,
    feederType: slot.feederType ?? null,
    drive: slot.drive ?? null,
    pocketMm: slot.pocketMm ?? null,
    ...(slot.comesIn === undefined ? {} : { comesIn: slot.comesIn }),
    critical: slot.critical ?? false,
    positions: slot.positions,
    side: null,
    designators: [],
    note: slot.note ?? null,
  }));
}
