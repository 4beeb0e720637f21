// Places in the order of counting against numbers that people know: by a plain list of all places, of which some were taken back.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  earliest,
  isVoid,
  latest,
  latestTo,
  numberAt,
  panelPlace,
  span,
  toNumbers,
} from '../../../shared/trace/order.ts';

/** Counts one after the other, each with its panels and whether it was taken back. */
const countsArb = fc.array(fc.record({ panels: fc.integer({ min: 1, max: 5 }), isBack: fc.boolean() }), {
  minLength: 1,
  maxLength: 12,
});

/** The run as the log keeps it, and beside it each place with whether a panel has it. */
function runOf(counts: readonly { readonly panels: number; readonly isBack: boolean }[]) {
  const has: boolean[] = [];
  const voids: [number, number][] = [];
  for (const { panels, isBack } of counts) {
    if (isBack) voids.push([has.length, panels]);
    for (let panel = 0; panel < panels; panel++) has.push(!isBack);
  }
  const done = has.filter(Boolean).length;
  // In any order: the log tells them as they are taken back.
  return { run: { done, voids: voids.reverse(), batches: [], phase: 'running' as const }, has };
}

describe('numbers and places', () => {
  test('agree with a list of all places', () => {
    fc.assert(
      fc.property(countsArb, (counts) => {
        const { run, has } = runOf(counts);
        let number = 0;
        for (const [at, hasPanel] of has.entries()) {
          const place = at + 1;
          if (hasPanel) number += 1;
          expect(isVoid(run, place)).toBe(!hasPanel);
          expect(numberAt(run, place)).toBe(number);
          if (hasPanel) expect(panelPlace(run, number)).toBe(place);
        }
        for (const none of [0, -1, run.done + 1, 0.5]) expect(panelPlace(run, none)).toBeNull();
      }),
    );
  });

  test('of a span are those of the panels in it, and none where all were taken back', () => {
    fc.assert(
      fc.property(countsArb, fc.nat(60), fc.nat(60), (counts, one, other) => {
        const { run, has } = runOf(counts);
        const first = 1 + (Math.min(one, other) % has.length);
        const last = Math.max(first, 1 + (Math.max(one, other) % has.length));
        const numbers = has.flatMap((hasPanel, at) =>
          hasPanel && at + 1 >= first && at + 1 <= last ? [numberAt(run, at + 1)] : [],
        );
        const expected = numbers.length === 0 ? null : { first: numbers[0], last: numbers.at(-1) };
        expect(toNumbers(run, { first, last })).toEqual(expected);
      }),
    );
    expect(toNumbers(runOf([]).run, null)).toBeNull();
  });

  test('a span has at least one place', () => {
    expect(span(3, 3)).toEqual({ first: 3, last: 3 });
    expect(span(4, 3)).toBeNull();
  });
});

describe('bounds that were told before more became known', () => {
  const run = {
    batches: [
      [10, 5],
      [20, 1],
    ] as const,
    voids: [
      [14, 2],
      [12, 3],
      [30, 4],
    ] as const,
  };

  test('lie later by panels that had passed uncounted, and by counts before them that were none, one after the other', () => {
    const plain = { batches: run.batches, voids: [] };
    expect(latest(plain, 10, 10)).toBe(14); // of five counted at once four may have passed before
    expect(latest(plain, 10, 20)).toBe(10);
    expect(latest(plain, 10, 7)).toBe(10);
    // 13 lies behind the three at 12, and then behind the two at 14; not behind the four at 30.
    expect(latest({ ...run, batches: [] }, 13, 1)).toBe(18);
    expect(latest({ ...run, batches: [] }, 12, 1)).toBe(12);
    expect(latestTo({ ...run, batches: [] }, { possible: 13, sure: 13, at: 1 })).toBe(18);
  });

  test('stay where nothing bounds them, or where nobody said when', () => {
    expect(latest(run, Number.POSITIVE_INFINITY, 10)).toBe(Number.POSITIVE_INFINITY);
    expect(latest(run, 13, null)).toBe(13);
  });

  test('lie earlier by counts that were none, where panels are counted before they reach the machine', () => {
    expect(earliest(run, 40, -1)).toBe(31);
    expect(earliest(run, 40, 0)).toBe(40);
  });
});
