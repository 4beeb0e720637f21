// Whose a scan is on a tablet of two lines: the step's on the screen before the other line's, and a reel comes off the line it was scanned at.

import { computed, signal } from '@preact/signals';
import { expect, test, vi } from 'vitest';
import * as judgement from '../../../../shared/desk/judgement.ts';
import { emptyDesk } from '../../../../shared/desk/model.ts';
import type { Scan } from '../../../../shared/labels/scan.ts';
import type { App } from '../../../../src/app/app.ts';
import { openDesk } from '../../../../src/app/desk/state.ts';
import { takeOut } from '../../../../src/app/desk/take-out.ts';
import { settle, takeAtDesk } from '../../../../src/app/desk/taking.ts';
import { linesBeside } from '../../../../src/app/line-in-hand.ts';
import { firstPreferences, type Preferences } from '../../../../src/app/store/preferences.ts';
import {
  beginStory,
  brookSetup,
  startMs,
  tellPlant,
  verified,
  wantedSlot,
} from '../../../shared/floor/story.ts';

const scan = (text: string): Scan => ({
  codes: [{ text, format: null, symbologyId: null }],
  via: 'camera',
  atMs: 0,
});

/** A tablet on line 1 that serves line 2 beside it; on either stands a reel on a slot of one name. */
function tablet() {
  const story = beginStory();
  tellPlant(story);
  const machines = story.floor().lines.get('L1')?.machines ?? [];
  story.tell('line.defined', {
    line: 'L2',
    name: 'Brae line 2',
    zone: 'Europe/London',
    machines: [...machines],
  });
  const on = { line: 'L2', setup: 'fell-top-a' };
  const slots = [wantedSlot('M1-F-001', 'Z-900')];
  story.tell('setup.taken', { ...brookSetup, ...on, product: 'Fell', slots });
  story.tell('setup.chosen', on);
  story.tell('reel.verified', verified('M1-F-001', 'Z-900', { ...on, reel: 'K9' }));
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  const floor = story.floor();
  const preferences = signal<Preferences>({ ...firstPreferences, line: 'L1', serves: ['L1', 'L2'] });
  const line = computed(() => preferences.value.line);
  const beside = computed(() => linesBeside(preferences.value.serves, line.value, floor.lines));
  const write = vi.fn(async (_drafts: readonly object[]) => []);
  const person = signal(null);
  // The part of the app that this asks.
  const app = {
    preferences,
    line,
    beside,
    person,
    clock: { nowMs: () => startMs },
    write,
    store: { floor: () => floor },
    notice: signal(null),
  } as unknown as App;
  const onTakeOut = vi.fn();
  const none = () => undefined;
  const state = openDesk(app, { onBadge: none, onPanel: none, onTakeOut });
  state.judgement = judgement;
  return { app, state, onTakeOut, write };
}

test('the answer of the step on the screen turns no tablet to the line on which the log has it', () => {
  const { app, state } = tablet();
  const onScan = vi.fn();
  state.step.value = {
    line: 'L1',
    isMeant: false,
    asks: { wants: 'reel', expects: null, taken: [] },
    onScan,
  };
  takeAtDesk(state, scan('K9'));
  expect(onScan.mock.calls).toEqual([[{ ok: true, value: 'K9' }]]);
  expect([app.line.value, app.notice.value]).toEqual(['L1', null]);
});

test('with no step on the screen that reel turns the tablet to its line', () => {
  const { app, state } = tablet();
  takeAtDesk(state, scan('K9'));
  expect(app.line.value).toBe('L2');
});

test('a reel that comes out is told with the line that the desk was at', () => {
  const { state, onTakeOut } = tablet();
  const off = scan('K1');
  settle(state, { ...emptyDesk, told: { tell: 'take-out', slot: 'M1-F-001' } }, off);
  expect(onTakeOut.mock.calls).toEqual([[{ line: 'L1', slot: 'M1-F-001' }, off]]);
});

test('takeOut() writes the unload of the line told, though another is in hand by then', async () => {
  const { app, write } = tablet();
  app.preferences.value = { ...app.preferences.value, line: 'L2' };
  await takeOut(app, { line: 'L1', slot: 'M1-F-001' }, 'camera');
  expect(write.mock.calls).toMatchObject([
    [[{ kind: 'reel.unloaded', payload: { line: 'L1', reel: 'K1' } }]],
  ]);
});
