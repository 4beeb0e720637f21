// How far a figure may be off before it is wrong once in a million, worked out by hand; binomial points by sums of exact fractions.

import { describe, expect, test } from 'vitest';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import type { FloorState, SlotState } from '../../../shared/floor/state.ts';
import {
  type EndsAt,
  endOfSplice,
  endsByCount,
  isLabelGuess,
  join,
  latestEnd,
  mayGoWithout,
  meet,
  mostByCount,
  mostMissed,
} from '../../../shared/trace/doubt.ts';
import {
  beginStory,
  brookSetup,
  counted,
  type Story,
  started,
  tellPlant,
  verified,
  wantedSlot,
} from '../floor/story.ts';

const slot = 'M1-F-001';
const INFINITE = Number.POSITIVE_INFINITY;
const one = { setup: 'two-up', reach: { low: 0, high: 1 }, missed: 0, lag: 0, early: 0 } satisfies EndsAt;

/** Panels of two boards, one part on each: 100 parts counted for certain. */
function begun(rules: Partial<PayloadOf<'line.ruled'>> = {}, parts = 100, sd = 0): Story {
  const story = beginStory();
  tellPlant(story, { rules });
  story.tell('line.tape-ruled', { line: 'L1', trailerMm: 0, leaderMm: null });
  story.tell('setup.taken', {
    ...brookSetup,
    setup: 'two-up',
    boardsPerPanel: 2,
    slots: [wantedSlot(slot, 'R-100')],
  });
  story.tell('setup.chosen', { line: 'L1', setup: 'two-up' });
  story.tell('reel.verified', verified(slot, 'R-100', { setup: 'two-up', reel: 'K1', quantity: parts }));
  const count = { line: 'L1', slot, reel: 'K1', part: 'R-100', lot: null, panels: 0 } as const;
  story.tell('reel.counted', { ...count, quantity: parts, sd, basis: 'machine' });
  story.tell('run.started', started('r1', { setup: 'two-up' }));
  return story;
}
const build = (story: Story, panels: number) =>
  story.tell('panels.counted', { ...counted('r1', panels), skipped: 0 });
const splice = (story: Story, reel = 'K2', quantity: number | null = 1000) =>
  story.tell(
    'reel.verified',
    verified(slot, 'R-100', { setup: 'two-up', act: 'splice', reel, quantity, run: 'r1', cut: 0 }),
  );
function slotOf(story: Story): readonly [FloorState, SlotState] {
  const floor = story.floor();
  return [floor, floor.slots.get(`L1/${slot}`)!];
}
const rounded = (of: { readonly low: number; readonly high: number } | undefined) =>
  of && [of.low, of.high].map((value) => Math.round(value * 1000) / 1000);

test('two bounds that both hold leave what lies within both; where they exclude each other, all of both', () => {
  expect(meet({ low: 1, high: 5 }, { low: 3, high: 9 })).toEqual({ low: 3, high: 5 });
  expect(meet({ low: 1, high: 3 }, { low: 3, high: 9 })).toEqual({ low: 3, high: 3 });
  expect(meet({ low: 1, high: 2 }, { low: 4, high: 9 })).toEqual({ low: 1, high: 9 });
  expect(join({ low: 4, high: 9 }, { low: 1, high: 5 })).toEqual({ low: 1, high: 9 });
});

test('mostMissed() is the binomial law’s point that is passed once in a million, never more than all', () => {
  const rows: readonly (readonly [panels: number, share: number, missed: number])[] = [
    [1, 0.002, 1],
    [0.2, 0.002, 1],
    [10, 0.002, 2],
    [9.1, 0.02, 4],
    [10, 0.02, 4],
    [29, 0.01, 5],
    [100, 0.002, 5],
    [200, 0.1, 43],
    [1000, 0.002, 12],
    [3, 0.5, 3],
    [20, 0.5, 19],
    [40, 0.5, 34],
    // The last whose law is summed; beyond, 600 + √(2 × 600 × 13.8155) + ⅔ × 13.8155 = 737.97 (Bernstein).
    [50_000, 0.01, 609],
    [50_050, 0.01, 628],
    [30_000, 0.02, 738],
    [600, 0.9, 600],
    [0, 0.5, 0],
    [-1, 0.5, 0],
    [100, 0, 0],
    [100, -0.1, 0],
    [100, 1e-9, 0],
  ];
  for (const [panels, share, missed] of rows)
    expect(mostMissed(panels, share), `${panels} ${share}`).toBe(missed);
});

