// Reasons in the log may be older than this version: one that it does not know has no sentence, and nothing else stands in for it.

import { afterEach, expect, test } from 'vitest';
import { sayReason } from '../../../../src/app/words/verdict.ts';
import { language } from '../../../../src/app/words/words.ts';

afterEach(() => {
  language.value = 'en';
});

test('a reason is said in the language in use', () => {
  expect(sayReason('expired')?.title).toBe('Past its date');
  language.value = 'es';
  expect(sayReason('expired')?.title).toBe('Fuera de fecha');
});

test.each(['gone-since', 'toString', '__proto__', ''])('the unknown code "%s" has no sentence', (code) => {
  expect(sayReason(code)).toBeNull();
});
