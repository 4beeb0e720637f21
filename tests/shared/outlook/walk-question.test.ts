// What an outlook asks of the planning of walks, and what becomes of the answer: windows worked out by hand, in seconds from now.

import { describe, expect, test } from 'vitest';
import type { WalkAnswer } from '../../../shared/forecast/walks.ts';
import { neverStopping, type WorkingTime, workingTime } from '../../../shared/forecast/working-time.ts';
import type { Outlook, SlotOutlook } from '../../../shared/outlook/line.ts';
import { needsOf, spliceNeed, toWalkPlan, walkQuestion } from '../../../shared/outlook/walks.ts';
import { startMs } from '../floor/story.ts';

const at = (second: number) => startMs + second * 1000;
const second = (ms: number) => (ms - startMs) / 1000;

interface Figures {
  readonly slot?: string;
  /** 5 % point and mean of the run-out, s from now. */
  readonly runOut: readonly [number, number];
  readonly window?: readonly [number, number];
  readonly outlasts?: boolean;
  readonly tapes?: number;
  readonly running?: number;
}

/** As much of a slot's outlook as walks are planned from. One deviation is (mean − 5 % point) ÷ 1.645. */
function slotOf({ slot = 'M1-F-001', runOut: [early, mean], window, ...more }: Figures): SlotOutlook {
  return {
    slot,
    forecast: {
      runOutMs: { early: at(early), expected: at(mean) },
      windowMs: window === undefined ? null : { opens: at(window[0]), closes: at(window[1]) },
      outlasts: more.outlasts ?? false,
    },
    estimate: { runningIndex: more.running ?? 0 },
    loaded: { tapes: Array.from({ length: more.tapes ?? 1 }) },
    load: { perPanel: 6 },
    loss: { mean: 0.04 },
  } as unknown as SlotOutlook; // what is looked at
}

/** A line whose walks take a minute and whose splices take another; 15 s more are planned for each. */
function lineOf(slots: readonly SlotOutlook[], calendar: WorkingTime = neverStopping): Outlook {
  return {
    slots,
    calendar,
    pace: { nowMs: startMs, panelSeconds: 25 },
    rules: { walkSeconds: 60, spliceSeconds: 60 },
  } as unknown as Outlook; // what is looked at
}

const stop = (from: number, to: number) => workingTime([{ fromMs: at(from), toMs: at(to) }]);

describe('spliceNeed()', () => {
  const needOf = (figures: Figures, calendar: WorkingTime = neverStopping) => {
    const { opensMs, closesMs } = spliceNeed(slotOf(figures), calendar);
    return [second(opensMs), second(closesMs)].map((value) => Math.round(value * 1000) / 1000);
  };

  test('takes a fifth of a deviation off where the window opens, and three where it closes or all but its first 30 %', () => {
    // One deviation is 100 s of a window of 1000 s: from 20 s in it to 30 % of it.
    expect(needOf({ runOut: [5000, 5164.5], window: [4000, 5000] })).toEqual([4020, 4300]);
    // 200 s: from 40 s to 1400 − 600 = 800 s, of which 30 % are 420 s.
    expect(needOf({ runOut: [5000, 5329], window: [4000, 5400] })).toEqual([4040, 4420]);
    // 230 s: from 46 s to 1000 − 690 = 310 s, more than 30 %.
    expect(needOf({ runOut: [5000, 5378.35], window: [4000, 5000] })).toEqual([4046, 4300]);
  });

  test('keeps a quarter of the window around the point that is safest where the spread would leave less', () => {
    // One deviation is 300 s of 1000: the safest point is 1000 × 0.2 ÷ 3.2 = 62.5 s in it, a quarter 250 s.
    expect(needOf({ runOut: [5000, 5493.5], window: [4000, 5000] })).toEqual([3937.5, 4187.5]);
  });

  test('reckons in working time: a break lies between two moments of the window and adds nothing to it', () => {
    // 20 s and 300 s of work after the opening, ten minutes’ break after 100 s of it.
    const figures = { runOut: [5600, 5764.5], window: [4000, 5600] } as const;
    expect(needOf(figures, stop(4100, 4700))).toEqual([4020, 4900]);
    // A break between the early point and the mean makes no deviation wider.
    const late = { runOut: [5000, 5764.5], window: [4000, 5000] } as const;
    expect(needOf(late, stop(5050, 5650))).toEqual([4020, 4300]);
  });

  test('without a window begins two deviations before the early point, at which the tape may end', () => {
    expect(needOf({ runOut: [5000, 5164.5] })).toEqual([4800, 5000]);
  });
});

