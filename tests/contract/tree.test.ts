// The log's hash tree in every store: that of the entries in the log's order, kept up with every append, and made anew where it is lost.

import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { fromHex } from '../../shared/log/bytes.ts';
import {
  consistencyHolds,
  consistencyRanges,
  emptyEdge,
  emptyRoot,
  growTree,
  inclusionHolds,
  inclusionRanges,
  leafHash,
  nodeHash,
  rootOf,
} from '../../shared/log/tree.ts';
import { hashOf } from '../../src/server/keys.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { restoreInto } from '../../src/server/stores/restore.ts';
import type { Checked, Store } from '../../src/server/stores/store.ts';
import { treeEdgeName } from '../../src/server/stores/tables.ts';
import { newFolder, startPostgres, type TestPostgres } from './databases.ts';
import { makeChain, startMs, toChecked } from './entries.ts';

let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());

const nowMs = () => startMs;
const bytes = (hex: string) => fromHex(hex, 32) ?? emptyRoot;
const leavesOf = (hashes: readonly string[]) => hashes.map((hash) => leafHash(bytes(hash)));
/** By the shared tree, whose own test holds it to the published one. */
const rootHex = (hashes: readonly string[]) =>
  Buffer.from(rootOf(growTree(emptyEdge, leavesOf(hashes), { join: nodeHash }))).toString('hex');

/** Entries that only a store looks at: their hashes name them, and no text is sealed. */
function bareChain(tablet: string, count: number): readonly Checked[] {
  const [model] = makeChain({ tablet, count: 1 }).map((entry) => toChecked(entry));
  if (!model) throw new Error('one was asked for');
  let prev = model.prev;
  return Array.from({ length: count }, (_, at) => {
    const hash = hashOf(`${tablet} ${at}`);
    const entry = { ...model, seq: at + 1, prev, hash, body: '{}' };
    prev = hash;
    return entry;
  });
}

describe.each(['sqlite', 'postgres'] as const)('the tree of a store on %s', (dialect) => {
  let folder: ReturnType<typeof newFolder>;
  let database: string | null;
  let store: Store;
  beforeEach(async () => {
    folder = newFolder();
    database = dialect === 'postgres' ? ((await postgres?.newDatabase()) ?? '') : null;
    store = await openStore({ folder: folder.path, database, nowMs });
  });
  afterEach(async () => {
    await store.close();
    folder.remove();
  });

  const logHashes = async () => (await store.sealedPage(0, 100_000)).map((row) => row.hash);

  it('is that of the log after every append, whatever was joined, held before, or put aside', async () => {
    expect(await store.tree()).toEqual({ size: 0, root: Buffer.from(emptyRoot).toString('hex') });
    const [a, b] = ['a', 'b'].map((tablet) =>
      makeChain({ tablet, count: 30 }).map((entry) => toChecked(entry)),
    );
    if (!a || !b) throw new Error('two were asked for');
    const steps = [
      [a.slice(0, 1)],
      [a.slice(1, 7), b.slice(0, 5)],
      [a.slice(3, 9)],
      [b.slice(20)],
      [a.slice(9), b.slice(5)],
    ];
    for (const batches of steps) {
      const appended = await store.append(
        batches.map((entries) => ({ sender: 'x', entries })),
        startMs,
      );
      const hashes = await logHashes();
      const tree = { size: hashes.length, root: rootHex(hashes) };
      expect(await store.tree()).toEqual(tree);
      appended.forEach(({ tree: told, places }, at) => {
        expect(told).toEqual(tree);
        const placed = places.flatMap(({ tablet, seq, count, index }) =>
          Array.from({ length: count }, (_, more) => [`${tablet} ${seq + more}`, hashes[index + more]]),
        );
        const taken = (batches[at] ?? []).filter(({ hash }) => hashes.includes(hash));
        expect(placed).toEqual(taken.map(({ tablet, seq, hash }) => [`${tablet} ${seq}`, hash]));
      });
    }
    expect((await store.tree())?.size).toBe(60);
  });

  it('proves places and growth across its kept levels, of today and of earlier sizes', async () => {
    const chain = bareChain('t1', 66_100);
    for (let at = 0; at < chain.length; at += 2_000)
      await store.append([{ sender: 't1', entries: chain.slice(at, at + 2_000) }], startMs);
    const hashes = chain.map(({ hash }) => hash);
    const { size = 0, root } = (await store.tree()) ?? {};
    expect({ size, root }).toEqual({ size: hashes.length, root: rootHex(hashes) });
    const rootAt = async (at: number) => bytes((await store.treeHashes([{ from: 0, to: at }]))[0] ?? '');
    for (const [index, at] of [
      [0, size],
      [255, size],
      [65_535, 65_536],
      [66_099, size],
      [300, 511],
      [0, 1],
    ] as const) {
      const proof = (await store.treeHashes(inclusionRanges(index, at))).map(bytes);
      const leaf = leafHash(bytes(hashes[index] ?? ''));
      expect(inclusionHolds({ leaf, index, size: at, root: await rootAt(at) }, proof)).toBe(true);
    }
    for (const [from, to] of [
      [1, size],
      [256, 257],
      [65_536, size],
      [65_535, 66_000],
      [511, 65_537],
    ] as const) {
      const proof = (await store.treeHashes(consistencyRanges(from, to))).map(bytes);
      const [old, now] = [
        { size: from, root: await rootAt(from) },
        { size: to, root: await rootAt(to) },
      ];
      expect(consistencyHolds(old, now, proof)).toBe(true);
    }
    await expect(store.treeHashes([{ from: 0, to: size + 1 }])).rejects.toThrow(/must/);
  }, 60_000);

  it('is made out of the entries after a restore, also where another was there before', async () => {
    const chain = bareChain('t1', 300);
    await store.append([{ sender: 't1', entries: chain.slice(0, 290) }], startMs);
    const file = join(folder.path, 'copy.sqlite');
    await store.backupTo(file);
    await store.append([{ sender: 't1', entries: chain.slice(290) }], startMs);
    await store.close();
    await restoreInto({ file, folder: folder.path, database, nowMs, replace: true });
    store = await openStore({ folder: folder.path, database, nowMs });
    const hashes = chain.slice(0, 290).map(({ hash }) => hash);
    expect(await store.tree()).toEqual({ size: 290, root: rootHex(hashes) });
    await store.append([{ sender: 't2', entries: bareChain('t2', 20) }], startMs);
    expect(await store.tree()).toEqual({ size: 310, root: rootHex(await logHashes()) });
  });
});

it('a log with a hole has no tree, and takes entries all the same', async () => {
  const folder = newFolder();
  const open = () => openStore({ folder: folder.path, database: null, nowMs });
  const chain = makeChain({ tablet: 't1', count: 6 }).map((entry) => toChecked(entry));
  const first = await open();
  await first.append([{ sender: 't1', entries: chain.slice(0, 4) }], startMs);
  await first.close();
  const raw = new Database(join(folder.path, 'log.sqlite'));
  raw.prepare('delete from meta where key = ?').run(treeEdgeName);
  raw.exec('delete from entries where pos = 2; delete from tree_nodes');
  raw.close();
  const store = await open();
  expect(await store.tree()).toBeNull();
  const [appended] = await store.append([{ sender: 't1', entries: chain.slice(4) }], startMs);
  expect(appended).toMatchObject({ added: 2, tree: null, acks: [{ seq: 6 }] });
  await expect(store.treeHashes([{ from: 0, to: 4 }])).rejects.toThrow(/must hold/);
  await store.close();
  folder.remove();
});
