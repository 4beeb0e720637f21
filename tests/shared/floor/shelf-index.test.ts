// The index of the shelf leaves out no label that a slot takes: against a look at every label, with any rules of comparison.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { blockOn, mayBeBlocked } from '../../../shared/floor/blocks.ts';
import { addJoined } from '../../../shared/floor/made-of.ts';
import { growShelf, inPickOrder, shelfIndex } from '../../../shared/floor/shelf-index.ts';
import { emptyState, type Reel } from '../../../shared/floor/state.ts';
import { comparePartNumbers, comparisonKeys } from '../../../shared/labels/part-numbers.ts';

const number = fc.string({ unit: fc.constantFrom('A', 'a', 'F', '-', ' ', 'T', 'R', '1'), maxLength: 6 });
const rules = fc.record({
  ignoreCase: fc.boolean(),
  ignoreSpaces: fc.boolean(),
  ignoreDashes: fc.boolean(),
  packingSuffixes: fc.subarray(['-TR', 'TR', '-R', ' 1']),
});
const reelOf = (reel: string, part: string | null, supplierPart: string | null): Reel => ({
  reel,
  part,
  supplierPart,
  lot: null,
  dateCode: null,
  count: 1,
  sd: 0,
  basis: 'label',
  at: null,
});

const mapOf = (reels: readonly Reel[]) => new Map(reels.map((reel) => [reel.reel, reel]));

test('numbers that count as the same share a key', () => {
  fc.assert(
    fc.property(number, number, rules, (one, other, comparison) => {
      if (comparePartNumbers(one, other, comparison) === null) return;
      const keys = comparisonKeys(one, comparison);
      expect(comparisonKeys(other, comparison).some((key) => keys.includes(key))).toBe(true);
    }),
    { numRuns: 3000 },
  );
});

test('what is found is all that may be meant: labels of the part, and those with a maker’s number alone', () => {
  const part = fc.option(number, { nil: null });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(part, part), { maxLength: 12 }),
      number,
      rules,
      (labels, asked, comparison) => {
        const reels = labels.map(([own, maker], at) => reelOf(`K-${at}`, own, maker));
        const found = shelfIndex(mapOf(reels), comparison)([asked]).flatMap((same) => same.reels);
        const meant = reels.filter(
          (reel) => reel.part === null || comparePartNumbers(asked, reel.part, comparison) !== null,
        );
        expect(meant.filter((reel) => !found.includes(reel))).toEqual([]);
      },
    ),
    { numRuns: 500 },
  );
});

test('a reel on the line is none of the shelf', () => {
  const reel = { ...reelOf('K-1', 'A', null), at: { line: 'L1', slot: 'F-1' } };
  const comparison = { ignoreCase: false, ignoreSpaces: false, ignoreDashes: false, packingSuffixes: [] };
  expect(shelfIndex(mapOf([reel]), comparison)(['A'])).toEqual([]);
});

test('what is kept from one question to the next is what would be found anew, whatever changed between them', () => {
  const comparison = { ignoreCase: true, ignoreSpaces: false, ignoreDashes: false, packingSuffixes: [] };
  const byCount = (a: Reel, b: Reel) => (a.count ?? 0) - (b.count ?? 0) || (a.reel < b.reel ? -1 : 1);
  const change = fc.record({
    reel: fc.integer({ min: 0, max: 9 }),
    part: fc.constantFrom('A', 'a', 'B', null),
    count: fc.nat(5),
    does: fc.constantFrom('change', 'mount', 'forget'),
  });
  const found = (reels: ReadonlyMap<string, Reel>) =>
    ['A', 'B'].map((part) =>
      shelfIndex(
        reels,
        comparison,
      )([part])
        .flatMap((same) => inPickOrder(same, 'oldest-first', byCount))
        .map(({ reel, count }) => `${reel} ${count}`)
        .sort(),
    );
  fc.assert(
    fc.property(fc.array(fc.array(change, { maxLength: 6 }), { maxLength: 8 }), (rounds) => {
      const reels = new Map<string, Reel>();
      for (const round of rounds) {
        for (const { reel, part, count, does } of round) {
          const name = `K-${reel}`;
          const record = { ...reelOf(name, part, null), count };
          if (does === 'forget') reels.delete(name);
          else reels.set(name, does === 'mount' ? { ...record, at: { line: 'L1', slot: 'F-1' } } : record);
        }
        expect(found(reels)).toEqual(found(new Map(reels)));
      }
    }),
    { numRuns: 400 },
  );
});

