// The camera in the app itself, used as a hand uses it: opened by its name, looked into, closed in each of its ways.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { filmLabel } from './harness/scan/fake-camera.ts';
import { startBrowser } from './support/browser.ts';
import { type RunningDemo, startDemo } from './support/demo.ts';
import { coveredBy, tap } from './support/finger.ts';
import { openTablet } from './support/floor.ts';

const sizes = [
  { width: 1280, height: 800 },
  { width: 800, height: 1280 },
  { width: 390, height: 844 },
] as const;

let demo: RunningDemo;
let plain: Browser;
let browser: Browser;

beforeAll(async () => {
  demo = await startDemo();
  plain = await startBrowser();
  browser = await startBrowser(
    await filmLabel(plain, {
      part: '22-0603-B',
      codes: [
        { text: 'P22-0603-B', name: '(P) 22-0603-B' },
        { text: 'Q4000', name: '(Q) 4000' },
        { text: '1TLT-9400-H', name: '(1T) LT-9400-H' },
      ],
    }),
  );
});
afterAll(async () => {
  await browser?.close();
  await plain?.close();
  await demo?.stop();
});

const view = (page: Page) => page.getByRole('region', { name: 'Camera' });

/** Size of the picture on the screen, and how many colours a coarse look at it finds. */
async function seePicture(page: Page): Promise<{ width: number; height: number; colours: number }> {
  return page.evaluate(() => {
    const video = document.querySelector('video');
    if (video === null) return { width: 0, height: 0, colours: 0 };
    const { width, height } = video.getBoundingClientRect();
    const canvas = document.createElement('canvas');
    canvas.width = 32;
    canvas.height = 32;
    const context = canvas.getContext('2d');
    context?.drawImage(video, 0, 0, 32, 32);
    const pixels = context?.getImageData(0, 0, 32, 32).data ?? [];
    const seen = new Set<number>();
    for (let at = 0; at + 2 < pixels.length; at += 4)
      seen.add(
        ((pixels[at] ?? 0) >> 4) * 256 + ((pixels[at + 1] ?? 0) >> 4) * 16 + ((pixels[at + 2] ?? 0) >> 4),
      );
    return { width, height, colours: seen.size };
  });
}

describe.each(sizes)('the camera at $width × $height', (size) => {
  it('shows its picture, and closes by its own button, by Escape and by the dock', async () => {
    const tablet = await openTablet(browser, demo.url, { ...size, hash: '#/load' });
    const { page } = tablet;
    const dockButton = page.getByTestId('dock').getByRole('button', { name: 'Camera' });

    await tap(page, 'Camera');
    await expect.poll(async () => (await seePicture(page)).colours, { timeout: 15_000 }).toBeGreaterThan(4);
    const { width, height } = await seePicture(page);
    expect(width).toBeGreaterThan(300);
    expect(height).toBeGreaterThan(240);
    await tap(page, 'Close camera');
    await view(page).waitFor({ state: 'detached' });
    expect(await page.locator('video').count()).toBe(0);

    await tap(page, 'Camera');
    await view(page).waitFor();
    await page.keyboard.press('Escape');
    await view(page).waitFor({ state: 'detached' });

    await tap(page, 'Camera');
    await view(page).waitFor();
    expect(await coveredBy(dockButton)).toBeNull();
    await tap(page, 'Camera');
    await view(page).waitFor({ state: 'detached' });
    await tablet.putAway();
  });
});
