// The line's rules through their form: what stood comes back, a share is typed in percent, what is no number is refused whole.

import { describe, expect, test } from 'vitest';
import { LABEL_SHARE } from '../../../../../shared/floor/remaining.ts';
import {
  firstRules,
  formToClimate,
  formToIdle,
  formToRules,
  rulesToForm,
} from '../../../../../src/app/screens/plant/rules-form.ts';

const before = firstRules('L1');

describe('formToRules()', () => {
  test('gives back what stood, with the usual share of a printed quantity written out', () => {
    expect(formToRules(rulesToForm(before), before)).toEqual({ ...before, labelShare: LABEL_SHARE });
  });

  test.each([
    ['0,5', 0.005],
    ['0.125', 0.00125],
    ['0', 0],
  ])('reads a printed quantity’s share typed as %s percent', (labelPercent, labelShare) => {
    const rules = formToRules({ ...rulesToForm(before), labelPercent }, before);
    expect(rules?.labelShare).toBeCloseTo(labelShare, 12);
    if (rules) expect(rulesToForm(rules).labelPercent).toBe(labelPercent.replace(',', '.'));
  });

  test.each(['', 'some', '-1', '100'])('refuses %j', (labelPercent) => {
    expect(formToRules({ ...rulesToForm(before), labelPercent }, before)).toBeNull();
  });
});

describe('lengths of Code 93 and Interleaved 2 of 5', () => {
  test('stand in the rules once each, short first, and come back as typed; left empty, nothing is said of them', () => {
    const rules = formToRules({ ...rulesToForm(before), code93: '12, 8 12', itf: '14' }, before);
    expect(rules?.alsoRead).toEqual({ code93: [8, 12], itf: [14] });
    if (rules) expect(rulesToForm(rules)).toMatchObject({ code93: '8 12', itf: '14' });
    expect(formToRules(rulesToForm(before), before)).not.toHaveProperty('alsoRead');
    if (rules)
      expect(formToRules({ ...rulesToForm(rules), code93: '', itf: '' }, rules)?.alsoRead).toEqual({
        code93: [],
        itf: [],
      });
  });

  test.each([
    ['code93', 'ten'],
    ['code93', '0'],
    ['code93', '81'],
    ['itf', '7'],
    ['itf', '6.5'],
  ] as const)('%s %j is refused', (key, typed) => {
    expect(formToRules({ ...rulesToForm(before), [key]: typed }, before)).toBeNull();
  });
});

describe('formToClimate()', () => {
  test('stands at 30 °C and 60 % until another was entered, and gives that back', () => {
    expect(formToClimate(rulesToForm(before))).toEqual({ celsius: 30, humidity: 60 });
    const entered = { celsius: 27.5, humidity: 70 };
    expect(formToClimate(rulesToForm(before, entered))).toEqual(entered);
  });

  test.each([
    ['', '60'],
    ['warm', '60'],
    ['61', '60'],
    ['-1', '60'],
    ['30', ''],
    ['30', '101'],
  ])('refuses %j °C with %j %%', (floorCelsius, floorHumidity) => {
    expect(formToClimate({ floorCelsius, floorHumidity })).toBeNull();
  });
});

describe('formToIdle()', () => {
  const form = rulesToForm(before);
  test('takes whole minutes up to the longest shift, and never none', () => {
    expect(formToIdle(form)).toBe(30);
    expect(formToIdle({ ...form, idleMinutes: '480' })).toBe(480);
    expect(rulesToForm(before, undefined, 45).idleMinutes).toBe('45');
    for (const idleMinutes of ['', '0', '-5', '1.5', '481', 'never'])
      expect(formToIdle({ ...form, idleMinutes }), idleMinutes).toBeNull();
    const shifts = [{ days: [1], from: '06:00', to: '10:00' }];
    expect(formToIdle({ ...form, shifts, idleMinutes: '241' })).toBeNull();
  });
});
