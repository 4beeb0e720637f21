// A record in any order, with gaps and overlaps, as one line of time without either: of two places the worse, of none the floor.

import { describe, expect, test } from 'vitest';
import { type AirSpan, makeTimeline } from '../../../shared/moisture/timeline.ts';

const hour = 3_600_000;
const usual = { celsius: 25, humidity: 50 };
const stay = (
  where: AirSpan['where'],
  from: number,
  to: number | null,
  air: readonly [celsius: number | null, humidity: number | null] = [null, null],
): AirSpan => ({
  where,
  fromMs: from * hour,
  toMs: to === null ? null : to * hour,
  celsius: air[0],
  humidity: air[1],
});
const lineOf = (
  history: readonly AirSpan[],
  opened: number,
  now: number,
  climate: typeof usual | null = usual,
) => makeTimeline(history, opened * hour, now * hour, climate);
const pieces = (...args: Parameters<typeof lineOf>) =>
  lineOf(...args).pieces.map(({ where, fromMs, toMs, celsius, humidity }) => [
    where,
    fromMs / hour,
    toMs / hour,
    celsius,
    humidity,
  ]);
const codes = (...args: Parameters<typeof lineOf>) => lineOf(...args).notes.map(({ code }) => code);

describe('makeTimeline()', () => {
  test('takes the worse of two places: floor before dry storage before the oven, whatever their air', () => {
    expect(pieces([stay('dry', 0, 10, [20, 5]), stay('floor', 4, 6, [20, 1])], 0, 10)).toEqual([
      ['dry', 0, 4, 20, 5],
      ['floor', 4, 6, 20, 1],
      ['dry', 6, 10, 20, 5],
    ]);
    expect(
      pieces([stay('bake', 0, 10, [125, 90]), stay('dry', 2, 3, [20, 5])], 0, 10).map(([where]) => where),
    ).toEqual(['bake', 'dry', 'bake']);
  });

  test('takes the moister of two stays in one place, and of two as moist the warmer; air unknown is no worse', () => {
    const both = (a: AirSpan, b: AirSpan) => [pieces([a, b], 0, 5), pieces([b, a], 0, 5)];
    const moist = [['floor', 0, 5, 20, 70]];
    expect(both(stay('floor', 0, 5, [20, 70]), stay('floor', 0, 5, [30, 60]))).toEqual([moist, moist]);
    const warm = [['floor', 0, 5, 30, 60]];
    expect(both(stay('floor', 0, 5, [30, 60]), stay('floor', 0, 5, [20, 60]))).toEqual([warm, warm]);
    const cold = [['dry', 0, 5, 0.5, 5]];
    expect(both(stay('dry', 0, 5, [0.5, 5]), stay('dry', 0, 5, [null, 5]))).toEqual([cold, cold]);
    const hardly = [['dry', 0, 5, 20, 0.5]];
    expect(both(stay('dry', 0, 5, [20, 0.5]), stay('dry', 0, 5, [20, null]))).toEqual([hardly, hardly]);
  });

  test('counts a gap as floor in the climate before it, and before any floor in that of the first', () => {
    const history = [
      stay('floor', 6, 8, [22, 40]),
      stay('dry', 2, 4, [20, 5]),
      stay('floor', 10, 12, [28, 60]),
    ];
    expect(pieces(history, 0, 14)).toEqual([
      ['floor', 0, 2, 22, 40],
      ['dry', 2, 4, 20, 5],
      ['floor', 4, 6, 22, 40],
      ['floor', 6, 8, 22, 40],
      ['floor', 8, 10, 22, 40],
      ['floor', 10, 12, 28, 60],
      ['floor', 12, 14, 28, 60],
    ]);
    expect(lineOf(history, 0, 14).firstClimate).toEqual({ celsius: 22, humidity: 40 });
    expect(codes(history, 0, 14)).toEqual(['gapAsFloor', 'gapAsFloor', 'gapAsFloor', 'gapAsFloor']);
  });

  test('takes the worse of two stays that begin the record on the floor, in whichever order they are told', () => {
    const [mild, moist] = [stay('floor', 5, 6, [22, 40]), stay('floor', 5, 6, [22, 70])];
    for (const history of [
      [mild, moist],
      [moist, mild],
    ])
      expect(lineOf(history, 0, 8).firstClimate).toEqual({ celsius: 22, humidity: 70 });
  });

  test('takes the usual climate where no stay on the floor tells both its figures, and the standard one where there is none', () => {
    const half = [stay('floor', 0, 5, [22, null]), stay('dry', 5, 6, [20, 5])];
    expect(lineOf(half, 0, 8).firstClimate).toEqual(usual);
    expect(pieces(half, 0, 5)).toEqual([['floor', 0, 5, 22, 50]]);
    expect(codes(half, 0, 6)).toEqual([]);
    expect(lineOf(half, 0, 8, null).firstClimate).toEqual({ celsius: 30, humidity: 60 });
    expect(codes(half, 0, 6, null)).toEqual(['standardClimate']);
  });

  test('leaves out what was over before the opening and what begins later than now, and says so', () => {
    const early = stay('dry', -5, -1, [20, 5]);
    const late = stay('dry', 12, 14, [20, 5]);
    const floor = stay('floor', 0, null, [25, 50]);
    expect(pieces([early, floor, late], 0, 10)).toEqual([['floor', 0, 10, 25, 50]]);
    expect(codes([early, floor, late], 0, 10)).toEqual(['beforeOpening', 'afterNow']);
    expect(codes([floor], 0, 10)).toEqual([]);
    expect(pieces([stay('dry', -5, 3, [20, 5]), floor], 0, 10).map(([where]) => where)).toEqual(['floor']);
    expect(codes([stay('floor', 0, 10)], 0, 10)).toEqual([]);
    expect(codes([stay('floor', 0, 11)], 0, 10)).toEqual(['afterNow']);
  });

  test('tells an overlap once, from its beginning to its end', () => {
    const history = [
      stay('dry', 0, 10, [20, 5]),
      stay('floor', 2, 6, [25, 50]),
      stay('bake', 3, 5, [125, null]),
    ];
    const notes = lineOf(history, 0, 10).notes.filter(({ code }) => code === 'overlap');
    expect(notes).toHaveLength(1);
  });

  test('of stays on the floor that begin at this very moment takes those that last, and of them the worst', () => {
    const now = (history: readonly AirSpan[]) => lineOf(history, 0, 10).climateFromNow;
    expect(now([stay('floor', 0, 10, [25, 50])])).toBeNull();
    const mild = stay('floor', 10, null, [22, 40]);
    const hot = stay('floor', 10, 20, [30, 80]);
    expect(now([mild, hot])).toEqual({ celsius: 30, humidity: 80 });
    expect(now([hot, mild])).toEqual({ celsius: 30, humidity: 80 });
    expect(now([stay('floor', 10, 10, [35, 90]), mild])).toEqual({ celsius: 22, humidity: 40 });
    expect(now([stay('floor', 10, 10, [35, 90])])).toEqual({ celsius: 35, humidity: 90 });
    expect(now([stay('dry', 10, null, [20, 5])])).toBeNull();
  });
});
