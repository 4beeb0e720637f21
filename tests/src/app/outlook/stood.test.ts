// What is offered to a person who stops a line on which nobody counted for a while: 30 s a panel, the last at 06:06.

import { expect, test } from 'vitest';
import { stoodOffer } from '../../../../src/app/outlook/stood.ts';
import { beginStory, counted, started, startMs, tellPlant } from '../../../shared/floor/story.ts';

function ranUntil(seconds: number) {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1'), { at: 60 });
  for (let at = 90; at <= seconds; at += 30) story.tell('panels.counted', counted('run-1', 1), { at });
  return story;
}

test('is the last panel and one cycle, once two cycles went by without one', () => {
  const story = ranUntil(360);
  const offer = (seconds: number) => stoodOffer(story.floor(), 'L1', startMs + seconds * 1000);
  expect(offer(400)).toBeNull();
  expect(offer(1200)).toBe(startMs + 390_000);
});

test('is nothing for a line that stands already, or builds nothing', () => {
  const story = ranUntil(360);
  expect(stoodOffer(story.floor(), 'L2', startMs + 1_200_000)).toBeNull();
  story.tell('run.stopped', { run: 'run-1', line: 'L1', reason: 'jam', note: '' }, { at: 370 });
  expect(stoodOffer(story.floor(), 'L1', startMs + 1_200_000)).toBeNull();
});
