// The script reader on the page's own thread: the last way out, where neither WebAssembly nor a worker can run.
// Loaded only when both have said so.

import { rgbaToGray } from '../../worker/decode-image.ts';
import { readWithScript } from '../../worker/decode-script-reader.ts';
import type { DecodeAnswer, DecodeOptions, Decoder } from './decoder.ts';
import type { GrabbedFrame } from './grab.ts';

/** A decoder on the page's own thread. */
export function createScriptDecoder(): Decoder {
  const canvas = document.createElement('canvas');
  return {
    path: 'script',
    async decode({ frame, crop }: GrabbedFrame, options: DecodeOptions): Promise<DecodeAnswer> {
      const startMs = performance.now();
      const { x, y, width, height } = crop;
      canvas.width = width;
      canvas.height = height;
      const context = canvas.getContext('2d', { willReadFrequently: true });
      if (context === null)
        throw new TypeError('Cannot read frame as a 2D canvas must be there: current value is null');
      context.drawImage(frame, x, y, width, height, 0, 0, width, height);
      frame.close();
      const image = rgbaToGray(context.getImageData(0, 0, width, height).data, width, height);
      const codes = readWithScript(image, options.formats);
      return { codes, width, height, spentMs: performance.now() - startMs };
    },
    close() {},
  };
}
