// A moment as text: the same moment for everybody who reads it, with the offset of the place where it was written.

import { afterEach, describe, expect, test, vi } from 'vitest';
import { formatMoment } from '../../../shared/kit/moment.ts';

/** 2026-03-02T06:00:00.250Z. */
const ms = 1_772_431_200_250;

afterEach(() => {
  vi.restoreAllMocks();
});

describe('formatMoment()', () => {
  test.each([
    [0, '2026-03-02T06:00:00.250+00:00'],
    [60, '2026-03-02T07:00:00.250+01:00'],
    [345, '2026-03-02T11:45:00.250+05:45'],
    [-210, '2026-03-02T02:30:00.250-03:30'],
    [-600, '2026-03-01T20:00:00.250-10:00'],
    [840, '2026-03-02T20:00:00.250+14:00'],
  ])('writes a place %i minutes ahead of universal time as %s', (minutes, text) => {
    vi.spyOn(Date.prototype, 'getTimezoneOffset').mockReturnValue(-minutes);
    expect(formatMoment(ms)).toBe(text);
    expect(Date.parse(formatMoment(ms))).toBe(ms);
  });
});
