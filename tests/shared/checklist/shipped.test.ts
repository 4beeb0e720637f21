// What the start of a shift asks of static: ANSI/ESD S20.20 gives a wrist strap system less than 3.5 × 10⁷ Ω, and person, shoes and floor less than
// 1 × 10⁹ Ω with the body below 100 V (both read in published summaries). The version before had the strap's limit for both.

import { expect, test } from 'vitest';
import { shiftChecklist } from '../../../shared/checklist/shipped.ts';
import { shippedBefore } from '../../../shared/checklist/shipped-before.ts';

test('strap and shoes have a limit each, and neither is asked of who wears the other', () => {
  const step = (name: string) => shiftChecklist.steps.find((each) => each.step === name);
  expect(step('static')).toMatchObject({ kind: 'tick', mandatory: true, most: null });
  expect(step('static-strap')).toMatchObject({ kind: 'measure', mandatory: false, most: 35, unit: 'MΩ' });
  expect(step('static-shoes')).toMatchObject({ kind: 'measure', mandatory: false, most: 1000, unit: 'MΩ' });
  expect(step('static-shoes')?.text['en']).toContain('100 V');
});

test('what was opened with the version before is read as it was asked', () => {
  const before = shippedBefore.find(({ template }) => template === 'shift-start');
  expect(before?.version).toBe(1);
  expect(before?.steps.map(({ step }) => step).filter((step) => step.startsWith('static'))).toEqual([
    'static',
  ]);
  expect(before?.steps.find(({ step }) => step === 'static')).toMatchObject({ kind: 'measure', most: 35 });
});
