import { describe, expect, test } from 'vitest';
import type { ChangeTimes, TimeMark } from '../../../../../shared/changeover/times.ts';
import { pictureTimes } from '../../../../../src/app/screens/change/times-picture.ts';

const minute = 60_000;
const mark = (who: string, from: number, to: number): TimeMark => ({
  kind: 'step',
  what: `${who}${to}`,
  who,
  fromMs: from * minute,
  atMs: to * minute,
  seconds: (to - from) * 60,
  standingSeconds: 0,
  wasStanding: true,
});

function timesOf(stood: number | null, end: number, marks: readonly TimeMark[]): ChangeTimes {
  const persons = [...new Set(marks.map(({ who }) => who))].map((who) => ({
    who,
    seconds: 0,
    standingSeconds: 0,
    marks: 1,
  }));
  return {
    stoodMs: stood === null ? null : stood * minute,
    endMs: end * minute,
    marks,
    persons,
    externalSeconds: 0,
    standingSeconds: 0,
    pausedSeconds: 0,
  };
}

describe('pictureTimes()', () => {
  test('cuts at the last good panel: what was over before is not drawn', () => {
    const marks = [mark('ana', 0, 10), mark('ana', 10, 30), mark('bea', 0, 15), mark('bea', 40, 60)];
    const picture = pictureTimes(timesOf(20, 60, marks), 0, [{ fromMs: 50 * minute, toMs: 90 * minute }]);
    expect(picture.lanes.map(({ who, acts }) => [who, acts.map(({ left, width }) => [left, width])])).toEqual(
      [
        ['ana', [[0, 25]]],
        ['bea', [[50, 50]]],
      ],
    );
    expect(picture.stops).toEqual([{ left: 75, width: 25 }]);
  });

  test('begins at the planning while the old product still runs', () => {
    const picture = pictureTimes(timesOf(null, 40, [mark('ana', 20, 30)]), 20 * minute, []);
    expect(picture.lanes[0]?.acts.map(({ left, width }) => [left, width])).toEqual([[0, 50]]);
  });

  test.each([
    [0, [0]],
    [4, [0, 1, 2, 3, 4]],
    [40, [0, 10, 20, 30, 40]],
    [61, [0, 15, 30, 45, 60]],
    [20_000, [0, 4320, 8640, 12_960, 17_280]],
  ])('marks %s minutes at round ones, few enough to read', (whole, expected) => {
    expect(pictureTimes(timesOf(0, whole, []), 0, []).ticks.map(({ minutes }) => minutes)).toEqual(expected);
  });
});
