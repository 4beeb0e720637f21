// What the moments of a line hang on, in words.

import { expect, test } from 'vitest';
import { holdText } from '../../../../src/app/frame/hold-text.ts';

const at = (ceased: boolean, phase: 'running' | 'stopped' | 'ended') =>
  holdText({ counting: { ceased }, run: { phase } });

test('a pace that nobody counts comes first, then a line that stands, then nothing', () => {
  expect(at(true, 'running')).toBe('if it kept its pace');
  expect(at(false, 'stopped')).toBe('if it starts again now');
  expect(at(false, 'running')).toBeNull();
  expect(holdText(null)).toBeNull();
});
