// What a refusal tells besides its sentence: where the reel belongs, which reel or feeder to fetch instead, what to compare.

import { describe, expect, test } from 'vitest';
import type { ReelInHand } from '../../../../shared/desk/model.ts';
import type { Reason } from '../../../../shared/verdict/reasons.ts';
import type { ShownVerdict } from '../../../../src/app/desk/desk.ts';
import {
  comparedBy,
  feederFor,
  homesOf,
  rightReelFor,
  unloadFirst,
} from '../../../../src/app/frame/refusal-model.ts';
import {
  beginStory,
  brookSetup,
  type Story,
  startMs,
  tellPlant,
  unloaded,
  verified,
} from '../../../shared/floor/story.ts';

const inHand: ReelInHand = {
  codes: [],
  via: 'wedge',
  reel: 'K-9',
  part: 'R-100',
  supplierPart: null,
  quantity: 100,
  labelQuantity: 100,
  basis: 'label',
  lot: null,
  dateCode: null,
  expires: null,
  msl: null,
  questions: [],
};
const refused = (reason: Reason, more: Partial<ShownVerdict> = {}): ShownVerdict => ({
  entry: 'T1/e/1',
  act: 'load',
  line: 'L1',
  slot: 'M1-F-002',
  feeder: null,
  reel: inHand,
  bad: 'reel',
  atMs: startMs,
  verdict: 'refused',
  reasons: [reason],
  wanted: null,
  next: null,
  isAllLoaded: false,
  ...more,
});
const wrongPart: Reason = { code: 'wrong-part', slot: 'M1-F-002', wanted: 'C-200', found: 'R-100' };

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  return story;
}

function put(
  story: Story,
  reel: string,
  more: { part?: string; quantity?: number | null; place?: string; lot?: string; dateCode?: string } = {},
) {
  const { part = 'C-200', quantity = 100, place = `A-${reel}`, lot = null, dateCode = null } = more;
  const facts = { reel, part, supplierPart: null, quantity, lot, dateCode, place, via: 'wedge' as const };
  story.tell('reel.put', facts);
}

describe('where a refused reel belongs', () => {
  test('is each slot of this line that wants its part, empty ones first, but the one that refused it; then other lines', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
    story.tell('setup.taken', { ...brookSetup, setup: 'brook-2', line: 'L2' });
    story.tell('setup.chosen', { line: 'L2', setup: 'brook-2' });
    expect(homesOf(story.floor(), 'L1', refused(wrongPart))).toEqual([
      { line: null, slot: 'M1-R-003', isLoaded: false },
      { line: null, slot: 'M1-F-001', isLoaded: true },
      { line: 'L2', slot: 'M1-F-001', isLoaded: false },
      { line: 'L2', slot: 'M1-R-003', isLoaded: false },
    ]);
    const here = homesOf(story.floor(), 'L1', refused(wrongPart, { slot: 'M1-R-003' }));
    expect(here.filter(({ line }) => line === null).map(({ slot }) => slot)).toEqual(['M1-F-001']);
  });

  test('is found by what its maker’s number was approved for, and is nowhere for a part that nobody wants', () => {
    const story = begun();
    story.tell('supplier.approved', { supplierPart: 'S-1', part: 'C-200' });
    const maker = { ...inHand, part: null, supplierPart: 'S-1' };
    const at = (reel: ReelInHand) =>
      homesOf(story.floor(), 'L1', refused(wrongPart, { slot: null, reel })).map(({ slot }) => slot);
    expect(at(maker)).toEqual(['M1-F-002']);
    expect(at({ ...inHand, part: 'Z-9' })).toEqual([]);
    expect(at({ ...inHand, part: null })).toEqual([]);
    expect(homesOf(beginStory().floor(), 'L1', refused(wrongPart))).toEqual([]);
  });
});

describe('the right reel for a slot', () => {
  const right = (story: Story, slot: string | null = 'M1-F-002') =>
    rightReelFor(story.floor(), { line: 'L1', slot, nowMs: startMs });

  test('is the one that the line takes first, with its place, and how many more there are', () => {
    const story = begun();
    put(story, 'K-new', { dateCode: '2601' });
    put(story, 'K-old', { dateCode: '2501', quantity: 5000, place: 'B-7' });
    expect(right(story)).toEqual({ part: 'C-200', reel: 'K-old', place: 'B-7', more: 1 });
  });

  test('is never one that is blocked, expired, empty, uncounted or on a slot', () => {
    const story = begun();
    put(story, 'K-blocked', { lot: 'BAD' });
    story.tell('material.blocked', { block: 'b', reel: null, lot: 'BAD', part: null, reason: 'bent' });
    put(story, 'K-expired');
    story.tell('reel.dated', { reel: 'K-expired', expires: '2026-01-01' });
    put(story, 'K-empty', { quantity: 0 });
    put(story, 'K-uncounted', { quantity: null });
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K-on' }));
    expect(right(story)).toEqual({ part: 'C-200', reel: null, place: null, more: 0 });
    put(story, 'K-good');
    expect(right(story)).toMatchObject({ reel: 'K-good', more: 0 });
  });

  test('is never one whose floor life is over', () => {
    const story = begun();
    story.tell('setup.taken', {
      ...brookSetup,
      slots: brookSetup.slots.map((slot) => ({ ...slot, msl: slot.part === 'C-200' ? '5a' : '1' })),
    });
    put(story, 'K-wet');
    story.tell('reel.aired', {
      reel: 'K-wet',
      part: 'C-200',
      supplierPart: null,
      quantity: 100,
      lot: null,
      dateCode: null,
      air: 'floor',
      from: new Date(startMs - 30 * 86_400_000).toISOString(),
      celsius: null,
      humidity: null,
      via: 'typed',
    });
    expect(right(story)?.reel).toBeNull();
  });

  test('is an approved alternate where no reel of the part itself is left, and never one without an id', () => {
    const story = begun();
    put(story, 'K-alt', { part: 'C-201' });
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { lot: 'L' }));
    story.tell('reel.unloaded', unloaded('M1-F-002', { part: 'C-200', lot: 'L', quantity: 300 }));
    expect(right(story)).toMatchObject({ part: 'C-201', reel: 'K-alt', more: 0 });
    put(story, 'K-own');
    expect(right(story)).toMatchObject({ part: 'C-200', reel: 'K-own', more: 1 });
  });

  test('is not asked for without a slot, and where the setup wants nothing there', () => {
    expect(right(begun(), null)).toBeNull();
    expect(right(begun(), 'M1-F-020')).toBeNull();
    expect(right(beginStory())).toBeNull();
  });
});

