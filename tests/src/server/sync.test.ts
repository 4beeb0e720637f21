// Tablets and server together: nothing is lost and everybody ends with the same log, whatever goes down in between.

import { copyFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { verifyChains } from '../../../shared/log/chain.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { canonicalText } from '../../../shared/log/seal.ts';
import { checkpointSchema } from '../../../shared/wire/messages.ts';
import { checkpointText, entryText } from '../../../shared/wire/signing.ts';
import { hashOf, signatureHolds } from '../../../src/server/keys.ts';
import { restoreInto } from '../../../src/server/stores/restore.ts';
import { enrolAt, newClock, newTablet, until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant();

const ids = (entries: readonly Entry[]) => entries.map(entryId);
const onServer = async () =>
  (await plant.server.running.store.page(0, 10_000)).map((row) => JSON.parse(row.text) as Entry);
const all = (count: number) =>
  until(`${count} entries everywhere`, () =>
    plant.tablets.every((one) => one.log.entries().length === count),
  );

describe('startSync()', () => {
  it('stays alone before enrolment and asks the network nothing', async () => {
    const tablet = await newTablet('t1', 'http://127.0.0.1:9');
    tablet.log.write(3);
    tablet.start();
    await until('the answer', () => tablet.status() !== null);
    expect(tablet.status()).toMatchObject({ phase: 'alone', lastAnswerMs: null });
    await tablet.stop();
  });

  it('brings what was written before enrolment, then each entry as it is written, to the other tablet', async () => {
    const a = await plant.join('a');
    const b = await plant.join('b');
    a.log.write(3);
    b.log.write(2);
    a.start();
    b.start();
    await all(5);
    await until('live', () => a.status()?.phase === 'live' && b.status()?.phase === 'live');
    a.log.write(1);
    await all(6);
    expect(ids(a.log.entries())).toEqual(ids(b.log.entries()));
    expect(ids(await onServer()).sort()).toEqual(ids(a.log.entries()).sort());
  });

  it('signs the end of what it sends, which vouches for all before it', async () => {
    const a = await plant.join('a');
    a.log.write(4);
    a.start();
    await until('4 entries', async () => (await onServer()).length === 4);
    const entries = await onServer();
    expect(entries.map(({ sig }) => sig !== null)).toEqual([false, false, false, true]);
    const head = entries.at(-1);
    expect(signatureHolds(a.key.publicKey, entryText(head?.hash ?? ''), head?.sig ?? '')).toBe(true);
    expect(verifyChains(entries).ok).toBe(true);
  });

  it('pushes a backlog of several pages and tells how much is left', async () => {
    const a = await plant.join('a');
    a.log.write(1_234, (seq) => ({ seq, text: 'x'.repeat(500) }));
    a.start();
    await until('all of it', async () => (await plant.server.running.store.head()).pos === 1_234);
    await until('no backlog', () => a.status()?.backlog === 0);
    const log = await onServer();
    expect(verifyChains(log)).toMatchObject({ ok: true, entries: 1_234 });
  });

  it('goes on after the server was away, with nothing lost or doubled', async () => {
    const a = await plant.join('a');
    const b = await plant.join('b');
    a.start();
    b.start();
    a.log.write(2);
    await all(2);
    await plant.server.restart(async () => {
      a.log.write(3);
      b.log.write(1);
      await until('waiting', () => a.status()?.reason === 'unreachable');
    });
    await all(6);
    expect((await onServer()).length).toBe(6);
  });

  it('loses nothing when an old backup is put back, not even what only other tablets still hold', async () => {
    const a = await plant.join('a');
    const b = await plant.join('b');
    a.start();
    b.start();
    a.log.write(3);
    await all(3);
    const backup = join(plant.server.folder, 'night.sqlite');
    await plant.server.running.store.backupTo(backup);
    a.log.write(4);
    b.log.write(2);
    await all(9);
    // Tablet a is dropped after the backup; what it wrote since lives on b alone.
    await a.stop();
    plant.tablets.splice(0, plant.tablets.length, b);
    await plant.server.restart(async () => {
      const { folder, settings } = plant.server;
      await restoreInto({ file: backup, folder, database: null, nowMs: settings.clock.nowMs, replace: true });
    });
    await until('all offered again', async () => (await plant.server.running.store.head()).pos === 9);
    expect(ids(await onServer()).sort()).toEqual(ids(b.log.entries()).sort());
    const c = await plant.join('c');
    c.start();
    await all(9);
  });

  it('notices a log put back by hand under the same epoch, also when it has grown past the old place', async () => {
    const a = await plant.join('a');
    const b = await plant.join('b');
    a.start();
    b.start();
    a.log.write(3);
    await all(3);
    const copy = join(plant.server.folder, 'by-hand.sqlite');
    await plant.server.running.store.backupTo(copy);
    b.log.write(3);
    await all(6);
    await b.stop();
    await a.stop();
    await plant.server.restart(() => {
      for (const end of ['', '-wal', '-shm'])
        rmSync(join(plant.server.folder, `log.sqlite${end}`), { force: true });
      copyFileSync(copy, join(plant.server.folder, 'log.sqlite'));
    });
    const c = await plant.join('c');
    c.log.write(5);
    c.start();
    await until("c's entries", async () => (await plant.server.running.store.head()).pos === 8);
    a.start();
    b.start();
    await all(11);
  });

  it('answers a tablet of an earlier release that asks for a checkpoint: signed, it shows a cut or rewritten log', async () => {
    const a = await plant.join('a');
    a.log.write(5);
    a.start();
    await until('all on the server', async () => (await plant.server.running.store.head()).pos === 5);
    const told = await a.caller.call('/api/checkpoint', checkpointSchema);
    if (!told.ok) throw new Error(`no checkpoint: ${told.error.code}`);
    const point = told.value;
    const text = checkpointText({ ...point, headsHash: hashOf(canonicalText(point.heads)) });
    const serverKey = a.log.memory.enrolled?.serverKey ?? '';
    expect(signatureHolds(serverKey, text, point.sig)).toBe(true);
    expect(signatureHolds(serverKey, text.replace('5', '6'), point.sig)).toBe(false);
    const log = await onServer();
    expect(verifyChains(log, { checkpoints: point.heads }).ok).toBe(true);
    expect(verifyChains(log.slice(0, 4), { checkpoints: point.heads }).firstBroken?.fault).toBe('truncated');
  });

  it('tells that an entry was quarantined, and keeps the rest of that chain on the tablet', async () => {
    const a = await plant.join('a');
    a.log.write(2);
    const [, second] = a.log.entries();
    const forged = { ...(second as Entry), payload: { text: 'changed on the disk' } };
    const entriesAfter = a.log.entriesAfter;
    Object.assign(a.log, {
      entriesAfter: async (...args: Parameters<typeof entriesAfter>) =>
        (await entriesAfter(...args)).map((entry) => (entry.seq === 2 ? forged : entry)),
    });
    a.start();
    await until('the news', () => (a.status()?.quarantined.length ?? 0) > 0);
    expect(a.status()?.quarantined).toEqual(['a/e1/2 hash-differs']);
    expect(await onServer()).toHaveLength(1);
    expect(
      (await plant.server.running.store.quarantined()).map((quarantined) => [
        quarantined.id,
        quarantined.fault,
      ]),
    ).toEqual([['a/e1/2', 'hash-differs']]);
  });

  it('syncs with a tablet clock that is a day off, and the server tells the drift without refusing', async () => {
    const clock = newClock();
    clock.shiftMs = 86_400_000;
    const a = await newTablet('a', plant.server.running.url, clock);
    plant.tablets.push(a);
    await enrolAt(plant.server.running, a);
    a.log.write(1);
    a.start();
    await until('the entry', async () => (await onServer()).length === 1);
    await until('the offset', () => Math.abs((a.status()?.clockOffMs ?? 0) + 86_400_000) < 60_000);
    await plant.server.running.context.seen.write();
    const [told] = await plant.server.running.store.listTablets();
    expect(Math.abs((told?.clockOffMs ?? 0) - 86_400_000)).toBeLessThan(60_000);
  });

  it('starts a new tablet from a snapshot, and brings the history in behind it', async () => {
    const a = await plant.join('a');
    a.log.write(700);
    a.start();
    await until('700 entries', async () => (await plant.server.running.store.head()).pos === 700);
    const { pos, root } = await plant.server.running.store.head();
    const { gzipSync } = await import('node:zlib');
    const state = {
      folded: 700,
      slots: Array.from({ length: 900 }, (_, slot) => ({ slot, lot: slot * 7_919 })),
    };
    const bytes = gzipSync(JSON.stringify(state));
    expect(bytes.length).toBeGreaterThan(2_000);
    await plant.server.running.store.putSnapshot({
      fold: 'f1',
      cursor: { pos, root },
      tablet: 'a',
      atMs: 1,
      bytes,
    });
    a.log.write(3);
    await until('the tail', async () => (await plant.server.running.store.head()).pos === 703);
    const b = await newTablet('b', plant.server.running.url);
    plant.tablets.push(b);
    const taken: unknown[] = [];
    let first: readonly Entry[] | null = null;
    b.log.onTaken((entries) => {
      first ??= entries;
    });
    const snapshots = {
      fold: 'f1',
      make: async () => null,
      take: async (state: Uint8Array) => {
        taken.push(JSON.parse(new TextDecoder().decode(state)));
        return true;
      },
    };
    Object.assign(b.log, { snapshots });
    await enrolAt(plant.server.running, b);
    b.start();
    await all(703);
    expect(taken).toEqual([state]);
    expect(ids(first ?? [])).toEqual(['a/e1/701', 'a/e1/702', 'a/e1/703']);
    await until('the history', () => b.log.memory.history === null);
  });

  it('gives a snapshot when the server wants one', async () => {
    const a = await plant.join('a');
    const snapshots = {
      fold: 'f2',
      make: async () => new TextEncoder().encode('{"state":1}'),
      take: async () => false,
    };
    Object.assign(a.log, { snapshots });
    a.log.write(5_600);
    a.start();
    await until('the snapshot', async () => (await plant.server.running.store.snapshot('f2')) !== null);
    const kept = await plant.server.running.store.snapshot('f2');
    const { gunzipSync } = await import('node:zlib');
    expect(gunzipSync(kept?.bytes ?? new Uint8Array()).toString()).toBe('{"state":1}');
    expect(kept?.tablet).toBe('a');
  });
});
