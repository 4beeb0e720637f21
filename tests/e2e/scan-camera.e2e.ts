import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { codeOutline, type FakeCode, filmCodes } from './harness/scan/fake-camera.ts';
import { type HarnessServer, POLICY, POLICY_WITHOUT_WASM, serveHarness } from './harness/scan/serve.ts';
import { startBrowser, waitReady } from './support/browser.ts';

// Separators of ISO/IEC 15434; data invented.
const ENVELOPE = '[)>\u001e06\u001dPCUST-0042\u001dQ4000\u001d1TLOT77\u001e\u0004';
const OTHER = '[)>\u001e06\u001dPCUST-0099\u001dQ1000\u001d1TLOT12\u001e\u0004';

let server: HarnessServer;
let plain: Browser;
let browser: Browser | null = null;
let foreign: string[] = [];

async function openBefore(codes: readonly FakeCode[], query = ''): Promise<Page> {
  browser = await startBrowser(await filmCodes(plain, codes));
  const page = await browser.newPage();
  foreign = [];
  page.on('request', (request) => {
    if (!request.url().startsWith(server.url) && !request.url().startsWith('blob:'))
      foreign.push(request.url());
  });
  await page.goto(`${server.url}?camera${query}`);
  await waitReady(page);
  return page;
}

const scansOf = (page: Page) => page.evaluate(() => window.harness.scans);
/** Waits until the picture was looked at so many times more: what is to happen again would have happened. */
async function lookOn(page: Page, times: number): Promise<void> {
  const before = await page.evaluate(() => window.harness.looks);
  await page.waitForFunction((wanted) => window.harness.looks >= wanted, before + times);
}
const statesOf = (page: Page) => page.evaluate(() => window.harness.states);

beforeAll(async () => {
  server = await serveHarness();
  plain = await startBrowser();
});
afterEach(async () => {
  await browser?.close();
  browser = null;
  server.setPolicy(POLICY);
});
afterAll(async () => {
  await plain.close();
  server.close();
});

