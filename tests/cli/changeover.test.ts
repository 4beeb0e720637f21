import { describe, expect, test } from 'vitest';
import { call } from './call.ts';

const swap = {
  loaded: [
    { slot: 'M1-F-001', part: 'A' },
    { slot: 'M1-F-002', part: 'B' },
    { slot: 'M1-F-009', part: 'Z', width: 2 },
  ],
  wanted: [
    { slot: 'M1-F-001', part: 'B' },
    { slot: 'M1-F-002', part: 'A' },
    { slot: 'M1-F-004', part: 'C' },
  ],
};

describe('reelward changeover', () => {
  test('prints the difference, the steps and what is parked', async () => {
    const { code, out, err } = await call(['changeover', '-'], JSON.stringify(swap));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({ keep: [], takeOut: [], parked: 1, proven: true });
    expect(answer.putIn).toEqual([{ slot: 'M1-F-004', part: 'C', width: 1 }]);
    expect(answer.stay).toEqual([{ slot: 'M1-F-009', part: 'Z', width: 2 }]);
    expect(answer.steps).toEqual([
      { act: 'park', slot: 'M1-F-001', part: 'A', to: null },
      { act: 'move', slot: 'M1-F-002', part: 'B', to: 'M1-F-001' },
      { act: 'putIn', slot: 'M1-F-004', part: 'C', to: null },
      { act: 'unpark', slot: 'M1-F-002', part: 'A', to: 'M1-F-002' },
    ]);
  });

  test.each<readonly [unknown, RegExp, string]>([
    [{ ...swap, wanted: [swap.wanted[0], swap.wanted[0]] }, /wanted\[1\]\.slot: .*twice/, 'a slot twice'],
    [
      { ...swap, wanted: [{ slot: 'M1-F-003', part: 'W', width: 2 }, swap.wanted[2]] },
      /wanted\[1\]\.slot: .*positions of W on M1-F-003/,
      'an overlap',
    ],
    [
      { ...swap, loaded: [{ slot: 'M1-F-001', part: 'A', widht: 2 }] },
      /loaded\[0\]\.widht/,
      'a misspelt key',
    ],
    [{ ...swap, loaded: [{ slot: 'M1-F-001', part: 'A', width: 0 }] }, /loaded\[0\]\.width/, 'no width'],
    [{ loaded: [] }, /wanted/, 'a missing list'],
  ])('refuses %j with the path (%s)', async (input, message, _why) => {
    const { code, out, err } = await call(['changeover', '-'], JSON.stringify(input));
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(message);
    expect(err.trim().split('\n')).toHaveLength(1);
  });
});
