// What a badge alone does not prove: an engineer's act on another tablet, marked here, and a word on it.

import type { Page } from 'playwright-core';
import { goTo, signIn } from '../floor.ts';
import { closeDialogs, confirm, goThere, type Here, type Leg } from './here.ts';

/** The legs. They need a plant whose server gives tickets already; `second`: joins another tablet. */
export function rightLegs(second: (name: string) => Promise<Page>): readonly Leg[] {
  async function* unproven(here: Here): AsyncGenerator<string> {
    const { page } = here;
    const other = await second('Ramp');
    await signIn(other, 'E-1');
    await goTo(other, 'log');
    for (const [done, format] of ['json', 'csv'].entries()) {
      await other.getByTestId('log-export').click();
      await other.getByTestId(`export-${format}`).click();
      await other.locator('[data-testid=entry][data-kind="log.exported"]').nth(done).waitFor();
    }
    await goThere(here, '#/log');
    const mark = page.getByTestId('right-unproven').first();
    await mark.waitFor();
    await other.context().close();
    yield 'log, an unproven entry';
    await mark.click();
    await page.getByTestId('entry-right').waitFor();
    yield 'entry, unproven';
    await page.getByTestId('entry-record').click();
    await page.locator('[data-testid=record-dialog][data-proof=true]').waitFor();
    yield 'entry, on paper';
    await closeDialogs(page);
    await page.getByTestId('log-unproven').click();
    await page.getByTestId('unproven-entry').nth(1).waitFor();
    yield 'log, what is unproven';
    await page.getByTestId('unproven-reject').first().click();
    await page.getByTestId('badge').waitFor();
    yield 'unproven, who decides';
    await confirm(page, 'E-1', '4401');
    await page.getByTestId('settle-unproven-reason').fill('Nobody exported anything');
    yield 'unproven, why';
    await page.getByTestId('settle-unproven-yes').click();
    await page.getByTestId('settle-unproven-yes').waitFor({ state: 'detached' });
    yield 'log, what was unproven is settled';
  }
  return [{ name: 'unproven', stops: unproven }];
}
