// Every signature in the log is checked in the end: after a backlog, after a stop in between, and each of them once.

import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Entry } from '../../shared/log/entry.ts';
import { createSignatureWalk } from '../../src/server/signatures.ts';
import { openStore } from '../../src/server/stores/open.ts';
import type { Store } from '../../src/server/stores/store.ts';
import { newFolder, startPostgres, type TestPostgres } from './databases.ts';
import { makeChain, newKey, startMs, toChecked } from './entries.ts';

let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());

describe.each(['sqlite', 'postgres'] as const)('`createSignatureWalk()` on %s', (dialect) => {
  const key = newKey();
  const forged = 'A'.repeat(86);
  let folder: ReturnType<typeof newFolder>;
  let store: Store;
  let told: string[];

  beforeEach(async () => {
    folder = newFolder();
    const database = dialect === 'postgres' ? ((await postgres?.newDatabase()) ?? null) : null;
    store = await openStore({ folder: folder.path, database, nowMs: () => startMs });
    await store.enrolTablet({ tablet: 't1', name: 'One', publicKey: newKey().publicKey }, startMs - 1);
    await store.enrolTablet({ tablet: 't1', name: 'One', publicKey: key.publicKey }, startMs);
    told = [];
  });
  afterEach(async () => {
    await store.close();
    folder.remove();
  });

  const append = (entries: readonly Entry[]) =>
    store.append([{ sender: 't1', entries: entries.map((entry) => toChecked(entry)) }], startMs);
  const startWalk = (from: Pick<Store, 'signedPage'> = store) =>
    createSignatureWalk({
      store: { ...store, ...from },
      onDiffers: ({ tablet, epoch, seq }) => told.push(`${tablet}/${epoch}/${seq}`),
      onFault: (error) => told.push(error.message),
    });
  /** A chain on which these signatures are forged. */
  const chainWith = (count: number, wrong: readonly number[], after?: Entry) =>
    makeChain({ tablet: 't1', count, key, ...(after ? { after } : {}) }).map((one) =>
      wrong.includes(one.seq) ? { ...one, sig: forged } : one,
    );

  it('tells of each signature that does not hold, and of no other', async () => {
    await append(chainWith(450, [3, 200, 201, 450]));
    await append(makeChain({ tablet: 'unknown', count: 2, key: newKey() }));
    await append(makeChain({ tablet: 't1', epoch: 'e0', count: 2 })); // of a time without a key
    const walk = startWalk();
    await walk.drained();
    await walk.stop();
    expect(told).toEqual(['t1/e1/3', 't1/e1/200', 't1/e1/201', 't1/e1/450']);
  });

  it('goes on by itself after an append, from where it was', async () => {
    const first = chainWith(2, [1]);
    await append(first);
    const walk = startWalk();
    await walk.drained();
    await append(chainWith(2, [4], first.at(-1)));
    await expect.poll(() => told, { timeout: 10_000 }).toEqual(['t1/e1/1', 't1/e1/4']);
    await walk.stop();
  });

  it('goes on after a stop where an earlier process was, and checks no signature again', async () => {
    const first = chainWith(3, [2]);
    await append(first);
    const before = startWalk();
    await before.drained();
    await before.stop();
    await append(chainWith(3, [5], first.at(-1)));
    const after = startWalk();
    await after.drained();
    await after.stop();
    expect(told).toEqual(['t1/e1/2', 't1/e1/5']);
  });

  it('passes over what was proved before its answer, and not over the same words with another signature', async () => {
    const chain = chainWith(3, [1, 2, 3]);
    await append(chain);
    const walk = startWalk();
    walk.proved({ hash: chain[0]?.hash ?? '', sig: 'B'.repeat(86) });
    walk.proved({ hash: chain[1]?.hash ?? '', sig: forged });
    await walk.drained();
    await walk.stop();
    expect(told).toEqual(['t1/e1/1', 't1/e1/3']);
  });

  it('tells of a store that fails, and begins again there', async () => {
    await append(chainWith(3, [2]));
    let fails = true;
    const walk = startWalk({
      signedPage: async (pos, limit) => {
        if (fails) throw new Error('away');
        return store.signedPage(pos, limit);
      },
    });
    await walk.drained();
    fails = false;
    await walk.drained();
    await walk.stop();
    expect(told).toEqual(['away', 't1/e1/2']);
  });
});
