// Which feeders are parked: against plain ways that try every set of moves. Move i waits for move j where i's new place overlaps j's old one.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededChance } from '../../../shared/kit/chance.ts';
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

describe('the search for the fewest', () => {
  /** So many moves; each waits for others by chance, for about so many. */
  const tangle = (seed: number, count: number, each: number): Waits => {
    const chance = seededChance(seed);
    return Array.from({ length: count }, (_, at) =>
      Array.from({ length: count }, (_other, to) => to).filter((to) => to !== at && chance() < each / count),
    );
  };
  /** Rings of four with ways across, one beside the other. */
  const apart = (seed: number): Waits =>
    [0, 1, 2].flatMap((group) => tangle(seed + group, 7, 3).map((list) => list.map((to) => to + 7 * group)));
  /** The fewest nodes with which the answer is proven. */
  const nodesOf = (waits: Waits): number => {
    let low = 0;
    let high = 512;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (fewestParked(waits, middle).isProven) high = middle;
      else low = middle;
    }
    return high;
  };

  test('looks at few choices: how many, and what it has in hand where it may look at three only', () => {
    const seeds = [1, 2, 3, 4, 5];
    const graphs = [
      ...seeds.map((seed) => tangle(seed, 20, 6)),
      ...seeds.map((seed) => tangle(seed, 22, 4)),
      ...seeds.map(apart),
    ];
    const found = graphs.map((waits) => {
      const short = fewestParked(waits, 3).parked;
      expect(canBeDone(waits, new Set(short))).toBe(true);
      return [nodesOf(waits), fewestParked(waits).parked.join(' '), short.length];
    });
    expect(found).toEqual([
      [7, '0 3 4 5 9 10 11 13 14 19', 10],
      [7, '0 2 5 8 9 10 11 12 15', 9],
      [12, '3 5 6 7 9 10 13 18 19', 9],
      [5, '1 2 5 7 9 13 16 17', 8],
      [9, '0 1 2 3 4 8 10 11 15 16', 10],
      [10, '0 4 6 8 11 12 13 14 20', 9],
      [5, '4 7 8 10 12 14 16 21', 8],
      [4, '0 3 5 12 13 17 20', 7],
      [2, '3 4 5 8 9 15 21', 7],
      [3, '0 3 5 6 9 10', 6],
      [3, '0 2 3 7 13 15 19', 7],
      [3, '0 6 8 12 18 19', 6],
      [2, '0 5 11 12 14 18', 6],
      [1, '4 5 7 11 14 17', 6],
      [2, '0 4 7 10 16 20', 6],
    ]);
  });

  test('needs no choice where each ring stands alone, however many there are', () => {
    const rings = Array.from({ length: 30 }, (_, at) => [at - (at % 3) + ((at + 1) % 3)]);
    const choice = fewestParked(rings, 1);
    expect([choice.parked.length, choice.isProven]).toEqual([10, true]);
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
