// What was in hand when the browser closed comes back for the person who scanned it, on the same line, within a shift; for nobody else.

import { signal } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { emptyDesk } from '../../../../shared/desk/model.ts';
import type { App } from '../../../../src/app/app.ts';
import type { DeskRun } from '../../../../src/app/desk/desk.ts';
import { deskFrom, keepDesk, leftFrom } from '../../../../src/app/desk/kept.ts';
import { somebodyWaits } from '../../../../src/app/device/awaited.ts';

const desk = {
  slot: 'M1-F-001',
  atSlot: true,
  feeder: 'FD-07',
  reel: null,
  partial: null,
  oldSeen: false,
  old: null,
};
const kept = { person: 'ana', line: 'L1', atMs: 1000, desk };
const now = { person: 'ana', line: 'L1', nowMs: 60_000 };

describe('deskFrom()', () => {
  test('brings the wells back with the moment that they are from, and waits for a word', () => {
    expect(deskFrom(kept, now)).toMatchObject({
      slot: 'M1-F-001',
      feeder: 'FD-07',
      mode: 'work',
      question: null,
      told: { tell: 'came-back', atMs: 1000 },
    });
  });

  test('brings nothing back for another person, nobody, another line, after a shift, or where nothing was in hand', () => {
    expect(deskFrom(kept, { ...now, person: 'bo' })).toBeNull();
    expect(deskFrom({ ...kept, person: null }, { ...now, person: null })).toBeNull();
    expect(deskFrom(kept, { ...now, line: 'L2' })).toBeNull();
    expect(deskFrom(kept, { ...now, nowMs: 1000 + 8 * 3_600_000 + 1 })).toBeNull();
    expect(deskFrom({ ...kept, desk: { ...desk, slot: null, feeder: null } }, now)).toBeNull();
    expect(deskFrom(null, now)).toBeNull();
  });
});

describe('leftFrom()', () => {
  const both = { ...kept, left: [['L2', { ...desk, slot: 'M1-F-009' }]] as const };

  test('brings back what waited on the other line, for its person, within a shift', () => {
    expect(leftFrom(both, now)).toMatchObject([['L2', { desk: { slot: 'M1-F-009' }, atMs: 1000 }]]);
    expect(leftFrom(both, { ...now, person: 'bo' })).toEqual([]);
    expect(leftFrom(both, { ...now, nowMs: 1000 + 8 * 3_600_000 + 1 })).toEqual([]);
  });

  test('goes by the moment in which the line was left', () => {
    const leftAt = (atMs: number) => ({ ...kept, left: [['L2', desk, atMs]] as const });
    expect(leftFrom(leftAt(500), now)).toMatchObject([['L2', { atMs: 500 }]]);
    expect(leftFrom(leftAt(now.nowMs - 8 * 3_600_000 - 1), now)).toEqual([]);
  });

  test('brings nothing back that an older version did not keep, or that is of the line in hand', () => {
    expect(leftFrom(kept, now)).toEqual([]);
    expect(leftFrom(both, { ...now, line: 'L2' })).toEqual([]);
    expect(leftFrom(null, now)).toEqual([]);
  });
});

const page = Object.assign(new EventTarget(), { visibilityState: 'visible' });
const goes = new EventTarget();
beforeEach(() => {
  page.visibilityState = 'visible';
  vi.stubGlobal('document', page);
  vi.stubGlobal('addEventListener', goes.addEventListener.bind(goes));
});
afterEach(() => {
  vi.unstubAllGlobals();
});

/** A tablet that keeps what is on its desk, and what it has kept. */
async function keepingTablet() {
  const rows: { readonly value: unknown }[] = [];
  const cache = {
    kept: {
      get: async () => undefined,
      put: async (row: { readonly value: unknown }) => void rows.push(row),
    },
  };
  const clock = { nowMs: () => 2000 };
  const person = signal({ person: 'ana' });
  const app = { store: { cache }, person, line: signal('L2'), clock } as unknown as App; // what keeping asks
  const left = signal(new Map());
  const run = { desk: signal(emptyDesk), shown: signal(null), left };
  await keepDesk(app, run as unknown as DeskRun); // likewise
  return { rows, run };
}

test('what changes on a line that was left is kept at once', async () => {
  const { rows, run } = await keepingTablet();
  run.left.value = new Map([['L1', { desk: { ...emptyDesk, slot: 'M1-F-001' }, atMs: 1000 }]]);
  expect(rows.at(-1)?.value).toMatchObject({ left: [['L1', { slot: 'M1-F-001' }, 1000]] });
});

test('half a scan is kept at once; that a verdict left nothing in hand, once it is drawn', async () => {
  vi.useFakeTimers();
  vi.stubGlobal('requestAnimationFrame', (work: () => void) => void setTimeout(work, 16));
  try {
    const { rows, run } = await keepingTablet();
    const answered = somebodyWaits();
    run.desk.value = { ...emptyDesk, slot: 'M1-F-001' };
    expect(rows.at(-1)?.value).toMatchObject({ desk: { slot: 'M1-F-001' } });
    run.desk.value = emptyDesk;
    expect(rows.at(-1)?.value).toMatchObject({ desk: { slot: 'M1-F-001' } });
    answered();
    vi.advanceTimersByTime(100);
    expect(rows.at(-1)?.value).toMatchObject({ desk: { slot: null } });
  } finally {
    vi.unstubAllGlobals();
    vi.useRealTimers();
  }
});

test.each([
  [
    'is hidden',
    () => {
      page.visibilityState = 'hidden';
      page.dispatchEvent(new Event('visibilitychange'));
    },
  ],
  ['goes', () => void goes.dispatchEvent(new Event('pagehide'))],
])('that nothing is in hand any more is kept at once where the page %s', async (_, leave) => {
  vi.useFakeTimers();
  try {
    const { rows, run } = await keepingTablet();
    const answered = somebodyWaits();
    run.desk.value = { ...emptyDesk, slot: 'M1-F-001' };
    run.desk.value = emptyDesk;
    page.dispatchEvent(new Event('visibilitychange'));
    expect(rows.at(-1)?.value).toMatchObject({ desk: { slot: 'M1-F-001' } });
    leave();
    expect(rows.at(-1)?.value).toMatchObject({ desk: { slot: null } });
    vi.stubGlobal('requestAnimationFrame', (work: () => void) => void setTimeout(work, 16));
    answered();
    vi.runAllTimers();
  } finally {
    vi.useRealTimers();
  }
});
