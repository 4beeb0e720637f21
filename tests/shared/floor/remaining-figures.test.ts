// The figures behind what is left, worked by hand: what placements take, what a reel shows, what a share of skipped boards doubts, what a
// splice costs.

import { describe, expect, test } from 'vitest';
import { takenBy } from '../../../shared/floor/remaining/amounts.ts';
import { keepEvidence, openEvidence } from '../../../shared/floor/remaining/finished.ts';
import { truncated } from '../../../shared/floor/remaining/law.ts';
import { evidenceFromUnload, lossPrior, updateLoss } from '../../../shared/floor/remaining/loss.ts';
import { noDoubt, panelsBuilt, skipShare } from '../../../shared/floor/remaining/skips.ts';
import { spliceCost } from '../../../shared/floor/remaining/splices.ts';
import { emptyState, type Finished, type FloorState, type Ledger } from '../../../shared/floor/state.ts';

const reel = (change: Partial<Parameters<typeof evidenceFromUnload>[0]>) =>
  evidenceFromUnload({ startParts: 100, startSd: 0, endParts: 0, endSd: 0, placements: 98, ...change });

test('placements take more parts than they are, each with its spread', () => {
  // One in a hundred is lost: 990 placements take 1,000 picks. Negative binomial: variance U q / (1 - q)².
  const loss = { ...lossPrior({ mean: 0.01, strength: 300 }) };
  const taken = takenBy(emptyState(), { setup: 's', perPanel: 99, panels: 10, loss });
  expect(taken.parts).toBeCloseTo(1000, 9);
  expect(taken.variance).toBeCloseTo((990 * 0.01) / 0.99 ** 2, 9);
  expect(taken.sd).toBeCloseTo((990 / 0.99 ** 2) * Math.sqrt((0.01 * 0.99) / 301), 9);
});

test('a count without any error stands where the splice allows it, and is not believed elsewhere', () => {
  const exact = { mean: 40, variance: 0 };
  expect(truncated(exact, 0, 60)).toEqual({ mean: 40, variance: 0, believed: true });
  expect(truncated(exact, 50, 62)).toEqual({ mean: 56, variance: 12, believed: false });
});

describe('a reel that comes off', () => {
  test('shows nothing where nothing was picked, and is wrong where more was placed than is gone', () => {
    const untouched = { endParts: 100, placements: 0 };
    expect(reel(untouched)).toMatchObject({ ok: false, error: { code: 'noPicks' } });
    expect(reel({ ...untouched, placements: 1 })).toMatchObject({
      ok: false,
      error: { code: 'morePlacedThanGone', lost: -1 },
    });
  });

  test('may show up to three deviations too many placements', () => {
    const counted = { startSd: 3, endSd: 4 }; // 5 parts together
    expect(reel({ ...counted, placements: 115 })).toEqual({
      ok: true,
      value: { picks: 115, lost: 0, sd: 5 },
    });
    expect(reel({ ...counted, placements: 116 })).toMatchObject({ error: { code: 'morePlacedThanGone' } });
  });

  test('can have lost all that was picked, and no more', () => {
    const { alpha, beta } = lossPrior();
    expect(updateLoss(lossPrior(), { picks: 5, lost: 5 })).toMatchObject({ alpha: alpha + 5, beta });
    for (const lost of [-1, 6]) expect(() => updateLoss(lossPrior(), { picks: 5, lost })).toThrow(RangeError);
  });
});

