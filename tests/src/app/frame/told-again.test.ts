// What goes on is told to readers of the screen once, and again as soon as it is graver. (No outside source.)

import { expect, test } from 'vitest';
import type { SlotOutlook } from '../../../../shared/outlook/line.ts';
import type { Unanswered } from '../../../../shared/outlook/unanswered.ts';
import { askedFor, toSayOf } from '../../../../src/app/frame/warning-text.ts';

/** As much of a warning as is read here. */
const warns = (level: SlotOutlook['warning']['level'], backup: string | null, inMs = 60_000) =>
  ({
    slot: 'M1-F-014',
    need: 'M1-F-014/R1',
    loaded: { line: 'L1' },
    warning: { level },
    forecast: { runOutMs: { expected: inMs } },
    feeds: 'tape',
    turn: { after: null, backup },
  }) as unknown as SlotOutlook;

const said = (slot: SlotOutlook) =>
  toSayOf(slot, 'Line 1 · M1-F-014', () => ({ outlook: null, nowMs: 0, zone: 'UTC' }));

test('a warning is another one at another level, and where what would have taken over is gone; not as it counts down', () => {
  const names = [
    warns('soon', 'M1-F-016'),
    warns('due', 'M1-F-016'),
    warns('late', 'M1-F-016'),
    warns('late', null),
  ];
  expect(new Set(names.map((each) => said(each).id)).size).toBe(names.length);
  expect(said(warns('soon', null, 60_000)).id).toBe(said(warns('soon', null, 120_000)).id);
  expect(said(warns('soon', null, 60_000)).say()).not.toBe(said(warns('soon', null, 120_000)).say());
  expect(said(warns('late', null)).say()).toMatch(/^Line 1 · M1-F-014 /);
});

test('what nobody answers is another thing once it is late, and once there is more of it', () => {
  const due: Unanswered = { line: 'L1', slot: 'M1-F-014', need: 'R1', level: 'due', atMs: 0 };
  const late: Unanswered = { ...due, level: 'late' };
  const other: Unanswered = { ...due, slot: 'M1-F-016' };
  expect(new Set([[due], [late], [due, other]].map(askedFor)).size).toBe(3);
  expect(askedFor([{ ...due, atMs: 60_000 }])).toBe(askedFor([due]));
});
