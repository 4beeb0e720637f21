// One body of tests for every store: what the server relies on holds on SQLite and on a real PostgreSQL alike.

import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type Entry, entryId } from '../../shared/log/entry.ts';
import { entrySchema } from '../../shared/log/entry-schema.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { hashDraft } from '../../shared/log/seal.ts';
import { firstRoot, nextRoot } from '../../src/server/stores/append.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { restoreInto } from '../../src/server/stores/restore.ts';
import type { Signal, Store } from '../../src/server/stores/store.ts';
import { newFolder, startPostgres, type TestPostgres } from './databases.ts';
import { makeChain, startMs, toChecked } from './entries.ts';

let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());

/** An empty PostgreSQL database. */
function newDatabase(): Promise<string> {
  if (!postgres) throw new Error('PostgreSQL did not start');
  return postgres.newDatabase();
}

const nowMs = () => startMs;

describe.each(['sqlite', 'postgres'] as const)('a store on %s', (dialect) => {
  let folder: ReturnType<typeof newFolder>;
  let database: string | null;
  let store: Store;

  beforeEach(async () => {
    folder = newFolder();
    database = dialect === 'postgres' ? await newDatabase() : null;
    store = await openStore({ folder: folder.path, database, nowMs });
  });
  afterEach(async () => {
    await store.close();
    folder.remove();
  });

  const push = async (entries: readonly Entry[], sender = 't1') => {
    const [appended] = await store.append(
      [{ sender, entries: entries.map((entry) => toChecked(entry)) }],
      startMs,
    );
    if (!appended) throw new Error('no answer to an append');
    return appended;
  };
  const readAll = async () => (await store.page(0, 10_000)).map((row) => JSON.parse(row.text) as Entry);

  it('`append()` keeps entries word for word, numbered from 1, with the running hash', async () => {
    const odd = {
      text: 'é ü 料 \u0000 "quoted" \\ \u2028 </script> %_ \'; drop table entries;--',
      n: [1, 0.1, -0, 1e21],
    };
    const chain = makeChain({ tablet: 't1', count: 3, payload: () => odd });
    const appended = await push(chain);
    expect(appended).toMatchObject({ added: 3, faults: [], acks: [{ tablet: 't1', epoch: 'e1', seq: 3 }] });
    const rows = await store.page(0, 10);
    expect(rows.map((row) => row.pos)).toEqual([1, 2, 3]);
    const read = rows.map((row) => entrySchema.parse(JSON.parse(row.text)));
    expect(read.map(hashDraft)).toEqual(chain.map((entry) => entry.hash));
    const roots: string[] = [];
    for (const entry of chain) roots.push(nextRoot(roots.at(-1) ?? firstRoot, entry.hash));
    expect(rows.map((row) => row.root)).toEqual(roots);
    expect(await store.head()).toEqual({ pos: 3, root: roots[2] });
    expect(await store.rootAt(0)).toBe(firstRoot);
    expect(await store.rootAt(2)).toBe(roots[1]);
    expect(await store.rootAt(4)).toBeNull();
  });

  it('`firstSince()` tells where the first entry stands that came in then or later, also where a clock was set back', async () => {
    const chain = makeChain({ tablet: 't1', count: 4 });
    expect(await store.firstSince(0)).toBeNull();
    for (const [at, afterMs] of [0, 1_000, 500, 2_000].entries())
      await store.append(
        [{ sender: 't1', entries: chain.slice(at, at + 1).map((entry) => toChecked(entry)) }],
        startMs + afterMs,
      );
    const places = [0, 1, 1_000, 1_001, 2_000, 2_001].map((ms) => store.firstSince(startMs + ms));
    expect(await Promise.all(places)).toEqual([1, 2, 2, 4, 4, null]);
  });

  it('`append()` takes the same entries twice as once', async () => {
    const chain = makeChain({ tablet: 't1', count: 5 });
    await push(chain);
    expect(await push(chain)).toMatchObject({ added: 0, faults: [], acks: [{ seq: 5 }] });
    expect(await push(chain.slice(1, 3))).toMatchObject({ added: 0, faults: [], acks: [{ seq: 5 }] });
    expect(await readAll()).toHaveLength(5);
  });

  it('`append()` acknowledges only what is held without a gap, and keeps nothing after a gap', async () => {
    const chain = makeChain({ tablet: 't1', count: 6 });
    expect(await push([...chain.slice(0, 2), ...chain.slice(3)])).toMatchObject({
      added: 2,
      acks: [{ seq: 2 }],
    });
    expect(await push(chain.slice(2))).toMatchObject({ added: 4, acks: [{ seq: 6 }] });
    expect((await readAll()).map((entry) => entry.seq)).toEqual([1, 2, 3, 4, 5, 6]);
  });

  it('`append()` quarantines what contradicts the log, and changes nothing of what is there', async () => {
    const chain = makeChain({ tablet: 't1', count: 3 });
    const other = makeChain({ tablet: 't1', count: 4, payload: () => ({ text: 'another story' }) });
    await push(chain);
    const appended = await push(other);
    expect(appended.faults).toEqual([
      ...[1, 2, 3].map((seq) => ({ id: `t1/e1/${seq}`, fault: 'name-taken' })),
      { id: 't1/e1/4', fault: 'prev-differs' },
    ]);
    expect(appended.acks).toEqual([{ tablet: 't1', epoch: 'e1', seq: 3 }]);
    expect((await readAll()).map((entry) => entry.hash)).toEqual(chain.map((entry) => entry.hash));
    const quarantined = await store.quarantined();
    expect(quarantined.map((item) => [item.id, item.hash])).toEqual(
      other.map((entry) => [entryId(entry), entry.hash]),
    );
    expect(quarantined.map((item) => (JSON.parse(item.text) as Entry).payload)).toEqual(
      other.map((entry) => entry.payload),
    );
    await push(other);
    expect(await store.quarantined()).toHaveLength(4);
  });

  it('`append()` quarantines what was found at fault before, but takes a copy of what it holds for that', async () => {
    const [first, second] = makeChain({ tablet: 't1', count: 2 });
    if (!first || !second) throw new Error('two entries were asked for');
    await push([first]);
    const entries = [
      toChecked(first, { fault: 'signature-differs' }),
      toChecked(second, { fault: 'signature-differs' }),
    ];
    const [appended] = await store.append([{ sender: 't1', entries }], startMs);
    expect(appended).toMatchObject({
      added: 0,
      faults: [{ id: 't1/e1/2', fault: 'signature-differs' }],
      acks: [{ seq: 1 }],
    });
  });

  it('`append()` answers several batches of one transaction each by itself', async () => {
    const a = makeChain({ tablet: 't1', count: 4 });
    const b = makeChain({ tablet: 't2', count: 2 });
    const batches = [a.slice(0, 2), b, a.slice(2), a.slice(0, 3)];
    const answers = await store.append(
      batches.map((entries) => ({ sender: 'x', entries: entries.map((entry) => toChecked(entry)) })),
      startMs,
    );
    expect(answers.map((answer) => [answer.added, answer.acks[0]?.tablet, answer.acks[0]?.seq])).toEqual([
      [2, 't1', 2],
      [2, 't2', 2],
      [2, 't1', 4],
      [0, 't1', 4],
    ]);
  });

  it('`append()` ends as the union whatever is dropped, doubled or reordered on the way', async () => {
    const tablets = ['a', 'b', 'c'].map((tablet) => makeChain({ tablet, count: 8 }));
    const step = fc.record({ chain: fc.nat(2), from: fc.nat(7), length: fc.integer({ min: 1, max: 8 }) });
    let round = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 25 }), async (sends) => {
        round += 1;
        const epoch = `e${round}`;
        const chains = tablets.map((chain) => makeChain({ tablet: chain[0]?.tablet ?? '', epoch, count: 8 }));
        const held = [0, 0, 0];
        for (const { chain, from, length } of sends) {
          const { acks } = await push(chains[chain]?.slice(from, from + length) ?? []);
          if (from <= (held[chain] ?? 0))
            held[chain] = Math.max(held[chain] ?? 0, Math.min(8, from + length));
          expect(acks[0]?.seq).toBe(held[chain]);
        }
        for (const [index, chain] of chains.entries()) await push(chain.slice(held[index]));
        const there = (await readAll()).filter((entry) => entry.epoch === epoch);
        expect(there.map(entryId).sort()).toEqual(chains.flat().map(entryId).sort());
      }),
      { numRuns: 15 },
    );
  });

  it('`append()` by many at once numbers without gap or double, and each chain in its order', async () => {
    const chains = Array.from({ length: 12 }, (_, at) => makeChain({ tablet: `t${at}`, count: 10 }));
    await Promise.all(
      chains.flatMap((chain) => [push(chain.slice(0, 5)), push(chain), push(chain.slice(5))]),
    );
    await Promise.all(chains.map((chain) => push(chain)));
    const rows = await store.page(0, 1_000);
    expect(rows.map((row) => row.pos)).toEqual(Array.from({ length: 120 }, (_, at) => at + 1));
    const entries = rows.map((row) => JSON.parse(row.text) as Entry);
    for (const chain of chains) {
      const seqs = entries.filter((entry) => entry.tablet === chain[0]?.tablet).map((entry) => entry.seq);
      expect(seqs).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    }
  });

  it('`page()` goes on by position', async () => {
    await push(makeChain({ tablet: 't1', count: 10 }));
    expect((await store.page(4, 3)).map((row) => row.pos)).toEqual([5, 6, 7]);
    expect((await store.page(10, 3)).length).toBe(0);
  });

  it('`orderedPage()` gives the folding order, whatever the order of arrival, up to a position', async () => {
    const late = makeChain({ tablet: 'B', count: 7, atMs: startMs + 500 });
    const twin = makeChain({ tablet: 'a', count: 7 });
    const early = makeChain({ tablet: 'Z', count: 7 });
    for (const chain of [late, twin, early]) await push(chain);
    await push(makeChain({ tablet: 'after', count: 1, atMs: 0 }));
    const wanted = [...late, ...twin, ...early].sort(compareEntries);
    const read: Entry[] = [];
    for (;;) {
      const rows = await store.orderedPage(read.at(-1) ?? null, 4, 21);
      if (rows.length === 0) break;
      read.push(...rows.map((row) => JSON.parse(row.text) as Entry));
    }
    expect(read.map(entryId)).toEqual(wanted.map(entryId));
  });

  it('`longPage()` finds entries by their length', async () => {
    const chain = makeChain({
      tablet: 't1',
      count: 4,
      payload: (seq) => ({ text: 'x'.repeat((seq % 2) * 500) }),
    });
    await push(chain);
    expect((await store.longPage(0, 10, 500)).map((row) => row.pos)).toEqual([1, 3]);
    expect((await store.longPage(1, 10, 500)).map((row) => row.pos)).toEqual([3]);
    expect((await store.longPage(0, 1, 500)).map((row) => row.pos)).toEqual([1]);
  });

  it('`ofKinds()`, `heads()` and `marks()` tell what the log holds', async () => {
    await push(makeChain({ tablet: 't1', count: 2, kind: 'person.added' }));
    await push(makeChain({ tablet: 't2', count: 3 }));
    expect(await store.ofKinds(['person.added'], 1)).toHaveLength(1);
    const heads = await store.heads();
    expect(heads.map((head) => [head.tablet, head.seq])).toEqual([
      ['t1', 2],
      ['t2', 3],
    ]);
    const asked = [
      { tablet: 't2', epoch: 'e1' },
      { tablet: 't2', epoch: 'e2' },
      { tablet: 't9', epoch: 'e1' },
    ];
    expect((await store.marks(asked)).map((mark) => mark.seq)).toEqual([3, 0, 0]);
    expect(await store.marks([])).toEqual([]);
  });

  it('`takeOneTime()` gives a code once, in time, for its purpose', async () => {
    const code = { hash: 'h1', purpose: 'enrol', detail: '{"a":1}', untilMs: startMs + 1_000 } as const;
    await store.addOneTime(code);
    await store.addOneTime({ ...code, hash: 'h2' });
    expect(await store.takeOneTime('h1', 'export', startMs)).toBeNull();
    expect(await store.takeOneTime('h2', 'enrol', startMs + 1_000)).toBeNull();
    const taken = await Promise.all([1, 2, 3].map(() => store.takeOneTime('h1', 'enrol', startMs)));
    expect(taken.filter((one) => one !== null)).toEqual([code]);
    expect(await store.takeOneTime('h3', 'enrol', startMs)).toBeNull();
  });

  it('`claimNonce()` lets each nonce through once', async () => {
    const claims = await Promise.all([1, 2, 3].map(() => store.claimNonce('n1', startMs, startMs + 1_000)));
    expect(claims.filter(Boolean)).toHaveLength(1);
    expect(await store.claimNonce('n2', startMs, startMs + 1_000)).toBe(true);
  });

  it('`countTry()` locks after the given number of wrong tries, and begins anew when the lock ends', async () => {
    const limits = { tries: 3, lockMs: 60_000, lockMostMs: 150_000, forgetMs: 86_400_000 };
    const where = { tablet: 't1', person: 'p\u00001' };
    const wrong = [];
    for (let at = 0; at < 5; at += 1) wrong.push(await store.countTry(where, startMs, limits));
    expect(wrong.map((tries) => tries.lockedUntilMs > startMs)).toEqual([false, false, false, true, true]);
    const later = await store.countTry(where, startMs + 60_001, limits);
    expect(later).toEqual({ wrong: 1, lockedUntilMs: 0 });
    await store.clearTries(where);
    expect((await store.countTry(where, startMs, limits)).wrong).toBe(1);
  });

  it('`countTry()` locks longer each time up to a limit, by tablet and person, and forgets after a pause', async () => {
    const limits = { tries: 2, lockMs: 60_000, lockMostMs: 150_000, forgetMs: 600_000 };
    const where = { tablet: 't1', person: 'p1' };
    let nowMs = startMs;
    const locksFor = async () => {
      for (let at = 0; at < 9; at += 1) {
        const { lockedUntilMs } = await store.countTry(where, nowMs, limits);
        if (lockedUntilMs > nowMs) return lockedUntilMs - nowMs;
      }
      return 0;
    };
    const locks = [];
    for (let at = 0; at < 4; at += 1) {
      const lock = await locksFor();
      locks.push(lock);
      nowMs += lock + 1;
    }
    expect(locks).toEqual([60_000, 120_000, 150_000, 150_000]);
    for (const other of [
      { tablet: 't2', person: 'p1' },
      { tablet: 't1', person: 'p2' },
    ])
      expect(await store.countTry(other, nowMs, limits)).toEqual({ wrong: 1, lockedUntilMs: 0 });
    nowMs += 600_001;
    expect(await locksFor()).toBe(60_000);
  });

  it('`takeBackTry()` takes one try back, and none where there is none', async () => {
    const limits = { tries: 5, lockMs: 60_000, lockMostMs: 60_000, forgetMs: 600_000 };
    const where = { tablet: 't1', person: '' };
    await store.takeBackTry(where);
    for (let at = 0; at < 3; at += 1) await store.countTry(where, startMs, limits);
    await store.takeBackTry(where);
    expect((await store.countTry(where, startMs, limits)).wrong).toBe(3);
  });

  it('`keepBrought()` keeps each end once, with the first word for it', async () => {
    const end = {
      tablet: 'x',
      epoch: 'e1',
      seq: 3,
      hash: 'a'.repeat(64),
      via: 't1',
      sig: 's1',
      atMs: startMs,
    };
    await store.keepBrought([end]);
    await store.keepBrought([]);
    await store.keepBrought([
      { ...end, sig: 's2', via: 't2' },
      { ...end, hash: 'b'.repeat(64) },
    ]);
    expect(await store.allBrought()).toEqual([end, { ...end, hash: 'b'.repeat(64) }]);
  });

  it('`enrolTablet()` and `revokeTablet()` keep every key a tablet had', async () => {
    await store.enrolTablet(
      { tablet: 't1', name: "Line 1; drop table tablets --<b>'", publicKey: 'k1' },
      startMs,
    );
    expect(await store.revokeTablet('t1', startMs + 1)).toBe(true);
    expect(await store.revokeTablet('t1', startMs + 2)).toBe(false);
    expect(await store.revokeTablet('t2', startMs + 2)).toBe(false);
    expect(await store.findTablet('t1')).toMatchObject({ revokedMs: startMs + 1, publicKey: 'k1' });
    await store.enrolTablet({ tablet: 't1', name: 'again', publicKey: 'k2' }, startMs + 3);
    expect(await store.findTablet('t1')).toMatchObject({ revokedMs: null, publicKey: 'k2', name: 'again' });
    expect(await store.tabletKeys('t1')).toEqual(['k2', 'k1']);
    await store.touchTablets([
      { tablet: 't9', seenMs: startMs, clockOffMs: null },
      { tablet: 't1', seenMs: startMs + 3, clockOffMs: -5 },
    ]);
    await store.touchTablets([{ tablet: 't1', seenMs: startMs + 4, clockOffMs: null }]);
    expect(await store.listTablets()).toMatchObject([{ tablet: 't1', seenMs: startMs + 4, clockOffMs: -5 }]);
  });

  it('`findSession()` knows a checked person until the time is over or the tablet is revoked', async () => {
    const session = {
      hash: 's',
      tablet: 't1',
      person: 'p\u0000',
      role: 'lead',
      pinChecked: true,
      untilMs: startMs + 10,
    };
    await store.addSession(session);
    expect(await store.findSession('s', startMs)).toEqual(session);
    expect(await store.findSession('s', startMs + 10)).toBeNull();
    await store.enrolTablet({ tablet: 't1', name: 'n', publicKey: 'k' }, startMs);
    await store.revokeTablet('t1', startMs);
    expect(await store.findSession('s', startMs)).toBeNull();
  });

  it('`putSnapshot()` keeps the newest of each fold', async () => {
    const snapshot = { fold: 'f1', tablet: 't1', atMs: startMs, bytes: new Uint8Array([1, 0, 255]) };
    const at = (pos: number) => ({ pos, root: 'a'.repeat(64) });
    await store.putSnapshot({ ...snapshot, cursor: at(5) });
    await store.putSnapshot({ ...snapshot, cursor: at(3), bytes: new Uint8Array([9]) });
    await store.putSnapshot({ ...snapshot, fold: 'f2', cursor: at(4) });
    const kept = await store.snapshot('f1');
    expect(kept?.cursor.pos).toBe(5);
    expect([...(kept?.bytes ?? [])]).toEqual([1, 0, 255]);
    expect(await store.snapshotPos()).toBe(5);
    expect(await store.snapshot('f3')).toBeNull();
  });

  it('`putSnapshot()` drops that of another fold once nobody has made one for sixty days', async () => {
    const snapshot = { tablet: 't1', bytes: new Uint8Array([1]), cursor: { pos: 5, root: 'a'.repeat(64) } };
    const days = (count: number) => startMs + count * 24 * 3_600_000;
    await store.putSnapshot({ ...snapshot, fold: 'f1', atMs: days(0) });
    await store.putSnapshot({ ...snapshot, fold: 'f2', atMs: days(1) });
    await store.putSnapshot({ ...snapshot, fold: 'f3', atMs: days(60) });
    expect(await store.snapshot('f1')).not.toBeNull();
    await store.putSnapshot({ ...snapshot, fold: 'f3', atMs: days(60) + 1 });
    expect(await store.snapshot('f1')).toBeNull();
    expect(await store.snapshot('f2')).not.toBeNull();
    await store.putSnapshot({ ...snapshot, fold: 'f3', atMs: days(90) });
    // Its own stays however old it is.
    await store.putSnapshot({ ...snapshot, fold: 'f3', atMs: days(400) });
    expect((await store.snapshot('f3'))?.atMs).toBe(days(400));
    expect(await store.snapshot('f2')).toBeNull();
  });

  it('keeps a picture by its verdict until its days are over', async () => {
    const picture = {
      sha256: 'ab',
      of: 't1/e1/7',
      untilMs: startMs + 10,
      bytes: new Uint8Array([1, 0, 255]),
    };
    await store.putPicture(picture);
    await store.putPicture({ ...picture, untilMs: startMs + 99 });
    const kept = await store.pictureOf('t1/e1/7');
    expect([kept?.sha256, kept?.untilMs, [...(kept?.bytes ?? [])]]).toEqual([
      'ab',
      startMs + 10,
      [1, 0, 255],
    ]);
    expect(await store.pictureOf('t1/e1/8')).toBeNull();
    await store.sweep(startMs + 11);
    expect(await store.pictureOf('t1/e1/7')).toBeNull();
  });

  it('`watch()` tells of appends and revocations', async () => {
    const heard: Signal[] = [];
    const done = new Promise<void>((resolve) => {
      store.watch((signal) => {
        heard.push(signal);
        if (heard.length === 2) resolve();
      });
    });
    await push(makeChain({ tablet: 't1', count: 1 }));
    await push(makeChain({ tablet: 't1', count: 1 }));
    await store.tell({ kind: 'revoked', tablet: 't1' });
    await done;
    expect(heard).toEqual([{ kind: 'appended' }, { kind: 'revoked', tablet: 't1' }]);
  });

  it('`keepMeta()` keeps the first value, and the server epoch stays', async () => {
    expect(await store.keepMeta('k', 'one')).toBe('one');
    expect(await store.keepMeta('k', 'two')).toBe('one');
    await store.writeMeta('k', 'three');
    expect(await store.readMeta('k')).toBe('three');
    const epoch = await store.serverEpoch();
    await store.close();
    store = await openStore({ folder: folder.path, database, nowMs });
    expect(await store.serverEpoch()).toBe(epoch);
  });

  it('`backupTo()` while others write, and `restoreInto()` either store, lose nothing and change the epoch', async () => {
    const chain = makeChain({ tablet: 't1', count: 700, payload: (seq) => ({ seq, text: 'x'.repeat(50) }) });
    await push(chain);
    await store.enrolTablet({ tablet: 't1', name: 'n', publicKey: 'k' }, startMs);
    await store.putSnapshot({
      fold: 'f',
      cursor: { pos: 1, root: 'a' },
      tablet: 't1',
      atMs: 1,
      bytes: new Uint8Array([7]),
    });
    const file = join(folder.path, 'copy.sqlite');
    const [, later] = await Promise.all([store.backupTo(file), push(makeChain({ tablet: 't2', count: 50 }))]);
    expect(later.added).toBe(50);
    await expect(store.backupTo(file)).rejects.toThrow('exists already');

    for (const target of [null, await newDatabase()]) {
      const other = newFolder();
      await restoreInto({ file, folder: other.path, database: target, nowMs, replace: false });
      const restored = await openStore({ folder: other.path, database: target, nowMs });
      const rows = await restored.page(0, 2_000);
      expect(rows.slice(0, 700).map((row) => row.text)).toEqual(
        (await store.page(0, 700)).map((row) => row.text),
      );
      expect(rows.length === 700 || rows.length === 750).toBe(true);
      expect(await restored.serverEpoch()).not.toBe(await store.serverEpoch());
      expect(await restored.findTablet('t1')).toMatchObject({ publicKey: 'k' });
      expect(await restored.tabletKeys('t1')).toEqual(['k']);
      expect([...((await restored.snapshot('f'))?.bytes ?? [])]).toEqual([7]);
      const more = makeChain({ tablet: 't1', count: 1, after: chain.at(-1) as Entry });
      const [appended] = await restored.append(
        [{ sender: 't1', entries: more.map((entry) => toChecked(entry)) }],
        startMs,
      );
      expect(appended?.added).toBe(1);
      await restored.close();
      // A store that holds something is not overwritten unless asked for.
      await expect(
        restoreInto({ file, folder: other.path, database: target, nowMs, replace: false }),
      ).rejects.toThrow('holds entries already');
      await restoreInto({ file, folder: other.path, database: target, nowMs, replace: true });
      const again = await openStore({ folder: other.path, database: target, nowMs });
      expect((await again.head()).pos).toBe(rows.length);
      await again.close();
      other.remove();
    }
  });
});
