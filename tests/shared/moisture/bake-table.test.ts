// The user bake of J-STD-033 table 4-1, cell by cell, written as the standard prints it: more than 72 h over / no more. Level 3 to 5a up to
// 1.4 mm and 2a to 5 up to 2.0 mm were compared with a published copy of an earlier edition; the rest is from memory.

import { describe, expect, test } from 'vitest';
import { bakeOptions } from '../../../shared/moisture/bake.ts';

const table = [
  ['2', 1.4, '5 h / 3 h', '17 h / 11 h', '8 d / 5 d'],
  ['2a', 1.4, '7 h / 5 h', '23 h / 13 h', '9 d / 7 d'],
  ['3', 1.4, '9 h / 7 h', '33 h / 23 h', '13 d / 9 d'],
  ['4', 1.4, '11 h / 7 h', '37 h / 23 h', '15 d / 9 d'],
  ['5', 1.4, '12 h / 7 h', '41 h / 24 h', '17 d / 10 d'],
  ['5a', 1.4, '16 h / 10 h', '54 h / 24 h', '22 d / 10 d'],
  ['2', 2, '18 h / 15 h', '63 h / 2 d', '25 d / 20 d'],
  ['2a', 2, '21 h / 16 h', '3 d / 2 d', '29 d / 22 d'],
  ['3', 2, '27 h / 17 h', '4 d / 2 d', '37 d / 23 d'],
  ['4', 2, '34 h / 20 h', '5 d / 3 d', '47 d / 28 d'],
  ['5', 2, '40 h / 25 h', '6 d / 4 d', '57 d / 35 d'],
  ['5a', 2, '48 h / 40 h', '8 d / 6 d', '79 d / 56 d'],
  ['2', 4.5, '48 h / 48 h', '10 d / 7 d', '79 d / 67 d'],
  ['2a', 4.5, '48 h / 48 h', '10 d / 7 d', '79 d / 67 d'],
  ['3', 4.5, '48 h / 48 h', '10 d / 8 d', '79 d / 67 d'],
  ['4', 4.5, '48 h / 48 h', '10 d / 10 d', '79 d / 67 d'],
  ['5', 4.5, '48 h / 48 h', '10 d / 10 d', '79 d / 67 d'],
  ['5a', 4.5, '48 h / 48 h', '10 d / 10 d', '79 d / 67 d'],
] as const;

const hoursOf = (text: string) => Number.parseInt(text, 10) * (text.endsWith('d') ? 24 : 1);

describe('the bake of a body', () => {
  test.each(table)(
    'of level %s up to %s mm is %s at 125 °C, %s at 90 °C and %s at 40 °C',
    (level, mm, ...cells) => {
      const ofOven = cells.map((cell) => cell.split(' / ').map(hoursOf));
      const hours = (exceededHours: number) =>
        bakeOptions({ level, thicknessMm: mm, exceededSeconds: exceededHours * 3600 })?.map(
          (option) => option.hours,
        );
      expect(hours(73)).toEqual(ofOven.map(([long]) => long));
      expect(hours(72)).toEqual(ofOven.map(([, short]) => short));
    },
  );
});
