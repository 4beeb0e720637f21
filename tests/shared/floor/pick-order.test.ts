// Which reel off the line is taken first, pair by pair; and which day it is in the plant.

import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import { placeOf } from '../../../shared/floor/fold-places.ts';
import { isOpened, pickOrderOf } from '../../../shared/floor/pick-order.ts';
import { comparePlaces } from '../../../shared/floor/place-order.ts';
import { plantDay } from '../../../shared/floor/plant-day.ts';
import type { FloorState, Reel } from '../../../shared/floor/state.ts';
import { beginStory, startMs, tellPlant } from './story.ts';

const reel = (name: string, more: Partial<Reel> = {}): Reel => ({
  reel: name,
  part: 'R-100',
  supplierPart: null,
  lot: null,
  dateCode: null,
  count: 1000,
  sd: 0,
  basis: 'label',
  at: null,
  ...more,
});
const floorOf = (pickOrder?: 'fullest-first' | 'oldest-first'): FloorState => {
  const story = beginStory();
  tellPlant(story, pickOrder === undefined ? {} : { rules: { pickOrder } });
  return story.floor();
};
const order = (floor: FloorState, reels: readonly Reel[]) =>
  [...reels].sort(pickOrderOf(floor, 'L1')).map((each) => each.reel);

describe('pickOrderOf()', () => {
  const floor = floorOf();

  test('takes the older week first, across the turn of a year, and those that say none after', () => {
    const reels = [
      reel('undated'),
      reel('unclear', { dateCode: 'lot 7' }),
      reel('new', { dateCode: '2601' }),
      reel('old', { dateCode: '2552' }),
    ];
    expect(order(floor, reels)).toEqual(['old', 'new', 'unclear', 'undated']);
  });

  test('takes opened reels before closed ones, then the smaller, then by name', () => {
    const reels = [
      reel('closed', { count: 10 }),
      reel('b', { count: 500, basis: 'counted-down' }),
      reel('a', { count: 500, basis: 'counted-down' }),
      reel('begun', { count: 90, basis: 'counted-down' }),
    ];
    expect(order(floor, reels)).toEqual(['begun', 'a', 'b', 'closed']);
    expect(isOpened(reel('x', { basis: 'counted-down' }))).toBe(true);
    expect(isOpened(reel('x'))).toBe(false);
  });

  test('takes what nobody counted last, in both orders; an empty reel is counted', () => {
    const reels = [
      reel('uncounted', { count: null, dateCode: '2001' }),
      reel('full', { count: 5000 }),
      reel('empty', { count: 0 }),
    ];
    expect(order(floor, reels)).toEqual(['empty', 'full', 'uncounted']);
    expect(order(floorOf('fullest-first'), reels)).toEqual(['full', 'empty', 'uncounted']);
  });

  test('takes the fullest first only where the line’s rules say so, and asks for no age then', () => {
    const reels = [
      reel('old', { dateCode: '2501', count: 10 }),
      reel('full', { dateCode: '2601', count: 900 }),
    ];
    expect(order(floorOf('fullest-first'), reels)).toEqual(['full', 'old']);
    expect(order(floorOf('oldest-first'), reels)).toEqual(['old', 'full']);
    expect([...reels].sort(pickOrderOf(floor, 'a line without rules')).map((each) => each.reel)).toEqual([
      'old',
      'full',
    ]);
  });
});

describe('places', () => {
  test('are those of reels off the line that have one', () => {
    expect(placeOf({ at: null, place: 'A1' })).toBe('A1');
    expect(placeOf({ at: null })).toBeNull();
    expect(placeOf({ at: { line: 'L1', slot: 'M1-F-001' }, place: 'A1' })).toBeNull();
  });

  test('go by number within a name, those without a place last', () => {
    expect(['R10', '', 'R2', 'A1'].sort(comparePlaces)).toEqual(['A1', 'R2', 'R10', '']);
  });
});

describe('plantDay()', () => {
  const dayIn = (zone: string, ms: number) => {
    const story = beginStory();
    story.tell('line.defined', { line: 'L1', name: 'one', zone, machines: [] });
    return plantDay(story.floor(), 'L1', ms);
  };

  test.each(['Europe/London', 'America/St_Johns', 'Pacific/Kiritimati', 'Asia/Kolkata'])(
    'is luxon’s day in %s, before and after midnight, asked once and again',
    (zone) => {
      for (const hours of [0, 5, 11, 17, 18, 23, 0])
        expect(dayIn(zone, startMs + hours * 3_600_000)).toBe(
          DateTime.fromMillis(startMs + hours * 3_600_000, { zone }).toISODate(),
        );
    },
  );

  test('is that of universal time where line or zone is not known', () => {
    const late = Date.UTC(2026, 2, 2, 23, 59);
    expect(plantDay(beginStory().floor(), 'L1', late)).toBe('2026-03-02');
    const floor = floorOf();
    const line = { ...floor.lines.get('L1')!, zone: 'Nowhere/At_All' };
    expect(plantDay({ ...floor, lines: new Map([['L1', line]]) }, 'L1', late)).toBe('2026-03-02');
  });
});
