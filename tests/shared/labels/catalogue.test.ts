// Catalogue numbers that the setup knows, channels of AIM's protocol, and a French keyboard's digit row. Meanings of 30P and 25P: the public list
// of ANSI MH10.8.2; `\000026` for UTF-8: ISO/IEC 15424 with the AIM extended channel interpretations (from memory); the rows of keys as printed
// on French and US keyboards.

import { describe, expect, test } from 'vitest';
import { findKeyboardLayout } from '../../../shared/labels/keyboard.ts';
import { parseLabel } from '../../../shared/labels/label.ts';

const [RS, GS, EOT] = ['\x1e', '\x1d', '\x04'];
const label = (...fields: readonly string[]) => [`[)>${RS}06${GS}${fields.join(GS)}${RS}${EOT}`];
const setup = { parts: new Set(['CU-77', 'C1000']), supplierParts: new Set(['MK-1', 'CAT-9']) };

describe('a catalogue number', () => {
  test.each([
    [label('30PCU-77', 'Q100'), { part: 'CU-77', supplierPart: null }],
    [label('30PCAT-9', 'Q100'), { part: null, supplierPart: 'CAT-9' }],
    [label('1PMK-1', '30PCU-77', 'Q100'), { part: 'CU-77', supplierPart: 'MK-1' }],
    [label('25PCU-77', '30PCU-77', 'Q100'), { part: 'CU-77', supplierPart: null }],
    [['{pbn:PICK1,on:SO1,pc:C1000,pm:MK-1,qty:100,cc:1}'], { part: 'C1000', supplierPart: 'MK-1' }],
  ])('that stands in the setup is that part: %j', (codes, expected) => {
    const reading = parseLabel(codes, { expected: setup });
    expect(reading).toMatchObject(expected);
    expect(reading.warnings.map(({ code }) => code)).toContain('confirmed-by-setup');
    expect(reading.warnings.map(({ code }) => code)).not.toContain('no-part-number');
  });

  test.each([
    [label('PX-9', '30PCU-77', 'Q100'), 'the label states a part number of its own'],
    [label('30PCU-77', '31PC1000', 'Q100'), 'two of them stand in the setup'],
    [label('30PNOBODY', 'Q100'), 'nobody knows it'],
    [label('12VCU-77', 'Q100'), 'it is no item'],
  ])('is taken for nothing in %j: %s', (codes) => {
    const { part } = parseLabel(codes, { expected: setup });
    expect(part === null || part === 'X-9').toBe(true);
  });

  test('is nobody’s part number where no setup is known', () => {
    expect(parseLabel(label('30PCU-77', 'Q100')).part).toBeNull();
  });
});

describe('the same text after P and 1P', () => {
  test('is both, without a question, also with nothing else on the label', () => {
    expect(parseLabel(['PCU-77', '1PCU-77'])).toMatchObject({
      part: 'CU-77',
      supplierPart: 'CU-77',
      ambiguous: [],
    });
  });
});

describe('a channel that a scanner tells in front', () => {
  test.each([
    [`\\000026${label('PCU-77', 'Q80')[0]}`],
    [`]d4\\000026${label('PCU-77', 'Q80')[0]}`],
    [`\\000003[)>${RS}06${GS}\\000026PCU-77${GS}Q80${RS}${EOT}`],
  ])('is dropped: %j', (code) => {
    expect(parseLabel([code])).toMatchObject({ part: 'CU-77', quantity: 80, unidentified: [] });
  });

  test('halves the backslashes that the protocol doubled, and no others', () => {
    expect(parseLabel([`\\000026${label('PA\\\\B', 'Q80')[0]}`]).part).toBe('A\\B');
    expect(parseLabel([String(label('PA\\\\B', 'Q80')[0])]).part).toBe('A\\\\B');
  });
});

describe('a French keyboard under a scanner for US keys', () => {
  // What is meant, and what the same keys type.
  test.each([
    ['Q4000', "A'ààà"],
    ['1PMK-0402', "&P?K)à'àé"],
    ['10D2618', '&àDé-&_'],
    ['3SR-77001', '"SR)èèàà&'],
  ])('shows: %s arrives as %s', (meant, typed) => {
    expect(findKeyboardLayout(typed)).toEqual({ layout: 'French (AZERTY)', meant });
    const reading = parseLabel([typed]);
    expect(reading.fields).toEqual([]);
    expect(reading.unidentified).toEqual([typed]);
  });

  test.each(['CU-77', 'à-côté', "l'été", 'R&D-(X)', 'A"B"C', '---', 'MFR:Müller', '{pm:MK-1,qty:100}'])(
    'does not show in %s',
    (text) => {
      expect(findKeyboardLayout(text)).toBeNull();
    },
  );
});
