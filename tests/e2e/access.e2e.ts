// Without colours and without motion: verdicts by contrast, words and outline, and stillness for those who asked for it.
// Contrast: WCAG 2.2, definition of contrast ratio; 7:1 is its 1.4.6 (AAA), 3:1 for outlines its 1.4.11.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { inTheme, themes } from './support/apart.ts';
import { clearDock, goOn, goTo, labelOf, reelLabel, scanAll, signIn } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const place = { slot: 'M2-F-026', feeder: 'F-0113', part: '25-0023-113' } as const;

/** The least contrast of the texts of the verdict that is shown, and that of its shape; `outline`: the shape's own lines. */
function measured(page: Page) {
  return page.getByTestId('verdict').evaluate((band) => {
    const pen = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
    if (!pen) throw new TypeError('no canvas');
    const channels = (css: string) => {
      pen.clearRect(0, 0, 1, 1);
      pen.fillStyle = css;
      pen.fillRect(0, 0, 1, 1);
      return [...pen.getImageData(0, 0, 1, 1).data];
    };
    const luminance = ([r = 0, g = 0, b = 0]: readonly number[]) => {
      const [red, green, blue] = [r, g, b].map((each) =>
        each / 255 <= 0.04045 ? each / 255 / 12.92 : ((each / 255 + 0.055) / 1.055) ** 2.4,
      ) as [number, number, number];
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const ground = (element: Element): number => {
      for (let at: Element | null = element; at; at = at.parentElement) {
        const colour = channels(getComputedStyle(at).backgroundColor);
        if ((colour[3] ?? 0) === 255) return luminance(colour);
      }
      return 1;
    };
    const ratio = (element: Element) => {
      const [light, dark] = [luminance(channels(getComputedStyle(element).color)), ground(element)].sort(
        (a, b) => b - a,
      ) as [number, number];
      return (light + 0.05) / (dark + 0.05);
    };
    const saying = [...band.querySelectorAll('h1, p, span, b, mark, button')].filter(
      (each) =>
        [...each.childNodes].some(({ nodeType, textContent }) => nodeType === 3 && textContent?.trim()) &&
        each.getClientRects().length > 0,
    );
    const shape = band.querySelector('.shape');
    return {
      texts: saying.map((each) => [Number(ratio(each).toFixed(2)), each.textContent] as const),
      shape: shape ? ratio(shape) : 0,
      outline: shape?.firstElementChild?.innerHTML ?? '',
      title: band.querySelector('h1')?.textContent ?? '',
    };
  });
}

it('tells a verdict by words and outline, at 7 to 1, in both themes', () =>
  demo.onTablet(async ({ page }) => {
    const seen: { readonly outline: string; readonly title: string }[] = [];
    const lookAtBoth = async () => {
      for (const theme of themes) {
        await inTheme(page, theme);
        const { texts, shape, outline, title } = await measured(page);
        expect(texts.length).toBeGreaterThan(3);
        expect(texts.filter(([contrast]) => contrast < 7)).toEqual([]);
        expect(shape).toBeGreaterThanOrEqual(3);
        if (theme === 'dark') seen.push({ outline, title });
      }
      await goOn(page);
    };
    await scanAll(page, place.slot, labelOf('25-0023-311', 'R-980110'));
    await lookAtBoth();
    await page.getByTestId('dock-clear').click();
    await scanAll(page, place.slot, place.feeder, reelLabel({ P: place.part, '3S': 'R-980111' }));
    await lookAtBoth();
    await clearDock(page);
    await scanAll(page, place.slot, place.feeder, labelOf(place.part, 'R-980112'));
    await lookAtBoth();
    expect(new Set(seen.map(({ outline }) => outline)).size).toBe(3);
    expect(new Set(seen.map(({ title }) => title)).size).toBe(3);
  }));

it('moves nothing for a person who asked for less motion', () =>
  demo.onTablet(async ({ page }) => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    const moving = () =>
      page.evaluate(
        () =>
          [...document.querySelectorAll('*')].filter((each) => {
            const { animationDuration, transitionDuration } = getComputedStyle(each);
            return [animationDuration, transitionDuration].some((list) =>
              list.split(',').some((time) => Number.parseFloat(time) * (time.includes('ms') ? 1 : 1000) > 1),
            );
          }).length,
      );
    expect(await moving()).toBe(0);
    await scanAll(page, place.slot, labelOf('25-0023-311', 'R-980120'));
    expect(await moving()).toBe(0);
    await goOn(page);
    // The tape that runs while an engineer's sheet is read moves for everybody else.
    await signIn(page, 'BADGE-4401');
    await goTo(page, 'plant');
    await page.getByTestId('tile-sheet').click();
    await page.getByTestId('sheet-paste').waitFor();
    await page.evaluate(() => {
      const [reading, running] = [document.createElement('div'), document.createElement('i')];
      [reading.className, running.className] = ['reading', 'running'];
      reading.append(running);
      document.body.append(reading);
    });
    expect(await moving()).toBe(0);
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    expect(await moving()).toBeGreaterThan(0);
  }));
