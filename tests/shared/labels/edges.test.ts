// Edges of the readers, each against a published table or a label written out by hand: GS1 General Specifications (identifiers, formats, check
// digits), ISO/IEC 15434 (envelopes), ANS MH10.8.2 (identifiers), the keys of US and German keyboards as printed on them.

import { describe, expect, it } from 'vitest';
import {
  isAlphanumeric,
  isAscii,
  isDigit,
  isDigits,
  isLetter,
  isPrintableAscii,
} from '../../../shared/labels/characters.ts';
import { formatGs1, gs1Element, hasGs1CheckDigit, parseGs1Brackets } from '../../../shared/labels/gs1.ts';
import { findKeyboardLayout } from '../../../shared/labels/keyboard.ts';
import { parseLabel } from '../../../shared/labels/label.ts';
import { differingCharacters } from '../../../shared/labels/part-difference.ts';
import { comparePartNumbers } from '../../../shared/labels/part-numbers.ts';
import { type LabelRule, labelRuleSchema } from '../../../shared/labels/rules.ts';
import { splitSeparateCode } from '../../../shared/labels/separate-codes.ts';
import { readValueCode } from '../../../shared/labels/value-codes.ts';
import { formatLabelWarning } from '../../../shared/labels/warnings.ts';

const GS = '\x1d';
const envelope = (format: string, ...elements: string[]) =>
  `[)>\x1e${format}${GS}${elements.join(GS)}\x1e\x04`;
const warned = (...codes: string[]) => parseLabel(codes).warnings.map(({ code }) => code);

describe('characters', () => {
  it('are told as a regular expression tells them, each of the first 256', () => {
    for (let code = 0; code < 256; code += 1) {
      const char = String.fromCharCode(code);
      expect([code, isDigit(code)]).toEqual([code, /[0-9]/.test(char)]);
      expect([code, isLetter(code)]).toEqual([code, /[A-Za-z]/.test(char)]);
      expect([code, isAlphanumeric(code)]).toEqual([code, /[0-9A-Za-z]/.test(char)]);
      expect([code, isAscii(`A${char}`)]).toEqual([code, code < 128]);
      expect([code, isPrintableAscii(`A${char}`)]).toEqual([code, /[ -~]/.test(char)]);
      expect([code, isDigits(`1${char}`)]).toEqual([code, /[0-9]/.test(char)]);
    }
    expect([isDigits(''), isAscii(''), isPrintableAscii('')]).toEqual([false, true, true]);
  });
});

describe('GS1 by the General Specifications', () => {
  /** Format of the value: `n` digits, `an` any; `..` up to so many, else the most there may be. */
  const formats = `00 n18, 01 n14, 02 n14, 10 an..20, 11 n6, 12 n6, 13 n6, 15 n6, 16 n6, 17 n6, 20 n2, 21 an..20,
    22 an..20, 235 an..28, 240 an..30, 241 an..30, 242 n..6, 243 an..20, 250 an..30, 251 an..30, 253 an..30, 254 an..20, 30 n..8, 37 n..8,
    400 an..30, 401 an..30, 402 n17, 403 an..30, 410 n13, 411 n13, 412 n13, 413 n13, 414 n13, 415 n13, 416 n13, 417 n13,
    420 an..20, 422 n3, 7003 n10, 8005 n6, 8008 n..12, 8020 an..25`;

  it.each(formats.split(/,\s*/))('takes values of the format %s and no longer ones', (row) => {
    const [ai = '', format = ''] = row.trim().split(' ');
    const most = Number(/\d+$/.exec(format)?.[0]);
    const isNumeric = format.startsWith('n');
    expect(gs1Element(ai, '1'.repeat(most))?.value).toHaveLength(most);
    expect(gs1Element(ai, '1'.repeat(most + 1))).toBeNull();
    expect(gs1Element(ai, 'A') === null).toBe(isNumeric);
    expect(gs1Element(ai, '')).toBeNull();
  });

  /** How long an identifier is by its first two digits. */
  const lengths = (two: number): number => {
    const ofLength: Readonly<Record<number, readonly (readonly [number, number])[]>> = {
      2: [
        [0, 3],
        [10, 22],
        [30, 30],
        [37, 37],
        [90, 99],
      ],
      3: [
        [23, 25],
        [40, 42],
        [71, 71],
      ],
      4: [
        [31, 36],
        [39, 39],
        [43, 43],
        [70, 70],
        [72, 72],
        [80, 82],
      ],
    };
    const found = Object.entries(ofLength).find(([, ranges]) =>
      ranges.some(([first, last]) => two >= first && two <= last),
    );
    return Number(found?.[0] ?? 0);
  };

  it('has identifiers of two, three and four digits, told by the first two', () => {
    for (let two = 0; two < 100; two += 1) {
      const ai = String(two).padStart(2, '0');
      const taken = ['', '1', '11'].map((more) => parseGs1Brackets(`(${ai}${more})1`) !== null);
      const expected = [2, 3, 4].map((length) => length === lengths(two));
      expect([ai, ...taken]).toEqual([ai, ...expected]);
    }
  });

  it('ends a value of predefined length without FNC1, and every other but the last with it', () => {
    const predefined = new Set([
      0, 1, 2, 3, 4, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 31, 32, 33, 34, 35, 36, 41,
    ]);
    for (let two = 0; two < 100; two += 1) {
      const id = String(two).padStart(2, '0');
      const text = formatGs1([
        { id, value: '1' },
        { id: '10', value: 'A' },
      ]);
      expect(text).toBe(predefined.has(two) ? `${id}110A` : `${id}1${GS}10A`);
    }
  });

  // GTIN-8, -12, -13, -14 and an SSCC; the last digit is right for these alone. 9501101530003 is GS1's own number for examples.
  it.each(['9501101530003', '09501101530003', '96385074', '614141007349', '106141412345678908'])(
    'knows the check digit of %s',
    (digits) => {
      const right = [...'0123456789'].filter((last) => hasGs1CheckDigit(digits.slice(0, -1) + last));
      expect(right).toEqual([digits.slice(-1)]);
    },
  );

  it('says nothing of a code that is read to its end', () => {
    expect(warned(`]C1010950110153000310LOT7${GS}240MK-1`)).toEqual([]);
    expect(warned(`]C110LOT7${GS}240MK-1${GS}66X`)).toEqual(['gs1-unread']);
  });
});

