// A place in the server's commit order, as it travels.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatCursor, parseCursor, startCursor } from '../../../shared/wire/cursor.ts';
import { snapshotSchema } from '../../../shared/wire/messages.ts';

const hex = (length: number) =>
  fc.string({ unit: fc.constantFrom(...'0123456789abcdef'), minLength: length, maxLength: length });

describe('a cursor', () => {
  it('reads back as it was written', () => {
    fc.assert(
      fc.property(
        fc.maxSafeNat().filter((pos) => pos < 1e16),
        hex(16),
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

  it('carries the first digits of the whole running hash', () => {
    fc.assert(
      fc.property(fc.maxSafeNat(), hex(64), (pos, root) => {
        expect(parseCursor(formatCursor({ pos, root }))).toEqual({ pos, root: root.slice(0, 16) });
      }),
    );
  });

  it('has one way to be written: what reads as one is what is written', () => {
    const near = fc
      .tuple(fc.string({ unit: fc.constantFrom(...'0123456789-+ .e'), maxLength: 17 }), hex(16))
      .map(([pos, root]) => `${pos}.${root}`);
    fc.assert(
      fc.property(fc.oneof(near, fc.string()), (text) => {
        const cursor = parseCursor(text);
        if (cursor) expect(formatCursor(cursor)).toBe(text);
      }),
      { numRuns: 1_000 },
    );
  });

  it('names no place that a number cannot hold exactly', () => {
    const root = 'a'.repeat(16);
    const most = Number.MAX_SAFE_INTEGER;
    expect(parseCursor(`${most}.${root}`)).toEqual({ pos: most, root });
    expect(parseCursor(`${BigInt(most) + 1n}.${root}`)).toBeNull();
  });

  it('stands in messages as it is written', () => {
    fc.assert(
      fc.property(fc.maxSafeNat(), hex(64), (pos, root) => {
        const said = { fold: 'f1', cursor: formatCursor({ pos, root }) };
        expect(snapshotSchema.parse(said)).toEqual(said);
      }),
    );
    expect(snapshotSchema.safeParse({ fold: 'f1', cursor: '1' }).success).toBe(false);
  });
});
