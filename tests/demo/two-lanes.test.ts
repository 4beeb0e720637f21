// The invented line of two lanes: two products at once from shared feeders, in one whole log that the app's own fold reads without a conflict.

import { expect, test } from 'vitest';
import { simulateLines } from '../../demo/more-lines.ts';
import { openLanesPlay } from '../../demo/two-lanes.ts';
import { applyEntry } from '../../shared/floor/fold.ts';
import { readFloorEntry } from '../../shared/floor/kinds.ts';
import { sharesSlots } from '../../shared/floor/lanes.ts';
import { slotLeft } from '../../shared/floor/remaining.ts';
import { emptyState } from '../../shared/floor/state.ts';
import { parseLabel } from '../../shared/labels/label.ts';
import { verifyChains } from '../../shared/log/chain.ts';

const settings = { seed: 1, hours: 26, startMs: Date.UTC(2026, 2, 2, 6) };
const own = played();

function played() {
  const { entries, playTo } = openLanesPlay(settings);
  playTo(settings.startMs + settings.hours * 3_600_000);
  return entries;
}

/** The floor after what has happened by then, hours after the start. */
function floorAfter(hours: number) {
  const floor = emptyState();
  const untilMs = settings.startMs + hours * 3_600_000;
  for (const entry of own) if (entry.hlc.ms <= untilMs) applyEntry(floor, entry);
  return floor;
}

test('its log is whole, all of kinds that fold, and the same each time', () => {
  expect(verifyChains(own)).toMatchObject({ ok: true, entries: own.length, tablets: 1 });
  expect(own.filter((entry) => readFloorEntry(entry) === null)).toEqual([]);
  expect(played()).toEqual(own);
});

test('what is written of a reel is what its own label says', () => {
  const put = own.filter(({ kind }) => kind === 'reel.verified').map(({ payload }) => payload);
  const read = put.map(({ codes }) => parseLabel(codes as readonly string[])); // texts by the kind's schema
  expect(read.map(({ reel, lot, quantity }) => ({ reel, lot, quantity }))).toEqual(
    put.map(({ reel, lot, quantity }) => ({ reel, lot, quantity })),
  );
});

test('both lanes build at once, and what stands on a slot feeds both', () => {
  const floor = floorAfter(2.4);
  expect([...floor.lines.values()].map(({ name }) => name)).toEqual(['Line 1, lane 1', 'Line 1, lane 2']);
  const [one = '', two = ''] = [...floor.lines.keys()];
  expect(sharesSlots(one, two)).toBe(true);
  const runs = [one, two].map((line) => floor.runs.get(floor.current.get(line) ?? ''));
  for (const run of runs) expect(run?.done).toBeGreaterThan(100);
  expect(new Set(runs.map((run) => run?.setup)).size).toBe(2);
  const [slots = [], others = []] = runs.map((run) => floor.setups.get(run?.setup ?? '')?.slots ?? []);
  const shared = slots.filter(({ slot }) => others.some((other) => other.slot === slot));
  expect(shared.length).toBeGreaterThanOrEqual(5);
  expect(shared.length).toBeLessThan(Math.min(slots.length, others.length));
  expect(floor.conflicts.size).toBe(0);
});

test('no slot runs dry: each is spliced in time by what both lanes take', () => {
  expect(
    own.filter(({ kind, payload }) => kind === 'reel.verified' && payload['act'] === 'splice').length,
  ).toBeGreaterThan(20);
  for (const hours of [1, 3, 8, 17, 26]) {
    const floor = floorAfter(hours);
    const left = [...floor.slots.values()].map((slot) => slotLeft(floor, slot, 0.003).parts ?? 0);
    expect(left.length).toBe(10);
    expect(Math.min(...left), `${hours} h`).toBeGreaterThan(0);
  }
});

test('it shares no reel and no slot with the large line beside it', () => {
  const all = simulateLines({ ...settings, hours: 1 }, 1, { lanes: true });
  const floor = emptyState();
  for (const entry of all) applyEntry(floor, entry);
  expect([...floor.lines.values()].map(({ name }) => name)).toEqual([
    'Line 2',
    'Line 1, lane 1',
    'Line 1, lane 2',
  ]);
  expect(floor.conflicts.size).toBe(0);
  const reels = [...floor.slots.values()].flatMap(({ line, tapes }) =>
    tapes.map(({ reel }) => [reel, line] as const),
  );
  expect(new Map(reels).size).toBe(new Set(reels.map(String)).size);
});
