// What a plant's age leaves in the state of runs that ended long ago: little, and nothing that is wrong.

import { describe, expect, test } from 'vitest';
import { createReplica, foldIn } from '../../../shared/floor/replica.ts';
import type { FloorState, Run } from '../../../shared/floor/state.ts';
import { tallyOf } from '../../../shared/floor/tally.ts';
import { entryId } from '../../../shared/log/entry.ts';
import { lagAt } from '../../../shared/trace/line.ts';
import { beginStory, counted, type Story, started, startMs, tellPlant } from './story.ts';

const day = 86_400;
const panels = 5;

/** So many runs, `gap` seconds from start to start, each with five panels counted one by one and one count that none took part in. */
function played(runs: number, gap: number): Story {
  const story = beginStory();
  tellPlant(story);
  for (let number = 1; number <= runs; number++) {
    const at = 100 + number * gap;
    const run = `run-${number}`;
    story.tell('run.started', started(run), { at });
    for (let panel = 1; panel <= panels; panel++)
      story.tell('panels.counted', counted(run, 1), { at: at + panel });
    story.tell('panels.counted', counted(run, -1), { at: at + 10 });
    story.tell('run.ended', { run, line: 'L1', panels: panels - 1, note: '' }, { at: at + 20 });
  }
  return story;
}

const runIn = (floor: FloorState, number: number): Run => {
  const run = floor.runs.get(`run-${number}`);
  if (!run) throw new Error(`no run ${number}`);
  return run;
};
const countsKept = (floor: FloorState, number: number) => runIn(floor, number).counts.length;

describe('runs that ended long ago', () => {
  test('keep the newest count and the newest that added, and all that is asked of them later', () => {
    const story = played(40, day);
    const floor = story.floor();
    expect([1, 15, 16, 40].map((number) => countsKept(floor, number))).toEqual([2, 2, 6, 6]);
    const old = runIn(floor, 3);
    expect(old).toMatchObject({ done: panels - 1, phase: 'ended', said: [] });
    expect(tallyOf(old)).toBe(panels);
    const endMs = startMs + (100 + 3 * day + 20) * 1000;
    expect(old.counts.map(([, ms, add]) => [ms - endMs, add])).toEqual([
      [-15_000, 1],
      [-10_000, -1],
    ]);
    expect(lagAt(floor, 'L1', endMs - 15_000)).toBe(0);
  });

  test('stay the records that they are once their counts are gone', () => {
    const story = played(40, day);
    const replica = createReplica();
    foldIn(replica, story.entries);
    const before = replica.state.runs.get('run-3');
    foldIn(replica, [story.tell('run.started', started('next'))]);
    expect(replica.state.runs.get('run-3')).toBe(before);
    expect(countsKept(replica.state, 16)).toBe(2);
  });

  test('keep all counts where many runs are short, and where a clock ran ahead', () => {
    const short = played(40, 600).floor();
    expect([1, 40].map((number) => countsKept(short, number))).toEqual([6, 6]);
    const ahead = played(20, 600);
    ahead.tell('run.started', started('ahead'), { at: 4000 * day });
    expect(countsKept(ahead.floor(), 1)).toBe(6);
  });

  test('have a count taken back while they keep it, and stand as they are after that', () => {
    const story = played(40, day);
    const takeBack = (number: number) => {
      const first = story.entries.find(
        ({ kind, payload }) => kind === 'panels.counted' && payload['run'] === `run-${number}`,
      );
      if (!first) throw new Error(`nothing counted in run ${number}`);
      story.tell('entry.corrected', { of: entryId(first), line: 'L1', slot: null, reason: 'slip' });
      return runIn(story.floor(), number).done;
    };
    expect(takeBack(39)).toBe(panels - 2);
    expect(takeBack(3)).toBe(panels - 1);
  });

  test('stand alike wherever entries come in whatever order', () => {
    const story = played(40, day);
    const late = createReplica();
    const held = story.entries.filter((_, at) => at % 7 === 3);
    foldIn(
      late,
      story.entries.filter((_, at) => at % 7 !== 3),
    );
    expect(foldIn(late, held)).toBe(true);
    expect(late.state).toEqual(story.floor());
  });
});
