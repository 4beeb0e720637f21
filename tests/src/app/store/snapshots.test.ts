// When a snapshot is kept: never while the floor in hand is one of before, nor so that a start goes on from entries that were put aside.

import './browser.ts';

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { applyAll } from '../../../../shared/floor/fold.ts';
import { emptyState } from '../../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../../shared/log/entry.ts';
import { snapshotKey } from '../../../../src/app/store/database.ts';
import type { KeptSnapshot } from '../../../../src/app/store/read-ahead.ts';
import { openStore, type Store } from '../../../../src/app/store/store.ts';
import { counted, started, startMs } from '../../../shared/floor/story.ts';
import { beginPlant } from './ticket-plant.ts';

let turn = 0;
let nowMs = startMs;
let opened: Store[] = [];
let idle: (() => void)[] = [];

const open = async () => {
  const clock = { nowMs: () => nowMs++ };
  const name = `snapshots-${turn}`;
  const store = await openStore({ clock, appVersion: '0.1.0', tabletName: 'front', name });
  opened.push(store);
  return store;
};
const closeAll = async () => {
  for (const store of opened) await store.close();
  opened = [];
};
/** The page has nothing else to do. */
const beIdle = () => {
  for (const work of idle.splice(0)) work();
};
const keptOf = async ({ cache }: Store) =>
  (await cache.kept.get(snapshotKey))?.value as KeptSnapshot | undefined; // as the store wrote it
const chosen = { kind: 'setup.chosen', payload: { line: 'L1', setup: 'A' } } as const;
/** A run and so many countings that a snapshot is due. */
const work = [
  { kind: 'run.started', payload: started('run-1') } as const,
  ...Array.from({ length: 220 }, () => ({ kind: 'panels.counted', payload: counted('run-1', 1) }) as const),
];

/** The next fold of the whole log waits. */
function holdFold({ log }: Store) {
  let release = () => {};
  let begin = () => {};
  const held = new Promise<void>((resolve) => {
    release = resolve;
  });
  const begun = new Promise<void>((resolve) => {
    begin = resolve;
  });
  vi.spyOn(log.entries, 'orderBy').mockImplementationOnce((index) => {
    begin();
    const rows = log.entries.toCollection();
    const limit = rows.limit.bind(rows);
    vi.spyOn(rows, 'limit').mockImplementation(
      (most) =>
        ({
          toArray: async () => {
            await held;
            return log.entries
              .orderBy(index as string)
              .limit(most)
              .toArray();
          },
        }) as unknown as ReturnType<typeof limit>, // no more of it is asked for
    );
    return rows;
  });
  return { release, begun };
}

beforeEach(() => {
  turn += 1;
  nowMs = startMs;
  idle = [];
  localStorage.clear();
  vi.stubGlobal('requestIdleCallback', (each: () => void) => idle.push(each));
});
afterEach(async () => {
  await closeAll();
  vi.unstubAllGlobals();
});

test('the floor of before is not kept under the name of the fold with tickets, and is told until that is done', async () => {
  const store = await open();
  const plant = await beginPlant(store, () => nowMs);
  const [unproven] = await store.append([chosen, ...work], 'boss');
  const before = store.foldName();
  const { release, begun } = holdFold(store);
  const trusting = store.trustTickets(plant.start);
  await begun;
  beIdle();
  expect(await keptOf(store)).toBeUndefined();
  expect(store.foldName()).toBe(before);
  expect(store.trust()).toBeNull();
  release();
  await trusting;
  beIdle();
  await vi.waitFor(async () => expect((await keptOf(store))?.name).toBe(store.foldName()));
  expect(store.foldName()).not.toBe(before);
  const marked = [...((await keptOf(store))?.snapshot.state.unproven.keys() ?? [])];
  expect(marked).toEqual([unproven && entryId(unproven)]);
});

test('tickets whose fold failed are heard again, and folded then', async () => {
  const store = await open();
  const plant = await beginPlant(store, () => nowMs);
  await store.append([chosen], 'boss');
  vi.spyOn(store.log.entries, 'orderBy').mockImplementationOnce(() => {
    throw new Error('the disk does not answer');
  });
  await expect(store.trustTickets(plant.start)).rejects.toThrow();
  await store.trustTickets(plant.start);
  expect(store.floor().unproven.size).toBe(1);
});

test('the floor of a life before is not kept while the new one is folded', async () => {
  const store = await open();
  await store.append(work, 'ana');
  const { release, begun } = holdFold(store);
  const going = store.beginNewLife({ epoch: store.identity.epoch });
  await begun;
  beIdle();
  expect(await keptOf(store)).toBeUndefined();
  release();
  await going;
});

test('a start does not go on from a snapshot of a life before, as a window that has not heard may keep it', async () => {
  const store = await open();
  await store.append(work, 'ana');
  beIdle();
  await vi.waitFor(async () => expect(await keptOf(store)).toBeDefined());
  const [row, place] = await store.cache.kept.bulkGet([snapshotKey, 'snapshot-place']);
  await store.beginNewLife({ epoch: store.identity.epoch });
  if (row && place) await store.cache.kept.bulkPut([row, place]);
  await closeAll();
  const again = await open();
  const entries: Entry[] = [];
  await again.readAll((some) => void entries.push(...some));
  expect(again.count()).toBe(entries.length);
  expect(again.floor()).toEqual(applyAll(emptyState(), entries));
});
