// Nothing is told by colour alone. States that stand beside each other differ by words, a sign or a form, or by a contrast of 3 to 1, for people
// with any of three kinds of colour blindness and in grey; what tells them apart stands out from its ground (WCAG 2.2: 1.4.1, 1.4.11). And
// the word of a verdict is read from two metres away.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { drawn } from './support/clock.ts';
import { goOn, goTo, openTablet, reelLabel, scanAll } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';
import { contrast, type Rgb, type View, views } from './support/views.ts';

const demo = useDemo();

/** How a state looks. */
interface Look {
  /** What it is, as its page names it. */
  readonly state: string;
  /** Its words, signs and forms: all that is no colour. */
  readonly form: string;
  /** The colour of what tells it apart, and the ground that it lies on. */
  readonly mark: Rgb;
  readonly ground: Rgb;
}

interface Where {
  /** Each thing that has a state. */
  readonly each: string;
  /** The attribute that names its state; its classes where there is none. */
  readonly named?: string;
  /** What in it tells the state; the whole of it where it is the sign. */
  readonly by?: string;
}

/** Reads how the states that are on the screen look, each once. */
async function looks(page: Page, { each, named, by }: Where): Promise<readonly Look[]> {
  await page.locator(each).first().waitFor();
  await drawn(page);
  const found = await page.locator(each).evaluateAll(
    (elements, [attribute, within]) => {
      const pen = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
      if (!pen) throw new TypeError('no canvas');
      const over = (colours: readonly string[]) => {
        pen.fillStyle = '#fff';
        pen.fillRect(0, 0, 1, 1);
        for (const colour of colours) {
          pen.fillStyle = colour;
          pen.fillRect(0, 0, 1, 1);
        }
        const [red = 0, green = 0, blue = 0] = pen.getImageData(0, 0, 1, 1).data;
        return [red, green, blue] as const;
      };
      const grounds = (element: Element | null): string[] =>
        element === null
          ? []
          : [...grounds(element.parentElement), getComputedStyle(element).backgroundColor];
      return elements.map((element) => {
        const sign = within === '' ? element : (element.querySelector(within) ?? element);
        const style = getComputedStyle(sign);
        const { borderTopStyle, borderTopWidth, borderBottomStyle, borderBottomWidth, borderRadius } = style;
        const hasText = (sign.textContent ?? '').trim() !== '' || sign.querySelector('svg, path') !== null;
        const edge = borderBottomWidth === '0px' ? style.borderTopColor : style.borderBottomColor;
        const heights = Math.round(
          (10 * sign.getBoundingClientRect().height) / (sign.parentElement?.clientHeight || 1),
        );
        return {
          state: attribute === '' ? element.className.toString() : (element.getAttribute(attribute) ?? ''),
          form: [
            (sign.textContent ?? '').replace(/[\d\s.,:±]+/g, ' '),
            [...sign.querySelectorAll('path, circle')].map((path) => path.getAttribute('d') ?? path.tagName),
            hasText
              ? ''
              : [borderTopStyle, borderTopWidth, borderBottomStyle, borderBottomWidth, borderRadius, heights],
          ].join('|'),
          mark: over(hasText ? [style.color] : [edge]),
          ground: over(hasText ? grounds(sign) : grounds(sign.parentElement)),
        };
      });
    },
    [named ?? '', by ?? ''] as const,
  );
  return [...new Map(found.map((look) => [look.state, look])).values()];
}

/** What cannot be told apart, in plain lines. */
function alike(all: readonly Look[]): readonly string[] {
  return (Object.keys(views) as View[]).flatMap((view) => [
    ...all
      .filter(({ mark, ground }) => contrast(mark, ground, view) < 3)
      .map(
        ({ state, mark, ground }) =>
          `${view}: “${state}” stands out by ${contrast(mark, ground, view).toFixed(1)}`,
      ),
    ...all.flatMap((one, at) =>
      all
        .slice(at + 1)
        .filter((other) => one.form === other.form && contrast(one.mark, other.mark, view) < 3)
        .map((other) => `${view}: “${one.state}” and “${other.state}” differ by colour alone`),
    ),
  ]);
}

const themes = ['light', 'dark'] as const;
type Theme = (typeof themes)[number];