describe('what a finished reel showed', () => {
  const slot = { line: 'L1', slot: 'S', feeder: null, tapes: [{ part: 'P' }] } as never; // nothing else is asked of it
  const ledger = { chain: 'c', parts: 5000, variance: 16, splices: 0 } as Ledger; // nor of it

  test('says what is not known of the placements, and its splices, only where there are any', () => {
    const plain = openEvidence(slot, ledger, { count: 4000, doubt: noDoubt });
    expect(plain).toEqual({
      chain: 'c',
      line: 'L1',
      slot: 'S',
      feeder: '',
      part: 'P',
      startParts: 5000,
      startSd: 4,
      placements: 4000,
    });
    const doubt = { variance: 9, sd: 4, unknown: true };
    expect(openEvidence(slot, { ...ledger, splices: 2 }, { count: 4000, doubt })).toEqual({
      ...plain,
      placementsSd: 5,
      skipsUnknown: true,
      splices: 2,
    });
  });

  test('is kept of the newest three hundred reels of a part', () => {
    const state = emptyState();
    const chainOf = (at: number) => `chain ${at}`;
    for (let at = 0; at < 302; at++) keepEvidence(state, { part: 'P', chain: chainOf(at) } as Finished);
    keepEvidence(state, { part: 'P', chain: chainOf(5), splices: 1 } as Finished); // the same reel once more
    const kept = state.finished.get('P') ?? [];
    expect(kept).toHaveLength(300);
    expect([kept[0]?.chain, kept.at(-1)]).toEqual([chainOf(2), { part: 'P', chain: chainOf(5), splices: 1 }]);
  });
});

test('a share of skipped boards has the doubt of a Beta law, and none where nobody entered one', () => {
  const state = emptyState();
  state.setups.set('s', { boardsPerPanel: 8 } as never); // nothing else is asked of it
  const run = { setup: 's', done: 10, skips: { panels: 0, boards: 0 } };
  const since = { done: 0, skips: { panels: 0, boards: 0 } };
  expect(panelsBuilt(state, run, since)).toEqual({
    panels: 10,
    doubt: { variance: 0, sd: 0, unknown: true },
  });
  state.skips.set('s', { panels: 1, boards: 1 });
  const share = skipShare(state, 's');
  expect(share?.mean).toBeCloseTo(1 / 6, 12); // (1 + ½) of 9
  expect(share?.variance).toBeCloseTo(((1 / 6) * (5 / 6)) / 10, 12);
  expect(panelsBuilt(state, run, since).doubt.sd).toBeCloseTo(10 * Math.sqrt(1 / 72), 12);
});

describe('what a splice costs', () => {
  const finished = (change: Partial<Finished>): Finished =>
    ({
      line: 'L1',
      part: 'P',
      feeder: 'F',
      slot: 'S',
      told: 'count',
      startParts: 10_100,
      startSd: 0,
      endParts: 0,
      endSd: 0,
      placements: 10_000,
      ...change,
    }) as Finished; // what else it has is not asked
  const costOf = (...reels: readonly Finished[]) => {
    const state: FloorState = emptyState();
    state.finished.set('P', reels);
    const prior = lossPrior({ mean: 0.01, strength: 100 });
    return spliceCost(state, { line: 'L1', part: 'P', tapeWidthMm: null }, prior);
  };
  const spliced = finished({ startParts: 5200, placements: 5000, splices: 5, startSd: 3, endSd: 4 });

  test('is what spliced tapes lost beyond the share of one that was never spliced', () => {
    // The plain reel makes Beta(1, 99) into Beta(101, 10099): 101 of 10,200 are lost.
    const mean = 101 / 10_200;
    const excess = 5200 - 5000 - mean * 5200;
    const own = 9 + 16 + 5200 * mean * (1 - mean);
    const ofLoss = 5200 ** 2 * ((mean * (1 - mean)) / 10_201);
    const cost = costOf(finished({}), spliced);
    expect(cost.from).toBe('learnt');
    expect(cost.parts).toBeCloseTo(excess / 5, 9);
    expect(cost.sd).toBeCloseTo(Math.sqrt(own + ofLoss) / 5, 9);
  });

  test('is not known without such a tape, of fewer than five splices, or where the end was not counted', () => {
    const none = { parts: 0, sd: 0, from: 'none' };
    expect(costOf(spliced)).toEqual(none);
    expect(costOf(finished({}), { ...spliced, splices: 4 })).toEqual(none);
    expect(costOf(finished({}), { ...spliced, told: 'splice' })).toEqual(none);
    expect(costOf(finished({}), { ...spliced, line: 'L2' })).toEqual(none);
  });
});