describe('a scanner that types for another keyboard', () => {
  // Row by row: what is meant on US keys, and what a German layout makes of the same keys.
  const rows = [
    ['-=', 'ß´'],
    ["[]\\;'/", 'ü+#öä-'],
    ['yzYZ', 'zyZY'],
    ['_+', '?`'],
    ['{}|:"<>?', "Ü*'ÖÄ;:_"],
    ['@#^&*()', '"§&/()='],
  ] as const;

  it.each(rows)('German: %s arrives as %s', (meant, typed) => {
    expect(findKeyboardLayout(`ü=:${typed}A1`)).toEqual({
      layout: 'German (QWERTZ)',
      meant: `[)>${meant}A1`,
    });
  });

  it.each([
    ['German (QWERTZ)', 'ÜQTÖ5'],
    ['Nordic', 'ÅQTÖ5'],
    ['Nordic', 'ÅQTÆ5'],
    ['Nordic', 'ÅQTØ5'],
    ['Italian', 'éQTç5'],
    ['Spanish', '^QTÑ5'],
  ])('%s: shows in a list of keys with braces', (layout, text) => {
    expect(findKeyboardLayout(text)?.layout).toBe(layout);
    // Without the colon it is some text.
    expect(findKeyboardLayout(text.replace(/[ÖÆØçÑ]/, '-'))).toBeNull();
  });

  it.each([
    ['Nordic', 'å=:06'],
    ['Italian', 'È=:06'],
    ['Spanish', '`=:06'],
    ['French (AZERTY)', '^0/06'],
  ])('%s: shows in the mark of an envelope', (layout, text) => {
    expect(findKeyboardLayout(text)).toEqual({ layout, meant: null });
  });

  it('is not seen in part numbers and names, but in capitals with the sign that stands for the hyphen', () => {
    for (const text of ['R-100', '^X', '`', 'Müller', 'Straße 5', '¨QTM5'])
      expect([text, findKeyboardLayout(text)]).toEqual([text, null]);
    expect(findKeyboardLayout('MKß103')?.meant).toBe('MK-103');
  });
});

