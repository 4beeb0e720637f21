// The tablet's log in a browser database: one sealed chain, all or nothing, and a floor that is the fold of what is kept.

import './browser.ts';

import Dexie from 'dexie';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Draft } from '../../../../shared/floor/draft.ts';
import { applyAll } from '../../../../shared/floor/fold.ts';
import type { DraftEntry } from '../../../../shared/floor/kinds.ts';
import { emptyState } from '../../../../shared/floor/state.ts';
import { verifyChains } from '../../../../shared/log/chain.ts';
import type { Entry } from '../../../../shared/log/entry.ts';
import { compareEntries } from '../../../../shared/log/order.ts';
import { CacheDatabase, entryToRow } from '../../../../src/app/store/database.ts';
import { readSignedHeads, signHead, withHeads } from '../../../../src/app/store/signed-heads.ts';
import { openStore, type Store, StoreError } from '../../../../src/app/store/store.ts';
import { checkSignatures } from '../../../../src/cli/log-file.ts';
import {
  beginStory,
  counted,
  idOf,
  started,
  startMs,
  tellPlant,
  verified,
} from '../../../shared/floor/story.ts';

let name = '';
let turn = 0;
let nowMs = startMs;
let opened: Store[] = [];

async function open(): Promise<Store> {
  const store = await openStore({
    clock: { nowMs: () => nowMs++ },
    appVersion: '0.1.0',
    tabletName: 'Line 1 front',
    name,
  });
  opened.push(store);
  return store;
}

async function close(store: Store): Promise<void> {
  opened = opened.filter((each) => each !== store);
  await store.close();
}

async function allEntries(store: Store): Promise<Entry[]> {
  const entries: Entry[] = [];
  await store.readAll((chunk) => void entries.push(...chunk));
  return entries;
}

async function snapshotKept(): Promise<void> {
  const cache = new CacheDatabase(`${name}-cache`);
  await vi.waitFor(async () => expect(await cache.kept.get('snapshot')).toBeDefined());
  cache.close();
}

const fullFold = (entries: readonly Entry[]) => applyAll(emptyState(), [...entries].sort(compareEntries));
const panels = (add: number): DraftEntry => ({ kind: 'panels.counted', payload: counted('run-1', add) });
/** A verdict at a cart, something between, and what stands ready on the cart by that verdict. */
const cartDrafts: readonly Draft[] = [
  { kind: 'reel.verified', payload: verified(null, 'R-100', { reel: 'K1' }) },
  panels(1),
  ([of = '']) => ({
    kind: 'cart.filled',
    payload: {
      cart: 'CA',
      line: 'L1',
      setup: 'brook-top-a',
      slot: 'M1-F-001',
      feeder: null,
      reel: 'K1',
      part: 'R-100',
      supplierPart: null,
      lot: null,
      dateCode: null,
      quantity: 1000,
      of,
    },
  }),
];
const otherTablet = () => {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1'));
  for (let at = 0; at < 5; at += 1) story.tell('panels.counted', counted('run-1', 2));
  return story.entries;
};

beforeEach(() => {
  turn += 1;
  name = `store-${turn}`;
  nowMs = startMs;
  localStorage.clear();
});

afterEach(async () => {
  for (const store of opened) await store.close();
  opened = [];
});

