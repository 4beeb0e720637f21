// A new tablet that starts from another tablet's folded state: of use at once, whole later, and never wrong in between.

import './browser.ts';

import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { simulateShift } from '../../../../demo/simulate.ts';
import { applyAll } from '../../../../shared/floor/fold.ts';
import { emptyState, type FloorState } from '../../../../shared/floor/state.ts';
import { packClosely, unpackValue } from '../../../../shared/kit/pack.ts';
import { verifyChains } from '../../../../shared/log/chain.ts';
import { chainId, type Entry, firstPrev } from '../../../../shared/log/entry.ts';
import { compareEntries } from '../../../../shared/log/order.ts';
import { sealEntry } from '../../../../shared/log/seal.ts';
import { snapshotKey } from '../../../../src/app/store/database.ts';
import { packBootstrap, unpackBootstrap } from '../../../../src/app/store/pack.ts';
import { foldName, openStore, type Store } from '../../../../src/app/store/store.ts';
import { createSyncLog } from '../../../../src/app/store/sync-log.ts';
import { emptyMemory, type SnapshotPort } from '../../../../src/app/sync/ports.ts';

const startMs = 1_772_431_200_000;
const shift = [...simulateShift({ seed: 5, hours: 2, startMs }).entries].sort(compareEntries);
const before = Math.floor(shift.length * 0.7);
const after = Math.floor(shift.length * 0.9);
const fold = (entries: readonly Entry[]) => applyAll(emptyState(), [...entries].sort(compareEntries));

let turn = 0;
let names: Record<'old' | 'fresh', string>;
let stores: Store[] = [];
/** Later than the shift, as a new tablet's clock is. */
let nowMs = 0;

async function open(name: string): Promise<Store> {
  const store = await openStore({
    clock: { nowMs: () => nowMs++ },
    appVersion: '0.1.0',
    tabletName: name,
    name,
  });
  stores.push(store);
  return store;
}

async function close(store: Store): Promise<void> {
  stores = stores.filter((each) => each !== store);
  await store.close();
}

async function all(store: Store): Promise<Entry[]> {
  const entries: Entry[] = [];
  await store.readAll((chunk) => void entries.push(...chunk));
  return entries;
}

async function kindsOf(store: Store, kind: string): Promise<Entry[]> {
  return (await all(store)).filter((entry) => entry.kind === kind);
}

const portOf = (store: Store) => createSyncLog(store).snapshots as SnapshotPort;

/** A tablet that knows the shift up to `after`, its own entries acknowledged, and went on from its own snapshot at `before`. */
async function openOld(): Promise<Store> {
  const first = await open(names.old);
  await first.takeIn(shift.slice(0, before));
  await vi.waitFor(async () => expect(await first.cache.kept.get(snapshotKey)).toBeDefined());
  await close(first);
  const old = await open(names.old);
  await old.takeIn(shift.slice(before, after));
  const acked = { [chainId(old.identity)]: 1 };
  await createSyncLog(old).writeMemory({ ...emptyMemory, acked });
  return old;
}

async function given(old: Store): Promise<Uint8Array> {
  const bytes = await portOf(old).make();
  if (!bytes) throw new Error('no state was given');
  return bytes;
}

