// What readers of the screen are told, they are told once. (No outside source.)

import { expect, test } from 'vitest';
import { takeFresh } from '../../../../src/app/ui/SaidOnce.tsx';

test('takeFresh() takes a thing once, also where it is named twice in one breath', () => {
  const known = new Set(['a']);
  const all = [
    { id: 'a', say: () => 'first' },
    { id: 'b', say: () => 'second' },
    { id: 'b', say: () => 'second, by the other lane' },
  ];
  expect(takeFresh(all, known).map(({ say }) => say())).toEqual(['second']);
  expect(takeFresh(all, known)).toEqual([]);
});