/** Looks in both themes; how each state looks there. */
async function toldApart(page: Page, where: Where): Promise<Readonly<Record<Theme, readonly Look[]>>> {
  const all: Record<Theme, readonly Look[]> = { light: [], dark: [] };
  for (const colorScheme of themes) {
    await page.emulateMedia({ colorScheme });
    await page.waitForFunction((theme) => document.documentElement.dataset['theme'] === theme, colorScheme);
    const seen = await looks(page, where);
    expect(alike(seen), `${where.each}, ${colorScheme}`).toEqual([]);
    all[colorScheme] = seen;
  }
  return all;
}

/** Looks in both themes; how many states there are. */
async function statesApart(page: Page, where: Where): Promise<number> {
  return (await toldApart(page, where)).dark.length;
}

const label = (part: string, reel: string, quantity = true) =>
  reelLabel({ P: part, ...(quantity ? { Q: '4000' } : {}), '1T': 'LT-9800', '3S': reel });

/** A 10.1 inch screen of 1280 × 800, mm. */
const PX_MM = (10.1 * 25.4) / Math.hypot(1280, 800);
/** From the eye to the tablet, mm. */
const AWAY_MM = 2000;

/** Minutes of arc of the capitals of a text, seen from there. */
async function arcOf(page: Page, text: string): Promise<number> {
  const px = await page.locator(text).evaluate((element) => {
    const pen = document.createElement('canvas').getContext('2d');
    if (!pen) throw new TypeError('no canvas');
    const { fontWeight, fontSize, fontFamily } = getComputedStyle(element);
    pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
    return pen.measureText('H').actualBoundingBoxAscent;
  });
  return (Math.atan((px * PX_MM) / AWAY_MM) * 180 * 60) / Math.PI;
}

it('tells verdicts apart, and has their word read from two metres away', () =>
  demo.onTablet(async ({ page }) => {
    const seen: Record<Theme, Look[]> = { light: [], dark: [] };
    const words: Record<string, number> = {};
    const lookAt = async (verdict: string, word: string) => {
      const told = await toldApart(page, { each: '.verdict', named: 'data-verdict', by: '.shape' });
      for (const theme of themes) seen[theme].push(...told[theme]);
      words[verdict] = await arcOf(page, word);
      await goOn(page);
      const clear = page.getByTestId('dock-clear');
      if (await clear.isVisible()) await clear.click();
    };
    await scanAll(page, 'M2-F-026', label('25-0023-311', 'R-980401'));
    await lookAt('refused', '.verdict .kind');
    await scanAll(page, 'M2-F-026', 'F-0113', label('25-0023-113', 'R-980402', false));
    await lookAt('held', '.verdict .kind');
    await scanAll(page, 'M2-F-026', 'F-0113', label('25-0023-113', 'R-980403'));
    await lookAt('accepted', '.verdict h1');
    for (const theme of themes) {
      expect(seen[theme].map(({ state }) => state)).toEqual(['refused', 'held', 'accepted']);
      expect(alike(seen[theme]), theme).toEqual([]);
    }
    // ISO 9241-3: 20 to 22 minutes of arc preferred, 16 at least; the same in NUREG-0700 rev. 2, 1.3.1-4, which sets 45 as the most.
    for (const [verdict, arc] of Object.entries(words)) {
      expect(arc, verdict).toBeGreaterThanOrEqual(20);
      expect(arc, verdict).toBeLessThan(45);
    }
  }));

it('tells tapes, run-outs, slots, moves, steps and lines apart', async () => {
  const tablet = await openTablet(demo.browser, demo.url, { badge: 'BADGE-3301' });
  const { page } = tablet;
  await goTo(page, 'line');
  expect(
    await statesApart(page, { each: '.slotrow', named: 'data-level', by: '.who .mark' }),
  ).toBeGreaterThan(1);
  await goTo(page, 'load');
  expect(await statesApart(page, { each: '.plan .cells .cell' })).toBeGreaterThan(2);
  await goTo(page, 'change');
  await page.getByTestId('plan-greenhouse-node-top-F').click();
  await page.getByTestId('tab-feeders').click();
  expect(await statesApart(page, { each: '.handlings li', named: 'data-act', by: '.mark' })).toBeGreaterThan(
    2,
  );
  await page.getByTestId('tab-checklist').click();
  await page.getByTestId('checklist-open').click();
  await page.getByTestId('tick-documents').click();
  await page.locator('.step.done').waitFor();
  expect(await statesApart(page, { each: '.step', named: 'data-state', by: '.mark' })).toBeGreaterThan(2);
  await page.goto(`${demo.url}#/lines`);
  expect(await statesApart(page, { each: '.line-row', named: 'data-state', by: '.st' })).toBeGreaterThan(0);
  await tablet.putAway();
});
