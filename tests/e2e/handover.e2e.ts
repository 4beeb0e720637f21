// One shift hands the line over to the next: what is open is worked out, two leads sign, and a hold is told until it is decided.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { waitReady } from './support/browser.ts';
import { drawn } from './support/clock.ts';
import { goOn, goTo, ownEntries, pad, reelLabel, scan, scanAll } from './support/floor.ts';
import { look } from './support/look.ts';
import { confirm } from './support/tour/here.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-3301', hash: '#/load' });

const idOf = ({ tablet, epoch, seq }: { tablet: string; epoch: string; seq: number }) =>
  `${tablet}/${epoch}/${seq}`;

/** A reel of a part that no setup lets stand in: held until a lead decides. */
async function holdOne(page: Page): Promise<string> {
  const label = reelLabel({ P: '12-0603-105H', Q: '4000', '1T': 'LOT-9', '3S': 'R-970001' });
  expect((await scanAll(page, 'M2-R-010', label)).verdict).toBe('held');
  await goOn(page);
  const [held] = await ownEntries(page, 'reel.verified');
  return held ? idOf(held) : '';
}

async function handOver(page: Page, note: string): Promise<void> {
  await page.getByTestId('hand-over').click();
  await page.getByTestId('hand-note').fill(note);
  await look(page, { where: 'hand over', axe: true });
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('hand-yes').click();
  await page.getByTestId('handed').waitFor();
}

it('lists what is open, is signed by two leads, and tells the hold until it is decided', () =>
  demo.onTablet(async ({ page }) => {
    const hold = await holdOne(page);
    await goTo(page, 'log');
    await page.getByTestId('log-shift').click();
    const card = page.getByTestId('handover');
    await card.locator('[data-what=hold]').waitFor();
    await expect.poll(() => card.locator('[data-what=hold]').textContent()).toContain('M2-R-010');
    await handOver(page, 'F-0231 goes to repair after this reel');
    const [handed] = await ownEntries(page, 'shift.handed');
    const { left, note, by, known, panels } = handed?.payload ?? {};
    expect({ note, by }).toEqual({ note: 'F-0231 goes to repair after this reel', by: 'p-3301' });
    expect((left as unknown as { what: string }[]).filter(({ what }) => what === 'hold')).toMatchObject([
      { of: hold, slot: 'M2-R-010', reel: 'R-970001' },
    ]);
    expect(known).toMatchObject({ sync: 'alone', toSend: 0 });
    expect(typeof panels).toBe('number');
    await card.getByText('Not taken over yet').waitFor();
    await look(page, { where: 'handed over', axe: true });

    // Who handed over cannot take over as well.
    await page.getByTestId('take-over').click();
    await page.getByTestId('badge').waitFor();
    await scan(page, 'BADGE-3301');
    await page.getByText('Morag handed over. Another lead must take over.').waitFor();
    await scan(page, 'BADGE-3302');
    await page.locator('.pinpad').waitFor();
    await pad(page, '3302');
    await page.getByTestId('take-yes').click();
    await expect.poll(async () => (await ownEntries(page, 'shift.taken')).length).toBe(1);
    expect((await ownEntries(page, 'shift.taken'))[0]?.payload).toMatchObject({ by: 'p-3302' });
    await page.getByTestId('handover-before').click();
    await page.getByTestId('handed-taken').getByText('Kwame').waitFor();

    // The next shift is told on every screen.
    await goTo(page, 'line');
    const banner = page.getByTestId('left-open');
    await banner.locator('.long').getByText('1 reel held at handover waits for a lead.').waitFor();
    await look(page, { where: 'left open', axe: true });
    await page.getByTestId('left-open-decide').click();
    await confirm(page, 'BADGE-3302', '3302');
    await page.getByRole('button', { name: 'Checked and measured by hand' }).click();
    await page.getByTestId('clear-accept').click();
    await banner.waitFor({ state: 'detached' });

    // And a later reader finds it in the log, as it was signed.
    await goTo(page, 'log');
    await page.getByTestId('log-shift').click();
    await page.getByTestId('handover-before').click();
    await expect.poll(() => card.locator('.past [data-what=hold]').getAttribute('data-open')).toBe('false');
    await page.getByTestId('log-entries').click();
    await page.locator('[data-testid=entry][data-kind="shift.handed"]').first().click();
    const dialog = page.locator('dialog[open]');
    await dialog.getByText('Reel held: M2-R-010').waitFor();
    await dialog.getByText('F-0231 goes to repair after this reel').waitFor();
    await look(page, { where: 'entry, handed over', axe: true });
  }));

it('is signed without a network too, and stands on paper', () =>
  demo.onTablet(
    async ({ page, context }) => {
      await expect
        .poll(() => page.getByTestId('offline').getAttribute('data-state'), { timeout: 60_000 })
        .toBe('ready');
      await context.setOffline(true);
      await page.reload();
      await waitReady(page);
      await goTo(page, 'log');
      await page.getByTestId('log-shift').click();
      await handOver(page, '');
      await expect
        .poll(() => page.getByTestId('known-by').first().textContent())
        .toContain('As this tablet knows.');
      await page.emulateMedia({ media: 'print' });
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      await drawn(page);
      const paper = page.locator('#shift-page');
      await expect.poll(() => paper.getByTestId('handed').isVisible()).toBe(true);
      expect(await page.getByTestId('take-over').filter({ visible: true }).count()).toBe(0);
      await page.evaluate(() => dispatchEvent(new Event('afterprint')));
      await page.emulateMedia({ media: 'screen' });
      await context.setOffline(false);
    },
    { offlineCopy: true, badge: null },
  ));
