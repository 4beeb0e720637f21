// One slot, two lanes, two products: a reel goes on only where it is right for each product that takes from the slot.

import { describe, expect, test } from 'vitest';
import { laneLine, lanesTaking } from '../../../shared/floor/lanes.ts';
import { type VerifyQuestion, verifyReel } from '../../../shared/verdict/verify.ts';
import { verifyForCart } from '../../../shared/verdict/verify-cart.ts';
import { beginStory, brookSetup, started, tellPlant, verified, wantedSlot } from '../floor/story.ts';

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

describe('a scan where another lane keeps its reel', () => {
  const kept = { code: 'kept-for-lane', lane: 'Brae line 1', slot: 'M1-F-001', part: 'R-100' };
  const withReel = () => {
    const story = floorWith(['M1-F-001', 'Z-100']);
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'A' }));
    return story.floor();
  };
  const other = { reel: 'K2', part: 'Z-100', supplierPart: null, quantity: 500, lot: 'B' };

  test('is told so first, whatever is to be done there, and never to unload it', () => {
    for (const act of ['load', 'splice', 'exchange', 'refill'] as const) {
      const { verdict, reasons } = verifyReel(withReel(), ask(lane2, { act, reel: other }));
      expect([verdict, reasons[0]], act).toEqual(['refused', kept]);
      expect(reasons.map(({ code }) => code)).not.toContain('slot-loaded');
    }
  });

  test('of the reel itself in a sweep is no wrong reel; of another it is', () => {
    expect(verifyReel(withReel(), ask(lane2, { act: 'sweep' })).reasons).toEqual([kept]);
    const codes = verifyReel(withReel(), ask(lane2, { act: 'sweep', reel: other })).reasons.map(
      ({ code }) => code,
    );
    expect(codes).toEqual(['not-the-loaded-reel']);
  });

  test('leaves the lane that keeps it as it was', () => {
    expect(verifyReel(withReel(), ask('L1', { act: 'sweep' })).verdict).toBe('accepted');
  });

  test('lets the lane that keeps it go on with its part, until the other builds too', () => {
    const story = floorWith(['M1-F-001', 'Z-100']);
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'A' }));
    story.tell('run.started', started('a'));
    const next = { reel: 'K3', part: 'R-100', supplierPart: null, quantity: 500, lot: 'A' };
    const codesOf = (act: VerifyQuestion['act']) =>
      verifyReel(story.floor(), ask('L1', { act, reel: next })).reasons.map(({ code }) => code);
    for (const act of ['splice', 'exchange', 'refill'] as const)
      expect(codesOf(act), act).not.toContain('wrong-for-lane');
    expect(verifyReel(story.floor(), ask('L1', { act: 'exchange', reel: next })).verdict).toBe('accepted');
    story.tell('run.started', started('b', { line: lane2, setup: 'fell-top-a' }));
    for (const act of ['splice', 'exchange', 'refill'] as const)
      expect(codesOf(act), act).toContain('wrong-for-lane');
  });
});

test('a reel that a cart carries for one lane is refused for the same slot of another lane', () => {
  const story = floorWith(['M1-F-001', 'R-100']);
  const facts = { feeder: null, supplierPart: null, lot: 'A', dateCode: null, quantity: 500, of: 'x' };
  const at = { cart: 'C1', line: 'L1', setup: 'brook-top-a', slot: 'M1-F-001', reel: 'K1', part: 'R-100' };
  story.tell('cart.filled', { ...at, ...facts });
  const { reasons } = verifyForCart(story.floor(), ask(lane2), 'C2');
  expect(reasons.map(({ code }) => code)).toEqual(['reel-on-cart']);
});
