// The log's hash tree in the store. A leaf is the 32 bytes of an entry's hash, in the order of the log. Kept are its right edge, by which an
// append goes on, and the hash of every 256th, 65 536th … subtree; what lies between is computed from 255 rows at most. Made out of
// `entries`, and made anew where it is lost: after a restore, or in a store of before there was one.
// Every node as a row of its own was refused: it would double what an append writes.

import { hash as hashAtOnce } from 'node:crypto';
import { setImmediate as turn } from 'node:timers/promises';
import type { Kysely, Transaction } from 'kysely';
import {
  emptyEdge,
  growTree,
  joinNodes,
  type LeafRange,
  nodesIn,
  type TreeEdge,
  type TreeNode,
} from '../../../shared/log/tree.ts';
import { putMeta } from './meta.ts';
import { type Tables, treeEdgeName } from './tables.ts';

/** A tree's size and root, lower-case hex. */
export interface TreeState {
  readonly size: number;
  readonly root: string;
}

/** Levels from one kept level to the next. */
const STEP = 8;
const ROWS_AT_ONCE = 5_000;
/** Kept nodes in one INSERT. */
const NODES_AT_ONCE = 1_000;
const EMPTY_ROOT = hashAtOnce('sha256', '', 'hex');

/** Written over for each hash: the engine's own hash of a buffer into text costs a quarter of one that makes buffers. */
const leafBytes = Buffer.alloc(33);
const nodeBytes = Buffer.alloc(65, 1);

/** The leaf of an entry by its hash: both lower-case hex. */
export function leafOf(entryHash: string): string {
  leafBytes.write(entryHash, 1, 'hex');
  return hashAtOnce('sha256', leafBytes, 'hex');
}

/** The node of two subtrees: lower-case hex. */
export function joinHex(left: string, right: string): string {
  nodeBytes.write(left, 1, 'hex');
  nodeBytes.write(right, 33, 'hex');
  return hashAtOnce('sha256', nodeBytes, 'hex');
}

/** The name of a kept node: its level above its index, below 2^53. */
function idOf(level: number, index: number): number {
  return (level / STEP) * 2 ** 48 + index;
}

/** The state by a tree's edge. */
export function stateOf(edge: TreeEdge<string>): TreeState {
  return { size: edge.size, root: joinNodes(edge.nodes, joinHex) ?? EMPTY_ROOT };
}

type Reader = Pick<Kysely<Tables>, 'selectFrom'>;

/** The edge as it is kept; that of an empty tree where none is. */
export async function readEdge(db: Reader): Promise<TreeEdge<string>> {
  const row = await db.selectFrom('meta').select('value').where('key', '=', treeEdgeName).executeTakeFirst();
  const [size, ...nodes] = row?.value.split(' ') ?? [];
  return size === undefined ? emptyEdge : { size: Number(size), nodes };
}

/** The edge at the log's end `pos`, made up to there where it is not; null where entries are missing. The caller holds the append lock. */
export async function edgeAt(tx: Transaction<Tables>, pos: number): Promise<TreeEdge<string> | null> {
  let edge = await readEdge(tx);
  if (edge.size === pos) return edge;
  if (edge.size > pos) {
    await tx.deleteFrom('tree_nodes').execute();
    edge = emptyEdge;
  }
  while (edge.size < pos) {
    const hashes = await entryHashes(tx, { from: edge.size, to: Math.min(pos, edge.size + ROWS_AT_ONCE) });
    // A hole in the log: that is told elsewhere, and no reason to take no more entries.
    if (!hashes) return null;
    edge = await extendTree(tx, edge, hashes);
  }
  return edge;
}

