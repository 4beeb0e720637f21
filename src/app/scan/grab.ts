// The current picture of a video, to be read elsewhere.
// Method: a handle on the decoded picture (WebCodecs) where the browser has one: nothing is copied or converted on the page's
// thread, the worker draws it. Otherwise a bitmap, cut out here.
// Refused: a canvas on the page, which copies every pixel on the thread that answers taps.

import type { Crop } from '../../worker/decode-protocol.ts';

/** A picture with the part of it that is to be read. Whoever reads it closes it. */
export interface GrabbedFrame {
  readonly frame: ImageBitmap | VideoFrame;
  readonly crop: Crop;
}

/** Takes the picture that `video` shows now; `crop` in pixels of the video. Rejects where there is none. */
export async function grabFrame(video: HTMLVideoElement, crop: Crop): Promise<GrabbedFrame> {
  const handle = handleOf(video);
  if (handle !== null) return { frame: handle, crop };
  const { x, y, width, height } = crop;
  return {
    frame: await createImageBitmap(video, x, y, width, height),
    crop: { x: 0, y: 0, width, height },
  };
}

function handleOf(video: HTMLVideoElement): VideoFrame | null {
  if (!('VideoFrame' in globalThis)) return null;
  try {
    const frame = new VideoFrame(video);
    // A picture that is stored turned or scaled would be read in other pixels than the outlines are drawn in.
    if (frame.displayWidth === video.videoWidth && frame.displayHeight === video.videoHeight) return frame;
    frame.close();
  } catch {
    // Some browsers give no handle on a lens's picture; the bitmap does.
  }
  return null;
}
