// What the log calls a lane that was taken away: entries and runs of it stay.

import { beforeAll, expect, test } from 'vitest';
import { lineEver } from '../../../../../shared/floor/lanes.ts';
import { lineName, runName, zoneOf } from '../../../../../src/app/screens/log/names.ts';
import { fetchEveryArea } from '../../../../../src/app/words/fetch.ts';
import { beginStory, brookSetup, started, tellPlant } from '../../../../shared/floor/story.ts';

beforeAll(() => fetchEveryArea('en'));

test('a lane that was taken away keeps its name and its zone in what is told of the past', () => {
  const story = beginStory();
  tellPlant(story);
  const lane2 = 'L1~lane2';
  const line = story.floor().lines.get('L1');
  if (line) story.tell('line.defined', { ...line, line: lane2, name: 'Lane 2', zone: 'Asia/Tokyo' });
  const facts = { line: lane2, setup: 'fell-top-a' };
  story.tell('setup.taken', { ...brookSetup, ...facts, product: 'Fell', slots: [] });
  story.tell('run.started', started('r', facts));
  story.tell('run.ended', { run: 'r', line: lane2, panels: 1, note: '' });
  const before = runName(story.floor(), 'r');
  expect(before).toContain('Lane 2');
  story.tell('lane.withdrawn', { line: lane2 });
  const floor = story.floor();
  expect(floor.lines.has(lane2)).toBe(false);
  expect(lineEver(floor, lane2)?.name).toBe('Lane 2');
  expect([lineName(floor, lane2), zoneOf(floor, lane2), runName(floor, 'r')]).toEqual([
    'Lane 2',
    'Asia/Tokyo',
    before,
  ]);
  expect(lineEver(floor, 'L9')).toBeUndefined();
});
