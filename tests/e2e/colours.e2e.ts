// Nothing is told by colour alone. States that stand beside each other differ by words, a sign or a form, or by a contrast of 3 to 1, for people
// with any of three kinds of colour blindness and in grey; what tells them apart stands out from its ground (WCAG 2.2: 1.4.1, 1.4.11).

import { expect, it } from 'vitest';
import { alike, type Look, statesApart, type Theme, themes, toldApart } from './support/apart.ts';
import { goOnAfresh, goTo, labelOf, openTablet, scanAll } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

it('tells verdicts apart', () =>
  demo.onTablet(async ({ page }) => {
    const seen: Record<Theme, Look[]> = { light: [], dark: [] };
    const lookAt = async () => {
      const told = await toldApart(page, { each: '.verdict', named: 'data-verdict', by: '.shape' });
      for (const theme of themes) seen[theme].push(...told[theme]);
      await goOnAfresh(page);
    };
    await scanAll(page, 'M2-F-026', labelOf('25-0023-311', 'R-980401'));
    await lookAt();
    await scanAll(page, 'M2-F-026', 'F-0113', labelOf('25-0023-113', 'R-980402', null));
    await lookAt();
    await scanAll(page, 'M2-F-026', 'F-0113', labelOf('25-0023-113', 'R-980403'));
    await lookAt();
    for (const theme of themes) {
      expect(seen[theme].map(({ state }) => state)).toEqual(['refused', 'held', 'accepted']);
      expect(alike(seen[theme]), theme).toEqual([]);
    }
  }));

it('tells tapes, run-outs, slots, moves and steps apart', async () => {
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
  await tablet.putAway();
});
