// Heads between tablets and a server: one signature a page, pages cut at heads, what stands before an entry at fault, and a server that
// lost all and gets chains back from tablets that only heard them.

import { describe, expect, it } from 'vitest';
import type { Entry, JsonObject } from '../../../shared/log/entry.ts';
import { draftOf, sealEntry } from '../../../shared/log/seal.ts';
import { formatCursor, startCursor } from '../../../shared/wire/cursor.ts';
import { pulledSchema, pushedSchema } from '../../../shared/wire/messages.ts';
import { entryText } from '../../../shared/wire/signing.ts';
import { wireHeader } from '../../../shared/wire/version.ts';
import { offerHeads, openSyncContext } from '../../../src/app/sync/context.ts';
import { createCaller } from '../../../src/app/sync/http.ts';
import { pushAll } from '../../../src/app/sync/steps-push.ts';
import { readPublicKey, signatureHolds } from '../../../src/server/keys.ts';
import { makeChain } from '../../contract/entries.ts';
import { newTablet, startTestServer, type TestTablet, until } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant();
const onServer = async () =>
  (await plant.server.running.store.page(0, 10_000)).map((row) => JSON.parse(row.text) as Entry);
const held = async () => (await plant.server.running.store.head()).pos;

/** The first entry of a tablet's chain, which names its key; nothing else of it is signed here. */
function opening({ key, name }: TestTablet): JsonObject {
  const { x = '', y = '' } = readPublicKey(key.publicKey)?.export({ format: 'jwk' }) ?? {};
  return { name, app: '1', key: { kty: 'EC', crv: 'P-256', x, y }, previous: null };
}

async function joinOpened(name: string): Promise<TestTablet> {
  const tablet = await plant.join(name);
  tablet.log.write(1, () => opening(tablet), 'tablet.opened');
  return tablet;
}

const isByOwnKey = ({ key }: TestTablet, { hash, sig }: Entry) =>
  sig !== null && signatureHolds(key.publicKey, entryText(hash), sig);

/** Pages of the log as a tablet asks for them. */
async function pages(tablet: TestTablet): Promise<readonly (readonly Entry[])[]> {
  const found: (readonly Entry[])[] = [];
  for (let after = formatCursor(startCursor); ; ) {
    const pulled = await tablet.caller.call(`/api/pull?after=${after}`, pulledSchema, { timeoutMs: 30_000 });
    if (!pulled.ok) throw new Error(pulled.error.code);
    found.push(pulled.value.entries as readonly Entry[]); // as this server wrote them
    after = pulled.value.cursor;
    if (!pulled.value.more) return found;
  }
}

describe('a backlog', () => {
  it('carries one signature a page, and each page that a tablet pulls ends at one', async () => {
    const tablets = await Promise.all(['a', 'b', 'c'].map(joinOpened));
    for (const tablet of tablets) tablet.log.write(700);
    for (const tablet of tablets) tablet.start();
    await until('all on the server', async () => (await held()) === 2_103);
    const log = await onServer();
    for (const tablet of tablets) {
      const heads = log.filter((entry) => entry.tablet === tablet.name && entry.sig !== null);
      expect(heads.length).toBeLessThan(12);
      expect(heads.every((entry) => isByOwnKey(tablet, entry))).toBe(true);
      expect(heads.at(-1)?.seq).toBe(701);
    }
    const cut = await pages(tablets[0] as TestTablet);
    expect(cut.length).toBeGreaterThan(4);
    expect(cut.flat().map(({ hash }) => hash)).toEqual(log.map(({ hash }) => hash));
    for (const page of cut) expect(page.at(-1)?.sig).not.toBe(null);
    await until('all everywhere', () => tablets.every(({ log: own }) => own.entries().length === 2_103));
    expect(tablets.map(({ status }) => status()?.quarantinedHere)).toEqual([0, 0, 0]);
  });
});

describe('what is signed by itself', () => {
  it('goes signed within its page, and the rest of it does not', async () => {
    const a = await joinOpened('a');
    const signsItself = (entry: Entry) => entry.seq === 3;
    Object.assign(a.log, { signsItself });
    a.log.write(4);
    a.start();
    await until('all', async () => (await held()) === 5);
    const own = await onServer();
    expect(own.map(({ seq, sig }) => [seq, sig !== null])).toEqual(
      [1, 2, 3, 4, 5].map((seq) => [seq, seq === 3 || seq === 5]),
    );
    expect(own.filter((entry) => isByOwnKey(a, entry))).toHaveLength(2);
  });
});

