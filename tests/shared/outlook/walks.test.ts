// Walks of a real simulated line: nothing twice, windows kept, plans that stay put, crews that share, misses with remedies.

import { beforeAll, describe, expect, test } from 'vitest';
import { lineId } from '../../../demo/setups.ts';
import { simulateShift } from '../../../demo/simulate.ts';
import { applyEntry } from '../../../shared/floor/fold.ts';
import { shelfFor } from '../../../shared/floor/shelf.ts';
import { emptyState, type Finished, type FloorState, type Reel } from '../../../shared/floor/state.ts';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { workingTime } from '../../../shared/forecast/working-time.ts';
import { lineOutlook, type Outlook } from '../../../shared/outlook/line.ts';
import { feederLosses } from '../../../shared/outlook/losses.ts';
import { fullReelSteps, waitingReels } from '../../../shared/outlook/supply.ts';
import { needsOf, spliceNeed } from '../../../shared/outlook/walks.ts';
import { toTheEnd } from '../../to-the-end.ts';
import { lineSupply, planWalks } from './compute.ts';

const startMs = 1_772_431_200_000;
const floor: FloorState = emptyState();
let outlook: Outlook;

beforeAll(() => {
  const { entries } = simulateShift({ seed: 3, hours: 3, startMs });
  let nowMs = startMs;
  for (const entry of entries) {
    applyEntry(floor, entry);
    nowMs = entry.hlc.ms;
    if (entry.kind === 'panels.counted' && entry.payload['panels'] === 200) break;
  }
  const found = lineOutlook(floor, lineId, { nowMs, calendar: lineCalendar(floor, lineId, nowMs) });
  if (!found) throw new TypeError('Cannot go on as the line must run');
  outlook = found;
});

