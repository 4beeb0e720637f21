// From a frame of the lens to the grey picture that readers read, inside a worker.

import { rgbaToGray } from './decode-image.ts';
import type { DecodeRequest, GrayImage } from './decode-protocol.ts';

let canvas: OffscreenCanvas | null = null;

/** The part of a frame that is to be read, in grey; the frame is given back. */
export function toGray({ frame, crop }: DecodeRequest): GrayImage {
  const { x, y, width, height } = crop;
  if (canvas === null || canvas.width !== width || canvas.height !== height)
    canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null)
    throw new TypeError('Cannot read frame as a 2D canvas must be there: current value is null');
  try {
    context.drawImage(frame, x, y, width, height, 0, 0, width, height);
  } finally {
    // A lens has few pictures to lend: this one goes back before it is read, and where it cannot be.
    frame.close();
  }
  return rgbaToGray(context.getImageData(0, 0, width, height).data, width, height);
}
