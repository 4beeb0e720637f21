// Codes that another keyboard spoiled: each is named, none is read, and plain labels are not taken for such. Keys as printed on US, German,
// Hungarian and Czech keyboards (from memory).

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findKeyboardLayout } from '../../../shared/labels/keyboard.ts';
import { parseLabel } from '../../../shared/labels/label.ts';

describe('findKeyboardLayout()', () => {
  test.each([
    // US `;` is ö and `'` ä on a German keyboard, `=` an accent, `#` a paragraph sign.
    ['PCU77öQ4000ö1TLOT7', 'German (QWERTZ)', 'PCU77;Q4000;1TLOT7'],
    ['PN´4711', 'German (QWERTZ)', 'PN=4711'],
    ['PCU§77', 'German (QWERTZ)', 'PCU#77'],
    ['PCUß77', 'German (QWERTZ)', 'PCU-77'],
    ['PCUä77', 'German (QWERTZ)', "PCU'77"],
    // A Hungarian keyboard types the nought's key as ö, the hyphen's as ü, the semicolon's as é.
    ['Q4ööö', 'Hungarian (QWERTZ)', 'Q4000'],
    ['1PCU77éQ4ööö', 'Hungarian (QWERTZ)', '1PCU77;Q4000'],
    ['őÖ:ö6+PCUü77', 'Hungarian (QWERTZ)', null],
    // A Czech keyboard's digits need Shift.
    ['QTÝčééé', null, null],
    ['Qčééé', 'Czech (QWERTZ)', 'Q4000'],
    ['+TLOTšěř', 'Czech (QWERTZ)', '1TLOT325'],
    ['ú0:é&', 'Czech (QWERTZ)', null],
  ])('names the keyboard of %j: %s', (text, layout, meant) => {
    const found = findKeyboardLayout(text);
    expect(found?.layout ?? null).toBe(layout);
    if (meant !== null) expect(found?.meant).toBe(meant);
  });

  test.each([
    'MÜLLER GMBH',
    'Größe 0402',
    'GYŐR 12',
    'ÁRU-77',
    'Käfer',
    'PCU-77',
    'résistance 10k',
    '4.7 µF',
    'Ω 100',
  ])('takes %j for what it is', (text) => {
    expect(findKeyboardLayout(text)).toBeNull();
  });

  test('finds none in codes of letters, digits and the marks of part numbers', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9 ./_:;-]{0,30}$/), (text) => {
        expect(findKeyboardLayout(text)).toBeNull();
      }),
    );
  });
});

describe('the same text after P and 1P', () => {
  const part = fc.stringMatching(/^[A-Z0-9][A-Z0-9-]{2,14}$/);

  test('is the part in both lists, whatever the text and in either order, without a question', () => {
    fc.assert(
      fc.property(part, fc.boolean(), (text, isTurned) => {
        const codes = [`P${text}`, `1P${text}`];
        const reading = parseLabel(isTurned ? [...codes].reverse() : codes);
        expect(reading).toMatchObject({ part: text, supplierPart: text, ambiguous: [] });
      }),
    );
  });

  test('is asked about where the setup knows the whole code as a part number of its own', () => {
    const expected = { parts: new Set(['PCU-77']), supplierParts: new Set<string>() };
    const reading = parseLabel(['PCU-77', '1PCU-77'], { expected });
    expect(reading).toMatchObject({ part: null, supplierPart: 'CU-77' });
    expect(reading.ambiguous).toMatchObject([{ text: 'PCU-77' }]);
    expect(reading.ambiguous[0]?.candidates).toContainEqual({ field: 'part', value: 'CU-77' });
  });

  test('settles what the setup knows as both, the value and the whole code', () => {
    const expected = { parts: new Set(['PCU-77', 'CU-77']), supplierParts: new Set<string>() };
    expect(parseLabel(['PCU-77', '1PCU-77'], { expected })).toMatchObject({ part: 'CU-77', ambiguous: [] });
    // Without the second code nothing tells which.
    expect(parseLabel(['PCU-77', '1PMK-9'], { expected }).part).toBeNull();
  });
});
