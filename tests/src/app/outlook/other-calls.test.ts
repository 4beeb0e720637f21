// A floor life that is over is called for once, and a reel that begins short; what judges them comes after the first screen.

import path from 'node:path';
import { signal } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { lineOutlook, type Outlook } from '../../../../shared/outlook/line.ts';
import type { App } from '../../../../src/app/app.ts';
import { screenStands } from '../../../../src/app/device/later.ts';
import { callForOthers } from '../../../../src/app/outlook/other-calls.ts';
import { importsOf } from '../../../arrows.ts';
import { beginStory, counted, started, startMs, tellPlant, verified } from '../../../shared/floor/story.ts';
import { readSources } from '../../../source-scan.ts';

const HOUR_MS = 3_600_000;

/** A line that runs with a reel of level 3, which has 168 h on the floor. */
function runningLine() {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1', { panelsWanted: 50_000, panelSeconds: 60 }));
  const reel = verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 30_000, run: 'run-1' });
  story.tell('reel.verified', reel, { at: 60 });
  const unknown = {
    supplierPart: null,
    quantity: null,
    lot: null,
    dateCode: null,
    celsius: null,
    humidity: null,
  };
  const from = new Date(startMs + 60_000).toISOString();
  const aired = {
    ...unknown,
    reel: 'K1',
    part: 'R-100',
    air: 'floor',
    from,
    msl: '3',
    via: 'wedge',
  } as const;
  story.tell('reel.aired', aired, { at: 60 });
  story.tell('panels.counted', counted('run-1', 1), { at: 120 });
  return story.floor();
}

test('a floor life that is over is called for, and no second time while it stands', async () => {
  const floor = runningLine();
  const outlookAt = (hours: number) => {
    const nowMs = startMs + hours * HOUR_MS;
    return lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  };
  const outlook = signal<Outlook | null>(outlookAt(0.1));
  const heard: string[] = [];
  const clock = { nowMs: () => startMs };
  // The part of the app that it asks; no line is chosen, so that its beginning is not looked at.
  const app = {
    tick: signal(0),
    line: signal(null),
    beside: signal([]),
    clock,
    store: { floor: () => floor },
  } as unknown as App;
  callForOthers(app, { watch: { outlook }, beside: signal([]) }, { call: (level) => heard.push(level) });
  screenStands();
  outlook.value = outlookAt(167.7);
  await expect.poll(() => heard, { timeout: 20_000 }).toEqual(['due']); // what judges it is fetched first
  outlook.value = outlookAt(167.8);
  outlook.value = outlookAt(170);
  await expect.poll(() => heard).toEqual(['due', 'late']);
});

test('an outlook is judged once, however often the line beside it gets a new one', async () => {
  const floor = runningLine();
  const outlookAt = (hours: number) => {
    const nowMs = startMs + hours * HOUR_MS;
    return lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  };
  const standing = outlookAt(0.1);
  if (standing === null) throw new TypeError('Cannot go on as the line must run');
  const { slots } = standing;
  let judged = 0;
  const judgedOnce = Object.defineProperty({ ...standing }, 'slots', {
    get: () => {
      judged += 1;
      return slots;
    },
  });
  const outlook = signal<Outlook | null>(null);
  const heard: string[] = [];
  const app = {
    tick: signal(0),
    line: signal(null),
    beside: signal([]),
    clock: { nowMs: () => startMs },
    store: { floor: () => floor },
  } as unknown as App; // the part of the app that it asks
  const beside = signal([{ watch: { outlook: signal<Outlook | null>(judgedOnce) } }]);
  callForOthers(app, { watch: { outlook }, beside }, { call: (level) => heard.push(level) });
  screenStands();
  outlook.value = outlookAt(167.7);
  await expect.poll(() => heard, { timeout: 20_000 }).toEqual(['due']); // what judges it is fetched first
  outlook.value = outlookAt(170);
  await expect.poll(() => heard).toEqual(['due', 'late']);
  expect(judged).toBe(1);
});

/** A line where nothing is built, with a reel that is nearly empty. */
function standingLine() {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 8 }));
  const now = { ms: startMs + HOUR_MS };
  const [tick, line] = [signal(0), signal<string | null>('L1')];
  const app = {
    tick,
    line,
    beside: signal([]),
    clock: { nowMs: () => now.ms },
    store: { floor: () => story.floor() },
  } as unknown as App; // the part of the app that it asks
  const heard: string[] = [];
  callForOthers(
    app,
    { watch: { outlook: signal<Outlook | null>(null) }, beside: signal([]) },
    { call: (level) => heard.push(level) },
  );
  screenStands();
  return {
    story,
    heard,
    /** Another entry came, after ms. */
    come: async (afterMs: number) => {
      now.ms += afterMs;
      tick.value += 1;
      await vi.runAllTimersAsync();
    },
  };
}

describe('a reel that begins short', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  test('is called for once before the run, and no second time while it lies there', async () => {
    const { story, heard, come } = standingLine();
    await come(0);
    expect(heard).toEqual(['soon']);
    await come(60_000);
    expect(heard).toEqual(['soon']);
    // Another short reel in its place is another thing to hear of, at the next look.
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K2', quantity: 8 }));
    await come(1000);
    expect(heard).toEqual(['soon']);
    await come(30_000);
    expect(heard).toEqual(['soon', 'soon']);
  });

  test('is not called for by this while the line runs: its warning is', async () => {
    const { story, heard, come } = standingLine();
    story.tell('run.started', started('run-1', { panelsWanted: 5000, panelSeconds: 60 }));
    await come(0);
    await come(60_000);
    expect(heard).toEqual([]);
  });
});

test('what the first screen works with brings no floor-life tables along', () => {
  const sources = new Map(readSources(['src/app', 'shared']).map((file) => [file.path, file]));
  const loaded = new Set<string>();
  const waiting = ['src/app/work.ts'];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const file = sources.get(next);
    if (loaded.has(next) || file === undefined) continue;
    loaded.add(next);
    for (const { name, isLoaded } of importsOf(file))
      if (isLoaded && name.startsWith('.')) waiting.push(path.posix.join(path.posix.dirname(next), name));
  }
  // The walk went down from it.
  expect(loaded).toContain('src/app/outlook/watch.ts');
  expect([...loaded].filter((name) => name.startsWith('shared/moisture/'))).toEqual([]);
});