test('needsOf() leaves out what outlasts the run, what is joined already, and what comes in more than four hours', () => {
  const soon = [14_399, 15_000] as const;
  const slots = [
    slotOf({ slot: 'due', runOut: soon }),
    slotOf({ slot: 'outlasts', runOut: soon, outlasts: true }),
    slotOf({ slot: 'joined', runOut: soon, tapes: 2, running: 0 }),
    slotOf({ slot: 'second-tape', runOut: soon, tapes: 2, running: 1 }),
    slotOf({ slot: 'far', runOut: [14_400, 15_000] }),
  ];
  expect(needsOf(lineOf(slots)).map(({ slot }) => slot)).toEqual(['due', 'second-tape']);
});

describe('walkQuestion()', () => {
  test('asks with the line’s own times, the walking order, and how fast each reel empties', () => {
    const slots = [
      slotOf({ slot: 'M1-F-010', runOut: [5000, 5164.5], window: [4000, 5000] }),
      slotOf({ slot: 'M1-F-002', runOut: [9000, 9164.5], window: [8000, 9000] }),
      slotOf({ slot: 'M1-F-003', runOut: [9000, 9164.5], window: [8000, 9000] }),
    ];
    const known = [[{ startMs, slots: ['M1-F-010'] }], []];
    const asked = walkQuestion(lineOf(slots), {
      operators: 2,
      known,
      remedies: true,
      keepShares: true,
      without: new Set(['M1-F-003']),
    });
    expect(asked.slots.map(({ slot }) => slot)).toEqual(['M1-F-010', 'M1-F-002']);
    expect(asked.question).toEqual({
      walks: {
        nowMs: startMs,
        walkSeconds: 60,
        eachSeconds: 75,
        splices: [
          { slot: 'M1-F-010', opensMs: at(4020), closesMs: at(4300) },
          { slot: 'M1-F-002', opensMs: at(8020), closesMs: at(8300) },
        ],
      },
      operators: 2,
      walkingOrder: ['M1-F-002', 'M1-F-010'],
      // Six placements in 25 s, 4 % lost: 0.25 parts a second.
      partsPerSecond: [0.25, 0.25],
      remediesFor: 3,
      keepShares: true,
      known,
    });
    const plain = walkQuestion(lineOf(slots), { operators: 1 }).question;
    expect(plain).toMatchObject({ remediesFor: 0, keepShares: false });
    expect('known' in plain).toBe(false);
  });

  /** Opening and closing of the one splice asked for. */
  const asked = (figures: Figures, calendar?: WorkingTime) => {
    const [splice] = walkQuestion(lineOf([slotOf(figures)], calendar), { operators: 1 }).question.walks
      .splices;
    return [second(splice!.opensMs), second(splice!.closesMs)].map((value) => Math.round(value));
  };

  test('takes a window as far as it truly goes where nobody can be there in its safe part', () => {
    // The safe part ends after 100 s; a minute’s walk and 75 s of work take 135 s.
    expect(asked({ runOut: [800, 882.25], window: [-50, 450] })).toEqual([-40, 135]);
    // The window itself closes after 120 s: till then, though 75 s of work begun after a minute end later.
    expect(asked({ runOut: [120, 120], window: [20, 120] })).toEqual([20, 120]);
    // It is shorter than the work: begun as it opens.
    expect(asked({ runOut: [500, 500], window: [440, 500] })).toEqual([440, 515]);
    // Without a window the tape truly ends at its mean.
    expect(asked({ runOut: [100, 264.5] })).toEqual([-100, 135]);
    expect(asked({ runOut: [10, 92.25] })).toEqual([-90, 92]);
  });

  describe('where a break cuts the window', () => {
    // 1600 s long, and 1000 s of work where ten minutes of it are a break: safe till 300 s of work are done, else till 480 s.
    const figures = { runOut: [6600, 6764.5], window: [4000, 5600] } as const;

    test('asks for the time before it where the work fits there', () => {
      // Safe from 4020 s on; 75 s of work before a break at 4095 s.
      expect(asked(figures, stop(4095, 4695))).toEqual([4020, 4095]);
      expect(asked(figures, stop(4200, 4800))).toEqual([4020, 4200]);
      // From the walk’s end on where the window is open already.
      expect(asked({ ...figures, window: [-100, 1500] }, stop(135, 735))).toEqual([-80, 135]);
    });

    test('asks for the time after it, a walk later, where it does not', () => {
      expect(asked(figures, stop(4094, 4694))).toEqual([4754, 4900]);
      // 75 s from a minute after the break, where the safe part has ended by then.
      expect(asked({ runOut: [6600, 6764.5], window: [4000, 5000] }, stop(4050, 4900))).toEqual([4960, 5035]);
      // A walk begun before the window opens and in the break is not begun.
      expect(asked(figures, stop(3900, 3980))).toEqual([4040, 4480]);
    });

    test('changes nothing where the break is over before, or comes after the safe part', () => {
      expect(asked(figures, stop(3900, 3960))).toEqual([4020, 4480]);
      expect(asked(figures, stop(4300, 4900))).toEqual([4020, 4300]);
      expect(asked(figures, stop(4299, 4899))).toEqual([4020, 4299]);
    });
  });
});

