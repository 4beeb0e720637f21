// Handling times come from what the log tells of released changeovers of the same line.

import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../../../shared/log/entry.ts';
import { learnFromLog } from '../../../../../src/app/screens/change/past.ts';
import type { Store } from '../../../../../src/app/store/store.ts';
import { beginStory, brookSetup, type Story, tellPlant, verified } from '../../../../shared/floor/story.ts';

/** A changeover on a line that stands: one load each `pace` seconds. */
function tellChange(story: Story, name: string, more: { at: number; loads: number; pace: number }): void {
  const { at, loads, pace } = more;
  const change = { changeover: name, line: 'L1' };
  story.tell(
    'changeover.began',
    { ...change, from: null, setup: 'brook-top-a', product: 'Brook', lastPanel: null },
    { at },
  );
  for (let index = 1; index <= loads; index++) {
    const place = brookSetup.slots[index - 1]?.slot ?? '';
    story.tell('reel.verified', verified(place, 'R-100', { reel: `${name}-${index}` }), {
      at: at + index * pace,
    });
  }
  const docked = { cart: 'CART-1', line: 'L1', setup: 'brook-top-a', slots: [] };
  story.tell('cart.docked', docked, { at: at + loads * pace + 1 });
  story.tell('changeover.released', { ...change, by: 'lea', reason: '' }, { at: at + (loads + 1) * pace });
}

/** The log newest first, page by page, as the store reads it. */
function storeOf(story: Story): Pick<Store, 'newest'> {
  const newestFirst = [...story.entries].reverse();
  return {
    newest: async (most: number, before?: unknown) => {
      const from = before === undefined ? 0 : newestFirst.indexOf(before as Entry) + 1;
      return newestFirst.slice(from, from + most);
    },
  };
}

const learn = (story: Story) => learnFromLog(storeOf(story) as Store, story.floor(), 'L1');

describe('learnFromLog()', () => {
  test('says on how many changeovers the median rests', async () => {
    const story = beginStory();
    tellPlant(story);
    tellChange(story, 'ch-1', { at: 1000, loads: 3, pace: 60 });
    expect(await learn(story)).toEqual({ putIn: null, takeOut: null });
    tellChange(story, 'ch-2', { at: 5000, loads: 4, pace: 90 });
    expect(await learn(story)).toEqual({
      putIn: { minutes: 1.5, handlings: 7, changeovers: 2 },
      takeOut: null,
    });
  });

  test('learns nothing where no changeover is released', async () => {
    const story = beginStory();
    tellPlant(story);
    expect(await learn(story)).toEqual({ putIn: null, takeOut: null });
  });
});
