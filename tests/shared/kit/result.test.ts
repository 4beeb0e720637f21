// Expected failures as values; impossible states as exceptions.

import { expect, test } from 'vitest';
import { fail, ok, unreachable } from '../../../shared/kit/result.ts';

test('`ok()` and `fail()` carry what they are given', () => {
  expect(ok(3)).toEqual({ ok: true, value: 3 });
  expect(fail({ code: 'late' })).toEqual({ ok: false, error: { code: 'late' } });
});

test('`unreachable()` throws and shows the value that should not have been', () => {
  expect(() => unreachable('surprise' as never)).toThrow(/current value is surprise/);
});
