// Labels as they come from real scanners and printers: structures observed in public code and threads, values invented.

import { describe, expect, it } from 'vitest';
import { parseLabel } from '../../../shared/labels/label.ts';
import type { LabelReading } from '../../../shared/labels/reading.ts';
import type { LabelWarningCode } from '../../../shared/labels/warnings.ts';

const GS = '\x1d';
const RS = '\x1e';
const EOT = '\x04';

/** What a reading states, without what it leaves open. */
function stated(reading: LabelReading): Record<string, unknown> {
  const { fields: _f, unidentified: _u, ambiguous: _a, warnings: _w, rules: _r, ...values } = reading;
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== null));
}

function codesOf(reading: LabelReading): LabelWarningCode[] {
  return reading.warnings.map(({ code }) => code);
}

const WHOLE = {
  part: 'CU-77',
  supplierPart: 'MK-0402-104',
  quantity: 10000,
  lot: 'L2611',
  dateCode: '2644',
  made: { year: 2026, week: 44 },
};

describe('parseLabel() on envelopes of format 06', () => {
  it('reads a whole one without a warning', () => {
    const reading = parseLabel([
      `[)>${RS}06${GS}PCUST-0042${GS}1PABC0603-103${GS}Q4000${GS}1TLOT77${GS}10D2618${GS}4LMY${GS}13E2a${GS}3SR1${GS}KPO-1${GS}1VMKR${GS}14D20280523${RS}${EOT}`,
    ]);
    expect(stated(reading)).toEqual({
      part: 'CUST-0042',
      supplierPart: 'ABC0603-103',
      quantity: 4000,
      lot: 'LOT77',
      dateCode: '2618',
      made: { year: 2026, week: 18 },
      country: 'MY',
      msl: '2a',
      reel: 'R1',
      order: 'PO-1',
      supplier: 'MKR',
      expires: '2028-05-23',
    });
    expect(reading.warnings).toEqual([]);
    expect(reading.fields[0]).toEqual({
      id: 'P',
      title: 'part number assigned by the customer',
      value: 'CUST-0042',
    });
  });

  const elements = ['PCU-77', '1PMK-0402-104', 'Q10000', '1TL2611', '9D2644'];
  it.each([
    [`[)>${RS}06${GS}`, GS, '', 'trailer missing'],
    [`[)>${RS}06${GS}`, GS, '\r', 'a carriage return instead of the trailer'],
    [`[)>${RS}06${GS}`, GS, `${RS}${EOT}\r\n`, 'line end behind the trailer'],
    [`[)>${RS}06${GS}`, GS, EOT, 'RS missing in the trailer'],
    [`[)>06${GS}`, GS, '', 'RS missing in the header'],
    [`>[)>${RS}06${GS}`, GS, '', 'a sign in front'],
    [`>[)>06${GS}`, GS, '', 'a sign in front, no RS'],
    [`[)>^06]`, ']', '^', 'RS as ^, GS as ]'],
    [`[)>^06]`, ']', '^^d', 'EOT as ^d'],
    [`[)>^06]`, ']', '^V', 'EOT as V'],
    [`[)>^^06^]`, '^]', '^^^D', 'control characters in caret notation'],
    [`[)\u25b206\u2194`, '\u2194', '\u25b2\u2666', 'glyphs of code page 437, > missing'],
    [`  [)>${RS}06${GS}`, GS, `${RS}${EOT}`, 'blanks in front'],
    [`]d1[)>${RS}06${GS}`, GS, `${RS}${EOT}`, 'symbology identifier in front'],
    [`[)>{RS}06{GS}`, '{GS}', '{RS}{EOT}', 'names in braces'],
    [`[)><RS>06<GS>`, '<GS>', '<RS><EOT>', 'names in angle brackets'],
    [`[)>\\x1e06\\x1d`, '\\x1d', '\\x1e\\x04', 'escapes written out'],
    [`[)>\u241e06\u241d`, '\u241d', '\u241e\u2404', 'pictures of control characters'],
    [`[)>"06"`, '"', '"', 'quotation marks'],
    [`[)>@06@`, '@', '@@', 'at signs'],
    [`[)>|06|`, '|', '|', 'bars'],
    [`06${GS}`, GS, `${RS}${EOT}`, 'the mark missing'],
    ['', GS, `${RS}${EOT}`, 'the whole header missing'],
    [`[>${RS}06${GS}`, GS, `${RS}${EOT}`, 'a bracket missing'],
    [`[)>E06${GS}`, GS, '', 'RS as a letter'],
    ['[)>\r\n06\r\n', '\r\n', '\r\n', 'line ends'],
    ['\u00ed', GS, '', 'Data Matrix macro 06 sent as a character'],
  ])('reads %j with %j between and %j behind the same: %s', (header, separator, trailer) => {
    expect(stated(parseLabel([header + elements.join(separator) + trailer]))).toEqual(WHOLE);
  });

  it('names damage and stand-ins', () => {
    expect(codesOf(parseLabel(['[)>^06]PCU-77]Q5']))).toEqual(['header-damaged', 'separators-replaced']);
    expect(codesOf(parseLabel([`[)>06${GS}PCU-77`]))).toEqual(['header-damaged']);
  });

  it('reads identifiers that the scanner left in lower case behind ]', () => {
    const reading = parseLabel(['[)>^06]PCU-77]q80]kPO-1^V']);
    expect(stated(reading)).toEqual({ part: 'CU-77', quantity: 80, order: 'PO-1' });
    expect(codesOf(reading)).toContain('identifier-lower-case');
  });

  it('reads them behind GS too', () => {
    expect(stated(parseLabel([`[)>${RS}06${GS}PCU-77${GS}q80${GS}1tL7`]))).toEqual({
      part: 'CU-77',
      quantity: 80,
      lot: 'L7',
    });
  });

  it('asks where separators came as ] and a value holds what the label lacks elsewhere', () => {
    const reading = parseLabel(['[)>06]PCU-771PMK-1]Q80']);
    expect(stated(reading)).toEqual({ quantity: 80 });
    expect(codesOf(reading)).toContain('separators-lost');
    expect(stated(parseLabel(['[)>06]PCU-771P0]1PMK-1]Q80']))).toEqual({
      part: 'CU-771P0',
      supplierPart: 'MK-1',
      quantity: 80,
    });
  });

  it('takes a V off a last number, and asks about one behind a last text', () => {
    expect(stated(parseLabel(['[)>06]PCU-77]q80V']))).toEqual({ part: 'CU-77', quantity: 80 });
    const asked = parseLabel(['[)>06]PCU-77]q80]1tL1V']);
    expect(asked.lot).toBeNull();
    expect(asked.ambiguous[0]?.candidates).toEqual([
      { field: 'lot', value: 'L1V' },
      { field: 'lot', value: 'L1' },
    ]);
  });

  it('reads separators that differ from place to place, and doubts a value that another ran into', () => {
    const reading = parseLabel(['[)>06\u2534PCU-77\u00a11PMK-1E1TLL\u2534Q80']);
    expect(stated(reading)).toEqual({ part: 'CU-77', quantity: 80 });
    expect(codesOf(reading)).toEqual(expect.arrayContaining(['separators-mixed', 'separators-lost']));
    expect(reading.ambiguous).toHaveLength(1);
  });

  it('keeps ], @, | and letters in values where GS separates', () => {
    const reading = parseLabel([`[)>${RS}06${GS}PCU]7@7|1${GS}1PA"B^C${RS}${EOT}`]);
    expect(stated(reading)).toEqual({ part: 'CU]7@7|1', supplierPart: 'A"B^C' });
  });

  it('takes an empty element as absent, and P as the first letter of an order', () => {
    const reading = parseLabel([
      `[)>${RS}06${GS}9D${GS}1T${GS}KP0-13${GS}K${GS}16D20260523${GS}14D20280523${RS}${EOT}`,
    ]);
    expect(stated(reading)).toEqual({
      order: 'P0-13',
      dateCode: '20260523',
      made: { year: 2026, week: 21 },
      expires: '2028-05-23',
    });
    expect(reading.fields.map(({ id }) => id)).toEqual(['K', '16D', '14D']);
    expect(codesOf(reading)).toEqual(['no-part-number']);
  });

  it('reads two-letter tags as tags, not as identifiers', () => {
    const reading = parseLabel([
      `[)>${RS}06${GS}LT3S0000001${GS}PN1900000-1${GS}RVA${GS}QT1500${GS}PO${GS}BT26055D${GS}BX3${GS}DC26055${RS}${EOT}`,
    ]);
    expect(stated(reading)).toEqual({
      supplierPart: '1900000-1',
      quantity: 1500,
      lot: '26055D',
      dateCode: '26055',
      reel: '3S0000001',
    });
    expect(codesOf(reading)).toEqual(['tags-not-mh10', 'date-code-unclear']);
  });

  it('still reads a part number that begins with N as MH10.8.2 where other identifiers prove it', () => {
    const reading = parseLabel([`[)>${RS}06${GS}PN1900000-1${GS}Q1500${GS}1TL1${RS}${EOT}`]);
    expect(stated(reading)).toEqual({ part: 'N1900000-1', quantity: 1500, lot: 'L1' });
  });

  it('asks where tags and identifiers are both possible, unless the setup knows one', () => {
    const codes = [`[)>${RS}06${GS}PN1900000-1${GS}LT12${RS}${EOT}`];
    const asked = parseLabel(codes);
    expect(stated(asked)).toEqual({});
    expect(asked.ambiguous[0]?.candidates).toEqual([
      { field: 'supplierPart', value: '1900000-1' },
      { field: 'part', value: 'N1900000-1' },
    ]);
    const tag = parseLabel(codes, { expected: { parts: new Set(), supplierParts: new Set(['1900000-1']) } });
    expect(tag.supplierPart).toBe('1900000-1');
    const identifier = parseLabel(codes, {
      expected: { parts: new Set(['N1900000-1']), supplierParts: new Set() },
    });
    expect(identifier.part).toBe('N1900000-1');
  });

  it('reads the MAT-Label: agreed meanings, empty fields, unit behind the quantity', () => {
    const reading = parseLabel([
      '[)>@06@12S0002@P7901@1PMK-5@31PMK-5@12VX@10VY@2P@20P@6D20260126@14D20270120@30PY@Z1@K55@16K39@V60@3SS0001@Q5000NAR000@20T1@1TZ11@2T@@',
    ]);
    expect(stated(reading)).toEqual({
      part: '7901',
      supplierPart: 'MK-5',
      quantity: 5000,
      unit: 'NAR',
      lot: 'Z11',
      dateCode: '20260126',
      made: { year: 2026, week: 5 },
      expires: '2027-01-20',
      reel: 'S0001',
      supplier: '60',
      msl: '1',
      order: '55',
    });
    expect(codesOf(reading)).toEqual(['separators-replaced']);
    expect(reading.fields.map(({ id }) => id)).not.toContain('2T');
  });

  it('says that a MAT-Label states two lots', () => {
    const reading = parseLabel([`[)>${RS}06${GS}12S0002${GS}PX1${GS}20T2${GS}1TA${GS}2TB${RS}${EOT}`]);
    expect(reading.lot).toBe('A');
    expect(reading.warnings).toEqual([{ code: 'second-lot', text: 'B' }]);
  });

  it('gives Z and 6D no meaning outside the MAT-Label, except a 6D with a qualifier that says made', () => {
    const plain = parseLabel([`[)>${RS}06${GS}PX${GS}Z3${GS}6D20260126${RS}${EOT}`]);
    expect(stated(plain)).toEqual({ part: 'X' });
    const qualified = parseLabel([`[)>${RS}06${GS}PX${GS}6D20260126094${RS}${EOT}`]);
    expect(qualified.made).toEqual({ year: 2026, week: 5 });
    const shipped = parseLabel([`[)>${RS}06${GS}PX${GS}6D20260126011${RS}${EOT}`]);
    expect(shipped.made).toBeNull();
  });

  it('reads two formats in one message', () => {
    const reading = parseLabel([`[)>${RS}06${GS}PX${GS}Q5${RS}05${GS}10LOT7${RS}${EOT}`]);
    expect(stated(reading)).toEqual({ part: 'X', quantity: 5, lot: 'LOT7' });
  });

  it('keeps the elements of a format that it does not read', () => {
    const reading = parseLabel([`[)>${RS}07${GS}free text${RS}${EOT}`]);
    expect(reading.unidentified).toEqual(['free text']);
    expect(codesOf(reading)).toContain('format-unread');
  });

  it('keeps an unreadable header whole', () => {
    const reading = parseLabel([`[)>RS06GSPX`]);
    expect(stated(reading)).toEqual({});
    expect(reading.unidentified).toEqual(['[)>RS06GSPX']);
    expect(codesOf(reading)).toContain('header-damaged');
  });

  it('keeps identifiers that are not in its table, with a warning', () => {
    const reading = parseLabel([`[)>${RS}06${GS}PX${GS}77YABC${GS}-12${RS}${EOT}`]);
    expect(reading.fields[1]).toMatchObject({ id: '77Y', value: 'ABC' });
    expect(reading.unidentified).toEqual(['-12']);
    expect(codesOf(reading)).toEqual(['identifier-unlisted', 'no-identifier']);
  });
});

