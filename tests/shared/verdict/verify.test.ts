// May this reel go on this slot? Every reason reached by a case, and a wrong part never accepted.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FloorState } from '../../../shared/floor/state.ts';
import { comparePartNumbers, type PartComparison } from '../../../shared/labels/part-numbers.ts';
import { type ReasonCode, reasonCodes, reasonVerdicts } from '../../../shared/verdict/reasons.ts';
import { slotsWanting, type VerifyQuestion, verifyReel } from '../../../shared/verdict/verify.ts';
import {
  beginStory,
  brookSetup,
  type Story,
  tellPlant,
  unloaded,
  verified,
  wantedSlot,
} from '../floor/story.ts';
import { dueCase } from './due-feeder.ts';
import { valueCases } from './value-cases.ts';

const reel = (more: Partial<VerifyQuestion['reel']> = {}): VerifyQuestion['reel'] => ({
  reel: 'K-new',
  part: 'R-100',
  supplierPart: null,
  quantity: 5000,
  lot: 'lot-7',
  ...more,
});
const ask = (more: Partial<VerifyQuestion> = {}): VerifyQuestion => ({
  act: 'load',
  line: 'L1',
  setup: 'brook-top-a',
  slot: 'M1-F-001',
  feeder: null,
  reel: reel(),
  today: '2026-03-02',
  ...more,
});

/** One case: what happened before, what is asked, what must be answered. */
interface Case {
  readonly why: string;
  readonly before?: (story: Story) => void;
  readonly rules?: Parameters<typeof tellPlant>[1];
  readonly ask: VerifyQuestion;
  /** The first reason, with facts. */
  readonly reason: { readonly code: ReasonCode; readonly [fact: string]: unknown };
  readonly part?: string | null;
}

const looseRules = {
  rules: {
    comparison: { ignoreCase: true, ignoreSpaces: true, ignoreDashes: true, packingSuffixes: ['-TR'] },
  },
};
const loadK1 = (story: Story) =>
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'lot-1', feeder: 'F-1' }));

/** A reel without an id of its own stood on a slot and came off with 300 parts. */
function takeOffUnnamed(story: Story): void {
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'lot-1', quantity: 5000 }));
  story.tell('reel.unloaded', unloaded('M1-F-001', { quantity: 300, basis: 'typed' }));
}
/** A setup whose slots ask for a feeder of one type, one drive and one depth, with a feeder that has none of them. */
const twin = (story: Story) => {
  const none = { hubToPickMm: null, intakeToPickMm: null, trailerMm: null, leaderMm: null };
  story.tell('feeder-type.known', { type: 'twin 8', lanes: 2, drive: 'electric', pocketMm: 5, ...none });
  story.tell('feeder-type.known', { type: 'single 8', lanes: 1, drive: 'air', pocketMm: 2.1, ...none });
  story.tell('feeder.typed', { feeder: 'F-single', type: 'single 8', ...none });
  story.tell('feeder.typed', { feeder: 'F-twin', type: 'twin 8', ...none });
  story.tell('setup.taken', {
    ...brookSetup,
    setup: 'twins',
    slots: [
      wantedSlot('M1-F-005A', 'R-100', { feederType: 'twin 8' }),
      wantedSlot('M1-F-005B', 'R-100', { feederType: 'twin 8' }),
      wantedSlot('M1-F-005C', 'R-100'),
      wantedSlot('M1-F-006', 'R-100', { drive: 'Electric' }),
      wantedSlot('M1-F-007', 'R-100', { pocketMm: 2.5, feederType: 'a word of the sheet' }),
    ],
  });
};

const fillCart = (story: Story) =>
  story.tell('cart.filled', {
    cart: 'CART-1',
    line: 'L1',
    setup: 'brook-top-a',
    slot: 'M1-R-003',
    feeder: 'F-9',
    reel: 'K-9',
    part: 'R-100',
    supplierPart: null,
    lot: null,
    dateCode: null,
    quantity: 100,
    of: 'e',
  });

