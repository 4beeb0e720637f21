// The line's rules through their form: what stood comes back, a share is typed in percent, what is no number is refused whole.

import { describe, expect, test } from 'vitest';
import { LABEL_SHARE } from '../../../../../shared/setup/ledger.ts';
import {
  firstRules,
  formToClimate,
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
