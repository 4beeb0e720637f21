// Signed out after the minutes without a touch and after a shift, with the clock set back, with a steady clock that sleeps, over a reload.

import { expect, test } from 'vitest';
import { createPresence, type KeptPresence } from '../../../../src/app/device/presence.ts';

const minute = 60_000;
const limits = { idleMs: 30 * minute, shiftMs: 8 * 60 * minute };

function there(kept: KeptPresence | null = null, startMs = 1_000_000_000) {
  let wallMs = startMs;
  let steadyMs = 5;
  const presence = createPresence({ wall: { nowMs: () => wallMs }, steady: { nowMs: () => steadyMs } }, kept);
  return {
    presence,
    pass: (wall: number, steady = wall) => {
      wallMs += wall * minute;
      steadyMs += steady * minute;
    },
  };
}

test('ends after the minutes without a touch, each touch begins them anew', () => {
  const { presence, pass } = there();
  presence.signedIn();
  pass(29);
  expect(presence.ended(limits)).toBeNull();
  presence.used();
  pass(29);
  expect(presence.ended(limits)).toBeNull();
  pass(1);
  expect(presence.ended(limits)).toBe('idle');
});

test('ends after a shift, however often it is touched', () => {
  const { presence, pass } = there();
  presence.signedIn();
  for (let quarter = 1; quarter < 32; quarter++) {
    pass(15);
    expect(presence.ended(limits), `${quarter}`).toBeNull();
    presence.used();
  }
  pass(15);
  expect(presence.ended(limits)).toBe('shift');
});

test('does not believe a clock that was set back', () => {
  const { presence, pass } = there();
  presence.signedIn();
  pass(-60, 0);
  expect(presence.ended(limits)).toBeNull();
  pass(30);
  expect(presence.ended(limits)).toBe('idle');
});

test('counts a sleep in which the steady clock stood', () => {
  const { presence, pass } = there();
  presence.signedIn();
  pass(9 * 60, 0);
  expect(presence.ended(limits)).toBe('idle');
});

test('goes on over a reload, and takes nobody to be there where the clock reads earlier than before', () => {
  const kept = { usedMs: 1_000_000_000, signedInMs: 1_000_000_000 };
  const { presence, pass } = there(kept, 1_000_000_000 + 20 * minute);
  expect(presence.ended(limits)).toBeNull();
  expect(presence.kept()).toEqual(kept);
  pass(10);
  expect(presence.ended(limits)).toBe('idle');
  expect(there(kept, 1_000_000_000 - 60 * minute).presence.ended(limits)).toBe('idle');
  expect(there(kept, 1_000_000_000 - 1_000).presence.ended(limits)).toBeNull();
});

test('begins at the first look where nothing was kept', () => {
  const { presence, pass } = there();
  expect(presence.ended(limits)).toBeNull();
  pass(30);
  expect(presence.ended(limits)).toBe('idle');
});
