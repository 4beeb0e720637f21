import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatEnvelope, openEnvelope } from '../../../shared/labels/envelope.ts';
import { IDENTIFIERS } from '../../../shared/labels/identifiers.ts';
import { parseLabel } from '../../../shared/labels/label.ts';

// Bytes of ISO/IEC 15434 as at http://www.barcodesoft.com/isoiec15434.aspx: header 5B 29 3E 1E, format, 1D, trailer 1E 04.
const HEADER = [0x5b, 0x29, 0x3e, 0x1e];

describe('formatEnvelope()', () => {
  it('writes the bytes of ISO/IEC 15434', () => {
    const text = formatEnvelope({
      format: '06',
      fields: [
        { id: 'P', value: 'A' },
        { id: 'Q', value: '5' },
      ],
    });
    expect(Array.from(text, (char) => char.charCodeAt(0))).toEqual([
      ...HEADER,
      0x30,
      0x36,
      0x1d,
      0x50,
      0x41,
      0x1d,
      0x51,
      0x35,
      0x1e,
      0x04,
    ]);
  });

  it.each(['\x1d', '\x1e', '\x04'])('refuses a value with %j in it', (control) => {
    expect(() => formatEnvelope({ format: '06', fields: [{ id: 'P', value: `A${control}B` }] })).toThrow(
      RangeError,
    );
  });

  const value = fc
    .string({ minLength: 1, maxLength: 30, unit: 'grapheme-ascii' })
    .filter((text) => text.trim() === text && text !== '');

  it('writes 06 so that parseLabel() reads the same fields', () => {
    const ids = [...IDENTIFIERS.keys()].filter((id) => id !== 'Q');
    // A quantity in digits shows that these are identifiers, not two-letter tags.
    const quantity = fc.nat().map((number) => ({ id: 'Q', value: String(number) }));
    const others = fc.array(fc.record({ id: fc.constantFrom(...ids), value }), { maxLength: 15 });
    fc.assert(
      fc.property(quantity, others, (first, rest) => {
        const fields = [first, ...rest];
        const reading = parseLabel([formatEnvelope({ format: '06', fields })]);
        expect(reading.fields.map(({ id, value: read }) => ({ id, value: read }))).toEqual(fields);
        expect(reading.quantity).toBe(Number(first.value));
      }),
    );
  });

  it('writes 05 so that parseLabel() reads the same fields', () => {
    const text = fc.stringMatching(/^[A-Za-z0-9\-/.]{1,20}$/);
    const field = fc.oneof(
      fc.record({ id: fc.constantFrom('10', '21', '240', '241', '400'), value: text }),
      fc.record({ id: fc.constantFrom('11', '17'), value: fc.stringMatching(/^\d{6}$/) }),
      fc.record({ id: fc.constantFrom('30', '37'), value: fc.stringMatching(/^\d{1,8}$/) }),
    );
    fc.assert(
      fc.property(fc.array(field, { minLength: 1, maxLength: 12 }), (fields) => {
        const reading = parseLabel([formatEnvelope({ format: '05', fields })]);
        expect(reading.fields.map(({ id, value: read }) => ({ id, value: read }))).toEqual(fields);
      }),
    );
  });

  it('writes 12 so that parseLabel() reads the same fields', () => {
    const field = fc.record({ id: fc.constantFrom('MFR', 'SER', 'PNO', 'LOT', 'QTY'), value });
    fc.assert(
      fc.property(fc.array(field, { minLength: 1, maxLength: 8 }), (fields) => {
        const reading = parseLabel([formatEnvelope({ format: '12', fields })]);
        expect(reading.fields.map(({ id, value: read }) => ({ id, value: read }))).toEqual(fields);
      }),
    );
  });
});

describe('openEnvelope()', () => {
  it.each(['', 'PCU-77', '[', '[)', '[)>', ')>', '06', '06]PX', '0402-104', '12,5', '>>', '(06)X'])(
    'takes %j for no envelope',
    (text) => {
      expect(openEnvelope(text)).toBeNull();
    },
  );

  it('reads every damaged form of a written envelope alike', () => {
    const values = fc.stringMatching(/^[A-Z0-9][A-Z0-9-]{0,18}[A-Z0-9]$/);
    const dialects = [
      { record: '{RS}', group: '{GS}', end: '{EOT}' },
      { record: '<RS>', group: '<GS>', end: '<EOT>' },
      { record: '\u241e', group: '\u241d', end: '\u2404' },
      { record: '\u25b2', group: '\u2194', end: '\u2666' },
      { record: '^^', group: '^]', end: '^D' },
      { record: '^', group: ']', end: '' },
      { record: '@', group: '@', end: '' },
      { record: '', group: '|', end: '' },
      { record: '', group: '\x1d', end: '' },
    ];
    fc.assert(
      fc.property(
        values,
        values,
        values,
        fc.nat(),
        fc.constantFrom(...dialects),
        fc.boolean(),
        (p, m, t, q, d, tail) => {
          const body = [`06`, `P${p}`, `1P${m}`, `Q${q}`, `1T${t}`].join(d.group);
          const text = `[)>${d.record}${body}${tail ? d.record + d.end : ''}`;
          // A V behind a stand-in for RS may be a scanner's EOT; a value that ends so is another test's matter.
          fc.pre(!tail || d.end !== '' || !/[VvDd]$/.test(t));
          expect(parseLabel([text])).toMatchObject({ part: p, supplierPart: m, quantity: q, lot: t });
        },
      ),
    );
  });
});