describe('envelopes', () => {
  it('take a small letter for the identifier that it stands for, behind blanks too', () => {
    expect(parseLabel([envelope('06', 'PR-1', ' q5000', '1TL7')])).toMatchObject({
      part: 'R-1',
      quantity: 5000,
      lot: 'L7',
      warnings: [{ code: 'identifier-lower-case', id: 'q' }],
    });
  });

  it('pass over what is blank', () => {
    expect(warned(envelope('06', 'PR-1', ' ', '1TL7'))).toEqual([]);
  });

  it('may hold two formats, with words for the separators', () => {
    const text = '[)>{RS}06{GS}PR-100{GS}Q5{RS}12{GS}LOT A{RS}{EOT}';
    expect(parseLabel([text])).toMatchObject({ part: 'R-100', quantity: 5, lot: 'A' });
  });

  it('of format 12 have three letters, a blank and a value; what has not is kept as text', () => {
    const read = parseLabel([envelope('12', 'PNR R-1', 'LOTX', 'qty 4', 'QTY 7', 'ZZZ 1')]);
    expect(read).toMatchObject({
      supplierPart: 'R-1',
      quantity: 7,
      lot: null,
      unidentified: ['LOTX', 'qty 4'],
    });
    expect(read.warnings).toContainEqual({ code: 'identifier-unlisted', id: 'ZZZ' });
  });

  it('are MAT-Labels where they name its version in at most six digits', () => {
    const level = (version: string) => parseLabel([envelope('06', `12S${version}`, 'Z3', 'PR-1')]).msl;
    expect(['1', '123456', '1234567', '12A'].map(level)).toEqual(['3', '3', null, null]);
  });
});

describe('one thing said twice', () => {
  it.each<[field: string, one: string, other: string]>([
    ['quantity', envelope('06', 'PR-1', 'Q5000'), envelope('12', 'QTY 4000')],
    ['lot', envelope('06', 'PR-1', '1TA'), envelope('12', 'LOT B')],
    ['lot', envelope('06', 'PR-1', '1TA'), `]C110B`],
    ['quantity', envelope('06', 'PR-1', 'Q5000'), ']C1304000'],
    ['supplierPart', envelope('06', '1PA'), ']C1240B'],
    ['part', envelope('06', 'PA'), ']C1241B'],
  ])(
    'in two standards is a question about the %s, and never the one or the other in silence',
    (field, one, other) => {
      const read = parseLabel([one, other]);
      expect(read[field as 'lot']).toBeNull();
      expect(read.warnings.map(({ code }) => code)).toContain('conflict');
    },
  );

  it('by a rule of the site and by a standard is one too', () => {
    const rule: LabelRule = {
      rule: 'brae-1',
      version: 1,
      codes: [{ pieces: [{ text: 'CH#' }, { takes: 'any', field: 'lot' }] }],
    };
    expect(parseLabel(['CH#A', '1TB', 'PR-1', 'Q5'], { rules: [rule] })).toMatchObject({
      lot: null,
      quantity: 5,
    });
  });
});

describe('two-letter tags', () => {
  it('are read from two on where one of them can be no identifier', () => {
    const read = parseLabel([envelope('06', 'PNMK-1', 'QT1500')]);
    expect(read).toMatchObject({ supplierPart: 'MK-1', quantity: 1500 });
    expect(parseLabel([envelope('06', 'PNMK-1')])).toMatchObject({ supplierPart: null, part: null });
  });

  it('are none where another element proves the standard, or where fewer than half look like one', () => {
    expect(parseLabel([envelope('06', '1TLOT7', 'PNMK-1', 'QT1500')])).toMatchObject({
      part: 'NMK-1',
      lot: 'LOT7',
    });
    expect(parseLabel([envelope('06', 'Q5', 'PNMK-1', 'BTL7')])).toMatchObject({
      part: 'NMK-1',
      quantity: 5,
    });
    expect(parseLabel([envelope('06', 'PX1', 'TL7', 'QT1500')]).part).toBe('X1');
  });
});

describe('separate codes', () => {
  it.each([
    ['Q 5000', 'Q', '5000'],
    ['P : R-100', 'P', 'R-100'],
    ['P= R-100', 'P', 'R-100'],
    ['(1T) L7', '1T', 'L7'],
    ['(1T)', null, '(1T)'],
    ['(1T L7)', null, '(1T L7)'],
    ['QX', null, 'QX'],
    ['', null, ''],
  ])('%j is %s with %j', (text, id, value) => {
    expect(splitSeparateCode(text)).toMatchObject({ text, id, value });
  });

  it('of a value on a part are read without the blanks around it', () => {
    expect(readValueCode(' 103 ')).toEqual(readValueCode('103'));
    expect(readValueCode('103').length).toBeGreaterThan(0);
  });
});

