// What a row leaves out of an entry's text comes back to the last character: of texts as the server itself writes them, and of odd ones.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../shared/log/entry.ts';
import { canonicalText, sealEntry } from '../../../shared/log/seal.ts';
import { readEntry } from '../../../src/server/checked.ts';
import { packedBody, wholeBody } from '../../../src/server/stores/packed.ts';
import type { Checked } from '../../../src/server/stores/store.ts';
import { makeChain, toChecked } from '../../contract/entries.ts';

const back = (entry: Checked, body = packedBody(entry)): string => {
  const { tablet, epoch, seq, kind, hlc, atMs } = entry;
  return wholeBody({ tablet, epoch, seq, kind, hlc_ms: hlc.ms, hlc_n: hlc.n, at_ms: atMs, body });
};
const [first, second] = makeChain({ tablet: 'link-0123456789ab', epoch: 'e0123456789abcde', count: 2 });
const checked = (change: object): Checked => {
  const { hash: _, sig: __, ...draft } = { ...second, ...change } as NonNullable<typeof second>;
  return toChecked({ ...draft, hash: '', sig: null }, { body: canonicalText({ ...draft }) });
};

describe('a kept text', () => {
  test('is less than half as long as the whole, and comes back', () => {
    for (const entry of [first, second]) {
      if (!entry) throw new Error('made above');
      const one = toChecked(entry);
      expect(packedBody(one).length).toBeLessThan(one.body.length / 2);
      expect(packedBody(one)).not.toContain(entry.prev);
      expect(back(one)).toBe(one.body);
    }
  });

  test('comes back whatever its fields say', () => {
    const text = fc.oneof(
      fc.string(),
      fc.string({ unit: 'binary' }),
      fc.constantFrom('","seq":', ',"who":', '\n', '{'),
    );
    fc.assert(
      fc.property(
        fc.record({
          tablet: text,
          epoch: text,
          kind: text,
          who: fc.oneof(fc.constant(null), text),
          seq: fc.nat(),
          hlc: fc.record({ ms: fc.nat(), n: fc.nat() }),
          at: fc.oneof(
            fc.date({ noInvalidDate: true }).map((date) => date.toISOString()),
            fc.constantFrom(
              '',
              '{',
              '2026-03-02T07:00:00+01:00',
              '2026-03-02T06:00:00Z',
              '2026-03-02T06:00:00.5Z',
            ),
          ),
          prev: fc.oneof(fc.constant('0'.repeat(64)), fc.constant('aB'.repeat(32)), text),
          v: fc.constantFrom(1, 2),
          payload: fc.record({ a: text, b: fc.jsonValue() }),
        }),
        (change) => {
          const entry = checked(change);
          expect(back(entry)).toBe(entry.body);
        },
      ),
    );
  });

  test('of an entry that was read is the same as of its whole text', () => {
    const text = fc.oneof(fc.string({ minLength: 1 }), fc.string({ unit: 'grapheme', minLength: 1 }));
    fc.assert(
      fc.property(
        fc.record({
          tablet: fc.constantFrom('t1', 'a"b', 'a\\b', '","seq":'),
          epoch: fc.constantFrom('e1', '"', '{'),
          kind: fc.constantFrom('test.noted', '","payload":'),
          who: fc.oneof(fc.constant(null), text),
          seq: fc.integer({ min: 1 }),
          hlc: fc.record({ ms: fc.nat(), n: fc.nat() }),
          at: fc.constantFrom(
            '2026-03-02T06:00:00.000Z',
            '2026-03-02T06:00:00.5Z',
            '2026-03-02T07:00:00.123+01:00',
          ),
          payload: fc.dictionary(text, fc.jsonValue()),
        }),
        (change) => {
          const { hash: _, sig: __, ...draft } = { ...second, ...change } as Entry;
          const entry = { ...sealEntry(draft), sig: null };
          const read = readEntry(JSON.parse(JSON.stringify(entry)) as Entry);
          const whole = toChecked(entry);
          expect(read.bodyHash).toBe(entry.hash);
          expect(read.body).toBe(whole.body);
          expect(packedBody(read)).toBe(packedBody(whole));
          expect(back(read)).toBe(whole.body);
        },
      ),
    );
  });

  test('comes back though somebody wrote another text for the same fields', () => {
    const [one] = [first].map((entry) => entry && toChecked(entry));
    if (!one) throw new Error('made above');
    const piece = fc.oneof(
      fc.string(),
      fc.constantFrom('\n', '}', '{', ',"prev":"', '","seq":1', 'x'.repeat(64)),
    );
    fc.assert(
      fc.property(fc.nat(one.body.length), fc.nat(80), piece, (at, cut, put) => {
        const body = one.body.slice(0, at) + put + one.body.slice(at + cut);
        const odd = { ...one, body };
        // The columns are the entry's; its text may say anything.
        if (body.startsWith('{')) expect(back(odd)).toBe(body);
      }),
      { numRuns: 2_000 },
    );
  });

  test('that is long stays as it is; a row of before is read as it was written', () => {
    const long = checked({ payload: { text: 'x'.repeat(3_000) } });
    expect(packedBody(long)).toBe(long.body);
    const [most] = makeChain({ tablet: 't1', count: 1, payload: () => ({ text: 'x'.repeat(3_000) }) });
    expect(packedBody(readEntry(most as Entry))).toBe(toChecked(most as Entry).body);
    const short = checked({ payload: { text: 'x' } });
    expect(back(short, short.body)).toBe(short.body);
  });

  test('that somebody changed in the database is not what was sealed', () => {
    const entry = checked({ payload: { total: 41 } });
    expect(back(entry, packedBody(entry).replace('41', '42'))).not.toBe(entry.body);
    expect(back({ ...entry, seq: 9 }, packedBody(entry))).not.toBe(entry.body);
    expect(back(entry, 'nothing of the kind')).not.toBe(entry.body);
  });
});
