// A line at one glance says what the line's own screen says: the same outlook, walks and warnings, boiled down.

import { describe, expect, test } from 'vitest';
import { simulateShift } from '../../../demo/simulate.ts';
import { applyEntry } from '../../../shared/floor/fold.ts';
import { emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { type LineGlance, lineGlance } from '../../../shared/outlook/glance.ts';
import { hear, nothingHeard } from '../../../shared/outlook/heard.ts';
import { lineOutlook, openWarnings } from '../../../shared/outlook/line.ts';
import { beginStory, started, startMs, tellPlant, verified, wantedSlot } from '../floor/story.ts';
import { planWalks } from './compute.ts';

const beginsMs = Date.UTC(2026, 2, 2, 6);
const shift = simulateShift({ seed: 11, hours: 3, startMs: beginsMs });

/** The floor as it was at a moment of the shift. */
function floorAt(untilMs: number): FloorState {
  const floor = emptyState();
  for (const entry of shift.entries) if (entry.hlc.ms <= untilMs) applyEntry(floor, entry);
  return floor;
}

function glanceAt(floor: FloorState, line: string, nowMs: number): LineGlance | null {
  const outlook = lineOutlook(floor, line, { nowMs, calendar: lineCalendar(floor, line, nowMs) });
  const walks = outlook && planWalks(outlook, { operators: 2 });
  return lineGlance(floor, line, { nowMs, outlook, walks });
}

describe('a line that runs', () => {
  const nowMs = beginsMs + 50 * 60_000;
  const floor = floorAt(nowMs);
  const glance = glanceAt(floor, 'L2', nowMs);
  const outlook = lineOutlook(floor, 'L2', { nowMs, calendar: lineCalendar(floor, 'L2', nowMs) });

  test('says its product, how far it is and when it ends as its outlook does', () => {
    expect(glance).toMatchObject({
      name: 'Line 2',
      state: 'running',
      setup: { product: 'Tide gauge controller' },
      run: { done: outlook?.run.done, wanted: 720, endMs: outlook?.runEndMs },
      loaded: null,
      counted: { by: 'hand', name: null, lastMs: outlook?.counting.lastMs },
    });
  });

  test('says the walks that its screen lays out, and as many warnings', () => {
    const plan = outlook && planWalks(outlook, { operators: 2 });
    expect(glance?.walks.length).toBeGreaterThan(0);
    expect(glance?.walks[0]?.startMs).toBe(plan?.walks[0]?.startMs);
    expect(glance?.walks[0]?.slots).toEqual(plan?.walks[0]?.splices.map(({ slot }) => slot.slot));
    expect(glance?.warnings.count).toBe(outlook && openWarnings(outlook).length);
  });

  test('is silent once nobody counts, since the last count', () => {
    const laterMs = nowMs + 40 * 60_000;
    const later = glanceAt(floor, 'L2', laterMs);
    expect(later?.state).toBe('silent');
    expect(later?.sinceMs).toBe(glance?.counted.lastMs);
  });
});

describe('a line that does not run', () => {
  function story() {
    const told = beginStory();
    tellPlant(told);
    return told;
  }
  const glanceOf = (told: ReturnType<typeof story>) => glanceAt(told.floor(), 'L1', startMs + 3600_000);

  test('is idle without a setup, and unknown where the floor does not know it', () => {
    const told = beginStory();
    told.tell('line.defined', { line: 'L1', name: 'Brae line 1', zone: 'Europe/London', machines: [] });
    expect(glanceOf(told)).toMatchObject({ state: 'idle', setup: null, run: null, loaded: null });
    expect(glanceAt(told.floor(), 'none', startMs)).toBeNull();
  });

  test('says how far it is loaded, and that it is ready', () => {
    const told = story();
    told.tell('setup.taken', {
      setup: 'small',
      product: 'brook',
      side: 'top',
      revision: 'B',
      line: 'L1',
      source: 'test',
      slots: [wantedSlot('M1-F-001', 'R-100'), wantedSlot('M1-F-002', 'R-200')],
    });
    told.tell('setup.chosen', { line: 'L1', setup: 'small' });
    const load = (slot: string, part: string) =>
      told.tell('reel.verified', {
        ...verified(slot, part, { reel: `K-${slot}`, quantity: 500 }),
        setup: 'small',
      });
    load('M1-F-001', 'R-100');
    expect(glanceOf(told)).toMatchObject({
      state: 'loading',
      loaded: { right: 1, of: 2 },
      setup: { product: 'brook', revision: 'B' },
    });
    load('M1-F-002', 'R-200');
    expect(glanceOf(told)).toMatchObject({ state: 'ready', loaded: { right: 2, of: 2 } });
    told.tell('run.started', started('r1', { setup: 'small' }));
    told.tell('run.stopped', { run: 'r1', line: 'L1', reason: 'jam', note: '' });
    expect(glanceOf(told)).toMatchObject({ state: 'stopped', stopReason: 'jam', run: { endMs: null } });
  });
});

describe('what was heard', () => {
  test('is the newest of each line and tablet, in whatever order entries come', () => {
    const [there, back] = [nothingHeard(), nothingHeard()];
    for (const entry of shift.entries) hear(there, entry);
    for (const entry of [...shift.entries].reverse()) hear(back, entry);
    expect(back).toEqual(there);
    const last = shift.entries.filter(({ payload }) => payload['line'] === 'L2').at(-1);
    expect(there.lines.get('L2')?.atMs).toBe(last?.hlc.ms);
    expect([...there.tablets.keys()].sort()).toEqual(['demo0-line', 'demo0-store']);
    const act = shift.entries.filter(({ who, payload }) => who !== null && payload['line'] === 'L2').at(-1);
    expect(there.acts.get('L2')).toEqual({ atMs: act?.hlc.ms, who: act?.who });
  });
});