/** Puts entries behind the tree's end and keeps what has to be kept of it. */
export async function extendTree(
  tx: Transaction<Tables>,
  edge: TreeEdge<string>,
  entryHashes: readonly string[],
): Promise<TreeEdge<string>> {
  if (entryHashes.length === 0) return edge;
  const kept: Tables['tree_nodes'][] = [];
  const grown = growTree(edge, entryHashes.map(leafOf), {
    join: joinHex,
    onNode: ({ level, index }, hash) => {
      if (level % STEP === 0) kept.push({ id: idOf(level, index), hash });
    },
  });
  for (let at = 0; at < kept.length; at += NODES_AT_ONCE)
    await tx
      .insertInto('tree_nodes')
      .values(kept.slice(at, at + NODES_AT_ONCE))
      .execute();
  await putMeta(tx, treeEdgeName, [grown.size, ...grown.nodes].join(' '));
  return grown;
}

/** Hashes of the entries of a range of leaves; the first entry of the log is leaf 0. Null where one is missing. */
async function entryHashes(db: Reader, { from, to }: LeafRange): Promise<readonly string[] | null> {
  const rows = await db
    .selectFrom('entries')
    .select('hash')
    .where('pos', '>', from)
    .where('pos', '<=', to)
    .orderBy('pos')
    .execute();
  return rows.length === to - from ? rows.map((row) => row.hash) : null;
}

/** Hashes of ranges of leaves that the log reaches, lower-case hex. Ranges that lie together are cheap together. Rejects beyond the log's end. */
export async function rangeHashes(db: Reader, ranges: readonly LeafRange[]): Promise<readonly string[]> {
  const blocks = new Map<number, Block>();
  const hashOfNode = async ({ level, index }: TreeNode): Promise<string> => {
    const base = level - (level % STEP);
    const width = 2 ** (level - base);
    const number = Math.floor((index * width) / BLOCK);
    let block = blocks.get(base);
    if (block?.number !== number) {
      block = { number, levels: levelsOf(await readBlock(db, base, number)) };
      blocks.set(base, block);
      await turn(); // the embedded store answers at once: the tablets go first
    }
    const hash = block.levels[level - base]?.[index - (number * BLOCK) / width];
    if (hash === undefined)
      throw new Error(
        `Cannot prove as the log's tree must hold subtree ${index} of level ${level}: it does not`,
      );
    return hash;
  };
  const hashes: string[] = [];
  for (const range of ranges) {
    const nodes: string[] = [];
    for (const node of nodesIn(range)) nodes.push(await hashOfNode(node));
    hashes.push(joinNodes(nodes, joinHex) ?? EMPTY_ROOT);
  }
  return hashes;
}

/** Nodes below one node of a kept level. */
const BLOCK = 2 ** STEP;

/** All that lies between two kept levels below one node, and which one that is. */
interface Block {
  readonly number: number;
  /** From the lower kept level up; perfect subtrees only. */
  readonly levels: readonly (readonly string[])[];
}

function levelsOf(lowest: readonly string[]): readonly (readonly string[])[] {
  const levels = [lowest];
  for (let below = lowest; below.length > 1 && levels.length < STEP; below = levels.at(-1) ?? []) {
    const above: string[] = [];
    for (let at = 0; at + 1 < below.length; at += 2)
      above.push(joinHex(below[at] ?? '', below[at + 1] ?? ''));
    levels.push(above);
  }
  return levels;
}

/** The nodes of a kept level, or leaves, of one block: as many as there are. */
async function readBlock(db: Reader, level: number, number: number): Promise<readonly string[]> {
  const from = number * BLOCK;
  const rows =
    level === 0
      ? await db
          .selectFrom('entries')
          .select(['pos as at', 'hash'])
          .where('pos', '>', from)
          .where('pos', '<=', from + BLOCK)
          .orderBy('pos')
          .execute()
      : await db
          .selectFrom('tree_nodes')
          .select(['id as at', 'hash'])
          .where('id', '>=', idOf(level, from))
          .where('id', '<', idOf(level, from + BLOCK))
          .orderBy('id')
          .execute();
  // Positions count from 1. What lies behind a hole is not where it ought to be.
  const first = level === 0 ? from + 1 : idOf(level, from);
  const hole = rows.findIndex((row, at) => row.at !== first + at);
  const sound = hole < 0 ? rows : rows.slice(0, hole);
  return level === 0 ? sound.map(({ hash }) => leafOf(hash)) : sound.map(({ hash }) => hash);
}
