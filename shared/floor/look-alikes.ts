// Which parts are easily taken for one another? Two whose numbers are one or two characters apart, or that have the same value in another size or
// with another tolerance.
// Method: numbers by the fewest characters put in, taken out, changed or exchanged with their neighbour; values by what the plant's list or the
// setup's note states, in the base unit. Numbers under six characters count with one difference only: two of five are no likeness.
// Refused: a list of characters that look alike in print; a hand takes C-1042 for C-1043 as well.

import { compareText } from '../log/order.ts';
import { expectedValues, valueUnits } from './part-value.ts';
import type { FloorState } from './state.ts';

/** What makes two parts look alike: their numbers, or the same value in another size or with another tolerance. */
export const likenesses = ['number', 'size', 'tolerance'] as const;
export type Likeness = (typeof likenesses)[number];

/** Two parts that are easily taken for one another. */
export interface LookAlike {
  readonly parts: readonly [string, string];
  /** At least one; `number` first. */
  readonly by: readonly Likeness[];
  /** Characters apart, where the numbers are alike; null where they are not. */
  readonly apart: number | null;
  /** The value that both have, as the first of them writes it; null where it is not that. */
  readonly value: string | null;
}

/** What is known of a part. */
export interface LookedAt {
  readonly part: string;
  readonly value: string | null;
  readonly tolerance: string | null;
  readonly package: string | null;
}

/** The longest number in which two characters are too much of it. */
const SHORT = 5;

/**
 * The fewest characters put in, taken out, changed or exchanged with their neighbour that make one text the other, whatever their case;
 * `most` + 1 where it takes more.
 */
export function charactersApart(one: string, other: string, most: number): number {
  const [a, b] = [one.toUpperCase(), other.toUpperCase()];
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let twoBefore: number[] = [];
  let before = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min((before[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (before[j - 1] ?? 0) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, (twoBefore[j - 2] ?? 0) + 1);
      row.push(cost);
      least = Math.min(least, cost);
    }
    // An exchange reaches back over one row: only two rows over the limit end it.
    if (least > most && Math.min(...before) > most) return most + 1;
    [twoBefore, before] = [before, row];
  }
  return Math.min(before[b.length] ?? 0, most + 1);
}

interface ReadPart extends LookedAt {
  /** In the base unit, with the unit's letter; null where no value, or more than one, is stated. */
  readonly nominal: { readonly si: number; readonly unit: string } | null;
  readonly percent: number | null;
  readonly size: string | null;
}

function read(part: LookedAt): ReadPart {
  const stated = expectedValues([part.value, part.tolerance].filter((text) => text !== null).join(' '));
  const distinct = new Map(
    stated.map(({ nominal, unit }) => {
      const si = nominal * valueUnits[unit];
      return [`${si.toPrecision(9)} ${unit.at(-1)}`, { si, unit: unit.at(-1) ?? '' }] as const;
    }),
  );
  const [only = null, ...more] = distinct.values();
  const percent = /(\d+(?:[.,]\d+)?)\s*%/.exec(part.tolerance ?? part.value ?? '')?.[1];
  const size = part.package?.toUpperCase().replace(/[\s_-]+/g, '') || null;
  return {
    ...part,
    nominal: part.value === null || more.length > 0 ? null : only,
    percent: percent === undefined ? (stated[0]?.plusPercent ?? null) : Number(percent.replace(',', '.')),
    size,
  };
}

function likeness(a: ReadPart, b: ReadPart): LookAlike | null {
  const most = Math.min(a.part.length, b.part.length) <= SHORT ? 1 : 2;
  const apart = charactersApart(a.part, b.part, most);
  const by: Likeness[] = [];
  if (apart <= most) by.push('number');
  const isSame =
    a.nominal !== null &&
    b.nominal !== null &&
    a.nominal.unit === b.nominal.unit &&
    Math.abs(a.nominal.si - b.nominal.si) <= 1e-9 * Math.abs(a.nominal.si);
  if (isSame && a.size !== null && b.size !== null && a.size !== b.size) by.push('size');
  if (isSame && a.percent !== null && b.percent !== null && a.percent !== b.percent) by.push('tolerance');
  if (by.length === 0) return null;
  return {
    parts: [a.part, b.part],
    by,
    apart: apart <= most ? apart : null,
    value: isSame ? a.value : null,
  };
}

/** Characters that look alike in the print of labels; common practice. */
const sameInPrint = ['0ODQ', '1IL', '2Z', '5S', '6G', '8B', 'UV'];

