// A verdict against a reel is seen whole where it is met: what is wrong, the characters that differ, what to do and the caution stand in view
// without scrolling, at every size of tablet, in a long language, in one from right to left, and with every word at its longest.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { drawn } from './support/clock.ts';
import { labelOf, openTablet, scanAll } from './support/floor.ts';
import { pseudoSpeeches, sizes, speak } from './support/tour/visit.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const speeches = [
  { name: 'English', language: 'en', pseudo: null },
  { name: 'German', language: 'de', pseudo: null },
  { name: 'Arabic', language: 'ar', pseudo: null },
  ...pseudoSpeeches.filter(({ pseudo }) => pseudo === 'long'),
] as const;

/** What of these is drawn and not wholly in view: outside the verdict's own window, or under its foot. */
async function unseen(page: Page, parts: readonly string[]): Promise<readonly string[]> {
  await drawn(page);
  return page.locator('.verdict').evaluate((verdict, selectors) => {
    const area = verdict.getBoundingClientRect();
    const foot = verdict.querySelector('.foot');
    const footTop = foot?.getBoundingClientRect().top ?? area.bottom;
    return selectors.flatMap((selector) => {
      const found = [...verdict.querySelectorAll(selector)];
      if (found.length === 0) return [`no ${selector}`];
      return found.flatMap((element) => {
        const { left, top, right, bottom, height } = element.getBoundingClientRect();
        if (height === 0) return [];
        const end = foot?.contains(element) ? area.bottom : Math.min(area.bottom, footTop);
        const isIn =
          top >= area.top - 1 && bottom <= end + 1 && left >= area.left - 1 && right <= area.right + 1;
        return isIn ? [] : [`${selector}: ${Math.round(top)} to ${Math.round(bottom)} of ${Math.round(end)}`];
      });
    });
  }, parts);
}

describe.each(sizes)('at $width × $height', ({ width, height }) => {
  it('shows a refusal with two part numbers that look alike', async () => {
    const tablet = await openTablet(demo.browser, demo.url, { width, height });
    const { page } = tablet;
    await scanAll(page, 'M2-F-026', labelOf('25-0023-311', 'R-980501'));
    for (const speech of speeches) {
      await speak(page, speech);
      const parts = [
        '.head h1',
        '.head p',
        '.chars mark',
        '[data-testid=mix-up]',
        '.foot button',
        '.foot .mind',
      ];
      await expect.poll(() => unseen(page, parts), { message: speech.name }).toEqual([]);
    }
    await tablet.putAway();
  });

  it('shows what a reel is held for', async () => {
    const tablet = await openTablet(demo.browser, demo.url, { width, height });
    const { page } = tablet;
    await scanAll(page, 'M2-F-026', 'F-0113', labelOf('25-0023-113', 'R-980502', null));
    for (const speech of speeches) {
      await speak(page, speech);
      const parts = ['.kind', 'h1', '.facts', '.say', '.row button:not(:last-child)'];
      await expect.poll(() => unseen(page, parts), { message: speech.name }).toEqual([]);
    }
    await tablet.putAway();
  });
});
