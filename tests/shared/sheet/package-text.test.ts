// Packages as sheets write them: the families' names are those of common practice (J-STD-033 names the classes by them).

import { describe, expect, test } from 'vitest';
import { parseBodySize, parsePackageText } from '../../../shared/sheet/package-text.ts';

describe('parsePackageText()', () => {
  test.each([
    ['LFBGA-256 17x17', 'bga', 256, [17, 17]],
    ['BGA256', 'bga', 256, null],
    ['FBGA 23 x 23 mm', 'bga', null, [23, 23]],
    ['48-QFN', 'qfn', 48, null],
    ['VQFN-24 4x4', 'qfn', 24, [4, 4]],
    ['SOIC-8', 'soic', 8, null],
    ['SO-14', 'soic', 14, null],
    ['TSSOP20', 'sop', 20, null],
    ['TSOP-48', 'tsop', 48, null],
    ['PQFP100', 'pqfp', 100, null],
    ['LQFP-64 10×10', 'lqfp', 64, [10, 10]],
    ['PLCC44', 'plcc', 44, null],
    ['MQFP-80', 'mqfp', 80, null],
    ['SOT-23-5', 'sot', null, null],
    ['0603', 'chip', null, null],
    ['R0402', 'chip', null, null],
    ['housing 7', null, null, null],
    ['', null, null, null],
  ] as const)('%s', (text, family, pins, bodyMm) => {
    expect(parsePackageText(text)).toEqual({ family, pins, bodyMm });
  });
});

describe('parseBodySize()', () => {
  test.each([
    ['17 x 17', [17, 17]],
    ['10,3×7,5 mm', [10.3, 7.5]],
    ['17', null],
    ['1700X1700', null],
    ['0x4', null],
  ] as const)('%s', (text, size) => {
    expect(parseBodySize(text)).toEqual(size);
  });
});
