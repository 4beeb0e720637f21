// Proves many entries of a log at once: where each lies in the tree, and the hashes of the largest subtrees that hold none of them, the
// cover. Root and cover go together in one way only, so that a part of a log costs a few hashes more than itself, and a whole
// log none. A proof for each entry was refused: a kilobyte for each half of one.

import { type Join, type LeafRange, splitOf } from './tree.ts';

/** Entries of one chain that lie one after the other: entry `seq` is leaf `index`. */
export interface LeafRun {
  readonly seq: number;
  readonly index: number;
  readonly count: number;
}

/** Collects where the entries of a part lie; a chain's come in their order. Memory: one run for entries that follow each other in both. */
export interface RunBook {
  /** `chain`: `tablet/epoch`. */
  readonly note: (chain: string, seq: number, index: number) => void;
  /** By chain. */
  readonly runs: () => ReadonlyMap<string, readonly LeafRun[]>;
}

/** Makes an empty one. */
export function createRunBook(): RunBook {
  const byChain = new Map<string, { seq: number; index: number; count: number }[]>();
  return {
    note: (chain, seq, index) => {
      const runs = byChain.get(chain) ?? [];
      byChain.set(chain, runs);
      const last = runs.at(-1);
      if (last && last.seq + last.count === seq && last.index + last.count === index) last.count += 1;
      else runs.push({ seq, index, count: 1 });
    },
    runs: () => byChain,
  };
}

/** Runs as text: `seq@index+count`, blanks between. */
export function formatRuns(runs: readonly LeafRun[]): string {
  return runs.map(({ seq, index, count }) => `${seq}@${index}+${count}`).join(' ');
}

/** Reads such a text; null where it is none. */
export function parseRuns(text: string): readonly LeafRun[] | null {
  const runs: LeafRun[] = [];
  for (const part of text === '' ? [] : text.split(' ')) {
    const [, seq, index, count] = /^(\d{1,15})@(\d{1,15})\+(\d{1,15})$/.exec(part) ?? [];
    if (seq === undefined || index === undefined || count === undefined || count === '0') return null;
    runs.push({ seq: Number(seq), index: Number(index), count: Number(count) });
  }
  return runs;
}

/** Which leaves of a tree are meant: ascending, apart from each other. */
export type LeafSet = readonly LeafRange[];

/** The leaves of runs; null where two runs hold the same one. */
export function leavesOf(runs: Iterable<readonly LeafRun[]>): LeafSet | null {
  const all: LeafRange[] = [];
  for (const some of runs) for (const { index, count } of some) all.push({ from: index, to: index + count });
  all.sort((a, b) => a.from - b.from);
  const joined: { from: number; to: number }[] = [];
  for (const { from, to } of all) {
    const last = joined.at(-1);
    if (last && from < last.to) return null;
    if (last?.to === from) last.to = to;
    else joined.push({ from, to });
  }
  return joined;
}

/** How much of a range is in a set. */
type Share = 'none' | 'some' | 'all';

function shareOf(set: LeafSet, from: number, to: number): Share {
  // The first that ends behind the range's start.
  let [low, high] = [0, set.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((set[middle]?.to ?? 0) <= from) low = middle + 1;
    else high = middle;
  }
  const found = set[low];
  if (!found || found.from >= to) return 'none';
  return found.from <= from && found.to >= to ? 'all' : 'some';
}

/** The ranges whose hashes cover a tree of `size` but for a set of its leaves, from the left. */
export function coverRanges(size: number, set: LeafSet): readonly LeafRange[] {
  const ranges: LeafRange[] = [];
  const walk = (from: number, to: number): void => {
    const share = shareOf(set, from, to);
    if (share === 'none') ranges.push({ from, to });
    if (share !== 'some') return;
    const middle = from + splitOf(to - from);
    walk(from, middle);
    walk(middle, to);
  };
  if (size > 0) walk(0, size);
  return ranges;
}

/** A part of a tree: its leaves, how each is computed, and the cover of the rest. */
export interface TreePart<H> {
  readonly size: number;
  readonly set: LeafSet;
  /** A leaf of the set; null where it is not at hand. */
  readonly leafAt: (index: number) => H | null;
  readonly cover: readonly H[];
  readonly join: Join<H>;
}

/**
 * The tree's root by a part of it, and the cover of a smaller part (`kept`, within the set). Null where a leaf is not at hand, or where the
 * cover is too short or too long. Cost: one join a leaf of the set.
 */
export function foldPart<H>(
  part: TreePart<H>,
  kept: LeafSet,
): { readonly root: H; readonly cover: readonly H[] } | null {
  const { size, set, leafAt, join } = part;
  const cover: H[] = [];
  let used = 0;
  /** `isOpen`: no subtree around this one is in the new cover. */
  const walk = (from: number, to: number, isOpen: boolean): H | null => {
    const isCovered = isOpen && shareOf(kept, from, to) === 'none';
    const hash = hashOf(from, to, isOpen && !isCovered);
    if (isCovered && hash !== null) cover.push(hash);
    return hash;
  };
  const hashOf = (from: number, to: number, isOpen: boolean): H | null => {
    if (shareOf(set, from, to) === 'none') {
      const given = part.cover[used];
      used += 1;
      return given ?? null;
    }
    if (to - from === 1) return leafAt(from);
    const middle = from + splitOf(to - from);
    const left = walk(from, middle, isOpen);
    const right = left === null ? null : walk(middle, to, isOpen);
    return left === null || right === null ? null : join(left, right);
  };
  const root = size > 0 ? walk(0, size, true) : null;
  return root === null || used !== part.cover.length ? null : { root, cover };
}
