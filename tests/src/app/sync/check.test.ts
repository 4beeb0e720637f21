// What a tablet does with what it pulls and cannot be an entry: it is set aside in a form that can be kept, and the rest goes on.

import { createPublicKey } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Entry, JsonObject } from '../../../../shared/log/entry.ts';
import { draftOf, sealEntry } from '../../../../shared/log/seal.ts';
import { checkPulled } from '../../../../src/app/sync/check.ts';
import { makeChain, newKey, placed, signedBy, startMs } from '../../../contract/entries.ts';

const nested = (levels: number): unknown => JSON.parse('['.repeat(levels) + ']'.repeat(levels));

test('entries nested deeper than any stack are set aside, flat, and the others are taken', async () => {
  const [one, two] = makeChain({ tablet: 't1', count: 2 });
  const deep = nested(50_000);
  const values = [one, { ...one, payload: { deep } }, deep, { ...two, at: 'never', payload: { deep } }, two];
  const { entries, quarantined } = await checkPulled(values, { log: {}, serverMs: startMs + 60_000 });
  expect(entries).toEqual([one, two]);
  expect(quarantined.map(({ fault }) => fault)).toEqual(['unreadable', 'unreadable', 'unreadable']);
  // As the store names and keeps it.
  for (const { value } of quarantined)
    expect(structuredClone(value)).toEqual(JSON.parse(JSON.stringify(value)));
  expect(quarantined[0]?.value).toMatchObject({ tablet: 't1', seq: 1, payload: '(nested too deep)' });
});

test('what is no entry and is not deep is kept as it came', async () => {
  const values = [null, 5, 'x', { payload: [[[]]] }];
  const { quarantined } = await checkPulled(values, { log: {}, serverMs: startMs });
  expect(quarantined.map(({ value }) => value)).toEqual(values);
});

describe('what a chain that names a key brings', () => {
  const key = newKey();
  const { kty, crv, x, y } = createPublicKey(key.private).export({ format: 'jwk' });
  const opening = { name: 'x', app: '1', key: { kty, crv, x, y } as JsonObject, previous: null };
  const [first] = makeChain({ tablet: 't1', count: 1, kind: 'tablet.opened', payload: () => opening });
  const bare = [first as Entry, ...makeChain({ tablet: 't1', count: 5, after: first as Entry })];
  const headed = (...heads: readonly number[]) =>
    bare.map((entry) => (heads.includes(entry.seq) ? signedBy(key, entry) : entry));
  const take = async (values: readonly Entry[], serverMs = startMs + 60_000) => {
    const log = { firstOf: async () => first as Entry };
    const { entries, quarantined } = await checkPulled(values, { log, serverMs });
    return {
      taken: entries.map(({ seq }) => seq),
      hashes: entries.map(({ hash }) => hash),
      faults: quarantined.map(({ value, fault }) => [(value as Entry).seq, fault]),
    };
  };

  test('is taken up to its last head', async () => {
    expect(await take(headed(6))).toMatchObject({ taken: [1, 2, 3, 4, 5, 6], faults: [] });
    const cut = await take(headed(2, 4));
    expect(cut.taken).toEqual([1, 2, 3, 4]);
    expect(cut.faults).toEqual([
      [6, 'signature-missing'],
      [5, 'signature-missing'],
    ]);
    const forged = headed(3, 6).map((one) => (one.seq === 6 ? signedBy(newKey(), one) : one));
    expect(await take(forged)).toMatchObject({ taken: [1, 2, 3] });
  });

  test('is taken in where one of it is dated too far ahead, but for that one', async () => {
    const far = sealEntry({ ...draftOf(bare[3] as Entry), hlc: { ms: startMs + 10 * 3_600_000, n: 0 } });
    const rest = makeChain({ tablet: 't1', count: 1, after: far });
    const page = [...bare.slice(0, 3), far, ...rest.map((one) => signedBy(key, one))];
    expect(await take(page)).toMatchObject({ taken: [1, 2, 3, 5], faults: [[4, 'clock-ahead']] });
  });

  test('brings nothing that was cut, moved, replaced, added or taken from another, whatever the server sends', async () => {
    const honest = new Set(bare.map(({ hash }) => hash));
    const at = fc.nat(5);
    await fc.assert(
      fc.asyncProperty(fc.uniqueArray(at), fc.nat(5), at, at, async (heads, attack, from, to) => {
        const page = headed(6, ...heads);
        const entry = page[from] as Entry;
        const resealed = sealEntry({ ...draftOf(entry), payload: { text: 'forged' } });
        const tail = makeChain({ tablet: 't1', count: 2, after: bare[5] as Entry });
        const bent: readonly (readonly Entry[])[] = [
          page.filter((one) => one !== entry),
          placed(placed(page, from, page[to] as Entry), to, entry),
          placed(page, from, resealed),
          placed(page, from, { ...resealed, sig: entry.sig }),
          [...page, ...tail],
          [...page, ...tail.map((one) => signedBy(newKey(), one))],
        ];
        for (const hash of (await take(bent[attack] ?? [])).hashes) expect(honest).toContain(hash);
      }),
      { numRuns: 200 },
    );
  });
});
