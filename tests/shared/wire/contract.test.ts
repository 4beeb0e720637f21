// What tablets and servers of other versions count on: statuses by their meaning, limits, the start of a reader, versions still answered.
// A server that took less than an older tablet sends would make its log stand still.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type WireCode, wireCodes, wireStatuses } from '../../../shared/wire/codes.ts';
import { formatCursor, parseCursor, startCursor } from '../../../shared/wire/cursor.ts';
import * as limits from '../../../shared/wire/limits.ts';
import { takePage } from '../../../shared/wire/pages.ts';
import { judgeWire, wireFloor, wireVersion } from '../../../shared/wire/version.ts';
import { makeChain } from '../../contract/entries.ts';

/** Statuses by their names in RFC 9110, 6585 (429), 4918 (423, 507) and 7231. */
const named: Readonly<Record<number, readonly WireCode[]>> = {
  400: ['bad-body', 'bad-query', 'bad-entry', 'wire-unreadable'], // Bad Request
  401: [
    'signature-missing',
    'signature-wrong',
    'signature-replayed',
    'time-off',
    'tablet-unknown',
    'person-unproven',
    'pin-wrong',
  ], // Unauthorized
  403: ['tablet-revoked', 'role-lacking', 'code-wrong'], // Forbidden
  404: ['not-found', 'no-snapshot'], // Not Found
  408: ['timed-out'], // Request Timeout
  409: ['tablet-active', 'epoch-changed'], // Conflict
  413: ['body-too-large'], // Content Too Large
  415: ['media-type'], // Unsupported Media Type
  423: ['person-locked'], // Locked
  426: ['wire-too-old', 'wire-too-new'], // Upgrade Required
  429: ['too-often'], // Too Many Requests
  500: ['server-fault'], // Internal Server Error
  503: ['store-away', 'store-read-only', 'stopping'], // Service Unavailable
  507: ['store-full'], // Insufficient Storage
};

test('every code has the status that its meaning has, and none is left out', () => {
  for (const [status, codes] of Object.entries(named))
    for (const code of codes) expect(wireStatuses[code], code).toBe(Number(status));
  expect(Object.values(named).flat().sort()).toEqual([...wireCodes].sort());
});

test('limits are what older tablets send and older servers take', () => {
  const [kib, mib, minute] = [2 ** 10, 2 ** 20, 60_000];
  expect({ ...limits }).toEqual({
    pageEntries: 500,
    pageBytes: 512 * kib,
    entryBytes: 384 * kib,
    bodyBytes: mib,
    unpackedBytes: 4 * mib,
    snapshotBytes: 16 * mib,
    snapshotUnpackedBytes: 192 * mib,
    signatureWindowMs: minute,
    codeLifeMs: 10 * minute,
    pinTries: 5,
    pinRounds: 600_000,
    pinLockMs: 15 * minute,
    snapshotEvery: 5000,
    pictureBytes: 25_000,
    pictureDays: 3650,
  });
});

test('a reader starts before the first entry', () => {
  expect(startCursor.pos).toBe(0);
  expect(parseCursor(formatCursor(startCursor))).toEqual(startCursor);
});

test('every version from the oldest still answered to this one is spoken', () => {
  const verdicts = Array.from({ length: wireVersion - wireFloor + 1 }, (_, at) =>
    judgeWire(String(wireFloor + at)),
  );
  expect(new Set(verdicts)).toEqual(new Set(['spoken']));
  expect(judgeWire(String(wireVersion + 1))).toBe('too-new');
});

describe('a page', () => {
  const chain = makeChain({
    tablet: 't1',
    count: 60,
    payload: (seq) => ({ text: 'x'.repeat((seq * 37) % 90) }),
  });

  test('is as long as its bounds let it be, to the letter, and no longer', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 70 }),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: -2, max: 2 }),
        (most, count, off) => {
          // Around the very length of so many entries.
          const bytes = JSON.stringify(chain.slice(0, count)).length + off;
          const { entries, texts } = takePage(chain, { entries: most, bytes });
          expect(JSON.parse(texts.join(''))).toEqual(entries);
          if (entries.length > 1) expect(texts.join('').length).toBeLessThanOrEqual(bytes);
          expect(entries.length).toBeLessThanOrEqual(most);
          const next = chain.slice(0, entries.length + 1);
          const isFull = entries.length === Math.min(most, chain.length);
          expect(isFull || JSON.stringify(next).length > bytes).toBe(true);
        },
      ),
    );
  });
});
