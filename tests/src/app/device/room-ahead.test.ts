import { describe, expect, test } from 'vitest';
import { DAYS_TOLD, daysLeft, type RoomSeen, withSeen } from '../../../../src/app/device/room-ahead.ts';

const day = 24 * 3_600_000;
const health = (usedBytes: number | null, quotaBytes: number | null = 1_000) => ({
  kept: true,
  usedBytes,
  quotaBytes,
});

/** A look a minute over some days, at a growth of bytes a day. */
function lookAt(days: number, growth: number, fromBytes = 0): readonly RoomSeen[] {
  let seen: readonly RoomSeen[] = [];
  for (let atMs = 0; atMs <= days * day; atMs += 60_000)
    seen = withSeen(seen, { atMs, usedBytes: fromBytes + Math.round((atMs / day) * growth) });
  return seen;
}

describe('the room for the log', () => {
  test('is looked at once a day, for two weeks', () => {
    expect(lookAt(3, 10).map(({ atMs }) => atMs / day)).toEqual([0, 1, 2, 3]);
    expect(lookAt(30, 10)).toHaveLength(14);
    expect(lookAt(30, 10).at(-1)?.atMs).toBe(30 * day);
  });

  test('is foreseen to be full a week ahead, by the days that it still lasts', () => {
    const seen = lookAt(10, 20);
    expect(daysLeft(seen, health(200), 10 * day)).toBeCloseTo(40);
    const later = lookAt(43, 20);
    expect(daysLeft(later, health(860), 43 * day)).toBeCloseTo(DAYS_TOLD);
    expect(daysLeft(later, health(1_000), 43 * day)).toBe(0);
    // More than the browser grants already.
    expect(daysLeft(later, health(1_100), 43 * day)).toBe(0);
  });

  test('says nothing where too little is known, or nothing grows', () => {
    expect(daysLeft([], health(900), 0)).toBeNull();
    expect(daysLeft(lookAt(2, 400), health(800), 2 * day)).toBeNull();
    expect(daysLeft(lookAt(5, -1, 500), health(495), 5 * day)).toBeNull();
    expect(daysLeft(lookAt(5, 100), health(null), 5 * day)).toBeNull();
    expect(daysLeft(lookAt(5, 100), health(500, null), 5 * day)).toBeNull();
  });

  test('does not take a log that a new tablet fetches for growth', () => {
    const fetched = lookAt(6, 10).map(({ atMs, usedBytes }) => ({
      atMs,
      usedBytes: usedBytes + (atMs < day ? 0 : 300),
    }));
    expect(daysLeft(fetched, health(360), 6 * day)).toBeCloseTo(64);
  });

  test('is looked at anew where the clock was set back', () => {
    const seen = withSeen(lookAt(9, 50), { atMs: day, usedBytes: 450 });
    expect(seen).toEqual([{ atMs: day, usedBytes: 450 }]);
  });
});
