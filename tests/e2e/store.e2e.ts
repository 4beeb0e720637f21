// The store on a tablet: goods-in with one scan a reel, what lies where, a dry cabinet's air, a package cut in two and joined again.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { pass } from './support/clock.ts';
import { goTo, openAt, ownEntries, reelAct, reelLabel, scan, steady } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-4401', hash: '#/stock' });

const openStore = async (page: Page, part: 'in' | 'places' | 'paste') => {
  await page.getByTestId('stock-store').click();
  await page.getByTestId(`store-${part}`).click();
};

const part = '22-0603-B';
const label = (reel: string, more: Readonly<Record<string, string>> = {}) =>
  reelLabel({ P: part, Q: '4000', '1T': 'LT-9100-E', '3S': reel, ...more });

it('goods come in: the place once, then one scan and no tap a reel', async () => {
  await demo.onTablet(async ({ page }) => {
    await openStore(page, 'in');
    await scan(page, 'Z9-S01');
    await page.getByTestId('goods-place').waitFor();
    const reels = Array.from({ length: 12 }, (_, at) => `R-9704${String(at).padStart(2, '0')}`);
    // The only acts from here on are scans, one for each reel.
    for (const reel of reels) await scan(page, label(reel));
    await expect.poll(() => page.getByTestId('goods-done').textContent()).toContain('12 reels');
    const put = await ownEntries(page, 'reel.put');
    expect(put.map(({ payload }) => [payload['reel'], payload['place'], payload['quantity']]).sort()).toEqual(
      reels.map((reel) => [reel, 'Z9-S01', 4000]),
    );
    await scan(page, reelLabel({ P: part, Q: '4000', '1T': 'LT-9100-E' }));
    await page.getByTestId('goods-no-id').waitFor();
    await scan(page, '~nothing~');
    await expect.poll(() => page.getByTestId('goods-answer').textContent()).toContain('names no reel');

    await openStore(page, 'places');
    await page.getByTestId('place-search').fill('z9');
    await expect.poll(() => page.getByTestId('place-Z9-S01').textContent()).toContain('12 reels, 1 part');
    await page.getByTestId('place-show-Z9-S01').click();
    await expect.poll(() => page.getByTestId('reel-list').locator('button').count()).toBe(12);
  });
});

