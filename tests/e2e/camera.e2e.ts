// The camera in the app itself, used as a hand uses it: opened by its name, looked into, closed in each of its ways.

import type { Browser, Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { type FakeLabel, filmCodes, filmLabel } from './harness/scan/fake-camera.ts';
import { startBrowser } from './support/browser.ts';
import { coveredBy, reach, tap, tapOn } from './support/finger.ts';
import { openTablet, ownEntries, scan, seeVerdict } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const sizes = [
  { width: 1280, height: 800 },
  { width: 800, height: 1280 },
  { width: 390, height: 844 },
] as const;

/** The label of a reel whose facts are codes of their own; `reel` is its id. */
const label = (part: string, reel: string, pieces = ['Q4000', '1TLT-9400-H']): FakeLabel => ({
  part,
  codes: [`P${part}`, ...pieces, `3S${reel}`].map((text) => ({ text, name: text })),
});
const whole = label('22-0603-B', 'R-975001');

const demo = useDemo();
const open: Browser[] = [];

/** A browser whose lens shows these labels. */
async function lensOn(...labels: readonly FakeLabel[]): Promise<Browser> {
  const browser = await startBrowser(await filmLabel(demo.browser, ...labels));
  open.push(browser);
  return browser;
}

afterEach(async () => {
  for (const browser of open.splice(0)) await browser.close();
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

/** How far the film has come, in seconds. */
const pictureTime = (page: Page) =>
  page.locator('video').evaluate((video: HTMLVideoElement) => video.currentTime);

describe.each(sizes)('the camera at $width × $height', (size) => {
  it('shows its picture, and closes by its own button, by Escape and by the dock', async () => {
    const tablet = await openTablet(await lensOn(whole), demo.url, { ...size, hash: '#/load' });
    const { page } = tablet;
    const dockButton = page.getByTestId('dock').getByRole('button', { name: 'Camera' });

    await tap(page, 'Camera');
    await expect.poll(async () => (await seePicture(page)).colours, { timeout: 60_000 }).toBeGreaterThan(4);
    await expect.poll(async () => (await seePicture(page)).width).toBeGreaterThan(300);
    await expect.poll(async () => (await seePicture(page)).height).toBeGreaterThan(240);
    await tap(page, 'Close camera');
    await view(page).waitFor({ state: 'detached' });
    expect(await page.locator('video').count()).toBe(0);

    await tap(page, 'Camera');
    await view(page).waitFor();
    await expect.poll(() => view(page).evaluate((region) => region === document.activeElement)).toBe(true);
    await page.keyboard.press('Escape');
    await view(page).waitFor({ state: 'detached' });
    await expect.poll(() => dockButton.evaluate((button) => button === document.activeElement)).toBe(true);

    await tap(page, 'Camera');
    await view(page).waitFor();
    await expect.poll(() => coveredBy(dockButton)).toBeNull();
    await tap(page, 'Camera');
    await view(page).waitFor({ state: 'detached' });
    await tablet.putAway();
  });

  it('ticks off half a label, says what is missing, and takes it as it is when told so', async () => {
    const tablet = await openTablet(
      await lensOn(label('22-0603-B', 'R-975002', ['1TLT-9400-H'])),
      demo.url,
      size,
    );
    const { page } = tablet;
    await tap(page, 'Camera');
    const picture = async () => (await page.locator('video').boundingBox())?.height;
    await view(page).getByText('Not read yet: quantity. Bring it into the frame.').waitFor();
    const height = await picture();
    await expect.poll(() => page.getByTestId('fact-part').textContent()).toContain('22-0603-B');
    await expect.poll(() => page.getByTestId('fact-quantity').textContent()).toContain('not read yet');
    await expect.poll(() => page.locator('.camera-tag').count()).toBeGreaterThanOrEqual(2);
    await tap(page, 'Use what was read');
    await page.locator('[data-testid=well-reel][data-filled=true]').waitFor();
    await expect.poll(picture).toBe(height);
    await tablet.putAway();
  });

  it('asks which of two labels is meant, and takes the one whose number is tapped in the picture', async () => {
    const tablet = await openTablet(
      await lensOn(label('22-0603-B', 'R-975003'), label('10-0603-101', 'R-975004')),
      demo.url,
      size,
    );
    const { page } = tablet;
    await tap(page, 'Camera');
    // Upright, one label alone fits into the frame: then nothing is to be asked.
    if (size.width > size.height) {
      await view(page).getByText('2 labels in view. Tap yours.').waitFor();
      const number = page.getByRole('button', { name: 'Label 2: 10-0603-101', exact: true });
      const { x, y } = await reach(number);
      await page.mouse.move(x, y);
      await page.mouse.down();
      // A thumb rests on the glass while the picture goes on: a button that was drawn anew would lose the tap.
      const since = await pictureTime(page);
      await expect.poll(() => pictureTime(page)).toBeGreaterThan(since + 2);
      await page.mouse.up();
      await page.getByTestId('well-reel').getByText('10-0603-101').waitFor();
    } else await view(page).waitFor();
    await tap(page, 'Close camera');
    await tablet.putAway();
  });
});

describe('with the camera', () => {
  it('reads a label up to an accepted verdict, and goes on with the same lens after it', async () => {
    const tablet = await openTablet(await lensOn(whole), demo.url, { hash: '#/load' });
    const { page } = tablet;
    await page.evaluate(() => {
      const scope = globalThis as { lenses?: number };
      scope.lenses = 0;
      const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
      navigator.mediaDevices.getUserMedia = (wishes) => {
        scope.lenses = (scope.lenses ?? 0) + 1;
        return ask(wishes);
      };
    });
    await scan(page, 'M2-F-023');
    await scan(page, 'F-0112');
    await tap(page, 'Camera');
    const seen = await seeVerdict(page);
    expect(seen.verdict).toBe('accepted');
    expect(seen.text).toContain('R-975001');
    // The verdict takes the picture's place, and what lies below it is out of reach.
    await expect.poll(() => coveredBy(page.getByTestId('verdict'))).toBeNull();
    expect(await coveredBy(page.getByTestId('camera'))).not.toBeNull();
    const [entry] = await ownEntries(page, 'reel.verified');
    expect(entry?.payload).toMatchObject({
      slot: 'M2-F-023',
      part: '22-0603-B',
      via: 'camera',
      quantity: 4000,
    });
    await tap(page, 'Go on');
    await page.getByTestId('verdict').waitFor({ state: 'detached' });
    await expect.poll(async () => (await seePicture(page)).colours).toBeGreaterThan(4);
    await expect
      .poll(() => view(page).evaluate((region) => region.contains(document.activeElement)))
      .toBe(true);
    expect(await page.evaluate(() => (globalThis as { lenses?: number }).lenses)).toBe(1);
    // The label that was accepted is still in view: it is no second reel.
    await page.locator('.camera-outline').first().waitFor({ state: 'attached' });
    expect(await ownEntries(page, 'reel.verified')).toHaveLength(1);
    await tap(page, 'Close camera');
    await tablet.putAway();
  });

  it('tells a page behind it apart from the task in hand', async () => {
    const tablet = await openTablet(await lensOn(whole), demo.url, {
      badge: 'BADGE-4401',
      hash: '#/plant/labels',
    });
    const { page } = tablet;
    await page.getByTestId('teach').waitFor();
    await tap(page, 'Camera');
    await view(page).getByText('Read. Close the camera to see it.').waitFor();
    await tap(page, 'Close camera');
    await page.getByTestId('teach').waitFor();
    await tablet.putAway();
  });
});

describe('without WebAssembly', () => {
  // Separators of ISO/IEC 15434: part, quantity, lot and reel in one code, as plain script reads one in a picture.
  const one = '[)>\u001e06\u001dP22-0603-B\u001dQ4000\u001d1TLT-9400-H\u001d3SR-975011\u001e\u0004';

  it('reads a reel in the same view, closes by a finger and lets the lens go', async () => {
    const browser = await startBrowser(
      await filmCodes(demo.browser, [{ bcid: 'datamatrix', text: one, x: 540, y: 260, scale: 6 }]),
    );
    open.push(browser);
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, hasTouch: true });
    await context.addInitScript(() => {
      Reflect.deleteProperty(globalThis, 'WebAssembly');
      const scope = globalThis as { lenses?: MediaStream[] };
      scope.lenses = [];
      const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
      navigator.mediaDevices.getUserMedia = async (wishes) => {
        const stream = await ask(wishes);
        scope.lenses?.push(stream);
        return stream;
      };
    });
    const tablet = await openTablet(browser, demo.url, { context, hash: '#/load' });
    const { page } = tablet;
    const fetched: string[] = [];
    page.on('request', (request) => fetched.push(new URL(request.url()).pathname));
    const lenses = () =>
      page.evaluate(() =>
        ((globalThis as { lenses?: MediaStream[] }).lenses ?? []).map((stream) =>
          stream.getTracks().map(({ readyState }) => readyState),
        ),
      );
    await scan(page, 'M2-F-023');
    await scan(page, 'F-0112');
    expect(await lenses()).toEqual([]);
    await tap(page, 'Camera');
    const seen = await seeVerdict(page);
    expect([seen.verdict, seen.text.includes('R-975011')]).toEqual(['accepted', true]);
    const [entry] = await ownEntries(page, 'reel.verified');
    expect(entry?.payload).toMatchObject({ slot: 'M2-F-023', via: 'camera', quantity: 4000 });
    expect(fetched.filter((name) => /wasm|worker|decode-/.test(name))).toEqual([]);

    await tap(page, 'Go on');
    await page.getByTestId('verdict').waitFor({ state: 'detached' });
    // The same lens as before the verdict, and the label that was accepted is no second reel.
    await expect.poll(async () => (await seePicture(page)).colours).toBeGreaterThan(1);
    await page.locator('.camera-outline.is-done').first().waitFor({ state: 'attached' });
    await expect.poll(() => page.locator('.camera-guide').count()).toBe(1);
    expect(await ownEntries(page, 'reel.verified')).toHaveLength(1);
    expect(await lenses()).toEqual([['live']]);
    await tap(page, 'Close camera');
    await view(page).waitFor({ state: 'detached' });
    await expect.poll(lenses).toEqual([['ended']]);

    // Opened anew it is another lens, which the dock's button lets go as well.
    await tap(page, 'Camera');
    await expect.poll(async () => (await lenses()).at(-1)).toEqual(['live']);
    await tap(page, 'Camera');
    await view(page).waitFor({ state: 'detached' });
    await expect.poll(lenses).toEqual([['ended'], ['ended']]);
    await tablet.putAway();
    await context.close();
  });
});

describe('without a picture', () => {
  const refusals = [
    { name: 'NotFoundError', title: 'This device has no camera', way: 'Type' },
    { name: 'NotAllowedError', title: 'The browser blocks the camera', way: 'Try again' },
    { name: 'NotReadableError', title: 'Another app is using the camera', way: 'Try again' },
  ] as const;

  it.each(refusals)('says $title, and what to do', async ({ name, title, way }) => {
    const tablet = await openTablet(await lensOn(whole), demo.url, { width: 390, height: 844 });
    const { page } = tablet;
    await page.evaluate((refusal) => {
      const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
      let refused = 0;
      navigator.mediaDevices.getUserMedia = (wishes) => {
        refused += 1;
        return refused > 1 ? ask(wishes) : Promise.reject(new DOMException('refused', refusal));
      };
    }, name);
    await tap(page, 'Camera');
    await page.getByRole('heading', { name: title }).waitFor();
    await expect.poll(() => view(page).getByRole('status').textContent()).toBe(title);
    if (way === 'Type') await tapOn(page, view(page).getByRole('button', { name: 'Type' }));
    else await tap(page, way);
    if (way === 'Type') await page.getByTestId('typed').waitFor();
    else await expect.poll(async () => (await seePicture(page)).colours).toBeGreaterThan(4);
    await page.keyboard.press('Escape');
    if (way === 'Type') {
      // The dialog alone was closed.
      await page.getByTestId('typed').waitFor({ state: 'detached' });
      await tap(page, 'Close camera');
    }
    await view(page).waitFor({ state: 'detached' });
    await tablet.putAway();
  });
});