test('a reel that a block is on is always one that may be blocked', () => {
  const name = fc.constantFrom('x', 'y', null);
  const facts = fc.record({ reel: name, lot: name, part: name });
  fc.assert(
    fc.property(
      fc.array(facts, { maxLength: 3 }),
      facts,
      fc.tuple(fc.constantFrom('x', 'y'), facts),
      (blocks, reel, [joined, { lot, part }]) => {
        const floor = emptyState();
        addJoined(floor, joined, 'x');
        floor.reels.set('x', { ...reelOf('x', 'x', null), lot, part });
        blocks.forEach((block, at) => {
          const more = { reason: '', atMs: 0, done: [], letRun: [] };
          floor.blocks.set(`b${at}`, { block: `b${at}`, ...block, ...more });
        });
        if (blockOn(floor, reel) !== null) expect(mayBeBlocked(floor)(reel)).toBe(true);
      },
    ),
    { numRuns: 500 },
  );
});

test('what is put in part by part answers as what is put in at once, also where it was not all in', () => {
  const comparison = { ignoreCase: true, ignoreSpaces: false, ignoreDashes: false, packingSuffixes: ['-TR'] };
  const part = fc.option(number, { nil: null });
  const labels = fc.array(fc.tuple(part, part), { maxLength: 30 });
  const names = (reels: ReadonlyMap<string, Reel>, asked: string) =>
    shelfIndex(
      reels,
      comparison,
    )([asked])
      .flatMap((same) => same.reels.map(({ reel }) => reel))
      .sort();
  fc.assert(
    fc.property(labels, number, fc.integer({ min: 1, max: 9 }), fc.nat(5), (made, asked, most, times) => {
      const reels = made.map(([own, maker], at) => reelOf(`K-${at}`, own, maker));
      const whole = names(mapOf(reels), asked);
      const grown = mapOf(reels);
      for (let time = 0; time < times; time += 1) growShelf(grown, comparison, most);
      expect(names(grown, asked)).toEqual(whole);
      expect(growShelf(grown, comparison, most)).toBe(0);
    }),
    { numRuns: 500 },
  );
});

test('a part of the reels at a time is put in, and how many are left is told', () => {
  const reels = mapOf(Array.from({ length: 1200 }, (_, at) => reelOf(`G-${at}`, `P-${at % 3}`, null)));
  const comparison = { ignoreCase: false, ignoreSpaces: false, ignoreDashes: false, packingSuffixes: [] };
  const left = Array.from({ length: 4 }, () => growShelf(reels, comparison, 500));
  expect(left).toEqual([700, 200, 0, 0]);
});

test('a state and its copy are answered each for itself, in whatever order they are asked', () => {
  const comparison = { ignoreCase: false, ignoreSpaces: false, ignoreDashes: false, packingSuffixes: [] };
  const one = mapOf([reelOf('K-1', 'A', null), reelOf('K-2', 'A', null)]);
  const ofOne = shelfIndex(one, comparison);
  const other = new Map(one).set('K-3', reelOf('K-3', 'A', null));
  other.delete('K-1');
  const ofOther = shelfIndex(other, comparison);
  const names = (answer: typeof ofOne) => answer(['A']).flatMap((same) => same.reels.map(({ reel }) => reel));
  expect([names(ofOne), names(ofOther), names(ofOne)].map((each) => each.sort())).toEqual([
    ['K-1', 'K-2'],
    ['K-2', 'K-3'],
    ['K-1', 'K-2'],
  ]);
});
