// A new tablet at a plant that runs: the tablet's own store and sync against the real server, from joining until the history behind
// the bootstrap snapshot is here, was folded and compared.

import '../store/browser.ts';

import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { simulateShift } from '../../../../demo/simulate.ts';
import { applyAll } from '../../../../shared/floor/fold.ts';
import { emptyState } from '../../../../shared/floor/state.ts';
import { verifyChains } from '../../../../shared/log/chain.ts';
import type { Entry } from '../../../../shared/log/entry.ts';
import { compareEntries } from '../../../../shared/log/order.ts';
import { openStore, type Store } from '../../../../src/app/store/store.ts';
import { createSyncLog } from '../../../../src/app/store/sync-log.ts';
import { enrolTablet } from '../../../../src/app/sync/enrol.ts';
import { createCaller } from '../../../../src/app/sync/http.ts';
import { createSyncKey } from '../../../../src/app/sync/key.ts';
import { startSync } from '../../../../src/app/sync/loop.ts';
import type { SnapshotPort, SyncLog } from '../../../../src/app/sync/ports.ts';
import { giveSnapshot } from '../../../../src/app/sync/snapshot.ts';
import { makeCode } from '../../../../src/server/codes.ts';
import { newWorld, startTestServer, type TestServer, until } from '../../server/tablets.ts';

/** Ends a little before the clocks of the tablets. */
const shift = [...simulateShift({ seed: 4, hours: 3, startMs: Date.now() - 4 * 3_600_000 }).entries].sort(
  compareEntries,
);

const openedMs = Date.now() - 86_400_000;

let server: TestServer;
let old: RealTablet;

interface RealTablet {
  readonly store: Store;
  readonly log: SyncLog;
  readonly give: (change?: (bytes: Uint8Array) => Uint8Array) => Promise<void>;
  readonly stop: () => Promise<void>;
}

let opened = 0;
const running = new Set<RealTablet>();

/** The old tablet was opened before the shift: its clock goes on with what it sees. */
const openReal = (name: string) =>
  openStore({
    clock: { nowMs: name === 'old' ? () => openedMs : Date.now },
    appVersion: '0.1.0',
    tabletName: name,
    name,
  });

/** A tablet with the app's own store, joined and syncing. */
async function join(name = `real-${++opened}`): Promise<RealTablet> {
  // Another device: it remembers nothing of the one before.
  if (name !== 'old') localStorage.clear();
  const store = await openReal(name);
  const { keys, tablet } = store.identity;
  if (!keys) throw new Error('no keys');
  const log = createSyncLog(store);
  const key = await createSyncKey(tablet, keys);
  const world = newWorld(server.running.url);
  const { code } = await makeCode(server.running.store, Date.now());
  const enrolled = await enrolTablet({ log, key, world }, { code, name });
  if (!enrolled.ok) throw new Error(enrolled.error.code);
  const controller = new AbortController();
  const loop = startSync({ log, key, world, onStatus: () => undefined, signal: controller.signal });
  const real: RealTablet = {
    store,
    log,
    give: async (change = (bytes) => bytes) => {
      const port = log.snapshots as SnapshotPort;
      const make = async () => {
        const bytes = await port.make();
        return bytes && change(bytes);
      };
      const { cursor } = await log.readMemory();
      await giveSnapshot({
        log: { ...log, snapshots: { ...port, make } },
        caller: createCaller(world, key),
        cursor,
      });
    },
    stop: async () => {
      running.delete(real);
      controller.abort();
      await loop.done;
      await store.close();
    },
  };
  running.add(real);
  return real;
}

async function all(store: Store): Promise<Entry[]> {
  const entries: Entry[] = [];
  await store.readAll((chunk) => void entries.push(...chunk));
  return entries;
}

const posOf = async () => (await server.running.store.head()).pos;
const cursorPos = async ({ log }: RealTablet) => Number((await log.readMemory()).cursor?.split('.')[0] ?? 0);

beforeAll(async () => {
  server = await startTestServer();
  // Started twice: the second time it goes on from what it had folded, which is the state that it can give as a bootstrap snapshot.
  const first = await openReal('old');
  await first.takeIn(shift.slice(0, 400));
  await until('its own snapshot', async () => (await first.cache.kept.get('snapshot')) !== undefined);
  await first.close();
  old = await join('old');
  await old.store.takeIn(shift);
  await old.store.append([{ kind: 'tablet.named', payload: { name: 'front' } }], null);
  await until('the shift on the server', async () => (await posOf()) === shift.length + 2, 60_000);
  await until('the cursor', async () => (await cursorPos(old)) === shift.length + 2, 60_000);
}, 120_000);
afterEach(async () => {
  for (const tablet of [...running]) if (tablet !== old) await tablet.stop();
});
afterAll(async () => {
  await old.stop();
  await server.stop();
});

describe('a new tablet', () => {
  it('starts from the state that another one gave, and ends with the whole log, folded here', async () => {
    await old.give();
    expect(await server.running.store.snapshotPos()).toBeGreaterThan(0);
    const fresh = await join();
    await until('the bootstrap snapshot', () => fresh.store.floor().runs.size > 0);
    expect(fresh.store.floor().slots).toEqual(old.store.floor().slots);
    await until(
      'the history',
      () => fresh.store.behind() === null && fresh.store.count() > shift.length,
      60_000,
    );
    await until('the log', async () => (await cursorPos(fresh)) === (await posOf()));
    // A difference would be told right after.
    await new Promise((resolve) => setTimeout(resolve, 300));
    const entries = await all(fresh.store);
    expect(verifyChains(entries)).toMatchObject({ ok: true, firstBroken: null });
    expect(entries.filter((entry) => entry.kind === 'state.differed')).toEqual([]);
    expect(fresh.store.floor()).toEqual(applyAll(emptyState(), entries));
    expect((await fresh.log.readMemory()).history).toBeNull();
  });

  it('that was given a wrong state ends with its own, and every tablet can read whose that was', async () => {
    await old.give((bytes) => {
      const value = JSON.parse(new TextDecoder().decode(bytes));
      value.state.blocks.of = [];
      return new TextEncoder().encode(JSON.stringify(value));
    });
    const fresh = await join();
    const told = async (store: Store) => (await all(store)).find((entry) => entry.kind === 'state.differed');
    await until('word of the difference', async () => (await told(old.store)) !== undefined, 60_000);
    expect((await told(old.store))?.payload).toMatchObject({
      from: old.store.identity.tablet,
      parts: ['blocks'],
    });
    expect((await told(old.store))?.tablet).toBe(fresh.store.identity.tablet);
    expect(fresh.store.floor().blocks).toEqual(old.store.floor().blocks);
    expect(fresh.store.floor().blocks.size).toBeGreaterThan(0);
  });
});
