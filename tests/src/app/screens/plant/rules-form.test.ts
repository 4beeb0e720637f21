// The line's rules through their form: what stood comes back, a share is typed in percent, what is no number is refused whole.

import { describe, expect, test } from 'vitest';
import { LABEL_SHARE } from '../../../../../shared/setup/ledger.ts';
import { firstRules, formToRules, rulesToForm } from '../../../../../src/app/screens/plant/rules-form.ts';

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
