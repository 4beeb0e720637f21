// One slot, two lanes, two products: a reel goes on only where it is right for each product that takes from the slot.

import { describe, expect, test } from 'vitest';
import { laneLine, lanesTaking } from '../../../shared/floor/lanes.ts';
import { type VerifyQuestion, verifyReel } from '../../../shared/verdict/verify.ts';
import { beginStory, brookSetup, started, tellPlant, wantedSlot } from '../floor/story.ts';

const lane2 = laneLine('L1', 2);

/** Lane 2 takes `parts` from M1-F-001, and something else from a slot that lane 1 leaves alone. */
function floorWith(parts: Parameters<typeof wantedSlot> | null) {
  const story = beginStory();
  tellPlant(story);
  const line = story.floor().lines.get('L1');
  if (!line) throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
  story.tell('line.defined', { ...line, line: lane2, name: 'Lane 2' });
  const slots = [wantedSlot('M1-F-019', 'Z-900'), ...(parts ? [wantedSlot(...parts)] : [])];
  story.tell('setup.taken', { ...brookSetup, setup: 'fell-top-a', product: 'Fell', line: lane2, slots });
  story.tell('setup.chosen', { line: lane2, setup: 'fell-top-a' });
  return story;
}
const ask = (line: string, more: Partial<VerifyQuestion> = {}): VerifyQuestion => ({
  act: 'load',
  line,
  setup: line === 'L1' ? 'brook-top-a' : 'fell-top-a',
  slot: 'M1-F-001',
  feeder: null,
  reel: { reel: 'K1', part: 'R-100', supplierPart: null, quantity: 500, lot: 'A' },
  today: '2026-03-02',
  ...more,
});

describe('a reel for a slot that two lanes feed from', () => {
  test('is accepted for either lane where both take its part', () => {
    const floor = floorWith(['M1-F-001', 'R-100']).floor();
    expect(verifyReel(floor, ask('L1')).verdict).toBe('accepted');
    expect(verifyReel(floor, ask(lane2)).verdict).toBe('accepted');
  });

  test('is refused with the lane and what that takes, whichever lane it was put on for', () => {
    const floor = floorWith(['M1-F-001', 'Z-100']).floor();
    expect(verifyReel(floor, ask('L1')).reasons).toEqual([
      { code: 'wrong-for-lane', lane: 'Lane 2', slot: 'M1-F-001', wanted: 'Z-100', found: 'R-100' },
    ]);
    const other = { reel: 'K1', part: 'Z-100', supplierPart: null, quantity: 500, lot: 'A' };
    const answer = verifyReel(floor, ask(lane2, { reel: other }));
    expect(answer).toMatchObject({
      verdict: 'refused',
      reasons: [{ code: 'wrong-for-lane', wanted: 'R-100' }],
    });
  });

  test('is accepted where the other lane takes its part as an alternate that it approves', () => {
    const floor = floorWith(['M1-F-001', 'Z-100', { alternates: ['R-100'] }]).floor();
    expect(verifyReel(floor, ask('L1')).verdict).toBe('accepted');
  });

  test('is for one lane alone where the other takes nothing from the slot, or has no setup', () => {
    expect(verifyReel(floorWith(null).floor(), ask('L1')).verdict).toBe('accepted');
    const floor = { ...floorWith(['M1-F-001', 'Z-100']).floor(), chosen: new Map([['L1', 'brook-top-a']]) };
    expect(lanesTaking(floor, 'L1')).toEqual([]);
    expect(verifyReel(floor, ask('L1')).verdict).toBe('accepted');
  });

  test('is asked of the product that the other lane builds, also while another is chosen for after it', () => {
    const story = floorWith(['M1-F-001', 'Z-100']);
    story.tell('run.started', started('b', { line: lane2, setup: 'fell-top-a' }));
    story.tell('setup.taken', {
      ...brookSetup,
      setup: 'next',
      line: lane2,
      slots: [wantedSlot('M1-F-001', 'R-100')],
    });
    story.tell('setup.chosen', { line: lane2, setup: 'next' });
    expect(lanesTaking(story.floor(), 'L1')).toEqual([{ line: lane2, setup: 'fell-top-a' }]);
    expect(verifyReel(story.floor(), ask('L1')).verdict).toBe('refused');
  });

  test('that is only checked on its slot is judged for the lane that checks', () => {
    const story = floorWith(['M1-F-001', 'R-100']);
    expect(verifyReel(story.floor(), ask('L1', { act: 'sweep' })).reasons.map(({ code }) => code)).toEqual([
      'slot-empty',
    ]);
  });
});
