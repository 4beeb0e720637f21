// Can a set of stays stand on the line together, each on one place throughout?
// Method: a search over places, the stay with the fewest free places first, with a bit a position and a word a bank and job, so that the free
// places of a stay cost a few operations. Stays that are alike are put in one order only. Exact within its limit of steps.
// It is the packing of rectangles whose extent in time is given (dynamic storage allocation), hard in general and small here.

import type { AssignModel } from './problem.ts';

/** Most positions of a bank that fit a word. */
export const MOST_BITS = 30;

/** A stay without a place. */
export interface OpenStay {
  readonly feeder: number;
  readonly uses: readonly number[];
}

/** Places by block, `none` where they do not fit, `unknown` where the limit of steps was reached. */
export type Packing = readonly number[] | 'none' | 'unknown';

interface Item {
  readonly first: number;
  readonly last: number;
  readonly width: number;
  /** Positions by bank where it may begin, a bit each. */
  readonly may: readonly number[];
  /** Alike items that come before it in the list, the nearest; -1 = none. */
  readonly twin: number;
}

interface Search {
  readonly model: AssignModel;
  readonly items: readonly Item[];
  /** Taken positions by job and bank. */
  readonly taken: Int32Array;
  readonly bankOf: Int16Array;
  readonly atOf: Int16Array;
  stepsLeft: number;
}

function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
}

function itemsOf(model: AssignModel, blocks: readonly OpenStay[]): readonly Item[] {
  const lastByKey = new Map<string, number>();
  return blocks.map(({ feeder, uses }, index) => {
    const { width, loadedAt } = model.feeders[feeder]!; // a block names a feeder of its model
    const isLoaded = uses[0] === 0;
    const may = model.banks.map(({ from, positions }) => {
      if (!isLoaded) return positions < width ? 0 : (1 << (positions - width + 1)) - 1;
      let bits = 0;
      for (const at of loadedAt) if (at >= from && at < from + positions) bits |= 1 << (at - from);
      return bits;
    });
    const first = Math.max(1, uses[0] ?? 1);
    const last = uses.at(-1) ?? 0;
    const key = isLoaded ? `${index}` : `w${width} ${first}-${last}`;
    const twin = lastByKey.get(key) ?? -1;
    lastByKey.set(key, index);
    return { first, last, width, may, twin };
  });
}

/** Free places of an item in one bank, a bit each. */
function freeAt(search: Search, item: Item, bank: number): number {
  const banks = search.model.banks.length;
  let taken = 0;
  for (let job = item.first; job <= item.last; job++) taken |= search.taken[job * banks + bank]!;
  let free = item.may[bank]!;
  for (let step = 0; step < item.width; step++) free &= ~(taken >>> step);
  return free;
}

function place(search: Search, index: number, bank: number, at: number, isOn: boolean): void {
  const item = search.items[index]!; // an index of the list
  const bits = ((1 << item.width) - 1) << at;
  const banks = search.model.banks.length;
  for (let job = item.first; job <= item.last; job++) {
    if (isOn) search.taken[job * banks + bank]! |= bits;
    else search.taken[job * banks + bank]! &= ~bits;
  }
  search.bankOf[index] = isOn ? bank : -1;
  search.atOf[index] = at;
}

/** The unplaced item with the fewest free places; `count` 0 = it fits nowhere; index -1 = all are placed. */
function tightest(search: Search): { readonly index: number; readonly count: number } {
  let best = -1;
  let fewest = Number.POSITIVE_INFINITY;
  for (const [index, item] of search.items.entries()) {
    if (search.bankOf[index]! >= 0) continue;
    // Of alike items the earlier is placed first.
    if (item.twin >= 0 && search.bankOf[item.twin]! < 0) continue;
    let count = 0;
    for (let bank = 0; bank < search.model.banks.length; bank++)
      count += bitCount(freeAt(search, item, bank));
    const isTighter = count < fewest || (count === fewest && sizeOf(item) > sizeOf(search.items[best]!));
    if (!isTighter) continue;
    best = index;
    fewest = count;
    if (count === 0) break;
  }
  return { index: best, count: fewest };
}

const sizeOf = (item: Item) => item.width * (item.last - item.first + 1);

function placeAll(search: Search): boolean {
  if (--search.stepsLeft < 0) return false;
  const { index, count } = tightest(search);
  if (index < 0) return true;
  if (count === 0) return false;
  const item = search.items[index]!; // just found
  const twin = item.twin;
  const empty = new Set<number>();
  for (let bank = 0; bank < search.model.banks.length; bank++) {
    if (twin >= 0 && bank < search.bankOf[twin]!) continue;
    if (twin < 0 && isEmptyBank(search, bank)) {
      // Empty banks of one length are alike, and so are the mirrored places of each; left ones are enough to begin with.
      const { positions } = search.model.banks[bank]!; // a bank of the model
      if (empty.has(positions)) continue;
      empty.add(positions);
    }
    let free = freeAt(search, item, bank);
    if (twin >= 0 && bank === search.bankOf[twin]!) free &= -1 << (search.atOf[twin]! + 1);
    for (; free !== 0; free &= free - 1) {
      const at = 31 - Math.clz32(free & -free);
      place(search, index, bank, at, true);
      if (placeAll(search)) return true;
      place(search, index, bank, at, false);
      if (search.stepsLeft < 0) return false;
    }
  }
  return false;
}

/** Whether nothing stands on a bank in any job, and nothing must: loaded feeders that are still to be placed make banks differ. */
function isEmptyBank(search: Search, bank: number): boolean {
  const banks = search.model.banks.length;
  for (let job = 1; job <= search.model.jobs; job++) if (search.taken[job * banks + bank] !== 0) return false;
  return search.items.every(
    (item, index) => search.bankOf[index]! >= 0 || !isFixed(item) || item.may[bank] === 0,
  );
}

const isFixed = (item: Item) => item.may.reduce((sum, bits) => sum + bitCount(bits), 0) <= 2;

/** Places for all blocks, or why there are none; `steps`: the most to be tried. Banks of at most `MOST_BITS` positions. */
export function packBlocks(model: AssignModel, blocks: readonly OpenStay[], steps: number): Packing {
  const search: Search = {
    model,
    items: itemsOf(model, blocks),
    taken: new Int32Array((model.jobs + 1) * model.banks.length),
    bankOf: new Int16Array(blocks.length).fill(-1),
    atOf: new Int16Array(blocks.length),
    stepsLeft: steps,
  };
  if (placeAll(search))
    return blocks.map((_, index) => model.banks[search.bankOf[index]!]!.from + search.atOf[index]!); // all are placed
  return search.stepsLeft < 0 ? 'unknown' : 'none';
}
