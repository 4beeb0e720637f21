// Where reels lie: put away, found again by what the plant knows, gone from the shelf with a load, walked to in order.

import { describe, expect, test } from 'vitest';
import { isPlaceInUse, placeOf } from '../../../shared/floor/fold-places.ts';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { comparePlaces, sortByPlaceSteps } from '../../../shared/floor/place-order.ts';
import { recognise } from '../../../shared/floor/recognise.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { toTheEnd } from '../../to-the-end.ts';
import { beginStory, tellPlant, unloaded, verified } from './story.ts';

const slot = 'M1-R-003';
const put = (reel: string, place: string): PayloadOf<'reel.put'> => ({
  reel,
  part: 'R-100',
  supplierPart: null,
  quantity: 5000,
  lot: 'L-7',
  dateCode: null,
  place,
  via: 'wedge',
});
const lies = (floor: FloorState, reel: string) => {
  const found = floor.reels.get(reel);
  return found ? placeOf(found) : undefined;
};

function begun() {
  const story = beginStory();
  tellPlant(story);
  return story;
}

describe('reel.put', () => {
  test('makes a reel known that nobody has verified, by its label', () => {
    const story = begun();
    story.tell('reel.put', put('K1', 'A2-S10'));
    expect(story.floor().reels.get('K1')).toMatchObject({
      part: 'R-100',
      lot: 'L-7',
      count: 5000,
      basis: 'label',
      at: null,
      place: 'A2-S10',
    });
  });

  test('keeps what is known of a reel’s count, and the newest place', () => {
    const story = begun();
    story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', feeder: 'F-1', quantity: 1000 }));
    story.tell(
      'reel.unloaded',
      unloaded(slot, { reel: 'K1', part: 'R-100', quantity: 150, basis: 'weighed' }),
    );
    expect(lies(story.floor(), 'K1')).toBeNull();
    story.tell('reel.put', put('K1', 'A2-S10'));
    story.tell('reel.put', put('K1', 'A2-S11'));
    expect(story.floor().reels.get('K1')).toMatchObject({ count: 150, basis: 'weighed', place: 'A2-S11' });
  });

  test('a load takes the reel off its shelf; coming off the line it lies nowhere', () => {
    const story = begun();
    story.tell('reel.put', put('K1', 'A2-S10'));
    story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', feeder: 'F-1' }));
    expect(lies(story.floor(), 'K1')).toBeNull();
    story.tell('reel.put', put('K1', 'A9')); // still on its slot by the log: it must come off first
    story.tell('reel.unloaded', unloaded(slot, { reel: 'K1', part: 'R-100' }));
    expect(lies(story.floor(), 'K1')).toBeNull();
  });

  test('a place is recognised as long as a reel lies there', () => {
    const story = begun();
    expect(recognise(story.floor(), 'L1', 'A2-S10')).toEqual([]);
    story.tell('reel.put', put('K1', 'A2-S10'));
    expect(recognise(story.floor(), 'L1', ' A2-S10\r')).toEqual([{ is: 'place', place: 'A2-S10' }]);
    story.tell('reel.put', put('K1', 'A2-S11'));
    expect(isPlaceInUse(story.floor(), 'A2-S10')).toBe(false);
  });
});

describe('comparePlaces()', () => {
  test('walks numbers by value, and comes to reels without a place last', () => {
    const places = ['', 'R10-S2', 'R2-S10', '', 'R2-S9', 'B1'];
    expect(places.sort(comparePlaces)).toEqual(['B1', 'R2-S9', 'R2-S10', 'R10-S2', '', '']);
  });

  test('orders whole lists alike, each name cut once', () => {
    const places = ['', '999999999999', 'R02', 'R10-S2', '1234567890123', 'R2', 'r2', '', 'R2-S9', 'B1'];
    const sorted = toTheEnd(sortByPlaceSteps(places, (place) => place));
    expect(sorted).toEqual([...places].sort(comparePlaces));
  });
});
