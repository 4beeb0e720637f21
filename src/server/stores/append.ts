// One durable append of what several tablets brought: judged against the ends of their chains, numbered in commit order.
// Runs inside a transaction that no other append can overlap; that is what makes the numbers a commit order.

import { hash as hashAtOnce } from 'node:crypto';
import type { Transaction } from 'kysely';
import type { EntryFault } from '../../../shared/wire/codes.ts';
import type { ChainMark } from '../../../shared/wire/messages.ts';
import { packedBody } from './packed.ts';
import type { Appended, Checked, LogHead, Place } from './store.ts';
import type { Tables } from './tables.ts';
import { edgeAt, extendTree, stateOf } from './tree.ts';

/** Running hash before the first entry. */
export const firstRoot = '0'.repeat(64);

/** Rows in one INSERT: PostgreSQL allows 65,535 parameters, SQLite 32,766. */
const ROWS_AT_ONCE = 1_000;

interface Held {
  readonly hash: string;
  readonly pos: number;
}

interface Chain {
  readonly tablet: string;
  readonly epoch: string;
  seq: number;
  hash: string;
  /** Hashes held, and where they lie, by seq, as far as this append has to know them. */
  readonly held: Map<number, Held>;
  moved: boolean;
}

export interface Batch {
  readonly sender: string;
  readonly entries: readonly Checked[];
}

/** The running hash after one more entry. */
export function nextRoot(root: string, hash: string): string {
  return hashAtOnce('sha256', root + hash, 'hex');
}