describe('append()', () => {
  test('a draft is told the ids of the entries before it, and names one of them', async () => {
    const store = await open();
    const [verdict, counting, filled] = await store.append(cartDrafts, 'ana');
    if (!verdict || !counting || !filled) throw new Error('three were told');
    expect(filled.payload['of']).toBe(idOf(verdict));
    expect(store.floor().carts.get('CA')?.get('M1-F-001')).toMatchObject({ of: idOf(verdict), reel: 'K1' });
    expect((await allEntries(store)).map(({ kind }) => kind)).toEqual([
      'tablet.opened',
      'reel.verified',
      'panels.counted',
      'cart.filled',
    ]);
  });

  test('a write that fails half way leaves neither a verdict nor what follows from it', async () => {
    const store = await open();
    const before = await allEntries(store);
    let failed = 0;
    store.log.entries.hook('creating', (_key, row) => {
      if (row.entry.kind !== 'cart.filled' || failed > 0) return;
      failed += 1;
      throw new Error('the disk is full');
    });
    await expect(store.append(cartDrafts, 'ana')).rejects.toThrow(StoreError);
    expect(failed).toBe(1);
    expect(await allEntries(store)).toEqual(before);
    expect(store.floor().carts.size).toBe(0);
    // What failed once is written whole the next time, with the number that is free by then.
    const [verdict, , filled] = await store.append(cartDrafts, 'ana');
    expect(filled?.payload['of']).toBe(verdict && idOf(verdict));
    expect(verifyChains(await allEntries(store))).toMatchObject({ ok: true });
  });

  test('seals one chain that verifies, signed by the key in its first entry', async () => {
    const store = await open();
    await store.append([{ kind: 'run.started', payload: started('run-1') }, panels(1)], 'ana');
    await store.append([panels(2)], null);
    const entries = await allEntries(store);
    expect(entries.map(({ seq, kind, who }) => [seq, kind, who])).toEqual([
      [1, 'tablet.opened', null],
      [2, 'run.started', 'ana'],
      [3, 'panels.counted', 'ana'],
      [4, 'panels.counted', null],
    ]);
    await signHead(store.log, store.identity);
    const heads = await readSignedHeads(store.log);
    const signatures = checkSignatures(withHeads(entries, store.identity.tablet, heads));
    expect(signatures).toMatchObject({ checked: 1, withoutKey: 0 });
    expect(signatures.signedTo).toMatchObject([{ signedTo: 4, lastSeq: 4, notVouched: 0 }]);
    expect(verifyChains(entries, { signatureHolds: signatures.holds })).toMatchObject({
      ok: true,
      tablets: 1,
    });
    expect(store.floor()).toEqual(fullFold(entries));
    expect(store.count()).toBe(4);
  });

  test('resolves only when the entries are in the database and the floor', async () => {
    const store = await open();
    const told: (readonly Entry[])[] = [];
    store.onChange((entries) => told.push(entries));
    const [entry] = await store.append([{ kind: 'run.started', payload: started('run-1') }], 'ana');
    expect(store.floor().runs.has('run-1')).toBe(true);
    expect(told).toEqual([[entry]]);
    expect((await store.log.entries.count()) === store.count()).toBe(true);
  });

  test('asks the browser for strict durability', async () => {
    const store = await open();
    const durability = await store.log.transaction('rw', store.log.entries, async () => {
      await store.log.entries.count();
      return (Dexie.currentTransaction as unknown as { idbtrans: IDBTransaction }).idbtrans.durability; // not in the types
    });
    expect(durability).toBe('strict');
  });

  test('keeps one chain where two windows write at the same time, and each sees the other’s entries', async () => {
    const [one, two] = await Promise.all([open(), open()]);
    expect(two.identity.epoch).toBe(one.identity.epoch);
    await one.append([{ kind: 'run.started', payload: started('run-1') }], 'ana');
    const writes = Array.from({ length: 12 }, (_, at) =>
      (at % 2 ? one : two).append([panels(1), panels(1)], 'ana'),
    );
    await Promise.all(writes);
    const entries = await allEntries(one);
    expect(entries).toHaveLength(26);
    expect(entries.filter(({ kind }) => kind === 'tablet.opened')).toHaveLength(1);
    expect(verifyChains(entries)).toMatchObject({ ok: true, heads: [{ seq: 26 }] });
    for (const store of [one, two]) {
      await vi.waitFor(() => expect(store.count()).toBe(26), { timeout: 10_000 });
      expect(store.floor()).toEqual(fullFold(entries));
    }
  });

  test('keeps nothing of a write that fails, says why, and goes on afterwards', async () => {
    const store = await open();
    const faults: string[] = [];
    store.onFault((fault) => faults.push(fault));
    const { tablet, epoch } = store.identity;
    const [first] = await allEntries(store);
    if (!first) throw new TypeError('Cannot go on as the chain must have begun');
    const inTheWay = { ...first, tablet, epoch, seq: 3 };
    await store.log.entries.add(entryToRow(inTheWay));
    const before = await store.log.entries.count();
    const failed = store.append([{ kind: 'run.started', payload: started('run-1') }, panels(1)], 'ana');
    await expect(failed).rejects.toBeInstanceOf(StoreError);
    expect(await store.log.entries.count()).toBe(before);
    expect(store.floor().runs.size).toBe(0);
    expect(faults).toEqual(['unknown']);
    await store.log.entries.delete([tablet, epoch, 3]);
    await store.append([{ kind: 'run.started', payload: started('run-1') }, panels(1)], 'ana');
    expect(verifyChains(await allEntries(store))).toMatchObject({ ok: true, entries: 3 });
  });

  test('refuses a payload that does not fit its kind, and writes nothing', async () => {
    const store = await open();
    const wrong = { ...panels(1), payload: { ...counted('run-1', 1), panels: -1 } } as DraftEntry; // wrong on purpose
    await expect(store.append([panels(1), wrong], 'ana')).rejects.toBeInstanceOf(StoreError);
    expect(await store.log.entries.count()).toBe(1);
  });

  test('never goes back in time, though the clock was set back', async () => {
    const store = await open();
    await store.append([panels(1)], 'ana');
    nowMs -= 3_600_000;
    await store.append([panels(1)], 'ana');
    const entries = await store.log.entries.orderBy('[tablet+epoch+seq]').toArray();
    const sorted = [...entries].sort((a, b) => compareEntries(a.entry, b.entry));
    expect(sorted.map(({ seq }) => seq)).toEqual([1, 2, 3]);
  });
});