it('what an opened reel is put into counts for its floor life', async () => {
  await demo.onTablet(async ({ page }) => {
    await openStore(page, 'places');
    await page.getByTestId('place-add').click();
    await page.getByTestId('place-name').fill('DRY-1');
    await page.getByTestId('place-air-dry').click();
    await page.getByTestId('place-humidity').fill('much');
    await expect.poll(() => page.getByTestId('place-save').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('place-humidity').fill('5');
    await page.getByTestId('place-save').click();
    await expect.poll(() => page.getByTestId('place-DRY-1').textContent()).toContain('Dry cabinet · 5 %');

    await openStore(page, 'in');
    await scan(page, 'Z9-S02');
    await page.getByTestId('goods-place').waitFor();
    await scan(page, label('R-970501'));
    await scan(page, label('R-970502'));
    await expect.poll(() => page.getByTestId('goods-done').textContent()).toContain('2 reels');
    await page.getByTestId('stock-reels').click();
    await page.getByTestId('reel-search').fill('R-970501');
    await steady(page);
    await reelAct(page, 'air', 'R-970501');
    await page.getByTestId('air-yes').click();
    await openStore(page, 'in');
    await scan(page, 'DRY-1');
    await page.getByTestId('goods-place').waitFor();
    await scan(page, label('R-970501'));
    await scan(page, label('R-970502'));
    await expect.poll(() => page.getByTestId('goods-done').textContent()).toContain('2 reels');
    const aired = async () =>
      (await ownEntries(page, 'reel.aired')).map(({ payload: { reel, air, humidity } }) => [
        reel,
        air,
        humidity,
      ]);
    // The bag of the other was never opened: the cabinet says nothing of it.
    await expect.poll(aired).toEqual([
      ['R-970501', 'floor', null],
      ['R-970501', 'dry', 5],
    ]);
    await page.getByTestId('stock-reels').click();
    await page.getByTestId('reel-search').fill('');
    await page.getByTestId('reels-filter').selectOption('opened');
    await page.getByTestId('reel-R-970501').waitFor();
    expect(await page.getByTestId('reel-R-970502').count()).toBe(0);
  });
});

it('a package is cut in two, and two of one lot are joined; two of different lots are not', async () => {
  await demo.onTablet(async ({ page }) => {
    await openStore(page, 'in');
    await scan(page, 'Z9-S03');
    await page.getByTestId('goods-place').waitFor();
    await scan(page, label('R-970601'));
    await scan(page, label('R-970602'));
    await scan(page, label('R-970603', { '1T': 'LT-OTHER' }));
    await expect.poll(() => page.getByTestId('goods-done').textContent()).toContain('3 reels');
    await page.getByTestId('stock-reels').click();
    await page.getByTestId('reel-search').fill('Z9-S03');
    await reelAct(page, 'split', 'R-970601');
    await page.getByTestId('split-parts').fill('5000');
    await expect.poll(() => page.getByTestId('split-yes').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('split-parts').fill('500');
    await page.getByTestId('split-yes').click();
    await page.getByTestId('label-dialog').waitFor();
    const [split] = await ownEntries(page, 'reel.split');
    expect(split?.payload).toMatchObject({ reel: 'R-970601', quantity: 500, left: 3500, lot: 'LT-9100-E' });
    await page.keyboard.press('Escape');
    await page.getByTestId('label-dialog').waitFor({ state: 'detached' });
    await expect.poll(() => page.getByTestId('reel-R-970601').textContent()).toContain('3,500');
    await expect
      .poll(() => page.getByTestId(`reel-${String(split?.payload['into'])}`).textContent())
      .toContain('500');

    await reelAct(page, 'merge', 'R-970601');
    await scan(page, label('R-970603', { '1T': 'LT-OTHER' }));
    await expect.poll(() => page.getByTestId('merge-yes').getAttribute('aria-disabled')).toBe('true');
    await scan(page, label('R-970602'));
    await expect.poll(() => page.getByTestId('merge-yes').getAttribute('aria-disabled')).not.toBe('true');
    await page.getByTestId('merge-yes').click();
    // Neither of the two labels says how many there are now.
    await page.getByTestId('notice').getByRole('button').first().click();
    await page.getByTestId('label-dialog').waitFor();
    await page.keyboard.press('Escape');
    await page.getByTestId('label-dialog').waitFor({ state: 'detached' });
    await expect.poll(() => page.getByTestId('reel-R-970601').textContent()).toContain('7,500');
    await expect.poll(() => page.getByTestId('reel-R-970602').textContent()).toContain('empty');
    await goTo(page, 'log');
    await expect.poll(() => page.locator('main').textContent()).toContain('Packages joined');
    // A trace says where parts of a reel came from and went, whichever of them is asked for.
    const piece = String(split?.payload['into']);
    const ask = async (reel: string) => {
      await openAt(page, `#/log/trace/reel/${reel}`);
      await page.getByTestId('trace-text').fill(reel);
      await page.getByTestId('trace-reel').click();
      await page.getByTestId('trace-ask').click();
    };
    await ask('r-970601');
    await expect.poll(() => page.getByTestId('trace-parts-to').textContent()).toContain(piece);
    await expect.poll(() => page.getByTestId('trace-parts-from').textContent()).toContain('R-970602');
    await ask(piece);
    await expect
      .poll(() => page.getByTestId('trace-parts-from').textContent())
      .toBe('Has parts from R-970601');
    await page.getByTestId('trace-parts-to').waitFor({ state: 'detached' });
  });
});

it('a jar of paste thaws, is opened in time, and is held on its way to the stencil once its hours are over', async () => {
  await demo.onTablet(async ({ page }) => {
    await openStore(page, 'paste');
    await page.getByTestId('paste-sheet').click();
    await page.getByTestId('paste-name').fill('SP-305');
    await page.getByTestId('paste-thawHours').fill('0.01');
    await page.getByTestId('paste-openHours').fill('0.05');
    await page.getByTestId('paste-save').click();
    await page.locator('dialog[open]').waitFor({ state: 'detached' });
    await scan(page, reelLabel({ P: 'SP-305', '1T': 'LP-77', '3S': 'J-1001' }));
    await page.getByTestId('jar-new').click();
    const row = page.getByTestId('jar-J-1001');
    await expect.poll(() => row.textContent()).toContain('in the cold');
    await row.click();
    await page.getByTestId('jar-out').click();
    await expect.poll(() => row.textContent()).toContain('not thawed long enough');
    await pass(page, 60_000);
    await expect.poll(() => row.textContent()).not.toContain('not thawed');
    await row.click();
    await page.getByTestId('jar-opened').click();
    await row.click();
    await page.getByTestId('jar-on').click();
    // The jar of the shift before is on it still, as far as the log says.
    await page.getByTestId('jar-cleared').click();
    await expect.poll(() => row.textContent()).toContain('on the stencil of');
    await row.click();
    await page.getByTestId('jar-off').click();
    await expect
      .poll(async () => (await ownEntries(page, 'jar.told')).at(-1)?.payload)
      .toMatchObject({ says: 'off' });
    await pass(page, 240_000);
    await expect.poll(() => row.textContent()).toContain('open for too long');
    await row.click();
    await page.getByTestId('jar-on').click();
    await expect.poll(() => page.locator('dialog[open]').textContent()).toContain('A lead decides');
    await expect
      .poll(async () => (await ownEntries(page, 'jar.held'))[0]?.payload)
      .toMatchObject({ jar: 'J-1001', lot: 'LP-77', reasons: ['open-over'] });
    const told = await ownEntries(page, 'jar.told');
    expect(told.map(({ payload }) => [payload['jar'], payload['says']])).toEqual([
      ['J-1001', 'out'],
      ['J-1001', 'opened'],
      ['J-0417', 'off'],
      ['J-1001', 'on'],
      ['J-1001', 'off'],
    ]);
  });
});