describe('parseLabel() on format 12', () => {
  it('reads text element identifiers', () => {
    const reading = parseLabel([`[)>${RS}12${GS}MFR 1TL47${GS}SER XYZ${GS}PNO AB-1${GS}QTY 25${RS}${EOT}`]);
    expect(stated(reading)).toEqual({ supplierPart: 'AB-1', reel: 'XYZ', supplier: '1TL47', quantity: 25 });
  });
});

describe('parseLabel() where separators are gone', () => {
  const run = '[)>06PR1, R31PMK-11K656K754Q6';
  it('states nothing that could end elsewhere', () => {
    const reading = parseLabel([run]);
    expect(stated(reading)).toEqual({});
    expect(reading.unidentified).toEqual(['PR1, R31PMK-11K656K754Q6']);
    expect(codesOf(reading)).toEqual(['header-damaged', 'separators-lost', 'no-part-number']);
  });

  it('states what the setup confirms', () => {
    const reading = parseLabel([run], {
      expected: { parts: new Set(['R1, R3', 'X']), supplierParts: new Set(['MK-1', 'MK-2']) },
    });
    expect(stated(reading)).toEqual({ part: 'R1, R3', supplierPart: 'MK-1' });
  });

  it('asks where the setup knows two part numbers that fit', () => {
    const reading = parseLabel(['[)>06PR11PMK'], {
      expected: { parts: new Set(['R1', 'R11']), supplierParts: new Set() },
    });
    expect(reading.part).toBeNull();
    expect(reading.ambiguous[0]?.candidates.map(({ value }) => value)).toEqual(['R1', 'R11']);
  });

  it.each([
    ['[)>06Q4000PAB', { quantity: 4000 }, 'digits end before the only possible identifier'],
    ['[)>06Q40001PAB', {}, '4000 and 1P, or 40001 and P'],
    [
      '[)>0610D26184LMYQ50',
      { dateCode: '2618', made: { year: 2026, week: 18 }, country: 'MY', quantity: 50 },
      'fixed lengths',
    ],
    [
      '[)>0613E2a16D20260523',
      { msl: '2a', dateCode: '20260523', made: { year: 2026, week: 21 } },
      'a level and a day',
    ],
    ['[)>06Q50K123456', { quantity: 50, order: '123456' }, 'a last value without any letter'],
    ['[)>06Q501T123456', {}, '50 and 1T, or 501 and T'],
    ['[)>0610D2699Q50', {}, 'no such week'],
    ['[)>06', {}, 'nothing'],
  ])('reads %s as %o: %s', (code, expected, _reason) => {
    expect(stated(parseLabel([code]))).toEqual(expected);
  });

  it('reads on where only the first separator is gone', () => {
    expect(stated(parseLabel([`[)>06PCU-77${GS}Q80${GS}1TL1`]))).toEqual({
      part: 'CU-77',
      quantity: 80,
      lot: 'L1',
    });
  });

  it('doubts one long element behind a separator', () => {
    const reading = parseLabel(['[)>06]PCU-77E1PMK-1Q80']);
    expect(stated(reading)).toEqual({});
    expect(codesOf(reading)).toContain('separators-lost');
  });

  it('reads only predefined lengths of a GS1 envelope', () => {
    const reading = parseLabel(['[)>051728053110ABC304000']);
    expect(stated(reading)).toEqual({ expires: '2028-05-31' });
    expect(reading.unidentified).toEqual(['10ABC304000']);
  });
});

