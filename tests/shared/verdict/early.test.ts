// A reel that cannot go on its slot is refused at the scan that shows it, whatever is still wanted; nothing that a later scan may put
// right is refused early, and no early refusal is ever taken back by the whole verdict.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type EarlyQuestion,
  heldAlready,
  refusedAlready,
  wantedElsewhere,
} from '../../../shared/verdict/early.ts';
import { verifyReel } from '../../../shared/verdict/verify.ts';
import { beginStory, brookSetup, type Story, tellPlant, verified } from '../floor/story.ts';

const label = { reel: 'K-9', part: 'R-100', supplierPart: null, quantity: 1000, lot: 'LOT7' };
const nothingYet: EarlyQuestion = {
  act: 'load',
  line: 'L1',
  setup: 'brook-top-a',
  slot: null,
  feeder: null,
  reel: null,
  isPartial: false,
  today: '2026-03-02',
};

function floorOf(before: (story: Story) => void = () => undefined) {
  const story = beginStory();
  tellPlant(story, { rules: { feedersKnown: true } });
  story.tell('feeder.known', { feeder: 'FD-8', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
  story.tell('feeder.known', { feeder: 'FD-24', tapeWidthMm: 24, pitchesMm: [4], positions: 3 });
  before(story);
  return story.floor();
}
const codes = (floor: ReturnType<typeof floorOf>, more: Partial<EarlyQuestion>) =>
  refusedAlready(floor, { ...nothingYet, ...more })?.reasons.map(({ code }) => code) ?? null;

describe('refusedAlready()', () => {
  test('refuses another part on a known slot while feeder, quantity and lot are still wanted', () => {
    const floor = floorOf();
    const half = { ...label, part: 'R-101', quantity: null, lot: null, reel: null };
    const answer = refusedAlready(floor, { ...nothingYet, slot: 'M1-F-001', reel: half, isPartial: true });
    expect(answer).toMatchObject({
      verdict: 'refused',
      reasons: [{ code: 'wrong-part', slot: 'M1-F-001', wanted: 'R-100', found: 'R-101' }],
    });
    expect(codes(floor, { slot: 'M1-F-001', reel: { ...half, part: 'R-100' }, isPartial: true })).toBeNull();
    expect(codes(floor, { slot: 'M1-F-001' })).toBeNull();
  });

  test('refuses a feeder too wide for its slot before any reel is there', () => {
    const floor = floorOf();
    expect(codes(floor, { slot: 'M1-F-001', feeder: 'FD-24' })).toEqual(['feeder-width']);
    expect(codes(floor, { slot: 'M1-F-001', feeder: 'FD-8' })).toBeNull();
    expect(codes(floor, { feeder: 'FD-24' })).toBeNull(); // no slot: it may fit where it goes
  });

  test('refuses a reel that no slot wants, with the wish that reads most like it, before any slot is scanned', () => {
    const floor = floorOf();
    const stray = { ...label, part: 'R-101' };
    expect(refusedAlready(floor, { ...nothingYet, reel: stray })).toMatchObject({
      reasons: [{ code: 'not-in-setup', found: 'R-101', wanted: 'R-100', slot: 'M1-F-001' }],
    });
    expect(refusedAlready(floor, { ...nothingYet, reel: { ...label, part: 'ZZ-99999' } })).toMatchObject({
      reasons: [{ code: 'not-in-setup', wanted: null, slot: null }],
    });
    for (const fine of ['R-100', 'C-201', 'U-300'])
      expect(codes(floor, { reel: { ...label, part: fine } }), fine).toBeNull();
    // An approved supplier part is its site part; one that nobody approved is for a lead, once its slot is known.
    expect(codes(floor, { reel: { ...label, part: null, supplierPart: 'SUP-300' } })).toBeNull();
    expect(codes(floor, { reel: { ...label, part: null, supplierPart: 'SUP-XX' } })).toBeNull();
    const approved = floorOf((story) =>
      story.tell('supplier.approved', { supplierPart: 'S-1', part: 'Z-9' }),
    );
    expect(codes(approved, { reel: { ...label, part: null, supplierPart: 'S-1' } })).toEqual([
      'not-in-setup',
    ]);
  });

  test('names the wish only while it reads like the part found: two characters off, no more, and the nearest first', () => {
    const floor = floorOf();
    const wish = (part: string) =>
      refusedAlready(floor, { ...nothingYet, reel: { ...label, part } })?.reasons[0]?.['wanted'];
    expect(wish('R-111')).toBe('R-100');
    expect(wish('R-222')).toBeNull();
    expect(wish('R-1000')).toBeNull(); // of another length
    expect(wish('X-100')).toBe('R-100'); // one character off, where C-200, earlier in the alphabet, is two off
  });

  test('says nothing of a reel that stands on a slot before a slot is scanned: it may come off', () => {
    const floor = floorOf((story) => {
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'BAD' }));
      story.tell('material.blocked', { block: 'b', reel: null, lot: 'BAD', part: null, reason: 'bent' });
    });
    expect(codes(floor, { reel: { ...label, reel: 'K1', lot: 'BAD' } })).toBeNull();
    expect(codes(floor, { reel: { ...label, reel: 'K-9', lot: 'BAD' } })).toEqual(['reel-blocked']);
    expect(codes(floor, { reel: { ...label, reel: null, lot: 'BAD' } })).toEqual(['reel-blocked']);
  });

  test('takes the id of the reel that runs for the old one while more of its codes may follow, and for a fault when all are there', () => {
    const floor = floorOf((story) =>
      story.tell('reel.verified', verified('M1-F-010', 'U-300', { reel: 'K1', lot: 'A' })),
    );
    const own = { ...label, reel: 'K1', part: null, supplierPart: 'SUP-300', quantity: null, lot: null };
    expect(codes(floor, { act: 'splice', slot: 'M1-F-010', reel: own, isPartial: true })).toBeNull();
    expect(codes(floor, { act: 'splice', slot: 'M1-F-010', reel: own })).toEqual(['reel-here']);
  });

  test('refuses nothing in a sweep, which only looks', () => {
    const floor = floorOf();
    expect(codes(floor, { act: 'sweep', slot: 'M1-F-001', reel: { ...label, part: 'R-101' } })).toBeNull();
    expect(codes(floor, { act: 'sweep', reel: { ...label, part: 'R-101' } })).toBeNull();
  });

  test('leaves an alternate of another product to a lead', () => {
    const floor = floorOf((story) =>
      story.tell('setup.taken', {
        ...brookSetup,
        setup: 'burn-top-a',
        product: 'Burn',
        slots: brookSetup.slots.map((slot) => ({
          ...slot,
          alternates: slot.part === 'R-100' ? ['R-109'] : [],
        })),
      }),
    );
    expect(codes(floor, { reel: { ...label, part: 'R-109' } })).toBeNull();
    expect(codes(floor, { slot: 'M1-F-001', reel: { ...label, part: 'R-109' } })).toBeNull();
  });

  test('refuses a blocked lot and a floor life that is over at once', () => {
    const floor = floorOf((story) =>
      story.tell('material.blocked', { block: 'b', reel: null, lot: 'LOT7', part: null, reason: 'bent' }),
    );
    expect(codes(floor, { reel: label })).toEqual(['reel-blocked']);
    expect(codes(floor, { slot: 'M1-F-001', reel: label })).toEqual(['reel-blocked']);
    const over = { leftSeconds: 0, neededSeconds: null };
    expect(codes(floorOf(), { slot: 'M1-F-001', reel: label, floorLife: over })).toEqual(['floor-life-over']);
    expect(codes(floorOf(), { slot: 'M1-F-001', reel: { ...label, expires: '2026-01-01' } })).toBeNull(); // a lead's matter
  });

  test('takes the label of the reel that runs for the old one, however few of its codes came', () => {
    const floor = floorOf((story) =>
      story.tell('reel.verified', verified('M1-F-001', 'R-109', { reel: 'K1', lot: 'A' })),
    );
    const half = { ...label, part: 'R-109', reel: null };
    expect(codes(floor, { act: 'splice', slot: 'M1-F-001', reel: half, isPartial: true })).toBeNull();
    expect(
      codes(floor, { act: 'splice', slot: 'M1-F-001', reel: { ...half, part: 'C-200' }, isPartial: true }),
    ).toEqual(['wrong-part']);
  });

  test('refuses nothing that the whole verdict would not refuse', () => {
    const floor = floorOf((story) => {
      story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K1', lot: 'A', feeder: 'FD-8' }));
      story.tell('material.blocked', { block: 'b', reel: null, lot: 'BAD', part: null, reason: 'bent' });
    });
    const reelArb = fc.record({
      reel: fc.constantFrom('K1', 'K2', null),
      part: fc.constantFrom('R-100', 'R-101', 'C-201', null),
      supplierPart: fc.constantFrom('SUP-300', 'SUP-X', null),
      quantity: fc.constantFrom(100, null),
      lot: fc.constantFrom('A', 'BAD', null),
    });
    const slotArb = fc.constantFrom('M1-F-001', 'M1-F-002', 'M1-R-003', 'M1-F-010');
    const feederArb = fc.constantFrom('FD-8', 'FD-24', 'FD-??', null);
    fc.assert(
      fc.property(reelArb, slotArb, feederArb, fc.boolean(), (reel, slot, feeder, isPartial) => {
        const act = slot === 'M1-R-003' ? 'splice' : 'load';
        const early = refusedAlready(floor, { ...nothingYet, act, slot, feeder, reel, isPartial });
        if (early === null) return;
        // Whatever feeder, quantity and lot come later: it stays refused.
        for (const later of [feeder, 'FD-8'])
          for (const lot of reel.lot === null ? ['A', null] : [reel.lot]) {
            const facts = { ...reel, lot, quantity: reel.quantity ?? 500 };
            const { reel: _, isPartial: __, ...rest } = { ...nothingYet, act } as const;
            const whole = verifyReel(floor, { ...rest, slot, feeder: feeder ?? later, reel: facts });
            expect(whole.verdict).toBe('refused');
          }
      }),
    );
  });
});

