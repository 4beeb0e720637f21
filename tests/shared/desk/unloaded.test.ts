// What is written of a reel that comes off: of the tape on top, in the run that is built now.

import { describe, expect, test } from 'vitest';
import { unloadedFacts } from '../../../shared/desk/unloaded.ts';
import { slotKey } from '../../../shared/floor/state.ts';
import { beginStory, counted, type Story, started, tellPlant, verified } from '../floor/story.ts';

const slot = 'M1-F-001';
const factsOf = (story: Story) => {
  const floor = story.floor();
  return unloadedFacts(floor, floor.slots.get(slotKey('L1', slot))!);
};

function loaded(reel: string | null) {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified(slot, 'R-100', { reel, lot: 'LA', feeder: 'FD-1' }));
  return story;
}

describe('unloadedFacts()', () => {
  test('names reel, part, lot and feeder, and no run and no panels where nothing is built', () => {
    expect(factsOf(loaded('K1'))).toEqual({
      line: 'L1',
      run: null,
      slot,
      feeder: 'FD-1',
      reel: 'K1',
      part: 'R-100',
      lot: 'LA',
      panels: 0,
    });
  });

  test('gives a reel without an id none', () => {
    expect(factsOf(loaded(null))).toMatchObject({ reel: null, part: 'R-100', lot: 'LA' });
  });

  test('is of the reel that was spliced on, after so many panels of the run in hand', () => {
    const story = loaded('K1');
    story.tell('run.started', started('r1'));
    story.tell('panels.counted', counted('r1', 7));
    story.tell('reel.verified', verified(slot, 'R-100', { act: 'splice', reel: 'K2', lot: 'LB', run: 'r1' }));
    expect(factsOf(story)).toMatchObject({ run: 'r1', reel: 'K2', lot: 'LB', panels: 7 });
  });
});
