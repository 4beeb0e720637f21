import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type LayoutAnswer, type LayoutQuestion, layoutFor } from '../../../shared/changeover/layout.ts';
import { chanceBelow, seededChance } from '../../../shared/kit/chance.ts';

interface Fixture {
  name: string;
  S: number;
  cur: Record<string, number>;
  width: Record<string, number>;
  req: string[];
  optimum: Record<'A' | 'B', { cost: number }>;
}
const fixtures: Fixture[] = JSON.parse(
  readFileSync(new URL('../../fixtures/changeover/changeover.json', import.meta.url), 'utf8'),
).instances;

function ask(one: Fixture, move: number): LayoutQuestion {
  const widthOf = (id: string) => one.width[id] ?? 1;
  return {
    positions: one.S,
    current: Object.entries(one.cur).map(([id, start]) => ({ id, start, width: widthOf(id) })),
    required: one.req.map((id) => ({ id, width: widthOf(id) })),
    costs: { move, takeOut: 1, putIn: 1 },
  };
}

/** Fails unless the layout holds every required feeder without overlap and costs what it says. */
function expectBuildable(question: LayoutQuestion, answer: LayoutAnswer): void {
  const widths = new Map([...question.current, ...question.required].map((one) => [one.id, one.width]));
  const taken = new Set<number>();
  for (const [id, start] of Object.entries(answer.starts)) {
    for (let at = start; at < start + (widths.get(id) ?? 0); at++) {
      expect(at).toBeLessThanOrEqual(question.positions);
      expect(taken.has(at)).toBe(false);
      taken.add(at);
    }
  }
  for (const feeder of question.required) expect(answer.starts[feeder.id]).toBeGreaterThan(0);
  const costs = question.costs ?? { move: 1, takeOut: 1, putIn: 1 };
  const moved = question.current.filter(
    (one) => answer.starts[one.id] !== undefined && answer.starts[one.id] !== one.start,
  );
  const gone = question.current.filter((one) => answer.starts[one.id] === undefined);
  expect(moved.map((one) => one.id).sort()).toEqual([...answer.move].sort());
  expect(gone.map((one) => one.id).sort()).toEqual([...answer.takeOut].sort());
  expect(answer.cost).toBe(
    moved.length * costs.move + gone.length * costs.takeOut + answer.putIn.length * costs.putIn,
  );
}

describe('layoutFor()', () => {
  // Exhaustive optima of 64 banks under two cost vectors: tests/fixtures/changeover/README.md.
  test.each(fixtures)('meets the exhaustive least handling of $name', (one) => {
    for (const [vector, move] of [
      ['A', 1],
      ['B', 2],
    ] as const) {
      const question = ask(one, move);
      const answer = layoutFor(question);
      if (!answer.ok) throw new Error(JSON.stringify(answer.error));
      expectBuildable(question, answer.value);
      expect(answer.value.cost).toBe(one.optimum[vector].cost);
      expect(answer.value.isProven).toBe(true);
    }
  });

  test('counts each handling at its own cost: by hand', () => {
    // a stays, b makes room for the wide one, c moves out of its way, d comes.
    const question: LayoutQuestion = {
      positions: 5,
      current: [
        { id: 'a', start: 1, width: 1 },
        { id: 'b', start: 3, width: 1 },
        { id: 'c', start: 4, width: 1 },
      ],
      required: [
        { id: 'a', width: 1 },
        { id: 'c', width: 1 },
        { id: 'd', width: 3 },
      ],
      costs: { move: 4, takeOut: 2, putIn: 7 },
    };
    const answer = layoutFor(question);
    if (!answer.ok) throw new Error(JSON.stringify(answer.error));
    expectBuildable(question, answer.value);
    expect(answer.value).toMatchObject({
      cost: 2 + 4 + 7,
      keep: ['a'],
      move: ['c'],
      takeOut: ['b'],
      putIn: ['d'],
    });
    // Room in the middle is no room at the end: nothing is handled where the gap is wide enough.
    const wide = layoutFor({ ...question, positions: 7 });
    expect(wide).toMatchObject({
      ok: true,
      value: { cost: 7, move: [], takeOut: [], starts: { a: 1, c: 4, d: 5 } },
    });
  });

  test('says how many positions are missing', () => {
    const required = [
      { id: 'a', width: 2 },
      { id: 'b', width: 4 },
    ];
    const answer = layoutFor({ positions: 5, current: [], required });
    expect(answer).toEqual({ ok: false, error: { code: 'no-room', over: 1, feeders: ['b', 'a'] } });
  });

  test('builds a bank of 120 positions, unproven where it cut corners', () => {
    const chance = seededChance(3);
    const current: { id: string; width: number; start: number }[] = [];
    for (let start = 1; start <= 116; ) {
      const width = chance() < 0.7 ? 1 : 1 + chanceBelow(chance, 4);
      if (chance() < 0.9) current.push({ id: `c${start}`, width, start });
      start += width;
    }
    const required = [
      ...current.filter(() => chance() < 0.6),
      ...Array.from({ length: 14 }, (_, at) => ({ id: `n${at}`, width: 1 + (at % 4) })),
    ];
    const question = {
      positions: 120,
      current,
      required: required.map(({ id, width }) => ({ id, width })),
      mostStates: 300,
    };
    const answer = layoutFor(question);
    if (!answer.ok) throw new Error(JSON.stringify(answer.error));
    expectBuildable(question, answer.value);
    expect(answer.value.isProven).toBe(false);
  });
});
