// Which numbers are easily taken for one another: the rule as the brief of the job words it (a character or two apart, one value in two sizes).

import { expect, test } from 'vitest';
import { likeness, likenessTells } from '../../../shared/assign/look-alikes.ts';

test.each([
  ['10-0402-103', '10-0402-103', 0, 'one part'],
  ['ab-12', 'AB 12', 0, 'one part, written in another way'],
  ['CAP-10012', 'CAP-10013', 2, 'one figure changed'],
  ['CAP-10012', 'CAP-10021', 2, 'two figures swapped'],
  ['CAP-1001', 'CAP-10012', 2, 'one figure more'],
  ['CAP-10012', 'CAP-10034', 1, 'two figures changed'],
  ['CAP-10012', 'CAP-10345', 0, 'three changed'],
  ['A', 'B', 0, 'nothing left that is alike'],
  ['A1', 'B2', 0, 'nothing left that is alike'],
  ['RES-1', 'IC-77', 0, 'others altogether'],
])('%s and %s: %i (%s)', (a, b, found) => {
  expect(likeness({ part: a }, { part: b })).toBe(found);
  expect(likeness({ part: b }, { part: a })).toBe(found);
});

test('one value in two sizes is taken for the other, in one size it is the maker that differs', () => {
  const [small, large] = [
    { part: 'RES-4711', value: '10k', package: 'R_0402' },
    { part: 'TX-9', value: '10 K', package: 'R_0603' },
  ];
  expect(likeness(small, large)).toBe(2);
  expect(likeness(small, { ...large, package: 'r0402' })).toBe(0);
  expect(likeness(small, { ...large, value: '' })).toBe(0);
});

test('where most numbers are alike, likeness tells nothing', () => {
  const named = (...parts: string[]) => parts.map((part) => ({ part }));
  expect(likenessTells(named('CAP-100', 'CAP-101', 'CAP-102'))).toBe(false);
  expect(likenessTells(named('CAP-100', 'CAP-101', 'RES-7', 'IC-44'))).toBe(true);
  expect(likenessTells(named('CAP-100', 'CAP-101'))).toBe(true);
});
