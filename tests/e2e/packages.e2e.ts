// Packages and the moisture tables on a tablet: a package entered by an engineer changes what a floor life rests on, a plant's own value counts
// from then on and the log keeps it, and a lead may look but not change.

import { expect, it } from 'vitest';
import {
  goTo,
  ownEntries,
  reelAct,
  reelLabel,
  scan,
  scanAll,
  steady,
  type Tablet,
  type TabletOptions,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-4401' });

const onTablet = (options: TabletOptions, work: (tablet: Tablet) => Promise<void>) =>
  demo.onTablet(work, options);

// A slot that the demo leaves empty; its setup states level 2a, and its part's package is on the list.
const [slot, feeder, part] = ['M2-F-023', 'F-0112', '22-0603-B'] as const;

it('a plant’s own value stands in for the shipped one, and the log names it beside the verdict', async () => {
  await onTablet({ hash: '#/plant/parts/moisture' }, async ({ page }) => {
    await page.getByTestId('class-C').click();
    await page.getByTestId('level-2a').click();
    const cell = page.getByTestId('cell-30-60');
    await expect.poll(() => cell.getAttribute('aria-label')).toContain('compared with a published copy');
    await expect
      .poll(() => page.getByTestId('cell-25-60').getAttribute('aria-label'))
      .toContain('from memory');
    await cell.click();
    await page.getByTestId('moisture-value').fill('20');
    await page.getByTestId('moisture-take').click();
    await expect.poll(() => cell.textContent()).toContain('20');
    await expect.poll(() => page.getByTestId('moisture-save').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('moisture-edition').fill('J-STD-033D');
    await page.getByTestId('moisture-source').fill('table 7-1, our copy');
    await page.getByTestId('moisture-save').click();
    await expect.poll(() => page.getByTestId('moisture-edition').inputValue()).toBe('J-STD-033D');
    const [ruled] = await ownEntries(page, 'moisture.ruled');
    expect(ruled?.payload['lives']).toEqual([
      { class: 'C', level: '2a', celsius: 30, humidity: 60, days: 20 },
    ]);

    await goTo(page, 'stock');
    const label = reelLabel({ P: part, Q: '4000', '1T': 'LT-9100-E', '3S': 'R-970102' });
    await scan(page, label);
    await page.getByTestId('put-new').click();
    await scan(page, 'A2-S10');
    const life = page.getByTestId('life-R-970102');
    await expect.poll(() => life.textContent()).toContain('480\u00a0h\u00a000 of floor life');
    await steady(page);
    await reelAct(page, 'air', 'R-970102');
    await expect
      .poll(() => page.getByTestId('air-grounds').first().textContent())
      .toContain('J-STD-033D, the plant’s own copy');
    await page.getByTestId('air-bake').click();
    await expect.poll(() => page.getByTestId('air-bake-row').first().textContent()).toContain('h at 125 °C');
  });
});

it('a package is entered, and what a reel’s floor life rests on follows it', async () => {
  await onTablet({ hash: '#/plant/parts/packages' }, async ({ page }) => {
    const row = page.getByTestId(`package-${part}`);
    await expect.poll(() => row.textContent()).toContain('class C');
    await page.getByTestId(`package-edit-${part}`).click();
    await page.getByTestId('family-bga').click();
    await page.getByTestId('package-pins').fill('64');
    await page.getByTestId('package-thickness').fill('1.4');
    await page.getByTestId('package-length').fill('23');
    await expect.poll(() => page.getByTestId('package-save').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('package-width').fill('23');
    await page.getByTestId('package-save').click();
    await expect.poll(() => row.textContent()).toContain('class A');
    const [told] = await ownEntries(page, 'part.described');
    expect(told?.payload).toMatchObject({ part, family: 'bga', pins: 64, bodyMm: 1.4, bodyXMm: 23 });

    await goTo(page, 'load');
    const label = reelLabel({ P: part, Q: '4000', '1T': 'LT-9100-E', '3S': 'R-970101' });
    expect((await scanAll(page, slot, feeder, label)).verdict).toBe('accepted');
    const [judged] = await ownEntries(page, 'reel.life-judged');
    expect(judged?.payload).toMatchObject({ reel: 'R-970101', packageClass: 'A', restsOn: 'copy' });
  });
});

it('a lead sees packages and tables and cannot change them', async () => {
  await onTablet({ badge: 'BADGE-3301', hash: '#/plant/parts/moisture' }, async ({ page }) => {
    await expect.poll(() => page.getByTestId('cell-30-60').isDisabled()).toBe(true);
    await expect.poll(() => page.getByTestId('moisture-save').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('parts-packages').click();
    await expect
      .poll(() => page.getByTestId(`package-edit-${part}`).getAttribute('aria-disabled'))
      .toBe('true');
  });
});
