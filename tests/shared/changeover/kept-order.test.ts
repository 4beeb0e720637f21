// What of a kept order is still to come, as runs begin on the line? (No outside source: chosen here.)

import { describe, expect, test } from 'vitest';
import { begunJobs, jobsToCome } from '../../../shared/changeover/kept-order.ts';
import { beginStory, type Story, started, tellPlant } from '../floor/story.ts';

function kept(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('before', { setup: 's-b' }));
  const job = (id: string, setup: string) => ({
    id,
    setup,
    panels: 100,
    panelSeconds: 30,
    dueMs: null,
    isHeld: false,
  });
  story.tell('plan.kept', {
    line: 'L1',
    jobs: [job('1', 's-a'), job('2', 's-b'), job('3', 's-a')],
    byHand: {},
  });
  return story;
}

const toCome = (story: Story, line = 'L1') => jobsToCome(story.floor(), line).map(({ id }) => id);

describe('jobsToCome()', () => {
  test('is the kept order; a run that was going before it was kept takes nothing off', () => {
    expect(toCome(kept())).toEqual(['1', '2', '3']);
    expect(toCome(kept(), 'L2')).toEqual([]);
  });

  test('each run that begins takes the first job of its setup off, in whatever order they come', () => {
    const story = kept();
    story.tell('run.started', started('r1', { setup: 's-b' }));
    expect(toCome(story)).toEqual(['1', '3']);
    story.tell('run.started', started('r2', { setup: 's-a' }));
    expect(toCome(story)).toEqual(['3']);
    story.tell('run.started', started('r3', { setup: 's-z' }));
    story.tell('run.started', started('r4', { setup: 's-b' }));
    expect(toCome(story)).toEqual(['3']);
    expect([...begunJobs(story.floor(), 'L1')]).toEqual(['2', '1']);
  });

  test('a run of another line takes nothing off', () => {
    const story = kept();
    story.tell('run.started', started('r1', { setup: 's-a', line: 'L2' }));
    expect(toCome(story)).toEqual(['1', '2', '3']);
  });
});
