// A wrong reel is found by a sweep: its panels are traced, held, and signed by a lead.

import { afterAll, beforeAll, expect, it } from 'vitest';
import { drawn } from './support/clock.ts';
import { goTo, openTablet, ownEntries, reelLabel, scanAll, type Tablet } from './support/floor.ts';
import { confirm } from './support/tour/here.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();
let tablet: Tablet;

beforeAll(async () => {
  tablet = await openTablet(demo.browser, demo.url, { badge: 'BADGE-4401' });
});
afterAll(() => tablet?.putAway());

it('leads from a wrong reel found by a sweep to its panels, and holds them until a lead signs', async () => {
  const { page } = tablet;
  await goTo(page, 'load');
  await page.getByTestId('sweep-start').click();
  await page.getByTestId('sweep-progress').waitFor();
  const seen = await scanAll(
    page,
    'M2-F-001',
    reelLabel({ P: '10-0603-000', Q: '4000', '1T': 'LOT-ODD', '3S': 'R-940001' }),
  );
  expect(seen.verdict).toBe('refused');
  await page.getByTestId('verdict-panels').click();
  await page.getByTestId('trace-places').waitFor();
  await expect.poll(() => page.getByTestId('trace-places').textContent()).toContain('R-940001');
  await page.getByTestId('trace-hold').click();
  await page.getByTestId('hold-reason').fill('wrong value on the label');
  await page.getByTestId('hold-yes').click();
  await expect.poll(async () => (await ownEntries(page, 'panels.contained')).length).toBe(1);
  await page.getByTestId('log-held').click();
  await page.getByTestId('held-panels').waitFor();
  await drawn(page);
  await expect.poll(() => page.getByTestId('held').textContent()).toContain('R-940001');
  await expect.poll(() => page.getByTestId('log-held').textContent()).toContain('(1)');
  await page.getByTestId('held-sign').click();
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('sign-reason').fill('reworked');
  const first = page.getByTestId('sign-held').locator('button.code').first();
  const code = await first.textContent();
  await first.click();
  await page.getByTestId('sign-some').click();
  await expect.poll(async () => (await ownEntries(page, 'containment.signed')).length).toBe(1);
  const [signed] = await ownEntries(page, 'containment.signed');
  expect(signed?.payload).toMatchObject({ codes: [code], reason: 'reworked' });
  await page.getByTestId('held-sign').click();
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('sign-reason').fill('found right');
  await page.getByTestId('sign-all').click();
  await page.getByTestId('held-sign').waitFor({ state: 'detached' });
  await expect.poll(() => page.getByTestId('log-held').textContent()).not.toContain('(');
});
