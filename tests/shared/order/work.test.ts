// What the counters of a changing order look at: how much, and when they give a step up. The counts themselves are held against the plan
// elsewhere; here it is the speed that they are built for, told by themselves in places.

import { describe, expect, test } from 'vitest';
import { chanceBelow, seededChance } from '../../../shared/kit/chance.ts';
import { areaCounter } from '../../../shared/order/keep-by-area.ts';
import { unitCounter } from '../../../shared/order/keep-soonest.ts';
import { planOrder } from '../../../shared/order/plan.ts';
import { ahead, type Drawn, inPlaces, questionBy } from './random.ts';

/** What became of 120 stretches turned round, every fifth of them taken as the new base. */
function walk(how: Drawn) {
  const question = questionBy(how.parts, how);
  const model = inPlaces(question);
  const first = model.hasLoad ? 1 : 0;
  const chance = seededChance(7);
  const counter = unitCounter(model);
  const changesOf = (sequence: Uint16Array) => {
    const plan = planOrder(
      question,
      [...sequence.slice(first)].map((job) => job - first),
    );
    return plan.ok ? plan.value.changes : Number.NaN;
  };
  let base = ahead(model);
  let changes = counter.rebase(base, 0);
  let givenUp = 0;
  let counted = 0;
  for (let round = 0; round < 120; round++) {
    const from = first + chanceBelow(chance, model.jobCount - 1 - first);
    const to = Math.min(model.jobCount - 1, from + 1 + chanceBelow(chance, 4));
    const turned = base.slice();
    turned.subarray(from, to + 1).reverse();
    const limit = changes + 1 - chanceBelow(chance, 4);
    const found = counter.count(turned, from, to, limit, chanceBelow(chance, 3));
    // Given up, or counted to the end.
    if (found === limit + 1) givenUp++;
    else counted += found;
    if (round % 5 > 0) continue;
    changes = counter.rebase(turned, from, to);
    expect(changes).toBe(changesOf(turned));
    base = turned;
  }
  return { changes, givenUp, counted, work: counter.work() };
}

describe('unitCounter()', () => {
  test.each<[what: string, how: Drawn, found: ReturnType<typeof walk>]>([
    [
      'one word',
      { jobs: 14, parts: 20, most: 6, spare: 3 },
      { changes: 29, givenUp: 61, counted: 1694, work: 1181.3 },
    ],
    [
      'no room to spare',
      { jobs: 14, parts: 20, most: 6, spare: 0 },
      { changes: 40, givenUp: 57, counted: 2457, work: 750 },
    ],
    [
      'loaded before',
      { jobs: 14, parts: 24, most: 7, spare: 2, loaded: 3 },
      { changes: 44, givenUp: 60, counted: 2544, work: 937 },
    ],
    [
      'two words',
      { jobs: 14, parts: 50, most: 10, spare: 3 },
      { changes: 71, givenUp: 65, counted: 3876, work: 1047.8 },
    ],
    [
      'two words, much room',
      { jobs: 14, parts: 50, most: 12, spare: 14 },
      { changes: 54, givenUp: 50, counted: 3834, work: 1350.9 },
    ],
    [
      'three words',
      { jobs: 14, parts: 90, most: 14, spare: 3 },
      { changes: 97, givenUp: 54, counted: 6377, work: 1126 },
    ],
    [
      'three words, loaded, much room',
      { jobs: 14, parts: 90, most: 18, spare: 16, loaded: 4 },
      { changes: 98, givenUp: 60, counted: 5767, work: 1404.3 },
    ],
  ])(
    'counts from the change on until all is as before, and gives up what cannot pay: %s',
    (_, how, expected) => {
      const found = walk(how);
      expect(found).toEqual({ ...expected, work: expect.closeTo(expected.work, 6) });
    },
  );
});

describe('areaCounter().least()', () => {
  /** Twelve jobs with feeders up to four wide: three bounds each, as far as they are asked for. */
  test('comes as near to what exchanges find as its prices do, and no further than is enough', () => {
    const bounds = [1, 2, 3, 4, 5, 6].map((seed) => {
      const model = inPlaces(
        questionBy(seed, { jobs: 12, parts: 16, most: 6, widest: 4, spare: 6, loaded: 2 }),
      );
      const area = areaCounter(model);
      const refined = area.refine(ahead(model)).changes;
      return [refined, area.least(refined + 3), area.least(refined), area.least(refined - 1)];
    });
    expect(bounds).toEqual([
      [18, 17, 17, 17],
      [21, 20, 20, 20],
      [20, 20, 20, 19],
      [20, 19, 20, 19],
      [20, 18, 19, 19],
      [17, 17, 17, 16],
    ]);
  });
});