describe('planWalks()', () => {
  test('serves every slot in need once, or says that it is missed', () => {
    const plan = planWalks(outlook, { operators: 1 });
    const served = plan.walks.flatMap((walk) => walk.splices.map((splice) => splice.slot.slot));
    const missed = plan.missed.map((miss) => miss.slot.slot);
    expect([...served, ...missed].sort()).toEqual(
      needsOf(outlook)
        .map((slot) => slot.slot)
        .sort(),
    );
    expect(served.length).toBeGreaterThan(5);
    expect(plan.walks.length).toBeLessThan(served.length);
  });

  test('begins each splice inside its true window', () => {
    for (const walk of planWalks(outlook, { operators: 1 }).walks) {
      for (const { slot, beginsMs } of walk.splices) {
        const { windowMs } = slot.forecast;
        expect(beginsMs).toBeGreaterThanOrEqual(spliceNeed(slot, outlook.calendar).opensMs - 1);
        expect(beginsMs).toBeLessThanOrEqual((windowMs?.closes ?? 0) + 1);
      }
    }
  });

  test('sends nobody in a break, and serves a window that it cuts before or after', () => {
    const cut = needsOf(outlook)
      .filter((slot) => slot.forecast.windowMs !== null)
      .slice(0, 8);
    expect(cut.length).toBeGreaterThan(4);
    for (const { slot, forecast } of cut) {
      const { opens, closes } = forecast.windowMs ?? { opens: 0, closes: 0 };
      for (const share of [0.02, 0.15, 0.6]) {
        const fromMs = opens + share * (closes - opens);
        const stop = { fromMs, toMs: fromMs + 1_800_000 };
        const later = lineOutlook(floor, lineId, {
          nowMs: outlook.pace.nowMs,
          calendar: workingTime([stop]),
        });
        if (!later) throw new TypeError('Cannot go on as the line must run');
        const { walks, missed } = planWalks(later, { operators: 2 });
        expect(walks.filter((walk) => walk.startMs < stop.toMs - 1 && walk.endMs > stop.fromMs + 1)).toEqual(
          [],
        );
        const at = walks.flatMap((walk) => walk.splices).find((splice) => splice.slot.slot === slot);
        const truly = later.slots.find((each) => each.slot === slot)?.forecast.windowMs;
        if (at === undefined) expect(missed.map((miss) => miss.slot.slot)).toContain(slot);
        else expect(at.beginsMs).toBeLessThan(truly?.closes ?? 0);
      }
    }
  });

  test('stays put while the run goes on as foreseen', () => {
    const plan = planWalks(outlook, { operators: 1 });
    const nowMs = outlook.pace.nowMs + 5000;
    const later = lineOutlook(floor, lineId, { nowMs, calendar: outlook.calendar });
    if (!later) throw new TypeError('Cannot go on as the line must run');
    const next = planWalks(later, { operators: 1, known: plan.known });
    expect(next.known[0]?.map((walk) => walk.slots)).toEqual(plan.known[0]?.map((walk) => walk.slots));
    const moved = next.walks.map((walk, at) => walk.startMs - (plan.walks[at]?.startMs ?? 0));
    expect(Math.max(...moved.map(Math.abs))).toBeLessThan(60_000);
  });

  test('two people miss no more than one, and each walk is somebody’s', () => {
    const one = planWalks(outlook, { operators: 1 });
    const two = planWalks(outlook, { operators: 2 });
    expect(two.missed.length).toBeLessThanOrEqual(one.missed.length);
    expect(two.known).toHaveLength(2);
    expect(two.walks.every((walk) => walk.operator === 0 || walk.operator === 1)).toBe(true);
    const held = planWalks(outlook, { operators: 2, known: two.known });
    expect(held.known.map((walks) => walks.map((walk) => walk.slots))).toEqual(
      two.known.map((walks) => walks.map((walk) => walk.slots)),
    );
  });

  test('leaves out what somebody sees to', () => {
    const first = needsOf(outlook)[0]?.slot ?? '';
    const plan = planWalks(outlook, { operators: 1, without: new Set([first]) });
    expect(plan.known.flat().flatMap((walk) => walk.slots)).not.toContain(first);
  });

  test('offers remedies, cheapest first, where walking takes longer than the windows are open', () => {
    const slow: Outlook = { ...outlook, rules: { ...outlook.rules, spliceSeconds: 900, walkSeconds: 900 } };
    const plan = planWalks(slow, { operators: 1, remedies: true });
    expect(plan.missed.length).toBeGreaterThan(0);
    const remedies = plan.missed.flatMap((miss) => miss.remedies);
    expect(remedies.length).toBeGreaterThan(0);
    for (const miss of plan.missed) {
      const costs = miss.remedies.map((remedy) => remedy.cost);
      expect(costs).toEqual([...costs].sort((a, b) => a - b));
    }
  });
});

describe('lineSupply()', () => {
  test('brings what does not last, each reel off the line for one slot only', () => {
    const supply = lineSupply(floor, outlook);
    expect(supply.slots.length).toBeGreaterThan(5);
    const reels = supply.slots.flatMap((each) => each.waiting.map((reel) => reel.reel));
    expect(new Set(reels).size).toBe(reels.length);
    for (const { slot, lasts, bring } of supply.slots) {
      expect(bring === null, slot.slot).toBe(lasts);
      if (bring === null) continue;
      const pick = supply.picks.find((each) => each.part === slot.wanted.part);
      expect(pick?.slots).toContain(slot.slot);
      expect(pick?.reels ?? 0).toBeGreaterThanOrEqual(
        Math.ceil(bring.parts / toTheEnd(fullReelSteps(floor))(slot.wanted.part)),
      );
    }
    const parts = supply.picks.map((pick) => pick.part);
    expect(parts).toEqual([...parts].sort());
  });

  /** Reels off the line that the first slot with alternates of the setup may take, with one more on the shelf. */
  function waitingWith(more: Partial<Reel>, blocks = floor.blocks): readonly string[] {
    const wanted = outlook.slots.find((slot) => slot.wanted.alternates.length > 0)?.wanted;
    if (!wanted) throw new Error('the demo setup has a slot with alternates');
    const part =
      more.part === undefined ? wanted.part : more.part === 'alternate' ? wanted.alternates[0] : null;
    const reel: Reel = {
      reel: 'X-1',
      part: part ?? null,
      supplierPart: more.supplierPart === undefined ? null : (makerOf(wanted.part) ?? null),
      lot: null,
      dateCode: null,
      count: 500,
      sd: 0,
      basis: 'typed',
      at: null,
    };
    const reels = new Map(floor.reels).set('X-1', reel);
    const at = { line: outlook.line, setup: outlook.run.setup, nowMs: startMs };
    return waitingReels(shelfFor({ ...floor, reels, blocks }, at)(wanted)).map((each) => each.reel);
  }
  const makerOf = (part: string) => [...floor.approvals].find(([, parts]) => parts.includes(part))?.[0];

  test('does not count on a blocked reel', () => {
    const facts = { block: 'b', reel: 'X-1', lot: null, part: null, reason: '' };
    const blocked = new Map(floor.blocks).set('b', { ...facts, atMs: 0, done: [], letRun: [] });
    expect(waitingWith({})).toContain('X-1');
    expect(waitingWith({}, blocked)).not.toContain('X-1');
  });

  test('counts on an approved alternate, and on a maker approved for the part', () => {
    expect(waitingWith({ part: 'alternate' })).toContain('X-1');
    expect(waitingWith({ part: null, supplierPart: '' })).toContain('X-1');
    expect(waitingWith({ part: null })).not.toContain('X-1');
  });
});

