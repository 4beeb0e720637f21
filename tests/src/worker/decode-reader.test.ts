import { beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_FORMATS } from '../../../src/worker/decode-protocol.ts';
import type { CodeReader, ReadEffort } from '../../../src/worker/decode-reader.ts';
import { drawCode, loadReader } from './reader.ts';

const effort: ReadEffort = {
  tryHarder: true,
  tryRotate: true,
  tryInvert: true,
  tryDownscale: true,
  tryDenoise: false,
  binarizer: 'LocalAverage',
};

let read: CodeReader;
beforeAll(async () => {
  read = await loadReader();
});

// Separators of ISO/IEC 15434: GS 0x1D, RS 0x1E, EOT 0x04. Data invented.
const ENVELOPE = '[)>\u001e06\u001dPCUST-0042\u001d1PABC0603-103\u001dQ4000\u001d1TLOT77\u001e\u0004';

describe('createCodeReader()', () => {
  const rows = [
    ['datamatrix', ENVELOPE, ENVELOPE, 'DataMatrix', ']d1'],
    ['qrcode', ENVELOPE, ENVELOPE, 'QRCode', ']Q1'],
    ['pdf417', ENVELOPE, ENVELOPE, 'PDF417', ']L2'],
    ['code128', '1PABC0603-103', '1PABC0603-103', 'Code128', ']C0'],
    ['code39', 'PART-43', 'PART-43', 'Code39', ']A0'],
    // FNC1 in first place shows in the identifier, later ones as GS: GS1 General Specifications.
    [
      'gs1datamatrix',
      '(01)09521234543213(10)LOT1(21)77',
      '010952123454321310LOT1\u001d2177',
      'DataMatrix',
      ']d2',
    ],
    ['gs1-128', '(01)09521234543213(10)LOT1', '010952123454321310LOT1', 'Code128', ']C1'],
  ] as const;
  for (const [bcid, printed, text, format, symbologyId] of rows) {
    it(`reads ${bcid} back byte for byte`, () => {
      const found = read(drawCode(bcid, printed), DEFAULT_FORMATS, effort);
      expect(found.map((code) => [code.text, code.format, code.symbologyId])).toEqual([
        [text, format, symbologyId],
      ]);
    });
  }

  it('keeps GS, RS and EOT as bytes 29, 30 and 4', () => {
    const [code] = read(drawCode('datamatrix', ENVELOPE), DEFAULT_FORMATS, effort);
    const controls = [...(code?.text ?? '')].map((char) => char.charCodeAt(0)).filter((value) => value < 32);
    expect(controls).toEqual([30, 29, 29, 29, 29, 30, 4]);
  });

  it('leaves Code 39 pairs such as +A as they are printed', () => {
    expect(read(drawCode('code39', 'X+A'), DEFAULT_FORMATS, effort)[0]?.text).toBe('X+A');
  });

  it('reads nothing outside the allowed formats', () => {
    expect(read(drawCode('ean13', '9521234543213'), DEFAULT_FORMATS, effort)).toEqual([]);
    expect(read(drawCode('datamatrix', 'A'), ['QRCode'], effort)).toEqual([]);
  });

  it('tells where the corners are', () => {
    const [code] = read(drawCode('datamatrix', 'PART-42', 5), DEFAULT_FORMATS, effort);
    expect(Math.abs((code?.quad[0].x ?? 0) - 50)).toBeLessThanOrEqual(2);
    expect(Math.abs((code?.quad[0].y ?? 0) - 50)).toBeLessThanOrEqual(2);
  });
});
