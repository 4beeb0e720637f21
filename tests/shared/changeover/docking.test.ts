// Before a cart docks: what loads, what goes off, what was put elsewhere since it was filled. From memory of how banks are changed.

import { describe, expect, test } from 'vitest';
import { dockingOf } from '../../../shared/changeover/docking.ts';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { laneLine } from '../../../shared/floor/lanes.ts';
import {
  beginStory,
  brookSetup,
  type Story,
  started,
  tellPlant,
  verified,
  wantedSlot,
} from '../floor/story.ts';

const asked = { line: 'L1', setup: 'brook-top-a' };

function begin(): Story {
  const story = beginStory();
  tellPlant(story);
  return story;
}

function fill(story: Story, slot: string, more: Partial<PayloadOf<'cart.filled'>> = {}): void {
  story.tell('cart.filled', {
    cart: 'C',
    line: 'L1',
    setup: 'brook-top-a',
    slot,
    feeder: null,
    reel: null,
    part: 'R-100',
    supplierPart: null,
    lot: null,
    dateCode: null,
    quantity: 1,
    of: 'x',
    ...more,
  });
}

const seen = (story: Story, more = asked) => {
  const { ready, off, unfit, others } = dockingOf(story.floor(), 'C', more);
  return {
    ready: ready.map(({ slot }) => slot),
    off: off.map(({ slot }) => slot),
    others,
    unfit: unfit.map(({ place, why, at }) => [place.slot, why, at?.slot ?? null]),
  };
};

