// Whatever a scanner sends: nothing throws, nothing is invented, and the work stays linear in the length.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLabel } from '../../../shared/labels/label.ts';
import type { LabelReading } from '../../../shared/labels/reading.ts';
import { formatLabelWarning } from '../../../shared/labels/warnings.ts';

/** Every text that a reading states must stand in the codes; a number by its digits, a day in some order of its parts. */
function expectNothingInvented(reading: LabelReading, codes: readonly string[]): void {
  const text = codes.join('\n');
  for (const field of [
    'part',
    'supplierPart',
    'lot',
    'dateCode',
    'reel',
    'supplier',
    'country',
    'order',
    'unit',
  ] as const) {
    const value = reading[field];
    if (value !== null && !text.includes(value))
      expect.fail(`${field} ${JSON.stringify(value)} is not in the codes`);
  }
  for (const { id, value } of reading.fields) {
    if (!text.includes(value)) expect.fail(`${id} ${JSON.stringify(value)} is not in the codes`);
  }
  if (reading.msl !== null) expect(text.toLowerCase()).toContain(reading.msl);
  if (reading.quantity !== null) {
    expect(Number.isFinite(reading.quantity)).toBe(true);
    const digits = text.replace(/[^0-9.]/g, '');
    for (const digit of new Set(String(reading.quantity).replace(/[^0-9]/g, '')))
      expect(digits).toContain(digit);
  }
  if (reading.expires !== null) expect(text).toContain(reading.expires.slice(2, 4));
  if (reading.made !== null) expect(text).toMatch(/\d/);
  for (const { candidates } of reading.ambiguous) {
    for (const { value } of candidates) {
      if (!text.includes(value)) expect.fail(`candidate ${JSON.stringify(value)} is not in the codes`);
    }
  }
  for (const warning of reading.warnings) expect(formatLabelWarning(warning)).not.toBe('');
}

const TOKENS = [
  '[)>',
  '>',
  '\x1e',
  '\x1d',
  '\x04',
  '06',
  '05',
  '12',
  '{GS}',
  '<RS>',
  '^]',
  ']',
  '^',
  '@',
  '|',
  ';',
  ',',
  ' ',
  '\n',
  ':',
  '=',
  '{',
  '}',
  '"',
  '(',
  ')',
  '␝',
  '↔',
  '┴',
  'ß',
  'Ö',
  'ü=:',
  'P',
  '1P',
  'Q',
  '1T',
  '9D',
  '10D',
  '4L',
  '13E',
  '3S',
  'K',
  'V',
  'Z',
  '12S',
  'PN',
  'QT',
  'LT',
  'QTY',
  'MPN',
  'LOT',
  'CU-77',
  '4000',
  '2644',
  'MY',
  '01',
  '10',
  '17',
  ']C1',
  ']d2',
  '01095011015300031',
  'NAR000',
  'pcs',
  '4,000',
  'é',
  '\u{1f600}',
  '\ud800',
  '\0',
];

describe('parseLabel() on any text', () => {
  it('never throws and states nothing that the text does not hold', () => {
    const any = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 80 }),
      fc.string({ maxLength: 80 }),
      fc.array(fc.constantFrom(...TOKENS), { maxLength: 25 }).map((tokens) => tokens.join('')),
      fc.uint8Array({ maxLength: 80 }).map((bytes) => String.fromCharCode(...bytes)),
    );
    const sets = fc.record({
      parts: fc.array(fc.constantFrom('CU-77', 'PCU-77', '4000', 'X')).map((parts) => new Set(parts)),
      supplierParts: fc.array(fc.constantFrom('CU-77', '1PCU-77', 'MY')).map((parts) => new Set(parts)),
    });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 6 }), fc.option(sets, { nil: undefined }), (codes, expected) => {
        expectNothingInvented(parseLabel(codes, { expected }), codes);
      }),
      { numRuns: 4000 },
    );
  });

  it('gives the same reading for the same codes, and leaves them as they are', () => {
    const codes = Object.freeze(['PCU-77', 'Q4000', '1TSV82']);
    expect(parseLabel(codes)).toEqual(parseLabel(codes));
  });

  // Each is 200,000 characters or codes made to hurt a parser that goes back, or that spreads arrays. With work that grows
  // with the square they would need hours; no clock is read here.
  const N = 200_000;
  it.each([
    ['separators', `[)>\x1e06${'\x1d'.repeat(N)}`],
    ['elements', `[)>\x1e06${'\x1dP1'.repeat(N / 4)}`],
    [
      'different part numbers',
      `[)>\x1e06\x1d${Array.from({ length: N / 8 }, (_, n) => `P${n}`).join('\x1d')}`,
    ],
    ['end marks', `PX\x1dQ5\x1d${'\x04'.repeat(N)}X`],
    ['brackets', '('.repeat(N)],
    ['brackets that close far behind', `${'('.repeat(N)})`],
    ['colons', `QTY:${':'.repeat(N)}`],
    ['words', 'QTY:1 '.repeat(N / 6)],
    ['keys', `{${'a:1,'.repeat(N / 4)}qty:1}`],
    ['blanks', ' '.repeat(N)],
    ['blank-separated pieces', `PX Q5 1TA ${'x '.repeat(N / 2)}`],
    ['commas', `PX,Q5,1TA${', y'.repeat(N / 3)}`],
    ['digits', `Q${'1'.repeat(N)}`],
    ['quantities without separators', `[)>06${'Q1'.repeat(N / 2)}`],
    ['identifiers without separators', `[)>06${'1P'.repeat(N / 2)}`],
    ['known parts without separators', `[)>06${'PX'.repeat(N / 2)}`],
    ['strays', `[)>06]PX${'\u00a1Q5'.repeat(N / 3)}`],
    ['Q', `[)>06]${'Q1'.repeat(N / 2)}`],
    ['GS1 elements', `]C1${'3012\x1d'.repeat(N / 5)}`],
    ['letters', 'A'.repeat(N)],
    ['caret notation', '^]'.repeat(N / 2)],
    ['records', `[)>\x1e06\x1d${'\x1e06\x1d'.repeat(N / 4)}`],
  ])('reads a code of very many %s', (_, code) => {
    const expected = { parts: new Set(['X']), supplierParts: new Set(['X']) };
    expect(() => parseLabel([code], { expected })).not.toThrow();
  });

  it('reads a label of very many codes', () => {
    const codes = Array.from({ length: N }, (_, index) => `1T${index}`);
    expect(parseLabel(codes).lot).toBeNull();
  });
});
