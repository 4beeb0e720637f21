// Which parts are measured before they feed, what a meter's text says, and what the arithmetic makes of it.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgeReading } from '../../../shared/floor/measured.ts';
import { isMeterText, judgePart, readMeter } from '../../../shared/floor/meter.ts';
import { type ValueCheck, valueCheckOf, type WantedValue } from '../../../shared/floor/value-check.ts';
import { beginStory, type Story, tellPlant } from './story.ts';
import { listed } from './value-story.ts';

const rule = { begins: ['R-'], percent: 0.5, digits: 2, guard: 100 };
const tenK: WantedValue = { nominal: 10, unit: 'kΩ', least: 9.9, most: 10.1 };
const check: ValueCheck = { part: 'R-100', rule, wanted: [tenK], lack: null };

function told(begins: readonly string[], parts: Parameters<typeof listed>[1] = []): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('line.values-ruled', { line: 'L1', ...rule, begins: [...begins] });
  listed(story, parts);
  return story;
}

describe('valueCheckOf()', () => {
  const of = (story: Story, part: string, note?: string) => valueCheckOf(story.floor(), 'L1', { part, note });

  test('asks by what part numbers begin with, whatever their case, and only on its line', () => {
    const story = told(['r-'], [{ part: 'R-100', value: '10k', tolerance: '1 %' }]);
    expect(of(story, 'R-100')).toMatchObject({ wanted: [tenK], lack: null });
    expect(of(story, 'C-100')).toBeNull();
    expect(valueCheckOf(story.floor(), 'L2', { part: 'R-100' })).toBeNull();
    story.tell('line.values-ruled', { line: 'L1', ...rule, begins: [] });
    expect(of(story, 'R-100')).toBeNull();
  });

  // IEC 60062: 4K7 is 4.7 kΩ, F 1 %; three digits are 10 × 10^3 Ω or 10 × 10^3 pF.
  test('takes the value as a figure or a code, and the setup’s note before the list', () => {
    const story = told(['R'], [{ part: 'R-1', value: '4K7F', tolerance: null }]);
    expect(of(story, 'R-1')?.wanted).toEqual([{ nominal: 4.7, unit: 'kΩ', least: 4.653, most: 4.747 }]);
    expect(of(story, 'R-1', '2.2k ±5 %')?.wanted).toEqual([
      { nominal: 2.2, unit: 'kΩ', least: 2.09, most: 2.31 },
    ]);
    listed(story, [{ part: 'R-2', value: '103', tolerance: '±10 %' }]);
    expect(of(story, 'R-2')?.wanted.map(({ nominal, unit }) => `${nominal} ${unit}`)).toEqual([
      '10 kΩ',
      '10 nF',
    ]);
  });

  test('says what is missing: no value, no tolerance, or a share of nothing', () => {
    const story = told(
      ['R'],
      [
        { part: 'R-1', value: '4k7', tolerance: null },
        { part: 'R-0', value: '0 Ω', tolerance: '5 %' },
      ],
    );
    expect(of(story, 'R-9')).toMatchObject({ wanted: [], lack: 'value' });
    expect(of(story, 'R-1')).toMatchObject({ wanted: [], lack: 'tolerance' });
    expect(of(story, 'R-0')).toMatchObject({ wanted: [], lack: 'tolerance' });
  });

  test('takes the list’s tolerance where the note states a value without one, and the list’s value where the note only rates the part', () => {
    const story = told(['C', 'R'], [{ part: 'C-1', value: '100 nF', tolerance: '10 %' }]);
    const listedValue = { nominal: 100, unit: 'nF', least: 90, most: 110 };
    for (const note of ['100 nF 16V X7R', '16V X7R', 'next to the 10k pull-up', undefined])
      expect(of(story, 'C-1', note)).toMatchObject({ wanted: [listedValue], lack: null });
    expect(of(story, 'C-1', '22 nF')?.wanted).toEqual([{ nominal: 22, unit: 'nF', least: 19.8, most: 24.2 }]);
    expect(of(story, 'C-1', '22 nF ±5 % 50V')?.wanted).toEqual([
      { nominal: 22, unit: 'nF', least: 20.9, most: 23.1 },
    ]);
    expect(of(story, 'C-1', '16V ±5 %')?.wanted).toEqual([listedValue]);
    listed(story, [{ part: 'R-3', value: null, tolerance: '1 %' }]);
    expect(of(story, 'R-3', '10.0 kΩ')?.wanted).toEqual([tenK]);
  });

  test('a voltage is what the part stands, and is not measured', () => {
    const story = told(['C', 'D'], [{ part: 'C-1', value: '10uF 25V', tolerance: '20 %' }]);
    expect(of(story, 'C-1')?.wanted).toEqual([{ nominal: 10, unit: 'µF', least: 8, most: 12 }]);
    listed(story, [{ part: 'D-1', value: '650 mV', tolerance: '5 %' }]);
    expect(of(story, 'D-1')).toMatchObject({ wanted: [], lack: 'value' });
  });

  test('an empty class is every part that has a value, and no other', () => {
    const story = told([''], [{ part: 'C-1', value: '100 nF', tolerance: '10 %' }]);
    expect(of(story, 'C-1')?.wanted).toHaveLength(1);
    expect(of(story, 'U-1')).toBeNull();
  });
});

