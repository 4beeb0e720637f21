// Is a first visit short? What the page loads at once, and what it asks for by itself until the first screen works, against budgets. Sizes
// of the built files, no times: a part that slips into the start is found here on any machine.

import { expect, test } from 'vitest';
import { languages } from '../../src/app/words/words.ts';
import { askedByStart, languagePacks, sizeOf, startGraph } from './support/first-load.ts';

/** Scripts that the page loads at once, with the words of one language: kB, gzipped. */
const START_KB = 75;
/**
 * Those, what folds the log, and the first screen with what works behind it: kB, gzipped. So that weight is not only moved there. English is 2 below
 * it. What folds slots used in turn, dropped changeovers, reels long used up, run-outs prevented and tablets shut out is a fiftieth. Verdicts, what knows badges, dialogs of the run,
 * floor life, walks and calls for others come once it stands.
 */
const FIRST_SCREEN_KB = 168;

test('the page and the words of any language load within the budget', () => {
  const packs = languagePacks();
  expect(packs.length).toBe(languages.length);
  for (const pack of packs) expect(sizeOf([...startGraph(), ...pack])).toBeLessThanOrEqual(START_KB);
});

test('so does all that the first screen works with', () => {
  const parts = ['open-log', 'first-screen'].map(askedByStart);
  expect(parts.map((found) => found.length)).toEqual([1, 1]);
  const words = [...languagePacks()].sort((a, b) => sizeOf(b) - sizeOf(a))[0] ?? [];
  const all = new Set([...startGraph(), ...words, ...parts.flat().flatMap((part) => [...part])]);
  expect(sizeOf(all)).toBeLessThanOrEqual(FIRST_SCREEN_KB);
});
