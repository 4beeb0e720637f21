// The verdict against a second, independently written one, row by row. Two tables hold all combinations of what hangs together (identity and
// place; wear), and a walk with a step that shares no factor with the product of all facts goes through both at once.

import { describe, expect, test } from 'vitest';
import type { FloorState } from '../../../shared/floor/state.ts';
import { type VerifyQuestion, verifyReel } from '../../../shared/verdict/verify.ts';
import { beginStory, brookSetup, startMs, tellPlant, verified, wantedSlot } from '../floor/story.ts';
import { type Facts, secondOpinion } from './second-opinion.ts';

const values: { readonly [K in keyof Facts]: readonly Facts[K][] } = {
  act: ['load', 'splice', 'sweep'],
  slot: ['empty', 'loaded', 'not-in-setup', 'no-such-place'],
  own: ['wanted', 'alternate', 'alternate-of-another-product', 'other', 'none'],
  maker: [
    'none',
    'listed-here',
    'by-hand',
    'listed-on-another-product',
    'of-another-part',
    'of-nobody',
    'own-number',
  ],
  list: ['some', 'none'],
  blocked: [false, true],
  life: ['unlimited', 'enough', 'short', 'over', 'baked-too-short'],
  expiry: ['none', 'later', 'passed-before', 'passed-since'],
  age: ['no-rule', 'young', 'too-old-before', 'too-old-since', 'unreadable', 'none'],
  feeder: [
    'not-scanned',
    'fits',
    'too-wide',
    'wrong-step',
    'wrong-type',
    'on-another-slot',
    'on-the-lane-beside',
    'on-the-only-lane',
    'on-a-cart',
    'not-on-the-list',
  ],
  quantity: ['told', 'unknown'],
  id: ['new', 'none', 'here', 'on-another-slot', 'on-a-cart'],
};
const names = Object.keys(values) as readonly (keyof Facts)[];

/** The row of a number, each fact one digit of it; facts that are not walked stand at their first value. */
function rowOf(number: number, walked: readonly (keyof Facts)[]): Facts {
  let rest = number;
  const row: Record<string, unknown> = {};
  for (const name of names) {
    const of = values[name];
    const digit = walked.includes(name) ? rest % of.length : 0;
    if (walked.includes(name)) rest = Math.floor(rest / of.length);
    row[name] = of[digit];
  }
  return row as unknown as Facts; // every field was just filled
}
const sizeOf = (walked: readonly (keyof Facts)[]) =>
  walked.reduce((size, name) => size * values[name].length, 1);

// The slot in hand is the lane of a position; nothing of the table but the feeder beside it hangs on that.
const slots = {
  empty: 'M1-F-005A',
  loaded: 'M1-F-005A',
  'not-in-setup': 'M1-F-020',
  'no-such-place': 'M9-F-001',
};
const none = { hubToPickMm: null, intakeToPickMm: null, trailerMm: null, leaderMm: null };

/** The floor on which rows of these facts are asked. The loaded reel stands there since 2 March 2026. */
function build(facts: Facts): FloorState {
  const story = beginStory();
  const hasList = facts.list === 'some';
  tellPlant(story, { rules: { feedersKnown: true } });
  story.tell('setup.taken', {
    ...brookSetup,
    slots: [
      wantedSlot('M1-F-005A', 'W-1', {
        alternates: ['A-1'],
        supplierParts: hasList ? ['MK-HERE'] : [],
        feederType: 'twin',
      }),
      wantedSlot('M1-F-005B', 'B-1'),
      wantedSlot('M1-F-005C', 'B-1'),
      wantedSlot('M1-F-002', 'O-1', { supplierParts: ['MK-OTHER'] }),
      wantedSlot('M1-R-003', 'E-1'),
    ],
  });
  story.tell('setup.taken', {
    ...brookSetup,
    setup: 'fell',
    product: 'Fell',
    slots: [wantedSlot('M1-F-005A', 'W-1', { alternates: ['X-1'], supplierParts: ['MK-FELL'] })],
  });
  story.tell('supplier.approved', { supplierPart: 'MK-HAND', part: 'W-1' });
  if (!hasList) story.tell('supplier.approved', { supplierPart: 'MK-HERE', part: 'W-1' });
  for (const feeder of ['F-fits', 'F-else', 'F-lane', 'F-one', 'F-cart', 'F-type'])
    story.tell('feeder.known', { feeder, tapeWidthMm: 8, pitchesMm: [2, 4], positions: 1 });
  story.tell('feeder.known', { feeder: 'F-wide', tapeWidthMm: 12, pitchesMm: [4], positions: 1 });
  story.tell('feeder.known', { feeder: 'F-step', tapeWidthMm: 8, pitchesMm: [8], positions: 1 });
  for (const type of ['twin', 'single'])
    story.tell('feeder-type.known', { type, lanes: 1, drive: null, pocketMm: null, ...none });
  story.tell('feeder.typed', { feeder: 'F-type', type: 'single', ...none });
  story.tell('feeder.typed', { feeder: 'F-one', type: 'twin', ...none });
  if (facts.age !== 'no-rule')
    story.tell('line.age-ruled', { line: 'L1', limits: [{ begins: '', months: 12 }] });
  const put = (slot: string, part: string, reel: string, feeder: string) =>
    story.tell('reel.verified', verified(slot, part, { reel, feeder, lot: 'lot-1' }));
  if (facts.slot === 'loaded') put('M1-F-005A', 'W-1', 'K-here', 'F-fits');
  put('M1-F-005B', 'B-1', 'K-lane', 'F-lane');
  put('M1-F-005C', 'B-1', 'K-one', 'F-one');
  put('M1-R-003', 'E-1', 'K-else', 'F-else');
  story.tell('cart.filled', {
    cart: 'CART-1',
    line: 'L1',
    setup: 'brook-top-a',
    slot: 'M1-F-002',
    feeder: 'F-cart',
    reel: 'K-cart',
    part: 'O-1',
    supplierPart: null,
    lot: null,
    dateCode: null,
    quantity: 100,
    of: 'e',
  });
  if (facts.blocked)
    for (const lot of ['lot-1', 'lot-7'])
      story.tell('material.blocked', { block: lot, reel: null, lot, part: null, reason: 'cracks' });
  return story.floor();
}