const cases: readonly Case[] = [
  { ...dueCase, ask: ask({ feeder: 'F-9' }) },
  {
    why: 'the line has no such place',
    ask: ask({ slot: 'M9-F-001' }),
    reason: { code: 'unknown-slot', slot: 'M9-F-001' },
  },
  {
    why: 'the place is beyond the end of the bank',
    ask: ask({ slot: 'M1-F-021' }),
    reason: { code: 'unknown-slot', slot: 'M1-F-021' },
  },
  {
    why: 'the setup leaves this slot empty',
    ask: ask({ slot: 'M1-F-020' }),
    reason: { code: 'slot-not-in-setup', slot: 'M1-F-020' },
  },
  {
    why: 'something is on the slot already',
    before: loadK1,
    ask: ask(),
    reason: { code: 'slot-loaded', part: 'R-100', reel: 'K1' },
  },
  { why: 'a splice needs a tape to join', ask: ask({ act: 'splice' }), reason: { code: 'slot-empty' } },
  { why: 'a sweep finds nothing loaded', ask: ask({ act: 'sweep' }), reason: { code: 'slot-empty' } },
  {
    why: 'the label names no part at all',
    ask: ask({ reel: reel({ part: null }) }),
    reason: { code: 'no-part', wanted: 'R-100' },
    part: null,
  },
  {
    why: 'the part belongs to another slot',
    ask: ask({ reel: reel({ part: 'C-200' }) }),
    reason: { code: 'wrong-part', wanted: 'R-100', found: 'C-200', goesTo: ['M1-F-002'] },
  },
  {
    why: 'the part belongs to no slot of the setup',
    ask: ask({ reel: reel({ part: 'X-1' }) }),
    reason: { code: 'wrong-part', goesTo: [] },
  },
  {
    why: 'the supplier part is approved, but for another part',
    ask: ask({ reel: reel({ part: null, supplierPart: 'SUP-300' }) }),
    reason: { code: 'wrong-part', found: 'U-300', goesTo: ['M1-F-010'] },
    part: 'U-300',
  },
  {
    why: 'an empty part number is no part number',
    ask: ask({ reel: reel({ part: '' }) }),
    reason: { code: 'wrong-part', found: '' },
  },
  {
    why: 'the reel is on another slot',
    before: loadK1,
    ask: ask({ slot: 'M1-R-003', reel: reel({ reel: 'K1' }) }),
    reason: { code: 'reel-elsewhere', slot: 'M1-F-001', line: 'L1' },
  },
  {
    why: 'the reel scanned for the splice is the running one',
    before: loadK1,
    ask: ask({ act: 'splice', reel: reel({ reel: 'K1' }) }),
    reason: { code: 'reel-here', slot: 'M1-F-001' },
  },
  {
    why: 'the lot is blocked',
    before: (story) =>
      story.tell('material.blocked', { block: 'b', reel: null, lot: 'lot-7', part: null, reason: 'cracks' }),
    ask: ask(),
    reason: { code: 'reel-blocked', reason: 'cracks' },
  },
  {
    why: 'the feeder carries another slot',
    before: loadK1,
    ask: ask({ slot: 'M1-R-003', feeder: 'F-1' }),
    reason: { code: 'feeder-elsewhere', slot: 'M1-F-001' },
  },
  {
    why: 'the feeder stands ready on a cart for another slot',
    before: fillCart,
    ask: ask({ feeder: 'F-9' }),
    reason: { code: 'feeder-on-cart', feeder: 'F-9', cart: 'CART-1', slot: 'M1-R-003' },
  },
  {
    why: 'the feeder has as many reels as its type has lanes',
    before: (story) => {
      twin(story);
      for (const lane of ['A', 'B'])
        story.tell(
          'reel.verified',
          verified(`M1-F-005${lane}`, 'R-100', { setup: 'twins', reel: `K-${lane}`, feeder: 'F-twin' }),
        );
    },
    ask: ask({ setup: 'twins', slot: 'M1-F-005C', feeder: 'F-twin' }),
    reason: { code: 'feeder-lanes', feeder: 'F-twin', lanes: 2, slots: ['M1-F-005A', 'M1-F-005B'] },
  },
  {
    why: 'the reel lies ready on a cart for another slot',
    before: fillCart,
    ask: ask({ reel: reel({ reel: 'K-9' }) }),
    reason: { code: 'reel-on-cart', reel: 'K-9', cart: 'CART-1', slot: 'M1-R-003' },
  },
  {
    why: 'the feeder is for wider tape',
    before: (story) =>
      story.tell('feeder.known', { feeder: 'F-2', tapeWidthMm: 12, pitchesMm: [4], positions: 2 }),
    ask: ask({ feeder: 'F-2' }),
    reason: { code: 'feeder-width', wanted: 8, found: 12 },
  },
  {
    why: 'the feeder cannot advance so far',
    before: (story) =>
      story.tell('feeder.known', { feeder: 'F-3', tapeWidthMm: 8, pitchesMm: [2, 8], positions: 1 }),
    ask: ask({ feeder: 'F-3' }),
    reason: { code: 'feeder-pitch', wanted: 4, found: '2 / 8' },
  },
  {
    why: 'the feeder is of another type than the sheet asks for',
    before: twin,
    ask: ask({ setup: 'twins', slot: 'M1-F-005A', feeder: 'F-single' }),
    reason: { code: 'feeder-type', feeder: 'F-single', wanted: 'twin 8', found: 'single 8' },
  },
  {
    why: 'the feeder is driven otherwise',
    before: twin,
    ask: ask({ setup: 'twins', slot: 'M1-F-006', feeder: 'F-single' }),
    reason: { code: 'feeder-drive', wanted: 'Electric', found: 'air' },
  },
  {
    why: 'the tape’s pockets are deeper than the feeder passes',
    before: twin,
    ask: ask({ setup: 'twins', slot: 'M1-F-007', feeder: 'F-single' }),
    reason: { code: 'feeder-height', wanted: 2.5, found: 2.1 },
  },
  {
    why: 'the feeder was set aside',
    before: (story) => {
      story.tell('feeder.set-aside', { feeder: 'F-9', reason: 'loses parts' });
    },
    ask: ask({ feeder: 'F-9' }),
    reason: { code: 'feeder-aside', feeder: 'F-9', why: 'loses parts' },
  },
  {
    why: 'the line wants feeders that are known',
    rules: { rules: { feedersKnown: true } },
    ask: ask({ feeder: 'F-9' }),
    reason: { code: 'feeder-unknown', feeder: 'F-9' },
  },
  {
    why: 'the floor life is over',
    ask: ask({ floorLife: { leftSeconds: 0, neededSeconds: null } }),
    reason: { code: 'floor-life-over' },
  },
  {
    why: 'the floor life ends before the reel does',
    ask: ask({ floorLife: { leftSeconds: 100, neededSeconds: 101 } }),
    reason: { code: 'floor-life-short', leftSeconds: 100, neededSeconds: 101 },
  },
  {
    why: 'part and supplier part of the label stand for different parts',
    ask: ask({ reel: reel({ supplierPart: 'SUP-300' }) }),
    reason: { code: 'part-contradicts', part: 'R-100', approvedFor: ['U-300'] },
  },
  {
    why: 'it is an alternate, but approved for another product',
    before: (story) =>
      story.tell('setup.taken', {
        ...brookSetup,
        setup: 'fell',
        product: 'Fell',
        slots: [wantedSlot('M1-F-001', 'R-100', { alternates: ['R-101'] })],
      }),
    ask: ask({ reel: reel({ part: 'R-101' }) }),
    reason: { code: 'alternate-not-approved', wanted: 'R-100', found: 'R-101', approvedFor: ['Fell'] },
  },
  {
    why: 'the maker’s number beside the site’s own is on nobody’s list for this slot',
    ask: ask({ slot: 'M1-F-010', reel: reel({ part: 'U-300', supplierPart: 'SUP-9' }) }),
    reason: {
      code: 'maker-not-listed',
      supplierPart: 'SUP-9',
      part: 'U-300',
      listed: ['SUP-300'],
      approvedFor: [],
    },
    part: 'U-300',
  },
  {
    why: 'the maker’s number is approved for another product, and this one has a list of its own',
    before: (story) =>
      story.tell('setup.taken', {
        ...brookSetup,
        setup: 'fell',
        product: 'Fell',
        slots: [wantedSlot('M1-F-010', 'U-300', { supplierParts: ['SUP-9'] })],
      }),
    ask: ask({ slot: 'M1-F-010', reel: reel({ part: null, supplierPart: 'SUP-9' }) }),
    reason: { code: 'maker-not-listed', listed: ['SUP-300'], approvedFor: ['Fell'] },
    part: 'U-300',
  },
  {
    why: 'the parts are older than the line allows their class',
    before: (story) => story.tell('line.age-ruled', { line: 'L1', limits: [{ begins: 'R-', months: 24 }] }),
    // 2024-W09 began on Monday 26 February 2024; today is 2 March 2026.
    ask: ask({ reel: reel({ dateCode: '2409' }) }),
    reason: { code: 'date-code-old', made: '2024-W09', months: 24, last: '2026-02-26' },
  },
  {
    why: 'the line limits the age of this class, and the label has no date code',
    before: (story) => story.tell('line.age-ruled', { line: 'L1', limits: [{ begins: '', months: 24 }] }),
    ask: ask(),
    reason: { code: 'date-code-unknown', dateCode: null, months: 24 },
  },
  ...valueCases.map((each) => ({ ...each, ask: ask({ reel: reel(each.reel) }) })),
  {
    why: 'an older reel of the part lies in the store',
    before: (story) =>
      story.tell('reel.put', {
        reel: 'K-old',
        part: 'R-100',
        supplierPart: null,
        quantity: 400,
        lot: null,
        dateCode: '2301',
        place: 'A-1',
        via: 'wedge',
      }),
    ask: ask({ reel: reel({ dateCode: '2409' }) }),
    reason: { code: 'older-in-store', reel: 'K-old', place: 'A-1', by: 'made', dateCode: '2301' },
  },
  {
    why: 'nobody approved the supplier part',
    ask: ask({ reel: reel({ part: null, supplierPart: 'SUP-9' }) }),
    reason: { code: 'supplier-part-not-approved', supplierPart: 'SUP-9', wanted: 'R-100' },
    part: null,
  },
  {
    why: 'nobody knows how many',
    ask: ask({ reel: reel({ quantity: null }) }),
    reason: { code: 'no-quantity' },
  },
  {
    why: 'the label’s date has passed',
    ask: ask({ reel: reel({ expires: '2026-03-01' }) }),
    reason: { code: 'expired', expires: '2026-03-01' },
  },
  {
    why: 'the sweep finds another reel than the log',
    before: loadK1,
    ask: ask({ act: 'sweep', reel: reel({ reel: 'K2' }) }),
    reason: { code: 'not-the-loaded-reel', reel: 'K2', loaded: 'K1' },
  },
  {
    why: 'the slot takes this alternate',
    ask: ask({ slot: 'M1-F-002', reel: reel({ part: 'C-201' }) }),
    reason: { code: 'by-alternate', wanted: 'C-200', found: 'C-201' },
    part: 'C-201',
  },
  {
    why: 'the supplier part is approved for the wanted part',
    ask: ask({ slot: 'M1-F-010', reel: reel({ part: null, supplierPart: 'SUP-300' }) }),
    reason: { code: 'by-supplier-part', part: 'U-300' },
    part: 'U-300',
  },
  {
    why: 'the site’s rules take case and packing as no difference',
    rules: looseRules,
    ask: ask({ reel: reel({ part: 'r-100' }) }),
    reason: { code: 'by-comparison', rule: 'case', wanted: 'R-100', found: 'r-100' },
    part: 'R-100',
  },
  {
    why: 'a bake too short has reset nothing: a lead decides, also where the floor life was over',
    ask: ask({
      floorLife: { leftSeconds: 0, neededSeconds: null, shortBake: { hours: 1, celsius: 40, wanted: 552 } },
    }),
    reason: { code: 'bake-short', hours: 1, celsius: 40, wanted: 552, leftSeconds: 0 },
  },
  {
    why: 'its leads saw more heat than they bear',
    ask: ask({ floorLife: { leftSeconds: 9e5, neededSeconds: null, hotBakes: { hours: 98, most: 96 } } }),
    reason: { code: 'bake-hours-over', hours: 98, most: 96 },
  },
  {
    why: 'nobody entered the time on a level 6 label',
    ask: ask({ floorLife: { leftSeconds: 0, neededSeconds: null, wantsLabelTime: true } }),
    reason: { code: 'label-time-missing' },
  },
  {
    why: 'a reel without an id may be the one that came off before with parts on it',
    before: takeOffUnnamed,
    ask: ask({ reel: reel({ reel: null, lot: 'lot-1', labelQuantity: 5000 }) }),
    reason: { code: 'reel-unnamed', lot: 'lot-1', left: 300, floorLife: false },
  },
  {
    why: 'its floor life goes on too, whatever a person says of its count',
    before: takeOffUnnamed,
    ask: ask({
      reel: reel({ reel: null, lot: 'lot-1', labelQuantity: 5000, isFresh: true }),
      floorLife: { leftSeconds: 9e5, neededSeconds: null },
    }),
    reason: { code: 'reel-unnamed', floorLife: true },
  },
  {
    why: 'a person said that it is a second reel with the label of the one that runs',
    before: loadK1,
    ask: ask({ act: 'splice', reel: reel({ reel: null, lot: 'lot-1', isSecond: true }) }),
    reason: { code: 'same-label', slot: 'M1-F-001' },
  },
  {
    why: 'the new tape is of another lot',
    before: loadK1,
    ask: ask({ act: 'splice' }),
    reason: { code: 'mixed-lots', from: 'lot-1', to: 'lot-7' },
  },
  {
    why: 'the log knows another count than the label',
    ask: ask({ reel: reel({ quantity: 1210, labelQuantity: 5000 }) }),
    reason: { code: 'quantity-corrected', label: 5000, quantity: 1210 },
  },
  {
    why: 'the label says no quantity, and somebody typed one',
    ask: ask({ reel: reel({ quantity: 800, labelQuantity: null }) }),
    reason: { code: 'quantity-corrected', label: null, quantity: 800 },
  },
];

