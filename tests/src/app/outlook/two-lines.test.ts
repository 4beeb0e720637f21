// A tablet of two lines: the line beside is heard, once, also when it is taken in hand; said in practice too; and no line shows another's walks.

import { signal } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { lineOutlook, type Outlook, openWarnings } from '../../../../shared/outlook/line.ts';
import type { WalkPlan } from '../../../../shared/outlook/walks.ts';
import type { App } from '../../../../src/app/app.ts';
import { watchBeside } from '../../../../src/app/outlook/beside.ts';
import { openOn } from '../../../../src/app/outlook/open-warnings.ts';
import { planSoon, type Walker } from '../../../../src/app/outlook/walks.ts';
import { createWarner } from '../../../../src/app/outlook/warn.ts';
import { startWatch } from '../../../../src/app/outlook/watch.ts';
import { realLineTold } from '../../../../src/app/real-line-told.ts';
import { beginStory, counted, started, startMs, tellPlant, verified } from '../../../shared/floor/story.ts';

const nowMs = startMs + 180_000;

/** Line 1 runs, and a reel of it is short. */
function shortLine() {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1', { panelsWanted: 5000, panelSeconds: 60 }));
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 8, run: 'run-1' }), {
    at: 60,
  });
  story.tell('panels.counted', counted('run-1', 1), { at: 120 });
  const floor = story.floor();
  const outlook = lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  if (outlook === null) throw new TypeError('Cannot look at line 1 as it must run: current value is null');
  return { floor, outlook };
}

/** The part of an app that watching asks: line 2 in hand, line 1 beside. */
function tablet() {
  const { floor } = shortLine();
  const [line, beside] = [signal('L2'), signal<readonly string[]>(['L1'])];
  const raised: unknown[] = [];
  const append = async (drafts: readonly unknown[]) => void raised.push(...drafts);
  const store = { floor: () => floor, count: () => 1, append };
  const clock = { nowMs: () => nowMs };
  const app = { line, beside, store, clock, tick: signal(0), nowMs: signal(nowMs) } as unknown as App;
  const take = (to: string, other: string) => {
    line.value = to;
    beside.value = [other];
  };
  return { app, raised, take };
}

beforeEach(() => {
  vi.stubGlobal('document', { addEventListener: () => undefined, visibilityState: 'visible' });
  vi.stubGlobal('setInterval', () => 0); // each look is asked for
});
afterEach(() => void vi.unstubAllGlobals());

describe('the line beside', () => {
  test('is called out once and written down once, also when it is taken in hand and left again', async () => {
    const { app, raised, take } = tablet();
    const heard: string[] = [];
    const warner = createWarner(app, { call: (level: string) => void heard.push(level) } as never); // all that is asked of an alarm
    const memory = { warner, remembered: new Map() };
    const watch = startWatch(app, memory);
    const beside = watchBeside(app, memory);
    await expect.poll(() => beside.value[0]?.watch.warnings.value.length).toBe(1);
    expect(heard).toHaveLength(1);
    take('L1', 'L2');
    await expect.poll(() => watch.warnings.value.length).toBe(1);
    take('L2', 'L1');
    await expect.poll(() => beside.value[0]?.watch.warnings.value.length).toBe(1);
    expect(heard).toHaveLength(1);
    expect(raised).toHaveLength(1);
  });

  test('is told in practice, by its name', () => {
    const { app } = tablet();
    const { floor, outlook } = shortLine();
    const name = floor.lines.get('L1')?.name ?? '';
    const quiet = { outlook: signal(outlook), warnings: signal([]) };
    const short = { outlook: signal(outlook), warnings: signal(openWarnings(outlook)) };
    expect(realLineTold(app, openOn([quiet, short]))).toContain(`${name} · M1-F-001`);
    expect(realLineTold(app, openOn([quiet]))).toBeNull();
  });
});

test('walks that are answered after another line came into hand are not shown for it', async () => {
  const { floor, outlook } = shortLine();
  const answers: (() => void)[] = [];
  const walks = signal<WalkPlan | null>(null);
  const now = signal<Outlook | null>(outlook);
  const answer = { shares: [], remedies: [] };
  const walker: Walker = {
    app: { store: { floor: () => floor } } as unknown as App, // all that planning asks
    outlook: now,
    walks,
    planner: (_question, take) => void answers.push(() => take(answer)),
    planned: null,
    isWaiting: false,
    sharedMs: Number.NEGATIVE_INFINITY,
  };
  planSoon(walker);
  await expect.poll(() => answers.length).toBe(1);
  now.value = { ...outlook, line: 'L2', run: { ...outlook.run, run: 'run-2' } };
  answers[0]?.();
  expect(walks.value).toBeNull();
  now.value = outlook;
  answers[0]?.();
  expect(walks.value).not.toBeNull();
});