describe('part numbers', () => {
  const rules = {
    ignoreCase: false,
    ignoreSpaces: false,
    ignoreDashes: false,
    packingSuffixes: ['R', '-TR'],
  };

  it('end in a packing suffix of one letter too, and the longest of several counts', () => {
    expect(comparePartNumbers('MK-1', 'MK-1R', rules)).toBe('packing-suffix');
    expect(comparePartNumbers('MK-1', 'MK-1-TR', rules)).toBe('packing-suffix');
    expect(comparePartNumbers('MK-1-T', 'MK-1-TR', rules)).toBeNull();
  });

  it('of 200 characters are lined up, longer texts are one difference', () => {
    const long = (length: number) => [`A${'B'.repeat(length - 1)}`, `X${'B'.repeat(length - 1)}`] as const;
    expect(differingCharacters(...long(200))).toHaveLength(2);
    const [wanted, found] = long(201);
    expect(differingCharacters(wanted, found)).toEqual([{ same: false, wanted, found }]);
    expect(differingCharacters(wanted, 'B')).toEqual([{ same: false, wanted, found: 'B' }]);
    expect(differingCharacters('B', found)).toEqual([{ same: false, wanted: 'B', found }]);
  });
});

describe('what a rule of the site may hold', () => {
  const rule = (more: object) => ({
    rule: 'r',
    version: 1,
    codes: [{ pieces: [{ takes: 'any', field: 'lot' }] }],
    ...more,
  });
  const pieces = (count: number) => [
    { takes: 'digits', field: 'lot' },
    ...Array.from({ length: count - 1 }, () => ({ text: '-' })),
  ];
  const example = { codes: ['x'], reads: {} };

  it.each<[what: string, most: number, make: (count: number) => object]>([
    ['letters in its name', 64, (count) => ({ rule: 'r'.repeat(count) })],
    ['characters in its note', 500, (count) => ({ note: 'n'.repeat(count) })],
    ['pieces of a code', 60, (count) => ({ codes: [{ pieces: pieces(count) }] })],
    [
      'characters of a fixed text',
      100,
      (count) => ({ codes: [{ pieces: [{ text: 't'.repeat(count) }, ...pieces(1)] }] }),
    ],
    [
      'characters of a piece',
      200,
      (count) => ({ codes: [{ pieces: [{ takes: 'any', length: count, field: 'lot' }] }] }),
    ],
    [
      'codes',
      12,
      (count) => ({
        codes: [
          { pieces: pieces(1) },
          ...Array.from({ length: count - 1 }, () => ({ pieces: [{ text: '-' }] })),
        ],
      }),
    ],
    ['examples', 50, (count) => ({ examples: Array.from({ length: count }, () => example) })],
    [
      'codes of an example',
      50,
      (count) => ({ examples: [{ codes: Array.from({ length: count }, () => 'x'), reads: {} }] }),
    ],
    [
      'characters of an example’s code',
      4000,
      (count) => ({ examples: [{ codes: ['x'.repeat(count)], reads: {} }] }),
    ],
  ])('%s: up to %i', (_, most, make) => {
    expect(labelRuleSchema.safeParse(rule(make(most))).success).toBe(true);
    expect(labelRuleSchema.safeParse(rule(make(most + 1))).success).toBe(false);
  });

  it('has a version from 1, a name, a code, a piece, and something that it reads once', () => {
    const field = (name: string) => ({ takes: 'digits', length: 2, field: name });
    for (const wrong of [
      { version: 0 },
      { rule: '' },
      { codes: [] },
      { codes: [{ pieces: [] }] },
      { codes: [{ pieces: [{ text: '' }, field('lot')] }] },
      { codes: [{ pieces: [{ takes: 'digits', length: 0, field: 'lot' }] }] },
      { codes: [{ pieces: [{ takes: 'digits', length: 2 }] }] },
      { codes: [{ pieces: [field('lot'), field('lot')] }] },
      { examples: [{ codes: [], reads: {} }] },
    ])
      expect([wrong, labelRuleSchema.safeParse(rule(wrong)).success]).toEqual([wrong, false]);
    expect(labelRuleSchema.safeParse(rule({})).success).toBe(true);
  });
});

it('a warning quotes up to 60 characters whole, and 57 of a longer text', () => {
  const quoted = (length: number) =>
    formatLabelWarning({ code: 'country-unlisted', text: 'X'.repeat(length) });
  expect(quoted(60)).toContain(`"${'X'.repeat(60)}"`);
  expect(quoted(61)).toContain(`"${'X'.repeat(57)}..."`);
});