describe('feederLosses()', () => {
  const finished = (feeder: string, at: number, lost: number): Finished => ({
    chain: `${feeder}/${at}`,
    entry: `${feeder}/${at}`,
    atMs: at,
    line: lineId,
    slot: 'M1-F-001',
    feeder,
    part: 'P',
    startParts: 5000,
    startSd: 0,
    endParts: 0,
    endSd: 0,
    placements: 5000 - lost,
    told: 'count',
  });
  const withReels = (reels: readonly Finished[]): FloorState => ({
    ...floor,
    finished: new Map([['P', reels]]),
  });

  test('names the feeder that throws away 2.1 % where the others lose 0.3 %', () => {
    const reels = [1, 2, 3, 4].flatMap((at) => [
      finished('F-0231', at, 105),
      finished('F-0007', at, 15),
      finished('F-0008', at, 15),
    ]);
    const losses = feederLosses(withReels(reels), lineId);
    expect(losses[0]).toMatchObject({ feeder: 'F-0231', rising: true, recentMean: 0.021, reels: 4 });
    expect(losses[0]?.others).toBeCloseTo(0.003, 3);
    expect(losses.slice(1).map((loss) => loss.rising)).toEqual([false, false]);
  });

  test('does not take the middle of a splice window for a loss of the others', () => {
    const spliced = [21, 22, 23, 24, 25, 26].map(
      (at): Finished => ({
        ...finished(`F-00${at}`, at, 30),
        startParts: 400,
        placements: 370,
        endSd: 40,
        told: 'splice',
      }),
    );
    const [worst] = feederLosses(withReels([finished('F-0231', 1, 350), ...spliced]), lineId);
    expect(worst).toMatchObject({ feeder: 'F-0231', rising: true });
    expect(worst?.others).toBeLessThan(0.01); // counted crudely 7.5 %
  });

  test('sees one feeder getting worse against its own past', () => {
    const own = [10, 12, 11, 9, 60, 70, 65].map((lost, at) => finished('F-0009', at, lost));
    expect(feederLosses(withReels(own), lineId)[0]).toMatchObject({ rising: true });
  });

  test('does not cry at bad luck or at counts that may be off', () => {
    const steady = [15, 12, 18, 22, 14].map((lost, at) => finished('F-0010', at, lost));
    expect(feederLosses(withReels(steady), lineId)[0]?.rising).toBe(false);
    const vague = [15, 12, 60, 60, 60].map((lost, at) => ({ ...finished('F-0011', at, lost), endSd: 40 }));
    expect(feederLosses(withReels(vague), lineId)[0]?.rising).toBe(false);
  });
});
