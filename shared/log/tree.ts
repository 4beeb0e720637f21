// A log's hash tree: one short hash that stands for every leaf and its place, short proofs that a leaf is in it, and that a later tree
// begins with an earlier one. Source: RFC 9162 (certificate transparency, version 2), section 2.1: hashes 2.1.1, inclusion 2.1.3,
// consistency 2.1.4; its hashes and proofs are those of RFC 6962. A running hash was refused for this: its proofs are as long as the log.
//
// A perfect subtree is named by its level (0: a leaf) and its index in that level. Sizes are whole numbers below 2^53.

import { sha256 } from '@noble/hashes/sha2.js';
import { sameBytes } from './bytes.ts';

/** Joins the hashes of two subtrees; whoever keeps hashes in another form than bytes, as a server does, hands in its own. */
export type Join<H> = (left: H, right: H) => H;

/** The root of a tree without leaves: the hash of no bytes. */
export const emptyRoot: Uint8Array = sha256(new Uint8Array());

/** A leaf's hash: of a zero byte and its data. */
export function leafHash(data: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(data.length + 1);
  bytes.set(data, 1);
  return sha256(bytes);
}

/** A node's hash: of a one byte and the hashes of both its subtrees. */
export function nodeHash(left: Uint8Array, right: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(1 + left.length + right.length);
  bytes[0] = 1;
  bytes.set(left, 1);
  bytes.set(right, 1 + left.length);
  return sha256(bytes);
}

/** A perfect subtree: leaves `index * 2 ** level` up to `(index + 1) * 2 ** level`. */
export interface TreeNode {
  readonly level: number;
  readonly index: number;
}

/** Leaves from `from` up to, not including, `to`. */
export interface LeafRange {
  readonly from: number;
  readonly to: number;
}

/** The right edge of a tree: what is needed to go on. `nodes`: hashes of its largest perfect subtrees, from the left. */
export interface TreeEdge<H = Uint8Array> {
  readonly size: number;
  readonly nodes: readonly H[];
}

/** The edge of a tree without leaves. */
export const emptyEdge: TreeEdge<never> = { size: 0, nodes: [] };

/**
 * Adds the hashes of leaves to a tree. Cost: one join a leaf. `onNode` is told of each subtree that becomes perfect by it, leaves not
 * included. Throws RangeError where the edge does not fit its size.
 */
export function growTree<H>(
  edge: TreeEdge<H>,
  leaves: readonly H[],
  { join, onNode }: { readonly join: Join<H>; readonly onNode?: (node: TreeNode, hash: H) => void },
): TreeEdge<H> {
  const nodes = [...edge.nodes];
  let { size } = edge;
  for (const leaf of leaves) {
    let right = leaf;
    let index = size;
    // As many subtrees end here as the size so far has ones at its end.
    for (let level = 1; index % 2 === 1; level += 1) {
      const left = nodes.pop();
      if (left === undefined)
        throw new RangeError(`Cannot grow a tree as its edge must fit its size: current value is ${size}`);
      right = join(left, right);
      index = (index - 1) / 2;
      onNode?.({ level, index }, right);
    }
    nodes.push(right);
    size += 1;
  }
  return { size, nodes };
}

/** The root of a tree by its edge. */
export function rootOf({ nodes }: TreeEdge): Uint8Array {
  return joinNodes(nodes, nodeHash) ?? emptyRoot;
}

/** The hash of a range of leaves out of those of its perfect subtrees (`nodesIn`), from the left; null for no leaves. */
export function joinNodes<H>(nodes: readonly H[], join: Join<H>): H | null {
  return nodes.length === 0 ? null : nodes.reduceRight((right, left) => join(left, right));
}

/** The largest power of two below `size`; `size` from 2. */
export function splitOf(size: number): number {
  let split = 1;
  while (split * 2 < size) split *= 2;
  return split;
}

/** The perfect subtrees that a range of a tree is made of, from the left; `from` is where a subtree of the tree begins. */
export function nodesIn({ from, to }: LeafRange): readonly TreeNode[] {
  const nodes: TreeNode[] = [];
  for (let at = from; at < to; ) {
    let [level, width] = [0, 1];
    while (at % (width * 2) === 0 && at + width * 2 <= to) {
      level += 1;
      width *= 2;
    }
    nodes.push({ level, index: at / width });
    at += width;
  }
  return nodes;
}

