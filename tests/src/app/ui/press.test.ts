// Which taps are a tremble? Taps a few milliseconds apart, as a gloved hand gives them. (No outside source: chosen here.)

import { expect, test } from 'vitest';
import { isTremble } from '../../../../src/app/ui/press.ts';

const button = (name: string) => ({ name }) as unknown as Element; // only told apart

test('isTremble() takes the same button within a moment for one tap', () => {
  const one = button('one');
  expect([0, 150, 399, 400, 500].map((atMs) => isTremble(one, atMs))).toEqual([
    false,
    true,
    true,
    false,
    true,
  ]);
});

test('isTremble() lets a button answer again at once after another was pressed', () => {
  const [one, other] = [button('one'), button('other')];
  expect([isTremble(one, 1000), isTremble(other, 1010), isTremble(one, 1020)]).toEqual([false, false, false]);
});
