// The log's hash tree against published vectors and against a second, naive implementation that hashes everything anew.

import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  consistencyHolds,
  consistencyRanges,
  emptyEdge,
  emptyRoot,
  growTree,
  inclusionHolds,
  inclusionRanges,
  joinNodes,
  type LeafRange,
  leafHash,
  nodeHash,
  nodesIn,
  rootOf,
  splitOf,
  type TreeEdge,
  type TreeNode,
} from '../../../shared/log/tree.ts';

const bytes = (hex: string) => Uint8Array.from(Buffer.from(hex, 'hex'));
const hex = (hash: Uint8Array) => Buffer.from(hash).toString('hex');

/**
 * Leaves, roots and proofs that implementations of certificate transparency share: the reference vectors of transparency-dev/merkle
 * (testonly/constants.go, testonly/reference_test.go), which are those of the first implementation of RFC 6962.
 */
const published = {
  leaves: [
    '',
    '00',
    '10',
    '2021',
    '3031',
    '40414243',
    '5051525354555657',
    '606162636465666768696a6b6c6d6e6f',
  ],
  roots: [
    '6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d',
    'fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125',
    'aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77',
    'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
    '4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4',
    '76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef',
    'ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c',
    '5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328',
  ],
  /** Leaf from 0, size, proof. */
  inclusion: [
    [0, 1, []],
    [
      0,
      8,
      [
        '96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7',
        '5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e',
        '6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4',
      ],
    ],
    [
      5,
      8,
      [
        'bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b',
        'ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0',
        'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
      ],
    ],
    [2, 3, ['fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125']],
    [
      1,
      5,
      [
        '6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d',
        '5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e',
        'bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b',
      ],
    ],
  ] as const,
  /** Smaller size, larger size, proof. */
  consistency: [
    [1, 1, []],
    [
      1,
      8,
      [
        '96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7',
        '5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e',
        '6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4',
      ],
    ],
    [
      6,
      8,
      [
        '0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a',
        'ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0',
        'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
      ],
    ],
    [
      2,
      5,
      [
        '5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e',
        'bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b',
      ],
    ],
  ] as const,
};

/** The second implementation: the definitions of RFC 9162, 2.1.1, 2.1.3.1 and 2.1.4.1, word for word, with the engine's own hash. */
const sha = (...parts: readonly Uint8Array[]) =>
  Uint8Array.from(createHash('sha256').update(Buffer.concat(parts)).digest());
const largestBelow = (n: number) => 2 ** Math.floor(Math.log2(n - 1));
function naiveRoot(data: readonly Uint8Array[]): Uint8Array {
  const [only] = data;
  if (!only) return sha();
  if (data.length === 1) return sha(Uint8Array.of(0), only);
  const k = largestBelow(data.length);
  return sha(Uint8Array.of(1), naiveRoot(data.slice(0, k)), naiveRoot(data.slice(k)));
}
function naivePath(m: number, data: readonly Uint8Array[]): readonly Uint8Array[] {
  if (data.length === 1) return [];
  const k = largestBelow(data.length);
  return m < k
    ? [...naivePath(m, data.slice(0, k)), naiveRoot(data.slice(k))]
    : [...naivePath(m - k, data.slice(k)), naiveRoot(data.slice(0, k))];
}
function naiveSubproof(m: number, data: readonly Uint8Array[], isWhole: boolean): readonly Uint8Array[] {
  if (m === data.length) return isWhole ? [] : [naiveRoot(data)];
  const k = largestBelow(data.length);
  return m <= k
    ? [...naiveSubproof(m, data.slice(0, k), isWhole), naiveRoot(data.slice(k))]
    : [...naiveSubproof(m - k, data.slice(k), false), naiveRoot(data.slice(0, k))];
}

const bytesJoin = { join: nodeHash };

/** A tree whose nodes are all kept, as a store would. */
function keep(data: readonly Uint8Array[]) {
  const nodes = new Map<string, Uint8Array>();
  const name = ({ level, index }: TreeNode) => `${level}/${index}`;
  const leaves = data.map((one) => leafHash(one));
  for (const [index, leaf] of leaves.entries()) nodes.set(name({ level: 0, index }), leaf);
  const edge = growTree<Uint8Array>(emptyEdge, leaves, {
    join: nodeHash,
    onNode: (node, hash) => nodes.set(name(node), hash),
  });
  const hashOf = (range: LeafRange) => {
    const hashes = nodesIn(range).map((node) => {
      const hash = nodes.get(name(node));
      if (!hash) throw new Error(`no node ${name(node)}`);
      return hash;
    });
    return joinNodes(hashes, nodeHash) ?? emptyRoot;
  };
  return { leaves, edge, proof: (ranges: readonly LeafRange[]) => ranges.map(hashOf) };
}

