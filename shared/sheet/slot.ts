// The row types of a setup sheet: one slot, an ignored row, and how the address of a slot is put together from its columns.

import type { Side } from '../floor/vocabulary.ts';
import type { LabelMsl } from '../labels/reading.ts';
import {
  formatSheetAddress,
  parseBank,
  parseMachine,
  parseSheetAddress,
  type SheetAddress,
} from './cells.ts';

/** How slots of one part share its placements: side by side, each its own; or in turn, the first that has parts taking all. */
export const sheetSharings = ['split', 'inTurn'] as const;

/** One of the two. */
export type SheetSharing = (typeof sheetSharings)[number];

/** What one row of a setup sheet wants on one slot. Null = the sheet does not say. */
export interface SheetSlot {
  /** The row as a spreadsheet numbers it, 1 = first. */
  readonly row: number;
  /** `machine-bank-number` where the sheet gives that, else as written. */
  readonly slot: string;
  /** The address in its parts; null where the slot is not of that form. */
  readonly address: SheetAddress | null;
  /** The site's part number. */
  readonly part: string;
  /** Placements per panel from this slot, whole, >= 0. */
  readonly perPanel: number | null;
  /** Tape width in mm, of EIA-481's list. */
  readonly tapeWidth: number | null;
  /** Pocket pitch in mm, > 0. */
  readonly pitch: number | null;
  /** Whether slots of the same part share the load or are used one after the other, in the order of their rows. */
  readonly sharing: SheetSharing | null;
  /** The site's part numbers that may stand in for `part`. */
  readonly alternates: readonly string[];
  /** Makers' numbers approved for `part`. */
  readonly supplierParts: readonly string[];
  readonly description: string | null;
  readonly package: string | null;
  /** Body thickness in mm, > 0 (for the floor life's package class). */
  readonly bodyThicknessMm: number | null;
  readonly msl: LabelMsl | null;
  /** A sentence about polarity or pin 1. */
  readonly polarity: string | null;
  /** Whether the site marks the part as critical. */
  readonly critical: boolean;
  /** Feeder positions (8 mm steps) as the sheet states them, whole, >= 1. */
  readonly positions: number | null;
  readonly side: Side | null;
  readonly designators: readonly string[];
  readonly note: string | null;
}

/** Why a row is not taken as a slot although it holds something. */
export const ignoredReasons = ['notFitted', 'emptySlot', 'comment', 'total', 'headerAgain'] as const;

/** One reason. */
export type IgnoredReason = (typeof ignoredReasons)[number];

/** A row that was left out, and why. */
export interface IgnoredRow {
  readonly row: number;
  readonly reason: IgnoredReason;
}

/**
 * Puts an address together: what the slot text states itself comes first, the machine and bank columns fill what it leaves out. An address
 * of machine, bank and number is written as `M1-F-014`; one that lacks a part and gained none stays as written, since that is what
 * the slot's own label says. `address` is null where the text is of no known form.
 */
export function joinSlotAddress(
  slotText: string,
  columns: { readonly machine: string; readonly bank: string },
): { readonly slot: string; readonly address: SheetAddress | null } {
  const stated = parseSheetAddress(slotText);
  if (stated === null) return { slot: slotText, address: null };
  const machine = stated.machine ?? parseMachine(columns.machine);
  const bank = stated.bank ?? parseBank(columns.bank);
  const address: SheetAddress = { ...stated, machine, bank };
  const partial = machine === null || bank === null;
  const gained = machine !== stated.machine || bank !== stated.bank;
  return { slot: partial && !gained ? slotText : formatSheetAddress(address), address };
}

/** What tells two slots of a sheet apart, however their addresses are written. */
export function slotKey(slot: Pick<SheetSlot, 'slot' | 'address'>): string {
  return slot.address === null ? slot.slot.toUpperCase() : formatSheetAddress(slot.address);
}
