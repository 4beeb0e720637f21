// What the server says of the log's tree: signed heads, and proofs that they grow from one another and hold an entry.

import { toBase64 } from '../../shared/kit/base64.ts';
import { fromHex } from '../../shared/log/bytes.ts';
import { consistencyRanges, emptyRoot, inclusionRanges, type LeafRange } from '../../shared/log/tree.ts';
import { treeHeadText } from '../../shared/log/tree-head.ts';
import type { PlantKey } from './plant-key.ts';
import type { Store } from './stores/store.ts';
import type { TreeState } from './stores/tree.ts';

/** Signs heads; one that was signed just now is not signed again: pages that are written down together have one. */
export interface HeadSigner {
  readonly sign: (tree: TreeState) => string;
}

/** Heads remembered, the newest. */
const HEADS_KEPT = 256;

/** The store holds another log than the one whose head was signed. */
class LogForked extends Error {
  readonly code = 'REELWARD_LOST';
  constructor(size: number) {
    super(`the log's first ${size} entries are not those that were signed before`);
  }
}

/** Makes it. */
export function createHeadSigner(key: PlantKey): HeadSigner {
  const signed = new Map<number, { readonly root: string; readonly note: string }>();
  return {
    sign: ({ size, root }) => {
      const known = signed.get(size);
      if (known?.root === root) return known.note;
      // A second log would be made out of the first, and proved by the plant itself.
      if (known) throw new LogForked(size);
      const head = { origin: key.ed25519.name, size, root: fromHex(root, 32) ?? emptyRoot };
      const note = key.signNote(treeHeadText(head));
      signed.set(size, { root, note });
      // A map goes by the order in which its entries came: the oldest is first.
      const [oldest] = signed.size > HEADS_KEPT ? signed.keys() : [];
      if (oldest !== undefined) signed.delete(oldest);
      return note;
    },
  };
}

/** What was asked of a tree. */
export interface TreeQuestion {
  /** Sizes of heads, ascending: that each begins with the one before it, and the tree with the last. */
  readonly sizes: readonly number[];
  /** Leaves. */
  readonly places: readonly number[];
}

/** The proofs wanted, in the order in which they were asked; empty where the tree is too small for one. */
export async function proveTree(
  store: Pick<Store, 'treeHashes'>,
  { size }: TreeState,
  { sizes, places }: TreeQuestion,
): Promise<{ readonly consistency: string[][]; readonly inclusion: string[][] }> {
  const growth = sizes.map((from, at) => {
    const to = sizes[at + 1] ?? size;
    return from <= to && to <= size ? consistencyRanges(from, to) : [];
  });
  const leaves = places.map((place) => (place < size ? inclusionRanges(place, size) : []));
  const hashes = await store.treeHashes([...growth, ...leaves].flat());
  let at = 0;
  const take = (ranges: readonly LeafRange[]) => {
    at += ranges.length;
    return hashes.slice(at - ranges.length, at).map((hash) => toBase64(fromHex(hash, 32) ?? emptyRoot));
  };
  return { consistency: growth.map(take), inclusion: leaves.map(take) };
}
