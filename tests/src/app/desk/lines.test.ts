// Going from one line of the tablet to the other: what was in hand is there again, on the line where it belongs; a reel comes along.

import { computed, signal } from '@preact/signals';
import { beforeEach, expect, test } from 'vitest';
import { type Desk, emptyDesk, type ReelInHand } from '../../../../shared/desk/model.ts';
import type { App } from '../../../../src/app/app.ts';
import { askAgain, carryOn, clearDesk, setQuantity } from '../../../../src/app/desk/answers.ts';
import { bringToLine, followLine } from '../../../../src/app/desk/lines.ts';
import { type DeskState, goOn, openDesk, type ShownVerdict } from '../../../../src/app/desk/state.ts';
import { linesBeside, serveLines, standAt, takeLine } from '../../../../src/app/line-in-hand.ts';
import { firstPreferences, type Preferences } from '../../../../src/app/store/preferences.ts';

let nowMs = 0;
beforeEach(() => {
  nowMs = Date.UTC(2026, 2, 2, 8);
});

const HOUR_MS = 3_600_000;
const lines = new Map([
  ['L1', { name: 'Line 1' }],
  ['L2', { name: 'Line 2' }],
  ['L3', { name: 'Line 3' }],
]);

function tablet() {
  const preferences = signal<Preferences>({ ...firstPreferences, line: 'L1', serves: ['L1', 'L2'] });
  const line = computed(() => preferences.value.line);
  const beside = computed(() => linesBeside(preferences.value.serves, line.value, lines));
  const store = { floor: () => ({ lines }) };
  // The part of the app that a desk without scans asks.
  const clock = { nowMs: () => nowMs };
  const app = { preferences, line, beside, store, clock, notice: signal(null) } as unknown as App;
  const none = () => undefined;
  const state = openDesk(app, { onBadge: none, onPanel: none, onTakeOut: none });
  return { app, state };
}
const tap = ({ app, state }: { app: App; state: DeskState }, line: string) => {
  takeLine(app, line);
  followLine(state);
};
const reel = { reel: 'K1', part: 'R-100' } as ReelInHand; // nothing here looks into it
const atSlot: Desk = { ...emptyDesk, slot: 'M1-F-001', atSlot: true, oldSeen: true };

test('a tap to the other line leaves the slot on its own, and coming back brings it back', () => {
  const here = tablet();
  const { state } = here;
  state.desk.value = { ...atSlot, reel };
  tap(here, 'L2');
  expect(state.desk.value).toEqual(emptyDesk);
  state.desk.value = { ...emptyDesk, slot: 'M1-F-009' };
  nowMs += HOUR_MS;
  const leftMs = nowMs - HOUR_MS;
  tap(here, 'L1');
  expect(state.desk.value).toEqual({ ...atSlot, reel, told: { tell: 'came-back', atMs: leftMs } });
  tap(here, 'L2');
  expect(state.desk.value.slot).toBe('M1-F-009');
});

test('a reel that no slot was scanned for comes along by a tap', () => {
  const here = tablet();
  here.state.desk.value = { ...emptyDesk, reel };
  tap(here, 'L2');
  expect(here.state.desk.value.reel).toBe(reel);
});

test('a reel in hand is put by where something waits on the other line, and is not lost', () => {
  const here = tablet();
  here.state.desk.value = atSlot;
  tap(here, 'L2');
  here.state.desk.value = { ...emptyDesk, reel };
  tap(here, 'L1');
  expect(here.state.desk.value).toMatchObject({ slot: 'M1-F-001', reel: null });
  tap(here, 'L2');
  expect(here.state.desk.value.reel).toBe(reel);
});

test('a scan brings the reel to the other line, and the slot waits on its own without it', () => {
  const here = tablet();
  const { app, state } = here;
  state.desk.value = { ...atSlot, reel };
  bringToLine(state, 'L2', null);
  expect(app.line.value).toBe('L2');
  expect(app.beside.value).toEqual(['L1']);
  expect(state.desk.value).toEqual({ ...emptyDesk, reel });
  expect(app.notice.value?.text).toContain('Line 2');
  followLine(state); // the line in hand has changed: nothing more to do
  expect(state.desk.value.reel).toBe(reel);
  state.desk.value = emptyDesk;
  tap(here, 'L1');
  expect(state.desk.value).toEqual({ ...atSlot, told: { tell: 'came-back', atMs: nowMs } });
});

test('a scan that names the slot that waits on the other line goes on with it', () => {
  const here = tablet();
  here.state.desk.value = { ...emptyDesk, slot: 'M1-F-001', feeder: 'FD-1' };
  tap(here, 'L2');
  bringToLine(here.state, 'L1', 'M1-F-001');
  expect(here.state.desk.value).toMatchObject({ slot: 'M1-F-001', feeder: 'FD-1' });
});

test.each(['M1-F-003', null])(
  'a scan that names %s on the other line begins anew: what waits at another slot is dropped',
  (slot) => {
    const here = tablet();
    const { state } = here;
    state.desk.value = { ...atSlot, reel };
    tap(here, 'L2');
    bringToLine(state, 'L1', slot);
    expect(state.desk.value).toEqual(emptyDesk);
    tap(here, 'L2');
    tap(here, 'L1');
    expect(state.desk.value).toEqual(emptyDesk);
  },
);

