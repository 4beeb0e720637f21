// A slot's address is `machine-bank-number`, e.g. `M1-F-014`: where to walk to. Order: machine, front before rear, number.

import { compareText } from '../log/order.ts';

/** A slot's address taken apart; `position` counts 8 mm steps from 1. */
export interface SlotAddress {
  readonly machine: string;
  readonly bank: string;
  readonly position: number;
}

/** Reads `M1-F-014`; null where the text is no such address. */
export function parseSlot(text: string): SlotAddress | null {
  const found = /^([^\s-]+)-([A-Za-z]{1,4})-(\d{1,4})$/.exec(text);
  if (!found?.[1] || !found[2] || !found[3]) return null;
  return { machine: found[1], bank: found[2].toUpperCase(), position: Number(found[3]) };
}

/** Writes an address as the floor does: number with three digits. */
export function formatSlot(address: SlotAddress): string {
  return `${address.machine}-${address.bank}-${String(address.position).padStart(3, '0')}`;
}

/** Walking order: by machine (numbers within names by value), then bank, then position; other texts last. */
export function compareSlots(a: string, b: string): number {
  const one = parseSlot(a);
  const two = parseSlot(b);
  if (!one || !two) return one ? -1 : two ? 1 : compareText(a, b);
  return (
    compareNatural(one.machine, two.machine) ||
    compareText(one.bank, two.bank) ||
    one.position - two.position ||
    compareText(a, b)
  );
}

/** Order of names with numbers in them, as people walk past them: `R2` before `R10`. */
export function compareNatural(a: string, b: string): number {
  const piecesA = a.match(/\d+|\D+/g) ?? [];
  const piecesB = b.match(/\d+|\D+/g) ?? [];
  for (let i = 0; i < Math.min(piecesA.length, piecesB.length); i++) {
    const one = piecesA[i] as string; // within both lengths
    const two = piecesB[i] as string;
    const byNumber = /^\d/.test(one) && /^\d/.test(two) ? Number(one) - Number(two) : 0;
    const order = byNumber || compareText(one, two);
    if (order !== 0) return order;
  }
  return piecesA.length - piecesB.length;
}
