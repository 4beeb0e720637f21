// A reel that an unload took off by mistake comes back with what its own line used meanwhile, and nothing of another line's.

import { expect, test } from 'vitest';
import { usedPlacements } from '../../../shared/floor/remaining.ts';
import { slotKey } from '../../../shared/floor/state.ts';
import { beginStory, brookSetup, counted, idOf, started, tellPlant, unloaded, verified } from './story.ts';

const slot = 'M1-F-001'; // two parts a panel

test('the end of a run, and what is counted after it, counts for the reels that were taken off its own line by mistake, and for no other line’s', () => {
  const story = beginStory();
  tellPlant(story);
  story.tell('setup.taken', { ...brookSetup, setup: 'brook-2', line: 'L2' });
  story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1' }));
  story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K2', line: 'L2', setup: 'brook-2' }));
  story.tell('run.started', started('r1'));
  story.tell('panels.counted', counted('r1', 10));
  const offs = [
    { line: 'L1', off: unloaded(slot, { reel: 'K1', part: 'R-100', run: 'r1' }) },
    { line: 'L2', off: unloaded(slot, { reel: 'K2', part: 'R-100', line: 'L2' }) },
  ].map(({ line, off }) => ({ line, of: idOf(story.tell('reel.unloaded', off)) }));
  story.tell('run.ended', { run: 'r1', line: 'L1', panels: 10, note: '' });
  story.tell('panels.counted', counted('r1', 5)); // those that were still in the line
  for (const { line, of } of offs) story.tell('entry.corrected', { of, line, slot, reason: 'other slot' });
  const floor = story.floor();
  const used = (line: string) => usedPlacements(floor, floor.slots.get(slotKey(line, slot))!);
  expect([used('L1'), used('L2')]).toEqual([30, 0]);
});
