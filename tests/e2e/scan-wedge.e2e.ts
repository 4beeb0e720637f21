import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type HarnessServer, serveHarness } from './harness/scan/serve.ts';
import { startBrowser, waitReady } from './support/browser.ts';
import { giveClock, pass } from './support/clock.ts';
import { scan, steady, typeByHand } from './support/floor.ts';

// Separators of ISO/IEC 15434; data invented.
const ENVELOPE = '[)>\u001e06\u001dPCUST-0042\u001dQ4000\u001d1TLOT 77\u001e\u0004';

let server: HarnessServer;
let browser: Browser;
let page: Page;

async function open(query = ''): Promise<void> {
  page = await browser.newPage();
  await giveClock(page.context());
  await page.goto(server.url + query);
  await waitReady(page);
}

const scanned = () =>
  page.evaluate(() => window.harness.scans.flatMap(({ codes }) => codes.map(({ text }) => text)));
const clicks = () => page.evaluate(() => window.harness.clicks);

beforeAll(async () => {
  server = await serveHarness();
  browser = await startBrowser();
});
afterEach(async () => {
  expect(await page.evaluate(() => window.harness.violations)).toEqual([]);
  await page.close();
});
afterAll(async () => {
  await browser.close();
  server.close();
});

describe('the wedge in a browser', () => {
  it('reads an envelope with its control characters, and opens no bookmark or reload on the way', async () => {
    await open();
    await scan(page, ENVELOPE);
    await expect.poll(scanned).toEqual([ENVELOPE]);
  });

  it('reads control characters sent by Alt and number pad', async () => {
    await open();
    await page.keyboard.type('AB');
    await page.keyboard.down('Alt');
    for (const digit of '029') await page.keyboard.press(`Numpad${digit}`);
    await page.keyboard.up('Alt');
    await page.keyboard.type('CD');
    await page.keyboard.press('Enter');
    await expect.poll(scanned).toEqual(['AB\u001dCD']);
  });

  for (const name of ['Confirm', 'Clear', 'Delete', 'Open dialog', 'Camera', 'Slot map', 'Check']) {
    it(`presses nothing with ${name} focused, neither by Enter nor by the blanks in a label`, async () => {
      await open();
      const role = name === 'Slot map' ? 'link' : name === 'Check' ? 'checkbox' : 'button';
      const control = page.getByRole(role, { name, exact: true });
      await control.focus();
      await scan(page, ' R 00 17 ');
      await control.focus();
      await scan(page, ENVELOPE);
      await expect.poll(scanned).toEqual([' R 00 17 ', ENVELOPE]);
      expect(await clicks()).toEqual([]);
      expect(await page.locator('dialog[open], .camera').count()).toBe(0);
      expect(new URL(page.url()).hash).toBe('');
    });
  }

  it('still lets a person press a focused button with Enter and with the space bar', async () => {
    await open();
    await page.getByRole('button', { name: 'Confirm' }).focus();
    await page.keyboard.press('Enter');
    await steady(page);
    await page.keyboard.press('Space');
    await expect.poll(clicks).toEqual(['Confirm', 'Confirm']);
  });

  it('reads a scan in the middle of a dialog and presses nothing in it', async () => {
    await open();
    await page.getByRole('button', { name: 'Open dialog' }).click();
    await page.getByRole('button', { name: 'In dialog' }).focus();
    await scan(page, 'SLOT M1-F-014');
    await expect.poll(scanned).toEqual(['SLOT M1-F-014']);
    expect(await clicks()).toEqual([]);
  });

  it('keeps a burst out of the field that has the focus, and what was typed in it', async () => {
    await open();
    const note = page.getByLabel('Note');
    await note.focus();
    await typeByHand(page, 'bin 7');
    await pass(page, 250);
    await scan(page, 'REEL-000123');
    await pass(page, 250);
    await typeByHand(page, ' ok');
    await expect.poll(() => note.inputValue()).toBe('bin 7 ok');
    await expect.poll(() => page.locator('output').textContent()).toBe('bin 7 ok');
    await expect.poll(scanned).toEqual(['REEL-000123']);
  });

  it('types at the caret and undoes as if nobody listened', async () => {
    await open();
    const note = page.getByLabel('Note');
    await note.focus();
    await typeByHand(page, 'ac');
    await page.keyboard.press('ArrowLeft');
    await typeByHand(page, 'b');
    await expect.poll(() => note.inputValue()).toBe('abc');
    await page.keyboard.press('Control+z');
    await expect.poll(() => note.inputValue()).not.toBe('abc');
  });

  it('takes the focus off a button that was tapped', async () => {
    await open();
    await page.getByRole('button', { name: 'Confirm' }).click();
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('BODY');
    await expect.poll(clicks).toEqual(['Confirm']);
  });

  it('reads a label of 300 characters', async () => {
    await open();
    const text = 'X1-'.repeat(100);
    await scan(page, text);
    await expect.poll(scanned).toEqual([text]);
  });

  it('reads keys that name nothing through the hidden field, also inside a dialog', async () => {
    await open('?sink');
    const insert = async (text: string) => {
      const client = await page.context().newCDPSession(page);
      for (const char of text) {
        await client.send('Input.dispatchKeyEvent', {
          type: 'rawKeyDown',
          key: 'Unidentified',
          windowsVirtualKeyCode: 229,
        });
        await client.send('Input.insertText', { text: char });
      }
      await page.keyboard.press('Enter');
    };
    await insert('REEL-77');
    await page.getByRole('button', { name: 'Open dialog' }).click();
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.locator('dialog').click({ position: { x: 2, y: 2 } });
    await insert('SLOT-9');
    await expect.poll(scanned).toEqual(['REEL-77', 'SLOT-9']);
  });
});
