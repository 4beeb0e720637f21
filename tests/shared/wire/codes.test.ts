// Why the server says no.

import { describe, expect, it } from 'vitest';
import {
  codesSince,
  entryFaults,
  olderCodes,
  type WireCode,
  wireCodes,
  wireStatuses,
} from '../../../shared/wire/codes.ts';
import { refusalSchema } from '../../../shared/wire/messages.ts';
import { wireHistory, wireVersion } from '../../../shared/wire/version.ts';

/** The codes that tablets of the wire's version 2 read, and no others. */
const codesOfVersion2: readonly WireCode[] = [
  'bad-body',
  'bad-query',
  'bad-entry',
  'wire-unreadable',
  'signature-missing',
  'signature-wrong',
  'signature-replayed',
  'time-off',
  'tablet-unknown',
  'person-unproven',
  'pin-wrong',
  'tablet-revoked',
  'role-lacking',
  'code-wrong',
  'not-found',
  'no-snapshot',
  'timed-out',
  'epoch-changed',
  'body-too-large',
  'media-type',
  'person-locked',
  'wire-too-old',
  'wire-too-new',
  'too-often',
  'server-fault',
  'store-away',
  'stopping',
];

describe('a code', () => {
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

  it('passes as a message, and nothing else does', () => {
    for (const code of wireCodes) {
      expect(refusalSchema.parse({ code, message: '' })).toEqual({ code, message: '' });
      expect(wireStatuses[code]).toBeLessThan(600);
    }
    for (const code of ['', 'no-such-code', 'toString', 1, null])
      expect(refusalSchema.safeParse({ code, message: '' }).success).toBe(false);
  });

  it('that a tablet of an older version cannot read is told as one that it can, of the same kind', () => {
    const older = Object.entries(olderCodes) as [WireCode, WireCode][];
    const newer = wireCodes.filter((code) => !codesOfVersion2.includes(code));
    expect(older.map(([code]) => code).sort()).toEqual([...newer].sort());
    for (const [code, told] of older) {
      expect(codesOfVersion2, `${code} -> ${told}`).toContain(told);
      // A fault of the server is tried again later, what the tablet did wrong is not.
      expect(wireStatuses[told] >= 500, `${code} -> ${told}`).toBe(wireStatuses[code] >= 500);
    }
  });

  it('was last added in a version that there is', () => {
    expect(codesSince).toBeLessThanOrEqual(wireVersion);
    expect(wireHistory.some((step) => step.version === codesSince)).toBe(true);
  });

  it('asks for a proof of the tablet again by the one status that says so', () => {
    const asked = wireCodes.filter((code) => wireStatuses[code] === 401);
    for (const code of ['signature-missing', 'signature-wrong', 'signature-replayed', 'time-off'] as const)
      expect(asked).toContain(code);
    expect(asked).not.toContain('tablet-revoked');
  });

  it('of an entry kept aside is told once', () => {
    expect(new Set(entryFaults).size).toBe(entryFaults.length);
  });
});
