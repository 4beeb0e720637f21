// Which verdict several reasons make together.

import { expect, test } from 'vitest';
import { reasonCodes, reasonVerdicts, verdictOf } from '../../../shared/verdict/reasons.ts';

test('`verdictOf()` lets a refusal win over a hold, a hold over an acceptance', () => {
  expect(verdictOf([])).toBe('accepted');
  for (const one of reasonCodes) {
    for (const two of reasonCodes) {
      const each = [reasonVerdicts[one], reasonVerdicts[two]];
      const wanted = each.includes('refused') ? 'refused' : each.includes('held') ? 'held' : 'accepted';
      expect(verdictOf([{ code: one }, { code: two }])).toBe(wanted);
    }
  }
});
