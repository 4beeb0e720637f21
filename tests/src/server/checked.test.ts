// Who vouches for which entry of a page: its tablet by the key that it has or had, the chain for those before the last, and for
// a tablet that nobody knows the one that brings it.

import { createPublicKey } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry, JsonObject } from '../../../shared/log/entry.ts';
import { draftOf, sealEntry } from '../../../shared/log/seal.ts';
import type { Brought } from '../../../shared/wire/messages.ts';
import { broughtText } from '../../../shared/wire/signing.ts';
import { checkEntries, readEntry } from '../../../src/server/checked.ts';
import { makeChain, newKey, placed, signedBy, startMs } from '../../contract/entries.ts';

const [oldKey, key] = [newKey(), newKey()];
const forged = 'A'.repeat(86);
const before = makeChain({ tablet: 't1', count: 3, key: oldKey });
const after = before.at(-1) as Entry;
const own = makeChain({ tablet: 't1', count: 3, key, after });

/** Faults by number, where there are any; the tablets whose keys the store was asked for; and what was proved. */
async function check(entries: readonly Entry[], carrier = 't1', brought: readonly Brought[] = []) {
  const kept: string[] = [];
  const asked: string[] = [];
  const proved: string[] = [];
  const checked = await checkEntries(
    entries.map(readEntry),
    { tablet: carrier, publicKey: key.publicKey, nowMs: startMs, brought },
    {
      store: {
        tabletKeys: async (tablet) => {
          asked.push(tablet);
          return tablet === 't1' ? [key.publicKey, oldKey.publicKey] : [];
        },
        findTablet: async () => null,
        firstOf: async () => null,
        keepBrought: async (words) => void kept.push(...words.map(({ seq, via }) => `${via} ${seq}`)),
      },
      signatures: { proved: ({ hash }) => proved.push(hash) },
    },
  );
  const faults = Object.fromEntries(checked.flatMap(({ seq, fault }) => (fault ? [[seq, fault]] : [])));
  const [taken, hashes] = [checked.map(({ seq }) => seq), checked.map(({ hash }) => hash)];
  return { faults, asked, proved, kept, via: checked.map((one) => one.via), taken, hashes };
}

/** The chain of six without a signature, and with one of the tablet's key at some entry. */
const bare = [...before, ...own].map((entry) => ({ ...entry, sig: null }));
const headed = (seq: number): readonly Entry[] =>
  bare.slice(0, seq).map((entry) => (entry.seq === seq ? signedBy(key, entry) : entry));

