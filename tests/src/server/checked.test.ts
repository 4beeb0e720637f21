// Who vouches for which entry of a page: its tablet by the key that it has or had, the chain for those before the last, and for
// a tablet that nobody knows the one that brings it.

import { describe, expect, it } from 'vitest';
import type { Entry } from '../../../shared/log/entry.ts';
import { checkEntries, readEntry } from '../../../src/server/checked.ts';
import { makeChain, newKey, startMs } from '../../contract/entries.ts';

const [oldKey, key] = [newKey(), newKey()];
const forged = 'A'.repeat(86);
const before = makeChain({ tablet: 't1', count: 3, key: oldKey });
const after = before.at(-1) as Entry;
const own = makeChain({ tablet: 't1', count: 3, key, after });

/** Faults by number, where there are any; the tablets whose keys the store was asked for; and what was proved. */
async function check(entries: readonly Entry[], carrier = 't1') {
  const asked: string[] = [];
  const proved: string[] = [];
  const checked = await checkEntries(
    entries.map(readEntry),
    { tablet: carrier, publicKey: key.publicKey, nowMs: startMs },
    {
      store: {
        tabletKeys: async (tablet) => {
          asked.push(tablet);
          return tablet === 't1' ? [key.publicKey, oldKey.publicKey] : [];
        },
      },
      signatures: { proved: ({ hash }) => proved.push(hash) },
    },
  );
  const faults = Object.fromEntries(checked.flatMap(({ seq, fault }) => (fault ? [[seq, fault]] : [])));
  return { faults, asked, proved, via: checked.map((one) => one.via) };
}

describe('`checkEntries()`', () => {
  it('asks the store for nothing where a tablet brings its own, signed with the key that it has', async () => {
    expect(await check(own)).toEqual({
      faults: {},
      asked: [],
      proved: [own.at(-1)?.hash],
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

  it('leaves entries of a tablet that nobody knows to the one that brings them', async () => {
    const strange = makeChain({ tablet: 'x', count: 2, key: newKey() });
    expect(await check(strange)).toEqual({ faults: {}, asked: ['x'], proved: [], via: ['t1', 't1'] });
  });
});
