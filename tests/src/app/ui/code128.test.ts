// Code 128 as drawn for the calibration sheet, against a general symbol library (bwip-js) bar by bar and against the decoder of
// the camera (ISO/IEC 15417: quiet zones of ten modules, stop of thirteen).

import bwip from 'bwip-js/node';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { stripedCalibration } from '../../../../src/app/scan/calibration.ts';
import { code128Bars } from '../../../../src/app/ui/code128.ts';
import { createFramePasses } from '../../../../src/worker/decode-passes.ts';
import { loadReader } from '../../worker/reader.ts';

/** The symbol as a picture, two pixels a module. */
function picture(text: string) {
  const { bars, width } = code128Bars(text);
  const [scale, height] = [3, 120];
  const data = new Uint8Array(width * scale * height).fill(255);
  for (const bar of bars) {
    for (let y = 10; y < height - 10; y++)
      data.fill(0, y * width * scale + bar.from * scale, y * width * scale + (bar.from + bar.width) * scale);
  }
  return { data, width: width * scale, height };
}

/** Bars and spaces of the library's symbol in modules: code set B by its own wish, as ours is. */
function reference(text: string): number[] {
  const escaped = [...text].map((char) => `^${String(char.charCodeAt(0)).padStart(3, '0')}`).join('');
  const [{ sbs } = { sbs: [] }] = bwip.raw('code128', escaped, { parse: true, suppressc: true } as never) as {
    sbs: number[];
  }[];
  return sbs;
}

function widths(text: string): number[] {
  const { bars } = code128Bars(text);
  return bars.flatMap((bar, at) => {
    const next = bars[at + 1];
    return next ? [bar.width, next.from - bar.from - bar.width] : [bar.width];
  });
}

test('bars are those of the library', () => {
  for (const text of ['A', 'PART-42', 'aZ09 ~', stripedCalibration.body])
    expect(widths(text), text).toEqual(reference(text));
});

test('the decoder reads back what was drawn, control characters included', async () => {
  const passes = createFramePasses(await loadReader(), { nowMs: () => 0 });
  const read = (text: string) => passes.read(picture(text), ['Code128'], true).map((found) => found.text);
  expect(read(stripedCalibration.text)).toEqual([stripedCalibration.text]);
  const ascii = fc.string({
    unit: fc.integer({ min: 1, max: 126 }).map((code) => String.fromCharCode(code)),
    minLength: 3,
    maxLength: 24,
  });
  fc.assert(
    fc.property(ascii, (text) => {
      expect(read(text)).toEqual([text]);
    }),
    { numRuns: 60 },
  );
});

test('what is not ASCII is refused', () => {
  expect(() => code128Bars('ä')).toThrow(RangeError);
});