/** Waits until the tablet has folded its history itself. */
async function untilOwn(store: Store): Promise<void> {
  for (let tries = 0; store.behind() !== null; tries += 1) {
    if (tries > 1000) throw new Error('the bootstrap snapshot is still in use');
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}

beforeEach(() => {
  turn += 1;
  names = { old: `old-${turn}`, fresh: `fresh-${turn}` };
  nowMs = startMs - 86_400_000;
});
afterEach(async () => {
  for (const store of stores) await store.close();
  stores = [];
});

describe('snapshots', () => {
  test('a new tablet has the floor at once, what comes after it, and the whole log in the end', async () => {
    const old = await openOld();
    const bytes = await given(old);
    nowMs = startMs + 86_400_000;
    const fresh = await open(names.fresh);
    const own = (await all(fresh)).at(-1) as Entry;
    expect(await portOf(fresh).take(bytes, 'old')).toBe(true);
    const oldOnes = await all(old);
    expect(fresh.floor()).toEqual(fold([...oldOnes, own]));
    expect((await all(fresh)).length).toBeLessThan(shift.length - before + 3);

    // The tail overlaps what the state holds already: nothing counts twice.
    await fresh.takeIn(shift.slice(after - 50));
    expect(fresh.floor()).toEqual(fold([...oldOnes, ...shift.slice(after), own]));

    // Restarted half way through the history, and more written meanwhile.
    await fresh.takeIn(shift.slice(0, 100));
    await close(fresh);
    const again = await open(names.fresh);
    expect(again.floor()).toEqual(fold([...oldOnes, ...shift.slice(after), own]));
    await again.append([{ kind: 'tablet.named', payload: { name: 'rear' } }], null);
    expect(await portOf(again).make()).toBeNull();
    await again.takeIn(shift.slice(100, after));
    await again.takeIn(oldOnes); // the old tablet's own
    await untilOwn(again);
    const entries = await all(again);
    expect(entries).toHaveLength(shift.length + 3);
    expect(verifyChains(entries)).toMatchObject({ ok: true, firstBroken: null });
    expect(again.floor()).toEqual(fold(entries));
    expect(again.count()).toBe(entries.length);
    await close(again);
    expect((await open(names.fresh)).floor()).toEqual(fold(entries));
  });

  test('an entry from before the state waits for the history, is kept, and then counts', async () => {
    const old = await openOld();
    const bytes = await given(old);
    nowMs = startMs + 86_400_000;
    const fresh = await open(names.fresh);
    const { payload } = (await all(fresh))[0] as Entry;
    const { v, epoch, at, hlc, who } = shift[0] as Entry;
    const draft = { v, tablet: 'offline', epoch, seq: 1, at, hlc, who, prev: firstPrev };
    const lost = sealEntry({ ...draft, kind: 'tablet.opened', payload });
    await portOf(fresh).take(bytes, 'old');
    const floor = fresh.floor();
    await fresh.takeIn([lost]);
    expect(fresh.floor()).toEqual(floor);
    expect(await all(fresh)).toContainEqual(lost);
    await fresh.takeIn(shift);
    await fresh.takeIn(await all(old));
    await untilOwn(fresh);
    const entries = await all(fresh);
    expect(entries).toHaveLength(shift.length + 3);
    expect(fresh.floor().tablets.has('offline')).toBe(true);
    expect(fresh.floor()).toEqual(fold(entries));
  });

  test('a tablet opened before the state was folded takes it; one that wrote more alone does not', async () => {
    const bytes = await given(await openOld());
    nowMs = startMs - 86_400_000;
    const fresh = await open(names.fresh);
    const own = (await all(fresh)).at(-1) as Entry;
    expect(await portOf(fresh).take(bytes, 'old')).toBe(true);
    expect(fresh.floor().tablets.has(own.tablet)).toBe(true);

    nowMs = startMs - 86_400_000;
    const busy = await open(`busy-${turn}`);
    await busy.append([{ kind: 'tablet.named', payload: { name: 'mine' } }], null);
    expect(await portOf(busy).take(bytes, 'old')).toBe(false);
    expect(await all(busy)).toHaveLength(2);
    await busy.takeIn(shift);
    expect(busy.floor()).toEqual(fold(await all(busy)));
  });

  test('neither a state of another fold nor a broken one is taken, and the tablet goes on as if there were none', async () => {
    const old = await openOld();
    const bytes = await given(old);
    const text = new TextDecoder().decode(bytes);
    const changed = (change: (value: Record<string, unknown>) => void) => {
      const value = JSON.parse(text) as Record<string, unknown>;
      change(value);
      return new TextEncoder().encode(JSON.stringify(value));
    };
    const tail = JSON.parse(text).tail as Entry[];
    const broken: Record<string, Uint8Array> = {
      fold: changed((value) => Object.assign(value, { fold: 'floor-1' })),
      'cut off': bytes.slice(0, bytes.length >> 1),
      empty: new Uint8Array(),
      null: new TextEncoder().encode('null'),
      'a map missing': changed((value) => delete (value['state'] as Record<string, unknown>)['slots']),
      'a list for a map': changed((value) => Object.assign(value['state'] as object, { slots: [] })),
      'count off': changed((value) => Object.assign(value, { count: 1 })),
      'no heads': changed((value) => Object.assign(value, { heads: null })),
      'no position': changed((value) => Object.assign(value, { position: null })),
      'a hole in the tail': changed((value) => Object.assign(value, { tail: tail.slice(1) })),
      'a changed entry': changed((value) =>
        Object.assign(value, { tail: [...tail.slice(0, -1), { ...tail.at(-1), who: 'nobody' }] }),
      ),
    };
    const fresh = await open(names.fresh);
    const floor = fresh.floor();
    for (const [what, wrong] of Object.entries(broken))
      expect(await portOf(fresh).take(wrong, null), what).toBe(false);
    expect(fresh.floor()).toEqual(floor);
    await fresh.takeIn(shift);
    expect(fresh.floor()).toEqual(fold(await all(fresh)));
  });

  test('gives no state that holds what the server does not', async () => {
    const old = await openOld();
    await old.append([{ kind: 'tablet.named', payload: { name: 'front' } }], null);
    expect(await portOf(old).make()).toBeNull();
  });

  test('after a change of the fold the log counts, not the bootstrap snapshot of the older one', async () => {
    const old = await openOld();
    const bytes = await given(old);
    const fresh = await open(names.fresh);
    await portOf(fresh).take(bytes, 'old');
    await fresh.log.meta
      .where('key')
      .equals('borrowed')
      .modify((row) => {
        Object.assign(row, { value: { ...(row.value as object), fold: 'floor-1' } });
      });
    await close(fresh);
    const again = await open(names.fresh);
    await again.takeIn(await all(old));
    await untilOwn(again);
    expect(again.floor()).toEqual(fold(await all(again)));
    expect(await again.log.meta.get('borrowed')).toBeUndefined();
  });

  test('tells how much history is still to come, over a restart, and nothing once it is here and folded', async () => {
    const old = await openOld();
    const bytes = await given(old);
    nowMs = startMs + 86_400_000;
    const fresh = await open(names.fresh);
    expect(fresh.behind()).toBeNull();
    await portOf(fresh).take(bytes, 'old');
    const of = fresh.behind()?.of ?? 0;
    expect(of).toBeGreaterThan(300);
    expect(fresh.behind()).toEqual({ missing: of, of });
    await fresh.takeIn(shift.slice(0, 100));
    expect(fresh.behind()).toEqual({ missing: of - 100, of });
    await close(fresh);
    const again = await open(names.fresh);
    expect(again.behind()).toEqual({ missing: of - 100, of });
    await again.takeIn(shift.slice(100));
    await again.takeIn(await all(old));
    expect(again.behind()?.missing).toBe(0);
    await untilOwn(again);
    expect(await kindsOf(again, 'state.differed')).toEqual([]);
  });

  test('a state that the history does not fold to is left for the tablet’s own, and the log says whose it was', async () => {
    const old = await openOld();
    const wrong = JSON.parse(new TextDecoder().decode(await given(old)));
    // Blocked material made to look free, and a reel moved to another slot: both are believable states.
    const state = unpackValue(wrong.state) as FloorState; // what a tablet gave
    expect(state.blocks.size).toBeGreaterThan(0);
    state.blocks.clear();
    const reel = [...state.reels.values()].find(({ at }) => at !== null);
    if (!reel?.at) throw new Error('no reel on a slot');
    state.reels.set(reel.reel, { ...reel, at: { ...reel.at, slot: 'M9-F-099' } });
    wrong.state = packClosely(state);
    nowMs = startMs + 86_400_000;
    const fresh = await open(names.fresh);
    expect(await portOf(fresh).take(new TextEncoder().encode(JSON.stringify(wrong)), 'old-one')).toBe(true);
    expect(fresh.floor().blocks.size).toBe(0);
    await fresh.takeIn(shift);
    await fresh.takeIn(await all(old));
    await untilOwn(fresh);
    for (let tries = 0; tries < 400 && (await kindsOf(fresh, 'state.differed')).length === 0; tries += 1)
      await new Promise((resolve) => setTimeout(resolve, 5));
    const [told, ...others] = await kindsOf(fresh, 'state.differed');
    expect(others).toEqual([]);
    expect(told?.payload).toMatchObject({
      from: 'old-one',
      parts: expect.arrayContaining(['blocks', 'reels']),
    });
    expect(told?.payload['parts']).toHaveLength(2);
    expect(fresh.floor()).toEqual(fold(await all(fresh)));
    expect(fresh.floor().blocks.size).toBeGreaterThan(0);
    // And so after the next start.
    await close(fresh);
    expect((await open(names.fresh)).floor()).toEqual(fold(await all(stores.at(-1) as Store)));
  });

  test('a wall screen goes on from its own fold, and writes nothing of the difference', async () => {
    const old = await openOld();
    const wrong = JSON.parse(new TextDecoder().decode(await given(old)));
    wrong.state.blocks.of = [];
    nowMs = startMs + 86_400_000;
    const before = await open(names.fresh);
    const enrolled = { plant: 'Brae Works', serverKey: '', screen: true };
    await createSyncLog(before).writeMemory({ ...emptyMemory, enrolled });
    await close(before);
    const screen = await open(names.fresh);
    await portOf(screen).take(new TextEncoder().encode(JSON.stringify(wrong)), 'old-one');
    await screen.takeIn(shift);
    await screen.takeIn(await all(old));
    await untilOwn(screen);
    await close(screen); // ends what the check still does
    const again = await open(names.fresh);
    expect(await kindsOf(again, 'state.differed')).toEqual([]);
    expect(again.floor().blocks.size).toBeGreaterThan(0);
  });

  test('goes on with the check where the tablet was closed in the middle of it', async () => {
    const old = await openOld();
    const bytes = await given(old);
    nowMs = startMs + 86_400_000;
    const fresh = await open(names.fresh);
    await portOf(fresh).take(bytes, 'old');
    await fresh.takeIn(shift);
    await fresh.takeIn(await all(old));
    await close(fresh);
    const again = await open(names.fresh);
    await untilOwn(again);
    expect(again.floor()).toEqual(fold(await all(again)));
    expect(await again.log.meta.get('borrowed')).toBeUndefined();
  });

  test('another window of the tablet goes on from it too', async () => {
    const bytes = await given(await openOld());
    nowMs = startMs + 86_400_000;
    const [one, two] = [await open(names.fresh), await open(names.fresh)];
    const told = new Promise<void>((resolve) => two.onChange(() => resolve()));
    await portOf(one).take(bytes, 'old');
    await told;
    expect(two.floor()).toEqual(one.floor());
  });

  test('keeps a chain’s hole out of what is offered', async () => {
    const bytes = await given(await openOld());
    const fresh = await open(names.fresh);
    await portOf(fresh).take(bytes, 'old');
    const log = createSyncLog(fresh);
    const head = (await log.heads()).find((one) => one.tablet !== fresh.identity.tablet && one.seq > 20);
    if (!head) throw new Error('no chain of another tablet');
    expect(await log.entriesAfter(head, 0, 10)).toEqual([]);
    expect(await log.entriesAfter(head, head.seq - 1, 10)).toHaveLength(1);
  });
});

describe('packBootstrap()', () => {
  test('comes back as it was, with a key that looks like the mark', () => {
    const state = fold(shift);
    state.crews.set('L$', { $: 'map', of: [] } as unknown as number);
    const last = shift.at(-1) as Entry;
    const ends = new Map(shift.map((entry) => [chainId(entry), entry]));
    const heads = [...ends.values()].map(({ tablet, epoch, seq }) => ({ tablet, epoch, seq }));
    const position = { hlc: last.hlc, tablet: last.tablet, epoch: last.epoch, seq: last.seq };
    const bootstrap = { fold: foldName, state, position, count: shift.length, heads };
    const back = unpackBootstrap(packBootstrap({ bootstrap, tail: [] }), foldName);
    expect(back).toEqual({ bootstrap, tail: [] });
  });
});