function floorOf({ before, rules }: Pick<Case, 'before' | 'rules'>): FloorState {
  const story = beginStory();
  tellPlant(story, rules);
  before?.(story);
  return story.floor();
}

function frozen<T>(value: T): T {
  if (value === null || typeof value !== 'object' || Object.isFrozen(value)) return value;
  if (value instanceof Map) for (const each of value.values()) frozen(each);
  for (const each of Object.values(value)) frozen(each);
  return Object.freeze(value);
}

describe('a reel without an id', () => {
  const judge = (more: Partial<VerifyQuestion['reel']>) =>
    verifyReel(
      floorOf({ before: takeOffUnnamed }),
      ask({ reel: reel({ reel: null, labelQuantity: 5000, ...more }) }),
    );

  test.each([
    ['is of another lot', { lot: 'lot-2' }],
    ['was counted by a person', { lot: 'lot-1', quantity: 310 }],
    ['comes new, a person said', { lot: 'lot-1', isFresh: true }],
    ['has an id', { lot: 'lot-1', reel: 'K-7' }],
  ] as const)('is accepted where it %s', (_, more) => {
    expect(judge(more).verdict).toBe('accepted');
  });
});

describe('verifyReel()', () => {
  test('accepts the wanted part on its empty slot without any reason', () => {
    expect(verifyReel(floorOf({}), ask())).toEqual({ verdict: 'accepted', reasons: [], part: 'R-100' });
  });

  test('gives the reason that is to act on first, with its facts, on frozen inputs', () => {
    for (const { why, reason, part, ask: question, ...rest } of cases) {
      const answer = verifyReel(frozen(floorOf(rest)), frozen(question));
      expect(answer.reasons[0], why).toMatchObject(reason);
      expect(answer.verdict, why).toBe(reasonVerdicts[reason.code]);
      if (part !== undefined) expect(answer.part, why).toBe(part);
    }
  });

  test('has a case for every reason that it gives', () => {
    // `slot-on-cart` is for places on carts alone: verify-cart.test.ts; `not-in-setup` comes before any slot: early.test.ts;
    // `wrong-for-lane` and `kept-for-lane` want a second lane: lanes.test.ts; `reel-gone` a month: gone-reels.test.ts.
    const elsewhere = ['wrong-for-lane', 'kept-for-lane', 'slot-on-cart', 'not-in-setup', 'reel-gone'];
    const reached = new Set<string>([...elsewhere, ...cases.map(({ reason }) => reason.code)]);
    expect(reasonCodes.filter((code) => !reached.has(code))).toEqual([]);
  });

  test('gives every reason at once, refusals before what a lead decides before notes', () => {
    const floor = floorOf({ before: loadK1, rules: looseRules });
    const answer = verifyReel(
      floor,
      ask({
        slot: 'M1-R-003',
        feeder: 'F-1',
        reel: reel({ part: 'r-100', quantity: null, expires: '2020-01-01' }),
      }),
    );
    expect(answer.reasons.map(({ code }) => code)).toEqual([
      'feeder-elsewhere',
      'no-quantity',
      'expired',
      'by-comparison',
    ]);
    expect(answer.verdict).toBe('refused');
  });

  test('a feeder with several lanes stands on the slots of all of them, and on no other position', () => {
    const floor = floorOf({
      before: (story) => {
        twin(story);
        story.tell(
          'reel.verified',
          verified('M1-F-005A', 'R-100', { setup: 'twins', reel: 'K1', feeder: 'F-twin' }),
        );
      },
    });
    const on = (slot: string) =>
      verifyReel(floor, ask({ setup: 'twins', slot, feeder: 'F-twin' })).reasons.map(({ code }) => code);
    expect(on('M1-F-005B')).toEqual([]);
    expect(on('M1-F-006')).toEqual(['feeder-elsewhere']);
    // The reel in the other lane is a reel of its own.
    const sameReel = verifyReel(
      floor,
      ask({ setup: 'twins', slot: 'M1-F-005B', feeder: 'F-twin', reel: reel({ reel: 'K1' }) }),
    );
    expect(sameReel.reasons.map(({ code }) => code)).toEqual(['reel-elsewhere']);
  });

  test('takes what is on the edge: today’s expiry, floor life that just lasts, a count that the log knows', () => {
    const floor = floorOf({
      before: (story) => {
        loadK1(story);
        story.tell('reel.unloaded', {
          line: 'L1',
          run: null,
          slot: 'M1-F-001',
          feeder: null,
          reel: 'K1',
          part: null,
          lot: null,
          quantity: 300,
          basis: 'weighed',
          panels: 0,
          via: 'typed',
        });
      },
    });
    const edge = ask({
      reel: reel({ reel: 'K1', quantity: null, expires: '2026-03-02' }),
      floorLife: { leftSeconds: 100, neededSeconds: 100 },
    });
    expect(verifyReel(floor, edge)).toMatchObject({ verdict: 'accepted', reasons: [] });
    expect(verifyReel(floor, { ...edge, floorLife: { leftSeconds: 1, neededSeconds: null } }).verdict).toBe(
      'accepted',
    );
  });

  test('takes the site’s number where it stands in the supplier’s field', () => {
    const answer = verifyReel(floorOf({}), ask({ reel: reel({ part: null, supplierPart: 'R-100' }) }));
    expect(answer).toEqual({ verdict: 'accepted', reasons: [], part: 'R-100' });
  });

  test('asks no lead again in a sweep for what one has let onto the slot; what has passed since, it asks', () => {
    const story = beginStory();
    tellPlant(story);
    loadK1(story); // on 2026-03-02
    const sweep = (expires: string, more: Partial<VerifyQuestion> = {}) =>
      verifyReel(
        story.floor(),
        ask({
          act: 'sweep',
          today: '2026-03-09',
          reel: reel({ reel: 'K1', lot: 'lot-1', expires }),
          ...more,
        }),
      );
    expect(sweep('2026-03-01').reasons).toEqual([]);
    expect(sweep('2026-03-05').reasons).toEqual([{ code: 'expired', expires: '2026-03-05' }]);
    const life = (leftSeconds: number) =>
      sweep('2026-12-31', { floorLife: { leftSeconds, neededSeconds: 500 } }).reasons.map(({ code }) => code);
    expect([life(400), life(0)]).toEqual([[], ['floor-life-over']]);
  });

  test('accepts in a sweep the reel that the log knows, by its id or by part and lot, and by joined tapes too', () => {
    const floor = floorOf({
      before: (story) => {
        loadK1(story);
        story.tell(
          'reel.verified',
          verified('M1-F-001', 'R-100', { act: 'splice', reel: 'K2', lot: 'lot-2' }),
        );
        story.tell('reel.verified', verified('M1-R-003', 'R-100', { lot: 'lot-3' }));
      },
    });
    const sweep = (slot: string, more: Parameters<typeof reel>[0]) =>
      verifyReel(floor, ask({ act: 'sweep', slot, reel: reel(more) })).verdict;
    expect(sweep('M1-F-001', { reel: 'K1' })).toBe('accepted');
    expect(sweep('M1-F-001', { reel: 'K2' })).toBe('accepted');
    expect(sweep('M1-F-001', { reel: null, lot: 'lot-2' })).toBe('accepted');
    expect(sweep('M1-F-001', { reel: null, lot: 'lot-9' })).toBe('refused');
    expect(sweep('M1-R-003', { reel: 'K9', lot: 'lot-3' })).toBe('accepted');
    expect(sweep('M1-R-003', { reel: null, lot: 'lot-9' })).toBe('refused');
  });

  test('does not ask a splice for a feeder, and no verdict for the feeder of the slot itself', () => {
    const before = (story: Story) => {
      loadK1(story);
      story.tell('feeder.known', { feeder: 'F-2', tapeWidthMm: 12, pitchesMm: [4], positions: 2 });
    };
    expect(verifyReel(floorOf({ before }), ask({ act: 'splice', feeder: 'F-2' })).verdict).toBe('accepted');
  });

  test('blocks by reel, by lot, by part, and by both together, and by nothing where a block names nothing', () => {
    const rows: readonly (readonly [block: object, blocked: boolean])[] = [
      [{ reel: 'K-new' }, true],
      [{ reel: 'K-other' }, false],
      [{ part: 'R-100' }, true],
      [{ part: 'R-100', lot: 'lot-7' }, true],
      [{ part: 'R-100', lot: 'lot-8' }, false],
      [{}, false],
    ];
    for (const [named, blocked] of rows) {
      const block = { block: 'b', reel: null, lot: null, part: null, reason: 'quality', ...named };
      const floor = floorOf({ before: (story) => story.tell('material.blocked', block) });
      expect(verifyReel(floor, ask()).verdict, JSON.stringify(named)).toBe(blocked ? 'refused' : 'accepted');
    }
  });
});

