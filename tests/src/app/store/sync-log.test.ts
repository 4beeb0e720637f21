// The tablet's log as sync sees it, over the store's own database.

import './browser.ts';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openStore, type Store } from '../../../../src/app/store/store.ts';
import { createSyncLog } from '../../../../src/app/store/sync-log.ts';
import { emptyMemory, type SyncLog } from '../../../../src/app/sync/ports.ts';
import { makeChain } from '../../../contract/entries.ts';

let store: Store;
let log: SyncLog;
let opened = 0;
const name = () => `sync-log-${opened}`;
const open = () =>
  openStore({
    clock: { nowMs: () => 1_772_431_200_000 },
    appVersion: '0.1.0',
    tabletName: 'front',
    name: name(),
  });

beforeEach(async () => {
  opened += 1;
  store = await open();
  log = createSyncLog(store);
});
afterEach(() => store.close());

describe('createSyncLog()', () => {
  test('tells the end of every chain, own and others’', async () => {
    const one = makeChain({ tablet: 'A', epoch: 'e1', count: 12 });
    const two = makeChain({ tablet: 'A', epoch: 'e2', count: 1 });
    await log.takeIn([...two, ...one]);
    const heads = await log.heads();
    expect(heads).toHaveLength(3);
    for (const chain of [one, two]) {
      const last = chain.at(-1);
      expect(heads).toContainEqual({ tablet: 'A', epoch: last?.epoch, seq: last?.seq, hash: last?.hash });
    }
    expect(heads.find((head) => head.tablet === store.identity.tablet)?.seq).toBe(1);
  });

  test('hands out a chain after a number, in order, as many as asked', async () => {
    const chain = makeChain({ tablet: 'A', epoch: 'e1', count: 9 });
    await log.takeIn([...chain].reverse());
    const seqs = async (after: number, limit: number) =>
      (await log.entriesAfter({ tablet: 'A', epoch: 'e1' }, after, limit)).map(({ seq }) => seq);
    expect(await seqs(0, 4)).toEqual([1, 2, 3, 4]);
    expect(await seqs(7, 4)).toEqual([8, 9]);
    expect(await seqs(9, 4)).toEqual([]);
  });

  test('tells of own entries only, and is silent once told to stop', async () => {
    let told = 0;
    const stop = log.onAppend(() => {
      told += 1;
    });
    await log.takeIn(makeChain({ tablet: 'A', epoch: 'e1', count: 2 }));
    expect(told).toBe(0);
    await store.append([{ kind: 'tablet.named', payload: { name: 'rear' } }], null);
    expect(told).toBe(1);
    stop();
    await store.append([{ kind: 'tablet.named', payload: { name: 'front' } }], null);
    expect(told).toBe(1);
  });

  test('remembers beside the log, over a restart', async () => {
    expect(await log.readMemory()).toEqual(emptyMemory);
    const memory = { ...emptyMemory, serverEpoch: 's1', cursor: `3.${'0'.repeat(16)}`, acked: { 'A/e1': 3 } };
    await log.writeMemory(memory);
    await store.close();
    store = await open();
    expect(await createSyncLog(store).readMemory()).toEqual(memory);
  });
});