describe('dockingOf()', () => {
  test('loads every place, and names what stands in those slots and goes off', () => {
    const story = begin();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'OLD' }));
    story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'STAYS' }));
    for (const slot of ['M1-F-002', 'M1-F-001']) fill(story, slot);
    expect(seen(story)).toEqual({ ready: ['M1-F-001', 'M1-F-002'], off: ['M1-F-001'], unfit: [], others: 0 });
  });

  test('leaves places of another setup or line on the cart', () => {
    const story = begin();
    fill(story, 'M1-F-001');
    fill(story, 'M1-F-002', { setup: 'other' });
    fill(story, 'M1-F-010', { line: 'L2' });
    expect(seen(story)).toEqual({ ready: ['M1-F-001'], off: [], unfit: [], others: 2 });
    expect(seen(story, { ...asked, setup: 'other' })).toMatchObject({ ready: ['M1-F-002'], others: 2 });
  });

  test('notices a feeder and a reel that were put on a line since, and their slots keep what they carry', () => {
    const story = begin();
    fill(story, 'M1-F-001', { feeder: 'F-1', reel: 'K-1' });
    fill(story, 'M1-F-002', { feeder: 'F-2', reel: 'K-2' });
    fill(story, 'M1-F-010', { feeder: 'F-3', reel: 'K-3' });
    story.tell('reel.verified', verified('M1-F-010', 'R-100', { feeder: 'F-1', reel: 'K-8' }));
    story.tell('reel.verified', verified('M1-F-002', 'R-100', { feeder: 'F-9', reel: 'K-2' }));
    expect(seen(story)).toEqual({
      ready: ['M1-F-010'],
      off: ['M1-F-010'],
      others: 0,
      unfit: [
        ['M1-F-001', 'feeder-loaded', 'M1-F-010'],
        ['M1-F-002', 'reel-loaded', 'M1-F-002'],
      ],
    });
  });

  test('takes off every lane of the feeder that it replaces, and docks a feeder with all of its lanes', () => {
    const story = begin();
    for (const [lane, reel] of [
      ['A', 'OLD-A'],
      ['B', 'OLD-B'],
    ] as const) {
      story.tell('reel.verified', verified(`M1-F-012${lane}`, 'R-100', { reel, feeder: 'TWIN-1' }));
    }
    fill(story, 'M1-F-012A', { feeder: 'TWIN-2', reel: 'NEW-A' });
    expect(seen(story)).toMatchObject({ ready: ['M1-F-012A'], off: ['M1-F-012A', 'M1-F-012B'], unfit: [] });
    fill(story, 'M1-F-012B', { feeder: 'TWIN-2', reel: 'NEW-B' });
    expect(seen(story)).toMatchObject({ ready: ['M1-F-012A', 'M1-F-012B'], unfit: [] });
  });

  test('keeps a whole feeder back where one of its lanes is blocked, or is for another setup', () => {
    const story = begin();
    fill(story, 'M1-F-012A', { lot: 'GOOD' });
    fill(story, 'M1-F-012B', { lot: 'BAD' });
    fill(story, 'M1-F-014A');
    fill(story, 'M1-F-014B', { setup: 'other' });
    story.tell('material.blocked', { block: 'b', reel: null, lot: 'BAD', part: null, reason: 'x' });
    expect(seen(story)).toMatchObject({
      ready: [],
      unfit: [
        ['M1-F-012A', 'lane-beside', 'M1-F-012B'],
        ['M1-F-012B', 'blocked', null],
        ['M1-F-014A', 'lane-beside', 'M1-F-014B'],
      ],
    });
  });

  test('sees a feeder of one lane in the way of one with two, and goes off with it', () => {
    const story = begin();
    story.tell('reel.verified', verified('M1-F-012', 'R-100', { reel: 'OLD' }));
    fill(story, 'M1-F-012A');
    expect(seen(story)).toMatchObject({ ready: ['M1-F-012A'], off: ['M1-F-012'] });
  });

  test.each(['M1-F-012B', 'M1-F-012'])(
    'leaves out a feeder that would take off what another lane of the conveyor needs on %s',
    (slot) => {
      const story = begin();
      const lane2 = laneLine('L1', 2);
      const line = story.floor().lines.get('L1');
      if (line) story.tell('line.defined', { ...line, line: lane2, name: 'Lane 2' });
      const facts = { line: lane2, setup: 'fell-top-a' };
      const slots = [wantedSlot(slot, 'Z-100')];
      story.tell('setup.taken', { ...brookSetup, ...facts, product: 'Fell', slots });
      story.tell('setup.chosen', facts);
      story.tell('reel.verified', verified(slot, 'Z-100', { reel: 'THEIRS', ...facts }));
      fill(story, 'M1-F-012A', { feeder: 'TWIN-2', reel: 'NEW-A' });
      expect(seen(story)).toMatchObject({
        ready: [],
        off: [],
        unfit: [['M1-F-012A', 'other-lane', slot]],
      });
      story.tell('setup.chosen', { line: lane2, setup: 'brook-top-a' });
      expect(seen(story)).toMatchObject({ ready: ['M1-F-012A'], off: [slot], unfit: [] });
    },
  );

  test('leaves out what another lane, chosen since the cart was filled, would pick for its own part', () => {
    const story = begin();
    const lane2 = laneLine('L1', 2);
    const line = story.floor().lines.get('L1');
    if (line) story.tell('line.defined', { ...line, line: lane2, name: 'Lane 2' });
    fill(story, 'M1-F-001');
    fill(story, 'M1-F-002');
    const facts = { line: lane2, setup: 'fell-top-a' };
    const slots = [
      wantedSlot('M1-F-001', 'Z-100'),
      wantedSlot('M1-F-002', 'Z-101', { alternates: ['R-100'] }),
    ];
    story.tell('setup.taken', { ...brookSetup, ...facts, product: 'Fell', slots });
    story.tell('setup.chosen', facts);
    const left = { ready: ['M1-F-002'], unfit: [['M1-F-001', 'other-lane', 'M1-F-001']] };
    expect(seen(story)).toMatchObject(left);
    // It names the lane that needs the slot.
    const [unfit] = dockingOf(story.floor(), 'C', asked).unfit;
    expect(unfit?.at).toEqual({ line: lane2, slot: 'M1-F-001' });
    story.tell('run.started', started('b', facts));
    expect(seen(story)).toMatchObject(left);
    story.tell('setup.taken', { ...brookSetup, setup: 'fell-top-b', line: lane2, slots: slots.slice(1) });
    story.tell('run.started', started('c', { line: lane2, setup: 'fell-top-b' }));
    expect(seen(story)).toMatchObject({ ready: ['M1-F-001', 'M1-F-002'], unfit: [] });
  });

  test('leaves out what was blocked since', () => {
    const story = begin();
    fill(story, 'M1-F-001', { lot: 'BAD' });
    fill(story, 'M1-F-002', { lot: 'GOOD' });
    story.tell('material.blocked', { block: 'b', reel: null, lot: 'BAD', part: null, reason: 'x' });
    expect(seen(story)).toMatchObject({ ready: ['M1-F-002'], unfit: [['M1-F-001', 'blocked', null]] });
  });

  const beginWide = () => {
    const story = begin();
    story.tell('feeder.known', { feeder: 'W-2', tapeWidthMm: 16, pitchesMm: [4], positions: 2 });
    return story;
  };

  test('leaves out a wide feeder that reaches into one that stands there and stays', () => {
    const story = beginWide();
    fill(story, 'M1-F-001', { feeder: 'W-2' });
    fill(story, 'M1-F-010');
    expect(seen(story)).toMatchObject({ ready: ['M1-F-001', 'M1-F-010'], unfit: [] });
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'STAYS' }));
    const unfit = [['M1-F-001', 'neighbour', 'M1-F-002']];
    expect(seen(story)).toMatchObject({ ready: ['M1-F-010'], off: [], unfit });
  });

  test('leaves out the second of two on the cart that cannot stand side by side', () => {
    const story = beginWide();
    fill(story, 'M1-F-001', { feeder: 'W-2' });
    fill(story, 'M1-F-002');
    expect(seen(story)).toMatchObject({
      ready: ['M1-F-001'],
      unfit: [['M1-F-002', 'neighbour', 'M1-F-001']],
    });
    // The second being left out, what stands in its slot stays, and is in the way of the first.
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'STAYS' }));
    expect(seen(story)).toMatchObject({ ready: [], off: [] });
  });

  test('leaves out a feeder in the reach of a wide one that stands and stays', () => {
    const story = beginWide();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'STAYS', feeder: 'W-2' }));
    fill(story, 'M1-F-002');
    expect(seen(story)).toMatchObject({ ready: [], unfit: [['M1-F-002', 'neighbour', 'M1-F-001']] });
    fill(story, 'M1-F-001');
    expect(seen(story)).toMatchObject({ ready: ['M1-F-001', 'M1-F-002'], off: ['M1-F-001'], unfit: [] });
  });

  test('knows nothing of a cart that the log does not know', () => {
    expect(seen(begin())).toEqual({ ready: [], off: [], unfit: [], others: 0 });
  });
});

describe('a verdict for a cart', () => {
  test('loads nothing on the line', () => {
    const story = begin();
    story.tell('reel.verified', verified(null, 'R-100', { reel: 'K-1' }));
    expect(story.floor().slots.size).toBe(0);
  });
});