describe('readMeter()', () => {
  test.each([
    ['10.02', 10.02, 'kΩ', 0.01, 'a bare figure is in the unit asked for'],
    ['10,02', 10.02, 'kΩ', 0.01, 'a decimal comma'],
    ['10', 10, 'kΩ', 1, 'no place behind the point'],
    ['+1.00200E+04', 10020, 'Ω', 0.1, 'an exponent is in the base unit, as meters type it'],
    ['10.02 kOhm', 10020, 'Ω', 10, 'a unit written out'],
    ['10.02kΩ', 10020, 'Ω', 10, 'a unit right behind'],
    ['10.02 k', 10020, 'Ω', 10, 'a prefix alone'],
    ['99.1 nF', 0.0991, 'µF', 0.0001, 'farads'],
    ['9.91E-08 F', 0.0991, 'µF', 0.0001, 'farads with an exponent'],
    ['-0.3', -0.3, 'kΩ', 0.1, 'below nought'],
  ] as const)('reads %s as %s %s, last place %s: %s', (text, quantity, unit, step, _why) => {
    expect(readMeter(text, 'kΩ')).toEqual({ quantity, unit, step });
  });

  // SCPI, from memory: 9.9E37 stands for a reading over the range.
  test.each(['+9.90000000E+37', '-9.9E37', '9.9E+37 Ohm', '0E999', '0E-999', '9E305 F', '1E999'])(
    'takes %j for no reading: over the range, or no figure',
    (text) => {
      expect(isMeterText(text)).toBe(true);
      expect(readMeter(text, 'kΩ')).toBeNull();
    },
  );

  test.each(['', 'OL', '-', '10.02 A', '1.2.3', 'R-100', '10 20', 'e5', '10.02 kΩ?'])(
    'takes %j for no reading',
    (text) => {
      expect(readMeter(text, 'kΩ')).toBeNull();
    },
  );

  test('never throws, and gives finite figures only', () => {
    const typed = fc.string({ maxLength: 20 });
    const meter = fc.stringMatching(/^[+-]?\d{1,6}[.,]?\d{0,4}(E[+-]?\d{1,3})? ?[kMmunp]?[ΩFH]?$/);
    fc.assert(
      fc.property(fc.oneof(typed, meter), (text) => {
        const shown = readMeter(text, 'nF');
        if (shown === null) return;
        expect(Number.isFinite(shown.quantity) && Number.isFinite(shown.step)).toBe(true);
        const judged = judgePart(check, { ...tenK, unit: 'nF' }, shown, 'wedge');
        if (judged !== null) expect(Number.isFinite(judged.quantity + judged.uncertainty)).toBe(true);
      }),
    );
  });
});

describe('judgePart()', () => {
  const judged = (text: string, more: Partial<ValueCheck['rule']> = {}) => {
    const shown = readMeter(text, 'kΩ');
    return shown && judgePart({ ...check, rule: { ...rule, ...more } }, tenK, shown, 'typed');
  };

  // By hand: 0.5 % of 10.02 is 0.0501, two digits of 0.01 are 0.02: ± 0.0701; 10.02 ± 0.0701 lies between 9.9 and 10.1.
  test('adds the meter’s share and its digits, and keeps the guard band from both limits', () => {
    expect(judged('10.02')).toEqual({
      part: 'R-100',
      nominal: 10,
      unit: 'kΩ',
      least: 9.9,
      most: 10.1,
      quantity: 10.02,
      uncertainty: 0.0701,
      guard: 0.0701,
      verdict: 'accepted',
      via: 'typed',
    });
    expect(judged('10.05')?.verdict).toBe('held');
    expect(judged('10.30')?.verdict).toBe('refused');
  });

  test('a meter that types the base unit comes to the same', () => {
    expect(judged('+1.00200E+04')).toMatchObject({ quantity: 10.02, unit: 'kΩ', verdict: 'accepted' });
    // Its last place stands for 0.1 Ω: two digits are 0.0002 kΩ.
    expect(judged('+1.00200E+04')?.uncertainty).toBe(0.0503);
  });

  test('a guard band of nothing takes a reading within the limits; one beyond them is still refused only where the meter is sure', () => {
    expect(judged('10.09', { guard: 0 })).toMatchObject({ guard: 0, verdict: 'accepted' });
    expect(judged('10.12', { guard: 0 })?.verdict).toBe('held');
    expect(judged('10.09', { guard: 200 })?.verdict).toBe('held');
  });

  test('farads where ohms are wanted are no measurement of it', () => {
    const shown = readMeter('10 nF', 'kΩ');
    expect(shown && judgePart(check, tenK, shown, 'typed')).toBeNull();
  });

  test('never takes a value outside the limits, and never refuses one inside', () => {
    const figure = fc.double({ min: 0, max: 20, noNaN: true });
    const share = fc.double({ min: 0, max: 300, noNaN: true });
    fc.assert(
      fc.property(
        figure,
        fc.double({ min: 0, max: 2, noNaN: true }),
        share,
        (value, uncertainty, percent) => {
          const guard = (uncertainty * percent) / 100;
          const verdict = judgeReading({ value, uncertainty }, tenK, guard);
          const isInside = value >= tenK.least && value <= tenK.most;
          expect(verdict).not.toBe(isInside ? 'refused' : 'accepted');
        },
      ),
    );
  });

  test('throws where the guard band is none', () => {
    expect(() => judgeReading({ value: 1, uncertainty: 0 }, tenK, -1)).toThrow(RangeError);
  });
});
