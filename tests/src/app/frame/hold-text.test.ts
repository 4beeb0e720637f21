// What the moments of a line hang on, in words.

import { expect, test } from 'vitest';
import { holdText } from '../../../../src/app/frame/hold-text.ts';

const at = (ceased: boolean, stands: boolean) => holdText({ counting: { ceased }, stands });

test('a pace that nobody counts comes first, then a line that stands, then nothing', () => {
  expect(at(true, false)).toBe('if it kept its pace');
  expect(at(false, true)).toBe('if it starts again now');
  expect(at(false, false)).toBeNull();
  expect(holdText(null)).toBeNull();
});