/** No two alike: a leaf that stands in two places is proved in both. */
const manyData = (most: number) =>
  fc
    .array(fc.uint8Array({ maxLength: 40 }), { minLength: 1, maxLength: most, size: 'max' })
    .map((all) => all.map((one, at) => Uint8Array.of(at, ...one)));

describe('the tree of the published vectors', () => {
  const data = published.leaves.map(bytes);
  const { leaves, proof } = keep(data);

  it('has the published roots, whether it grew at once or leaf by leaf', () => {
    let edge: TreeEdge = emptyEdge;
    expect(hex(emptyRoot)).toBe('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855');
    expect(rootOf(edge)).toEqual(emptyRoot);
    leaves.forEach((leaf, at) => {
      edge = growTree<Uint8Array>(edge, [leaf], bytesJoin);
      expect(hex(rootOf(edge))).toBe(published.roots[at]);
      expect(hex(rootOf(growTree(emptyEdge, leaves.slice(0, at + 1), bytesJoin)))).toBe(published.roots[at]);
    });
  });

  it('has the published proofs, and they hold', () => {
    const root = (size: number) => bytes(published.roots[size - 1] ?? '');
    for (const [index, size, wanted] of published.inclusion) {
      expect(proof(inclusionRanges(index, size)).map(hex)).toEqual([...wanted]);
      const leaf = leaves[index] ?? emptyRoot;
      expect(inclusionHolds({ leaf, index, size, root: root(size) }, wanted.map(bytes))).toBe(true);
    }
    for (const [from, to, wanted] of published.consistency) {
      expect(proof(consistencyRanges(from, to)).map(hex)).toEqual([...wanted]);
      const [old, now] = [from, to].map((size) => ({ size, root: root(size) }));
      expect(old && now && consistencyHolds(old, now, wanted.map(bytes))).toBe(true);
    }
  });
});

