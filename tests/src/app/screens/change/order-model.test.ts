import { describe, expect, test } from 'vitest';
import { neverStopping, workingTime } from '../../../../../shared/forecast/working-time.ts';
import { planOrder } from '../../../../../shared/order/plan.ts';
import {
  changeJob,
  emptyList,
  handlingOf,
  inOrder,
  type ListedJob,
  linePositions,
  moveById,
  moveJob,
  setByHand,
  toQuestion,
  usualMinutes,
  withoutBegun,
} from '../../../../../src/app/screens/change/order-model.ts';
import {
  beginStory,
  brookSetup,
  startMs,
  tellPlant,
  verified,
  wantedSlot,
} from '../../../../shared/floor/story.ts';

function floorOf() {
  const story = beginStory();
  tellPlant(story);
  story.tell('setup.taken', {
    ...brookSetup,
    setup: 'fern',
    product: 'Fern',
    slots: [
      wantedSlot('M1-F-001', 'R-100'),
      wantedSlot('M1-F-005', 'L-400', { positions: 3 }),
      wantedSlot('M1-F-009', 'X-1', { perPanel: 0 }),
    ],
  });
  story.tell('reel.verified', verified('M1-F-001', 'R-100'));
  return story.floor();
}

const job = (id: string, setup: string, more: Partial<ListedJob> = {}): ListedJob => ({
  id,
  setup,
  panels: 60,
  panelSeconds: 30,
  dueMs: null,
  isHeld: false,
  ...more,
});
const list = { ...emptyList, jobs: [job('a', 'brook-top-a'), job('b', 'fern', { isHeld: true })] };

describe('toQuestion()', () => {
  test('asks for placed parts once, with the widest feeder, beside what is loaded', () => {
    const question = toQuestion(floorOf(), 'L1', { list, calendar: neverStopping, nowMs: startMs });
    expect(question).toMatchObject({
      capacity: 40,
      loaded: ['R-100'],
      locks: [{ job: 'b', place: 1 }],
      jobs: [
        { id: 'a', parts: ['R-100', 'C-200', 'U-300'], runMinutes: 30 },
        { id: 'b', parts: ['R-100', 'L-400'], runMinutes: 30 },
      ],
    });
    expect(question.widths?.['L-400']).toBe(3);
    const plan = planOrder(question, [0, 1]);
    expect(plan.ok && plan.value.changes).toBe(3);
  });

  test('counts working minutes to the due time, none where it is past', () => {
    const calendar = workingTime([{ fromMs: startMs + 600_000, toMs: startMs + 1_200_000 }]);
    const dueIn = (seconds: number) =>
      toQuestion(floorOf(), 'L1', {
        list: { ...emptyList, jobs: [job('a', 'fern', { dueMs: startMs + seconds * 1000 })] },
        calendar,
        nowMs: startMs,
      }).jobs[0]?.dueMinutes;
    expect(dueIn(1800)).toBe(20);
    expect(dueIn(-60)).toBe(0);
  });

  test('begins when the job in hand is done: what is due before that is late by all of it', () => {
    const ask = (dueSeconds: number) => {
      const due = { dueMs: startMs + dueSeconds * 1000 };
      return toQuestion(floorOf(), 'L1', {
        list: { ...emptyList, jobs: [job('a', 'fern', due)] },
        calendar: neverStopping,
        nowMs: startMs,
        beforeSeconds: 4 * 3600,
      });
    };
    // Half an hour of panels behind four hours of the job in hand: three hours are not enough, five are.
    const late = (dueSeconds: number) => {
      const plan = planOrder(ask(dueSeconds), [0]);
      return plan.ok ? plan.value.lateMinutes - (plan.value.loads[0]?.minutes ?? 0) : null;
    };
    expect(ask(5 * 3600).jobs[0]?.dueMinutes).toBe(60);
    expect(late(3 * 3600)).toBe(90);
    expect(planOrder(ask(5 * 3600), [0])).toMatchObject({ ok: true, value: { lateMinutes: 0 } });
  });

  test('names a product that does not fit, by how many positions', () => {
    const floor = floorOf();
    floor.setups.set('wide', {
      ...brookSetup,
      setup: 'wide',
      takenMs: 0,
      slots: [wantedSlot('M1-F-001', 'BIG', { positions: 43 })],
    });
    const question = toQuestion(floor, 'L1', {
      list: { ...emptyList, jobs: [job('w', 'wide')] },
      calendar: neverStopping,
      nowMs: startMs,
    });
    const plan = planOrder(question, [0]);
    expect(plan).toMatchObject({
      ok: false,
      error: [{ code: 'job-too-wide', job: 'w', over: 3, parts: ['BIG'] }],
    });
  });
});