describe('a reel of a wrong part', () => {
  // Few letters, so that numbers often nearly agree.
  const number = fc.stringMatching(/^[AaB][- ]?[12](-TR|-tr)?$/);
  const comparisonArb: fc.Arbitrary<PartComparison> = fc.record({
    ignoreCase: fc.boolean(),
    ignoreSpaces: fc.boolean(),
    ignoreDashes: fc.boolean(),
    packingSuffixes: fc.constantFrom([], ['-TR']),
  });
  const setupArb = fc.record({
    part: number,
    alternates: fc.array(number, { maxLength: 2 }),
    approvals: fc.array(fc.tuple(number, number), { maxLength: 3 }),
    comparison: comparisonArb,
  });

  test('is never accepted: neither wanted, nor alternate, nor approved, nor equal by a rule of the site', () => {
    let accepted = 0;
    let refused = 0;
    fc.assert(
      fc.property(
        setupArb,
        fc.option(number, { nil: null }),
        fc.option(number, { nil: null }),
        fc.constantFrom('load', 'splice', 'sweep'),
        ({ part, alternates, approvals, comparison }, found, supplierPart, act) => {
          const story = beginStory();
          tellPlant(story, {
            rules: { comparison: { ...comparison, packingSuffixes: [...comparison.packingSuffixes] } },
          });
          const slots = [wantedSlot('M1-F-001', part, { alternates })];
          story.tell('setup.taken', { ...brookSetup, setup: 's', slots });
          for (const [supplier, site] of approvals)
            story.tell('supplier.approved', { supplierPart: supplier, part: site });
          if (act !== 'load')
            story.tell('reel.verified', verified('M1-F-001', part, { setup: 's', reel: 'K1' }));
          const answer = verifyReel(
            story.floor(),
            ask({
              act,
              setup: 's',
              reel: reel({ reel: act === 'sweep' ? 'K1' : 'K9', part: found, supplierPart }),
            }),
          );
          const taken = [part, ...alternates];
          const equals = (one: string, other: string) => comparePartNumbers(one, other, comparison) !== null;
          const approved = approvals.some(
            ([supplier, site]) =>
              supplierPart !== null && equals(supplier, supplierPart) && taken.includes(site),
          );
          const named = [found, found === null ? supplierPart : null];
          const direct = named.some((text) => text !== null && taken.some((each) => equals(each, text)));
          // The site's own number on the label goes before the supplier's: a wrong one is wrong whatever else it says.
          const right = direct || (found === null && approved);
          if (!right) expect(answer.verdict).not.toBe('accepted');
          if (answer.verdict === 'accepted') {
            accepted += 1;
            expect(taken).toContain(answer.part);
          } else refused += 1;
        },
      ),
      { numRuns: 1500 },
    );
    // Both sides were really visited.
    expect(Math.min(accepted, refused)).toBeGreaterThan(100);
  });
});

test('`slotsWanting()` names slots that want or take a part, in walking order', () => {
  const floor = floorOf({});
  expect(slotsWanting(floor, 'brook-top-a', 'R-100')).toEqual(['M1-F-001', 'M1-R-003']);
  expect(slotsWanting(floor, 'brook-top-a', 'C-201')).toEqual(['M1-F-002']);
  expect(slotsWanting(floor, 'brook-top-a', 'X-1')).toEqual([]);
  expect(slotsWanting(floor, 'none', 'R-100')).toEqual([]);
});
