// Labels on paper are read back by another library's decoder, and by the project's own reader into the same package: as a poor label printer prints them, at
// 203 and 300 dots per inch. `npm run labels:check` does the same with 1,000 and a decoder that has nothing to do with the one that draws.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, expect, test } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { parseLabel } from '../../../../shared/labels/label.ts';
import { symbolOf } from '../../../../src/app/scan/symbol.ts';
import { type Gray, prepareWriter, somePrint } from './printed.ts';

beforeAll(() => {
  prepareWriter();
  const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
  prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer } });
});

async function read({ data, width, height }: Gray): Promise<readonly string[]> {
  const rgba = new Uint8ClampedArray(width * height * 4);
  for (const [at, gray] of data.entries()) rgba.set([gray, gray, gray, 255], at * 4);
  const image = { data: rgba, width, height, colorSpace: 'srgb' } as ImageData;
  const found = await readBarcodes(image, { formats: ['DataMatrix'], textMode: 'Plain', tryHarder: true });
  return found.map(({ text }) => text);
}

test.each([
  [203, 0.3, 0.05],
  [300, 0.3, 0.05],
  [203, 0, 0],
])('at %d dots per inch, each dot %d of itself larger, %d of them missing', async (dpi, gain, missing) => {
  for (let seed = 1; seed <= 12; seed += 1) {
    const { image, message, facts } = await somePrint(seed, dpi, { gain, missing });
    expect(await read(image), `label ${seed}`).toEqual([message]);
    const { reel, part, supplierPart, quantity, lot, dateCode, msl } = parseLabel([message]);
    expect({ reel, part, supplierPart, quantity, lot, dateCode, msl, expires: null }).toEqual(facts);
  }
});

test('a label that is half gone is not read as another one', async () => {
  const { image, message } = await somePrint(3, 203, { gain: 0.3, missing: 0.6 });
  expect([[], [message]]).toContainEqual(await read(image));
});

test('names are drawn in any writing, and a text too long for one code is refused', async () => {
  for (const text of ['M1-F-001', 'Regal Süd 4', 'Ω-12', '棚-3'])
    expect((await symbolOf(text)).side).toBeGreaterThan(8);
  await expect(symbolOf('x'.repeat(4000))).rejects.toThrow('fit one symbol');
});
