// The floor's climate as a line's rule. Figures: J-STD-033 table 7-1, class C (the shortest of an unknown body), level 3: 7 days at
// 30 °C / 60 %, 1 day at 30 °C / 70 %, half a day at 35 °C / 90 %; class A, level 3 at 25 °C / 50 %: 9 days.

import { expect, test } from 'vitest';
import { isBeyondTable, lineClimate } from '../../../shared/moisture/line-climate.ts';
import { reelLife } from '../../../shared/moisture/reel-life.ts';
import { beginStory, startMs, tellPlant } from '../floor/story.ts';

const dayMs = 86_400_000;

function livesIn(
  climate: { readonly celsius: number; readonly humidity: number } | null,
  bodyMm: number | null,
) {
  const story = beginStory();
  tellPlant(story);
  if (climate) story.tell('line.climate-ruled', { line: 'L1', ...climate });
  const floor = story.floor();
  const part = { level: '3', bodyMm } as const;
  const life = (line: string | null, openedMs?: number) =>
    reelLife(floor, '~x', { line, part, nowMs: startMs + dayMs / 4, ...(openedMs && { openedMs }) });
  return { floor, life };
}

test('without an entry the floor is 30 °C and 60 %', () => {
  const { floor, life } = livesIn(null, null);
  expect(lineClimate(floor, 'L1')).toMatchObject({
    entered: { celsius: 30, humidity: 60 },
    isEntered: false,
  });
  expect(life('L1')?.leftSeconds).toBe(7 * 86_400);
});

test('a closed bag and an open one are computed in the climate of their line alone', () => {
  const { life } = livesIn({ celsius: 30, humidity: 70 }, null);
  expect(life('L1')).toMatchObject({ isOpened: false, leftSeconds: 86_400 });
  expect(life('L1', startMs)).toMatchObject({ leftSeconds: 0.75 * 86_400, expiresMs: startMs + dayMs });
  expect(life('L2')?.leftSeconds).toBe(7 * 86_400);
  expect(life(null)?.leftSeconds).toBe(7 * 86_400);
});

test('a milder floor gives more', () => {
  expect(livesIn({ celsius: 25, humidity: 50 }, 3.5).life('L1')?.leftSeconds).toBe(9 * 86_400);
});

test.each([
  { celsius: 38, humidity: 40 },
  { celsius: 22, humidity: 95 },
])('beyond the table, as at $celsius °C and $humidity %, its worst corner counts', (climate) => {
  const { floor, life } = livesIn(climate, null);
  expect(isBeyondTable(climate)).toBe(true);
  expect(lineClimate(floor, 'L1')).toEqual({
    entered: climate,
    isEntered: true,
    computed: { celsius: 35, humidity: 90 },
  });
  expect(life('L1')?.leftSeconds).toBe(86_400 / 2);
});

test('the edge of the table is not beyond it', () => {
  expect(isBeyondTable({ celsius: 35, humidity: 90 })).toBe(false);
});