describe('the feeder for a slot', () => {
  const feeder = (story: Story, slot: string | null = 'M1-F-001') => feederFor(story.floor(), 'L1', slot);
  const know = (story: Story, name: string, tapeWidthMm = 8, pitchesMm: number[] = [4]) =>
    story.tell('feeder.known', { feeder: name, tapeWidthMm, pitchesMm, positions: 1 });

  test('is the first by name that is as wide as the tape and has its pitch', () => {
    const story = begun();
    know(story, 'FD-0', 12);
    know(story, 'FD-1', 8, [2]);
    expect(feeder(story)).toBeNull();
    know(story, 'FD-3');
    know(story, 'FD-2', 8, []); // no pitch listed: it has any
    expect(feeder(story)).toBe('FD-2');
    expect(feeder(story, 'M1-F-020')).toBeNull();
    expect(feeder(story, null)).toBeNull();
  });

  test('is none that the verdict refuses: set aside, or of a type that the setup does not want', () => {
    const story = begun();
    const none = { hubToPickMm: null, intakeToPickMm: null, trailerMm: null, leaderMm: null };
    story.tell('setup.taken', {
      ...brookSetup,
      slots: brookSetup.slots.map((slot) => ({ ...slot, feederType: 'deep 8' })),
    });
    for (const type of ['deep 8', 'flat 8'])
      story.tell('feeder-type.known', { type, lanes: 1, drive: null, pocketMm: null, ...none });
    know(story, 'FD-1');
    story.tell('feeder.set-aside', { feeder: 'FD-1', reason: 'loses parts' });
    know(story, 'FD-2');
    story.tell('feeder.typed', { feeder: 'FD-2', type: 'flat 8', ...none });
    expect(feeder(story)).toBeNull();
    know(story, 'FD-3');
    story.tell('feeder.typed', { feeder: 'FD-3', type: 'deep 8', ...none });
    expect(feeder(story)).toBe('FD-3');
  });

  test('stands on no slot and no cart', () => {
    const story = begun();
    know(story, 'FD-1');
    know(story, 'FD-2');
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K1', feeder: 'FD-1' }));
    expect(feeder(story)).toBe('FD-2');
    story.tell('cart.filled', {
      cart: 'CART-1',
      line: 'L1',
      setup: 'brook-top-a',
      slot: 'M1-R-003',
      feeder: 'FD-2',
      reel: 'K-9',
      part: 'R-100',
      supplierPart: null,
      lot: null,
      dateCode: null,
      quantity: 100,
      of: 'e',
    });
    expect(feeder(story)).toBeNull();
  });
});

describe('what is compared', () => {
  test.each([
    [wrongPart, { wanted: 'C-200', found: 'R-100', isClosest: false, unit: 'part' }],
    [
      { code: 'not-in-setup', wanted: 'R-100', found: 'R-101', slot: 'M1-F-001' },
      { wanted: 'R-100', found: 'R-101', isClosest: true, unit: 'part' },
    ],
    [
      { code: 'feeder-width', feeder: 'F', wanted: 8, found: 12 },
      { wanted: '8', found: '12', isClosest: false, unit: 'mm' },
    ],
    [
      { code: 'feeder-pitch', feeder: 'F', wanted: 4, found: '2 / 8' },
      { wanted: '4', found: '2 / 8', isClosest: false, unit: 'mm' },
    ],
    [{ code: 'not-in-setup', wanted: null, found: 'R-101', slot: null }, null],
    [{ code: 'feeder-drive', feeder: 'F', wanted: 'air', found: 'electric' }, null],
    [{ code: 'reel-blocked' }, null],
  ] as const)('by $code', (reason, expected) => {
    expect(comparedBy(refused(reason as Reason))).toEqual(expected);
  });
});

describe('what must be unloaded first', () => {
  test('is the slot itself where it is loaded, and the place on this line where reel or feeder stand', () => {
    const first = (reason: Reason) => unloadFirst('L1', refused(reason));
    expect(first({ code: 'slot-loaded', slot: 'M1-F-002' })).toBe('M1-F-002');
    expect(first({ code: 'reel-elsewhere', slot: 'M1-F-001', line: 'L1' })).toBe('M1-F-001');
    expect(first({ code: 'feeder-elsewhere', slot: 'M1-F-001', line: 'L1' })).toBe('M1-F-001');
    expect(first({ code: 'reel-elsewhere', slot: 'M1-F-001', line: 'L2' })).toBeNull();
    expect(first({ code: 'feeder-elsewhere', slot: 'M1-F-001', line: 'L2' })).toBeNull();
    const elsewhere: Reason = { code: 'reel-elsewhere', slot: 'M1-F-001', line: 'L1' };
    expect(unloadFirst('L1~lane2', refused(elsewhere)), 'a lane of the line').toBe('M1-F-001');
    expect(first(wrongPart)).toBeNull();
  });
});