describe('by counts', () => {
  test('a tape ends where its parts do: a tenth lost and no board skipped, or none lost and one of two', () => {
    const story = begun();
    splice(story);
    // 90 parts at two a panel, 100 at one; a panel at work took two more than were counted.
    const ends = endsByCount(...slotOf(story), one);
    expect(ends.map(rounded)).toEqual([[45, 102]]);
    const at = (more: Partial<EndsAt>) => rounded(endsByCount(...slotOf(story), { ...one, ...more })[0]);
    // Each panel more or less that had passed as the counts began may have taken two parts, which serve two panels now.
    expect(at({ lag: 4 })).toEqual([45, 110]);
    expect(at({ early: 3 })).toEqual([39, 102]);
    expect(at({ reach: { low: -2, high: 5 } })).toEqual([41, 110]);
    expect(at({ reach: { low: 3, high: -1 } })).toEqual([45, 100]);
    // Of the 45 panels that it serves 6 may pass uncounted (binomial law, one in a hundred).
    expect(at({ missed: 0.01 })).toEqual([45 - 6, 102]);
  });

  test('what was placed is taken off, with what may have been lost of it', () => {
    const story = begun();
    build(story, 15);
    splice(story);
    // 30 placed took 33.3 at most: 66.7 × 0.9 = 60 placements to come at least, 70 at most.
    expect(endsByCount(...slotOf(story), one).map(rounded)).toEqual([[30, 72]]);
    const missed = endsByCount(...slotOf(story), { ...one, missed: 0.01 })[0];
    expect(30 - (missed?.low ?? 0)).toBeCloseTo(6, 9);
  });

  test('a tape that has given more than was on it ended so many panels ago', () => {
    const story = begun();
    build(story, 60);
    splice(story);
    // 120 placed: 100 − 133.3 parts served a panel each where a board was skipped; 20 too many at most, 18 of them placed, two a panel.
    expect(endsByCount(...slotOf(story), one).map(rounded)).toEqual([[-33.333, -7]]);
  });

  test('spreads by 4.7535 deviations of the tapes before it, and not by those of its own', () => {
    const story = begun({ labelShare: 0.01 }, 100, 2);
    splice(story);
    // 100 ± 9.507 parts.
    expect(endsByCount(...slotOf(story), one).map(rounded)).toEqual([
      [Math.round(90.493 * 450) / 1000, 111.507],
    ]);
    splice(story, 'K3');
    // The second tape of 1000 parts has one deviation of 10: √(4 + 100) × 4.7535 = 48.476.
    const ends = endsByCount(...slotOf(story), one);
    expect(ends).toHaveLength(2);
    expect(rounded(ends[0])).toEqual([40.722, 111.507]);
    expect(ends[1]?.high).toBeCloseTo(1100 + 4.7535 * Math.sqrt(104) + 2, 6);
    expect(ends[1]?.low).toBeCloseTo((1100 - 4.7535 * Math.sqrt(104)) * 0.45, 6);
  });

  test('says nothing where a count is not known, or nobody said which boards were skipped', () => {
    const uncounted = begun();
    splice(uncounted, 'K2', null);
    splice(uncounted, 'K3', 500);
    const open = { low: -INFINITE, high: INFINITE };
    expect(endsByCount(...slotOf(uncounted), one)).toEqual([open, open]);
    const silent = begun();
    silent.tell('panels.counted', counted('r1', 5));
    splice(silent);
    expect(endsByCount(...slotOf(silent), one)).toEqual([open]);
    expect(mostByCount(...slotOf(silent), one)).toBe(INFINITE);
  });

  test('mostByCount() is what the only tape may still serve', () => {
    expect(mostByCount(...slotOf(begun()), one)).toBeCloseTo(102, 9);
    expect(mostByCount(...slotOf(begun({}, 100, 2)), { ...one, lag: 1 })).toBeCloseTo(109.507 + 4, 9);
    const over = begun();
    build(over, 60);
    expect(mostByCount(...slotOf(over), one)).toBeCloseTo(-9 + 2, 9);
    // Exactly used up: nothing but the panel at work.
    const even = begun();
    build(even, 50);
    expect(mostByCount(...slotOf(even), one)).toBe(2);
  });
});

