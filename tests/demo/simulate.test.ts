// The simulated shift against the log's own checks, against itself, and against the truth that it keeps beside the log.

import { describe, expect, test } from 'vitest';
import { logText } from '../../demo/log.ts';
import { windowParts } from '../../demo/placing.ts';
import { lineFigures } from '../../demo/plant.ts';
import { type SplicePolicy, spliceByCount } from '../../demo/policy.ts';
import { lineId, products } from '../../demo/setups.ts';
import { shelfOf } from '../../demo/shelves.ts';
import { panelSeconds, simulateShift } from '../../demo/simulate.ts';
import { drawGoodPicks } from '../../demo/world.ts';
import { applyEntry } from '../../shared/floor/fold.ts';
import { readFloorEntry } from '../../shared/floor/kinds.ts';
import { plantDay } from '../../shared/floor/plant-day.ts';
import { slotLeft } from '../../shared/floor/remaining.ts';
import { emptyState, slotKey } from '../../shared/floor/state.ts';
import { seededChance } from '../../shared/kit/chance.ts';
import { verifyChains } from '../../shared/log/chain.ts';
import { entryId } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';

const startMs = Date.UTC(2026, 2, 2, 6);
const shift = simulateShift({ seed: 11, hours: 8, startMs });
const kindsOf = (kind: string) => shift.entries.filter((entry) => entry.kind === kind);

describe('simulateShift()', () => {
  test('gives the same bytes for the same seed and others for another', () => {
    expect(logText(simulateShift({ seed: 11, hours: 8, startMs }).entries)).toBe(logText(shift.entries));
    expect(logText(simulateShift({ seed: 12, hours: 8, startMs }).entries)).not.toBe(logText(shift.entries));
  });

  test('writes chains that hold, in folding order, with clocks that never run back', () => {
    const report = verifyChains(shift.entries);
    expect(report).toMatchObject({ ok: true, entries: shift.entries.length, tablets: 2 });
    expect([...shift.entries].sort(compareEntries)).toEqual(shift.entries);
    for (const [index, entry] of shift.entries.entries()) {
      const before = shift.entries[index - 1];
      if (before) expect(Date.parse(entry.at)).toBeGreaterThanOrEqual(Date.parse(before.at));
    }
  });

  test('writes only entries that this version knows and folds', () => {
    expect(shift.entries.filter((entry) => readFloorEntry(entry) === null)).toEqual([]);
  });

  test('dates an expired reel by the plant’s own day, whatever day it is at the meridian', () => {
    // At 20:00 UTC it is the next day in Auckland.
    const far = simulateShift({
      seed: 11,
      hours: 1,
      startMs: Date.UTC(2026, 2, 2, 20),
      zone: 'Pacific/Auckland',
    });
    const state = emptyState();
    for (const entry of far.entries) applyEntry(state, entry);
    const held = far.entries.filter((entry) =>
      JSON.stringify(entry.payload['reasons'] ?? '').includes('expired'),
    );
    expect(held.length).toBeGreaterThan(0);
    for (const { payload, hlc } of held)
      expect(JSON.stringify(payload['reasons'])).toContain(plantDay(state, lineId, hlc.ms - 9 * 86_400_000));
  });

  test('leaves no conflict and no hold behind', () => {
    const state = emptyState();
    for (const entry of shift.entries) applyEntry(state, entry);
    expect([...state.conflicts.keys()]).toEqual([]);
    expect([...state.holds.keys()]).toEqual([]);
  });

  test('builds the first job, changes over and starts the second, at about thirty seconds a panel', () => {
    expect(kindsOf('run.started').map((entry) => entry.payload['setup'])).toEqual([
      products[0].setup,
      products[1].setup,
    ]);
    expect(kindsOf('panels.counted')).toHaveLength(shift.truth.panelEndsMs.length);
    const gaps = shift.truth.panelEndsMs
      .slice(1)
      .map((ms, index) => ms - (shift.truth.panelEndsMs[index] ?? ms));
    const median = [...gaps].sort((a, b) => a - b)[Math.floor(gaps.length / 2)] ?? 0;
    expect(Math.abs(median / 1000 - panelSeconds)).toBeLessThan(1);
  });

  test('stands still in breaks', () => {
    const breaks = shift.truth.stops.filter((stop) => stop.reason === 'break');
    expect(breaks).toHaveLength(2);
    for (const pause of breaks) {
      const inside = shift.truth.panelEndsMs.filter((ms) => ms > pause.fromMs && ms < pause.toMs);
      expect(inside).toEqual([]);
    }
  });

  test('keeps refusals of reels that were taken by mistake', () => {
    const verdicts = kindsOf('reel.verified').map((entry) => entry.payload['verdict']);
    expect(verdicts).toContain('refused');
  });

  test('keeps reels that a lead had to clear, each cleared by one', () => {
    const held = kindsOf('reel.verified').filter((entry) => entry.payload['verdict'] === 'held');
    expect(held.length).toBeGreaterThan(0);
    const cleared = kindsOf('hold.cleared').map((entry) => entry.payload['of']);
    expect(cleared.sort()).toEqual(held.map(entryId).sort());
  });

  test('keeps the weighing of reels that came back, on the store’s tablet', () => {
    const weighed = kindsOf('reel.counted');
    expect(weighed.length).toBeGreaterThan(0);
    expect(new Set(weighed.map((entry) => entry.tablet))).toEqual(new Set(['demo0-store']));
  });

  test('puts reels that came back on the shelves of their parts', () => {
    const put = kindsOf('reel.put');
    expect(put.length).toBeGreaterThan(0);
    expect(new Set(put.map((entry) => entry.tablet))).toEqual(new Set(['demo0-store']));
    const cameBack = put.filter(({ payload }) => !String(payload['place']).startsWith('DRY-'));
    expect(cameBack.length).toBeGreaterThan(0);
    for (const { payload } of cameBack) expect(payload['place']).toBe(shelfOf(String(payload['part'])));
  });

  test('a short shift is the beginning of a longer one', () => {
    const short = simulateShift({ seed: 11, hours: 3, startMs });
    expect(shift.entries.slice(0, short.entries.length - 5)).toEqual(short.entries.slice(0, -5));
  });
});

