// How old is a reel by its date code, and which should go first? Weeks and months against luxon, which has calendars of its own.

import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import { ageLimitOf, dateCodeReasons, lastDayOfAge, olderInStore } from '../../../shared/floor/age-limit.ts';
import { beginStory, type Story, tellPlant, unloaded, verified } from './story.ts';

const stored = (
  story: Story,
  reel: string,
  more: { dateCode?: string; quantity?: number; part?: string } = {},
) => {
  const { dateCode = null, quantity = 100, part = 'R-100' } = more;
  story.tell('reel.put', {
    reel,
    part,
    supplierPart: null,
    quantity,
    lot: null,
    dateCode,
    place: `A-${reel}`,
    via: 'wedge',
  });
};

describe('age by the date code', () => {
  test('the last day is the Monday of the week plus the months, as luxon counts them', () => {
    const weeks = fc.record({
      year: fc.integer({ min: 2000, max: 2060 }),
      week: fc.integer({ min: 1, max: 52 }),
    });
    fc.assert(
      fc.property(weeks, fc.integer({ min: 1, max: 600 }), (made, months) => {
        const monday = DateTime.fromObject(
          { weekYear: made.year, weekNumber: made.week, weekday: 1 },
          { zone: 'utc' },
        );
        expect(lastDayOfAge(made, months)).toBe(monday.plus({ months }).toISODate());
      }),
    );
  });

  test('the longest beginning that fits decides; without a rule no age counts', () => {
    const story = beginStory();
    tellPlant(story);
    expect(ageLimitOf(story.floor(), 'L1', 'U-300')).toBeNull();
    story.tell('line.age-ruled', {
      line: 'L1',
      limits: [
        { begins: 'U', months: 24 },
        { begins: 'u-3', months: 12 },
        { begins: 'R-', months: 60 },
      ],
    });
    const floor = story.floor();
    const of = (part: string) => ageLimitOf(floor, 'L1', part);
    expect([of('U-300'), of('U-400'), of('R-100'), of('C-200')]).toEqual([12, 24, 60, null]);
    expect(ageLimitOf(floor, 'L2', 'U-300')).toBeNull();
    story.tell('line.age-ruled', { line: 'L1', limits: [] });
    expect(ageLimitOf(story.floor(), 'L1', 'U-300')).toBeNull();
  });

  test('is good on its last day, held on the next, and not asked again of what stood there before', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('line.age-ruled', { line: 'L1', limits: [{ begins: '', months: 24 }] });
    const floor = story.floor();
    const codes = (dateCode: string | null, today: string, more = {}) =>
      dateCodeReasons(floor, { line: 'L1', part: 'R-100' }, { dateCode }, { today, ...more }).map(
        ({ code }) => code,
      );
    // 2024-W09 began on 2024-02-26.
    expect(codes('2409', '2026-02-26')).toEqual([]);
    expect(codes('2409', '2026-02-27')).toEqual(['date-code-old']);
    expect(codes('24091', '2026-02-26')).toEqual(['date-code-unknown']);
    expect(codes(null, '2026-02-26')).toEqual(['date-code-unknown']);
    expect(codes('2409', '2026-03-02', { standsSince: '2026-02-20' })).toEqual(['date-code-old']);
    expect(codes('2409', '2026-03-02', { standsSince: '2026-02-26' })).toEqual(['date-code-old']);
    expect(codes('2409', '2026-03-02', { standsSince: '2026-02-27' })).toEqual([]);
    expect(codes('2409', '2026-03-02', { standsSince: null })).toEqual(['date-code-old']);
    expect(codes(null, '2026-03-02', { standsSince: null })).toEqual([]);
  });
});

