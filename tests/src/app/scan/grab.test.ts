import { afterEach, describe, expect, it, vi } from 'vitest';
import { grabFrame } from '../../../../src/app/scan/grab.ts';

const crop = { x: 64, y: 72, width: 1152, height: 576 };
const video = { videoWidth: 1280, videoHeight: 720 } as HTMLVideoElement; // its size is all that is looked at
const bitmap = { width: crop.width, height: crop.height } as ImageBitmap;
const closed: unknown[] = [];

function giveBrowser(displayWidth: number | null): void {
  closed.length = 0;
  vi.stubGlobal('createImageBitmap', async (...cut: unknown[]) => {
    expect(cut).toEqual([video, 64, 72, 1152, 576]);
    return bitmap;
  });
  if (displayWidth === null) return;
  class Handle {
    readonly displayWidth = displayWidth;
    readonly displayHeight = 720;
    constructor() {
      if (displayWidth === 0) throw new DOMException('no picture', 'InvalidStateError');
    }
    close(): void {
      closed.push(this);
    }
  }
  vi.stubGlobal('VideoFrame', Handle);
}

afterEach(() => {
  vi.unstubAllGlobals();
});

describe('grabFrame()', () => {
  it('hands on the decoded picture as it is, with the part to read', async () => {
    giveBrowser(1280);
    const grabbed = await grabFrame(video, crop);
    expect(grabbed.frame).not.toBe(bitmap);
    expect([grabbed.crop, closed]).toEqual([crop, []]);
  });

  // A bitmap is cut out already, so that all of it is read.
  it.each([
    ['the browser has no such handle', null, 0],
    ['there is no picture to take a handle on', 0, 0],
    ['the picture is stored in another size, and gives it back', 720, 1],
  ])('cuts out a bitmap where %s', async (_, displayWidth, closings) => {
    giveBrowser(displayWidth);
    const grabbed = await grabFrame(video, crop);
    expect(grabbed).toEqual({ frame: bitmap, crop: { x: 0, y: 0, width: 1152, height: 576 } });
    expect(closed).toHaveLength(closings);
  });
});
