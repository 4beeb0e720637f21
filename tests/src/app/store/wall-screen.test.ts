// The store of a tablet that was let in as a wall screen.

import './browser.ts';

import { afterEach, beforeEach, expect, test } from 'vitest';
import { LogDatabase } from '../../../../src/app/store/database.ts';
import { openStore, type Store } from '../../../../src/app/store/store.ts';
import { createSyncLog } from '../../../../src/app/store/sync-log.ts';
import { emptyMemory, isScreenIn } from '../../../../src/app/sync/ports.ts';
import { startMs } from '../../../shared/floor/story.ts';

let turn = 0;
let nowMs = startMs;
let opened: Store[] = [];
const options = () => ({
  clock: { nowMs: () => nowMs++ },
  appVersion: '0.1.0',
  tabletName: 'hall',
  name: `wall-${turn}`,
});
const named = { kind: 'tablet.named', payload: { name: 'rear' } } as const;

/** Opened anew after the tablet was let in. */
async function openScreen(): Promise<Store> {
  const before = await openStore(options());
  expect(before.isScreen).toBe(false);
  const enrolled = { plant: 'Brae Works', serverKey: '', screen: true };
  await createSyncLog(before).writeMemory({ ...emptyMemory, enrolled });
  await before.close();
  const store = await openStore(options());
  opened.push(store);
  return store;
}

beforeEach(() => {
  turn += 1;
  nowMs = startMs;
  localStorage.clear();
});
afterEach(async () => {
  for (const store of opened) await store.close();
  opened = [];
});

test('is known when it is opened, refuses every write and tells no fault by that', async () => {
  const store = await openScreen();
  const faults: string[] = [];
  store.onFault((fault) => faults.push(fault));
  expect(store.isScreen).toBe(true);
  await expect(store.append([named], null)).rejects.toThrow(TypeError);
  expect(store.count()).toBe(1);
  expect(faults).toEqual([]);
});

test('tells its present life after its chain began a new one', async () => {
  const store = await openScreen();
  const { epoch } = store.identity;
  await store.beginNewLife({ epoch });
  expect(store.identity.epoch).not.toBe(epoch);
  const log = new LogDatabase(options().name);
  expect((await log.meta.get('identity'))?.value).toMatchObject({ epoch: store.identity.epoch });
  log.close();
});

test('no memory, or one of a tablet that was let in to work, is none of a screen', () => {
  for (const memory of [undefined, null, emptyMemory, { enrolled: { plant: '', serverKey: '' } }])
    expect(isScreenIn(memory)).toBe(false);
  expect(isScreenIn({ enrolled: { screen: true } })).toBe(true);
});
