// Which slots have a row on the line screen.

import { expect, test } from 'vitest';
import type { Outlook } from '../../../../../shared/outlook/line.ts';
import { rowsShown } from '../../../../../src/app/screens/line/rows.ts';

// Only what a row is chosen by.
const outlook = {
  slots: [
    { slot: 'A', forecast: { outlasts: false } },
    { slot: 'B', forecast: { outlasts: false } },
    { slot: 'C', forecast: { outlasts: true } },
    { slot: 'D', forecast: { outlasts: true } },
  ],
} as unknown as Outlook;
const shown = (all: boolean, blocked: readonly string[], most = 40) =>
  rowsShown(outlook, { all, blocked: new Set(blocked), most })
    .map(({ slot }) => slot)
    .join('');

test('what is due, at most so many', () => {
  expect(shown(false, [])).toBe('AB');
  expect(shown(false, [], 1)).toBe('A');
  expect(shown(true, [])).toBe('ABCD');
});

test('a blocked reel comes first, due or not, and once', () => {
  expect(shown(false, ['D'])).toBe('DAB');
  expect(shown(false, ['B'], 1)).toBe('BA');
  expect(shown(true, ['C'])).toBe('CABD');
});
