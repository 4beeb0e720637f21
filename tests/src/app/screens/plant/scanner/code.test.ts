// The calibration code as the page draws it, read back by the decoder of the camera: what is printed is what is compared.

import { generate } from 'lean-qr';
import { expect, test } from 'vitest';
import { fullCalibration } from '../../../../../../src/app/scan/calibration.ts';
import { createFramePasses } from '../../../../../../src/worker/decode-passes.ts';
import { loadReader } from '../../../../worker/reader.ts';

test('the code holds the calibration text, control characters included', async () => {
  const code = generate(fullCalibration.text);
  const [scale, margin] = [4, 4];
  const width = (code.size + 2 * margin) * scale;
  const data = new Uint8Array(width * width).fill(255);
  for (let y = 0; y < width; y++) {
    for (let x = 0; x < width; x++) {
      if (code.get(Math.floor(x / scale) - margin, Math.floor(y / scale) - margin)) data[y * width + x] = 0;
    }
  }
  const passes = createFramePasses(await loadReader(), { nowMs: () => 0 });
  const found = passes.read({ data, width, height: width }, ['QRCode'], true);
  expect(found.map(({ text }) => text)).toEqual([fullCalibration.text]);
});