describe('parseLabel() on a wrong keyboard layout', () => {
  it.each([
    ['ü=:06+PMKß1+Q80', 'German (QWERTZ)', '[)>06]PMK-1]Q80'],
    ['ÜpbnÖPICK1,pmÖMKß1,qtzÖ100*', 'German (QWERTZ)', '{pbn:PICK1,pm:MK-1,qty:100}'],
    ['QTZÖ1000 PNÖSMDß1', 'German (QWERTZ)', 'QTY:1000 PN:SMD-1'],
    ['1PMKß0402', 'German (QWERTZ)', '1PMK-0402'],
    ['å=:06PX', 'Nordic', null],
    ['è=:06PX', 'Italian', null],
    ['^0/à-PX', 'French (AZERTY)', null],
  ])('names the layout of %s and reads nothing', (code, layout, meant) => {
    const reading = parseLabel([code, 'Q4000']);
    expect(stated(reading)).toEqual({});
    expect(reading.fields).toEqual([]);
    expect(reading.warnings[0]).toMatchObject({ code: 'keyboard-layout', layout, meant });
    expect(reading.unidentified).toEqual([code, 'Q4000']);
  });

  it('does not mistake words with ß or Ö for it', () => {
    const reading = parseLabel(['MFR:Weiß MPN:MK-1', 'QTY:5']);
    expect(reading.supplierPart).toBe('MK-1');
  });
});

