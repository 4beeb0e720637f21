// The usual tape of a package's name; widths are common practice, from memory, as tape-of-package.ts says.

import { expect, test } from 'vitest';
import { isUsuallyOnTray, usualTapeWidth } from '../../../shared/sheet/tape-of-package.ts';
import { isTapeWidth } from '../../../shared/sheet/tapes.ts';

test.each([
  ['0603', 8],
  ['R_0402_1005Metric', 8],
  ['C_1210_3225Metric', 8],
  ['R_2512_6332Metric', 12],
  ['CAP1812', 12],
  ['SOT-23', 8],
  ['SOT-23-5', 8],
  ['SOT-223', 12],
  ['SC-70', 8],
  ['SOD-123', 8],
  ['SMA', 12],
  ['DO-214AB', 16],
  ['DPAK', 16],
  ['D2PAK', 24],
  ['SOIC-8', 12],
  ['SOIC-16', 16],
  ['SOIC-28', 24],
  ['TSSOP-20', 16],
  ['MSOP-8', 12],
  ['QFN-16 3x3', 8],
  ['QFN-32 5x5', 12],
  ['QFN-64 9x9', 24],
])('%s comes on %s mm', (name, width) => {
  expect(usualTapeWidth(name)).toBe(width);
  expect(isTapeWidth(width)).toBe(true);
});

test.each(['', 'LQFP-100 14x14', 'BGA-256', 'QFN-32', 'CONN_USB', 'XTAL', 'SOIC', 'SMALL-1'])(
  '%s says nothing',
  (name) => {
    expect(usualTapeWidth(name)).toBeNull();
  },
);

test.each([
  ['BGA-256', true],
  ['LQFP-100 14x14', true],
  ['SOIC-8', false],
  ['0603', false],
  ['', false],
  ['CONN_USB', false],
])('%s mostly comes on trays: %s', (name, is) => {
  expect(isUsuallyOnTray(name)).toBe(is);
});
