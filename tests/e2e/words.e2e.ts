// Words are fetched for the language in use and for the parts in use, and are waited for; a tablet that speaks Spanish never asks
// for English, and changes its language without a network once its offline copy is there.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { waitReady } from './support/browser.ts';
import { goTo, signIn } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ offlineCopy: true });

/** Scripts that the page itself asked for, by a sentence in them. */
async function fetchedWith(page: Page, sentence: string): Promise<number> {
  const urls = await page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .map(({ name }) => name)
      .filter((name) => name.endsWith('.js')),
  );
  const texts = await Promise.all(urls.map(async (url) => (await page.request.get(url)).text()));
  return texts.filter((text) => text.includes(sentence)).length;
}

async function chooseSpanish(page: Page): Promise<void> {
  await page.goto(`${demo.url}#/plant/tablet`);
  await page.getByTestId('language-es').click();
  await expect.poll(() => page.evaluate(() => document.documentElement.lang)).toBe('es');
}

describe('the words of a tablet', () => {
  it('come in its language alone, from the first look on', () =>
    demo.onTablet(async ({ page }) => {
      await goTo(page, 'load');
      expect(await fetchedWith(page, 'Descargue primero')).toBe(0);
      await chooseSpanish(page);
      await page.reload();
      await waitReady(page);
      await goTo(page, 'load');
      await goTo(page, 'stock');
      await goTo(page, 'change');
      expect(await fetchedWith(page, 'Unload that reel first')).toBe(0);
      expect(await fetchedWith(page, 'Descargue primero')).toBe(1);
    }));

  it('change without a network, on a screen that was never seen in the other language', () =>
    demo.onTablet(async ({ page }) => {
      await expect
        .poll(() => page.getByTestId('offline').getAttribute('data-state'), { timeout: 60_000 })
        .toBe('ready');
      await page.context().setOffline(true);
      await chooseSpanish(page);
      await goTo(page, 'log');
      await expect.poll(() => page.getByTestId('nav-log').textContent()).toContain('Registro');
      await page.reload();
      await waitReady(page);
      await expect.poll(() => page.evaluate(() => document.documentElement.lang)).toBe('es');
      await page.context().setOffline(false);
    }));

  it('are those that a person chose once, at every sign-in; the tablet’s own where nobody is signed in', () =>
    demo.onTablet(async ({ page }) => {
      const spoken = () => page.evaluate(() => document.documentElement.lang);
      await page.goto(demo.url);
      await waitReady(page);
      await signIn(page, 'BADGE-3301');
      await page.getByTestId('sign-in').click();
      await page.getByRole('button', { name: 'Español' }).click();
      await expect.poll(spoken).toBe('es');
      await page.getByRole('button', { name: 'Salir', exact: true }).click();
      await expect.poll(spoken).toBe('en');
      await signIn(page, 'BADGE-3301');
      await expect.poll(spoken).toBe('es');
      await page.reload();
      await waitReady(page);
      await expect.poll(() => spoken()).toBe('es');
    }));

  it('that are out of reach leave the language in use, and say so', async () => {
    const context = await demo.browser.newContext({ serviceWorkers: 'block' });
    await demo.onTablet(
      async ({ page }) => {
        await page.goto(`${demo.url}#/plant/tablet`);
        await page.getByTestId('language-es').waitFor();
        await context.setOffline(true);
        await page.getByTestId('language-es').click();
        await page.getByText('That language is not on this tablet yet.').waitFor();
        expect(await page.evaluate(() => document.documentElement.lang)).toBe('en');
        await expect.poll(() => page.getByTestId('language-en').getAttribute('aria-pressed')).toBe('true');
        await context.setOffline(false);
        await chooseSpanish(page);
      },
      { context },
    );
    await context.close();
  });

  it('that cannot be fetched at all are missed in the language in use and in English, with a way out', async () => {
    const context = await demo.browser.newContext({ serviceWorkers: 'block' });
    await context.addInitScript(() => localStorage.setItem('reelward-language', 'es'));
    const words = /\/(pack|words)-[^/]*\.js$/;
    await context.route(words, (route) => route.abort());
    const page = await context.newPage();
    page.setDefaultTimeout(60_000);
    await page.goto(demo.url);
    const told = page.getByTestId('no-words');
    await expect.poll(() => told.textContent()).toContain('could not be loaded');
    await expect.poll(() => told.textContent()).toContain('No se pudo cargar');
    await context.unroute(words);
    await told.getByRole('button').click();
    await waitReady(page);
    await expect.poll(() => page.getByTestId('nav-load').textContent()).toContain('Load');
    await context.close();
  });
});
