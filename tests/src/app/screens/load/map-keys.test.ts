// The map of the line at the keyboard: along the walk, from bank to bank, to either end, and never off it.

import { expect, test } from 'vitest';
import type { MapBank } from '../../../../../src/app/screens/load/model.ts';
import { moveIn } from '../../../../../src/app/screens/load/SlotMap.tsx';

const bank = (name: string, slots: readonly string[]) =>
  ({ machine: 'M1', bank: name, places: slots.map((slot) => ({ slot })) }) as unknown as MapBank; // only slots are read
const banks = [bank('F', ['F1', 'F2', 'F3']), bank('E', []), bank('R', ['R1', 'R2'])];

test.each([
  ['F1', 'ArrowRight', 'F2'],
  ['F3', 'ArrowRight', 'R1'],
  ['R1', 'ArrowLeft', 'F3'],
  ['F1', 'ArrowLeft', 'F1'],
  ['R2', 'ArrowRight', 'R2'],
  ['F2', 'ArrowDown', 'R2'],
  ['F3', 'ArrowDown', 'R2'],
  ['R1', 'ArrowUp', 'F1'],
  ['F1', 'ArrowUp', 'F1'],
  ['F2', 'Home', 'F1'],
  ['F2', 'End', 'R2'],
  ['F2', 'a', null],
])('from %s, %s leads to %s', (from, key, to) => {
  expect(moveIn(banks, from, key)).toBe(to);
});
