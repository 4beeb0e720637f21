// How wide the longest word of a verdict is: what does not break, in any script. (No outside source: chosen here.)

import { expect, test } from 'vitest';
import { longestWord } from '../../../../src/app/frame/far-word.ts';

test('the longest word counts, not the sentence', () => {
  expect(longestWord('Held for the lead')).toBe(4);
  expect(longestWord('Műszakvezetőre vár')).toBe(14);
  expect(longestWord('مرفوضة')).toBe(6);
});

test('a script whose lines break between any two letters stays together for a few letters alone', () => {
  expect(longestWord('接料的料盘正确')).toBe(longestWord('拒否'));
  expect(longestWord('スプライスに正しいリール')).toBe(6);
});

test('a syllable written in one letter is wider than a letter', () => {
  expect(longestWord('스플라이스에 맞는 릴')).toBe(9);
});

test('no text is as wide as one letter, so that nothing is divided by none', () => {
  expect(longestWord('')).toBe(1);
});
