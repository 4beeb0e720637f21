// One plain step of a checklist, for tests that change one thing of it.

import type { ChecklistStep } from '../../../shared/floor/checklist.ts';

/** A mandatory tick that is always asked, beside the running line. */
export function makeStep(step: string, more: Partial<ChecklistStep> = {}): ChecklistStep {
  return {
    step,
    group: { en: 'Group' },
    text: { en: `Do ${step}` },
    caution: null,
    kind: 'tick',
    time: 'running',
    condition: 'always',
    mandatory: true,
    least: null,
    most: null,
    unit: null,
    expects: null,
    options: [],
    right: [],
    signatures: 1,
    ...more,
  };
}
