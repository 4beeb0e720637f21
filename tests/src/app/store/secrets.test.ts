// What opens something lies beside the log: unreadable without this browser's key, handed to the server once, gone when the tablet is shut out.

import './browser.ts';

import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { keep, readKept, seenName } from '../../../../src/app/store/preferences.ts';
import { keepPin, notePinsHanded, pinsToHand, readPin } from '../../../../src/app/store/secrets.ts';
import { openStore, type Store } from '../../../../src/app/store/store.ts';
import { createSyncLog } from '../../../../src/app/store/sync-log.ts';
import { enrolTablet } from '../../../../src/app/sync/enrol.ts';
import { createSyncKey } from '../../../../src/app/sync/key.ts';
import { startSync } from '../../../../src/app/sync/loop.ts';
import { makeCode } from '../../../../src/server/codes.ts';
import { newWorld, until } from '../../server/tablets.ts';
import { usePlant } from '../../server/use-plant.ts';

const plant = usePlant();
const check = { salt: 'feedfacefeedface', hash: 'c0ffee00'.repeat(8), rounds: 1_000 };
let turn = 0;
let store: Store;
const name = () => `secrets-${turn}`;
const open = () =>
  openStore({
    clock: { nowMs: Date.now, isSure: () => true },
    appVersion: '1',
    tabletName: 'front',
    name: name(),
  });

beforeEach(async () => {
  turn += 1;
  localStorage.clear();
  store = await open();
});
afterEach(() => store.close());

describe('what checks a PIN on a tablet', () => {
  test('is read again after a restart, and by nothing but the key that the browser keeps', async () => {
    await keepPin(store.log, { pin: 'one', check, isOwn: true });
    const rows = await store.log.meta.toArray();
    const bytes = rows.map(({ value }) => {
      const { box } = value as { box?: { bytes: ArrayBuffer } };
      return box ? Buffer.from(box.bytes).toString('latin1') : JSON.stringify(value);
    });
    for (const text of bytes) for (const part of [check.salt, check.hash]) expect(text).not.toContain(part);
    const key = rows.find((row) => row.key === 'secret-key')?.value as CryptoKey;
    await expect(crypto.subtle.exportKey('raw', key)).rejects.toThrow();
    await store.close();
    store = await open();
    expect(await readPin(store.log, 'one')).toEqual(check);
    expect(await readPin(store.log, 'two')).toBeNull();
  });

  test('waits for the server where it was set here, once for each life of it', async () => {
    await keepPin(store.log, { pin: 'own', check, isOwn: true });
    await keepPin(store.log, { pin: 'learnt', check, isOwn: false });
    const waiting = async (epoch: string) => (await pinsToHand(store.log, epoch)).map(({ pin }) => pin);
    expect(await waiting('e1')).toEqual(['own']);
    await notePinsHanded(store.log, ['own'], 'e1');
    expect(await waiting('e1')).toEqual([]);
    expect(await waiting('e2')).toEqual(['own']);
  });

  test('goes to the server with the entry that set it, and is forgotten once the tablet is shut out', async () => {
    const { running } = plant.server;
    const { keys, tablet } = store.identity;
    if (!keys) throw new Error('no keys');
    await keepPin(store.log, { pin: 'own', check, isOwn: true });
    await keepPin(store.log, { pin: 'of-no-entry', check, isOwn: true });
    const payload = { person: 'boss', name: 'Bea', role: 'lead', badge: 'B-2', pinSet: 'own' } as const;
    await store.append([{ kind: 'person.added', payload }], null);
    await keep(store.cache, seenName('boss'), { confirmedMs: 1 });
    await keep(store.cache, 'other', 1);
    const [log, key, world] = [
      createSyncLog(store),
      await createSyncKey(tablet, keys),
      newWorld(running.url),
    ];
    const { code } = await makeCode(running.store, Date.now());
    expect(await enrolTablet({ log, key, world }, { code, name: 'front' })).toMatchObject({ ok: true });
    const stop = new AbortController();
    const loop = startSync({ log, key, world, onStatus: () => undefined, signal: stop.signal });
    const there = (pin: string) => running.store.findPin(JSON.stringify([tablet, pin]));
    await until('the PIN', async () => (await there('own')) !== null);
    expect(await there('of-no-entry')).toBeNull();
    expect(await readPin(store.log, 'own')).toEqual(check);
    const count = await store.log.entries.count();
    await running.store.revokeTablet(tablet, Date.now());
    await running.store.tell({ kind: 'revoked', tablet });
    await until('that it is forgotten', async () => (await readPin(store.log, 'own')) === null);
    await until('whom it saw', async () => (await readKept(store.cache, seenName('boss'))) === null);
    expect(await readKept(store.cache, 'other')).toBe(1);
    expect(await store.log.entries.count()).toBe(count);
    expect(await store.log.meta.get('secret-key')).toBeUndefined();
    stop.abort();
    await loop.done;
  });
});
