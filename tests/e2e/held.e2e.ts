// A wrong reel is found by a sweep: its panels are traced and held. Signing them is in tests/shared/trace/suspects.test.ts.

import { afterAll, beforeAll, expect, it } from 'vitest';
import { drawn } from './support/clock.ts';
import { goTo, openTablet, ownEntries, reelLabel, scanAll, type Tablet } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();
let tablet: Tablet;

beforeAll(async () => {
  tablet = await openTablet(demo.browser, demo.url, { badge: 'BADGE-4401' });
});
afterAll(() => tablet?.putAway());

it('leads from a wrong reel found by a sweep to its panels, and holds them', async () => {
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
  expect(await page.getByTestId('trace-places').textContent()).toContain('R-940001');
  await page.getByTestId('trace-hold').click();
  await page.getByTestId('hold-reason').fill('wrong value on the label');
  await page.getByTestId('hold-yes').click();
  await expect.poll(async () => (await ownEntries(page, 'panels.contained')).length).toBe(1);
  await page.getByTestId('log-held').click();
  await page.getByTestId('held-panels').waitFor();
  await drawn(page);
  expect(await page.getByTestId('held').textContent()).toContain('R-940001');
});