describe('an entry dated too far ahead', () => {
  it('holds up nothing that was written before it: that goes again, signed by itself', async () => {
    const a = await joinOpened('a');
    const b = await joinOpened('b');
    a.log.write(3);
    const [last] = a.log.entries().slice(-1);
    const far = makeChain({ tablet: 'a', count: 1, after: last as Entry, atMs: Date.now() + 10 * 3_600_000 });
    await a.log.takeIn([...far, ...makeChain({ tablet: 'a', count: 2, after: far[0] as Entry })]);
    a.start();
    b.start();
    await until('what was before it, everywhere', () => b.log.entries().length === 5);
    await until('that it is told', () => (a.status()?.quarantined ?? []).length > 0);
    expect(a.status()?.quarantined).toEqual([expect.stringContaining('a/e1/5 clock-ahead')]);
    const own = (await onServer()).filter(({ tablet }) => tablet === 'a');
    expect(own.map(({ seq, sig }) => [seq, sig !== null])).toEqual([1, 2, 3, 4].map((seq) => [seq, true]));
    // Nothing else was kept aside on the way.
    const aside = await plant.server.running.store.quarantined();
    expect(aside.map(({ id, fault }) => [id, fault])).toEqual([['a/e1/5', 'clock-ahead']]);
  });
});

describe('a tablet of a newer app at an older server', () => {
  it('is refused in words before anything is sent', async () => {
    const response = await fetch(`${plant.server.running.url}/api/pull?after=${formatCursor(startCursor)}`, {
      headers: { [wireHeader]: '999' },
    });
    expect(response.status).toBe(426);
    expect(((await response.json()) as { code: string }).code).toBe('wire-too-new');
  });
});

describe('a chain that only another tablet still holds', () => {
  it('comes back up to its last head, by the signature of who wrote it', async () => {
    const a = await joinOpened('a');
    const b = await joinOpened('b');
    a.start();
    b.start();
    a.log.write(5);
    await until('all at b', () => b.log.entries().length === 7);
    await a.stop();
    const end = b.log
      .entries()
      .filter(({ tablet }) => tablet === 'a')
      .at(-1) as Entry;
    await b.stop();
    // As an app of before heads takes in: more than the last one vouches for.
    await b.log.takeIn(makeChain({ tablet: 'a', count: 2, after: end }));
    const empty = await startTestServer();
    try {
      for (const { name, key } of [a, b])
        await empty.running.store.enrolTablet({ tablet: name, name, publicKey: key.publicKey }, Date.now());
      const again = await newTablet('b', empty.running.url);
      const moved = { ...b.log.memory, enrolled: b.log.memory.enrolled, acked: {}, cursor: null };
      const caller = createCaller(again.world, b.key);
      const context = openSyncContext({
        log: b.log,
        key: b.key,
        world: again.world,
        caller,
        memory: moved,
        status: () => undefined,
      });
      expect(await offerHeads(context)).toBe(null);
      expect(await pushAll(context)).toBe(null);
      const marks = await empty.running.store.marks([end, { tablet: 'b', epoch: 'e1' }]);
      expect(marks.map(({ tablet, seq }) => [tablet, seq])).toEqual([
        ['a', end.seq],
        ['b', 1],
      ]);
      expect(await empty.running.store.quarantined()).toEqual([]);
      const text = (await empty.running.store.page(0, 100)).map((row) => JSON.parse(row.text) as Entry);
      expect(text.filter((entry) => isByOwnKey(a, entry)).map(({ seq }) => seq)).toContain(end.seq);
    } finally {
      await empty.stop();
    }
  });
});

describe('a forged tail', () => {
  it('is kept aside at the server, and what the tablet sends afterwards is taken', async () => {
    const a = await joinOpened('a');
    const json = async (entries: readonly Entry[]) => {
      const pushed = await a.caller.call('/api/push', pushedSchema, {
        json: { sentMs: Date.now(), entries },
      });
      return pushed.ok ? pushed.value.faults : pushed.error;
    };
    const [first] = a.log.entries() as [Entry];
    const forged = sealEntry({
      ...draftOf(first),
      seq: 2,
      prev: first.hash,
      kind: 'test.noted',
      payload: {},
    });
    const signed = { ...first, sig: await a.key.sign(entryText(first.hash)) };
    expect(await json([signed, forged])).toEqual([{ id: 'a/e1/2', fault: 'signature-missing' }]);
    a.log.write(2);
    a.start();
    await until('its own', async () => (await held()) === 3);
    expect((await onServer()).map(({ hash }) => hash)).toEqual(a.log.entries().map(({ hash }) => hash));
  });
});
