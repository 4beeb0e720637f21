// A signed head vouches for every entry before it in its chain, and for nothing that was cut, moved, replaced, added or taken from another.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../../shared/log/entry.ts';
import { draftOf, sealEntry, sealedHash } from '../../../shared/log/seal.ts';
import { goesOn, vouchersOf } from '../../../shared/log/vouched.ts';
import { makeChain, placed } from '../../contract/entries.ts';

const LENGTH = 8;
const chain = makeChain({ tablet: 't1', count: LENGTH });
const other = makeChain({ tablet: 't2', count: LENGTH });
const isWhole = (entry: Entry) => sealedHash(entry) === entry.hash;

/** Signs by name: a made-up signature that holds for the very hash. */
const signed = (entry: Entry): Entry => ({ ...entry, sig: entry.hash });
const holds = (entry: Entry) => entry.sig === entry.hash && entry.tablet === 't1';
const seqs = (entries: readonly Entry[]) =>
  vouchersOf(entries, { holds, isWhole }).map((head) => head?.seq ?? null);
const withHeads = (at: ReadonlySet<number>) => chain.map((one) => (at.has(one.seq) ? signed(one) : one));

describe('`vouchersOf()`', () => {
  it('names for each entry the next signed one, its own first, and none after the last', () => {
    expect(seqs(withHeads(new Set([3, 6])))).toEqual([3, 3, 3, 6, 6, 6, null, null]);
    expect(seqs(chain)).toEqual(chain.map(() => null));
    expect(seqs(chain.map(signed))).toEqual(chain.map(({ seq }) => seq));
    expect(seqs([])).toEqual([]);
  });

  it('is stopped by what lacks its text, and by a signature that does not hold', () => {
    const lacking = withHeads(new Set([6])).map((one) => (one.seq === 4 ? { ...one, payload: {} } : one));
    expect(seqs(lacking)).toEqual([null, null, null, 6, 6, 6, null, null]);
    const forged = withHeads(new Set([3, 6])).map((one) => (one.seq === 6 ? { ...one, sig: 'x' } : one));
    expect(seqs(forged)).toEqual([3, 3, 3, null, null, null, null, null]);
    // One that does not hold in between hides nothing: the head behind it speaks through the hashes.
    const within = withHeads(new Set([3, 6])).map((one) => (one.seq === 3 ? { ...one, sig: 'x' } : one));
    expect(seqs(within)).toEqual([6, 6, null, 6, 6, 6, null, null]);
  });

  it('vouches for the entries of the honest chain alone, whatever is done to the list', () => {
    const honest = new Set(chain.map(({ hash }) => hash));
    const replaced = (one: Entry) => sealEntry({ ...draftOf(one), payload: { text: 'forged' } });
    const attacks: readonly ((entries: readonly Entry[], at: number, to: number) => readonly Entry[])[] = [
      (entries, at) => entries.filter((_, index) => index !== at),
      (entries, at, to) => placed(placed(entries, at, entries[to] as Entry), to, entries[at] as Entry),
      (entries, at) => placed(entries, at, replaced(entries[at] as Entry)),
      (entries, at) =>
        placed(entries, at, { ...replaced(entries[at] as Entry), sig: entries[at]?.hash ?? null }),
      (entries, at) => placed(entries, at, { ...(entries[at] as Entry), payload: { text: 'forged' } }),
      (entries, at) => [
        ...entries.slice(0, at),
        ...makeChain({ tablet: 't1', count: 3, payload: () => ({ x: 1 }) }),
      ],
      (entries, at) => placed(entries, at, signed(other[at] as Entry)),
      (entries, at, to) => placed(entries, at, { ...(entries[at] as Entry), sig: other[to]?.hash ?? null }),
    ];
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: LENGTH })),
        fc.nat(attacks.length - 1),
        fc.nat(LENGTH - 1),
        fc.nat(LENGTH - 1),
        (heads, attack, at, to) => {
          const entries = attacks[attack]?.(withHeads(new Set(heads)), at, to) ?? [];
          const vouchers = vouchersOf(entries, { holds, isWhole });
          for (const [index, entry] of entries.entries())
            if (vouchers[index] && isWhole(entry)) expect(honest).toContain(entry.hash);
        },
      ),
      { numRuns: 2_000 },
    );
  });

  it('leaves out no entry of an honest chain up to its last head', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: LENGTH }), { minLength: 1 }), (heads) => {
        const last = Math.max(...heads);
        const found = seqs(withHeads(new Set(heads)));
        expect(found.slice(0, last)).not.toContain(null);
        expect(found.slice(last).every((seq) => seq === null)).toBe(true);
      }),
    );
  });
});

describe('`goesOn()`', () => {
  it('wants the hash, the next number and the same life of the same tablet', () => {
    const [one, two] = chain as [Entry, Entry];
    expect(goesOn(one, two)).toBe(true);
    for (const change of [{ seq: 3 }, { prev: one.prev }, { tablet: 't2' }, { epoch: 'e2' }])
      expect(goesOn(one, { ...two, ...change }), JSON.stringify(change)).toBe(false);
  });
});
