import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  charToKey,
  DEAD,
  KEY_POSITIONS,
  keyboardLayouts,
  type Layout,
  layoutChars,
  throughLayouts,
} from '../../../../src/app/scan/layouts.ts';

interface XkbLayouts {
  readonly source: string;
  readonly layouts: Readonly<Record<Layout, Readonly<Record<string, readonly [string, string]>>>>;
}

// xkeyboard-config, the keyboard data base of X; see tests/fixtures/scan/README.md for how the extract was made.
const xkb = JSON.parse(
  readFileSync(new URL('../../../fixtures/scan/xkb-layouts.json', import.meta.url), 'utf8'),
) as XkbLayouts;

describe('layoutChars()', () => {
  for (const layout of keyboardLayouts) {
    it(`agrees with the X keyboard data base on every ${layout} key it lists`, () => {
      const { plain, shifted } = layoutChars(layout);
      expect([plain.length, shifted.length]).toEqual([KEY_POSITIONS.length, KEY_POSITIONS.length]);
      const listed = KEY_POSITIONS.filter((code) => xkb.layouts[layout][code] !== undefined);
      // The extra key is the only one some layouts leave to the physical keyboard.
      expect(KEY_POSITIONS.filter((code) => !listed.includes(code) && code !== 'IntlBackslash')).toEqual([]);
      const at = (code: string) => KEY_POSITIONS.indexOf(code);
      expect(listed.map((code) => [code, plain[at(code)], shifted[at(code)]])).toEqual(
        listed.map((code) => [code, ...(xkb.layouts[layout][code] ?? [])]),
      );
    });
  }
});

describe('throughLayouts()', () => {
  it('gives the same text back when both sides agree', () => {
    for (const layout of keyboardLayouts) expect(throughLayouts('PART-42', layout, layout)).toBe('PART-42');
  });

  // A US scanner's digits and letters on an AZERTY tablet, as reported by users: digits become accents and signs.
  it('turns 004HQ3 into what an AZERTY tablet shows', () => {
    expect(throughLayouts('004HQ3', 'us', 'french')).toBe('àà\'HA"');
  });

  it('swaps Y and Z and turns the hyphen into a sharp s on QWERTZ', () => {
    expect(throughLayouts('XYZ-1', 'us', 'german')).toBe('XZYß1');
  });
});

describe('charToKey()', () => {
  it('answers null for what takes a third level, and for a dead key', () => {
    expect([charToKey('@', 'german'), charToKey(DEAD, 'german')]).toEqual([null, null]);
    expect(charToKey('Z', 'german')).toEqual({ code: 'KeyY', shift: true });
  });
});