describe('the camera in a browser', () => {
  it('loads nothing of the decoder before the camera is opened', async () => {
    server.asked.length = 0;
    const page = await plain.newPage();
    await page.goto(server.url);
    await waitReady(page);
    expect(server.asked.filter((name) => /wasm|decode|camera/i.test(name))).toEqual([]);
    await page.close();
  });

  it('reads a whole label once, byte for byte, under a strict policy and from this server alone', async () => {
    const page = await openBefore([
      { bcid: 'datamatrix', text: ENVELOPE, x: 420, y: 200, scale: 4 },
      { bcid: 'code128', text: '1PABC0603-103', x: 600, y: 210, scale: 1 },
    ]);
    await expect.poll(() => scansOf(page)).not.toEqual([]);
    await lookOn(page, 12);
    const scans = await scansOf(page);
    expect(scans.length).toBe(1);
    expect(scans[0]?.via).toBe('camera');
    const envelope = scans[0]?.codes.find(({ format }) => format === 'DataMatrix')?.text ?? '';
    expect([...envelope].map((char) => char.charCodeAt(0))).toEqual(
      [...ENVELOPE].map((char) => char.charCodeAt(0)),
    );
    expect(scans[0]?.codes.map(({ text }) => text)).toContain('1PABC0603-103');
    expect(
      await page.evaluate(() => [window.harness.violations, window.harness.cameraRequests.length]),
    ).toEqual([[], 1]);
    expect(foreign).toEqual([]);
    expect(await statesOf(page)).toContain('watching worker complete');
    await expect.poll(() => page.locator('.camera-guide').count()).toBe(1);
    await expect.poll(() => page.locator('.camera-outline.is-done').count()).toBeGreaterThanOrEqual(1);
  });

  it('reads stripes at an angle at which a straight scan line does not cross them', async () => {
    const page = await openBefore([
      { bcid: 'code128', text: '1PABC0603-103', x: 420, y: 300, turnDeg: 37, scale: 2 },
    ]);
    await expect.poll(() => scansOf(page)).not.toEqual([]);
    expect((await scansOf(page))[0]?.codes.map(({ text, format }) => [text, format])).toEqual([
      ['1PABC0603-103', 'Code128'],
    ]);
  });

  it('asks which of two labels is meant, outlines both and takes the one that is tapped', async () => {
    const page = await openBefore([
      { bcid: 'datamatrix', text: ENVELOPE, x: 200, y: 280, scale: 4 },
      { bcid: 'datamatrix', text: OTHER, x: 860, y: 280, scale: 4 },
    ]);
    await page.getByRole('button', { name: 'Label 2' }).waitFor({ timeout: 60_000 });
    await expect.poll(() => page.locator('.camera-number').allTextContents()).toEqual(['1', '2']);
    expect(await scansOf(page)).toEqual([]);
    await page.getByRole('button', { name: 'Label 2' }).click();
    await lookOn(page, 12);
    expect((await scansOf(page)).map(({ codes }) => codes.map(({ text }) => text))).toEqual([[OTHER]]);
  });

  it('keeps the number of a label under a finger while the other one is read no more', async () => {
    browser = await startBrowser(['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream']);
    const page = await browser.newPage();
    const drawn = [ENVELOPE, OTHER].map((text, at) => ({
      outline: codeOutline({ bcid: 'datamatrix', text, scale: 4 }),
      x: at === 0 ? 200 : 860,
    }));
    // A lens that the test draws: what lies before it goes when it is told to, and not by the clock.
    await page.addInitScript((codes) => {
      navigator.mediaDevices.getUserMedia = async () => {
        const canvas = Object.assign(document.createElement('canvas'), { width: 1280, height: 720 });
        const pen = canvas.getContext('2d');
        const draw = () => {
          requestAnimationFrame(draw);
          const isAway = (globalThis as { firstIsAway?: boolean }).firstIsAway === true;
          if (!pen) return;
          pen.reset();
          pen.fillStyle = '#f4f4f0';
          pen.fillRect(0, 0, 1280, 720);
          pen.fillStyle = '#000';
          for (const { outline, x } of isAway ? codes.slice(1) : codes) {
            pen.setTransform(1, 0, 0, 1, x, 280);
            pen.fill(new Path2D(outline));
          }
        };
        draw();
        return canvas.captureStream(30);
      };
    }, drawn);
    await page.goto(`${server.url}?camera`);
    await waitReady(page);
    const number = page.getByRole('button', { name: 'Label 2' });
    await number.waitFor();
    await number.dispatchEvent('pointerdown', { buttons: 1 });
    await page.evaluate(() => {
      (globalThis as { firstIsAway?: boolean }).firstIsAway = true;
    });
    await lookOn(page, 40);
    // As a touch screen tells it: a lifted finger leaves before it clicks.
    await number.dispatchEvent('pointerleave', { buttons: 0 });
    await lookOn(page, 3);
    await number.dispatchEvent('click');
    await expect.poll(() => scansOf(page).then((all) => all.length)).toBe(1);
    expect((await scansOf(page)).map(({ codes }) => codes.map(({ text }) => text))).toEqual([[OTHER]]);
  });

  it('outlines a code where it is', async () => {
    const page = await openBefore([{ bcid: 'datamatrix', text: ENVELOPE, x: 500, y: 250, scale: 5 }]);
    await page.locator('.camera-outline').first().waitFor({ state: 'attached', timeout: 60_000 });
    const points = await page.locator('.camera-outline').first().getAttribute('points');
    const [x = 0, y = 0] = (points ?? '').split(/[ ,]/).map(Number);
    // The box of 640 × 360 shows the picture of 1280 × 720 whole.
    expect(Math.hypot(x * 2 - 500, y * 2 - 250)).toBeLessThan(16);
  });

  it('keeps half a label until a person says that this is all', async () => {
    const page = await openBefore(
      [{ bcid: 'code128', text: '1PABC0603-103', x: 420, y: 300, scale: 2 }],
      '&patient',
    );
    await expect.poll(async () => (await statesOf(page)).at(-1)).toMatch(/gathering$/);
    await lookOn(page, 12);
    expect(await scansOf(page)).toEqual([]);
    await page.getByRole('button', { name: 'Take it' }).click();
    await expect.poll(async () => (await scansOf(page)).length).toBe(1);
    expect((await scansOf(page))[0]?.codes.map(({ text }) => text)).toEqual(['1PABC0603-103']);
  });

  it('reads nothing while something lies over the picture, and goes on with the same lens', async () => {
    const page = await openBefore(
      [{ bcid: 'datamatrix', text: ENVELOPE, x: 500, y: 250, scale: 5 }],
      '&paused&idle=1000',
    );
    await expect.poll(async () => (await statesOf(page)).at(-1)).toBe('watching worker nothing');
    // Longer than the camera waits for something new: a held camera does not stop by itself either.
    await page.waitForFunction(
      (until) => performance.now() > until,
      await page.evaluate(() => performance.now() + 1500),
    );
    expect([await scansOf(page), (await statesOf(page)).at(-1)]).toEqual([[], 'watching worker nothing']);
    await page.getByRole('button', { name: 'Pause' }).click();
    await expect.poll(async () => (await scansOf(page)).length).toBe(1);
    expect(await page.evaluate(() => window.harness.cameraRequests.length)).toBe(1);
  });

  it('stops by itself when nothing is read, and starts again on a tap', async () => {
    const page = await openBefore([], '&idle=1500');
    await expect.poll(() => page.locator('.camera-status').textContent()).toBe('Stopped by itself');
    await expect
      .poll(() => page.evaluate(() => document.querySelector('video')?.srcObject ?? null))
      .toBeNull();
    const before = (await statesOf(page)).length;
    await page.getByRole('button', { name: 'Start camera' }).click();
    // Of all that it said since: by the next look it may have stopped again.
    await expect.poll(async () => (await statesOf(page)).slice(before).join()).toContain('watching');
  });

  it('lets go of the lens while the page is hidden, and takes it again when it is shown', async () => {
    const page = await openBefore([]);
    await expect.poll(async () => (await statesOf(page)).at(-1)).toContain('watching');
    const show = (state: string) =>
      page.evaluate((visibility) => {
        Object.defineProperty(document, 'visibilityState', { value: visibility, configurable: true });
        document.dispatchEvent(new Event('visibilitychange'));
      }, state);
    await show('hidden');
    await expect.poll(() => page.locator('.camera-status').textContent()).toBe('Paused');
    await expect
      .poll(() => page.evaluate(() => document.querySelector('video')?.srcObject ?? null))
      .toBeNull();
    await show('visible');
    await expect.poll(async () => (await statesOf(page)).at(-1)).toContain('watching');
  });

  it('says so when there is no camera', async () => {
    const page = await plain.newPage();
    await page.goto(`${server.url}?camera`);
    await expect.poll(() => page.locator('.camera-status').textContent()).toMatch(/No camera|Not allowed/);
    await page.close();
  });

  it('reads by plain script where WebAssembly is barred', async () => {
    server.setPolicy(POLICY_WITHOUT_WASM);
    const page = await openBefore([{ bcid: 'datamatrix', text: ENVELOPE, x: 500, y: 250, scale: 5 }]);
    await expect.poll(() => scansOf(page)).not.toEqual([]);
    expect((await scansOf(page))[0]?.codes[0]?.text).toBe(ENVELOPE);
    expect(await statesOf(page)).toContain('watching script complete');
  });
});
