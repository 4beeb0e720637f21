// What is open on the lanes of one line is named, shown and answered by the lane that gives it. (No outside source.)

import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { laneLine } from '../../../../shared/floor/lanes.ts';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { lineOutlook, openWarnings } from '../../../../shared/outlook/line.ts';
import { loudestOpen } from '../../../../shared/outlook/loudest-open.ts';
import type { App } from '../../../../src/app/app.ts';
import { openOn } from '../../../../src/app/outlook/open-warnings.ts';
import { createWarner } from '../../../../src/app/outlook/warn.ts';
import { startWatch } from '../../../../src/app/outlook/watch.ts';
import { realLineTold } from '../../../../src/app/real-line-told.ts';
import { beginStory, started, startMs, tellPlant, verified } from '../../../shared/floor/story.ts';

const nowMs = startMs + 60_000;
const lane2 = laneLine('L1', 2);
const name = 'Brae line 1, lane 2';

/** Lanes of line 1 run, and a reel of theirs is short. */
function shortLanes(...running: readonly string[]) {
  const story = beginStory();
  tellPlant(story);
  story.tell('line.defined', { line: lane2, name, zone: 'UTC', machines: [] });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 4 }));
  for (const line of running) story.tell('run.started', started(`run of ${line}`, { line }));
  const floor = story.floor();
  const watches = running.map((line) => {
    const outlook = lineOutlook(floor, line, { nowMs, calendar: lineCalendar(floor, line, nowMs) });
    if (outlook === null) throw new TypeError(`Cannot look at ${line} as it must run: current value is null`);
    return { outlook: signal(outlook), warnings: signal(openWarnings(outlook)) };
  });
  return { floor, watches };
}

beforeEach(() => {
  vi.stubGlobal('document', { addEventListener: () => undefined, visibilityState: 'visible' });
  vi.stubGlobal('setInterval', () => 0); // each look is asked for
});
afterEach(() => void vi.unstubAllGlobals());

test('a warning comes with the outlook of its lane', () => {
  const { watches } = shortLanes(lane2);
  const loudest = loudestOpen(openOn(watches));
  expect(loudest?.slot.slot).toBe('M1-F-001');
  expect(loudest?.outlook.line).toBe(lane2);
  expect(loudestOpen(openOn([{ outlook: signal(null), warnings: signal([]) }]))).toBeNull();
});

test('what both lanes give of one slot is one warning, the louder one', () => {
  const { watches } = shortLanes('L1', lane2);
  expect(watches.map(({ warnings }) => warnings.value.length)).toEqual([1, 1]);
  expect(openOn(watches).map(({ outlook }) => outlook.line)).toEqual(['L1']);
  const quieter = watches.map(({ outlook, warnings }, at) => {
    const soon = warnings.value.map((slot) => ({
      ...slot,
      warning: { ...slot.warning, level: 'soon' as const },
    }));
    return at === 0 ? { outlook, warnings: signal(soon) } : { outlook, warnings };
  });
  expect(openOn(quieter).map(({ outlook }) => outlook.line)).toEqual([lane2]);
  const relieved = watches.map(({ outlook, warnings }, at) => {
    const taken = warnings.value.map((slot) => ({ ...slot, turn: { after: null, backup: 'M1-F-002' } }));
    return at === 0 ? { outlook, warnings: signal(taken) } : { outlook, warnings };
  });
  expect(openOn(relieved).map(({ outlook }) => outlook.line)).toEqual([lane2]);
});

test('in practice a slot is told by the name of the lane that runs short', () => {
  const { floor, watches } = shortLanes(lane2);
  const real = { beside: signal(['L2']), store: { floor: () => floor }, nowMs: signal(nowMs) };
  expect(realLineTold(real as unknown as App, openOn(watches))).toContain(`${name} · M1-F-001`); // the part of the app that it asks
});

test('a note of a warning is written for the lane that is watched', async () => {
  const { floor } = shortLanes(lane2);
  const written: unknown[] = [];
  const app = {
    line: signal(lane2),
    store: { floor: () => floor, count: () => 1, append: async () => undefined },
    clock: { nowMs: () => nowMs },
    tick: signal(0),
    write: async (drafts: readonly unknown[]) => void written.push(...drafts),
  } as unknown as App; // the part of it that is asked
  const warner = createWarner(app, { call: () => undefined } as never); // all that is asked of an alarm
  const watch = startWatch(app, { warner, remembered: new Map() });
  await expect.poll(() => watch.warnings.value.length).toBe(1);
  await watch.acknowledge(openOn([watch]));
  expect(written).toMatchObject([
    { kind: 'warning.acknowledged', payload: { line: lane2, slot: 'M1-F-001' } },
  ]);
});
