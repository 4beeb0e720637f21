import { expect, test } from 'vitest';
import type { LabelWarning } from '../../../../shared/labels/warnings.ts';
import { words as en } from '../../../../src/app/words/en/label-warnings.ts';
import { words as es } from '../../../../src/app/words/es/label-warnings.ts';

/** One warning of every code: a new code without an example is a compile error. */
const warnings: { readonly [C in LabelWarning['code']]: Extract<LabelWarning, { readonly code: C }> } = {
  'no-code': { code: 'no-code' },
  'no-part-number': { code: 'no-part-number' },
  'header-damaged': { code: 'header-damaged', found: '[)' },
  'separators-replaced': { code: 'separators-replaced', found: '~' },
  'separators-mixed': { code: 'separators-mixed', found: ['~', '\u001d'] },
  'separators-lost': { code: 'separators-lost', text: '[)>06P1' },
  'trailer-uncertain': { code: 'trailer-uncertain', text: 'P1' },
  'keyboard-layout': { code: 'keyboard-layout', layout: 'german', text: 'ä', meant: null },
  'identifier-lower-case': { code: 'identifier-lower-case', id: '1p' },
  'identifier-unlisted': { code: 'identifier-unlisted', id: '99Z' },
  'no-identifier': { code: 'no-identifier', text: 'X' },
  'format-unread': { code: 'format-unread', format: '12' },
  'tags-not-mh10': { code: 'tags-not-mh10', tags: ['PN', 'QT'] },
  'one-letter-tags': { code: 'one-letter-tags', text: 'R1' },
  'blank-separated': { code: 'blank-separated', text: 'A B' },
  'value-may-go-on': { code: 'value-may-go-on', id: 'P', text: 'X' },
  'identifier-unconfirmed': { code: 'identifier-unconfirmed', text: 'P1' },
  'confirmed-by-setup': { code: 'confirmed-by-setup', field: 'part', value: 'P1' },
  conflict: { code: 'conflict', field: 'quantity', values: ['1', '2'] },
  'second-lot': { code: 'second-lot', text: 'L2' },
  'quantity-unreadable': { code: 'quantity-unreadable', text: '1.2.3' },
  'quantity-marks': { code: 'quantity-marks', text: '1,000', quantity: 1000 },
  'date-code-unclear': { code: 'date-code-unclear', id: '9D', text: '1' },
  'no-such-week': { code: 'no-such-week', id: '10D', text: '2654' },
  'no-such-date': { code: 'no-such-date', id: '14D', text: '20260231' },
  'day-not-printed': { code: 'day-not-printed', id: '17', text: '260200' },
  'country-unlisted': { code: 'country-unlisted', text: 'XX' },
  'msl-unlisted': { code: 'msl-unlisted', text: '9' },
  'rule-unclear': { code: 'rule-unclear', rule: 'glen' },
  'full-ascii': { code: 'full-ascii', text: '1PA+B+C', meant: '1PAbc' },
  'gs1-unread': { code: 'gs1-unread', text: '(99)' },
  'gs1-check-digit': { code: 'gs1-check-digit', text: '0123' },
};

test.each(Object.values(warnings))('$code has a sentence in Spanish with the same facts', (warning) => {
  const english = en.say(warning);
  const spanish = es.say(warning);
  expect(spanish).not.toBe(english);
  expect(spanish).not.toMatch(/undefined|null|[\u0000-\u001f]/);
  if ('text' in warning && warning.code !== 'one-letter-tags') expect(spanish).toContain(warning.text);
});