/** The end of the log. */
export async function readHead(db: Pick<Transaction<Tables>, 'selectFrom'>): Promise<LogHead> {
  const row = await db
    .selectFrom('entries')
    .select(['pos', 'root'])
    .orderBy('pos', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row ?? { pos: 0, root: firstRoot };
}

/** An entry with its place in the log. */
export interface Placed {
  readonly entry: Checked;
  readonly pos: number;
  readonly root: string;
}

/** Adds entries to the log's table, in the way that is fastest on a database. */
export type InsertEntries = (
  tx: Transaction<Tables>,
  placed: readonly Placed[],
  receivedMs: number,
) => Promise<void>;

/** Appends all batches; the caller holds the append lock and commits. */
export async function appendBatches(
  tx: Transaction<Tables>,
  batches: readonly Batch[],
  { nowMs, insertEntries }: { readonly nowMs: number; readonly insertEntries: InsertEntries },
): Promise<readonly Appended[]> {
  const chains = await loadChains(tx, batches);
  let { pos, root } = await readHead(tx);
  const placed: Placed[] = [];
  const quarantined: Tables['aside'][] = [];
  const edge = await edgeAt(tx, pos);
  const results: Omit<Appended, 'head' | 'tree'>[] = [];
  for (const { sender, entries } of batches) {
    const faults: { id: string; fault: EntryFault }[] = [];
    const touched = new Set<Chain>();
    const places: OpenPlace[] = [];
    let added = 0;
    let chain: Chain | null = null;
    for (const entry of entries) {
      // Mostly all are of one chain.
      if (chain === null || !isOf(chain, entry)) chain = chainOf(chains, entry);
      touched.add(chain);
      const verdict = judge(chain, entry);
      if (verdict === 'next') {
        pos += 1;
        root = nextRoot(root, entry.hash);
        placed.push({ entry, pos, root });
        chain.seq = entry.seq;
        chain.hash = entry.hash;
        chain.held.set(entry.seq, { hash: entry.hash, pos });
        chain.moved = true;
        added += 1;
        notePlace(places, entry, pos);
      } else if (verdict === 'held') {
        notePlace(places, entry, chain.held.get(entry.seq)?.pos ?? 0);
      } else if (verdict !== 'gap') {
        const id = `${entry.tablet}/${entry.epoch}/${entry.seq}`;
        faults.push({ id, fault: verdict });
        const { hash, sig, body } = entry;
        quarantined.push({ id, hash, fault: verdict, received_ms: nowMs, via: sender, sig, body });
      }
    }
    results.push({ acks: [...touched].map(toMark), faults, added, places });
  }
  await insertEntries(tx, placed, nowMs);
  const hashes = placed.map(({ entry }) => entry.hash);
  const grown = edge && (await extendTree(tx, edge, hashes));
  await writeAll(tx, { quarantined, chains: [...chains.values()].filter((chain) => chain.moved) });
  const tree = grown && stateOf(grown);
  return results.map((result) => ({ ...result, head: { pos, root }, tree }));
}

interface OpenPlace extends Place {
  count: number;
}

/** The entry lies at `pos`: one more of the stretch before, or the first of another. */
function notePlace(places: OpenPlace[], { tablet, epoch, seq }: Checked, pos: number): void {
  const last = places.at(-1);
  const isNext =
    last?.tablet === tablet &&
    last.epoch === epoch &&
    last.seq + last.count === seq &&
    last.index + last.count === pos - 1;
  if (last && isNext) last.count += 1;
  else places.push({ tablet, epoch, seq, count: 1, index: pos - 1 });
}

function judge(chain: Chain, entry: Checked): 'next' | 'held' | 'gap' | EntryFault {
  if (entry.seq <= chain.seq) {
    return chain.held.get(entry.seq)?.hash === entry.hash ? 'held' : (entry.fault ?? 'name-taken');
  }
  if (entry.seq > chain.seq + 1) return 'gap';
  if (entry.fault) return entry.fault;
  return entry.prev === chain.hash ? 'next' : 'prev-differs';
}

/** A stretch of a chain that an append speaks of. */
interface Range {
  readonly tablet: string;
  readonly epoch: string;
  low: number;
  high: number;
}

function askedOf(batches: readonly Batch[]): ReadonlyMap<string, Range> {
  const asked = new Map<string, Range>();
  let range: Range | undefined;
  for (const { entries } of batches)
    for (const entry of entries) {
      const { tablet, epoch, seq } = entry;
      if (!range || !isOf(range, entry)) {
        const id = `${tablet}/${epoch}`;
        range = asked.get(id) ?? { tablet, epoch, low: seq, high: seq };
        asked.set(id, range);
      }
      range.low = Math.min(range.low, seq);
      range.high = Math.max(range.high, seq);
    }
  return asked;
}

async function loadChains(tx: Transaction<Tables>, batches: readonly Batch[]): Promise<Map<string, Chain>> {
  const asked = askedOf(batches);
  const chains = new Map<string, Chain>();
  if (asked.size === 0) return chains;
  const tablets = [...new Set([...asked.values()].map((range) => range.tablet))];
  const ends = await tx.selectFrom('chains').selectAll().where('tablet', 'in', tablets).execute();
  for (const end of ends) {
    const id = `${end.tablet}/${end.epoch}`;
    const range = asked.get(id);
    if (!range) continue;
    const held = new Map<number, Held>();
    if (range.low <= end.seq) {
      const rows = await tx
        .selectFrom('entries')
        .select(['seq', 'hash', 'pos'])
        .where('tablet', '=', end.tablet)
        .where('epoch', '=', end.epoch)
        .where('seq', '>=', range.low)
        .where('seq', '<=', range.high)
        .execute();
      for (const { seq, hash, pos } of rows) held.set(seq, { hash, pos });
    }
    chains.set(id, { ...end, held, moved: false });
  }
  return chains;
}

function chainOf(chains: Map<string, Chain>, entry: Checked): Chain {
  const id = `${entry.tablet}/${entry.epoch}`;
  const there = chains.get(id);
  if (there) return there;
  const { tablet, epoch } = entry;
  const chain = { tablet, epoch, seq: 0, hash: firstRoot, held: new Map<number, Held>(), moved: false };
  chains.set(id, chain);
  return chain;
}

function isOf(chain: Pick<Chain, 'tablet' | 'epoch'>, entry: Checked): boolean {
  return chain.tablet === entry.tablet && chain.epoch === entry.epoch;
}

function toMark(chain: Chain): ChainMark {
  return { tablet: chain.tablet, epoch: chain.epoch, seq: chain.seq };
}

/** The entry's row, in the order of `entryColumns`. */
export function rowOf({ entry, pos, root }: Placed, receivedMs: number): readonly (string | number | null)[] {
  const { tablet, epoch, seq, hash, sig, kind, hlc, atMs, aheadMs, via } = entry;
  return [
    pos,
    tablet,
    epoch,
    seq,
    hash,
    sig,
    root,
    kind,
    hlc.ms,
    hlc.n,
    atMs,
    aheadMs,
    receivedMs,
    via,
    packedBody(entry),
  ];
}

async function writeAll(
  tx: Transaction<Tables>,
  all: { quarantined: readonly Tables['aside'][]; chains: readonly Chain[] },
): Promise<void> {
  for (let at = 0; at < all.quarantined.length; at += ROWS_AT_ONCE) {
    await tx
      .insertInto('aside')
      .values(all.quarantined.slice(at, at + ROWS_AT_ONCE))
      .onConflict((conflict) => conflict.columns(['id', 'hash']).doNothing())
      .execute();
  }
  for (let at = 0; at < all.chains.length; at += ROWS_AT_ONCE) {
    const rows = all.chains
      .slice(at, at + ROWS_AT_ONCE)
      .map(({ tablet, epoch, seq, hash }) => ({ tablet, epoch, seq, hash }));
    await tx
      .insertInto('chains')
      .values(rows)
      .onConflict((conflict) =>
        conflict.columns(['tablet', 'epoch']).doUpdateSet((row) => ({
          seq: row.ref('excluded.seq'),
          hash: row.ref('excluded.hash'),
        })),
      )
      .execute();
  }
}