describe('heldAlready()', () => {
  const held = (more: Partial<EarlyQuestion>) =>
    heldAlready(floorOf(), { ...nothingYet, ...more })?.code ?? null;
  const old = { ...label, expires: '2026-01-01' };

  test('says that a lead must decide as soon as slot and label are there, whatever is still wanted', () => {
    expect(held({ slot: 'M1-F-001', reel: { ...old, quantity: null } })).toBe('expired');
    expect(held({ slot: 'M1-F-001', reel: label })).toBeNull();
  });

  test('waits for the quantity and the feeder, which may still come', () => {
    expect(held({ slot: 'M1-F-001', reel: { ...label, quantity: null } })).toBeNull();
    expect(held({ slot: 'M1-F-001', feeder: 'FD-??', reel: label })).toBeNull();
  });

  test('says nothing in a sweep, without a slot or a label, and while more codes may follow', () => {
    expect(held({ act: 'sweep', slot: 'M1-F-001', reel: old })).toBeNull();
    expect(held({ reel: old })).toBeNull();
    expect(held({ slot: 'M1-F-001' })).toBeNull();
    expect(held({ slot: 'M1-F-001', reel: old, isPartial: true })).toBeNull();
  });
});

test('wantedElsewhere() names the slots of other lines whose chosen setup wants a part', () => {
  const floor = floorOf((story) => {
    story.tell('setup.taken', { ...brookSetup, setup: 'brook-2', line: 'L2' });
    story.tell('setup.chosen', { line: 'L2', setup: 'brook-2' });
  });
  expect(wantedElsewhere(floor, 'L1', 'C-200')).toEqual([{ line: 'L2', slot: 'M1-F-002' }]);
  expect(wantedElsewhere(floor, 'L2', 'C-200')).toEqual([{ line: 'L1', slot: 'M1-F-002' }]);
});