/** Which ranges' hashes prove that leaf `index` is in a tree of `size`, in the proof's order (RFC 9162, 2.1.3.1). Throws RangeError where it is not in it. */
export function inclusionRanges(index: number, size: number): readonly LeafRange[] {
  if (!Number.isSafeInteger(index) || index < 0 || index >= size)
    throw new RangeError(
      `Cannot prove a leaf as it must be in the tree: current value is ${index} of ${size}`,
    );
  const path = (from: number, to: number): readonly LeafRange[] => {
    if (to - from === 1) return [];
    const middle = from + splitOf(to - from);
    return index < middle
      ? [...path(from, middle), { from: middle, to }]
      : [...path(middle, to), { from, to: middle }];
  };
  return path(0, size);
}

/** Which ranges' hashes prove that a tree of `to` leaves begins with that of `from`, in the proof's order (RFC 9162, 2.1.4.1). Throws RangeError where it cannot. */
export function consistencyRanges(from: number, to: number): readonly LeafRange[] {
  if (!Number.isSafeInteger(from) || from < 0 || from > to)
    throw new RangeError(
      `Cannot prove a tree as it must be the smaller one: current value is ${from} of ${to}`,
    );
  if (from === 0 || from === to) return [];
  const subproof = (start: number, end: number, isWhole: boolean): readonly LeafRange[] => {
    if (from === end) return isWhole ? [] : [{ from: start, to: end }];
    const middle = start + splitOf(end - start);
    return from <= middle
      ? [...subproof(start, middle, isWhole), { from: middle, to: end }]
      : [...subproof(middle, end, false), { from: start, to: middle }];
  };
  return subproof(0, to, true);
}

/** What an inclusion proof speaks of. */
export interface InclusionClaim {
  /** The leaf's hash, and where it is said to be, from 0. */
  readonly leaf: Uint8Array;
  readonly index: number;
  readonly size: number;
  readonly root: Uint8Array;
}

/** True where the proof shows that the leaf is in the tree at that place (RFC 9162, 2.1.3.2). */
export function inclusionHolds(
  { leaf, index, size, root }: InclusionClaim,
  proof: readonly Uint8Array[],
): boolean {
  if (!Number.isSafeInteger(size) || !Number.isSafeInteger(index) || index < 0 || index >= size) return false;
  let [first, last, hash] = [index, size - 1, leaf];
  for (const node of proof) {
    if (last === 0) return false;
    if (first % 2 === 1 || first === last) {
      hash = nodeHash(node, hash);
      while (first % 2 === 0 && first !== 0) {
        first /= 2;
        last = Math.floor(last / 2);
      }
    } else hash = nodeHash(hash, node);
    first = Math.floor(first / 2);
    last = Math.floor(last / 2);
  }
  return last === 0 && sameBytes(hash, root);
}

/** A tree by its size and root. */
export interface TreeHead {
  readonly size: number;
  readonly root: Uint8Array;
}

/** True where the proof shows that the tree `to` begins with the tree `from` (RFC 9162, 2.1.4.2). Every tree begins with the empty one. */
export function consistencyHolds(from: TreeHead, to: TreeHead, proof: readonly Uint8Array[]): boolean {
  const isSizes = Number.isSafeInteger(from.size) && Number.isSafeInteger(to.size) && from.size >= 0;
  if (!isSizes || from.size > to.size) return false;
  if (from.size === to.size) return proof.length === 0 && sameBytes(from.root, to.root);
  if (from.size === 0) return proof.length === 0 && sameBytes(from.root, emptyRoot);
  // A power of two: its own root is the first node.
  const isPower = splitOf(from.size + 1) === from.size;
  const [start, ...rest] = isPower ? [from.root, ...proof] : proof;
  if (!start) return false;
  let [first, last] = [from.size - 1, to.size - 1];
  while (first % 2 === 1) {
    first = (first - 1) / 2;
    last = Math.floor(last / 2);
  }
  let [before, after] = [start, start];
  for (const node of rest) {
    if (last === 0) return false;
    if (first % 2 === 1 || first === last) {
      before = nodeHash(node, before);
      after = nodeHash(node, after);
      while (first % 2 === 0 && first !== 0) {
        first /= 2;
        last = Math.floor(last / 2);
      }
    } else after = nodeHash(after, node);
    first = Math.floor(first / 2);
    last = Math.floor(last / 2);
  }
  return last === 0 && sameBytes(before, from.root) && sameBytes(after, to.root);
}
