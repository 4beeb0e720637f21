// The picture of a label, cut out of what the lens showed when it was read: small enough to be kept for years.
// Method: the codes with a margin around them, drawn once, then encoded as JPEG, ever coarser until it is small enough. Refused: the
// whole frame, which shows whoever stands there; and encoding on the way to a verdict: who asks gets a promise.

import type { Quad } from '../../worker/decode-protocol.ts';
import { boxAround, type Size } from './camera-fit.ts';
import type { Region } from './camera-session.ts';

/** The longest side of a picture as it is tried first, pixels. */
const SIDE_PX = 640;
/** Share of the codes' box that is kept around it: the print on the label. */
const MARGIN = 0.35;
const QUALITIES = [0.72, 0.5, 0.32] as const;
/** How often the side is halved before it is given up. */
const HALVINGS = 3;

/** What is cut out of a picture around codes, whole pixels; null where the codes do not lie in it. */
export function cutAround(quads: readonly Quad[], picture: Size): Region | null {
  if (quads.length === 0) return null;
  const box = boxAround(quads.flat());
  const margin = MARGIN * Math.max(box.width, box.height);
  const left = Math.max(0, Math.floor(box.x - margin));
  const top = Math.max(0, Math.floor(box.y - margin));
  const right = Math.min(picture.width, Math.ceil(box.x + box.width + margin));
  const bottom = Math.min(picture.height, Math.ceil(box.y + box.height + margin));
  return right - left < 2 || bottom - top < 2
    ? null
    : { x: left, y: top, width: right - left, height: bottom - top };
}

/** Encodes a drawing as JPEG of this quality, 0 to 1; `scale` shrinks it. */
export type Encode = (scale: number, quality: number) => Promise<Blob>;

/** The best of the encodings that is no larger than `mostBytes`; null where none is. */
export async function smallEnough(encode: Encode, mostBytes: number): Promise<Blob | null> {
  for (let halved = 0; halved <= HALVINGS; halved++)
    for (const quality of QUALITIES) {
      const blob = await encode(0.5 ** halved, quality);
      if (blob.size > 0 && blob.size <= mostBytes) return blob;
    }
  return null;
}

/** Cuts the label out of a picture, at once; the encoding follows. Null where there is nothing to cut out, or it stays too large. */
export function labelPicture(
  source: VideoFrame | HTMLVideoElement,
  quads: readonly Quad[],
  mostBytes: number,
): Promise<Blob | null> {
  const size =
    'videoWidth' in source
      ? { width: source.videoWidth, height: source.videoHeight }
      : { width: source.displayWidth, height: source.displayHeight };
  const cut = cutAround(quads, size);
  if (cut === null) return Promise.resolve(null);
  const shrink = Math.min(1, SIDE_PX / Math.max(cut.width, cut.height));
  const [width, height] = [
    Math.max(1, Math.round(cut.width * shrink)),
    Math.max(1, Math.round(cut.height * shrink)),
  ];
  const drawing = new OffscreenCanvas(width, height);
  const context = drawing.getContext('2d');
  if (context === null)
    return Promise.reject(new TypeError('Cannot draw a label as a 2D canvas must be there'));
  context.drawImage(source, cut.x, cut.y, cut.width, cut.height, 0, 0, width, height);
  return smallEnough((scale, quality) => {
    const to = scale === 1 ? drawing : shrunk(drawing, scale);
    return to.convertToBlob({ type: 'image/jpeg', quality });
  }, mostBytes);
}

function shrunk(drawing: OffscreenCanvas, scale: number): OffscreenCanvas {
  const [width, height] = [
    Math.max(1, Math.round(drawing.width * scale)),
    Math.max(1, Math.round(drawing.height * scale)),
  ];
  const smaller = new OffscreenCanvas(width, height);
  smaller.getContext('2d')?.drawImage(drawing, 0, 0, width, height);
  return smaller;
}
