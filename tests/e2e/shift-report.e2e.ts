// The shift's report: its questions answered from the log, as a file, a picture and on paper.

import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { drawn } from './support/clock.ts';
import { goOn, ownEntries, reelLabel, scanAll } from './support/floor.ts';
import { look } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-3301', hash: '#/log/shift' });

async function saved(page: Page, testId: string): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByTestId(testId).click()]);
  return readFile(await download.path());
}

it('answers its questions, and says the same in a spreadsheet and as a picture', () =>
  demo.onTablet(async ({ page }) => {
    await page.getByTestId('plot-reasons').waitFor();
    await expect.poll(() => page.locator('.plot').count()).toBe(7);
    await page.getByTestId('span-24').click();
    await drawn(page);
    await look(page, { where: 'shift report', axe: true });
    const splices = page.getByTestId('plot-splices');
    const told = Number(/^(\d+)/.exec((await splices.locator('p').first().textContent()) ?? '')?.[1]);
    expect(told).toBeGreaterThan(0);
    const csv = (await saved(page, 'csv-splices')).toString('utf8');
    const rows = csv.split('\r\n').slice(1).filter(Boolean);
    expect(rows.reduce((sum, row) => sum + Number(row.split(',')[1]), 0)).toBe(told);
    const png = await saved(page, 'png-splices');
    expect(png.subarray(1, 4).toString('latin1')).toBe('PNG');
    expect(png.length).toBeGreaterThan(4000);
  }));

it('tells run-outs that were prevented beside those that were missed, and the same in a spreadsheet and as a picture', () =>
  demo.onTablet(async ({ page }) => {
    const dry = page.getByTestId('plot-dry');
    await dry.waitFor();
    await page.getByTestId('span-24').click();
    const answer = () => dry.locator('p').first().textContent();
    await expect.poll(answer).toMatch(/\d+ run-outs? prevented\.$/);
    await drawn(page);
    await look(page, { where: 'run-outs prevented and missed', axe: true });
    const prevented = Number(/(\d+) run-outs? prevented/.exec((await answer()) ?? '')?.[1]);
    const bar = dry.locator('li').first();
    expect(await bar.textContent()).toBe(`Prevented${prevented} ×`);
    expect(await dry.textContent()).toContain('By count, the old one could not last the run.');
    const rows = (await saved(page, 'csv-dry')).toString('utf8').split('\r\n').slice(1);
    const ofPrevented = rows.filter((row) => row.startsWith('"prevented"'));
    expect(ofPrevented.length).toBe(prevented);
    for (const row of ofPrevented) expect(Number(row.split(',')[3])).toBeGreaterThan(0);
    const missed = await dry.locator('li', { hasText: 'Missed' }).count();
    // The bars end where a card is full, the rows do not.
    expect(rows.filter((row) => row.startsWith('"missed"')).length).toBeGreaterThanOrEqual(missed);
    expect((await saved(page, 'png-dry')).length).toBeGreaterThan(4000);
  }));

it('counts a refusal with the entry that brought it', () =>
  demo.onTablet(async ({ page }) => {
    const reasons = page.getByTestId('plot-reasons');
    await reasons.waitFor();
    const all = async () =>
      Number(
        /of (\d+) scan|^(\d+) scan/
          .exec((await reasons.locator('p').first().textContent()) ?? '')
          ?.slice(1)
          .find(Boolean),
      );
    const before = await all();
    const entries = (await ownEntries(page, 'reel.verified')).length;
    await page.goto(`${demo.url}#/load`);
    await scanAll(page, 'M2-F-023', 'F-0112', reelLabel({ P: 'NOT-IT', Q: '100', '3S': 'R-990001' }));
    await goOn(page);
    expect((await ownEntries(page, 'reel.verified')).length).toBe(entries + 1);
    await page.goto(`${demo.url}#/log/shift`);
    await reasons.waitFor();
    await expect.poll(all).toBe(before + 1);
  }));

it('puts a price on lost parts once the part list has one, and says how many have none', () =>
  demo.onTablet(
    async ({ page }) => {
      await page.getByTestId('span-24').click();
      const lost = page.getByTestId('plot-parts').locator('li .code').first();
      await lost.waitFor();
      const part = (await lost.textContent()) ?? '';
      expect(await page.getByTestId('plot-money').count()).toBe(0);
      const buffer = Buffer.from(`Part number,Price per 1000 (EUR)\n${part},1200\n`);
      await page.goto(`${demo.url}#/plant/parts/list/import`);
      await page
        .getByTestId('list-file')
        .first()
        .setInputFiles({ name: 'prices.csv', mimeType: 'text/csv', buffer });
      await page.getByTestId('list-take').click();
      await expect.poll(async () => (await ownEntries(page, 'parts.priced')).length).toBe(1);
      const [priced] = await ownEntries(page, 'parts.priced');
      expect(priced?.payload['parts']).toMatchObject([{ part, price: { each: 1.2, currency: 'EUR' } }]);
      await page.goto(`${demo.url}#/log/shift`);
      await page.getByTestId('span-24').click();
      const money = page.getByTestId('plot-money');
      await money.waitFor();
      await expect.poll(() => money.locator('p').first().textContent()).toMatch(/[\d.]+ EUR\..* no price\./);
      await look(page, { where: 'what lost parts cost', axe: true });
      const csv = (await saved(page, 'csv-money')).toString('utf8');
      const row = csv.split('\r\n').find((line) => line.startsWith(`"${part}"`)) ?? '';
      const [, parts, , , price, currency, cost] = row.split(',');
      expect([price, currency]).toEqual(['1.2', '"EUR"']);
      expect(Number(cost)).toBeCloseTo(Number(parts) * 1.2, 3);
      expect((await saved(page, 'png-money')).length).toBeGreaterThan(4000);
    },
    { badge: 'BADGE-4401' },
  ));