describe('any tree', () => {
  it('has the roots and proofs of the naive one, at every size up to its own', () => {
    fc.assert(
      fc.property(manyData(70), fc.nat(), fc.nat(), (data, a, b) => {
        const { leaves, edge, proof } = keep(data);
        expect(rootOf(edge)).toEqual(naiveRoot(data));
        const size = 1 + (a % data.length);
        const cut = data.slice(0, size);
        const index = b % size;
        const inclusion = proof(inclusionRanges(index, size));
        expect(inclusion).toEqual(naivePath(index, cut));
        const leaf = leaves[index] ?? emptyRoot;
        expect(inclusionHolds({ leaf, index, size, root: naiveRoot(cut) }, inclusion)).toBe(true);
        const from = 1 + (b % size);
        const consistency = proof(consistencyRanges(from, size));
        expect(consistency).toEqual(naiveSubproof(from, cut, true));
        const old = { size: from, root: naiveRoot(data.slice(0, from)) };
        expect(consistencyHolds(old, { size, root: naiveRoot(cut) }, consistency)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('grows in any steps to the same edge', () => {
    fc.assert(
      fc.property(manyData(40), fc.array(fc.nat({ max: 12 }), { maxLength: 12 }), (data, steps) => {
        const leaves = data.map((one) => leafHash(one));
        let edge: TreeEdge = emptyEdge;
        for (const step of [...steps, leaves.length])
          edge = growTree(edge, leaves.slice(edge.size, edge.size + step), bytesJoin);
        expect(edge).toEqual(growTree(emptyEdge, leaves, bytesJoin));
      }),
    );
  });

  it('is proved by nothing else: no other leaf, place, size, root, or altered, shorter or longer proof', () => {
    fc.assert(
      fc.property(manyData(40), fc.nat(), fc.nat(), (data, a, b) => {
        const { leaves, proof } = keep(data);
        const size = data.length;
        const root = naiveRoot(data);
        const index = a % size;
        const leaf = leaves[index] ?? emptyRoot;
        const inclusion = proof(inclusionRanges(index, size));
        const claim = { leaf, index, size, root };
        const odd = sha(leaf);
        const bend = (list: readonly Uint8Array[]) =>
          list.map((one, at) => (at === b % list.length ? sha(one) : one));
        expect(inclusionHolds({ ...claim, leaf: odd }, inclusion)).toBe(false);
        expect(inclusionHolds({ ...claim, root: odd }, inclusion)).toBe(false);
        expect(inclusionHolds({ ...claim, index: size }, inclusion)).toBe(false);
        expect(inclusionHolds(claim, [...inclusion, odd])).toBe(false);
        if (inclusion.length > 0) {
          expect(inclusionHolds(claim, bend(inclusion))).toBe(false);
          expect(inclusionHolds(claim, inclusion.slice(1))).toBe(false);
          expect(inclusionHolds(claim, inclusion.slice(0, -1))).toBe(false);
          const other = (index + 1 + (b % (size - 1))) % size;
          expect(inclusionHolds({ ...claim, index: other }, inclusion)).toBe(false);
        }
        const from = 1 + (b % size);
        const old = { size: from, root: naiveRoot(data.slice(0, from)) };
        const now = { size, root };
        const consistency = proof(consistencyRanges(from, size));
        expect(consistencyHolds(old, { size, root: odd }, consistency)).toBe(false);
        expect(consistencyHolds({ ...old, root: odd }, now, consistency)).toBe(false);
        expect(consistencyHolds(old, now, [...consistency, odd])).toBe(false);
        expect(consistencyHolds({ ...old, size: size + 1 }, now, consistency)).toBe(false);
        if (consistency.length > 0) {
          expect(consistencyHolds(old, now, bend(consistency))).toBe(false);
          expect(consistencyHolds(old, now, consistency.slice(1))).toBe(false);
          expect(consistencyHolds(old, now, consistency.slice(0, -1))).toBe(false);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('that was rewritten behind the earlier head has no proof that holds', () => {
    fc.assert(
      fc.property(manyData(30), fc.nat(), fc.nat(), (data, a, b) => {
        const from = 1 + (a % data.length);
        const old = { size: from, root: naiveRoot(data.slice(0, from)) };
        const bent = data.map((one, at) => (at === b % from ? sha(one) : one));
        const { edge, proof } = keep(bent);
        const now = { size: bent.length, root: rootOf(edge) };
        expect(consistencyHolds(old, now, proof(consistencyRanges(from, bent.length)))).toBe(false);
      }),
    );
  });

  it('begins with the empty one, and with nothing that calls itself so', () => {
    const now = { size: 1, root: leafHash(Uint8Array.of(7)) };
    expect(consistencyHolds({ size: 0, root: emptyRoot }, now, [])).toBe(true);
    expect(consistencyHolds({ size: 0, root: now.root }, now, [])).toBe(false);
    expect(consistencyHolds({ size: 0, root: emptyRoot }, now, [now.root])).toBe(false);
    expect(consistencyHolds({ size: 0.5, root: emptyRoot }, now, [])).toBe(false);
  });
});

describe('what a tree is asked', () => {
  it('is refused where it cannot be', () => {
    for (const [index, size] of [
      [0, 0],
      [1, 1],
      [-1, 2],
      [0.5, 2],
    ] as const)
      expect(() => inclusionRanges(index, size)).toThrow(RangeError);
    for (const [from, to] of [
      [2, 1],
      [-1, 2],
      [0.5, 2],
    ] as const)
      expect(() => consistencyRanges(from, to)).toThrow(RangeError);
    expect(() => growTree<Uint8Array>({ size: 3, nodes: [] }, [emptyRoot], bytesJoin)).toThrow(RangeError);
    expect(() => growTree<Uint8Array>({ size: 1, nodes: [] }, [emptyRoot], bytesJoin)).toThrow(
      /edge must fit/,
    );
  });

  it('is answered beyond 32 bits too', () => {
    const size = 2 ** 40 + 3;
    expect(splitOf(size)).toBe(2 ** 40);
    expect(inclusionRanges(2 ** 40 + 2, size)).toEqual([
      { from: 2 ** 40, to: 2 ** 40 + 2 },
      { from: 0, to: 2 ** 40 },
    ]);
    expect(nodesIn({ from: 0, to: 2 ** 40 + 1 })).toEqual([
      { level: 40, index: 0 },
      { level: 0, index: 2 ** 40 },
    ]);
    const [left, right] = [sha(Uint8Array.of(1)), sha(Uint8Array.of(2))];
    const root = nodeHash(left, right);
    expect(inclusionHolds({ leaf: right, index: 2 ** 40, size: 2 ** 40 + 1, root }, [left])).toBe(true);
  });
});
