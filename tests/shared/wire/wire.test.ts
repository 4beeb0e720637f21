// The small parts of the wire: cursors, proofs, pages, codes, messages.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wireCodes, wireStatuses } from '../../../shared/wire/codes.ts';
import { formatCursor, parseCursor, startCursor } from '../../../shared/wire/cursor.ts';
import { bodyBytes, entryBytes, pageBytes, pageEntries, unpackedBytes } from '../../../shared/wire/limits.ts';
import { infoSchema, pulledSchema, pushSchema } from '../../../shared/wire/messages.ts';
import { takePage } from '../../../shared/wire/pages.ts';
import {
  checkpointText,
  entryText,
  formatProof,
  parseProof,
  requestText,
} from '../../../shared/wire/signing.ts';
import { makeChain } from '../../contract/entries.ts';

const hex16 = fc.string({ unit: fc.constantFrom(...'0123456789abcdef'), minLength: 16, maxLength: 16 });
const base64 = (length: number) =>
  fc.string({ unit: fc.constantFrom(...'ABCXYZabcxyz019_-'), minLength: length, maxLength: length });

describe('a cursor', () => {
  it('reads back as it was written', () => {
    fc.assert(
      fc.property(
        fc.maxSafeNat().filter((pos) => pos < 1e16),
        hex16,
        (pos, root) => {
          expect(parseCursor(formatCursor({ pos, root }))).toEqual({ pos, root });
        },
      ),
    );
    expect(parseCursor(formatCursor(startCursor))).toEqual(startCursor);
  });

  it.each([
    '',
    '1',
    '1.',
    `01.${'a'.repeat(16)}`,
    `-1.${'a'.repeat(16)}`,
    `1.${'A'.repeat(16)}`,
    `1.${'a'.repeat(15)}`,
    `9999999999999999.${'a'.repeat(16)}`,
  ])('%j is none', (text) => {
    expect(parseCursor(text)).toBeNull();
  });
});

describe('a proof', () => {
  const proof = fc.record({
    tablet: fc.string({ unit: fc.constantFrom(...'abc-=!~'), minLength: 1, maxLength: 64 }),
    timeMs: fc.nat(),
    nonce: base64(24),
    sig: base64(86),
  });

  it('reads back as it was written', () => {
    fc.assert(
      fc.property(proof, (one) => {
        expect(parseProof(formatProof(one))).toEqual(one);
      }),
    );
  });

  it('is never read from noise', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(parseProof(text)).toBeNull();
      }),
    );
  });

  it('covers each part of the request', () => {
    const request = { method: 'POST', path: '/api/push', bodyHash: 'a'.repeat(64), timeMs: 1, nonce: 'n' };
    const changes = [
      { method: 'PUT' },
      { path: '/api/pull' },
      { bodyHash: 'b'.repeat(64) },
      { timeMs: 2 },
      { nonce: 'm' },
    ];
    const texts = [request, ...changes.map((change) => ({ ...request, ...change }))].map(requestText);
    expect(new Set(texts).size).toBe(texts.length);
  });

  it('of one thing never passes for another', () => {
    const point = { serverEpoch: 'e', pos: 1, root: 'a'.repeat(64), atMs: 1, headsHash: 'b'.repeat(64) };
    const request = { method: 'POST', path: '/', bodyHash: 'c'.repeat(64), timeMs: 1, nonce: 'n' };
    const texts = [checkpointText(point), requestText(request)];
    for (const text of texts) expect(text).not.toMatch(/^[0-9a-f]{64}$/);
    expect(texts[0]?.split('\n')[0]).not.toBe(texts[1]?.split('\n')[0]);
    expect(entryText('d'.repeat(64))).toMatch(/^[0-9a-f]{64}$/);
  });
});

describe('`takePage()`', () => {
  const chain = makeChain({
    tablet: 't1',
    count: 130,
    payload: (seq) => ({ text: 'x'.repeat((seq * 37) % 200) }),
  });

  it('takes a run from the start, within both bounds, and at least one entry', () => {
    fc.assert(
      fc.property(
        fc.nat(130),
        fc.integer({ min: 1, max: 150 }),
        fc.integer({ min: 1, max: 80_000 }),
        (from, entries, bytes) => {
          const rest = chain.slice(from);
          const { entries: page, texts } = takePage(rest, { entries, bytes });
          expect(texts.join('')).toBe(JSON.stringify(page));
          expect(page).toEqual(rest.slice(0, page.length));
          expect(page.length).toBeLessThanOrEqual(entries);
          if (rest.length > 0) expect(page.length).toBeGreaterThan(0);
          const size = (count: number) =>
            rest.slice(0, count).reduce((sum, entry) => sum + JSON.stringify(entry).length + 1, 0);
          if (page.length > 1) expect(size(page.length)).toBeLessThanOrEqual(bytes);
          if (page.length < Math.min(entries, rest.length))
            expect(size(page.length + 1)).toBeGreaterThan(bytes);
        },
      ),
    );
  });

  it('never makes a page that the server must refuse', () => {
    expect(entryBytes).toBeLessThan(pageBytes);
    // Every sign may take three bytes in UTF-8, and the entry that tips a page over is not in it.
    expect(pageBytes * 3).toBeLessThan(unpackedBytes);
    expect(entryBytes).toBeLessThan(bodyBytes);
    expect(pageEntries).toBeGreaterThan(0);
  });
});

describe('messages', () => {
  it('drop fields that they do not know, but refuse them in an entry', () => {
    const [entry] = makeChain({ tablet: 't1', count: 1 });
    const push = { sentMs: 1, entries: [entry], more: true };
    expect(pushSchema.parse(push)).toEqual({ sentMs: 1, entries: [entry] });
    expect(pushSchema.safeParse({ sentMs: 1, entries: [{ ...entry, more: true }] }).success).toBe(false);
  });

  it('refuse a page over the limit', () => {
    const [entry] = makeChain({ tablet: 't1', count: 1 });
    const push = { sentMs: 1, entries: Array.from({ length: pageEntries + 1 }, () => entry) };
    expect(pushSchema.safeParse(push).success).toBe(false);
  });

  it('refuse what is not theirs', () => {
    for (const value of [null, [], 'x', 1, {}]) {
      expect(infoSchema.safeParse(value).success).toBe(false);
      expect(pulledSchema.safeParse(value).success).toBe(false);
    }
  });

  it('every code has a status that says whose fault it is', () => {
    for (const code of wireCodes) expect(wireStatuses[code]).toBeGreaterThanOrEqual(400);
    expect(wireCodes.filter((code) => wireStatuses[code] >= 500)).toEqual([
      'server-fault',
      'store-away',
      'store-full',
      'store-read-only',
      'stopping',
    ]);
  });
});