describe('by the splice', () => {
  const lengths = { hubToPickMm: 800, intakeToPickMm: 260 };

  test('the end lies between feeder and hub: 65 parts, a tenth lost, two a panel; or 200, one a panel', () => {
    const story = begun(lengths);
    const [floor, there] = slotOf(story);
    expect(endOfSplice(floor, there, one)).toEqual({ low: 29, high: 201 });
    const ahead = { ...one, reach: { low: -2, high: 3 }, missed: 0.01 };
    expect(endOfSplice(floor, there, ahead)).toEqual({ low: 29 - 2 - 5, high: 203 });
    const [bare, unmeasured] = slotOf(begun());
    expect(endOfSplice(bare, unmeasured, ahead)).toEqual({ low: -2, high: INFINITE });
  });

  test('latestEnd() takes off what was placed since the newest splice', () => {
    const story = begun(lengths);
    build(story, 5);
    splice(story);
    const end = (more: { isNewest?: boolean; lag?: number } = {}) =>
      latestEnd(...slotOf(story), { ...one, isNewest: true, ...more });
    expect([end(), end({ isNewest: false })]).toEqual([201, 201]);
    build(story, 20);
    // 40 of the 200 were placed; the panel at work may have taken two.
    expect(end()).toBe(162);
    expect(end({ lag: 3 })).toBe(168);
    expect(end({ isNewest: false })).toBe(201);
    build(story, 100);
    // 240 of 200: 40 too many, 36 of them placed, two a panel; and none at all once it has just run out.
    expect(end()).toBe(-18 + 2);
    const bare = begun();
    build(bare, 5);
    splice(bare);
    expect(latestEnd(...slotOf(bare), { ...one, isNewest: true })).toBe(INFINITE);
  });
});

test('another setup that takes more of the slot may have run when the counts began', () => {
  const story = begun();
  story.tell('setup.taken', {
    ...brookSetup,
    setup: 'rich',
    slots: [wantedSlot(slot, 'R-100', { perPanel: 8 })],
  });
  splice(story);
  // A panel of it at work took eight parts, which serve eight panels now.
  expect(endsByCount(...slotOf(story), one).map(rounded)).toEqual([[45, 108]]);
});

test('mayGoWithout() is no for panels of one board, and for a setup that nobody took in', () => {
  const [floor] = slotOf(begun());
  expect([mayGoWithout(floor, 'two-up', slot), mayGoWithout(floor, 'brook-top-a', slot)]).toEqual([
    false,
    false,
  ]);
  expect(mayGoWithout(floor, 'none', slot)).toBe(false);
  // A slot that places nothing is none of the product’s, and serves no board.
  const story = begun();
  const slots = [wantedSlot(slot, 'R-100'), wantedSlot('M1-F-002', 'R-100', { perPanel: 0 })];
  story.tell('setup.taken', { ...brookSetup, setup: 'bare', boardsPerPanel: 2, slots });
  expect(mayGoWithout(story.floor(), 'bare', slot)).toBe(false);
  expect(mayGoWithout(story.floor(), 'bare', 'M1-F-002')).toBe(true);
});

test('counts rest on a guess where a label was printed and the line has no share of its own', () => {
  const isGuess = (story: Story) => isLabelGuess(...slotOf(story));
  const counted100 = begun();
  expect(isGuess(counted100)).toBe(false);
  splice(counted100);
  expect(isGuess(counted100)).toBe(true);
  const ruled = begun({ labelShare: 0.01 });
  splice(ruled);
  expect(isGuess(ruled)).toBe(false);
});
