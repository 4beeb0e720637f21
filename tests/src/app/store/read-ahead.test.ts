// What a start reads before what folds is here: a snapshot counts only where the log up to its place is as long as it was.

import './browser.ts';

import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { applyAll } from '../../../../shared/floor/fold.ts';
import type { DraftEntry } from '../../../../shared/floor/kinds.ts';
import { emptyState } from '../../../../shared/floor/state.ts';
import type { Entry } from '../../../../shared/log/entry.ts';
import { compareEntries } from '../../../../shared/log/order.ts';
import {
  CacheDatabase,
  LogDatabase,
  snapshotKey,
  snapshotPlaceKey,
} from '../../../../src/app/store/database.ts';
import { openDatabases } from '../../../../src/app/store/opening.ts';
import { readAhead } from '../../../../src/app/store/read-ahead.ts';
import { startStore } from '../../../../src/app/store/start-store.ts';
import { openStore, type Store } from '../../../../src/app/store/store.ts';
import { beginStory, counted, startMs, tellPlant } from '../../../shared/floor/story.ts';

let turn = 0;
let nowMs = startMs;
let name = '';
let opened: { close: () => unknown }[] = [];

const options = () => ({
  clock: { nowMs: () => nowMs++ },
  appVersion: '0.1.0',
  tabletName: 'Line 1 front',
  name,
});
const panels = (add: number): DraftEntry => ({ kind: 'panels.counted', payload: counted('run-1', add) });

async function open(): Promise<Store> {
  const store = await openStore(options());
  opened.push(store);
  return store;
}

async function allEntries(store: Store): Promise<Entry[]> {
  const entries: Entry[] = [];
  await store.readAll((chunk) => void entries.push(...chunk));
  return entries;
}

/** Databases with a log of 212 entries, a snapshot of the first 211, and one entry after it; what is older than all of it came from elsewhere. */
async function fill() {
  nowMs = startMs + 3_600_000;
  const first = await openStore(options());
  await first.append(
    Array.from({ length: 210 }, () => panels(1)),
    null,
  );
  const databases = { log: new LogDatabase(name), cache: new CacheDatabase(`${name}-cache`) };
  await vi.waitFor(async () => expect(await databases.cache.kept.get(snapshotKey)).toBeDefined());
  await first.append([panels(2)], null);
  await first.close();
  opened.push(databases.log, databases.cache);
  return databases;
}

const elsewhere = () => {
  const story = beginStory();
  tellPlant(story);
  return story.entries;
};

beforeEach(() => {
  turn += 1;
  name = `ahead-${turn}`;
  localStorage.clear();
});

afterEach(async () => {
  for (const each of opened) await each.close();
  opened = [];
});

describe('readAhead()', () => {
  test('counts the log up to the snapshot, and gives what comes after it', async () => {
    const { log, cache } = await fill();
    const { kept } = await readAhead(log, cache);
    expect(kept?.before).toBe(kept?.snapshot.count);
    expect(kept?.snapshot.count).toBe(211);
    expect(kept?.after.map(({ payload }) => payload['add'])).toEqual([2]);
  });

  test('does so for the snapshot that is there, where its place is another one’s or none', async () => {
    const { log, cache } = await fill();
    const before = await readAhead(log, cache);
    const first = (await log.entries.get([...(await firstKey(log))]))?.entry;
    if (!first) throw new TypeError('Cannot go on as there must be an entry');
    await cache.kept.put({ key: snapshotPlaceKey, value: { ...first } });
    expect(await readAhead(log, cache)).toEqual(before);
    await cache.kept.delete(snapshotPlaceKey);
    expect(await readAhead(log, cache)).toEqual(before);
    await cache.kept.delete(snapshotKey);
    expect((await readAhead(log, cache)).kept).toBeNull();
  });

  test('notices what came in late since', async () => {
    const { log, cache } = await fill();
    const store = await open();
    const late = elsewhere();
    await store.takeIn(late);
    const { kept } = await readAhead(log, cache);
    expect(kept?.before).toBe((kept?.snapshot.count ?? 0) + late.length);
  });
});

async function firstKey(log: LogDatabase): Promise<readonly [string, string, number]> {
  const [first] = await log.entries.toCollection().primaryKeys();
  if (!first) throw new TypeError('Cannot go on as there must be an entry');
  return first;
}

describe('a start', () => {
  test('hears what another window writes after it has read and before it folds', async () => {
    const { log } = await fill();
    log.close();
    const other = await open();
    const databases = await openDatabases(options());
    await databases.ahead;
    await other.takeIn(elsewhere());
    await other.append([panels(3)], null);
    await vi.waitFor(() => expect(databases.heard.length).toBe(2));
    const store = await startStore(databases, options());
    opened.push(store);
    await vi.waitFor(() => expect(store.count()).toBe(other.count()));
    const entries = await allEntries(other);
    expect(store.floor()).toEqual(applyAll(emptyState(), [...entries].sort(compareEntries)));
    expect(store.position()).toMatchObject({ seq: entries.at(-1)?.seq, tablet: entries.at(-1)?.tablet });
  });
});
