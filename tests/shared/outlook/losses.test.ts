// What feeders lose, by figures worked out by hand; a loss beyond what is likely is set aside: shown with its share, and learnt by nothing
// that computes with losses.

import { describe, expect, test } from 'vitest';
import { lossOn, unlikelyLoss } from '../../../shared/floor/remaining.ts';
import type { Finished, FloorState } from '../../../shared/floor/state.ts';
import { feederLosses, knownLosses, risingFeeders, unlikelyLosses } from '../../../shared/outlook/losses.ts';
import { beginStory, counted, started, tellPlant, unloaded, verified } from '../floor/story.ts';

/** One reel on feeder FD-1, 2 parts a panel: `left` of 5000 after 1000 panels. */
function finished(left: number) {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1', { panelsWanted: 2000 }));
  const facts = { reel: 'K1', lot: 'A', feeder: 'FD-1', quantity: 5000, run: 'run-1' };
  story.tell('reel.verified', verified('M1-F-001', 'R-100', facts));
  story.tell('panels.counted', counted('run-1', 1000));
  story.tell(
    'reel.unloaded',
    unloaded('M1-F-001', { reel: 'K1', quantity: left, basis: 'typed', run: 'run-1' }),
  );
  return story.floor();
}
const place = { line: 'L1', part: 'R-100', feeder: 'FD-1', slot: 'M1-F-001' };

test('56 % from one reel is set aside, and 2 % is learnt', () => {
  const odd = finished(450); // 4550 gone, 2000 placed: 56 % lost
  const [unlikely] = unlikelyLosses(odd, 'L1');
  expect(unlikely?.share).toBeCloseTo(2550 / 4550, 9);
  expect(feederLosses(odd, 'L1')).toEqual([]);
  expect(lossOn(odd, place).reels).toBe(0);
  const usual = finished(2960); // 2040 gone: 2 %
  expect(unlikelyLosses(usual, 'L1')).toEqual([]);
  expect(unlikelyLosses(odd, 'L2')).toEqual([]);
  expect(lossOn(usual, place).reels).toBe(1);
  expect([...usual.finished.values()].flat().map((reel) => unlikelyLoss(reel))).toEqual([null]);
});

/** A finished reel of `picks` parts, all of them gone, of which so many were lost. */
function reelOf(
  feeder: string,
  atMs: number,
  shown: readonly [picks: number, lost: number],
  more: Partial<Finished> = {},
): Finished {
  const [picks, lost] = shown;
  return {
    chain: `${feeder} ${atMs}`,
    entry: `${feeder} ${atMs}`,
    atMs,
    line: 'L1',
    slot: 'M1-F-001',
    feeder,
    part: 'P',
    startParts: picks,
    startSd: 0,
    endParts: 0,
    endSd: 0,
    placements: picks - lost,
    told: 'count',
    ...more,
  };
}

/** A line that assumes 1 % with the weight of 150 picks, and has finished these reels. */
function floorWith(reels: readonly Finished[]): FloorState {
  const story = beginStory();
  tellPlant(story, { rules: { loss: 0.01 } });
  const finished = new Map<string, readonly Finished[]>();
  for (const reel of reels) finished.set(reel.part, [...(finished.get(reel.part) ?? []), reel]);
  return { ...story.floor(), finished };
}
const lossesOf = (...reels: readonly Finished[]) => feederLosses(floorWith(reels), 'L1');

