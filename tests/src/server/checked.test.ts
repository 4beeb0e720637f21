// Who vouches for which entry of a page: its tablet by the key that it has or had, the chain for those before the last, and for
// a tablet that nobody knows the one that brings it.

import { createPublicKey } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { Entry, JsonObject } from '../../../shared/log/entry.ts';
import type { Brought } from '../../../shared/wire/messages.ts';
import { broughtText } from '../../../shared/wire/signing.ts';
import { checkEntries, readEntry } from '../../../src/server/checked.ts';
import { makeChain, newKey, startMs } from '../../contract/entries.ts';

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
        firstOf: async () => null,
        keepBrought: async (words) => void kept.push(...words.map(({ seq, via }) => `${via} ${seq}`)),
      },
      signatures: { proved: ({ hash }) => proved.push(hash) },
    },
  );
  const faults = Object.fromEntries(checked.flatMap(({ seq, fault }) => (fault ? [[seq, fault]] : [])));
  return { faults, asked, proved, kept, via: checked.map((one) => one.via) };
}

describe('`checkEntries()`', () => {
  it('asks the store for nothing where a tablet brings its own, signed with the key that it has', async () => {
    expect(await check(own)).toEqual({
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
    expect(all).toEqual({ faults: {}, asked: ['x'], proved: [], kept: ['t1 3'], via: ['t1', 't1', 't1'] });
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
});
