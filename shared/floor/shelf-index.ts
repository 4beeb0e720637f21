// Which labels on the shelf may a slot take? Thousands of packages bear a few hundred different labels; a slot looks at those whose number may be its own.
// Method: the index is kept from one question to the next, and from a state to its copy. Reels' records never change, so one walk says which are new or
// gone since, and those alone are put in and taken out. Thousands that are new at once, as after a start, may be put in part by part before anybody asks.
// Refused: to have the fold keep it; every history would pay for it, and a tablet at the line asks for a pick list seldom.

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

/** Labels by what their numbers may be taken for, under one plant's rules of comparison. */
interface Keyed {
  readonly comparison: PartComparison;
  /** Those that bear a maker's number alone. */
  readonly bare: Group[];
  readonly byKey: Map<string, Group[]>;
}

interface Shelf {
  /** Every reel as it was last seen, in the order of its map. */
  readonly seen: Reel[];
  readonly byLabel: Map<string, Group>;
  /** By rules of comparison. */
  readonly keyed: Map<string, Keyed>;
  /** Whose reels they are now: a state and its copy share a shelf. */
  of: ReadonlyMap<string, Reel>;
}

const shelves = new WeakMap<ReadonlyMap<string, Reel>, Shelf>();
/** The shelf asked last: an entry that comes late makes a copy of the state, which has nearly all of its reels. */
let latest: Shelf | null = null;
/** More changes than these among those that were there, or half of them, and all is put in anew. */
const MOST_CHANGES = 500;

function labelOf(reel: Reel): string {
  return `${reel.part === null ? '' : `=${reel.part}`}\u0000${reel.supplierPart ?? ''}`;
}

function putIn({ byLabel, keyed }: Shelf, reel: Reel): void {
  if (reel.at !== null) return;
  const label = labelOf(reel);
  const same = byLabel.get(label);
  if (same === undefined) {
    const fresh: Group = { part: reel.part, reels: [reel], sorted: new Map() };
    byLabel.set(label, fresh);
    for (const each of keyed.values()) keyIn(each, fresh);
  } else {
    same.reels.push(reel);
    same.sorted.clear();
  }
}

function keyIn({ comparison, bare, byKey }: Keyed, same: Group): void {
  if (same.part === null) {
    bare.push(same);
    return;
  }
  for (const key of comparisonKeys(same.part, comparison)) {
    const there = byKey.get(key);
    if (there) there.push(same);
    else byKey.set(key, [same]);
  }
}

function takeOut({ byLabel }: Shelf, reel: Reel): void {
  const same = reel.at === null ? byLabel.get(labelOf(reel)) : undefined;
  if (same === undefined) return;
  same.reels.splice(same.reels.indexOf(reel), 1);
  same.sorted.clear();
}

/**
 * Brings a shelf up to the reels as they are, of those at the end that it never saw `most`: how many of them are left; null where so much changed
 * that it is better made anew.
 */
function brought(shelf: Shelf, reels: ReadonlyMap<string, Reel>, most: number): number | null {
  const { seen } = shelf;
  if (reels.size < seen.length) return null;
  const until = Math.min(reels.size, seen.length + most);
  const mostChanges = Math.min(MOST_CHANGES, seen.length / 2);
  const changed: [at: number, reel: Reel][] = [];
  let at = 0;
  for (const reel of reels.values()) {
    if (at >= until) break;
    if (seen[at] !== reel) {
      changed.push([at, reel]);
      if (at < seen.length && changed.length > mostChanges) return null;
    }
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
  return reels.size - until;
}

/** The shelf of these reels, brought up by `most` at once, and how many it lacks then. */
function shelfOf(reels: ReadonlyMap<string, Reel>, most: number): { shelf: Shelf; left: number } {
  const kept = shelves.get(reels) ?? latest;
  const left = kept === null ? null : brought(kept, reels, most);
  if (kept !== null && left !== null) return remembered(reels, kept, left);
  const shelf: Shelf = { seen: [], byLabel: new Map(), keyed: new Map(), of: reels };
  return remembered(reels, shelf, brought(shelf, reels, most) ?? 0);
}

function remembered(
  reels: ReadonlyMap<string, Reel>,
  shelf: Shelf,
  left: number,
): { shelf: Shelf; left: number } {
  shelf.of = reels;
  shelves.set(reels, shelf);
  latest = shelf;
  return { shelf, left };
}

/** Puts up to `most` reels in that the index does not have yet, whole and above 0, so that a later question finds them there: how many are left then. */
export function growShelf(
  reels: ReadonlyMap<string, Reel>,
  comparison: PartComparison,
  most: number,
): number {
  const { shelf, left } = shelfOf(reels, most);
  keyedBy(shelf, comparison);
  return left;
}

/**
 * Answers for part numbers which labels may be of one of them; those that bear a maker's number alone are among them always. Cost: one walk over
 * the reels, which compares each with what it was at the question before.
 */
export function shelfIndex(reels: ReadonlyMap<string, Reel>, comparison: PartComparison): Answer {
  const { shelf } = shelfOf(reels, Number.POSITIVE_INFINITY);
  const { bare, byKey } = keyedBy(shelf, comparison);
  return (parts) => {
    // Somebody asked about another state in between.
    if (shelf.of !== reels) return shelfIndex(reels, comparison)(parts);
    const found = new Set<Group>(bare);
    for (const part of parts)
      for (const key of comparisonKeys(part, comparison))
        for (const same of byKey.get(key) ?? []) found.add(same);
    // The last reel of a label may be gone.
    return [...found].filter(({ reels: there }) => there.length > 0);
  };
}

function keyedBy(shelf: Shelf, comparison: PartComparison): Keyed {
  const { ignoreCase, ignoreSpaces, ignoreDashes, packingSuffixes } = comparison;
  const rules = JSON.stringify([ignoreCase, ignoreSpaces, ignoreDashes, packingSuffixes]);
  const known = shelf.keyed.get(rules);
  if (known !== undefined) return known;
  const keyed: Keyed = { comparison, bare: [], byKey: new Map() };
  for (const same of shelf.byLabel.values()) keyIn(keyed, same);
  shelf.keyed.set(rules, keyed);
  return keyed;
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