const floors = new Map<string, FloorState>();
function floorOf(facts: Facts): FloorState {
  const key = JSON.stringify([facts.list, facts.age !== 'no-rule', facts.slot === 'loaded', facts.blocked]);
  const known = floors.get(key) ?? build(facts);
  floors.set(key, known);
  return known;
}

const own = {
  wanted: 'W-1',
  alternate: 'A-1',
  'alternate-of-another-product': 'X-1',
  other: 'O-1',
  none: null,
};
const maker = {
  none: null,
  'listed-here': 'MK-HERE',
  'by-hand': 'MK-HAND',
  'listed-on-another-product': 'MK-FELL',
  'of-another-part': 'MK-OTHER',
  'of-nobody': 'MK-NOBODY',
  'own-number': 'W-1',
};
const feeder = {
  'not-scanned': null,
  fits: 'F-fits',
  'too-wide': 'F-wide',
  'wrong-step': 'F-step',
  'wrong-type': 'F-type',
  'on-another-slot': 'F-else',
  'on-the-lane-beside': 'F-lane',
  'on-the-only-lane': 'F-one',
  'on-a-cart': 'F-cart',
  'not-on-the-list': 'F-9',
};
const id = { new: 'K-new', none: null, here: 'K-here', 'on-another-slot': 'K-else', 'on-a-cart': 'K-cart' };
const expires = {
  none: null,
  later: '2026-12-01',
  'passed-before': '2026-02-01',
  'passed-since': '2026-03-05',
};
// 12 months from Monday 24 February, 10 March and 2 June 2025.
const dateCode = {
  'no-rule': null,
  'too-old-before': '2509',
  'too-old-since': '2510',
  young: '2523',
  unreadable: '25W',
  none: null,
};
const life = {
  unlimited: null,
  enough: { leftSeconds: 100, neededSeconds: 100 },
  short: { leftSeconds: 100, neededSeconds: 101 },
  over: { leftSeconds: 0, neededSeconds: 50 },
  'baked-too-short': {
    leftSeconds: 100,
    neededSeconds: 50,
    shortBake: { hours: 1, celsius: 40, wanted: 552 },
  },
};

function questionOf(facts: Facts): VerifyQuestion {
  return {
    act: facts.act,
    line: 'L1',
    setup: 'brook-top-a',
    slot: slots[facts.slot],
    today: '2026-03-20',
    feeder: feeder[facts.feeder],
    floorLife: life[facts.life],
    reel: {
      reel: id[facts.id],
      part: own[facts.own],
      supplierPart: maker[facts.maker],
      quantity: facts.quantity === 'told' ? 500 : null,
      // Without an id a reel is known by part and lot: such a label reads like that of the loaded one.
      lot: facts.id === 'none' || facts.id === 'here' ? 'lot-1' : 'lot-7',
      expires: expires[facts.expiry],
      dateCode: dateCode[facts.age],
    },
  };
}

/** The rows on which the two differ, and how many were asked. */
function compare(rows: Iterable<Facts>): { readonly asked: number; readonly differing: readonly string[] } {
  const differing: string[] = [];
  let asked = 0;
  for (const facts of rows) {
    asked += 1;
    const answer = verifyReel(floorOf(facts), questionOf(facts));
    const wanted = secondOpinion(facts);
    const found = `${answer.verdict}: ${answer.reasons
      .map(({ code }) => code)
      .sort()
      .join(' ')}`;
    const said = `${wanted.verdict}: ${wanted.codes.join(' ')}`;
    if (found !== said && differing.length < 20)
      differing.push(`${JSON.stringify(facts)}\n  verdict ${found}\n  second  ${said}`);
  }
  return { asked, differing };
}

function* all(walked: readonly (keyof Facts)[], step = 1): Generator<Facts> {
  const size = sizeOf(walked);
  for (let number = 0; number < size; number += step) yield rowOf(number, walked);
}

describe('the verdict and a second opinion', () => {
  test('agree on every combination of numbers, lists, blocks, places, feeders, ids and counts', () => {
    const walked = names.filter((name) => !['life', 'expiry', 'age'].includes(name));
    const { asked, differing } = compare(all(walked));
    expect(differing).toEqual([]);
    expect(asked).toBe(3 * 4 * 5 * 7 * 2 * 2 * 10 * 2 * 5);
  }, 120_000);

  test('agree on every combination of numbers, places, ids, floor life, expiry and age', () => {
    const walked = names.filter((name) => !['maker', 'list', 'feeder', 'quantity'].includes(name));
    const { asked, differing } = compare(all(walked));
    expect(differing).toEqual([]);
    expect(asked).toBe(3 * 4 * 5 * 2 * 5 * 4 * 6 * 5);
  }, 120_000);

  test('agree on a walk through the product of all facts', () => {
    // 397 is prime and divides none of the sizes, so that every value of every fact meets every other.
    const { asked, differing } = compare(all(names, 397));
    expect(differing).toEqual([]);
    expect(asked).toBe(Math.ceil(sizeOf(names) / 397));
  }, 120_000);

  test('the loaded reel was put there on 2 March, between the dates of the table', () => {
    expect(new Date(startMs).toISOString().slice(0, 10)).toBe('2026-03-02');
  });
});
