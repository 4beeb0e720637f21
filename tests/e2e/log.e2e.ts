// The log on the screen and out of the app: filters, and exports that the command line checks in a process of its own.

import { spawn } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import Papa from 'papaparse';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dist, outside } from './support/demo.ts';
import {
  goOn,
  goTo,
  openExport,
  openTablet,
  ownEntries,
  readLog,
  reelLabel,
  scanAll,
  type Tablet,
  tap,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();
let folder: string;
let tablet: Tablet;

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'reelward-log-'));
  tablet = await openTablet(demo.browser, demo.url, { badge: 'BADGE-4401' });
  const { page } = tablet;
  await scanAll(page, 'M2-R-010', reelLabel({ P: '12-0603-105H', Q: '4000', '3S': 'R-920001' }));
  await goOn(page);
  await scanAll(page, 'M2-F-001', reelLabel({ P: '22-0603-Y', Q: '4000', '3S': 'R-920002' }));
  await goOn(page);
  await scanAll(
    page,
    'M2-F-023',
    'F-0112',
    reelLabel({ P: '22-0603-B', Q: '4000', '1T': '=1+1', '3S': 'R-920003' }),
  );
  await goOn(page);
  await page.goto(`${demo.url}#/plant/people`);
  await page.getByTestId('person-add').click();
  await page.getByTestId('person-name').fill('=1+1');
  await page.getByTestId('person-badge').fill('+SUM(A1)');
  await page.getByTestId('person-save').click();
  await page.getByText('=1+1 saved.').waitFor();
});
afterAll(async () => {
  await tablet?.putAway();
  await rm(folder, { recursive: true, force: true });
});

async function openLog(page: Page): Promise<void> {
  await goTo(page, 'line');
  await goTo(page, 'log');
  await page.getByTestId('entries').waitFor();
}

async function exportAs(page: Page, format: 'csv' | 'xlsx' | 'json'): Promise<string> {
  await openExport(page);
  const waiting = page.waitForEvent('download');
  await page.getByTestId(`export-${format}`).click();
  const download = await waiting;
  const file = path.join(folder, `${Date.now()}-${download.suggestedFilename()}`);
  await download.saveAs(file);
  return file;
}

function verify(file: string): Promise<{ code: number | null; out: string; err: string }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [path.join(dist, 'cli/reelward.js'), 'log', 'verify', file], {
      env: outside(),
    });
    let out = '';
    let err = '';
    child.stdout.on('data', (chunk) => (out += String(chunk)));
    child.stderr.on('data', (chunk) => (err += String(chunk)));
    child.on('close', (code) => resolve({ code, out, err }));
  });
}

const kindsShown = (page: Page) =>
  page.getByTestId('entry').evaluateAll((rows) => rows.map((row) => row.getAttribute('data-kind')));

describe('the log on the screen', () => {
  it('is filtered by verdict, slot and time', async () => {
    const { page } = tablet;
    await openLog(page);
    await page.getByTestId('verdict-held').click();
    const verdictsShown = async () => new Set(await page.locator('.entry .marks .chip').allTextContents());
    await expect.poll(verdictsShown).toEqual(new Set([' held']));
    await expect.poll(() => page.getByTestId('entries').textContent()).toContain('M2-R-010');
    await page.getByTestId('verdict-refused').click();
    await expect.poll(verdictsShown).toEqual(new Set([' refused']));
    await expect.poll(() => page.getByTestId('entries').textContent()).toContain('Wrong part');
    await page.getByTestId('verdict-refused').click();
    await page.getByTestId('log-filters').click();
    await page.getByTestId('filter-slot').fill('m2-f-023');
    await expect.poll(() => page.getByTestId('filters-told').textContent()).toContain('Last 8 h · M2-F-023');
    // The verdict, and beside it what its floor life rested on.
    await expect
      .poll(async () => new Set(await kindsShown(page)))
      .toEqual(new Set(['reel.verified', 'reel.life-judged']));
    const others = async () =>
      (await page.getByTestId('entry').allTextContents()).filter((text) => !text.includes('M2-F-023'));
    await expect.poll(others).toEqual([]);
    await page.getByTestId('filter-slot').fill('M7-F-001');
    await page.getByText('No entries match these filters.').waitFor();
    await page.getByTestId('filters-clear').click();
    await page.getByTestId('filters-told').waitFor({ state: 'detached' });
    await page.getByTestId('span-all').click();
    await expect.poll(() => page.getByTestId('entry').count()).toBe(60);
    await page.getByRole('button', { name: 'Show older' }).click();
    await expect.poll(() => page.getByTestId('entry').count()).toBe(120);
  });

  it('shows an entry whole, with its seal', async () => {
    const { page } = tablet;
    await openLog(page);
    await page.getByTestId('verdict-held').click();
    // What else is told of the slot is gone before the entry is taken for it.
    await expect
      .poll(async () => new Set(await page.locator('.entry .marks .chip').allTextContents()))
      .toEqual(new Set([' held']));
    await page.getByTestId('entry').filter({ hasText: 'M2-R-010' }).click();
    const [held] = (await ownEntries(page, 'reel.verified')).filter(
      ({ payload }) => payload['verdict'] === 'held',
    );
    await page.getByText('How this entry is sealed').click();
    await page.getByText(String(held?.hash), { exact: true }).waitFor();
    await page.keyboard.press('Escape');
    await page.locator('dialog').waitFor({ state: 'detached' });
    await page.getByTestId('verdict-held').click();
    await openExport(page);
    await page.getByTestId('check-seals').click();
    await expect.poll(() => page.getByTestId('notice').textContent()).toMatch(/^All \d+ seals are intact\.$/);
  });
});

