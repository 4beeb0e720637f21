// One grey picture through the reader that the camera uses without WebAssembly, for tests and the bench of frames.

import { BinaryBitmap, HybridBinarizer, RGBLuminanceSource } from '@zxing/library';
import { foundIn, ScriptReader } from '../../../src/app/scan/script-codes.ts';
import type { CodeFormat, FoundCode, GrayImage } from '../../../src/worker/decode-protocol.ts';

/** The code in a picture; empty when nothing was found. */
export function readWithScript(image: GrayImage, formats: readonly CodeFormat[]): readonly FoundCode[] {
  const source = new RGBLuminanceSource(new Uint8ClampedArray(image.data), image.width, image.height);
  try {
    const code = foundIn(
      new ScriptReader(formats, 0).decodeBitmap(new BinaryBitmap(new HybridBinarizer(source))),
    );
    return code === null ? [] : [code];
  } catch {
    return []; // it throws for a picture that holds nothing
  }
}
