// Where on the line is a slot, which positions does a feeder on it take, and in which order does one walk past slots?
// Method: an address `machine-bank-number` names one 8 mm position; a feeder of width w on number n takes n … n + w - 1 of
// the same bank. An address of any other form is a place of its own, whatever the feeder's width, with no neighbours.
// Refused: guessing a number out of other addresses; two free-form names must not end up as neighbours.

/** An address taken apart. */
export interface SlotPlace {
  /** The address as written. */
  readonly slot: string;
  /** Machine and bank, or the whole address where it has another form. */
  readonly row: string;
  readonly machine: string;
  readonly bank: string;
  /** Position in the bank; null where the address has another form. */
  readonly number: number | null;
}

const addressForm = /^(.+)-([^-]+)-(\d{1,9})$/;

/** Takes an address apart. Never fails: an address of another form is a place of its own. */
export function parseSlot(slot: string): SlotPlace {
  const found = addressForm.exec(slot);
  const machine = found?.[1];
  const bank = found?.[2];
  const digits = found?.[3];
  if (machine === undefined || bank === undefined || digits === undefined) {
    return { slot, row: slot, machine: slot, bank: '', number: null };
  }
  return { slot, row: `${machine}-${bank}`, machine, bank, number: Number(digits) };
}

/** Keys of the positions that a feeder of `width` (whole, >= 1) on `slot` takes; equal keys mean the same position. */
export function positionsOf(slot: string, width: number): string[] {
  const place = parseSlot(slot);
  const number = place.number;
  if (number === null) return [`${slot}#`];
  return Array.from({ length: width }, (_, at) => `${place.row}#${number + at}`);
}

/** True where both addresses name the same position, however the number is padded. */
export function isSameSlot(x: string, y: string): boolean {
  const a = parseSlot(x);
  const b = parseSlot(y);
  return a.row === b.row && a.number === b.number;
}

/** Compares words the way people number machines: M2 before M10. */
function compareWords(x: string, y: string): number {
  const xs = x.split(/(\d+)/);
  const ys = y.split(/(\d+)/);
  for (let at = 0; at < Math.min(xs.length, ys.length); at++) {
    const a = xs[at] ?? '';
    const b = ys[at] ?? '';
    if (a === b) continue;
    if (at % 2 === 1 && Number(a) !== Number(b)) return Number(a) - Number(b);
    if (a !== b) return a < b ? -1 : 1;
  }
  return xs.length - ys.length;
}

/** Order in which one walks past slots: machine, bank, number. For `sort`; `sortByWalk` is faster on long lists. */
export function walkOrder(x: string, y: string): number {
  return comparePlaces(parseSlot(x), parseSlot(y));
}

function comparePlaces(a: SlotPlace, b: SlotPlace): number {
  if (a.row === b.row) {
    return (a.number ?? -1) - (b.number ?? -1) || (a.slot < b.slot ? -1 : a.slot > b.slot ? 1 : 0);
  }
  return compareWords(a.machine, b.machine) || compareWords(a.bank, b.bank) || (a.row < b.row ? -1 : 1);
}

/** A new list in walking order; each address is taken apart once. Equal slots keep their order. */
export function sortByWalk<T>(items: readonly T[], slotOf: (item: T) => string): T[] {
  const placed = items.map((item) => ({ item, place: parseSlot(slotOf(item)) }));
  placed.sort((x, y) => comparePlaces(x.place, y.place));
  return placed.map(({ item }) => item);
}
