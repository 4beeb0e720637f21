import { describe, expect, it } from 'vitest';
import { bakeOptions } from '../../../shared/moisture/bake.ts';

const levels = ['2', '2a', '3', '4', '5', '5a'] as const;
const longAgo = 73 * 3600;

describe('bakeOptions()', () => {
  // J-STD-033 table 4-1, from memory.
  it.each([
    { level: '3', thickness: 1.4, exceeded: 0, hours: [7, 23, 9 * 24], reason: 'thin, short overrun' },
    { level: '3', thickness: 1.4, exceeded: longAgo, hours: [9, 33, 13 * 24], reason: 'thin, long overrun' },
    {
      level: '4',
      thickness: 2,
      exceeded: longAgo,
      hours: [34, 120, 47 * 24],
      reason: 'middle, long overrun',
    },
    {
      level: '5a',
      thickness: 2.1,
      exceeded: 72 * 3600,
      hours: [48, 240, 67 * 24],
      reason: 'thick, 72 h is still short',
    },
  ] as const)('gives $hours h at 125, 90 and 40 °C: $reason', ({ level, thickness, exceeded, hours }) => {
    expect(
      bakeOptions({ level, thicknessMm: thickness, exceededSeconds: exceeded })?.map(
        (option) => option.hours,
      ),
    ).toEqual(hours);
  });

  it.each([
    ['1', 1],
    ['3', 4.6],
  ] as const)('gives none for level %s at %s mm', (level, thickness) => {
    expect(bakeOptions({ level, thicknessMm: thickness, exceededSeconds: 0 })).toBeNull();
  });

  // From memory: a slip would most likely break the order.
  it('never gets shorter with level, thickness or overrun, nor with a cooler oven', () => {
    for (const thickness of [1, 1.8, 3]) {
      for (const exceeded of [0, longAgo]) {
        let before: readonly number[] = [0, 0, 0];
        for (const level of levels) {
          const hours = (bakeOptions({ level, thicknessMm: thickness, exceededSeconds: exceeded }) ?? []).map(
            (option) => option.hours,
          );
          const longer = (bakeOptions({ level, thicknessMm: thickness, exceededSeconds: longAgo }) ?? []).map(
            (option) => option.hours,
          );
          const thicker = (
            bakeOptions({ level, thicknessMm: thickness + 1, exceededSeconds: exceeded }) ?? []
          ).map((option) => option.hours);
          expect(hours).toHaveLength(3);
          for (const [at, value] of hours.entries()) {
            expect(value).toBeGreaterThanOrEqual(before[at] ?? 0);
            expect(longer[at]).toBeGreaterThanOrEqual(value);
            if (thicker.length > 0) expect(thicker[at]).toBeGreaterThanOrEqual(value);
            if (at > 0) expect(value).toBeGreaterThan(hours[at - 1] ?? 0);
          }
          before = hours;
        }
      }
    }
  });
});
