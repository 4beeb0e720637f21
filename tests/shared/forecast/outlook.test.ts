// Beyond the next splice: reels in a row, what is missing, the pick list, slots that share a part.

import { describe, expect, test } from 'vitest';
import { panelsCovered, pickList, slotNeeds, type WaitingReel } from '../../../shared/forecast/outlook.ts';
import { riskOfFewerThan } from '../../../shared/forecast/placements.ts';
import { forecastSlot, type LinePace, type SlotLoad } from '../../../shared/forecast/run-out.ts';
import { workingTime } from '../../../shared/forecast/working-time.ts';

const pace: LinePace = { nowMs: 0, panelSeconds: 30, panelsLeft: 1000, calendar: workingTime([]) };
const load: SlotLoad = { slot: 'M1-F-014', perPanel: 10, left: 2000, sd: 0, loss: 0 };
const reel = (id: string, parts: number, sd = 0): WaitingReel => ({ reel: id, parts, sd });

describe('slotNeeds()', () => {
  test('adds reel after reel on one time line', () => {
    const outlook = slotNeeds(pace, load, [reel('R1', 4000), reel('R2', 4000)]);
    expect(outlook.ends.map((end) => end.runOutMs.expected / 1000)).toEqual([6000, 18_000, 30_000]);
    expect(outlook.ends.map((end) => end.outlasts)).toEqual([false, false, true]);
    expect([outlook.lasts, outlook.bring]).toEqual([true, null]);
  });

  test('says what is missing to the part when all is certain, and by when', () => {
    const outlook = slotNeeds(pace, load, [reel('R1', 4000)]);
    expect(outlook.lasts).toBe(false);
    expect(outlook.bring).toEqual({ parts: 4000, byMs: 18_000_000 });
  });

  test('says what is missing to the part, however much that is', () => {
    const missing = Array.from({ length: 40 }, (_, parts) => parts + 1);
    const brought = missing.map(
      (parts) => slotNeeds(pace, { ...load, left: 10_000 - parts }, []).bring?.parts,
    );
    expect(brought).toEqual(missing);
  });

  test('takes off what splices cost, with its spread, and adds that of the one to come', () => {
    const cost = { parts: 16, sd: 0 };
    const { ends, bring } = slotNeeds(pace, load, [reel('R1', 4000), reel('R2', 3000)], cost);
    // 2000 + 4000 − 16 parts, ten a panel of 30 s.
    expect(ends[1]?.runOutMs.expected).toBe(5984 * 3000);
    expect(ends[2]?.runOutMs.expected).toBe(8968 * 3000);
    // 1032 are missing of 10 000 and 16 for the splice; one deviation of two splices is √32, the 5 % point 1.645 of them.
    expect(bring?.parts).toBeGreaterThanOrEqual(1032 + 16 + 8);
    expect(bring?.parts).toBeLessThanOrEqual(1032 + 16 + 11);
    // Never less than nothing.
    expect(slotNeeds(pace, { ...load, left: 0 }, [reel('R1', 5)], cost).ends[1]?.runOutMs.expected).toBe(0);
  });

  test('must bring it before the last window closes', () => {
    const feeder = { pitchMm: 4, hubToPickMm: 700, intakeToPickMm: 250 };
    const outlook = slotNeeds(pace, { ...load, ...feeder }, []);
    expect(outlook.bring!.byMs).toBe(((2000 - 62) / 10) * 30_000);
  });

  test('brings just enough for a risk below 5 % when losses and counts vary', () => {
    const lossy = { ...load, loss: 0.01, sd: 20 };
    const outlook = slotNeeds(pace, lossy, [reel('R1', 4000, 50)]);
    const all = { ...lossy, left: 6000, sd: Math.hypot(20, 50) };
    const { parts } = outlook.bring!;
    expect(riskOfFewerThan({ ...all, left: 6000 + parts }, 10_000)).toBeLessThan(0.05);
    expect(riskOfFewerThan({ ...all, left: 6000 + parts - 1 }, 10_000)).toBeGreaterThanOrEqual(0.05);
    expect(parts).toBeGreaterThan(4000);
  });

  test('has the running reel’s own forecast first', () => {
    const outlook = slotNeeds(pace, { ...load, loss: 0.02 }, [reel('R1', 4000)]);
    expect(outlook.ends[0]!.runOutMs).toEqual(forecastSlot(pace, { ...load, loss: 0.02 }).runOutMs);
  });

  test('throws when everything is lost', () => {
    expect(() => slotNeeds(pace, { ...load, loss: 1 }, [])).toThrow(RangeError);
  });
});

describe('pickList()', () => {
  test('walks the store in order, whole reels, one line for a part at a place', () => {
    const need = { reelQuantity: 5000, byMs: 100 };
    const list = pickList([
      { ...need, part: 'BW-9', slot: 'M1-F-001', parts: 5001, place: 'R10-S2' },
      { ...need, part: 'BW-1', slot: 'M1-F-003', parts: 100, place: 'R2-S10' },
      { ...need, part: 'BW-1', slot: 'M1-F-002', parts: 100, place: 'R2-S10', byMs: 50 },
      { ...need, part: 'BW-4', slot: 'M1-F-004', parts: 5000, place: 'R2-S9' },
    ]);
    expect(list.map((line) => [line.place, line.part, line.reels, line.byMs, line.slots.join(' ')])).toEqual([
      ['R2-S9', 'BW-4', 1, 100, 'M1-F-004'],
      ['R2-S10', 'BW-1', 2, 50, 'M1-F-002 M1-F-003'],
      ['R10-S2', 'BW-9', 2, 100, 'M1-F-001'],
    ]);
  });
});

test('pickList() names the parts at one place in order, the slots of each likewise, in whatever order they are asked', () => {
  const need = { reelQuantity: 100, byMs: 1, place: 'A', parts: 100 };
  const list = pickList([
    { ...need, part: 'P3', slot: 'c' },
    { ...need, part: 'P1', slot: 'd' },
    { ...need, part: 'P2', slot: 'b', parts: 101 },
    { ...need, part: 'P2', slot: 'a', byMs: 2 },
    { ...need, part: 'P2', slot: 'c', byMs: 0 },
  ]);
  expect(list.map((line) => [line.part, line.slots.join(' '), line.reels, line.byMs])).toEqual([
    ['P1', 'd', 1, 1],
    ['P2', 'a b c', 4, 0],
    ['P3', 'c', 1, 1],
  ]);
});

test('pickList() names the slots of a line in walking order, however their numbers are written', () => {
  const need = { reelQuantity: 100, byMs: 1, place: 'A', part: 'P1', parts: 100 };
  const [line] = pickList(['R1', 'F10', 'F2'].map((slot) => ({ ...need, slot })));
  expect(line?.slots).toEqual(['F2', 'F10', 'R1']);
});

describe('panelsCovered()', () => {
  test('is one figure when all is certain, a range when not', () => {
    expect(panelsCovered(load)).toEqual({ least: 200, most: 200 });
    const { least, most } = panelsCovered({ ...load, sd: 50 });
    expect([least, most]).toEqual([191, 208]);
  });
});
