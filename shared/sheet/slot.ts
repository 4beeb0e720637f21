// The row types of a setup sheet: one slot, an ignored row, and how the address of a slot is put together from its columns.

import { formatSlot, parseSlot, placeKey, type SlotAddress } from '../floor/address.ts';
import type { PackageKind, Side } from '../floor/vocabulary.ts';
import type { LabelMsl } from '../labels/reading.ts';
import { parseBank, parseMachine } from './cells.ts';

/** How slots of one part share its placements: side by side, each its own; or in turn, the first that has parts taking all. */
export const sheetSharings = ['split', 'inTurn'] as const;

/** One of the two. */
export type SheetSharing = (typeof sheetSharings)[number];

/** What one row of a setup sheet wants on one slot. Null = the sheet does not say. */
export interface SheetSlot {
  /** The row as a spreadsheet numbers it, 1 = first. */
  readonly row: number;
  /** As written; put together as `machine-bank-number` only where columns of their own fill in what the slot's text leaves out. */
  readonly slot: string;
  /** The address in its parts. */
  readonly address: SlotAddress;
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
  /** Leads or balls, whole, >= 1. */
  readonly pins: number | null;
  /** Body length and width in mm, each > 0. */
  readonly bodySizeMm: readonly [number, number] | null;
  /** Body thickness in mm, > 0 (for the floor life's package class). */
  readonly bodyThicknessMm: number | null;
  readonly msl: LabelMsl | null;
  /** A sentence about polarity or pin 1. */
  readonly polarity: string | null;
  /** What the feeder must be: its type, its drive, and the depth of the tape's pockets in mm, > 0. */
  readonly feederType: string | null;
  readonly drive: string | null;
  readonly pocketMm: number | null;
  /** What the parts come in, where the sheet says that it is no tape. */
  readonly comesIn?: PackageKind;
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
 * Puts a slot's text together: what the slot's own column says stays as written, since that is what the slot's label says; machine and
 * bank columns fill in what it leaves out, and only then is it written anew, as `M1-F-014`.
 */
export function joinSlotAddress(
  slotText: string,
  columns: { readonly machine: string; readonly bank: string },
): { readonly slot: string; readonly address: SlotAddress } {
  const stated = parseSlot(slotText);
  const { position } = stated;
  if (position === null) return { slot: slotText, address: stated };
  const machine = stated.machine ?? parseMachine(columns.machine);
  const bank = stated.bank ?? parseBank(columns.bank);
  if (machine === stated.machine && bank === stated.bank) return { slot: slotText, address: stated };
  const slot = formatSlot({ ...stated, position, machine, bank });
  return { slot, address: parseSlot(slot) };
}

/** What tells two slots of a sheet apart, however their addresses are written. */
export function sheetSlotKey({ slot }: Pick<SheetSlot, 'slot'>): string {
  return placeKey(slot);
}
