// When somebody is signed out: the line's minutes, the usual ones, and at the latest a shift.

import { expect, test } from 'vitest';
import { longestShiftMinutes, signOutLimits } from '../../../shared/floor/sign-out.ts';
import { beginStory, tellPlant } from './story.ts';

const shift = (from: string, to: string) => ({ days: [1], from, to });

test('a shift is as long as the longest entered, over midnight too, and eight hours where none is', () => {
  expect(longestShiftMinutes(undefined)).toBe(480);
  expect(longestShiftMinutes({ shifts: [shift('06:00', '14:00'), shift('22:00', '06:30')] })).toBe(510);
  expect(longestShiftMinutes({ shifts: [shift('06:00', '06:00')] })).toBe(1440);
});

test('nobody stays longer than a shift, whatever the minutes', () => {
  expect(signOutLimits(undefined, undefined)).toEqual({ idleMs: 1_800_000, shiftMs: 28_800_000 });
  expect(signOutLimits(undefined, 5)).toEqual({ idleMs: 300_000, shiftMs: 28_800_000 });
  expect(signOutLimits({ shifts: [shift('06:00', '10:00')] }, 300).idleMs).toBe(4 * 3_600_000);
});

test('the newest minutes of a line count', () => {
  const story = beginStory();
  tellPlant(story);
  story.tell('line.idle-ruled', { line: 'L1', minutes: 10 });
  story.tell('line.idle-ruled', { line: 'L1', minutes: 45 });
  expect(story.floor().idles.get('L1')).toBe(45);
});
