// The passing message: it covers nothing at any size, and goes with its moment, so that "Take back" never stands beside another act.

import type { Locator } from 'playwright-core';
import { expect, it } from 'vitest';
import { entryId } from '../../shared/log/entry.ts';
import {
  goTo,
  keepRunning,
  ownEntries,
  reelLabel,
  scan,
  scanAll,
  steady,
  type Tablet,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const counting = (work: (tablet: Tablet) => Promise<void>, width = 1280, height = 800): Promise<void> =>
  demo.onTablet(
    async (tablet) => {
      await keepRunning(tablet.page);
      await work(tablet);
    },
    { width, height },
  );

/** Counts a panel, whose notice offers to take it back. */
async function count({ page }: Tablet): Promise<Locator> {
  await steady(page);
  await page.getByTestId('plus-one').click();
  const notice = page.getByTestId('notice');
  await notice.getByRole('button', { name: 'Take back' }).waitFor();
  return notice;
}

it.each([
  [1280, 800],
  [800, 1280],
  [390, 844],
])('covers neither the screen nor the dock at %i × %i', async (width, height) => {
  await counting(
    async (tablet) => {
      const notice = await count(tablet);
      for (const part of ['dock', 'screen-line', 'nav-line']) {
        // Both boxes in one look: what makes room for the message moves.
        const apart = () =>
          notice.evaluate((message, testId) => {
            const box = message.getBoundingClientRect();
            const other = document.querySelector(`[data-testid=${testId}]`)?.getBoundingClientRect();
            if (other === undefined) return -1;
            return Math.max(
              other.left - box.right,
              box.left - other.right,
              other.top - box.bottom,
              box.top - other.bottom,
            );
          }, part);
        await expect.poll(apart, { message: part }).toBeGreaterThanOrEqual(0);
      }
      await notice.getByRole('button').click();
      await notice.waitFor({ state: 'detached' });
      const [counted] = await ownEntries(tablet.page, 'panels.counted');
      await expect.poll(() => ownEntries(tablet.page, 'entry.corrected')).toHaveLength(1);
      const [taken] = await ownEntries(tablet.page, 'entry.corrected');
      expect(taken?.payload['of']).toBe(counted && entryId(counted));
    },
    width,
    height,
  );
});

it('goes with the next scan, the next act and the next screen', async () => {
  await counting(async (tablet) => {
    const { page } = tablet;
    const scanned = await count(tablet);
    await scan(page, 'M1-F-001');
    await scanned.waitFor({ state: 'detached' });
    await page.getByTestId('dock-clear').click();
    const acted = await count(tablet);
    await page.getByTestId('run-stop').click();
    await page.getByTestId('stop-jam').click();
    await acted.waitFor({ state: 'detached' });
    await page.getByTestId('run-resume').click();
    const left = await count(tablet);
    await goTo(page, 'load');
    await left.waitFor({ state: 'detached' });
  });
});

it('is never there beside a verdict', async () => {
  await counting(async (tablet) => {
    const { page } = tablet;
    const notice = await count(tablet);
    const label = reelLabel({ P: '25-0023-113', Q: '3000', '3S': 'R-970001' });
    expect((await scanAll(page, 'M1-F-001', 'F-0999', label)).verdict).toBe('refused');
    expect(await notice.count()).toBe(0);
  });
});
