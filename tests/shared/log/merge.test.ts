// Merging is a union: the order of the parts, their overlap and their repetition change nothing.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { mergeLogs } from '../../../shared/log/merge.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { makeChain } from '../../contract/entries.ts';

const whole = [...makeChain({ tablet: 'a', count: 8 }), ...makeChain({ tablet: 'b', count: 8 })];
const part = fc.subarray(whole);
const hashes = (entries: readonly Entry[]) => entries.map((entry) => entry.hash);

describe('`mergeLogs()`', () => {
  it('gives the union in folding order', () => {
    fc.assert(
      fc.property(fc.array(part, { maxLength: 5 }), (parts) => {
        const merged = mergeLogs(...parts);
        const ids = new Set(parts.flat().map(entryId));
        expect(merged.entries.map(entryId)).toEqual(
          [...whole]
            .sort(compareEntries)
            .map(entryId)
            .filter((id) => ids.has(id)),
        );
        expect(merged.quarantined).toEqual([]);
      }),
    );
  });

  it('is commutative, associative and idempotent', () => {
    fc.assert(
      fc.property(part, part, part, (a, b, c) => {
        expect(mergeLogs(a, b)).toEqual(mergeLogs(b, a));
        expect(mergeLogs(mergeLogs(a, b).entries, c)).toEqual(mergeLogs(a, mergeLogs(b, c).entries));
        expect(mergeLogs(a, a)).toEqual(mergeLogs(a));
      }),
    );
  });

  it('of two entries with one name keeps the same one everywhere, and keeps the other apart', () => {
    const others = makeChain({ tablet: 'a', count: 8, payload: () => ({ text: 'another story' }) });
    fc.assert(
      fc.property(fc.subarray(others, { minLength: 1 }), (some) => {
        const one = mergeLogs(whole, some);
        const two = mergeLogs(some, whole);
        expect(hashes(one.entries)).toEqual(hashes(two.entries));
        expect(hashes(one.quarantined).sort()).toEqual(hashes(two.quarantined).sort());
        expect(one.quarantined).toHaveLength(some.length);
        expect([...one.entries, ...one.quarantined]).toHaveLength(whole.length + some.length);
      }),
    );
  });
});