describe('the truth beside the log', () => {
  test('every part placed or lost came off a reel', () => {
    const { picks, reels } = shift.truth;
    const gone = [...picks.values()].reduce((sum, tally) => sum + tally.placed + tally.lost, 0);
    expect(gone).toBeGreaterThan(100_000);
    expect(gone).toBeLessThan(reels.reduce((sum, reel) => sum + reel.parts, 0));
  });

  test('placements are panels times the setup’s usage', () => {
    const panels = shift.entries.filter(
      (entry) => entry.kind === 'panels.counted' && entry.payload['run'] === 'run-1',
    ).length;
    const state = emptyState();
    for (const entry of shift.entries) if (entry.kind === 'setup.taken') applyEntry(state, entry);
    const used = state.setups.get(products[0].setup)?.slots.filter((slot) => slot.perPanel > 0) ?? [];
    const short = simulateShift({ seed: 11, hours: 5, startMs }).truth;
    for (const slot of used) {
      expect(short.picks.get(slot.slot)?.placed, slot.slot).toBe(slot.perPanel * short.panelEndsMs.length);
    }
    expect(panels).toBe(720);
  });

  test('labels are off by a few, and on the whole right', () => {
    const off = shift.truth.reels.map((reel) => (reel.parts - reel.label) / reel.label);
    const mean = off.reduce((sum, share) => sum + share, 0) / off.length;
    expect(Math.abs(mean)).toBeLessThan(0.002);
    expect(off.some((share) => share !== 0)).toBe(true);
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.05);
  });

  test('every splice of the log fell into the true window of the tape before it', () => {
    const splices = kindsOf('reel.verified').filter((entry) => entry.payload['act'] === 'splice');
    expect(splices.length).toBeGreaterThan(20);
    const ends = shift.truth.ends.filter((end) => end.how === 'spliced');
    for (const end of ends) {
      const joined = splices.find(
        (entry) =>
          entry.payload['slot'] === end.slot &&
          entry.hlc.ms <= end.atMs &&
          entry.hlc.ms >= (end.opensMs ?? Number.POSITIVE_INFINITY) - 2 * panelSeconds * 1000,
      );
      expect(joined, `${end.slot} ${end.reel}`).toBeDefined();
    }
  });

  test('the count in the log stays near the truth: a run-out comes when the log has few parts left', () => {
    const state = emptyState();
    const ends = shift.truth.ends.filter((end) => end.run === 'run-1');
    let next = 0;
    const misses: number[] = [];
    for (const entry of shift.entries) {
      for (let end = ends[next]; end && end.atMs <= entry.hlc.ms; end = ends[next]) {
        next += 1;
        const slot = state.slots.get(slotKey(lineId, end.slot));
        const tape = slot?.tapes.findIndex((one) => one.reel === end.reel) ?? -1;
        if (!slot || tape < 0) continue;
        const behind = slot.tapes.slice(tape + 1).reduce((sum, one) => sum + (one.count ?? 0), 0);
        misses.push(Math.abs((slotLeft(state, slot, lineFigures.loss).parts ?? 0) - behind));
      }
      applyEntry(state, entry);
    }
    expect(misses.length).toBeGreaterThan(15);
    const median = [...misses].sort((a, b) => a - b)[Math.floor(misses.length / 2)] ?? 0;
    expect(median).toBeLessThan(60);
  });

  test('a shift whose hands never walk runs dry and is loaded anew each time', () => {
    const idle: SplicePolicy = () => [];
    const { truth, entries } = simulateShift({ seed: 11, hours: 4, startMs, policy: idle });
    expect(truth.walks).toEqual([]);
    const dry = truth.stops.filter((stop) => stop.reason === 'run-out');
    expect(dry.length).toBeGreaterThan(10);
    expect(truth.ends.every((end) => end.how === 'dry')).toBe(true);
    expect(dry).toHaveLength(truth.ends.length);
    expect(
      entries.filter((entry) => entry.kind === 'run.stopped' && entry.payload['reason'] === 'run-out'),
    ).toHaveLength(dry.length);
    const busy = simulateShift({ seed: 11, hours: 4, startMs, policy: spliceByCount }).truth;
    expect(busy.panelEndsMs.length).toBeGreaterThan(truth.panelEndsMs.length);
  });
});

describe('windowParts()', () => {
  test('is ⌊hub to pick ÷ pitch⌋ and ⌊intake to pick ÷ pitch⌋', () => {
    expect(windowParts(4)).toEqual({ opens: 200, closes: 65 });
    expect(windowParts(16)).toEqual({ opens: 50, closes: 16 });
  });
});

describe('drawGoodPicks()', () => {
  test('has the mean of the geometric law, (1 - p) ÷ p', () => {
    const chance = seededChance(5);
    const loss = 0.01;
    const draws = Array.from({ length: 20_000 }, () => drawGoodPicks(chance, loss));
    const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length;
    // Standard error of the mean: √(1 - p) ÷ p ÷ √20 000 = 0.70; four of them are allowed.
    expect(Math.abs(mean - (1 - loss) / loss)).toBeLessThan(2.8);
  });

  test('never loses where nothing is lost', () => {
    expect(drawGoodPicks(seededChance(1), 0)).toBe(Number.POSITIVE_INFINITY);
  });
});