describe('feederLosses()', () => {
  test('sums up all reels of a feeder, whatever their part, with where it was last and the newest first', () => {
    const [only, ...others] = lossesOf(
      reelOf('A', 2, [2000, 40], { part: 'Q', slot: 'M1-F-009', endSd: 3, skipsUnknown: true }),
      reelOf('A', 1, [2000, 20], { startSd: 4 }),
      reelOf('A', 3, [500, 0], { line: 'L2' }),
      reelOf('', 3, [500, 0]),
    );
    expect(others).toEqual([]);
    expect(only).toMatchObject({
      feeder: 'A',
      slot: 'M1-F-009',
      parts: ['P', 'Q'],
      reels: 2,
      picks: 4000,
      lost: 60,
      lostSd: 5,
      others: null,
      skipsUnknown: 1,
    });
    expect(only?.evidence.map(({ from }) => from.atMs)).toEqual([2, 1]);
    expect(lossesOf()).toEqual([]);
  });

  test('weighs what was lost with what the line assumes, and sets each feeder against all others', () => {
    const [a, b] = lossesOf(
      reelOf('A', 1, [2000, 20]),
      reelOf('A', 2, [2000, 40]),
      reelOf('B', 1, [1000, 10]),
    );
    // 1.5 of 150 assumed: 61.5 of 4150, and 11.5 of 1150.
    expect(a?.mean).toBeCloseTo(61.5 / 4150, 12);
    expect(b?.mean).toBeCloseTo(0.01, 12);
    // The others by what each is believed to lose, with what is assumed: 1.5 + 1000 × 0.01 of 1150, and 1.5 + 4000 × 61.5 ÷ 4150 of 4150.
    expect(a?.others).toBeCloseTo(11.5 / 1150, 12);
    expect(b?.others).toBeCloseTo((1.5 + (4000 * 61.5) / 4150) / 4150, 12);
    expect([a?.low, a?.high].map((bound) => Math.round((bound ?? 0) * 1e4))).toEqual([119, 180]);
  });

  test('judges a feeder by its three newest reels, less two deviations of their counts, from 500 picks on', () => {
    const recent = (...reels: readonly Finished[]) => lossesOf(...reels)[0]?.recentMean ?? null;
    const sure = (atMs: number, lost: number, endSd = 0) => reelOf('A', atMs, [1000, lost], { endSd });
    // 10 + 20 + 30 of 3000; the oldest is none of them, in whatever order they are kept.
    expect(recent(sure(4, 30), sure(1, 90), sure(3, 20), sure(2, 10))).toBe(0.02);
    // 30 − 2 × 10 of each.
    expect(recent(sure(1, 30, 10), sure(2, 30, 10), sure(3, 30, 10))).toBe(0.01);
    // Nothing is surely lost of 10 ± 10.
    expect(recent(sure(1, 10, 10), sure(2, 30), sure(3, 30))).toBe(0.02);
    expect([recent(reelOf('A', 1, [499, 5])), recent(reelOf('A', 1, [500, 5]))]).toEqual([null, 0.01]);
  });

  test('a feeder is held against its own earlier reels, and against the others no more than a few reels of them weigh', () => {
    const steady = [1, 2, 3, 4].map((atMs) => reelOf('B', atMs, [5000, 25]));
    const own = (...lost: readonly number[]) => lost.map((each, at) => reelOf('A', at, [5000, each]));
    const isRising = (...reels: readonly Finished[]) =>
      risingFeeders(lossesOf(...steady, ...reels)).map(({ feeder }) => feeder);
    // As the others: 0.5 %. Twice as much in three reels is no bad luck.
    expect(isRising(...own(25, 25, 25))).toEqual([]);
    expect(isRising(...own(50, 50, 50))).toEqual(['A']);
    // It always lost that: its own past says so.
    expect(isRising(...own(50, 50, 50, 50, 50, 50, 50))).toEqual([]);
    // A feeder that got better is not rising, whatever its past.
    expect(isRising(...own(100, 100, 100, 25, 25, 25))).toEqual([]);
  });

  test('names what rises first, then who loses most, then by name', () => {
    const steady = (feeder: string, lost: number) => [1, 2].map((atMs) => reelOf(feeder, atMs, [5000, lost]));
    const worse = [25, 25, 25, 40, 40, 40].map((lost, at) => reelOf('R', at, [5000, lost]));
    const losses = lossesOf(...steady('D', 10), ...steady('B', 10), ...steady('C', 30), ...worse);
    expect(losses.map(({ feeder, rising }) => [feeder, rising])).toEqual([
      ['R', true],
      ['C', false],
      ['B', false],
      ['D', false],
    ]);
    expect((losses[0]?.mean ?? 0) > (losses[1]?.mean ?? 0)).toBe(true);
  });
});

test('knownLosses() answers anew where a reel, a rule, a cost or the line is another, and as before where none is', () => {
  const floor = floorWith([reelOf('A', 1, [2000, 20])]);
  const first = knownLosses(floor, 'L1');
  expect(first).toEqual(feederLosses(floor, 'L1'));
  expect(knownLosses({ ...floor }, 'L1')).toBe(first);
  const rules = new Map([...floor.rules].map(([line, rule]) => [line, { ...rule, loss: 0.02 }] as const));
  const costs = new Map([['L1', [{ tapeWidthMm: 8, parts: 7, sd: 1 }]]]) as FloorState['spliceCosts'];
  for (const other of [
    floorWith([reelOf('A', 2, [2000, 20])]),
    floorWith([reelOf('A', 1, [2000, 30])]),
    floorWith([reelOf('A', 1, [2100, 120])]),
    floorWith([reelOf('A', 1, [2000, 20], { endParts: 10 })]),
    // Another plant's floor with just as many reels, moments and parts.
    floorWith([reelOf('B', 1, [2000, 20])]),
    floorWith([reelOf('A', 1, [2000, 20]), reelOf('A', 0, [1, 1], { startParts: 0, placements: 0 })]),
    { ...floor, rules },
    { ...floor, spliceCosts: costs },
  ]) {
    knownLosses(floor, 'L1');
    const again = knownLosses(other, 'L1');
    expect(again).toEqual(feederLosses(other, 'L1'));
    expect(knownLosses(other, 'L1')).toBe(again);
  }
  expect(knownLosses(floor, 'L2')).toEqual([]);
});

test('what was set aside is told newest first, of this line alone', () => {
  const floor = floorWith([
    reelOf('A', 1, [1000, 500]),
    reelOf('B', 5, [1000, 250], { part: 'Q' }),
    reelOf('C', 3, [1000, 400], { line: 'L2' }),
    reelOf('D', 4, [1000, 10]),
  ]);
  expect(unlikelyLosses(floor, 'L1').map(({ from, share }) => [from.feeder, share])).toEqual([
    ['B', 0.25],
    ['A', 0.5],
  ]);
});
