import { describe, expect, test } from 'vitest';
import { setupFaults } from '../../../../../shared/changeover/diff.ts';
import { faultText } from '../../../../../src/app/screens/change/fault-text.ts';

const banks = { 'M1-F': 20 };
const said = (...feeders: (readonly [slot: string, part: string, width: number])[]) =>
  setupFaults(
    feeders.map(([slot, part, width]) => ({ slot, part, width })),
    'wanted',
    banks,
  ).map(faultText);

describe('faultText()', () => {
  test('tells a feeder that reaches past the end of its bank from a slot that the bank does not have', () => {
    expect(said(['M1-F-020', 'L-400', 3], ['M1-F-019', 'C-9', 1], ['M1-F-021', 'R-1', 1])).toEqual([
      'L-400 on M1-F-020 reaches 2 positions past the end of its bank.',
      'There is no M1-F-021 for R-1: its bank has 20 slots.',
      'R-1 on M1-F-021 reaches into the place of L-400 (M1-F-020).',
    ]);
  });

  test('says which slot the line does not have, and which neighbour is in the way', () => {
    expect(said(['M7-F-001', 'R-1', 1])).toEqual(['This line has no place M7-F-001 for R-1.']);
    expect(said(['M1-F-001', 'L-4', 2], ['M1-F-002', 'R-1', 1])).toEqual([
      'R-1 on M1-F-002 reaches into the place of L-4 (M1-F-001).',
    ]);
    expect(said(['M1-F-001', 'L-4', 1], ['M1-F-001', 'R-1', 1])).toEqual([
      'M1-F-001 is wanted twice, once for R-1.',
    ]);
  });
});
