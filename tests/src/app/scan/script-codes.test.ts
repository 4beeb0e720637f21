// The reader without WebAssembly against labels drawn by bwip-js: one code a picture, the same text.

import { describe, expect, it } from 'vitest';
import { DEFAULT_FORMATS } from '../../../../src/worker/decode-protocol.ts';
import { drawCode } from '../../worker/reader.ts';
import { readWithScript } from '../../worker/script-reader.ts';

describe('`ScriptReader`', () => {
  for (const [bcid, format] of [
    ['datamatrix', 'DataMatrix'],
    ['qrcode', 'QRCode'],
    ['code128', 'Code128'],
    ['code39', 'Code39'],
  ] as const)
    it(`reads ${bcid}`, () => {
      const found = readWithScript(drawCode(bcid, '1PABC0603-103'), DEFAULT_FORMATS);
      expect(found).toMatchObject([{ text: '1PABC0603-103', format, pass: 'script' }]);
      const xs = found[0]?.quad.map(({ x }) => x) ?? [];
      expect(Math.max(...xs)).toBeGreaterThan(Math.min(...xs));
    });

  it('finds nothing in a blank picture, and nothing of a kind that is not wanted', () => {
    expect(readWithScript(drawCode('code128', 'A-1'), ['QRCode'])).toEqual([]);
    const blank = { data: new Uint8Array(100 * 100).fill(255), width: 100, height: 100 };
    expect(readWithScript(blank, DEFAULT_FORMATS)).toEqual([]);
  });
});
