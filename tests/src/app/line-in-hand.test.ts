// Which line is in hand after a lane is taken away, and that a move that nobody tapped is told.

import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createApp } from '../../../src/app/create-app.ts';
import { takeLine, tellMoves } from '../../../src/app/line-in-hand.ts';
import type { Preferences } from '../../../src/app/store/preferences.ts';
import type { Store } from '../../../src/app/store/store.ts';
import { fetchEveryArea } from '../../../src/app/words/fetch.ts';

beforeEach(async () => {
  await fetchEveryArea('en');
  vi.useFakeTimers();
  const soon = (work: () => void) => void setTimeout(work, 0);
  vi.stubGlobal('requestAnimationFrame', soon);
  vi.stubGlobal('document', { visibilityState: 'hidden' });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** A tablet at a line of a plant of two lines, L1 with two lanes; L0 is told first. `movedTo`: as it was kept when it was last on. */
function open(line: string | null, movedTo: string | null = null) {
  const names = ['L0', 'L1', 'L1~lane2'];
  const lines = new Map(names.map((each) => [each, { line: each, name: `Line ${each}` }]));
  let changed = () => undefined as unknown;
  const store = {
    floor: () => ({ lines }),
    onChange: (listener: () => void) => {
      changed = listener;
    },
    isScreen: false,
  } as unknown as Store; // what is read here
  const app = createApp({
    store,
    clock: { nowMs: () => 0 },
    watch: {},
    version: 'x',
    practice: null,
    preferences: signal({ line, movedTo, serves: [] as readonly string[] } as Preferences), // no other is read
  } as unknown as Parameters<typeof createApp>[0]);
  tellMoves(app);
  const change = (put: () => void) => {
    put();
    changed();
    vi.advanceTimersByTime(500);
  };
  return { app, lines, change };
}

test('a tablet whose lane is taken away goes to the line that has the machines, and says so', () => {
  const { app, lines, change } = open('L1~lane2');
  expect(app.line.value).toBe('L1~lane2');
  expect(app.notice.value).toBeNull();
  const lane = lines.get('L1~lane2');
  change(() => lines.delete('L1~lane2'));
  expect(app.line.value).toBe('L1');
  expect(app.notice.value?.text).toBe('Now on Line L1');
  const said = app.notice.value;
  change(() => undefined);
  expect(app.notice.value).toBe(said);
  // It is a lane again: an entry of another tablet says that it builds.
  change(() => lane && lines.set('L1~lane2', lane));
  expect([app.line.value, app.notice.value?.text]).toEqual(['L1~lane2', 'Now on Line L1~lane2']);
});

test('a lane that was taken away while the tablet was off is told at the start', () => {
  const { app, lines, change } = open('L1~lane3');
  expect([app.line.value, app.notice.value?.text]).toEqual(['L1', 'Now on Line L1']);
  change(() => lines.delete('L1'));
  expect([app.line.value, app.notice.value?.text]).toEqual(['L0', 'Now on Line L0']);
});

test('it is told at the first start alone, and again where the lane came back, or another line is in hand, while the tablet was off', () => {
  const told = open('L1~lane3').app.preferences.value.movedTo;
  const second = open('L1~lane3', told);
  expect([second.app.line.value, second.app.notice.value]).toEqual(['L1', null]);
  // The lane that was taken is still the one to go back to, in that start and at a later one.
  const lane = { line: 'L1~lane3', name: 'Line L1~lane3' };
  second.change(() => second.lines.set('L1~lane3', lane));
  expect(second.app.notice.value?.text).toBe('Now on Line L1~lane3');
  expect(second.app.preferences.value).toMatchObject({ line: 'L1~lane3', movedTo: null });
  const back = open('L1~lane2', told);
  expect([back.app.line.value, back.app.notice.value?.text]).toEqual(['L1~lane2', 'Now on Line L1~lane2']);
  const other = open('L9', 'L1');
  expect([other.app.line.value, other.app.notice.value?.text]).toEqual(['L0', 'Now on Line L0']);
});

test('a line that is taken by a tap, or that nobody took, is not told here', () => {
  const { app } = open('L1');
  takeLine(app, 'L0');
  expect([app.line.value, app.notice.value]).toEqual(['L0', null]);
  const moved = open('L1~lane3').app;
  takeLine(moved, 'L0');
  expect([moved.notice.value?.text, moved.preferences.value.movedTo]).toEqual(['Now on Line L1', null]);
  const first = open(null);
  expect([first.app.line.value, first.app.notice.value]).toEqual(['L0', null]);
});
