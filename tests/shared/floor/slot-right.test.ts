// Is a slot right for a setup? Each answer once, and that a lead's word, an alternate and a feeder count as the verdict counts them.

import { describe, expect, test } from 'vitest';
import { lookAtLine, slotRight } from '../../../shared/floor/slot-right.ts';
import { beginStory, brookSetup, idOf, type Story, tellPlant, verified, wantedSlot } from './story.ts';

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('setup.taken', {
    ...brookSetup,
    setup: 'fern',
    product: 'Fern',
    slots: [
      wantedSlot('M1-F-001', 'R-100', { pitchMm: 2 }),
      wantedSlot('M1-F-002', 'C-200'),
      wantedSlot('M1-F-010', 'U-300', { positions: 2 }),
    ],
  });
  return story;
}

const is = (story: Story, slot: string, setup = 'brook-top-a') => slotRight(story.floor(), 'L1', setup, slot);

describe('slotRight()', () => {
  test('says empty, right, other part, and nothing where the setup wants nothing', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-002', 'C-201'));
    story.tell('reel.verified', verified('M1-R-003', 'X-1', { setup: 'another' }));
    expect(is(story, 'M1-F-001')).toBe('empty');
    expect(is(story, 'M1-F-002')).toBe('right');
    expect(is(story, 'M1-R-003')).toBe('other-part');
    expect(is(story, 'M1-F-019')).toBeNull();
    expect(is(story, 'M1-F-001', 'unheard-of')).toBeNull();
  });

  test('an alternate is right only where this setup approves it', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-002', 'C-201'));
    expect(is(story, 'M1-F-002', 'fern')).toBe('other-part');
  });

  test('a hold counts for the setup that it was asked for', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-777', { verdict: 'held' }));
    expect(is(story, 'M1-F-001')).toBe('held');
    expect(is(story, 'M1-F-001', 'fern')).toBe('empty');
  });

  test('a lead’s word holds in this setup alone', () => {
    const story = begun();
    const held = story.tell('reel.verified', verified('M1-F-002', 'C-777', { verdict: 'held' }));
    story.tell('hold.cleared', {
      of: idOf(held),
      line: 'L1',
      slot: null,
      reason: 'ok',
      by: 'lea',
      checked: 'tablet',
    });
    expect(is(story, 'M1-F-002')).toBe('right');
    expect(is(story, 'M1-F-002', 'fern')).toBe('other-part');
  });

  test('a feeder that cannot feed what the next setup wants is wrong, by its record or by the setup it came with', () => {
    const story = begun();
    story.tell('feeder.known', { feeder: 'F-4', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { feeder: 'F-4' }));
    story.tell('reel.verified', verified('M1-F-010', 'U-300'));
    expect(is(story, 'M1-F-001')).toBe('right');
    expect(is(story, 'M1-F-001', 'fern')).toBe('wrong-feeder');
    expect(is(story, 'M1-F-010', 'fern')).toBe('wrong-feeder');
  });

  test('blocked material is right nowhere', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'L-7' }));
    expect(is(story, 'M1-F-001')).toBe('right');
    story.tell('material.blocked', { block: 'b', reel: null, lot: 'L-7', part: null, reason: 'quality' });
    expect(is(story, 'M1-F-001')).toBe('blocked');
  });
});

describe('lookAtLine()', () => {
  test('tells what is in the way from what may stay', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-011', 'X-1', { setup: 'another' }));
    story.tell('reel.verified', verified('M1-F-012', 'X-2', { setup: 'another' }));
    const surplus = (setup: string | null) =>
      lookAtLine(story.floor(), 'L1', setup).surplus.map(({ loaded, isInTheWay }) => [
        loaded.slot,
        isInTheWay,
      ]);
    // Fern's feeder on 010 takes two positions.
    expect(surplus('fern')).toEqual([
      ['M1-F-011', true],
      ['M1-F-012', false],
    ]);
    expect(surplus('brook-top-a').map(([, isInTheWay]) => isInTheWay)).toEqual([false, false]);
    expect(surplus(null)).toHaveLength(2);
  });
});

test('a feeder on positions that a feeder with lanes needs is in the way, a lane beside those that are wanted is not', () => {
  const story = begun();
  const lanes = ['1', '2'].map((lane) => wantedSlot(`M1-F-030-${lane}`, `T-${lane}`, { positions: 4 }));
  story.tell('setup.taken', { ...brookSetup, setup: 'reed', product: 'Reed', slots: lanes });
  for (const slot of ['M1-F-029', 'M1-F-031', 'M1-F-034', 'M1-F-030-3'])
    story.tell('reel.verified', verified(slot, 'X-1', { setup: 'another', reel: slot }));
  const { surplus } = lookAtLine(story.floor(), 'L1', 'reed');
  expect(surplus.map(({ loaded, isInTheWay }) => [loaded.slot, isInTheWay])).toEqual([
    ['M1-F-029', false],
    ['M1-F-030-3', false],
    ['M1-F-031', true],
    ['M1-F-034', false],
  ]);
});