/** True for numbers of which one is easily read as the other: two neighbours exchanged, or one character that looks like the other's. */
export function isMisread(one: string, other: string): boolean {
  const [a, b] = [one.toUpperCase(), other.toUpperCase()];
  if (a.length !== b.length) return false;
  const differing = [...a].flatMap((character, at) => (character === b[at] ? [] : [at]));
  const [first = 0, second] = differing;
  const [left, right] = [a[first] ?? '', b[first] ?? ''];
  if (differing.length === 1)
    return sameInPrint.some((group) => group.includes(left) && group.includes(right));
  return differing.length === 2 && second === first + 1 && left === b[second] && right === a[second];
}

/**
 * Pairs that are easily taken for one another: those alike in number and value first, then numbers of which one is easily read as the other, the
 * closest numbers, and the same values. Cost: the square of the parts, so it is asked of a setup and not of a whole store.
 */
export function lookAlikes(parts: readonly LookedAt[]): readonly LookAlike[] {
  const known = parts.map(read).sort((a, b) => compareText(a.part, b.part));
  const pairs: { readonly pair: LookAlike; readonly rank: number }[] = [];
  for (const [at, one] of known.entries())
    for (const other of known.slice(at + 1)) {
      const pair = one.part === other.part ? null : likeness(one, other);
      if (pair === null) continue;
      const misread = pair.apart !== null && isMisread(one.part, other.part) ? 3 : 0;
      pairs.push({ pair, rank: (pair.apart ?? 3) - (pair.by.length > 1 ? 6 : 0) - misread });
    }
  return pairs
    .sort(
      (a, b) =>
        a.rank - b.rank ||
        compareText(a.pair.parts[0], b.pair.parts[0]) ||
        compareText(a.pair.parts[1], b.pair.parts[1]),
    )
    .map(({ pair }) => pair);
}

/** What is known of a part to look at: by the plant's list, and where that states no value by the note of a setup. */
export function lookedAt(state: FloorState, part: string, note?: string): LookedAt {
  const listed = state.listed.get(part);
  const own = { value: listed?.value ?? null, tolerance: listed?.tolerance ?? null };
  const noted = note !== undefined && expectedValues(note, { isNote: true }).length > 0 ? note : null;
  return { part, ...own, value: own.value ?? noted, package: listed?.package ?? null };
}

/** A pair of a setup, with the slots of each. */
export interface LookAlikeSlots extends LookAlike {
  readonly slots: readonly [readonly string[], readonly string[]];
}

/** Parts of a setup that are easily taken for one another, alternates too; slots of each. Empty where the setup is not known. */
export function lookAlikesOf(state: FloorState, setup: string): readonly LookAlikeSlots[] {
  const slotsOf = new Map<string, string[]>();
  const notes = new Map<string, string>();
  for (const { part, alternates, slot, note } of state.setups.get(setup)?.slots ?? []) {
    for (const each of [part, ...alternates]) {
      const there = slotsOf.get(each);
      if (there) there.push(slot);
      else slotsOf.set(each, [slot]);
    }
    if (note !== undefined) notes.set(part, note);
  }
  const parts = [...slotsOf.keys()].map((part) => lookedAt(state, part, notes.get(part)));
  const slots = (part: string) => slotsOf.get(part) ?? [];
  return lookAlikes(parts)
    .map((pair) => ({ ...pair, slots: [slots(pair.parts[0]), slots(pair.parts[1])] as const }))
    .filter(({ slots: [one, other] }) => !isSameSlots(one, other));
}

/** What `lookAlikesOf` rests on, thing by thing: the same things have the same answer, whatever else happened on the floor. Cost: the setup's parts. */
export function lookAlikeGrounds({ setups, listed }: FloorState, setup: string): readonly unknown[] {
  const slots = setups.get(setup)?.slots ?? [];
  return [
    slots,
    ...slots.flatMap(({ part, alternates }) => [part, ...alternates].map((each) => listed.get(each))),
  ];
}

/** A part and its own alternate on the same slots cannot be mixed up. */
function isSameSlots(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((slot) => other.includes(slot));
}

/** How two parts are alike, for a mix-up that has just been found; null where they are not. */
export function mixedUp(state: FloorState, wanted: string, found: string): LookAlike | null {
  const [pair = null] = lookAlikes([lookedAt(state, wanted), lookedAt(state, found)]);
  return pair;
}