describe('what should go first', () => {
  test('is the earliest to expire, then the oldest week; never a blocked, an empty, or a reel of another part', () => {
    const story = beginStory();
    tellPlant(story);
    stored(story, 'K-week', { dateCode: '2301' });
    stored(story, 'K-empty', { dateCode: '2201', quantity: 0 });
    stored(story, 'K-other', { dateCode: '2201', part: 'C-200' });
    stored(story, 'K-bad', { dateCode: '2202' });
    const ask = (more: { dateCode?: string | null; expires?: string | null }) =>
      olderInStore(story.floor(), 'R-100', {
        reel: 'K-new',
        isBlocked: ({ reel }) => reel === 'K-bad',
        ...more,
      });
    expect(ask({ dateCode: '2401' })).toMatchObject({ reel: { reel: 'K-week' }, why: 'made' });
    expect(ask({ dateCode: '2301' })).toBeNull();
    expect(ask({ dateCode: null })).toBeNull();
    stored(story, 'K-soon');
    story.tell('reel.dated', { reel: 'K-soon', expires: '2026-04-01' });
    expect(ask({ dateCode: '2401', expires: '2026-05-01' })).toMatchObject({
      reel: { reel: 'K-soon' },
      why: 'expires',
    });
    expect(ask({ expires: '2026-04-01' })).toBeNull();
    // One that lasts longer waits, however old its week.
    story.tell('reel.dated', { reel: 'K-week', expires: '2027-01-01' });
    expect(ask({ dateCode: '2401', expires: '2026-03-20' })).toBeNull();
  });

  test('is the soonest of those that expire and the oldest of those that have a week only; a name decides between equals', () => {
    const story = beginStory();
    tellPlant(story);
    for (const [reel, dateCode] of [
      ['K-b', '2310'],
      ['K-a', '2310'],
      ['K-young', '2315'],
    ] as const)
      stored(story, reel, { dateCode });
    const first = (more: { dateCode?: string; expires?: string; reel?: string }) =>
      olderInStore(story.floor(), 'R-100', { reel: 'K-new', isBlocked: () => false, ...more })?.reel.reel ??
      null;
    expect(first({ dateCode: '2401' })).toBe('K-a');
    expect(first({ dateCode: '2401', reel: 'K-a' })).toBe('K-b'); // a reel is never older than itself
    expect(first({ dateCode: '2312' })).toBe('K-a');
    stored(story, 'K-late', { dateCode: '2201' });
    story.tell('reel.dated', { reel: 'K-late', expires: '2026-09-01' });
    stored(story, 'K-soon', { dateCode: '2401' });
    story.tell('reel.dated', { reel: 'K-soon', expires: '2026-08-01' });
    // A date of expiry says more than a week of making.
    expect(first({ dateCode: '2401', expires: '2026-12-01' })).toBe('K-soon');
    // It tells nothing where the reel asked about has none: then the weeks do.
    expect(first({ dateCode: '2401' })).toBe('K-late');
  });

  test('is the older week where the dates of expiry are the same', () => {
    const story = beginStory();
    tellPlant(story);
    const own = { reel: 'K-new', dateCode: '2401', expires: '2026-09-01', isBlocked: () => false };
    const first = () => olderInStore(story.floor(), 'R-100', own);
    stored(story, 'K-same', { dateCode: '2310' });
    story.tell('reel.dated', { reel: 'K-same', expires: '2026-09-01' });
    expect(first()).toMatchObject({ reel: { reel: 'K-same' }, why: 'made' });
    stored(story, 'K-older', { dateCode: '2210' });
    expect(first()?.reel.reel).toBe('K-older');
  });

  test('is in the store, at a place that somebody named: not on a slot, and not anywhere', () => {
    const story = beginStory();
    tellPlant(story);
    const ask = () =>
      olderInStore(story.floor(), 'R-100', { reel: 'K-new', dateCode: '2401', isBlocked: () => false });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', dateCode: '2301' }));
    expect(ask()).toBeNull();
    story.tell('reel.unloaded', unloaded('M1-F-001', { reel: 'K1', part: 'R-100', quantity: 500 }));
    expect(ask()).toBeNull();
    stored(story, 'K1', { dateCode: '2301' });
    expect(ask()?.reel.reel).toBe('K1');
  });
});
