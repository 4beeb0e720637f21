// Parts of trees: any part gives the whole tree's root, nothing else does, and a part of a part is one too.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  emptyEdge,
  emptyRoot,
  growTree,
  joinNodes,
  type LeafRange,
  leafHash,
  nodeHash,
  rootOf,
} from '../../../shared/log/tree.ts';
import {
  coverRanges,
  createRunBook,
  foldPart,
  formatRuns,
  type LeafSet,
  leavesOf,
  parseRuns,
  type TreePart,
} from '../../../shared/log/tree-cover.ts';

const leaves = Array.from({ length: 80 }, (_, at) => leafHash(Uint8Array.of(at)));
const rootOfRange = ({ from, to }: LeafRange) =>
  rootOf(growTree(emptyEdge, leaves.slice(from, to), { join: nodeHash }));

/** The leaves of a mask as a set. */
const setOf = (mask: readonly boolean[]): LeafSet =>
  leavesOf([mask.flatMap((isIn, index) => (isIn ? [{ seq: 1, index, count: 1 }] : []))]) ?? [];

const partOf = (size: number, set: LeafSet): TreePart<Uint8Array> => ({
  size,
  set,
  leafAt: (index) => leaves[index] ?? null,
  cover: coverRanges(size, set).map(rootOfRange),
  join: nodeHash,
});

const masks = fc.array(fc.tuple(fc.boolean(), fc.boolean()), { minLength: 1, maxLength: 80, size: 'max' });

describe('a part of a tree', () => {
  it('gives the root of the whole, and the cover of any smaller part of it', () => {
    fc.assert(
      fc.property(masks, (mask) => {
        const set = setOf(mask.map(([isIn]) => isIn));
        const kept = setOf(mask.map(([isIn, isKept]) => isIn && isKept));
        const folded = foldPart(partOf(mask.length, set), kept);
        expect(folded?.root).toEqual(rootOfRange({ from: 0, to: mask.length }));
        expect(folded?.cover).toEqual(coverRanges(mask.length, kept).map(rootOfRange));
      }),
    );
  });

  it('that lacks a leaf or a hash, or has one too many or another one, does not give it', () => {
    fc.assert(
      fc.property(masks, fc.nat(), (mask, at) => {
        const size = mask.length;
        const set = setOf(mask.map(([isIn]) => isIn));
        const part = partOf(size, set);
        const root = rootOfRange({ from: 0, to: size });
        const rootBy = (change: Partial<TreePart<Uint8Array>>) =>
          foldPart({ ...part, ...change }, set)?.root ?? null;
        const bent = leafHash(Uint8Array.of(255, 255));
        expect(rootBy({ cover: [...part.cover, bent] })).toBeNull();
        if (part.cover.length > 0) {
          expect(rootBy({ cover: part.cover.slice(1) })).toBeNull();
          const odd = part.cover.map((hash, which) => (which === at % part.cover.length ? bent : hash));
          expect(rootBy({ cover: odd })).not.toEqual(root);
        }
        const inside = mask.flatMap(([isIn], index) => (isIn ? [index] : []));
        const one = inside[at % Math.max(1, inside.length)];
        if (one !== undefined) {
          expect(rootBy({ leafAt: (index) => (index === one ? null : (leaves[index] ?? null)) })).toBeNull();
          expect(rootBy({ leafAt: (index) => (index === one ? bent : (leaves[index] ?? null)) })).not.toEqual(
            root,
          );
        }
      }),
    );
  });

  it('that is the whole needs no cover, and one that is nothing only the root', () => {
    expect(coverRanges(77, [{ from: 0, to: 77 }])).toEqual([]);
    expect(coverRanges(77, [])).toEqual([{ from: 0, to: 77 }]);
    expect(coverRanges(0, [])).toEqual([]);
    expect(joinNodes([], nodeHash) ?? emptyRoot).toEqual(emptyRoot);
  });
});

describe('runs', () => {
  it('are put together where chain and log go on, and read back as they were written', () => {
    const book = createRunBook();
    for (const [chain, seq, index] of [
      ['a', 1, 0],
      ['a', 2, 1],
      ['b', 7, 2],
      ['a', 3, 3],
      ['a', 5, 4],
    ] as const)
      book.note(chain, seq, index);
    const runs = book.runs();
    expect(formatRuns(runs.get('a') ?? [])).toBe('1@0+2 3@3+1 5@4+1');
    expect([...runs.values()].map((some) => parseRuns(formatRuns(some)))).toEqual([...runs.values()]);
    expect(leavesOf(runs.values())).toEqual([{ from: 0, to: 5 }]);
  });

  it('are none where the text is no such text, or where two hold one leaf', () => {
    for (const text of ['1', '1@2', '1@2+0', '1@2+3  4@5+6', 'a@2+3', '1@2+3 ', '-1@2+3'])
      expect(parseRuns(text), text).toBeNull();
    expect(parseRuns('')).toEqual([]);
    expect(leavesOf([[{ seq: 1, index: 0, count: 3 }], [{ seq: 9, index: 2, count: 1 }]])).toBeNull();
  });
});
