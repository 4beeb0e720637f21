// What a line builds: a run that is not ended, and nothing else.

import { expect, test } from 'vitest';
import { buildingOn, panelsToGo } from '../../../shared/floor/building.ts';
import { beginStory, started, tellPlant } from './story.ts';

test('a setup that is only chosen is not being built; a run is, going or stopped, until it is ended', () => {
  const story = beginStory();
  tellPlant(story);
  const now = () => buildingOn(story.floor(), 'L1')?.run ?? null;
  expect(story.floor().chosen.get('L1')).toBe('brook-top-a');
  expect(now()).toBeNull();
  story.tell('run.started', started('run-1'));
  expect(now()).toBe('run-1');
  story.tell('run.stopped', { run: 'run-1', line: 'L1', reason: 'jam', note: '' });
  expect(now()).toBe('run-1');
  expect(buildingOn(story.floor(), 'L2')).toBeNull();
  expect(buildingOn(story.floor(), null)).toBeNull();
  story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 0, note: '' });
  expect(now()).toBeNull();
});

test('a run has still to build what was wanted, and what was scrapped once more; never less than none', () => {
  const run = { panelsWanted: 100, done: 40, scrapped: 0 };
  expect(panelsToGo(run)).toBe(60);
  expect(panelsToGo({ ...run, scrapped: 3 })).toBe(63);
  expect(panelsToGo({ ...run, done: 130 })).toBe(0);
});
