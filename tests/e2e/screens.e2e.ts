// What holds on every screen: nothing that axe-core calls serious or critical (its rules follow WCAG 2), targets for gloved
// fingers, nothing wider than a phone, no word of the other language, no call to a third party and no breach of the page's policy.

import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { waitReady } from './support/browser.ts';
import { coveredBy } from './support/finger.ts';
import { goTo, openTablet, reelLabel, scanAll } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';
import { walkEverywhere } from './support/walk.ts';

const demo = useDemo();
let axe: string;

beforeAll(async () => {
  const root = path.resolve(import.meta.dirname, '../..');
  axe = await readFile(path.join(root, 'node_modules/axe-core/axe.min.js'), 'utf8');
});

interface AxeScope {
  readonly axe: {
    run: (options: unknown) => Promise<{
      violations: { id: string; impact: string; nodes: { html: string; failureSummary: string }[] }[];
    }>;
  };
}

/** Serious and critical findings of axe-core; `rules` narrows to some. */
async function findings(page: Page, rules: readonly string[] | null): Promise<readonly string[]> {
  const isThere = await page.evaluate(() => 'axe' in globalThis);
  if (!isThere) await page.evaluate(axe);
  return page.evaluate(async (only) => {
    const scope = globalThis as unknown as AxeScope;
    const { violations } = await scope.axe.run({
      resultTypes: ['violations'],
      ...(only ? { runOnly: only } : {}),
    });
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }) =>
        nodes
          .slice(0, 3)
          .map((node) => `${id}: ${node.html.slice(0, 120)} ${node.failureSummary.split('\n')[1]?.trim()}`),
      );
  }, rules);
}

/** Targets lower than a gloved finger needs (48 px), and how far the page is wider than the screen. */
async function misfits(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const dialog = [...document.querySelectorAll('dialog[open]')].at(-1);
    for (const element of (dialog ?? document).querySelectorAll<HTMLElement>(
      'button, a[href], input, select, textarea, summary, [role=button]',
    )) {
      const isChoice = element.matches('input[type=checkbox], input[type=radio], input[type=file]');
      const target = isChoice ? (element.closest('label') ?? element) : element;
      const { width, height } = target.getBoundingClientRect();
      if (width === 0 || height === 0 || element.matches('[data-scan-sink]')) continue;
      if (getComputedStyle(target).visibility === 'hidden') continue;
      if (height < 47.5)
        found.push(`${Math.round(height)} px high: ${target.outerHTML.replace(/\s+/g, ' ').slice(0, 140)}`);
    }
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth > clientWidth) found.push(`${scrollWidth - clientWidth} px too wide`);
    return found;
  });
}

const looks = [
  { width: 1280, height: 800, dark: false, rules: null },
  { width: 390, height: 844, dark: true, rules: null },
  // What depends on the theme alone; the other rules have been asked at this width.
  { width: 1280, height: 800, dark: true, rules: ['color-contrast'] },
  { width: 390, height: 844, dark: false, rules: ['color-contrast'] },
] as const;

describe('every screen, page, verdict and dialog', () => {
  it.each(looks)(
    'at $width × $height, dark: $dark, is fit for eyes and fingers',
    async ({ rules, ...look }) => {
      const tablet = await openTablet(demo.browser, demo.url, { ...look, badge: 'BADGE-4401' });
      const wrong: string[] = [];
      let seen = 0;
      await walkEverywhere(tablet.page, demo.url, async (name) => {
        seen += 1;
        for (const each of [...(await findings(tablet.page, rules)), ...(await misfits(tablet.page))])
          wrong.push(`${name}: ${each}`);
      });
      expect(wrong).toEqual([]);
      expect(seen).toBeGreaterThan(25);
      await tablet.putAway();
    },
  );
});

describe('another screen', () => {
  it('begins at its top, however far down the last one was read', async () => {
    const { page, putAway } = await openTablet(demo.browser, demo.url, { width: 800, height: 1280 });
    const main = page.locator('main');
    const scrolled = () => main.evaluate((element) => element.scrollTop);
    await goTo(page, 'load');
    await page.getByRole('button', { name: /^M3-R-031:/ }).scrollIntoViewIfNeeded();
    expect(await scrolled()).toBeGreaterThan(100);
    await goTo(page, 'line');
    await page.getByTestId('timeline').waitFor();
    expect(await scrolled()).toBe(0);
    await putAway();
  });
});

describe('a verdict', () => {
  it('stands in view however far down the screen behind it was read', async () => {
    const { page, putAway } = await openTablet(demo.browser, demo.url, { width: 800, height: 1280 });
    await goTo(page, 'load');
    await page.getByRole('button', { name: /^M3-R-031:/ }).scrollIntoViewIfNeeded();
    await scanAll(page, 'M2-F-022', reelLabel({ P: '10-0603-101', Q: '4000', '3S': 'R-976002' }));
    expect(await coveredBy(page.getByTestId('verdict').locator('h1'))).toBeNull();
    expect(await coveredBy(page.getByTestId('verdict-go-on'))).toBeNull();
    await putAway();
  });
});

describe('the language', () => {
  it('changes to Spanish and back, and is still there after a reload', async () => {
    const tablet = await openTablet(demo.browser, demo.url);
    const { page } = tablet;
    await page.goto(`${demo.url}#/plant/tablet`);
    await page.getByTestId('language-es').click();
    await expect.poll(() => page.getByTestId('nav-load').textContent()).toContain('Carga');
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('es');
    await page.reload();
    await waitReady(page);
    await goTo(page, 'load');
    await expect
      .poll(() => page.getByTestId('load-progress').textContent())
      .toBe('147 de 150 posiciones cargadas');
    await page.goto(`${demo.url}#/plant/tablet`);
    await page.getByTestId('language-en').click();
    await expect.poll(() => page.getByTestId('nav-load').textContent()).toContain('Load');
    await tablet.putAway();
  });
});
