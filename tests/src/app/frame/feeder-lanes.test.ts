// What hangs on a feeder beside the reel in hand, and where the feeder may go with all of it.

import { expect, test } from 'vitest';
import { laneLine } from '../../../../shared/floor/lanes.ts';
import { slotKey } from '../../../../shared/floor/state.ts';
import { lanesBeside, movedDrafts, movesOf } from '../../../../src/app/frame/feeder-lanes.ts';
import {
  beginStory,
  brookSetup,
  counted,
  started,
  tellPlant,
  verified,
  wantedSlot,
} from '../../../shared/floor/story.ts';

const setup = 'lanes';
/** A line for a setup of lanes, with a reel on each of the slots named; all of one feeder. */
function floorWith(wanted: Readonly<Record<string, string>>, loaded: Readonly<Record<string, string>>) {
  const story = beginStory();
  tellPlant(story);
  const slots = Object.entries(wanted).map(([slot, part]) => wantedSlot(slot, part));
  story.tell('setup.taken', { ...brookSetup, setup, slots });
  story.tell('setup.chosen', { line: 'L1', setup });
  for (const [slot, part] of Object.entries(loaded))
    story.tell('reel.verified', verified(slot, part, { setup, feeder: 'F-1', reel: `K-${slot}` }));
  const floor = story.floor();
  const at = (slot: string) => {
    const there = floor.slots.get(slotKey('L1', slot));
    if (!there)
      throw new TypeError(`Cannot ask of ${slot} as something must stand there: current value is nothing`);
    return there;
  };
  return { story, floor, at };
}
const wanted = { 'M1-F-012A': 'R-100', 'M1-F-012B': 'C-200', 'M1-F-015A': 'R-100', 'M1-F-015B': 'C-200' };

test('lanesBeside() names what comes off with the feeder', () => {
  const { floor, at } = floorWith(wanted, { 'M1-F-012A': 'R-100', 'M1-F-012B': 'C-200' });
  expect(lanesBeside(floor, at('M1-F-012B')).map(({ slot }) => slot)).toEqual(['M1-F-012A']);
});

test('movesOf() takes every reel of the feeder along, each to its own lane', () => {
  const { floor, at } = floorWith(wanted, { 'M1-F-012A': 'R-100', 'M1-F-012B': 'C-200' });
  const moves = movesOf(floor, at('M1-F-012B'), 'L1');
  expect(moves.map(({ all }) => all.map(({ loaded, to }) => [loaded.slot, to]))).toEqual([
    [
      ['M1-F-012B', 'M1-F-015B'],
      ['M1-F-012A', 'M1-F-015A'],
    ],
  ]);
});

test('movesOf() leads nowhere where a reel beside is not wanted there, a feeder stands there, or the lanes are others', () => {
  const both = { 'M1-F-012A': 'R-100', 'M1-F-012B': 'C-200' };
  const without = floorWith({ ...wanted, 'M1-F-015B': 'U-300' }, both);
  expect(movesOf(without.floor, without.at('M1-F-012A'), 'L1')).toEqual([]);
  const taken = floorWith(wanted, { 'M1-F-012A': 'R-100', 'M1-F-015B': 'C-200' });
  expect(movesOf(taken.floor, taken.at('M1-F-012A'), 'L1')).toEqual([]);
  const crossed = floorWith(
    { 'M1-F-012A': 'R-100', 'M1-F-015B': 'R-100', 'M1-F-016': 'R-100' },
    { 'M1-F-012A': 'R-100' },
  );
  expect(movesOf(crossed.floor, crossed.at('M1-F-012A'), 'L1')).toEqual([]);
});

test('a feeder goes by the setup of the lane in hand, and in what that builds', () => {
  const lane2 = laneLine('L1', 2);
  const { story, at } = floorWith({ 'M1-F-012A': 'R-100' }, { 'M1-F-012A': 'R-100' });
  story.tell('line.defined', { line: lane2, name: 'Lane 2', zone: 'UTC', machines: [] });
  const slots = [wantedSlot('M1-F-012A', 'R-100'), wantedSlot('M1-F-015A', 'R-100')];
  story.tell('setup.taken', { ...brookSetup, setup: 'other', line: lane2, slots });
  story.tell('run.started', started('r2', { line: lane2, setup: 'other' }));
  story.tell('panels.counted', { ...counted('r2', 7), line: lane2 });
  const moves = (line: string) => movesOf(story.floor(), at('M1-F-012A'), line);
  expect(moves('L1')).toEqual([]);
  const [there] = moves(lane2);
  expect(movedDrafts(story.floor(), lane2, there?.all ?? [])).toMatchObject([
    {
      payload: { line: lane2, run: 'r2', from: 'M1-F-012A', to: 'M1-F-015A', reel: 'K-M1-F-012A', panels: 7 },
    },
  ]);
});
