// Package classes by name and thickness, and the bake row of large packages. "All BGA of 1 mm and more" stands in the heading of a published
// copy of J-STD-033 table 7-1; the other names of its rows, and the bake row of 96 h, are from memory.

import { describe, expect, test } from 'vitest';
import type { PackageFamily } from '../../../shared/floor/vocabulary.ts';
import { floorLife } from '../../../shared/moisture/floor-life.ts';
import { packageClasses } from '../../../shared/moisture/levels.ts';
import { isLargeOrStacked, type PackageFacts, packageClassesOf } from '../../../shared/moisture/package.ts';

const facts = (family: PackageFamily | null, more: Partial<PackageFacts> = {}): PackageFacts => ({
  family,
  pins: null,
  bodyMm: null,
  isStacked: null,
  ...more,
});
const square = { bodyMm: [11.5, 11.5] } as const;
const oblong = { bodyMm: [11.4, 14] } as const;

describe('packageClassesOf()', () => {
  test.each([
    ['a ball grid array of 1 mm', 1, facts('bga'), 'A'],
    ['a thick ball grid array', 1.4, facts('bga'), 'A'],
    ['a ball grid array below 1 mm', 0.9, facts('bga'), 'C'],
    ['a ball grid array of unknown thickness', null, facts('bga'), 'AC'],
    ['a flat pack of 100 pins', 2.8, facts('pqfp', { pins: 100 }), 'A'],
    ['a flat pack of 80 pins', 2.8, facts('pqfp', { pins: 80 }), 'B'],
    ['a flat pack of 84 pins, in no row', 2.8, facts('pqfp', { pins: 84 }), 'AB'],
    ['a flat pack of 85 pins', 2.8, facts('pqfp', { pins: 85 }), 'A'],
    ['a flat pack of 81 pins, in no row', 2.8, facts('pqfp', { pins: 81 }), 'AB'],
    ['a flat pack of unknown pins', 2.8, facts('pqfp'), 'AB'],
    ['a metric flat pack, however thin', 1.4, facts('mqfp'), 'A'],
    ['a square chip carrier', 2.9, facts('plcc', { pins: 44, ...square }), 'A'],
    ['an oblong chip carrier', 2.9, facts('plcc', { pins: 32, ...oblong }), 'B'],
    ['a chip carrier of unknown body', 2.9, facts('plcc', { pins: 32 }), 'AB'],
    ['a thin small outline', 1, facts('tsop', { pins: 48 }), 'C'],
    ['a thin flat pack', 1, facts('tqfp', { pins: 100 }), 'C'],
    ['a small outline of 8', 1.5, facts('soic', { pins: 8 }), 'C'],
    ['a small outline of 20', 1.5, facts('soic', { pins: 20 }), 'B'],
    ['a wide small outline', 1.9, facts('soic', { pins: 16, bodyMm: [10.3, 7.5] }), 'B'],
    ['a small outline of unknown pins', 1.5, facts('soic'), 'BC'],
    ['a leadless pack by its thickness', 0.9, facts('qfn'), 'C'],
    ['a leadless pack of unknown thickness', null, facts('qfn'), 'ABC'],
    ['whatever is 3.1 mm and more', 3.1, facts('sop'), 'A'],
    ['a package that nobody named', 1.4, facts(null), 'ABC'],
    ['a thick one that nobody named', 3.5, facts(null), 'A'],
  ] as const)('%s', (_, thicknessMm, asked, classes) => {
    expect([...packageClassesOf(thicknessMm, asked)].sort().join('')).toBe(classes);
  });

  test('goes by the thickness alone where nobody is asked for the package', () => {
    expect([1.4, 2.5, 3.1, null].map((mm) => packageClassesOf(mm))).toEqual([
      ['C'],
      ['B'],
      ['A'],
      [...packageClasses],
    ]);
  });
});

test('a ball grid array of 1.4 mm at 25 °C and 40 % has the 10 days of class A, not the endless life of its thickness', () => {
  const ask = (asked?: PackageFacts) =>
    floorLife({
      level: '3',
      thicknessMm: 1.4,
      openedMs: 0,
      nowMs: 200 * 3_600_000,
      history: [{ fromMs: 0, toMs: null, where: 'floor', celsius: 25, humidity: 40 }],
      ...(asked ? { package: asked } : {}),
    });
  const left = (asked?: PackageFacts) => {
    const answer = ask(asked);
    return answer.ok ? answer.value.leftSeconds : 'refused';
  };
  expect(left(facts('bga'))).toBe(40 * 3600);
  expect(left(facts(null))).toBe(40 * 3600);
  expect(left(facts('qfn'))).toBeNull();
});

describe('isLargeOrStacked()', () => {
  test.each([
    ['a ball grid array of 17 × 17 mm', facts('bga', { bodyMm: [17, 17] }), false],
    ['one above it', facts('bga', { bodyMm: [17.1, 17.1] }), true],
    ['one of unknown size', facts('bga'), true],
    ['stacked dies in any package', facts('tsop', { isStacked: true }), true],
    ['a leadless pack', facts('qfn', { bodyMm: [20, 20] }), false],
    ['a package that nobody named', facts(null), true],
    ['a small one that nobody named', facts(null, { bodyMm: [5, 5] }), false],
  ] as const)('%s', (_, asked, isLarge) => {
    expect(isLargeOrStacked(asked)).toBe(isLarge);
  });
});
