// What the server says of the log's tree over HTTP: receipts, heads in the open form, and proofs of them.

import { verify } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { fromHex } from '../../../shared/log/bytes.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { p256NoteKey, parseNote, signaturesBy } from '../../../shared/log/note.ts';
import { consistencyHolds, emptyRoot, inclusionHolds, leafHash } from '../../../shared/log/tree.ts';
import { parseTreeHead, proofFromTexts } from '../../../shared/log/tree-head.ts';
import { pushedSchema, treeToldSchema } from '../../../shared/wire/messages.ts';
import { entryText } from '../../../shared/wire/signing.ts';
import { readPublicKey } from '../../../src/server/keys.ts';
import { noteHolds } from '../../../src/server/plant-key.ts';
import { makeChain } from '../../contract/entries.ts';
import type { TestTablet } from './tablets.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant();

async function push(tablet: TestTablet, entries: readonly Entry[]) {
  const signed = await Promise.all(
    entries.map(async (entry) => ({ ...entry, sig: await tablet.key.sign(entryText(entry.hash)) })),
  );
  const pushed = await tablet.caller.call('/api/push', pushedSchema, {
    json: { sentMs: 1, entries: signed },
  });
  if (!pushed.ok) throw new Error(pushed.error.code);
  return pushed.value;
}

async function ask(tablet: TestTablet, sizes: readonly number[], places: readonly number[] = []) {
  const told = await tablet.caller.call('/api/tree', treeToldSchema, { json: { sizes, places } });
  if (!told.ok) throw new Error(told.error.code);
  return { ...told.value, head: headIn(told.value.head) };
}

/** The head in a note that holds by both of the plant's keys. */
function headIn(text: string) {
  const { key } = plant.server.running.context;
  const note = parseNote(text);
  const head = note && parseTreeHead(note.text);
  const p256 = head && p256NoteKey(head.origin, key.publicKey);
  if (!note || !head || !p256) throw new Error(`no head: ${text}`);
  expect(head.origin).toBe(key.plant.ed25519.name);
  expect(noteHolds(note, key.plant.ed25519)).toBe(true);
  const [sig] = signaturesBy(note, p256);
  const own = readPublicKey(key.publicKey);
  expect(own && sig && verify('sha256', Buffer.from(note.text), own, sig)).toBe(true);
  return head;
}

const leafOf = (entry: Entry | undefined) => leafHash(fromHex(entry?.hash ?? '', 32) ?? emptyRoot);
const read = (proof: readonly string[] | undefined) => proofFromTexts(proof ?? ['none']) ?? [emptyRoot];

describe('a push', () => {
  it('is answered with a signed head and where its entries lie, and both are proved', async () => {
    const [a, b] = [await plant.join('a'), await plant.join('b')];
    const chains = { a: makeChain({ tablet: 'a', count: 5 }), b: makeChain({ tablet: 'b', count: 4 }) };
    const first = await push(a, chains.a.slice(0, 2));
    await push(b, chains.b);
    const again = await push(a, chains.a);
    expect(first.receipt?.places).toEqual([{ tablet: 'a', epoch: 'e1', seq: 1, count: 2, index: 0 }]);
    expect(again.receipt?.places).toEqual([
      { tablet: 'a', epoch: 'e1', seq: 1, count: 2, index: 0 },
      { tablet: 'a', epoch: 'e1', seq: 3, count: 3, index: 6 },
    ]);
    const heads = [first, again].map(({ receipt }) => headIn(receipt?.head ?? ''));
    expect(heads.map(({ size }) => size)).toEqual([2, 9]);
    const told = await ask(a, [2, 9], [0, 8, 3]);
    const [old, now] = heads;
    if (!old || !now) throw new Error('two were pushed');
    expect(told.head).toEqual(now);
    expect(consistencyHolds(old, now, read(told.consistency[0]))).toBe(true);
    expect(told.consistency[1]).toEqual([]);
    const entries = [chains.a[0], chains.a[4], chains.b[1]];
    for (const [at, index] of [0, 8, 3].entries())
      expect(inclusionHolds({ ...now, leaf: leafOf(entries[at]), index }, read(told.inclusion[at]))).toBe(
        true,
      );
    expect(await ask(a, [10], [9])).toMatchObject({ consistency: [[]], inclusion: [[]] });
  });

  it('is answered without a receipt for a tablet of before there were any', async () => {
    const tablet = await plant.join('old');
    const old = {
      ...tablet.world,
      fetch: ((url: string, init: RequestInit) =>
        fetch(url, {
          ...init,
          headers: { ...(init.headers as Record<string, string>), 'reelward-wire': '3' },
        })) as typeof fetch,
    };
    const { createCaller } = await import('../../../src/app/sync/http.ts');
    const [entry] = makeChain({ tablet: 'old', count: 1 });
    if (!entry) throw new Error('one was asked for');
    const entries = [{ ...entry, sig: await tablet.key.sign(entryText(entry.hash)) }];
    const pushed = await createCaller(old, tablet.key).call('/api/push', pushedSchema, {
      json: { sentMs: 1, entries },
    });
    expect(pushed).toMatchObject({ ok: true, value: { acks: [{ seq: 1 }] } });
    expect(pushed.ok && pushed.value.receipt).toBeUndefined();
  });
});

describe('the tree', () => {
  it('is told to tablets of the plant only, and in bounds', async () => {
    const stranger = await plant.join('s');
    await plant.server.running.store.revokeTablet('s', Date.now());
    const bare = await fetch(`${plant.server.running.url}/api/tree`, {
      method: 'POST',
      body: '{}',
      headers: { 'reelward-wire': '4' },
    });
    expect(bare.status).toBe(401);
    const json = { sizes: [], places: [] };
    expect(await stranger.caller.call('/api/tree', treeToldSchema, { json })).toMatchObject({
      error: { code: 'tablet-revoked' },
    });
    const tablet = await plant.join('t');
    for (const wrong of [
      { sizes: Array(33).fill(0), places: [] },
      { sizes: [-1], places: [] },
      { sizes: [] },
    ])
      expect(await tablet.caller.call('/api/tree', treeToldSchema, { json: wrong })).toMatchObject({
        error: { code: 'bad-body' },
      });
    expect((await ask(tablet, [])).head).toMatchObject({ size: 0, root: emptyRoot });
  });

  it('is told to one tablet sixty times a minute, and to another all the same', async () => {
    const [a, b] = [await plant.join('a'), await plant.join('b')];
    const json = { sizes: [], places: [] };
    const told = await Promise.all(
      Array.from({ length: 64 }, () => a.caller.call('/api/tree', treeToldSchema, { json })),
    );
    const refused = told.flatMap((each) => (each.ok ? [] : [each.error]));
    expect(refused.map(({ code }) => code)).toEqual(Array(4).fill('too-often'));
    expect(refused.every(({ retryAfterMs }) => (retryAfterMs ?? 0) > 0)).toBe(true);
    expect((await ask(b, [])).head.size).toBe(0);
  });

  it('goes on over a restart, under the same key', async () => {
    const tablet = await plant.join('t');
    const before = headIn((await push(tablet, makeChain({ tablet: 't', count: 3 }))).receipt?.head ?? '');
    await plant.server.restart();
    const retry = async (): Promise<Awaited<ReturnType<typeof ask>>> => ask(tablet, [3]).catch(retry);
    const told = await retry(); // a connection of before the restart may break first
    expect(told.head).toEqual(before);
  });
});
