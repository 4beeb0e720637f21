// A tablet that is set for gloves and for the left hand: on every screen whatever is touched is 72 px at least where it stands, nothing is cut off,
// and what is pressed most stands on the side of the hand. `REELWARD_TOUR=gloves` walks the whole tour so.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { drawn } from './support/clock.ts';
import {
  goOn,
  goTo,
  openTablet,
  pad,
  reelLabel,
  resumeRun,
  scanAll,
  steady,
  type Tablet,
} from './support/floor.ts';
import { findings } from './support/look.ts';
import { sizes } from './support/tour/visit.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-3301' });

/** Sets a tablet by its own page, as its people do. */
async function choose(page: Page, ...testIds: readonly string[]): Promise<void> {
  await page.goto(`${demo.url}#/plant/tablet`);
  for (const testId of testIds) {
    await page.getByTestId(testId).click();
    await drawn(page);
    await expect
      .poll(() => page.getByTestId(testId).getAttribute('aria-pressed'), { message: testId })
      .toBe('true');
  }
}

async function openSet(size: (typeof sizes)[number], ...testIds: readonly string[]): Promise<Tablet> {
  const tablet = await openTablet(demo.browser, demo.url, { ...size, badge: 'BADGE-3301' });
  await choose(tablet.page, ...testIds);
  return tablet;
}

/** From the left edge to the middle of something, as a share of the window. */
async function middleOf(page: Page, testId: string): Promise<number> {
  await steady(page);
  const box = await page.getByTestId(testId).boundingBox();
  const width = page.viewportSize()?.width ?? 1;
  return ((box?.x ?? 0) + (box?.width ?? 0) / 2) / width;
}

describe.each(sizes)('at $width × $height', (size) => {
  it('every target is large enough for gloves, and whole', async () => {
    const { page, putAway } = await openSet(size, 'gloves-on', 'hand-left');
    const faults: string[] = [];
    const lookAt = async (where: string) => {
      await drawn(page);
      for (const found of await findings(page, { sentences: false })) faults.push(`${where}: ${found}`);
    };
    await lookAt('this tablet');
    for (const screen of ['line', 'load', 'change', 'stock', 'log', 'plant']) {
      await page.goto(`${demo.url}#/${screen}`);
      await page.getByTestId(`screen-${screen}`).waitFor();
      await lookAt(screen);
    }
    await page.getByTestId('dock-type').click();
    await page.locator('dialog[open]').waitFor();
    await lookAt('type');
    await page.keyboard.press('Escape');
    await page.locator('dialog[open]').waitFor({ state: 'detached' });
    await page.goto(`${demo.url}#/line`);
    await resumeRun(page);
    await page.getByTestId('plus-many').click();
    await page.locator('.pinpad').waitFor();
    await lookAt('pad');
    await pad(page, '1');
    await scanAll(page, 'M2-F-026', reelLabel({ P: '25-0023-311', Q: '4000', '3S': 'R-980601' }));
    await lookAt('refused');
    await goOn(page);
    expect(faults).toEqual([]);
    await putAway();
  });

  it('the left hand has the camera on its side, and the navigation out of its way', async () => {
    const { page, putAway } = await openSet(size, 'hand-left');
    await goTo(page, 'load');
    await expect.poll(() => middleOf(page, 'dock-camera')).toBeLessThan(0.5);
    await expect.poll(() => middleOf(page, 'dock-camera')).toBeLessThan(await middleOf(page, 'dock-type'));
    if (size.width >= 900) await expect.poll(() => middleOf(page, 'nav-line')).toBeGreaterThan(0.9);
    // The camera lies over the screen, not over the navigation, wherever that stands.
    await page.getByTestId('dock-camera').click();
    await page.locator('.camera-overlay').waitFor();
    await drawn(page);
    const isBeside = () =>
      page.evaluate(() => {
        const [over, nav] = ['.camera-overlay', 'nav'].map((part) =>
          document.querySelector(part)?.getBoundingClientRect(),
        );
        if (!over || !nav) return false;
        return over.right <= nav.left + 1 || over.bottom <= nav.top + 1;
      });
    await expect.poll(isBeside).toBe(true);
    await putAway();
  });
});

it('stays as it was set when the app is opened again', () =>
  demo.onTablet(async ({ page }) => {
    await choose(page, 'gloves-on', 'hand-left');
    await page.reload();
    await page.getByTestId('gloves-on').waitFor();
    await expect.poll(() => page.getByTestId('gloves-on').getAttribute('aria-pressed')).toBe('true');
    expect(
      await page.evaluate(() => [
        document.documentElement.hasAttribute('data-gloves'),
        document.documentElement.dataset['hand'],
      ]),
    ).toEqual([true, 'left']);
  }));