test('toWalkPlan() puts all walks in order of time, then of operators, and remedies to the soonest missed', () => {
  const slots = ['a', 'b', 'c', 'd'].map((slot) => slotOf({ slot, runOut: [1, 2] }));
  const walk = (start: number, ...needs: number[]) => ({
    startMs: at(start),
    endMs: at(start + 100),
    splices: needs.map((need) => ({ need, slot: slots[need]?.slot ?? 'gone', beginsMs: at(start + 60) })),
  });
  const miss = (need: number, by: number) => ({
    need,
    slot: slots[need]?.slot ?? 'gone',
    byMs: at(by),
    reason: 'crowdedOut' as const,
  });
  const answer: WalkAnswer = {
    shares: [
      { walks: [walk(300, 0, 9), walk(500, 1)], missed: [miss(3, 90)] },
      { walks: [walk(200, 2), walk(300)], missed: [miss(9, 80), miss(1, 70)] },
    ],
    remedies: [[{ cost: 1 } as never], [{ cost: 2 } as never]], // told apart only
  };
  const plan = toWalkPlan(answer, slots);
  expect(plan.walks.map(({ startMs: begin, operator }) => [second(begin), operator])).toEqual([
    [200, 1],
    [300, 0],
    [300, 1],
    [500, 0],
  ]);
  // What a slot gone meanwhile was to get is left out.
  expect(plan.walks[1]).toMatchObject({
    endMs: at(400),
    splices: [{ slot: { slot: 'a' }, beginsMs: at(360) }],
  });
  expect(plan.walks[1]?.splices).toHaveLength(1);
  expect(plan.missed.map(({ slot, byMs, remedies }) => [slot.slot, second(byMs), remedies])).toEqual([
    ['b', 70, [{ cost: 1 }]],
    ['d', 90, []],
  ]);
  expect(plan.known).toEqual([
    [
      { startMs: at(300), slots: ['a', 'gone'] },
      { startMs: at(500), slots: ['b'] },
    ],
    [
      { startMs: at(200), slots: ['c'] },
      { startMs: at(300), slots: [] },
    ],
  ]);
});