describe('`checkEntries()`', () => {
  it('asks the store for nothing where a tablet brings its own, signed with the key that it has', async () => {
    expect(await check(own)).toMatchObject({
      faults: {},
      asked: [],
      proved: [own.at(-1)?.hash],
      kept: [],
      via: [null, null, null],
    });
  });

  it('takes the keys that the tablet had before', async () => {
    expect(await check(before)).toMatchObject({ faults: {}, asked: ['t1'], proved: [after.hash] });
    expect((await check(before, 't9')).via).toEqual(['t9', 't9', 't9']);
  });

  it('looks at each by itself where the last is forged, or is not what its hash says', async () => {
    const last = own.at(-1) as Entry;
    const isForged = [...before, ...own.slice(0, -1), { ...last, sig: forged }];
    expect((await check(isForged)).faults).toEqual({ 6: 'signature-differs' });
    const isChanged = [...before, ...own.slice(0, -1), { ...last, payload: { text: 'else' } }];
    expect((await check(isChanged)).faults).toEqual({ 6: 'hash-differs' });
    const both = isForged.map((one) => (one.seq === 2 ? { ...one, sig: forged } : one));
    expect((await check(both)).faults).toEqual({ 2: 'signature-differs', 6: 'signature-differs' });
  });

  it('lets the last vouch for a forged one before it, which the walk along the log tells of', async () => {
    const page = own.map((one) => (one.seq === 5 ? { ...one, sig: forged } : one));
    expect((await check(page)).faults).toEqual({});
  });

  it('takes entries of a tablet that nobody knows from one that signs that it brings them, as far as it says', async () => {
    const strange = makeChain({ tablet: 'x', count: 3, key: newKey() });
    const missing = { 1: 'signature-missing', 2: 'signature-missing', 3: 'signature-missing' };
    expect(await check(strange)).toMatchObject({ faults: missing, asked: ['x'], kept: [] });
    const wordFor = (entry: Entry | undefined, by = key) => {
      const { tablet, epoch, seq, hash } = entry as Entry;
      const end = { tablet, epoch, seq, hash };
      return { ...end, sig: by.sign(broughtText(end)) };
    };
    expect((await check(strange, 't1', [wordFor(strange[2], newKey())])).faults).toEqual(missing);
    const other = { ...wordFor(strange[2]), seq: 2 };
    expect((await check(strange, 't1', [other])).faults).toEqual(missing);
    const all = await check(strange, 't1', [wordFor(strange[2])]);
    expect(all).toMatchObject({
      faults: {},
      asked: ['x'],
      proved: [],
      kept: ['t1 3'],
      via: ['t1', 't1', 't1'],
    });
    const some = await check(strange, 't1', [wordFor(strange[1])]);
    expect(some.faults).toEqual({ 3: 'signature-missing' });
    // Unsigned ones are no run; the seals between them hold all the same.
    const bare = makeChain({ tablet: 'y', count: 3 });
    expect(await check(bare, 't1', [wordFor(bare[2])])).toMatchObject({ faults: {}, kept: ['t1 3'] });
  });

  it('checks them by the key that their first entry names', async () => {
    const theirs = newKey();
    const { kty, crv, x, y } = createPublicKey(theirs.private).export({ format: 'jwk' });
    const payload = () => ({ name: 'x', app: '1', key: { kty, crv, x, y } as JsonObject, previous: null });
    const chain = makeChain({ tablet: 'x', count: 3, key: theirs, kind: 'tablet.opened', payload });
    const last = chain.at(-1) as Entry;
    const end = { tablet: 'x', epoch: 'e1', seq: 3, hash: last.hash };
    const word = { ...end, sig: key.sign(broughtText(end)) };
    expect((await check(chain, 't1', [word])).faults).toEqual({});
    const nonsense = chain.map((one) => (one.seq === 1 ? one : { ...one, sig: forged }));
    expect((await check(nonsense, 't1', [word])).faults).toEqual({
      2: 'signature-differs',
      3: 'signature-differs',
    });
  });

  it('takes what the head at the end of a page vouches for, by one signature', async () => {
    const page = headed(before.length + own.length);
    expect(await check(page)).toMatchObject({
      faults: {},
      proved: [page.at(-1)?.hash],
      taken: [1, 2, 3, 4, 5, 6],
    });
    const strange = makeChain({ tablet: 't1', epoch: 'e2', count: 3, key: newKey() });
    expect((await check([...page, ...strange])).faults).toMatchObject({ 3: 'signature-differs' });
  });

  it('takes nothing that comes after the last head of a page', async () => {
    const missing = { 4: 'signature-missing', 5: 'signature-missing', 6: 'signature-missing' };
    expect((await check([...headed(3), ...bare.slice(3)])).faults).toEqual(missing);
    const forgedEnd = [...headed(3), ...bare.slice(3, 5), { ...(bare[5] as Entry), sig: forged }];
    expect((await check(forgedEnd)).faults).toEqual({ ...missing, 6: 'signature-differs' });
  });

  it('leaves out what the head vouches for only behind an entry at fault, so that the log never holds it without its head', async () => {
    const far = 10 * 3_600_000;
    const ahead = sealEntry({ ...draftOf(bare[3] as Entry), hlc: { ms: startMs + far, n: 0 } });
    const rest = makeChain({ tablet: 't1', count: 2, key, after: ahead });
    const found = await check([...bare.slice(0, 3), ahead, ...rest]);
    expect(found).toMatchObject({ faults: { 4: 'clock-ahead' }, taken: [4, 5, 6] });
    // Signed each, those before it are taken.
    const each = await check([...before, ahead, ...rest]);
    expect(each).toMatchObject({ faults: { 4: 'clock-ahead' }, taken: [1, 2, 3, 4, 5, 6] });
  });

  it('takes every entry of an honest chain whose pages end in heads, and nothing that was cut, moved, replaced, added or taken from another', async () => {
    const honest = new Set([...bare, ...before, ...own].map(({ hash }) => hash));
    const other = makeChain({ tablet: 't2', count: 6, key: newKey() });
    const at = fc.nat(5);
    const heads = fc.uniqueArray(fc.integer({ min: 1, max: 5 }));
    await fc.assert(
      fc.asyncProperty(heads, fc.nat(7), at, at, async (more, attack, from, to) => {
        const page: readonly Entry[] = bare.map((one) =>
          one.seq === 6 || more.includes(one.seq) ? signedBy(key, one) : one,
        );
        expect((await check(page)).faults).toEqual({});
        const entry = page[from] as Entry;
        const resealed = sealEntry({ ...draftOf(entry), payload: { text: 'forged' } });
        const tail = makeChain({ tablet: 't1', count: 2, after: page[5] as Entry });
        const bent: readonly (readonly Entry[])[] = [
          page.filter((one) => one !== entry),
          placed(placed(page, from, page[to] as Entry), to, entry),
          placed(page, from, resealed),
          placed(page, from, { ...resealed, sig: entry.sig ?? signedBy(newKey(), resealed).sig }),
          placed(page, from, { ...entry, payload: { text: 'forged' } }),
          [...page, ...tail],
          [...page, ...tail.map((one) => signedBy(newKey(), one))],
          placed(page, from, { ...entry, sig: other[to]?.sig ?? null }),
        ];
        const { faults, taken, hashes } = await check(bent[attack] ?? []);
        for (const [index, hash] of hashes.entries())
          if (!(String(taken[index]) in faults)) expect(honest).toContain(hash);
      }),
      { numRuns: 300 },
    );
  });
});
