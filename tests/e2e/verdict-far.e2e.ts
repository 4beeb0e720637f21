// The word of a verdict is read from two metres away, whichever way the tablet stands and whatever it speaks; on a phone, which is held in the
// hand, it is whole. Seen without colour it is the same word in the same shape (tests/e2e/colours.e2e.ts).

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { languages } from '../../src/app/words/words.ts';
import { drawn } from './support/clock.ts';
import { goOnAfresh, labelOf, scanAll } from './support/floor.ts';
import { findings } from './support/look.ts';
import { sizes, speak } from './support/tour/visit.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

/** A 10.1 inch screen of 1280 × 800, mm. */
const PX_MM = (10.1 * 25.4) / Math.hypot(1280, 800);
/** From the eye to the tablet, mm. */
const AWAY_MM = 2000;
// ISO 9241-3: 20 to 22 minutes of arc preferred, 16 at least; the same in NUREG-0700 rev. 2, 1.3.1-4, which sets 45 as the most.
const LEAST_ARC = 16;
const WANTED_ARC = 20;
const MOST_ARC = 45;

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

/** Where its word is too small or too large, or anything of it is cut, broken or out of reach, in plain lines. */
async function faultsOf(page: Page, verdict: string): Promise<readonly string[]> {
  const word = `.verdict ${verdict === 'accepted' || verdict === 'spliced' ? 'h1' : '.kind'}`;
  const faults: string[] = [];
  for (const size of sizes) {
    await page.setViewportSize(size);
    for (const language of languages) {
      const where = `${verdict}, ${language}, ${size.width}`;
      await speak(page, { language, pseudo: null });
      await drawn(page);
      faults.push(
        ...(await findings(page, { sentences: false, pictures: false })).map((each) => `${where}: ${each}`),
      );
      if (size.width < 700) continue;
      const arc = await arcOf(page, word);
      const least = language === 'en' ? WANTED_ARC : LEAST_ARC;
      if (arc < least || arc >= MOST_ARC) faults.push(`${where}: ${arc.toFixed(1)} minutes of arc`);
    }
  }
  await speak(page, { language: 'en', pseudo: null });
  await page.setViewportSize(sizes[0]);
  return faults;
}

it(
  'is large enough in every language, upright and on its side, and whole on a phone',
  { timeout: 300_000 },
  () =>
    demo.onTablet(async ({ page }) => {
      const faults: string[] = [];
      const lookAt = async (verdict: string) => {
        faults.push(...(await faultsOf(page, verdict)));
        await goOnAfresh(page);
      };
      await scanAll(page, 'M2-F-026', labelOf('25-0023-311', 'R-980411'));
      await lookAt('refused');
      await scanAll(page, 'M2-F-026', 'F-0113', labelOf('25-0023-113', 'R-980412', null));
      await lookAt('held');
      await scanAll(page, 'M2-F-026', 'F-0113', labelOf('25-0023-113', 'R-980413'));
      await lookAt('accepted');
      await scanAll(page, 'M2-F-026', labelOf('25-0023-113', 'R-980414'));
      await lookAt('spliced');
      expect(faults).toEqual([]);
    }),
);
