// Runs of a line one after the other, and how many panels may have passed that nobody had entered.

import { describe, expect, test } from 'vitest';
import { newestRun } from '../../../shared/floor/building.ts';
import { lagAt, reachOf, runBefore } from '../../../shared/trace/line.ts';
import { beginStory, counted, type Story, started, startMs, tellPlant } from '../floor/story.ts';

const at = (second: number) => startMs + second * 1000;

/** Two runs on the first line, one on another between them. */
function told(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('r1'), { at: 100 });
  story.tell('panels.counted', counted('r1', 5), { at: 200 });
  story.tell('run.ended', { run: 'r1', line: 'L1', panels: 5, note: '' }, { at: 300 });
  story.tell('run.started', started('x1', { line: 'L2' }), { at: 350 });
  story.tell('panels.counted', { ...counted('x1', 9), line: 'L2' }, { at: 360 });
  story.tell('run.started', started('r2'), { at: 400 });
  story.tell('panels.counted', counted('r2', 3), { at: 500 });
  return story;
}

describe('runs of a line', () => {
  test('the newest is the one that is built, else the one that ended last on this line', () => {
    const story = told();
    expect(newestRun(story.floor(), 'L1')?.run).toBe('r2');
    story.tell('run.ended', { run: 'r2', line: 'L1', panels: 3, note: '' }, { at: 600 });
    story.tell('run.ended', { run: 'x1', line: 'L2', panels: 9, note: '' }, { at: 700 });
    expect(newestRun(story.floor(), 'L1')?.run).toBe('r2');
    expect(newestRun(story.floor(), 'L2')?.run).toBe('x1');
    expect(newestRun(story.floor(), 'L3')).toBeNull();
  });

  test('the one before is of the same line, the nearest, and none before the first', () => {
    const story = told();
    story.tell('run.started', started('r3'), { at: 800 });
    const floor = story.floor();
    const beforeOf = (run: string) => runBefore(floor, floor.runs.get(run)!)?.run ?? null;
    expect([beforeOf('r3'), beforeOf('r2'), beforeOf('r1'), beforeOf('x1')]).toEqual([
      'r2',
      'r1',
      null,
      null,
    ]);
  });
});

describe('lagAt()', () => {
  test('is the most that was counted at once, less the one that is seen, while a run went on', () => {
    const floor = told().floor();
    expect(lagAt(floor, 'L1', at(99))).toBe(0); // before any
    expect(lagAt(floor, 'L1', at(100))).toBe(4);
    expect(lagAt(floor, 'L1', at(300))).toBe(4);
    expect(lagAt(floor, 'L1', at(301))).toBe(0); // between two runs
    expect(lagAt(floor, 'L1', at(450))).toBe(2);
    expect(lagAt(floor, 'L2', at(450))).toBe(8);
  });

  test('goes on past the end of a run while its panels are still counted', () => {
    const story = told();
    story.tell('run.ended', { run: 'r2', line: 'L1', panels: 3, note: '' }, { at: 600 });
    expect(lagAt(story.floor(), 'L1', at(650))).toBe(0);
    story.tell('panels.counted', counted('r2', 1), { at: 700 });
    expect(lagAt(story.floor(), 'L1', at(650))).toBe(2);
  });
});

test('reachOf() counts the panel at work with those in the line', () => {
  const story = told();
  story.tell('line.panels-ruled', {
    line: 'L1',
    machines: [{ machine: 'M1', least: -1, most: 4 }],
    missed: 0.01,
  });
  expect(reachOf(story.floor(), 'L1', 'M1-F-001')).toMatchObject({
    reach: { low: -1, high: 5 },
    isGuess: false,
    missed: 0.01,
  });
});
