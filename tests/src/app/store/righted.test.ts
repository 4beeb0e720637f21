// A tablet whose log holds readings of a clock far ahead: once the true time is known it goes on, what it wrote is told again at its
// time, and nothing of anybody else's wrong clock stays in its order.

import './browser.ts';

import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { verifyChains } from '../../../../shared/log/chain.ts';
import { aheadLimitMs } from '../../../../shared/log/clock.ts';
import { chainId, type Entry } from '../../../../shared/log/entry.ts';
import { entrySchema } from '../../../../shared/log/entry-schema.ts';
import { draftOf, sealEntry } from '../../../../shared/log/seal.ts';
import { openStore, type Store } from '../../../../src/app/store/store.ts';
import { createSyncLog } from '../../../../src/app/store/sync-log.ts';
import { checkSignatures } from '../../../../src/cli/log-file.ts';
import { makeChain } from '../../../contract/entries.ts';

const trueMs = Date.UTC(2026, 2, 2, 8, 5);
const far = { ms: 2 ** 53 - 1, n: 2 ** 53 - 1 };
let wallMs = trueMs;
let isSure = false;
let turn = 0;
let opened: Store[] = [];

const open = async (name = `righted-${turn}`) => {
  const clock = { nowMs: () => wallMs++, isSure: () => isSure };
  const store = await openStore({ clock, appVersion: '0.1.0', tabletName: 'front', name });
  opened.push(store);
  return store;
};
const closeAll = async () => {
  for (const store of opened) await store.close();
  opened = [];
};

beforeEach(() => {
  turn += 1;
  wallMs = trueMs;
  isSure = false;
  localStorage.clear();
});
afterEach(closeAll);

const named = (name: string) => ({ kind: 'tablet.named' as const, payload: { name } });
const ofFar = (hlc: Entry['hlc']) => {
  const [first] = makeChain({ tablet: 'other', count: 1 });
  return sealEntry({ ...draftOf(first as Entry), hlc });
};
const all = async (store: Store) => {
  const entries: Entry[] = [];
  await store.readAll((chunk) => void entries.push(...chunk));
  return entries;
};
const right = (store: Store, offMs: number, acked: Readonly<Record<string, number>> = {}) =>
  createSyncLog(store).rightClocks?.({ nowMs: trueMs, offMs, acked });

describe('a tablet that once followed a reading out of all bounds', () => {
  test('goes on at its next start, and what it wrote since is told again so that any reader takes it', async () => {
    const before = await open();
    const first = before.identity.epoch;
    await before.log.entries.bulkAdd([ofFar(far)].map((entry) => ({ ...entry, ...far, entry })));
    const [sent] = await before.append([named('one')], 'p1');
    // As an older app wrote it: the reading after the one that it had seen.
    const poisoned = sealEntry({
      ...draftOf(sent as Entry),
      seq: 3,
      prev: sent?.hash ?? '',
      hlc: { ms: far.ms, n: 2 ** 53 },
      payload: { name: 'two' },
    });
    await before.log.entries.add({ ...poisoned, ...poisoned.hlc, entry: poisoned });
    await before.log.meta.put({ key: 'head', value: { seq: 3, hash: poisoned.hash, hlc: poisoned.hlc } });
    await closeAll();

    const store = await open();
    await store.append([named('three')], 'p1');
    const entries = await all(store);
    for (const entry of entries) entrySchema.parse(entry);
    expect(verifyChains(entries).ok).toBe(true);
    const names = entries.filter(({ kind }) => kind === 'tablet.named').map(({ payload }) => payload['name']);
    expect(names).toEqual(['one', 'two', 'three']);
    expect(store.identity.epoch).not.toBe(first);
    expect(store.floor().tablets.get(store.identity.tablet)?.name).toBe('three');
    const kept = await store.log.aside.toArray();
    expect(kept.map(({ value }) => (value as Entry).hash)).toContain(poisoned.hash);
    const opening = entries.find(({ epoch, seq }) => epoch === store.identity.epoch && seq === 1);
    expect(opening?.payload['previous']).toEqual({ epoch: first, seq: 2 });
    const checked = await checkSignatures(entries.filter(({ tablet }) => tablet === store.identity.tablet));
    expect(entries.every((entry) => checked.holds(entry))).toBe(true);
  });
});

describe('a tablet whose clock was set to 2099', () => {
  test('tells again what it wrote then, at the time that it ought to have shown, with references kept', async () => {
    const aheadMs = Date.UTC(2099, 0, 1) - trueMs;
    wallMs = trueMs - 120_000;
    const store = await open();
    await store.append([named('before')], 'p1');
    wallMs = trueMs + aheadMs - 60_000;
    const [wrong] = await store.append([named('while wrong')], 'p1');
    const before = chainId(wrong as Entry);
    const correction = { of: `${before}/3`, line: null, slot: null, reason: 'slip' };
    await store.append([{ kind: 'entry.corrected', payload: correction }], 'p1');
    wallMs = trueMs + aheadMs;
    await right(store, -aheadMs, { [before]: 2 });

    const own = (await all(store)).filter(({ epoch }) => epoch === store.identity.epoch);
    expect(own.map(({ kind }) => kind)).toEqual(['tablet.opened', 'tablet.named', 'entry.corrected']);
    for (const { hlc, at } of own) {
      expect(Math.abs(hlc.ms - (trueMs - 60_000))).toBeLessThan(1_000);
      expect(Math.abs(Date.parse(at) - (trueMs - 60_000))).toBeLessThan(1_000);
    }
    expect(own[2]?.payload['of']).toBe(`${chainId(own[1] as Entry)}/2`);
    expect(store.floor().tablets.get(store.identity.tablet)?.name).toBe('while wrong');
    wallMs = trueMs + 1_000;
    isSure = true;
    await store.append([named('after')], 'p1');
    expect(store.floor().tablets.get(store.identity.tablet)?.name).toBe('after');
    expect(verifyChains(await all(store)).ok).toBe(true);
  });

  test('changes nothing where all is within the limit', async () => {
    const store = await open();
    const { epoch } = store.identity;
    wallMs = trueMs + aheadLimitMs - 60_000;
    await store.append([named('a little ahead')], 'p1');
    const before = await all(store);
    await right(store, -aheadLimitMs + 60_000);
    expect(await all(store)).toEqual(before);
    expect(store.identity.epoch).toBe(epoch);
  });
});

describe("another tablet's reading", () => {
  test('beyond the limit is not followed once the true time is known, and one within is', async () => {
    const store = await open();
    isSure = true;
    await store.takeIn([ofFar({ ms: trueMs + 2 * aheadLimitMs, n: 0 })]);
    const [own] = await store.append([named('mine')], 'p1');
    expect(own?.hlc.ms).toBeLessThan(trueMs + 60_000);
    const within = makeChain({ tablet: 'near', count: 1, atMs: trueMs + aheadLimitMs / 2 });
    await store.takeIn(within);
    const [after] = await store.append([named('mine')], 'p1');
    expect(after?.hlc.ms).toBe(within[0]?.hlc.ms);
  });

  test('beyond the limit is quarantined, so that it does not stand after all that happens', async () => {
    const store = await open();
    await store.takeIn([ofFar({ ms: trueMs + 2 * aheadLimitMs, n: 0 })]);
    await right(store, 0);
    expect((await all(store)).map(({ tablet }) => tablet)).toEqual([store.identity.tablet]);
    expect(await store.log.aside.count()).toBe(1);
    await store.append([named('mine')], 'p1');
    expect(verifyChains(await all(store)).ok).toBe(true);
  });
});