test('what waits on a line does not outlive the reel that is brought there', () => {
  const here = tablet();
  const { state } = here;
  state.desk.value = { ...atSlot, feeder: 'FD-1' };
  tap(here, 'L2');
  state.desk.value = { ...emptyDesk, reel };
  bringToLine(state, 'L1', 'M1-F-003');
  expect(state.desk.value).toEqual({ ...emptyDesk, reel });
  state.desk.value = emptyDesk;
  tap(here, 'L2');
  tap(here, 'L1');
  expect(state.desk.value).toEqual(emptyDesk);
});

test('what was left longer ago than a shift comes back neither by a tap nor by a scan', () => {
  for (const come of [
    (here: ReturnType<typeof tablet>) => tap(here, 'L1'),
    ({ state }: ReturnType<typeof tablet>) => bringToLine(state, 'L1', 'M1-F-001'),
  ]) {
    const here = tablet();
    here.state.desk.value = atSlot;
    tap(here, 'L2');
    nowMs += 8 * HOUR_MS + 1;
    come(here);
    expect(here.state.desk.value).toEqual(emptyDesk);
  }
});

test('a check of a line waits where it is', () => {
  const here = tablet();
  here.state.desk.value = { ...emptyDesk, mode: 'sweep' };
  tap(here, 'L2');
  expect(here.state.desk.value.mode).toBe('work');
  tap(here, 'L1');
  expect(here.state.desk.value.mode).toBe('sweep');
});

test('a refusal that is answered after the tablet went on keeps its own line’s slot and drops its reel', () => {
  const here = tablet();
  const { state } = here;
  state.desk.value = { ...atSlot, reel };
  tap(here, 'L2');
  const refused = { line: 'L1', verdict: 'refused', bad: 'reel' } as ShownVerdict; // what goOn() asks
  state.shown.value = refused;
  goOn(state);
  expect(state.desk.value).toEqual(emptyDesk);
  tap(here, 'L1');
  expect(state.desk.value).toEqual({ ...atSlot, told: { tell: 'came-back', atMs: nowMs } });
});

/** A verdict on line 1 came after the tablet had gone on to line 2, where a slot is in hand. */
function answeredLate() {
  const here = tablet();
  const { state } = here;
  state.desk.value = { ...atSlot, reel };
  tap(here, 'L2');
  state.desk.value = { ...emptyDesk, slot: 'M1-F-009' };
  const slot = 'M1-F-001';
  state.shown.value = {
    line: 'L1',
    slot,
    feeder: null,
    reel,
    verdict: 'refused',
    bad: 'reel',
  } as ShownVerdict; // what answers ask
  return here;
}

test.each([
  [
    'a quantity',
    (state: DeskState) => setQuantity(state, 900),
    { slot: 'M1-F-001', reel: { quantity: 900 } },
  ],
  ['the question once more', askAgain, { slot: 'M1-F-001', reel }],
  ['another slot for its reel', carryOn, { slot: null, reel }],
])('%s answers a verdict on its own line, and the other line keeps what it has', (_, answer, there) => {
  const here = answeredLate();
  const { app, state } = here;
  answer(state);
  expect(state.shown.value).toBeNull();
  expect(app.line.value).toBe('L1');
  expect(app.notice.value?.text).toContain('Line 1');
  expect(state.desk.value).toMatchObject({ ...there, told: null });
  tap(here, 'L2');
  expect(state.desk.value).toMatchObject({ slot: 'M1-F-009', reel: null });
});

test('all is put down on the line in hand alone, whatever line a verdict is shown of', () => {
  const here = answeredLate();
  const { state } = here;
  clearDesk(state);
  expect(state.shown.value).toBeNull();
  expect(state.desk.value).toEqual(emptyDesk);
  tap(here, 'L1');
  expect(state.desk.value).toMatchObject({ slot: 'M1-F-001', reel: null });
});

test('a line is served beside another or alone; a line that the plant lost is none', () => {
  const { app } = tablet();
  serveLines(app, 'L2', 'L1');
  expect([app.line.value, ...app.beside.value]).toEqual(['L2', 'L1']);
  takeLine(app, 'L1');
  expect([app.line.value, ...app.beside.value]).toEqual(['L1', 'L2']);
  serveLines(app, 'L1', null);
  expect(app.beside.value).toEqual([]);
  expect(linesBeside(['L1', 'gone'], 'L1', lines)).toEqual([]);
});

test('a tablet that stands at the line beside from now on serves both still', () => {
  const { app } = tablet();
  standAt(app, 'L2');
  expect([app.line.value, ...app.beside.value]).toEqual(['L2', 'L1']);
});

test('a tablet that stands at a third line serves that in the place of the one in hand', () => {
  const { app } = tablet();
  standAt(app, 'L3');
  expect([app.line.value, ...app.beside.value]).toEqual(['L3', 'L2']);
  standAt(app, 'L2');
  expect([app.line.value, ...app.beside.value]).toEqual(['L2', 'L3']);
});

test('a look at a third line leaves both served, also by standing at one of them after it', () => {
  const { app } = tablet();
  takeLine(app, 'L3');
  expect([app.line.value, ...app.beside.value]).toEqual(['L3', 'L1', 'L2']);
  standAt(app, 'L2');
  expect([app.line.value, ...app.beside.value]).toEqual(['L2', 'L1']);
});
