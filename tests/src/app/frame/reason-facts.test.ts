// The facts of a verdict's reason as people read them.

import { expect, test } from 'vitest';
import { reasonFacts } from '../../../../src/app/frame/reason-facts.ts';

const measured = {
  unit: 'kΩ',
  nominal: 10,
  least: 9.9,
  most: 10.1,
  quantity: 10.020004,
  uncertainty: 0.0701,
};

test('figures of a measurement are told with five that count, and what the guard band leaves of the limits', () => {
  expect(reasonFacts({ code: 'value-within', ...measured, guard: 0.05 })).toMatchObject({
    quantity: '10.02',
    uncertainty: '0.0701',
    from: '9.95',
    to: '10.05',
  });
});

test('a guard band that is wider than the limits leaves nothing', () => {
  expect(reasonFacts({ code: 'value-unsure', ...measured, guard: 0.1 })).toMatchObject({
    from: '10',
    to: '10',
  });
  expect(reasonFacts({ code: 'value-unsure', ...measured, guard: 0.2 })).toMatchObject({
    from: '–',
    to: '–',
  });
});
