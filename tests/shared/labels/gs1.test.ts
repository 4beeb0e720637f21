import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatGs1, hasGs1CheckDigit, parseGs1, parseGs1Brackets } from '../../../shared/labels/gs1.ts';
import { parseLabel } from '../../../shared/labels/label.ts';

const GS = '\x1d';

function pairs(text: string): string[] {
  return parseGs1(text).elements.map(({ id, value }) => `${id}=${value}`);
}

describe('parseGs1()', () => {
  it.each([
    // Element string of the GS1 General Specifications (contained trade items with a purchase order).
    [`0204006664241007371${GS}4007019590754`, ['02=04006664241007', '37=1', '400=7019590754']],
    // Predefined lengths need no FNC1: the two orders of the same facts.
    [`01095011015300031728053110ABC123`, ['01=09501101530003', '17=280531', '10=ABC123']],
    [`10ABC123${GS}010950110153000317280531`, ['10=ABC123', '01=09501101530003', '17=280531']],
    [`3103001234${GS}21X`, ['3103=001234', '21=X']],
    [`${GS}30100`, ['30=100']],
  ])('reads %o', (text, expected) => {
    expect(pairs(text)).toEqual(expected);
    expect(parseGs1(text).end).toBe(text.length);
  });

  it.each([
    ['0109501101530', 0, 'a GTIN that is too short'],
    ['30ABC', 0, 'a count that is no number'],
    [`10${'X'.repeat(21)}`, 0, 'a lot over 20 characters: FNC1 was lost'],
    ['66ABC', 0, 'no identifier begins with 66'],
    [`10A${GS}PX`, 4, 'what follows is no identifier'],
  ])('stops in %o at %d: %s', (text, end) => {
    expect(parseGs1(text).end).toBe(end);
  });
});

describe('hasGs1CheckDigit()', () => {
  // https://www.gs1.org/services/how-calculate-check-digit-manually: 629104150021 has check digit 3.
  it('follows the worked example of GS1', () => {
    expect(hasGs1CheckDigit('6291041500213')).toBe(true);
    for (const digit of '012456789') expect(hasGs1CheckDigit(`629104150021${digit}`)).toBe(false);
    expect(hasGs1CheckDigit('X')).toBe(false);
  });
});

describe('parseGs1Brackets()', () => {
  it('reads the human-readable form', () => {
    const read = parseGs1Brackets('(01)09501101530003(10)LOT(A)(30)4000');
    expect(read?.map(({ id, value }) => `${id}=${value}`)).toEqual([
      '01=09501101530003',
      '10=LOT(A)',
      '30=4000',
    ]);
  });

  it.each(['(1P)MK-1', 'x(10)A', '((((', '(30)X'])('gives null for %s', (text) => {
    expect(parseGs1Brackets(text)).toBeNull();
  });
});

describe('parseLabel() on GS1 codes', () => {
  const body = `01095011015300031126030217280500241CU-77${GS}240MK-1${GS}10LOT7${GS}21SER9${GS}304000${GS}400PO-1`;
  it.each([
    [`]C1${body}`, 'GS1-128'],
    [`]d2${body}`, 'GS1 Data Matrix'],
    [`]Q3${body}`, 'GS1 QR'],
    [`${GS}${body}`, 'FNC1 sent as GS in front'],
    [body, 'FNC1 inside'],
    [`[)>\x1e05${GS}${body}\x1e\x04`, 'an 05 envelope'],
  ])('reads %o: %s', (code) => {
    expect(parseLabel([code])).toMatchObject({
      part: 'CU-77',
      supplierPart: 'MK-1',
      lot: 'LOT7',
      quantity: 4000,
      reel: 'SER9',
      order: 'PO-1',
      dateCode: '260302',
      made: { year: 2026, week: 10 },
      expires: '2028-05-31', // day 00: the last day of the month
    });
  });

  it('keeps a numeric country as printed and out of `country`', () => {
    const reading = parseLabel([`]C1422276${GS}10A`]);
    expect(reading.country).toBeNull();
    expect(reading.fields[0]).toMatchObject({ id: '422', value: '276' });
  });

  it('warns of a wrong check digit', () => {
    const codes = parseLabel([`]C10109501101530004`]).warnings.map(({ code }) => code);
    expect(codes).toContain('gs1-check-digit');
  });

  it('does not take a plain number for an element string', () => {
    expect(parseLabel(['0109501101530003']).fields).toEqual([]);
    expect(parseLabel(['0109501101530003']).unidentified).toEqual(['0109501101530003']);
  });
});

describe('formatGs1()', () => {
  it('writes what parseGs1() reads back', () => {
    const text = fc.stringMatching(/^[A-Za-z0-9\-/.]{1,20}$/);
    const field = fc.oneof(
      fc.record({ id: fc.constant('01'), value: fc.stringMatching(/^\d{14}$/) }),
      fc.record({ id: fc.constantFrom('11', '17', '15'), value: fc.stringMatching(/^\d{6}$/) }),
      fc.record({ id: fc.constantFrom('10', '21'), value: text }),
      fc.record({ id: fc.constantFrom('240', '241', '400'), value: text }),
      fc.record({ id: fc.constantFrom('30', '37'), value: fc.stringMatching(/^\d{1,8}$/) }),
    );
    fc.assert(
      fc.property(fc.array(field, { minLength: 1, maxLength: 12 }), (fields) => {
        const { elements, end } = parseGs1(formatGs1(fields));
        expect(elements.map(({ id, value }) => ({ id, value }))).toEqual(fields);
        expect(end).toBe(formatGs1(fields).length);
      }),
    );
  });
});