describe('takeIn()', () => {
  test('takes entries of another tablet once, whatever the order, and later own entries come after them', async () => {
    const store = await open();
    const others = otherTablet();
    nowMs = startMs - 60_000;
    await store.takeIn([...others].reverse());
    await store.takeIn(others);
    expect(store.count()).toBe(others.length + 1);
    const [own] = await store.append([panels(1)], 'ana');
    const last = others.at(-1);
    expect(own && last && compareEntries(own, last)).toBeGreaterThan(0);
    expect(store.floor()).toEqual(fullFold(await allEntries(store)));
    expect(verifyChains(await allEntries(store))).toMatchObject({ ok: true, tablets: 2 });
  });

  test('own entries come after what was seen before the last start too', async () => {
    const first = await open();
    await first.takeIn(otherTablet());
    await close(first);
    nowMs = startMs - 60_000;
    const again = await open();
    const [own] = await again.append([panels(1)], 'ana');
    expect((await again.newest(1))[0]).toEqual(own);
  });

  test('mixed with own writes keeps the floor the fold of the log', async () => {
    const store = await open();
    const others = otherTablet();
    const work: Promise<unknown>[] = [];
    for (const [at, entry] of [...others].reverse().entries()) {
      work.push(store.takeIn([entry]));
      if (at % 2 === 0) work.push(store.append([panels(1)], 'ana'));
    }
    await Promise.all(work);
    expect(store.floor()).toEqual(fullFold(await allEntries(store)));
  });
});