describe('an export', () => {
  it.each(['csv', 'xlsx', 'json'] as const)('as %s is found whole by the command line', async (format) => {
    const { page } = tablet;
    await openLog(page);
    await page.getByTestId('span-all').click();
    const before = await readLog(page);
    const { code, out, err } = await verify(await exportAs(page, format));
    expect([code, err]).toEqual([0, '']);
    const { entries, ...report } = JSON.parse(out) as { readonly entries: number };
    expect(report).toMatchObject({ ok: true, omitted: 0 });
    // All that was there, and what the tablet wrote by itself until then: a warning comes at any moment.
    const known = new Set(before.map(({ hash }) => hash));
    const since = (await readLog(page)).filter(({ hash }) => !known.has(hash));
    expect(entries).toBeGreaterThanOrEqual(before.length);
    expect(entries - before.length).toBeLessThanOrEqual(
      since.filter(({ kind }) => kind === 'warning.raised').length,
    );
  });

  it.each(['csv', 'json'] as const)(
    'as %s with one byte changed is found broken, by the name of the entry',
    async (format) => {
      const { page } = tablet;
      await openLog(page);
      await page.getByTestId('span-all').click();
      const file = await exportAs(page, format);
      const text = await readFile(file, 'utf8');
      const entry = (await ownEntries(page)).filter(({ payload }) => payload['reel'] === 'R-920003').at(-1);
      const at = text.lastIndexOf('R-920003');
      expect(at).toBeGreaterThan(0);
      await writeFile(file, `${text.slice(0, at)}R-920004${text.slice(at + 8)}`);
      const { code, err } = await verify(file);
      expect(code).toBe(1);
      expect(err).toContain(`${entry?.tablet}/${entry?.epoch}/${entry?.seq}`);
    },
  );

  it('of what the filters show can be verified, the rest stands as left out', async () => {
    const { page } = tablet;
    await openLog(page);
    await page.getByTestId('span-all').click();
    await page.getByTestId('verdict-refused').click();
    const count = (await readLog(page)).filter(({ payload }) => payload['verdict'] === 'refused').length;
    const { code, out } = await verify(await exportAs(page, 'json'));
    expect(code).toBe(0);
    const report = JSON.parse(out) as { entries: number; omitted: number };
    expect(report.entries).toBe(count);
    expect(report.omitted).toBeGreaterThan(500);
    expect((await ownEntries(page, 'log.exported')).length).toBeGreaterThan(0);
  });

  it('as CSV has no cell that a spreadsheet would compute', async () => {
    const { page } = tablet;
    await openLog(page);
    await page.getByTestId('span-all').click();
    const text = await readFile(await exportAs(page, 'csv'), 'utf8');
    const { data } = Papa.parse<string[]>(text.replace(/^\ufeff/, ''));
    const cells = data.flat();
    expect(cells.filter((cell) => /^[=+\-@\t\r]/.test(cell) && !/^-?\d+(\.\d+)?$/.test(cell))).toEqual([]);
    expect(cells.some((cell) => cell.includes('=1+1'))).toBe(true);
  });

  it('is a lead’s: an operator is told so and gets no file', async () => {
    const other = await openTablet(demo.browser, demo.url);
    await openLog(other.page);
    await openExport(other.page);
    const button = other.page.getByTestId('export-csv');
    await expect.poll(() => button.getAttribute('aria-disabled')).toBe('true');
    const described = await button.getAttribute('aria-describedby');
    await expect
      .poll(() => other.page.locator(`[id="${described}"]`).textContent())
      .toContain('Needs: Shift lead');
    // Drawn once for all of them, and pointed at where one is pressed all the same.
    const told = other.page.getByTestId('told-once');
    await expect.poll(() => told.textContent()).toContain('Needs: Shift lead');
    expect(await other.page.locator('dialog .why').count()).toBe(0);
    expect(await told.getAttribute('role')).toBeNull();
    let downloads = 0;
    other.page.on('download', () => downloads++);
    await tap(button);
    await expect.poll(() => told.getAttribute('role')).toBe('alert');
    expect(downloads).toBe(0);
    await expect.poll(() => told.textContent()).toContain('Needs: Shift lead');
    expect(await ownEntries(other.page, 'log.exported')).toEqual([]);
    await other.putAway();
  });
});
