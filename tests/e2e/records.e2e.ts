// An entry on paper, by a real server: the code is read off the page by another decoder than the one that drew it, and the command line
// proves it without the log. Away from the server the paper says since when, and a reprint carries the proof.

import { spawn } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import { startBrowser } from './support/browser.ts';
import { dist, outside } from './support/demo.ts';
import { goTo, signIn } from './support/floor.ts';
import { joinPlant, untilSent } from './support/joined.ts';
import { type PlantServer, startServe } from './support/serve.ts';

let server: PlantServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
  prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer } });
  [server, browser] = await Promise.all([startServe(), startBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

/** A tablet of the plant, and its first person. */
async function begin(): Promise<void> {
  page = await joinPlant(browser, server.url, { code: server.firstCode, name: 'Line front' });
  await page.evaluate(() => {
    window.print = () => {
      document.body.dataset['prints'] = String(Number(document.body.dataset['prints'] ?? 0) + 1);
    };
  });
  await goTo(page, 'plant');
  await page.getByTestId('tile-people').click();
  await page.getByTestId('person-form').waitFor();
  await page.getByTestId('person-name').fill('Elif');
  await page.getByTestId('person-badge').fill('E-1');
  await page.getByTestId('person-pin').fill('4401');
  await page.getByTestId('person-save').click();
  await page.getByText('Elif saved.').waitFor();
  await signIn(page, 'E-1');
  await untilSent(page);
}

/** Opens the newest entry of a kind, and its paper's dialog; `isProven`: what it must say. */
async function openRecord(kind: string, isProven: boolean): Promise<void> {
  await goTo(page, 'log');
  await page.locator(`[data-testid=entry][data-kind="${kind}"]`).first().click();
  await page.getByTestId('entry-record').click();
  await page.locator(`[data-testid=record-dialog][data-proof="${isProven}"]`).waitFor();
}

/** Prints, and gives the words on the paper and what a camera reads off it, on paper of some hundred dots an inch. */
async function onPaper(): Promise<{ readonly words: string; readonly codes: readonly string[] }> {
  const before = await page.evaluate(() => document.body.dataset['prints'] ?? '0');
  await page.getByTestId('record-print').click();
  await expect
    .poll(() => page.evaluate(() => document.body.dataset['prints']))
    .toBe(String(Number(before) + 1));
  await page.emulateMedia({ media: 'print' });
  const words = (await page.locator('.record-page').textContent()) ?? '';
  const code = page.locator('.record-code');
  let codes: readonly string[] = [];
  if ((await code.count()) > 0) {
    const zoom = (side: string) =>
      code.evaluate((node, to) => {
        for (const each of ['width', 'height']) node.setAttribute(each, to);
      }, side);
    const width = (await code.getAttribute('width')) ?? '';
    await zoom('220mm');
    const picture = await code.screenshot();
    await zoom(width);
    const found = await readBarcodes(new Uint8Array(picture), {
      formats: ['QRCode'],
      textMode: 'Plain',
      tryHarder: true,
    });
    codes = found.map(({ text }) => text);
  }
  await page.emulateMedia({ media: 'screen' });
  await page.keyboard.press('Escape');
  return { words, codes };
}

async function verify(record: string) {
  const keys = path.join(server.folder, 'keys.txt');
  // The fingerprint is told beside the list, not in it.
  writeFileSync(keys, (await server.act('keys')).replace(/^The plant's key: .*\n/m, ''));
  const args = ['log', 'verify', '--record', '-', '--keys', keys];
  const child = spawn(process.execPath, [path.join(dist, 'cli/reelward.js'), ...args], { env: outside() });
  let out = '';
  child.stdout.on('data', (chunk) => (out += String(chunk)));
  child.stdin.end(record);
  await new Promise((resolve) => child.on('close', resolve));
  return JSON.parse(out);
}

describe('the paper of an entry', () => {
  it('carries its proof, which the command line checks without the log', async () => {
    await begin();
    await openRecord('person.added', true);
    const { words, codes } = await onPaper();
    expect(words).toContain('Proven: entry');
    expect(codes).toHaveLength(1);
    const told = await verify(codes[0] ?? '');
    expect(told).toMatchObject({
      ok: true,
      proven: 1,
      entry: { kind: 'person.added', payload: { name: 'Elif' } },
    });
    expect(JSON.stringify(told)).not.toContain('E-1"');
    expect(words).toContain(told.hash);
  });

  it('says since when there is no server, and carries the proof when it is printed again', async () => {
    await page.context().setOffline(true);
    await page.getByTestId('sign-in').click();
    await page.getByRole('button', { name: 'Sign out' }).click();
    await openRecord('person.signed-out', false);
    const without = await onPaper();
    expect(without.words).toMatch(/Not proven yet: no server since \S/);
    expect(without.codes).toEqual([]);
    await page.context().setOffline(false);
    await untilSent(page);
    await openRecord('person.signed-out', true);
    const { codes } = await onPaper();
    expect(await verify(codes[0] ?? '')).toMatchObject({
      ok: true,
      proven: 1,
      entry: { kind: 'person.signed-out' },
    });
  });
});
