// Which feeders are parked: against plain ways that try every set of moves. Move i waits for move j where i's new place overlaps j's old one.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cycleGroups, fewestParked, movesOnCycles } from '../../../shared/order/parking.ts';

type Waits = readonly (readonly number[])[];

/** Up to eight moves; each may wait for any, itself among them. */
const someWaits: fc.Arbitrary<Waits> = fc.integer({ min: 1, max: 8 }).chain((count) =>
  fc.array(fc.uniqueArray(fc.integer({ min: 0, max: count - 1 }), { maxLength: 4 }), {
    minLength: count,
    maxLength: count,
  }),
);

/** Whether the moves that are not parked can be carried out one after the other: again and again one that waits for none of the others left. */
function canBeDone(waits: Waits, parked: ReadonlySet<number>): boolean {
  const left = new Set(waits.map((_, at) => at).filter((at) => !parked.has(at)));
  for (;;) {
    const free = [...left].find((at) => waits[at]!.every((other) => other === at || !left.has(other)));
    if (free === undefined) return left.size === 0;
    left.delete(free);
  }
}

/** The least number of parked moves, every set tried. */
function fewest(waits: Waits): number {
  let least = waits.length;
  for (let bits = 0; bits < 1 << waits.length; bits++) {
    const parked = new Set(waits.map((_, at) => at).filter((at) => bits & (1 << at)));
    if (parked.size < least && canBeDone(waits, parked)) least = parked.size;
  }
  return least;
}

/** Whom a move waits for, and for whom those wait, and so on. */
function reach(waits: Waits, from: number): ReadonlySet<number> {
  const seen = new Set<number>();
  const open = waits[from]!.filter((other) => other !== from);
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if (seen.has(at)) continue;
    seen.add(at);
    open.push(...waits[at]!.filter((other) => other !== at));
  }
  return seen;
}

describe('fewestParked()', () => {
  test.each<[what: string, waits: Waits, parked: number]>([
    ['nothing waits', [[], [], []], 0],
    ['a chain', [[1], [2], []], 0],
    ['a move that overlaps its own old place', [[0]], 0],
    ['two that change places', [[1], [0]], 1],
    ['three in a ring', [[1], [2], [0]], 1],
    ['two rings apart', [[1], [0], [3], [2]], 2],
    // A wide feeder on two rings at once: it alone is enough.
    ['two rings through one wide feeder', [[1, 2], [0], [0]], 1],
    [
      'all wait for all',
      [
        [1, 2, 3],
        [0, 2, 3],
        [0, 1, 3],
        [0, 1, 2],
      ],
      3,
    ],
  ])('%s', (_, waits, parked) => {
    const choice = fewestParked(waits);
    expect(choice.parked).toHaveLength(parked);
    expect(choice.isProven).toBe(true);
    expect(canBeDone(waits, new Set(choice.parked))).toBe(true);
  });

  test('parks as few as trying every set of moves does, named once and in order', () => {
    fc.assert(
      fc.property(someWaits, (waits) => {
        const { parked, isProven } = fewestParked(waits);
        expect(canBeDone(waits, new Set(parked))).toBe(true);
        expect(isProven).toBe(true);
        expect(parked).toHaveLength(fewest(waits));
        expect(parked).toEqual([...new Set(parked)].sort((a, b) => a - b));
      }),
      { numRuns: 150 },
    );
  });

  test('gives a set that can be carried out also where the search is cut short, and does not call it proven', () => {
    const crowd = (count: number): Waits =>
      Array.from({ length: count }, (_, at) =>
        Array.from({ length: count }, (_other, to) => to).filter(
          (to) => to !== at && (to * 7 + at * 3) % 5 < 3,
        ),
      );
    const short = fewestParked(crowd(14), 1);
    expect(short.isProven).toBe(false);
    expect(canBeDone(crowd(14), new Set(short.parked))).toBe(true);
    const whole = fewestParked(crowd(14));
    expect(whole.isProven).toBe(true);
    expect(whole.parked.length).toBeLessThanOrEqual(short.parked.length);
  });
});

describe('movesOnCycles() and cycleGroups()', () => {
  test('name the moves on rings or between rings, and which belong together', () => {
    fc.assert(
      fc.property(someWaits, (waits) => {
        const all = waits.map((_, at) => at);
        const reaches = all.map((at) => reach(waits, at));
        const isOnRing = (at: number) => reaches[at]!.has(at);
        const isBetween = (at: number) =>
          isOnRing(at) ||
          (all.some((ring) => isOnRing(ring) && reaches[ring]!.has(at)) &&
            all.some((ring) => isOnRing(ring) && reaches[at]!.has(ring)));
        const core = all.filter(isBetween);
        expect(movesOnCycles(waits)).toEqual(core);
        const groups = cycleGroups(waits);
        for (const at of all) expect((groups[at] ?? -2) >= 0).toBe(core.includes(at));
        // Moves of the core that wait for one another, either way, stand in one group, and no others do.
        const joined = new Map(core.map((at) => [at, at]));
        for (let round = 0; round < core.length; round++)
          for (const at of core)
            for (const other of waits[at]!) {
              if (!joined.has(other)) continue;
              const least = Math.min(joined.get(at)!, joined.get(other)!);
              joined.set(at, least);
              joined.set(other, least);
            }
        for (const one of core)
          for (const other of core)
            expect(groups[one] === groups[other]).toBe(joined.get(one) === joined.get(other));
      }),
      { numRuns: 150 },
    );
  });
});
