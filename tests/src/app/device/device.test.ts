// The tablet itself: its clock as a person reads it, its names, its PINs.

import { pbkdf2Sync } from 'node:crypto';
import { afterEach, describe, expect, test } from 'vitest';
import { formatMoment } from '../../../../shared/kit/moment.ts';
import { isoMoment } from '../../../../shared/log/entry-schema.ts';
import { newId } from '../../../../src/app/device/ids.ts';
import { makePin } from '../../../../src/app/device/pin.ts';
import { pinFits } from '../../../../src/server/people/pin.ts';

const zone = process.env['TZ'];

afterEach(() => {
  if (zone === undefined) delete process.env['TZ'];
  else process.env['TZ'] = zone;
});

describe('formatMoment()', () => {
  test('writes the wall clock with its own offset, which names the same moment', () => {
    const rows: readonly (readonly [zone: string, utc: string, text: string, why: string])[] = [
      ['UTC', '2026-03-02T05:00:00.000Z', '2026-03-02T05:00:00.000+00:00', 'none'],
      ['Europe/Berlin', '2026-03-02T05:00:00.007Z', '2026-03-02T06:00:00.007+01:00', 'winter'],
      ['Europe/Berlin', '2026-07-02T05:00:00.000Z', '2026-07-02T07:00:00.000+02:00', 'summer'],
      ['Asia/Kolkata', '2026-03-02T20:00:00.000Z', '2026-03-03T01:30:00.000+05:30', 'half an hour'],
      [
        'America/St_Johns',
        '2026-03-02T02:00:00.000Z',
        '2026-03-01T22:30:00.000-03:30',
        'half an hour behind',
      ],
      ['Pacific/Marquesas', '2026-03-02T05:00:00.000Z', '2026-03-01T19:30:00.000-09:30', 'far behind'],
    ];
    for (const [place, utc, text, why] of rows) {
      process.env['TZ'] = place;
      const ms = Date.parse(utc);
      expect(formatMoment(ms), why).toBe(text);
      expect(Date.parse(formatMoment(ms)), why).toBe(ms);
      expect(isoMoment.safeParse(text).success).toBe(true);
    }
  });
});

test('`newId()` gives 20 letters and digits without look-alikes, never the same twice', () => {
  const ids = Array.from({ length: 2000 }, newId);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) expect(id).toMatch(/^[0-9abcdefghjkmnpqrstvwxyz]{20}$/);
});

describe('makePin()', () => {
  test('makes a verifier that the server knows again, and no other: PBKDF2-HMAC-SHA-256 of RFC 8018', async () => {
    const verifier = await makePin('4711');
    expect(await pinFits('4711', verifier)).toBe(true);
    expect(await pinFits('4712', verifier)).toBe(false);
    const { salt, rounds, hash } = verifier;
    expect(rounds).toBeGreaterThanOrEqual(600_000);
    expect(pbkdf2Sync('4711', salt, rounds, 32, 'sha256').toString('hex')).toBe(hash);
    expect((await makePin('4711')).hash).not.toBe(hash);
  });
});
