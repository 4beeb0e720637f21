// Which moisture levels limit the time out of the bag.

import { expect, test } from 'vitest';
import { isLimited } from '../../../shared/floor/exposure.ts';

test('level 1 and an unstated level limit nothing (J-STD-020)', () => {
  expect([null, undefined, '', '1', '2', '5a'].map(isLimited)).toEqual([
    false,
    false,
    false,
    false,
    true,
    true,
  ]);
});
