// A line with three slots of one part that are used in turn, and what each of them has given.

import { usedPlacements } from '../../../shared/floor/remaining.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { beginStory, counted, type Story, started, tellPlant, verified, wantedSlot } from './story.ts';

export const turnSlots = ['M1-F-001', 'M1-F-002', 'M1-R-003'] as const;
const [one, two, three] = turnSlots;

/** Three slots of one part in turn, two placements a panel, no loss; a run that goes on. */
export function begunInTurn(rules: Parameters<typeof tellPlant>[1] = {}): Story {
  const story = beginStory();
  tellPlant(story, rules);
  story.tell('setup.taken', {
    setup: 'turns',
    product: 'brook',
    side: 'top',
    revision: 'B',
    line: 'L1',
    source: 'test',
    slots: [
      wantedSlot(two, 'R-100', { turn: 2 }),
      wantedSlot(one, 'R-100', { turn: 1 }),
      wantedSlot(three, 'R-100', { turn: 3 }),
      wantedSlot('M1-R-004', 'C-200'),
    ],
  });
  story.tell('setup.chosen', { line: 'L1', setup: 'turns' });
  story.tell('run.started', started('run-1', { setup: 'turns' }));
  return story;
}

/** Puts a reel on a slot. */
export const load = (
  story: Story,
  slot: string,
  reel: string,
  quantity: number,
  act: 'load' | 'splice' = 'load',
): Entry =>
  story.tell('reel.verified', { ...verified(slot, 'R-100', { reel, act, quantity }), setup: 'turns' });

/** Placements that a slot has given; null where nothing stands there. */
export function used(story: Story, slot: string): number | null {
  const floor = story.floor();
  const there = floor.slots.get(`L1/${slot}`);
  return there ? usedPlacements(floor, there) : null;
}

/** Builds panels of the first run. */
export const build = (story: Story, panels: number): Entry =>
  story.tell('panels.counted', counted('run-1', panels));