describe('handlingOf() and setByHand()', () => {
  const learnt = { putIn: { minutes: 0.75, handlings: 12, changeovers: 3 }, takeOut: null };

  test('go by what was learnt, else by what is usual, and say which', () => {
    expect(handlingOf(list, learnt)).toEqual({
      putIn: { minutes: 0.75, from: 'learnt', learnt: learnt.putIn },
      takeOut: { minutes: usualMinutes.takeOut, from: 'usual', learnt: null },
      perChange: { minutes: usualMinutes.perChange, from: 'usual', learnt: null },
    });
    expect(handlingOf(list, null).putIn).toMatchObject({ minutes: usualMinutes.putIn, from: 'usual' });
  });

  test('let the hand go first, 0 too, until it is taken back', () => {
    const set = setByHand(setByHand(list, 'putIn', 0), 'takeOut', 4);
    expect(handlingOf(set, learnt)).toMatchObject({
      putIn: { minutes: 0, from: 'hand' },
      takeOut: { minutes: 4 },
    });
    expect(handlingOf(setByHand(set, 'putIn', null), learnt)).toMatchObject({
      putIn: { from: 'learnt' },
      takeOut: { minutes: 4, from: 'hand' },
    });
  });

  test('are what the question is asked with', () => {
    const question = toQuestion(floorOf(), 'L1', {
      list: setByHand(list, 'takeOut', 4),
      calendar: neverStopping,
      nowMs: startMs,
      learnt,
    });
    expect(question.handling).toEqual({ putIn: 0.75, takeOut: 4, perChange: usualMinutes.perChange });
  });
});

describe('linePositions()', () => {
  test('adds up all banks', () => {
    expect(linePositions(floorOf(), 'L1')).toBe(40);
  });
});

describe('moveById(), changeJob() and withoutBegun()', () => {
  test('find the job wherever it stands now, and leave the list alone where it is gone', () => {
    expect(moveById(list, 'b', -1).jobs.map(({ id }) => id)).toEqual(['b', 'a']);
    expect(moveById(list, 'gone', 1)).toBe(list);
    expect(changeJob(list, 'a', (each) => ({ ...each, isHeld: true })).jobs[0]?.isHeld).toBe(true);
    expect(changeJob(list, 'a', () => null).jobs.map(({ id }) => id)).toEqual(['b']);
    expect(withoutBegun(list, new Set(['a'])).jobs.map(({ id }) => id)).toEqual(['b']);
    expect(withoutBegun(list, new Set(['gone']))).toBe(list);
  });
});

describe('moveJob() and inOrder()', () => {
  test('swap neighbours, and nothing at the ends', () => {
    expect(moveJob(list, 0, 1).jobs.map((each) => each.id)).toEqual(['b', 'a']);
    expect(moveJob(list, 0, -1)).toBe(list);
    expect(moveJob(list, 1, 1)).toBe(list);
    expect(inOrder(list, [1, 0]).jobs.map((each) => each.id)).toEqual(['b', 'a']);
  });
});

describe('due times that cannot be met, and products that do not fit', () => {
  test('name the job and by how much: minutes late, positions over', () => {
    const due = { jobs: [job('a', 'brook-top-a', { dueMs: startMs + 600_000 }), job('b', 'fern')] };
    const asked = toQuestion(floorOf(), 'L1', { list: due, calendar: neverStopping, nowMs: startMs });
    const plan = planOrder(asked, [0, 1]);
    if (!plan.ok) throw new Error('fits by construction');
    const [first, second] = plan.value.loads;
    expect(first?.lateMinutes).toBeCloseTo((first?.endMinutes ?? 0) - 10, 9);
    expect(first?.lateMinutes).toBeGreaterThan(20);
    expect(second?.lateMinutes).toBe(0);
    expect(planOrder({ ...asked, capacity: 2 }, [0, 1])).toMatchObject({
      ok: false,
      error: [
        { code: 'job-too-wide', job: 'a', over: 1 },
        { code: 'job-too-wide', job: 'b', over: 2 },
      ],
    });
  });
});