describe('parseLabel() on separate codes', () => {
  it('gathers them and keeps the one without identifier', () => {
    const reading = parseLabel(['PCU-77', 'Q4000', '1TSV82', '1PMK-1', '16D20260523', '4LJP', '0815/2']);
    expect(stated(reading)).toEqual({
      part: 'CU-77',
      supplierPart: 'MK-1',
      quantity: 4000,
      lot: 'SV82',
      dateCode: '20260523',
      made: { year: 2026, week: 21 },
      country: 'JP',
    });
    expect(reading.unidentified).toEqual(['0815/2']);
  });

  it.each([['PCU-77'], ['1PMK-1'], ['Q4000'], ['S123'], ['KX600160004000'], ['T491A'], ['3SK74']])(
    'asks about %s alone, which may be a bare part number',
    (code) => {
      const reading = parseLabel([code]);
      expect(stated(reading)).toEqual({});
      expect(reading.ambiguous[0]?.text).toBe(code);
      expect(reading.ambiguous[0]?.candidates).toContainEqual({ field: 'part', value: code });
      expect(codesOf(reading)).toContain('identifier-unconfirmed');
    },
  );

  it.each([
    ['1TSV82', { lot: 'SV82' }],
    ['10D2618', { dateCode: '2618', made: { year: 2026, week: 18 } }],
    ['4LMY', { country: 'MY' }],
    ['13E3', { msl: '3' }],
    ['3SREEL-0001', { reel: 'REEL-0001' }],
  ])('reads %s alone, which nobody numbers a part', (code, expected) => {
    expect(stated(parseLabel([code]))).toEqual(expected);
  });

  it.each(['1N4148W', '2SC1815', '74HC00', 'Q2N3904', '0402-104', '10K', '4L4X', '13E9'])(
    'takes %s for no identifier',
    (code) => {
      const reading = parseLabel([code]);
      expect(reading.unidentified).toEqual([code]);
      expect(reading.fields).toEqual([]);
    },
  );

  it('asks who can say when no code states a part number', () => {
    const reading = parseLabel(['KX600160004000', 'Q4000', '1TL77']);
    expect(stated(reading)).toEqual({ quantity: 4000, lot: 'L77' });
    expect(codesOf(reading)).toEqual(['identifier-unconfirmed', 'no-part-number']);
  });

  it('lets the setup tell a bare part number from one with an identifier', () => {
    const setup = (parts: string[], supplierParts: string[] = []) => ({
      expected: { parts: new Set(parts), supplierParts: new Set(supplierParts) },
    });
    expect(parseLabel(['P2103-A'], setup(['P2103-A'])).part).toBe('P2103-A');
    expect(parseLabel(['P2103-A'], setup(['2103-A'])).part).toBe('2103-A');
    expect(parseLabel(['1PX'], setup([], ['X'])).supplierPart).toBe('X');
    expect(parseLabel(['1PX'], setup([], ['1PX'])).supplierPart).toBe('1PX');
    expect(parseLabel(['Q4000'], setup(['Q4000'])).quantity).toBeNull();
    expect(parseLabel(['Q4000'], setup(['X'])).quantity).toBe(4000);
    expect(parseLabel(['MK-1', 'Q4000'], setup([], ['MK-1'])).supplierPart).toBe('MK-1');
    const both = parseLabel(['PX'], setup(['PX', 'X']));
    expect(both.part).toBeNull();
    expect(both.ambiguous).toHaveLength(1);
    expect(parseLabel(['PX', 'Q5', '1TL'], setup(['PX'])).part).toBe('PX');
  });

  it('strips the symbology identifier, the stars of Code 39, brackets and line ends', () => {
    const reading = parseLabel([']C0PCU-77\r\n', '*Q4000*', '(1T)SV82', ']A0 1PMK-1']);
    expect(stated(reading)).toEqual({ part: 'CU-77', quantity: 4000, lot: 'SV82', supplierPart: 'MK-1' });
  });

  it('believes three different one-letter identifiers, P among them, but not two', () => {
    expect(stated(parseLabel(['PCU-77', 'KPO-1', 'SR1']))).toEqual({
      part: 'CU-77',
      order: 'PO-1',
      reel: 'R1',
    });
    expect(stated(parseLabel(['PCU-77', 'SR1']))).toEqual({});
  });

  it('takes a colon behind an identifier for no part of the value', () => {
    expect(stated(parseLabel(['P:CU-77', 'Q:4000', '1T=L7']))).toEqual({
      part: 'CU-77',
      quantity: 4000,
      lot: 'L7',
    });
    expect(stated(parseLabel(['T:100']))).toEqual({});
  });

  it('takes the same code twice once, and asks about two different lots', () => {
    const codes = ['PX', 'PX', 'Q5', '1TA', '1TB'];
    const reading = parseLabel(codes);
    expect(stated(reading)).toEqual({ part: 'X', quantity: 5 });
    expect(reading.warnings).toEqual([{ code: 'conflict', field: 'lot', values: ['A', 'B'] }]);
    expect(reading.ambiguous[0]?.candidates).toEqual([
      { field: 'lot', value: 'A' },
      { field: 'lot', value: 'B' },
    ]);
  });

  it('prefers 3S to S and 1T to T without a conflict', () => {
    const reading = parseLabel([`[)>${RS}06${GS}PX${GS}S9${GS}3SA${GS}TC${GS}1TD${RS}${EOT}`]);
    expect(stated(reading)).toEqual({ part: 'X', reel: 'A', lot: 'D' });
    expect(reading.warnings).toEqual([]);
  });

  it('joins an envelope and separate codes, and asks where they differ', () => {
    const reading = parseLabel([`[)>${RS}06${GS}PX${GS}Q4000${RS}${EOT}`, 'Q3000', '1TA']);
    expect(stated(reading)).toEqual({ part: 'X', lot: 'A' });
    expect(codesOf(reading)).toEqual(['conflict']);
  });
});

