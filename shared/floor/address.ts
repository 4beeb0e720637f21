// Where is a slot? Its address is the plant's own text, kept and shown as written; inside it has a machine, a bank, a position and
// a lane, as far as the text says them. The one door to that question: sheet, map, walk, verdict and changeover ask here.
// Method: the text is cut at - / . _ : and blanks, or where letters and digits meet (`M1F14`, `F1`, `2A`); the last number is the
// position in 8 mm steps, a letter or a digit behind it the lane of a feeder with several, the word before it the bank, the
// rest the machine. A text without such a number is a place of its own: it has no neighbours and comes last on the walk.
// Refused: a form that every plant must follow, since the text is printed on the slots already.

import { compareText } from '../log/order.ts';

/** A slot's address taken apart; null = the text does not say it. */
export interface SlotAddress {
  /** As written, without blanks around it. */
  readonly slot: string;
  /** In capitals. */
  readonly machine: string | null;
  /** In capitals; front and rear in any of the sheet's languages are F and R. */
  readonly bank: string | null;
  /** Counts 8 mm steps from 1; null = a place of its own. */
  readonly position: number | null;
  /** The lane of a feeder with several, a capital letter or a number. */
  readonly lane: string | null;
}

const frontWords = /^(?:f|front|v|vorn|vorne|vorderseite|delantero|delantera|frontal|avant|av)$/i;
const rearWords = /^(?:r|rear|back|h|hinten|rückseite|trasero|trasera|posterior|arrière|arriere|ar)$/i;
const separators = /[-/._:\s]+/;
const ending = /^(\d{1,6})(?:([A-Za-z])|[-./](\d{1,2}))?$/;
const joinedForm = /^(?:([A-Za-z]+\d+))?([A-Za-z]+)(\d+)$/;

/** A bank by its name: front and rear words become F and R, anything else stands in capitals. */
export function bankOf(text: string): string {
  if (frontWords.test(text)) return 'F';
  return rearWords.test(text) ? 'R' : text.toUpperCase();
}

// Lists of slots are sorted again and again: what was taken apart once is remembered, as long as there is not too much of it.
const remembered = new Map<string, SlotAddress>();
const MOST_REMEMBERED = 10_000;

/** Takes a slot's text apart. Never fails: a text of no known form is a place of its own. */
export function parseSlot(text: string): SlotAddress {
  const known = remembered.get(text);
  if (known) return known;
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  const address = takeApart(text.trim());
  remembered.set(text, address);
  return address;
}

function takeApart(slot: string): SlotAddress {
  const words = slot.split(separators);
  const found = words.includes('') || words.length > 8 ? null : addressOf(slot, words);
  return { slot, machine: null, bank: null, position: null, lane: null, ...found };
}

function addressOf(slot: string, words: readonly string[]): Omit<SlotAddress, 'slot'> | null {
  const last = words.at(-1) ?? '';
  if (words.length === 1) {
    const joined = joinedForm.exec(slot);
    if (!joined?.[2] || !joined[3]) return endOf(last, null, null);
    return endOf(joined[3], joined[1] ?? null, joined[2]);
  }
  if (words.length === 2) {
    const first = words[0] ?? '';
    const isBank = frontWords.test(first) || rearWords.test(first);
    return isBank ? endOf(last, null, first) : endOf(last, first, null);
  }
  const hasLane = words.length > 3 && isLaneBehind(words.slice(-3));
  const end = hasLane ? `${words.at(-2)}-${last}` : last;
  const before = words.slice(0, hasLane ? -2 : -1);
  return endOf(end, before.slice(0, -1).join('-'), before.at(-1) ?? null);
}

/**
 * A digit behind a number is a lane where that number is surely a position: behind a bank's letters (`M1-F-7-2`), or of three digits
 * (`M1-B1-014-2`). Else the number before is a bank, and the last one counts its positions: `L1-M2-1-14`.
 */
function isLaneBehind([bank = '', position = '', lane = '']: readonly string[]): boolean {
  return /^[1-9]$/.test(lane) && /^\d+$/.test(position) && (!/\d/.test(bank) || position.length > 2);
}

/** The position and lane that a text ends with, with what stands before it; null where it ends with none. */
function endOf(text: string, machine: string | null, bank: string | null): Omit<SlotAddress, 'slot'> | null {
  const found = ending.exec(text);
  const position = Number(found?.[1]);
  if (!found || position < 1) return null;
  return {
    machine: machine?.toUpperCase() ?? null,
    bank: bank === null ? null : bankOf(bank),
    position,
    lane: found[2]?.toUpperCase() ?? found[3] ?? null,
  };
}

/** Writes an address the usual way, leaving out what is not stated: `M1-F-014`, `014A`, `M1-F-014-2`. */
export function formatSlot(address: {
  readonly machine: string | null;
  readonly bank: string | null;
  readonly position: number;
  readonly lane?: string | null;
}): string {
  const { machine, bank, position, lane = null } = address;
  const joint = lane !== null && /^\d/.test(lane) ? '-' : '';
  const number = `${String(position).padStart(3, '0')}${joint}${lane ?? ''}`;
  return [machine, bank, number].filter((part) => part !== null).join('-');
}

/** True where a text says machine, bank and position: what is surely meant as a slot, even where no list knows it. */
export function isFullAddress(text: string): boolean {
  const { machine, bank, position } = parseSlot(text);
  // A label's text may end in a number too: its other signs stand on no slot.
  const isWord = (name: string | null) => name !== null && /^[\p{L}\p{N}-]+$/u.test(name);
  return isWord(machine) && isWord(bank) && position !== null;
}

