// What is left of a sign once nobody sees its colour: a screen of greys, as Chromium's own emulation of achromatopsia draws it, and of that
// light or dark alone, in a raster coarse enough for a sign seen across a hall.

import type { Locator, Page } from 'playwright-core';

/** Cells of a sign's raster, each way. */
const CELLS = 16;

/** Has the page drawn without colour while a work looks at it. */
export async function withoutColour<T>(page: Page, work: () => Promise<T>): Promise<T> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setEmulatedVisionDeficiency', { type: 'achromatopsia' });
  try {
    return await work();
  } finally {
    await session.send('Emulation.setEmulatedVisionDeficiency', { type: 'none' });
    await session.detach();
  }
}

/** Which cells of what is drawn there stand out from the ground in its first corner, row by row. */
export async function silhouetteOf(page: Page, sign: Locator): Promise<readonly boolean[]> {
  const picture = (await sign.screenshot()).toString('base64');
  return page.evaluate(
    async ([base64, cells]) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
      const pen = new OffscreenCanvas(cells, cells).getContext('2d');
      if (!pen) throw new TypeError('no canvas');
      pen.imageSmoothingQuality = 'high';
      pen.drawImage(bitmap, 0, 0, cells, cells);
      const { data } = pen.getImageData(0, 0, cells, cells);
      const greys = Array.from({ length: cells * cells }, (_, at) => data[at * 4] ?? 0);
      const ground = greys[0] ?? 0;
      const most = Math.max(...greys.map((grey) => Math.abs(grey - ground)));
      return greys.map((grey) => Math.abs(grey - ground) > most / 3);
    },
    [picture, CELLS] as const,
  );
}

/** How much of two signs differs, 0 to 1: cells that one has and the other lacks, of all that either has. */
export function apart(one: readonly boolean[], other: readonly boolean[]): number {
  const either = one.filter((cell, at) => cell || other[at]).length;
  const differ = one.filter((cell, at) => cell !== other[at]).length;
  return either === 0 ? 0 : differ / either;
}
