// What a search through the store finds: every word, the first of them in order, and how many in all; what lies at which place.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { forgetReels, GONE_AFTER_MS } from '../../../../../shared/floor/gone-reels.ts';
import { comparePlaces } from '../../../../../shared/floor/place-order.ts';
import type { Reel } from '../../../../../shared/floor/state.ts';
import {
  findSteps,
  lifeEndOf,
  listSteps,
  placeSteps,
  type ReelFilter,
} from '../../../../../src/app/screens/stock/found-reels.ts';
import { beginStory, type Story, startMs, tellPlant } from '../../../../shared/floor/story.ts';
import { comeBack, useUp } from '../../../../shared/verdict/gone-story.ts';
import { toTheEnd } from '../../../../to-the-end.ts';

function put(story: Story, reel: string, part: string, place = 'A1'): void {
  const facts = {
    supplierPart: null,
    lot: `LT-${part}`,
    dateCode: null,
    quantity: 100,
    via: 'typed' as const,
  };
  story.tell('reel.put', { ...facts, reel, part, place });
}

test('of any reels the first by part and id are shown, and all are counted', () => {
  const names = fc.uniqueArray(fc.integer({ min: 0, max: 400 }), { maxLength: 120 });
  fc.assert(
    fc.property(names, fc.integer({ min: 1, max: 9 }), (numbers, most) => {
      const story = beginStory();
      for (const number of numbers) put(story, `K-${number}`, `P-${number % 7}`);
      const expected = numbers
        .map((number) => [`P-${number % 7}`, `K-${number}`] as const)
        .sort(([a, one], [b, other]) => (a === b ? (one < other ? -1 : 1) : a < b ? -1 : 1))
        .map(([, reel]) => reel);
      const found = toTheEnd(findSteps(story.floor(), { query: '', filter: 'all', most }));
      expect(found.shown.map(({ reel }) => reel)).toEqual(expected.slice(0, most));
      expect(found.count).toBe(numbers.length);
    }),
    { numRuns: 25 },
  );
});

test('every word of the search must be there, and a record that changed is read anew', () => {
  const story = beginStory();
  put(story, 'K-1', 'P-1', 'A1');
  put(story, 'K-2', 'P-1', 'B7');
  const find = (query: string, filter: ReelFilter = 'all') =>
    toTheEnd(findSteps(story.floor(), { query, filter, most: 10 })).shown.map(({ reel }) => reel);
  expect(find('p-1 b7')).toEqual(['K-2']);
  expect(find('P-1  lt-p')).toEqual(['K-1', 'K-2']);
  put(story, 'K-2', 'P-1', 'C3');
  expect(find('b7')).toEqual([]);
  expect(find('c3')).toEqual(['K-2']);
});

test('the list is narrowed to what is in the store, blocked or opened', () => {
  const story = beginStory();
  put(story, 'K-1', 'P-1');
  put(story, 'K-2', 'P-2');
  put(story, 'K-3', 'P-3');
  story.tell('material.blocked', { block: 'b', reel: null, lot: 'LT-P-2', part: null, reason: 'recall' });
  const counted = { line: null, slot: null, reel: 'K-3', part: 'P-3', lot: null, panels: 0 };
  story.tell('reel.counted', { ...counted, quantity: 0, sd: 0, basis: 'typed' });
  story.tell('reel.aired', {
    reel: 'K-1',
    part: 'P-1',
    supplierPart: null,
    quantity: null,
    lot: null,
    dateCode: null,
    air: 'floor',
    from: '2026-03-02T06:00:00.000Z',
    celsius: null,
    humidity: null,
    msl: '3',
    via: 'typed',
  });
  const find = (filter: ReelFilter) =>
    toTheEnd(findSteps(story.floor(), { query: '', filter, most: 10 })).shown.map(({ reel }) => reel);
  expect([find('all'), find('store'), find('line'), find('opened'), find('blocked')]).toEqual([
    ['K-1', 'K-2', 'K-3'],
    ['K-1', 'K-2'],
    [],
    ['K-1'],
    ['K-2'],
  ]);
});

test('places stand in walking order with what lies there; an empty package lies nowhere', () => {
  const story = beginStory();
  put(story, 'K-1', 'P-1', 'R10');
  put(story, 'K-2', 'P-2', 'R2');
  put(story, 'K-3', 'P-2', 'R2');
  put(story, 'K-4', 'P-9', 'R3');
  const counted = { line: null, slot: null, reel: 'K-4', part: 'P-9', lot: null, panels: 0 };
  story.tell('reel.counted', { ...counted, quantity: 0, sd: 0, basis: 'typed' });
  story.tell('place.described', { place: 'OVEN', air: 'bake', celsius: 125, humidity: null });
  expect(toTheEnd(placeSteps(story.floor())).map(({ place, reels, parts }) => [place, reels, parts])).toEqual(
    [
      ['OVEN', 0, 0],
      ['R2', 2, 1],
      ['R10', 1, 1],
    ],
  );
});

test('places stand in the same order as on every list that is walked along, long numbers too', () => {
  const story = beginStory();
  const places = ['R02', '1234567890123', 'R2', '999999999999', 'R10'];
  for (const [at, place] of places.entries()) put(story, `K-${at}`, 'P-1', place);
  expect(toTheEnd(placeSteps(story.floor())).map(({ place }) => place)).toEqual(
    [...places].sort(comparePlaces),
  );
});

test('one that was used up long ago is found by its whole id, among all, and stands nowhere else', () => {
  const story = beginStory();
  tellPlant(story);
  useUp(story, ['K-1', 'L-1']);
  put(story, 'K-10', 'P-1');
  const floor = story.floor();
  for (const nowMs of [0, GONE_AFTER_MS]) forgetReels(floor, nowMs);
  const find = (query: string, filter: ReelFilter = 'all') =>
    toTheEnd(findSteps(floor, { query, filter, most: 10 }));
  const names = (query: string) => find(query).shown.map(({ reel }) => reel);
  expect([names('K-1'), names('K-'), names('K-2')]).toEqual([['K-1', 'K-10'], ['K-10'], []]);
  expect([find('K-1').count, find('K-1', 'store').count]).toEqual([2, 1]);
  expect(find('K-1').shown[0]).toMatchObject({ count: 0, gone: true });
});

test('one whose floor life was over nobody knows when stands before those that last', () => {
  const story = comeBack({ isBaked: false });
  const dayMs = 24 * 3_600_000;
  const nowMs = startMs + 45 * dayMs;
  const from = new Date(nowMs).toISOString();
  const air = { air: 'floor', celsius: null, humidity: null, msl: '3', via: 'typed', from } as const;
  const facts = { part: 'R-100', supplierPart: null, lot: null, dateCode: null, quantity: 90 };
  story.tell('reel.aired', { ...facts, ...air, reel: 'A1' }, { at: (45 * dayMs) / 1000 });
  const floor = story.floor();
  const asked = { line: 'L1', part: { level: '3', bodyMm: 1 }, nowMs } as const;
  const endOf = (reel: Reel) => lifeEndOf(floor, reel, asked);
  const { shown } = toTheEnd(listSteps(floor, { query: '', filter: 'opened', most: 10, endOf }));
  expect(shown.map(({ reel }) => reel)).toEqual(['K1', 'A1']);
});