describe('openStore()', () => {
  test('goes on with the same identity and chain', async () => {
    const first = await open();
    await first.append([panels(1)], 'ana');
    await close(first);
    const again = await open();
    expect(again.identity).toMatchObject({ tablet: first.identity.tablet, epoch: first.identity.epoch });
    await again.append([panels(1)], 'ana');
    const entries = await allEntries(again);
    const { holds } = await checkSignatures(entries);
    expect(verifyChains(entries, { signatureHolds: holds })).toMatchObject({ ok: true, entries: 3 });
  });

  test('starts from its snapshot and the entries since, with the same floor as a full fold', async () => {
    const first = await open();
    await first.append([{ kind: 'run.started', payload: started('run-1') }], 'ana');
    await first.append(
      Array.from({ length: 250 }, () => panels(1)),
      'ana',
    );
    await snapshotKept();
    const kept = new CacheDatabase(`${name}-cache`);
    await first.append(
      [{ kind: 'reel.verified', payload: verified('M1-F-001', 'R-100', { reel: 'K1' }) }],
      'ana',
    );
    await close(first);
    const again = await open();
    const entries = await allEntries(again);
    expect(again.count()).toBe(253);
    expect(again.floor()).toEqual(fullFold(entries));
    expect(again.floor().reels.has('K1')).toBe(true);
    // The snapshot was really the start: what it says shows through.
    const row = await kept.kept.get('snapshot');
    const value = row?.value as { version: number; snapshot: { state: ReturnType<typeof emptyState> } }; // as the store wrote it
    value.snapshot.state.lines.set('L-marked', { line: 'L-marked', name: '', zone: 'UTC', machines: [] });
    await kept.kept.put({ key: 'snapshot', value });
    await close(again);
    const third = await open();
    expect(third.floor().lines.has('L-marked')).toBe(true);
    await kept.kept.put({ key: 'snapshot', value: { ...value, version: -1 } });
    await close(third);
    expect((await open()).floor()).toEqual(fullFold(entries));
    kept.close();
  });

  test('keeps no snapshot before what made it due is told', async () => {
    const store = await open();
    const put = vi.spyOn(store.cache.kept, 'bulkPut');
    await store.append(
      Array.from({ length: 250 }, () => panels(1)),
      'ana',
    );
    expect(put).not.toHaveBeenCalled();
    await snapshotKept();
    expect(put).toHaveBeenCalledTimes(1);
  });

  test('folds anew where an entry came in late after the snapshot', async () => {
    nowMs = startMs + 3_600_000;
    const first = await open();
    await first.append(
      [{ kind: 'run.started', payload: started('run-0') }, ...Array.from({ length: 210 }, () => panels(1))],
      null,
    );
    const late = otherTablet();
    await snapshotKept();
    await first.takeIn(late);
    await close(first);
    const again = await open();
    expect(again.count()).toBe(212 + late.length);
    expect(again.floor()).toEqual(fullFold(await allEntries(again)));
  });

  test('gives a lost database a new epoch under the same tablet and says how far the old one was', async () => {
    const first = await open();
    await first.append([panels(1), panels(1)], 'ana');
    await close(first);
    await Dexie.delete(name);
    const again = await open();
    expect(again.identity.tablet).toBe(first.identity.tablet);
    expect(again.identity.epoch).not.toBe(first.identity.epoch);
    expect((await allEntries(again))[0]).toMatchObject({
      kind: 'tablet.opened',
      seq: 1,
      payload: { previous: { epoch: first.identity.epoch, seq: 3 } },
    });
  });

  test('is a new tablet where nothing is remembered, and a memory that is damaged is none', async () => {
    const first = await open();
    await close(first);
    await Dexie.delete(name);
    localStorage.setItem('reelward-chain', '{"tablet":7}');
    const again = await open();
    expect(again.identity.tablet).not.toBe(first.identity.tablet);
    expect((await allEntries(again))[0]?.payload['previous']).toBeNull();
  });

  test('stops writing and says so where a newer version takes the database over', async () => {
    const store = await open();
    const faults: string[] = [];
    store.onFault((fault) => faults.push(fault));
    const newer = new Dexie(name);
    newer
      .version(2)
      .stores({ entries: '[tablet+epoch+seq], [ms+n+tablet+epoch+seq]', meta: 'key', more: 'id' });
    await newer.open();
    expect(faults).toEqual(['closed-by-newer']);
    await expect(store.append([panels(1)], 'ana')).rejects.toMatchObject({ fault: 'closed-by-newer' });
    expect(await newer.table('entries').count()).toBe(1);
    newer.close();
  });
});

describe('newest() and readAll()', () => {
  test('give the log from its end and from its start', async () => {
    const store = await open();
    await store.takeIn(otherTablet());
    const sorted = (await allEntries(store)).map(idOf);
    expect(sorted).toEqual([...(await allEntries(store))].sort(compareEntries).map(idOf));
    const newest = await store.newest(3);
    expect(newest.map(idOf)).toEqual([...sorted].reverse().slice(0, 3));
    const last = newest.at(-1);
    if (!last) throw new TypeError('Cannot go on as there must be entries');
    expect((await store.newest(2, last)).map(idOf)).toEqual([...sorted].reverse().slice(3, 5));
  });
});
