// Can states that stand beside each other be told apart without colour? Read off the page: words, signs and forms first, then the contrast of
// what tells them, for people with any of three kinds of colour blindness and in grey.

import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { drawn } from './clock.ts';
import { contrast, type Rgb, type View, views } from './views.ts';

/** How a state looks. */
export interface Look {
  /** What it is, as its page names it. */
  readonly state: string;
  /** Its words, signs and forms: all that is no colour. */
  readonly form: string;
  /** The colour of what tells it apart, and the ground that it lies on. */
  readonly mark: Rgb;
  readonly ground: Rgb;
}

/** Where states are looked for. */
export interface Where {
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
export function alike(all: readonly Look[]): readonly string[] {
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

/** Both are looked at. */
export const themes = ['light', 'dark'] as const;
/** One of them. */
export type Theme = (typeof themes)[number];

/** Puts a page into a theme. */
export async function inTheme(page: Page, colorScheme: Theme): Promise<void> {
  await page.emulateMedia({ colorScheme });
  await page.waitForFunction((theme) => document.documentElement.dataset['theme'] === theme, colorScheme);
  await drawn(page);
}

/** Looks in both themes; how each state looks there. */
export async function toldApart(page: Page, where: Where): Promise<Readonly<Record<Theme, readonly Look[]>>> {
  const all: Record<Theme, readonly Look[]> = { light: [], dark: [] };
  for (const theme of themes) {
    await inTheme(page, theme);
    const seen = await looks(page, where);
    expect(alike(seen), `${where.each}, ${theme}`).toEqual([]);
    all[theme] = seen;
  }
  return all;
}

/** Looks in both themes; how many states there are. */
export async function statesApart(page: Page, where: Where): Promise<number> {
  return (await toldApart(page, where)).dark.length;
}