describe('parseLabel() on lists in one code', () => {
  it('reads a comma list as far as identifiers go', () => {
    const reading = parseLabel(['1PMK-1,Q4000,1TT17,17/16,JP']);
    expect(stated(reading)).toEqual({ supplierPart: 'MK-1', quantity: 4000, lot: 'T17' });
    expect(reading.unidentified).toEqual(['17/16', 'JP']);
  });

  it('asks where a comma may belong to a part number', () => {
    const reading = parseLabel(['PR1, R3,Q4,1TT1']);
    expect(stated(reading)).toEqual({ quantity: 4, lot: 'T1' });
    expect(reading.ambiguous[0]?.candidates).toEqual([
      { field: 'part', value: 'R1' },
      { field: 'part', value: 'R1, R3' },
    ]);
  });

  it.each(['|', ';', '@', '\t', '\n', '\r\n', ' / '])('reads identifiers separated by %j', (separator) => {
    const reading = parseLabel([['PCU-77', '1PMK-1', 'Q4,000', '1TL77'].join(separator)]);
    expect(stated(reading)).toEqual({ part: 'CU-77', supplierPart: 'MK-1', quantity: 4000, lot: 'L77' });
  });

  it('reads identifiers separated by blanks, and says so', () => {
    const reading = parseLabel(['PDG-1 1PDG-1-00A(H) Q20 K175/11']);
    expect(stated(reading)).toEqual({
      part: 'DG-1',
      supplierPart: 'DG-1-00A(H)',
      quantity: 20,
      order: '175/11',
    });
    expect(codesOf(reading)).toEqual(['blank-separated']);
  });

  it('asks where blanks break a part number', () => {
    const reading = parseLabel(['PDG 1 A 1PDG-1 Q20']);
    expect(stated(reading)).toEqual({ supplierPart: 'DG-1', quantity: 20 });
    expect(reading.ambiguous).toEqual([
      {
        text: 'PDG 1 A',
        candidates: [
          { field: 'part', value: 'DG' },
          { field: 'part', value: 'DG 1 A' },
        ],
      },
    ]);
    expect(codesOf(reading)).toContain('value-may-go-on');
  });

  it('reads one-letter tags with a meaning of their own', () => {
    const reading = parseLabel(['RVS1;PSC5;D2113;L0001;VVS1;Q5000;SLTST-1']);
    expect(stated(reading)).toEqual({
      reel: 'VS1',
      part: 'SC5',
      dateCode: '2113',
      made: { year: 2021, week: 13 },
      lot: '0001',
      supplier: 'VS1',
      quantity: 5000,
      supplierPart: 'LTST-1',
    });
    expect(codesOf(reading)).toEqual(['one-letter-tags']);
  });

  it('asks what S is where nothing tells one-letter tags from identifiers', () => {
    const reading = parseLabel(['PSC5;Q5000;SLTST-1']);
    expect(stated(reading)).toEqual({ part: 'SC5', quantity: 5000 });
    expect(reading.ambiguous[0]?.candidates).toEqual([
      { field: 'reel', value: 'LTST-1' },
      { field: 'supplierPart', value: 'LTST-1' },
    ]);
  });

  it('reads a key list in braces, commas in values included', () => {
    const reading = parseLabel([
      '{pbn:PICK1,on:SO1,pc:C1000,pm:MK-1,qty:100,mc:R1, R2,cc:1,pdi:7,hp:0,wc:ZH}',
    ]);
    expect(stated(reading)).toEqual({ supplierPart: 'MK-1', quantity: 100, order: 'SO1' });
    expect(reading.fields).toContainEqual(expect.objectContaining({ id: 'mc', value: 'R1, R2' }));
    expect(reading.warnings).toEqual([]);
  });

  it('reads words with colons', () => {
    const reading = parseLabel([
      'QTY:1000 PN:SMD-1 PO:3/7 MFR:NAME MPN:MK-1 CoO:TH RoHS https://brae.example/r?x=1',
    ]);
    expect(stated(reading)).toEqual({
      supplierPart: 'MK-1',
      quantity: 1000,
      supplier: 'NAME',
      country: 'TH',
      order: '3/7',
    });
    expect(reading.unidentified).toEqual(['RoHS', 'https://brae.example/r?x=1']);
  });

  it.each([
    [
      'MPN=MK-1;QTY=1 000 PCS;LOT NO=A 7;DATE CODE=2644;MSL=2A',
      {
        supplierPart: 'MK-1',
        quantity: 1000,
        unit: 'PCS',
        lot: 'A 7',
        dateCode: '2644',
        made: { year: 2026, week: 44 },
        msl: '2a',
      },
    ],
    [
      'CPN: CU-1 | MPN: MK-1 | EXP: 2027-03-01 | REEL ID: R9',
      { part: 'CU-1', supplierPart: 'MK-1', expires: '2027-03-01', reel: 'R9' },
    ],
    [
      'Cust P/N: CU-1; Mfr Part No.: MK-1; Qty: 5; Country of Origin: MY',
      { part: 'CU-1', supplierPart: 'MK-1', quantity: 5, country: 'MY' },
    ],
    ['P:CU-77;Q:4000;1P:MK-1;1T:L1', { part: 'CU-77', quantity: 4000, supplierPart: 'MK-1', lot: 'L1' }],
    [
      'P=CU-77|Q=4000|1T=L7|9D=2644',
      { part: 'CU-77', quantity: 4000, lot: 'L7', dateCode: '2644', made: { year: 2026, week: 44 } },
    ],
    ['{P:CU-77,Q:4000,1T:L7}', { part: 'CU-77', quantity: 4000, lot: 'L7' }],
    ['MPN:MK-1@QTY:4000@LOT:A1', { supplierPart: 'MK-1', quantity: 4000, lot: 'A1' }],
    ['MPN:MK-1,QTY:4000,LOT:A1', { supplierPart: 'MK-1', quantity: 4000, lot: 'A1' }],
    ['supplierPart:MK-1@qty:4000@lot:A1', { supplierPart: 'MK-1', quantity: 4000, lot: 'A1' }],
    ['{"mpn":"MK-1","qty":100}', { supplierPart: 'MK-1', quantity: 100 }],
    ['MPN: MK-1\nQTY: 5\nCOO: CN', { supplierPart: 'MK-1', quantity: 5, country: 'CN' }],
  ])('reads %j', (code, expected) => {
    expect(stated(parseLabel([code]))).toEqual(expected);
  });

  it('asks whose part number PN is, unless the setup knows', () => {
    const asked = parseLabel(['PN:SMD-1 QTY:5']);
    expect(stated(asked)).toEqual({ quantity: 5 });
    expect(asked.ambiguous).toHaveLength(1);
    const known = parseLabel(['PN:SMD-1 QTY:5'], {
      expected: { parts: new Set(['SMD-1']), supplierParts: new Set() },
    });
    expect(known.part).toBe('SMD-1');
  });

  it('asks where a value of words goes on behind a blank', () => {
    const reading = parseLabel(['MPN:MK 1 QTY:5']);
    expect(reading.supplierPart).toBeNull();
    expect(reading.ambiguous[0]?.candidates.map(({ value }) => value)).toEqual(['MK', 'MK 1']);
  });
});

