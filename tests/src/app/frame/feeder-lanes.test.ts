// What hangs on a feeder beside the reel in hand, and where the feeder may go with all of it.

import { expect, test } from 'vitest';
import { slotKey } from '../../../../shared/floor/state.ts';
import { lanesBeside, movesOf } from '../../../../src/app/frame/feeder-lanes.ts';
import { beginStory, brookSetup, tellPlant, verified, wantedSlot } from '../../../shared/floor/story.ts';

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
  return { floor, at };
}
const wanted = { 'M1-F-012A': 'R-100', 'M1-F-012B': 'C-200', 'M1-F-015A': 'R-100', 'M1-F-015B': 'C-200' };

test('lanesBeside() names what comes off with the feeder', () => {
  const { floor, at } = floorWith(wanted, { 'M1-F-012A': 'R-100', 'M1-F-012B': 'C-200' });
  expect(lanesBeside(floor, at('M1-F-012B')).map(({ slot }) => slot)).toEqual(['M1-F-012A']);
});

test('movesOf() takes every reel of the feeder along, each to its own lane', () => {
  const { floor, at } = floorWith(wanted, { 'M1-F-012A': 'R-100', 'M1-F-012B': 'C-200' });
  const moves = movesOf(floor, at('M1-F-012B'));
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
  expect(movesOf(without.floor, without.at('M1-F-012A'))).toEqual([]);
  const taken = floorWith(wanted, { 'M1-F-012A': 'R-100', 'M1-F-015B': 'C-200' });
  expect(movesOf(taken.floor, taken.at('M1-F-012A'))).toEqual([]);
  const crossed = floorWith(
    { 'M1-F-012A': 'R-100', 'M1-F-015B': 'R-100', 'M1-F-016': 'R-100' },
    { 'M1-F-012A': 'R-100' },
  );
  expect(movesOf(crossed.floor, crossed.at('M1-F-012A'))).toEqual([]);
});
