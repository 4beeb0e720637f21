// What is left on each reel of a slot: the running tape what it has not given yet, those behind it all they came with.

import { expect, test } from 'vitest';
import { slotEstimate } from '../../../shared/floor/remaining.ts';
import { slotKey } from '../../../shared/floor/state.ts';
import { leftOn } from '../../../src/app/left-on.ts';
import { beginStory, counted, type Story, started, tellPlant, verified } from '../../shared/floor/story.ts';

const slot = 'M1-F-001';

function spliced(panels: number, first: number | null = 1000): Story {
  const story = beginStory();
  tellPlant(story);
  const put = (reel: string, quantity: number | null, act: 'load' | 'splice') =>
    story.tell(
      'reel.verified',
      verified(slot, 'R-100', { reel, quantity, act, run: act === 'load' ? null : 'r1' }),
    );
  put('K1', first, 'load');
  story.tell('run.started', started('r1'));
  story.tell('panels.counted', counted('r1', 100));
  put('K2', 500, 'splice');
  put('K3', 700, 'splice');
  if (panels > 0) story.tell('panels.counted', counted('r1', panels));
  return story;
}

function lefts(story: Story, reels: readonly string[] = ['K1', 'K2', 'K3']): readonly (number | null)[] {
  const floor = story.floor();
  return reels.map((id) => {
    const reel = floor.reels.get(id);
    if (reel === undefined) throw new Error(`${id} must be known`);
    const { parts } = leftOn(floor, reel);
    return parts === null ? null : Math.round(parts);
  });
}

test('the running tape of several joined has what it has not given, those behind it all of theirs', () => {
  const story = spliced(0);
  const floor = story.floor();
  const there = floor.slots.get(slotKey('L1', slot));
  if (there === undefined) throw new Error('nothing on the slot');
  const { parts, running, runningIndex } = slotEstimate(floor, there);
  const left = lefts(story);
  expect(left.slice(runningIndex + 1)).toEqual([500, 700].slice(runningIndex));
  expect(left[runningIndex]).toBe(Math.round(running ?? -1));
  expect(left[0]).toBeLessThan(1000);
  expect(Math.abs(left.reduce<number>((sum, each) => sum + (each ?? 0), 0) - (parts ?? 0))).toBeLessThan(3);
});

test('where the sum says that a tape is used up it has nothing, as surely as the sum is known', () => {
  const story = spliced(500);
  const floor = story.floor();
  const there = floor.slots.get(slotKey('L1', slot));
  if (there === undefined) throw new Error('nothing on the slot');
  const { runningIndex } = slotEstimate(floor, there);
  expect(runningIndex).toBeGreaterThan(0);
  const first = there.tapes[0]?.reel;
  const reel = first === undefined ? undefined : floor.reels.get(first);
  if (reel === undefined) throw new Error('no reel on the slot');
  expect(leftOn(floor, reel).parts).toBe(0);
  expect(leftOn(floor, reel).sd).toBeGreaterThan(0);
});

test('where a count is unknown none of the joined tapes is told to be used up', () => {
  expect(lefts(spliced(0, null))).not.toContain(0);
});

test('of lots poured over each other the newest stands for the heap, and of the others nobody knows', () => {
  const story = beginStory();
  tellPlant(story);
  const pour = (reel: string, act: 'load' | 'refill') =>
    story.tell(
      'reel.verified',
      verified(slot, 'R-100', {
        reel,
        quantity: 1000,
        act,
        comesIn: 'bulk',
        run: act === 'load' ? null : 'r1',
      }),
    );
  pour('K1', 'load');
  story.tell('run.started', started('r1'));
  story.tell('panels.counted', counted('r1', 100));
  pour('K2', 'refill');
  const [first, second] = lefts(story, ['K1', 'K2']);
  expect(first).toBeNull();
  expect(second).toBeGreaterThan(1790);
  expect(second).toBeLessThan(1801);
});
