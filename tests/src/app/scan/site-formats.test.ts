// Code 93 and Interleaved 2 of 5 are read where a line's rules name their lengths, and by those lengths alone.

import { describe, expect, test } from 'vitest';
import { ofKnownLength, siteFormats } from '../../../../src/app/scan/site-formats.ts';
import { DEFAULT_FORMATS } from '../../../../src/worker/decode-protocol.ts';
import { drawCode, loadReader } from '../../worker/reader.ts';

const effort = {
  tryHarder: true,
  tryRotate: true,
  tryInvert: false,
  tryDownscale: false,
  tryDenoise: false,
  binarizer: 'LocalAverage',
} as const;

describe('siteFormats()', () => {
  test('adds nothing where the rules say nothing, and each symbology that has lengths', () => {
    expect(siteFormats(undefined).formats).toEqual(DEFAULT_FORMATS);
    expect(siteFormats({ code93: [], itf: [] }).formats).toEqual(DEFAULT_FORMATS);
    expect(siteFormats({ code93: [6], itf: [] }).formats).toEqual([...DEFAULT_FORMATS, 'Code93']);
    expect(siteFormats({ code93: [6], itf: [8, 14] }).formats).toEqual([...DEFAULT_FORMATS, 'Code93', 'ITF']);
  });

  test.each([
    ['code93', 'PART93', { code93: [6], itf: [] }],
    ['interleaved2of5', '12345678', { code93: [], itf: [8] }],
  ])('lets the reader read %s, which it does not by itself', async (kind, text, alsoRead) => {
    const read = await loadReader();
    const image = drawCode(kind, text, 3, { includecheck: kind === 'code93' });
    expect(read(image, DEFAULT_FORMATS, effort)).toEqual([]);
    const { formats, lengths } = siteFormats(alsoRead);
    const found = read(image, formats, effort);
    expect(ofKnownLength(found, lengths).map((code) => code.text)).toEqual([text]);
  });
});

describe('ofKnownLength()', () => {
  test('leaves out codes of another length, and none of a symbology without lengths', () => {
    const { lengths } = siteFormats({ code93: [6], itf: [8, 14] });
    const codes = [
      { format: 'ITF', text: '12345678' },
      { format: 'ITF', text: '123456' },
      { format: 'Code93', text: 'PART93' },
      { format: 'Code93', text: 'PART9' },
      { format: 'Code128', text: 'Q5' },
    ] as const;
    expect(ofKnownLength(codes, lengths)).toEqual([codes[0], codes[2], codes[4]]);
  });
});