/** What names a bank of a line in keys and tables: `M1-F`; a machine or bank that is not stated is left empty. */
export function bankKey({ machine, bank }: Pick<SlotAddress, 'machine' | 'bank'>): string {
  return `${machine ?? ''}-${bank ?? ''}`;
}

/** One text for each place, however its address is written: `M1-F-14` and `m1/front/014` have the same. */
export function placeKey(slot: string): string {
  const address = parseSlot(slot);
  if (address.position === null) return `${address.slot.toUpperCase()}#`;
  return `${bankKey(address)}#${address.position}${address.lane === null ? '' : `/${address.lane}`}`;
}

/** True where both texts name the same place. */
export function isSameSlot(a: string, b: string): boolean {
  return a === b || placeKey(a) === placeKey(b);
}

/**
 * Keys of the positions that a feeder of `width` (whole, >= 1) on a slot takes; equal keys mean the same position. Lanes of one
 * feeder stand on one position side by side: each is a key of its own. A place of its own takes itself, whatever the width.
 */
export function positionsOf(slot: string, width: number): string[] {
  return parseSlot(slot).lane === null ? positionsUnder(slot, width) : [placeKey(slot)];
}

/** Keys of the positions that the feeder on a slot takes as a whole, whichever of its lanes the slot is: what another feeder must leave free. */
export function positionsUnder(slot: string, width: number): string[] {
  const address = parseSlot(slot);
  const { position } = address;
  if (position === null) return [placeKey(slot)];
  const row = bankKey(address);
  return Array.from({ length: width }, (_, step) => `${row}#${position + step}`);
}

/** True where two texts name different lanes of one position: one feeder may feed both. */
export function isLaneBeside(a: string, b: string): boolean {
  const [one, other] = [parseSlot(a), parseSlot(b)];
  return (
    one.position !== null &&
    one.position === other.position &&
    bankKey(one) === bankKey(other) &&
    one.lane !== null &&
    other.lane !== null &&
    one.lane !== other.lane
  );
}

/**
 * Whether a feeder of `width` (whole, >= 1) on a slot takes a position that what is wanted needs; lanes of one feeder stand beside each other, on the
 * same positions.
 */
export function placesTaken(
  wanted: readonly { readonly slot: string; readonly width: number }[],
): (slot: string, width: number) => boolean {
  const needed = new Map<string, string[]>();
  for (const { slot, width } of wanted)
    for (const position of positionsUnder(slot, width))
      needed.set(position, [...(needed.get(position) ?? []), slot]);
  return (slot, width) =>
    positionsUnder(slot, width).some((position) =>
      needed.get(position)?.some((other) => !isLaneBeside(other, slot)),
    );
}

/** One text for the feeder on a slot, whichever of its lanes the slot is. */
export function feederKey(slot: string): string {
  return positionsUnder(slot, 1)[0] ?? placeKey(slot);
}

/** True where the slot is a lane of a feeder that may have others. */
export function isLane(slot: string): boolean {
  return parseSlot(slot).lane !== null;
}

/** The same lane of another feeder: `A` of one and `A` of the next. */
export function isSameLane(a: string, b: string): boolean {
  return parseSlot(a).lane === parseSlot(b).lane;
}

/** A stretch of a name: a number with its value, or what stands between numbers (`value` null). */
export interface NamePiece {
  readonly text: string;
  readonly value: number | null;
}

/** A name cut into numbers and what stands between them, for `comparePieces`: cut once where many names are put in order. */
export function namePieces(name: string): readonly NamePiece[] {
  return (name.match(/\d+|\D+/g) ?? []).map((text) => ({
    text,
    value: /^\d/.test(text) ? Number(text) : null,
  }));
}

/** Order of two names by their pieces: numbers by value, all else as text. */
export function comparePieces(a: readonly NamePiece[], b: readonly NamePiece[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const one = a[i] as NamePiece; // within both lengths
    const two = b[i] as NamePiece;
    const byNumber = one.value !== null && two.value !== null ? one.value - two.value : 0;
    const order = byNumber || compareText(one.text, two.text);
    if (order !== 0) return order;
  }
  return a.length - b.length;
}

/** Order of names with numbers in them, as people walk past them: `R2` before `R10`. */
export function compareNatural(a: string, b: string): number {
  return a === b ? 0 : comparePieces(namePieces(a), namePieces(b));
}

/** The one walking order: machine, bank, position, lane; numbers within names by value; places of their own last. */
export function compareSlots(a: string, b: string): number {
  const one = parseSlot(a);
  const two = parseSlot(b);
  if (one.position === null || two.position === null) {
    if (one.position !== two.position) return one.position === null ? 1 : -1;
    return compareNatural(a, b) || compareText(a, b);
  }
  return (
    compareNatural(one.machine ?? '', two.machine ?? '') ||
    compareNatural(one.bank ?? '', two.bank ?? '') ||
    one.position - two.position ||
    compareNatural(one.lane ?? '', two.lane ?? '') ||
    compareText(a, b)
  );
}

/** A new list in walking order. Equal slots keep their order. */
export function sortByWalk<T>(items: readonly T[], slotOf: (item: T) => string): T[] {
  return [...items].sort((a, b) => compareSlots(slotOf(a), slotOf(b)));
}
