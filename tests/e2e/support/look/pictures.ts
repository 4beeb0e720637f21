// Pictures: each has a size, and something is in it.

import { isShown, named } from './shown.ts';

/** Everything wrong with videos, drawings and images. */
export function wrongPictures(root: Element): readonly string[] {
  return [...root.querySelectorAll('video, canvas, img, svg')].flatMap((picture) => {
    if (!isShown(picture)) return [];
    const { width, height } = picture.getBoundingClientRect();
    if (width < 1 || height < 1)
      return [`empty picture: ${named(picture)} is ${Math.round(width)} × ${Math.round(height)} px`];
    if (picture instanceof SVGElement)
      return picture.childElementCount === 0 ? [`empty picture: ${named(picture)} has nothing in it`] : [];
    if (picture instanceof HTMLImageElement && picture.naturalWidth === 0)
      return [`empty picture: ${named(picture)} is not loaded`];
    if (picture instanceof HTMLVideoElement && picture.readyState < HTMLMediaElement.HAVE_CURRENT_DATA)
      return [`empty picture: ${named(picture)} shows no frame`];
    // A drawing that lies over the picture may have nothing to mark yet.
    if (picture instanceof HTMLCanvasElement && picture.matches('[data-over-picture]')) return [];
    return isOneColour(picture as HTMLImageElement | HTMLVideoElement | HTMLCanvasElement)
      ? [`empty picture: ${named(picture)} is one colour`]
      : [];
  });
}

const SIDE = 64;

function isOneColour(picture: HTMLImageElement | HTMLVideoElement | HTMLCanvasElement): boolean {
  const copy = document.createElement('canvas');
  copy.width = SIDE;
  copy.height = SIDE;
  const pen = copy.getContext('2d', { willReadFrequently: true });
  if (!pen) return false;
  try {
    pen.drawImage(picture, 0, 0, SIDE, SIDE);
    const { data } = pen.getImageData(0, 0, SIDE, SIDE);
    const [red = 0, green = 0, blue = 0, alpha = 0] = data;
    for (let at = 4; at < data.length; at += 4) {
      const apart =
        Math.abs((data[at] ?? 0) - red) +
        Math.abs((data[at + 1] ?? 0) - green) +
        Math.abs((data[at + 2] ?? 0) - blue) +
        Math.abs((data[at + 3] ?? 0) - alpha);
      if (apart > 24) return false;
    }
    return true;
  } catch {
    return false; // a picture of elsewhere may not be read
  }
}
