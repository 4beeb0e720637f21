// What does not add up between the rows of a setup sheet?
// Method: slots by address; along each bank a feeder takes its slot's position and the following ones (`grows` turns that round).
// A stated number of positions is taken at its word, so a clash is an error. Positions derived from the tape width are
// machine-dependent, so a clash is a warning, unless the tape would not fit even with positions twice the trade's 8 mm apart.

import { bankKey } from '../floor/address.ts';
import { type SheetField, sheetFieldNames } from './fields.ts';
import type { ProblemSink } from './problems.ts';
import { type SheetSlot, sheetSlotKey } from './slot.ts';
import { type PositionsByWidth, positionsForWidth } from './tapes.ts';

/** What the checks between rows need to know of the site. */
export interface SheetCheckOptions {
  /** Feeder positions by tape width, where the site's machines differ from common practice. */
  readonly positionsByWidth?: PositionsByWidth;
  /** Which way a wide feeder reaches from its slot's number: to higher numbers (default) or to lower ones. */
  readonly grows?: 'up' | 'down';
  /** Supplier parts that the site has approved by hand, by part: they stand in for a list, and never become part of the product's own. */
  readonly approved?: ReadonlyMap<string, readonly string[]>;
}

/** Where the checks find a field's header, and where their problems go. */
export interface SheetContext {
  readonly headerOf: (field: SheetField) => string | null;
  readonly sink: ProblemSink;
}

const coarsestStepMm = 16;

function checkTwice(slots: readonly SheetSlot[], { headerOf, sink }: SheetContext) {
  const firstBySlot = new Map<string, SheetSlot>();
  const kept: SheetSlot[] = [];
  const column = headerOf('slot') ?? headerOf('number');
  for (const slot of slots) {
    const first = firstBySlot.get(sheetSlotKey(slot));
    if (first === undefined) {
      firstBySlot.set(sheetSlotKey(slot), slot);
      kept.push(slot);
    } else {
      const facts = { slot: slot.slot, first: first.row, part: first.part };
      sink.add('slotTwice', { row: slot.row, column }, facts);
    }
  }
  return kept;
}

function banksOf(slots: readonly SheetSlot[]): readonly SheetSlot[][] {
  const slotsByBank = new Map<string, SheetSlot[]>();
  for (const slot of slots) {
    if (slot.address.position === null) continue;
    const key = bankKey(slot.address);
    const bank = slotsByBank.get(key);
    if (bank) bank.push(slot);
    else slotsByBank.set(key, [slot]);
  }
  return [...slotsByBank.values()];
}

function checkRoom(
  slots: readonly SheetSlot[],
  { headerOf, sink }: SheetContext,
  options: SheetCheckOptions,
) {
  const turn = options.grows === 'down' ? -1 : 1;
  const position = (slot: SheetSlot) => (slot.address.position ?? 0) * turn;
  for (const bank of banksOf(slots)) {
    bank.sort((a, b) => position(a) - position(b));
    for (const [index, slot] of bank.entries()) {
      // Lanes of one feeder share a position; the next feeder is the next different one.
      const next = bank.slice(index + 1, index + 9).find((other) => position(other) !== position(slot));
      const derived =
        slot.tapeWidth === null ? null : positionsForWidth(slot.tapeWidth, options.positionsByWidth);
      const wanted = slot.positions ?? derived;
      if (next === undefined || wanted === null) continue;
      const found = position(next) - position(slot);
      if (found >= wanted) continue;
      const stated = slot.positions !== null;
      const hopeless = slot.tapeWidth !== null && slot.tapeWidth > found * coarsestStepMm;
      const facts = {
        slot: slot.slot,
        wanted,
        next: next.slot,
        nextRow: next.row,
        found,
        width: slot.tapeWidth ?? 0,
      };
      const column = headerOf(stated ? 'positions' : 'tapeWidth');
      sink.add(stated || hopeless ? 'noRoom' : 'littleRoom', { row: slot.row, column }, facts);
    }
  }
}

/** One part has one list of approved supplier parts, one tape width and one pitch, on however many slots it stands. */
function checkParts(
  slots: readonly SheetSlot[],
  { headerOf, sink }: SheetContext,
  approved: SheetCheckOptions['approved'],
) {
  const supplierPartsByPart = new Map<string, Set<string>>();
  const firstByPart = new Map<string, SheetSlot>();
  for (const slot of slots) {
    const known = supplierPartsByPart.get(slot.part) ?? new Set<string>();
    for (const entry of slot.supplierParts) known.add(entry);
    supplierPartsByPart.set(slot.part, known);
    const first = firstByPart.get(slot.part) ?? slot;
    firstByPart.set(slot.part, first);
    for (const field of ['tapeWidth', 'pitch'] as const) {
      const [found, wanted] = [slot[field], first[field]];
      if (found === null || wanted === null || found === wanted) continue;
      const facts = { part: slot.part, field: sheetFieldNames[field], found, wanted, first: first.row };
      sink.add('partDiffers', { row: slot.row, column: headerOf(field) }, facts);
    }
  }
  const joined = slots.map((slot) => ({
    ...slot,
    supplierParts: [...(supplierPartsByPart.get(slot.part) ?? [])],
  }));
  const listed = headerOf('supplierParts') !== null || approved !== undefined;
  for (const slot of listed ? joined : []) {
    if (slot.supplierParts.length > 0 || approved?.has(slot.part)) continue;
    if (firstByPart.get(slot.part)?.row !== slot.row) continue;
    const column = headerOf('supplierParts');
    sink.add('noApprovedReels', { row: slot.row, column }, { part: slot.part });
  }
  return joined;
}

/**
 * Checks slots against each other: a slot given twice, a feeder wider than its neighbours leave room for, a part with different
 * tapes, and, where the sheet or the site lists supplier parts at all, a part without one; problems go to the sink.
 * Gives the slots, each slot once, with the supplier parts of their part joined.
 */
export function checkSheetSlots(
  slots: readonly SheetSlot[],
  context: SheetContext,
  options: SheetCheckOptions = {},
): readonly SheetSlot[] {
  const once = checkTwice(slots, context);
  const joined = checkParts(once, context, options.approved);
  checkRoom(joined, context, options);
  return joined;
}
