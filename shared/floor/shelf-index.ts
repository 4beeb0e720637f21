// Which labels on the shelf may a slot take? Thousands of packages bear a few hundred different labels; a slot looks at those whose number may be its own.
// Method: the index is kept from one question to the next. Reels' records never change, so one walk says which are new or gone since, and those alone
// are put in and taken out. Refused: to have the fold keep it; every history would pay for it, and a tablet at the line asks for a pick list seldom.

import { comparisonKeys, type PartComparison } from '../labels/part-numbers.ts';
import type { Reel } from './state.ts';
import type { PickOrder } from './vocabulary.ts';

/** Reels off the line with one label: the same part and maker's number. */
export interface SameLabel {
  readonly part: string | null;
  /** In no order that counts. */
  readonly reels: readonly Reel[];
}

interface Group extends SameLabel {
  readonly reels: Reel[];
  /** The same reels in an order in which a line takes them, once somebody asked. */
  readonly sorted: Map<PickOrder, readonly Reel[]>;
}

type Answer = (parts: readonly string[]) => readonly SameLabel[];

interface Shelf {
  /** Every reel as it was last seen, in the order of its map. */
  readonly seen: Reel[];
  readonly byLabel: Map<string, Group>;
  /** By rules of comparison; made anew once a label comes that was not there. */
  readonly answers: Map<string, Answer>;
}

const shelves = new WeakMap<ReadonlyMap<string, Reel>, Shelf>();
/** More changes than these, and all is put in anew. */
const MOST_CHANGES = 500;

function labelOf(reel: Reel): string {
  return `${reel.part === null ? '' : `=${reel.part}`}\u0000${reel.supplierPart ?? ''}`;
}

function putIn({ byLabel, answers }: Shelf, reel: Reel): void {
  if (reel.at !== null) return;
  const label = labelOf(reel);
  const same = byLabel.get(label);
  if (same === undefined) {
    byLabel.set(label, { part: reel.part, reels: [reel], sorted: new Map() });
    answers.clear();
  } else {
    same.reels.push(reel);
    same.sorted.clear();
  }
}

function takeOut({ byLabel }: Shelf, reel: Reel): void {
  const same = reel.at === null ? byLabel.get(labelOf(reel)) : undefined;
  if (same === undefined) return;
  same.reels.splice(same.reels.indexOf(reel), 1);
  same.sorted.clear();
}

/** Brings a shelf up to the reels as they are; false where so much changed that it is better made anew. */
function brought(shelf: Shelf, reels: ReadonlyMap<string, Reel>): boolean {
  const { seen } = shelf;
  if (reels.size < seen.length) return false;
  const changed: [at: number, reel: Reel][] = [];
  let at = 0;
  for (const reel of reels.values()) {
    if (seen[at] !== reel && changed.push([at, reel]) > MOST_CHANGES) return false;
    at += 1;
  }
  for (const [place] of changed) {
    const was = seen[place];
    if (was !== undefined) takeOut(shelf, was);
  }
  for (const [place, reel] of changed) {
    seen[place] = reel;
    putIn(shelf, reel);
  }
  return true;
}

function shelfOf(reels: ReadonlyMap<string, Reel>): Shelf {
  const kept = shelves.get(reels);
  if (kept !== undefined && brought(kept, reels)) return kept;
  const shelf: Shelf = { seen: [...reels.values()], byLabel: new Map(), answers: new Map() };
  for (const reel of shelf.seen) putIn(shelf, reel);
  shelves.set(reels, shelf);
  return shelf;
}

/**
 * Answers for part numbers which labels may be of one of them; those that bear a maker's number alone are among them always. Cost: one walk over
 * the reels, which compares each with what it was at the question before.
 */
export function shelfIndex(reels: ReadonlyMap<string, Reel>, comparison: PartComparison): Answer {
  const shelf = shelfOf(reels);
  const { ignoreCase, ignoreSpaces, ignoreDashes, packingSuffixes } = comparison;
  const rules = JSON.stringify([ignoreCase, ignoreSpaces, ignoreDashes, packingSuffixes]);
  const known = shelf.answers.get(rules);
  if (known !== undefined) return known;
  const answer = answerFor(shelf, comparison);
  shelf.answers.set(rules, answer);
  return answer;
}

function answerFor({ byLabel }: Shelf, comparison: PartComparison): Answer {
  const bare: Group[] = [];
  const byKey = new Map<string, Group[]>();
  for (const same of byLabel.values()) {
    if (same.part === null) bare.push(same);
    else
      for (const key of comparisonKeys(same.part, comparison)) {
        const there = byKey.get(key);
        if (there) there.push(same);
        else byKey.set(key, [same]);
      }
  }
  return (parts) => {
    const found = new Set<Group>(bare);
    for (const part of parts)
      for (const key of comparisonKeys(part, comparison))
        for (const same of byKey.get(key) ?? []) found.add(same);
    // The last reel of a label may be gone.
    return [...found].filter(({ reels }) => reels.length > 0);
  };
}

/** The reels of one label in the order in which a line takes them. `compare`: that order's own, the same each time. */
export function inPickOrder(
  same: SameLabel,
  order: PickOrder,
  compare: (a: Reel, b: Reel) => number,
): readonly Reel[] {
  const { sorted } = same as Group; // every one that this file hands out is
  const known = sorted.get(order);
  if (known !== undefined) return known;
  const reels = [...same.reels].sort(compare);
  sorted.set(order, reels);
  return reels;
}
