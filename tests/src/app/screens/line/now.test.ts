import { expect, test } from 'vitest';
import type { SlotOutlook } from '../../../../../shared/outlook/line.ts';
import type { PlannedWalk, WalkPlan } from '../../../../../shared/outlook/walks.ts';
import { marksOf } from '../../../../../src/app/screens/line/Axis.tsx';
import { geometryOf, hoursUntil, ticksShown } from '../../../../../src/app/screens/line/axis.ts';
import { dueBy, nowOf } from '../../../../../src/app/screens/line/now.ts';

type Level = SlotOutlook['warning']['level'];

/** As much of a slot as is read here. */
const slotOf = (slot: string, level: Level = 'due', closes: number | null = 900_000): SlotOutlook =>
  ({
    slot,
    warning: { level },
    forecast: {
      runOutMs: { early: 800_000, expected: 1_000_000, late: 1_200_000 },
      windowMs: closes === null ? null : { opens: 0, closes },
    },
  }) as unknown as SlotOutlook;

const walkOf = (startMs: number, ...slots: readonly SlotOutlook[]): PlannedWalk => ({
  operator: 0,
  startMs,
  endMs: startMs + 60_000,
  splices: slots.map((slot) => ({ slot, beginsMs: startMs })),
});

const planOf = (...walks: readonly PlannedWalk[]): WalkPlan => ({ walks, missed: [], known: [] });

const [a, b, c] = [slotOf('A'), slotOf('B', 'soon'), slotOf('C', 'late')];

test('with nothing open it is the first walk, and nobody has to take note', () => {
  const walk = walkOf(5, a);
  expect(nowOf([], planOf(walk, walkOf(9, b)))).toEqual({
    walk: { walk, number: 1 },
    loudest: null,
    waiting: [],
    elsewhere: 0,
  });
  expect(nowOf([], planOf()).walk).toBeNull();
  expect(nowOf([], null)).toEqual({ walk: null, loudest: null, waiting: [], elsewhere: 0 });
});

test('the walk that serves the loudest warning comes first, with all that warns along it', () => {
  const quiet = slotOf('Q', 'quiet');
  const serving = walkOf(9, quiet, c, a);
  const now = nowOf([a, b, c], planOf(walkOf(5, b), serving));
  expect(now.walk).toEqual({ walk: serving, number: 2 });
  expect(now.loudest).toBe(c);
  expect(now.waiting).toEqual([a, c]);
  expect(now.elsewhere).toBe(1);
});

test('a warning that no walk serves stands alone, also before there is a plan', () => {
  for (const plan of [planOf(walkOf(5, b)), null]) {
    const now = nowOf([a, b, c], plan);
    expect(now.walk).toBeNull();
    expect(now.waiting).toEqual([c]);
    expect(now.elsewhere).toBe(2);
  }
});

test('a walk is due by the first window that closes, or where none is known by the first tape that may end', () => {
  expect(dueBy(walkOf(0, slotOf('A', 'due', 700_000), slotOf('B', 'due', 600_000)))).toBe(600_000);
  expect(dueBy(walkOf(0, slotOf('A', 'due', 900_000), slotOf('B', 'due', null)))).toBe(800_000);
});

test('marks of walks stand at their moment or a little beside it, and not at a time that is not theirs', () => {
  const geometry = geometryOf({ nowMs: 0, zone: 'UTC', width: 720, hours: 2, scale: 1 }); // 0.1 px a second
  const at = (seconds: number) => walkOf(seconds * 1000, a);
  expect(marksOf([at(-60), at(200), at(300), at(2000), at(6980), at(7190)], geometry)).toEqual([
    { number: 1, left: 0 },
    { number: 2, left: 26 }, // 20 is taken by the first, 24 wide
    // 3 would stand at 52 instead of 30
    { number: 4, left: 200 },
    // 5 would be cut off at 698
  ]);
});

test('a narrow axis, or one with large letters, has fewer labels, so that none touch', () => {
  const gap = (width: number, scale: number) => {
    const geometry = geometryOf({ nowMs: 5 * 60_000, zone: 'UTC', width, hours: 2, scale });
    const at = ticksShown(geometry, 'now').map(geometry.toX);
    return Math.min(...at.slice(1).map((x, index) => x - (at[index] ?? 0)), at[0] ?? width);
  };
  for (const width of [175, 300, 390, 660]) expect(gap(width, 1)).toBeGreaterThanOrEqual(50);
  for (const width of [370, 660]) expect(gap(width, 2)).toBeGreaterThanOrEqual(100);
});

test('a long word for now has the room that it needs before the first label', () => {
  const first = (nowWord: string) => {
    const moments = Array.from({ length: 30 }, (_, at) => at * 60_000);
    const at = moments.map((nowMs) => {
      const geometry = geometryOf({ nowMs, zone: 'UTC', width: 700, hours: 2, scale: 1 });
      return geometry.toX(ticksShown(geometry, nowWord)[0] ?? Number.POSITIVE_INFINITY);
    });
    return Math.min(...at);
  };
  // Measured in Chromium with 14 px letters: "maintenant" is 82 px wide, half of "02:30" 19 px.
  expect(first('maintenant')).toBeGreaterThan(82 + 19);
  expect(first('now')).toBeLessThan(90);
});

test('an axis reaches as far as it must', () => {
  const hour = 3_600_000;
  expect([0.2, 0.5, 0.51, 3, 9, 30, 300].map((hours) => hoursUntil(hours * hour, 0))).toEqual([
    0.5, 0.5, 1, 4, 24, 48, 96,
  ]);
});
