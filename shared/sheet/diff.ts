// What did a new revision of a setup sheet change against the old one?
// Method: slots by address; fields compared one by one, lists without regard to order. The row numbers do not count.

import { type SheetSlot, sheetSlotKey } from './slot.ts';

/** The fields that a revision may change on a slot. */
export const slotChangeFields = [
  'part',
  'perPanel',
  'tapeWidth',
  'pitch',
  'sharing',
  'alternates',
  'supplierParts',
  'description',
  'package',
  'pins',
  'bodySizeMm',
  'bodyThicknessMm',
  'msl',
  'polarity',
  'feederType',
  'drive',
  'pocketMm',
  'critical',
  'positions',
  'side',
  'designators',
  'note',
] as const satisfies readonly (keyof SheetSlot)[];

/** One field that may change. */
export type SlotChangeField = (typeof slotChangeFields)[number];

/** One changed field with its value before and after. */
export interface FieldChange {
  readonly field: SlotChangeField;
  readonly before: SheetSlot[SlotChangeField];
  readonly after: SheetSlot[SlotChangeField];
}

/** A slot that stands in both revisions with different entries. */
export interface SlotChange {
  readonly slot: string;
  readonly before: SheetSlot;
  readonly after: SheetSlot;
  readonly fields: readonly FieldChange[];
}

/** What changed between two revisions; slots in the order of the sheet they stand in. */
export interface SheetDiff {
  readonly added: readonly SheetSlot[];
  readonly removed: readonly SheetSlot[];
  readonly changed: readonly SlotChange[];
  /** How many slots are the same in both. */
  readonly same: number;
}

function isSame(before: FieldChange['before'], after: FieldChange['after']): boolean {
  if (!Array.isArray(before) || !Array.isArray(after)) return before === after;
  const wanted = new Set(before);
  return before.length === after.length && after.every((entry) => wanted.has(entry));
}

/** Compares two revisions slot by slot. Linear in the slots. */
export function diffSheets(before: readonly SheetSlot[], after: readonly SheetSlot[]): SheetDiff {
  const oldBySlot = new Map(before.map((slot) => [sheetSlotKey(slot), slot]));
  const newSlots = new Set(after.map(sheetSlotKey));
  const changed: SlotChange[] = [];
  const added: SheetSlot[] = [];
  let same = 0;
  for (const slot of after) {
    const old = oldBySlot.get(sheetSlotKey(slot));
    if (old === undefined) {
      added.push(slot);
      continue;
    }
    const fields = slotChangeFields
      .filter((field) => !isSame(old[field], slot[field]))
      .map((field) => ({ field, before: old[field], after: slot[field] }));
    if (fields.length === 0) same++;
    else changed.push({ slot: slot.slot, before: old, after: slot, fields });
  }
  return { added, removed: before.filter((slot) => !newSlots.has(sheetSlotKey(slot))), changed, same };
}