describe('parseLabel() on values', () => {
  const label = (...elements: string[]) =>
    parseLabel([`[)>${RS}06${GS}PX${GS}${elements.join(GS)}${RS}${EOT}`]);
  it.each([
    ['10D2653', '2653', { year: 2026, week: 53 }, []],
    ['11D202653', '202653', { year: 2026, week: 53 }, []],
    ['10D2753', '2753', null, ['no-such-week']],
    ['9D2699', '2699', null, ['no-such-week']],
    ['9DA2B', 'A2B', null, ['date-code-unclear']],
    ['10D202653', '202653', { year: 2026, week: 53 }, []],
    ['13D26102610', '26102610', { year: 2026, week: 10 }, []],
    ['13D26102612', '26102612', null, ['date-code-unclear']],
    ['12D20260523', '20260523', { year: 2026, week: 21 }, []],
    ['17D23052026', '23052026', { year: 2026, week: 21 }, []],
    ['D260523', '260523', { year: 2026, week: 21 }, []],
  ])('reads the date code %s', (element, dateCode, made, warnings) => {
    const reading = label(element);
    expect(reading.dateCode).toBe(dateCode);
    expect(reading.made).toEqual(made);
    expect(codesOf(reading)).toEqual(warnings);
  });

  it('states no week where two dates of making differ', () => {
    const reading = label('10D2618', '16D20260701');
    expect(reading).toMatchObject({ dateCode: '2618', made: null });
    expect(codesOf(reading)).toEqual(['conflict']);
    expect(label('10D2621', '16D20260523').made).toEqual({ year: 2026, week: 21 });
  });

  it.each([
    ['14D20280231', { expires: null }, ['no-such-date']],
    ['15D23052028', { expires: '2028-05-23' }, []],
    ['QMANY', { quantity: null }, ['quantity-unreadable']],
    ['Q4.000', { quantity: 4000 }, ['quantity-marks']],
    ['4LQQ', { country: null }, ['country-unlisted']],
    ['4Lmy', { country: 'my' }, []],
    ['4LAA', { country: 'AA' }, []],
    ['13EMSL 3', { msl: '3' }, []],
    ['13E5A', { msl: '5a' }, []],
    ['13E9', { msl: null }, ['msl-unlisted']],
  ])('reads %s as %o', (element, expected, warnings) => {
    const reading = label(element);
    expect(reading).toMatchObject(expected);
    expect(codesOf(reading)).toEqual(warnings);
  });

  it('says that no code was read', () => {
    expect(codesOf(parseLabel([]))).toEqual(['no-code']);
    expect(codesOf(parseLabel(['', ' \r\n']))).toEqual(['no-code']);
  });
});
