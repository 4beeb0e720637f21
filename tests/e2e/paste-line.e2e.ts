// The paste on a line's stencil: the line says when its time ends before the run does, and once it is over; off the stencil it is held at its next use.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { pass } from './support/clock.ts';
import { ownEntries, reelLabel, scan, signIn } from './support/floor.ts';
import { look } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ hash: '#/line' });

/** Waits until the log tells that of a jar last: an hour that goes by before that would be the jar's. */
async function toldLast(page: Page, jar: string, says: string): Promise<void> {
  const last = async () => (await ownEntries(page, 'jar.told')).at(-1)?.payload;
  await expect.poll(last).toMatchObject({ jar, says });
}

/** Left alone for so long, nobody is signed in any more: once the tablet has seen that, somebody signs in again. */
async function signInAgain(page: Page): Promise<void> {
  await expect.poll(() => page.getByTestId('sign-in').textContent()).toContain('Sign in');
  await signIn(page, 'BADGE-2201');
}

it('paste that is near its time, then over it, is told on its line, and a lead decides about its next use', async () => {
  await demo.onTablet(async ({ page }) => {
    const told = page.getByTestId('stencil-paste');
    await told.waitFor();
    expect(await told.getAttribute('data-over')).toBe('false');
    await expect.poll(() => told.textContent()).toContain('Paste J-0417 on the stencil is good until');
    await look(page, { where: 'line, paste near its time' });
    await pass(page, 2 * 3_600_000);
    await expect.poll(() => told.getAttribute('data-over')).toBe('true');
    await expect
      .poll(() => told.textContent())
      .toContain('Paste J-0417 on the stencil: too long on the stencil.');
    await look(page, { where: 'line, paste out of time' });
    await signInAgain(page);
    await page.getByTestId('stencil-jars').click();
    const row = page.getByTestId('jar-J-0417');
    await row.waitFor();
    // Where the link leads, a label is a jar's and no reel's.
    await scan(page, reelLabel({ P: 'SP-4405', '1T': 'LP-2231', '3S': 'J-0417' }));
    await page.getByTestId('jar-dialog').waitFor();
    await page.getByTestId('jar-off').click();
    await expect.poll(() => row.textContent()).toContain('open');
    await row.click();
    await page.getByTestId('jar-on').click();
    await expect.poll(() => page.locator('dialog[open]').textContent()).toContain('A lead decides');
    await expect
      .poll(async () => (await ownEntries(page, 'jar.held'))[0]?.payload)
      .toMatchObject({ jar: 'J-0417', lot: 'LP-2231', reasons: ['stencil-over'] });
  });
});

it('what was told to have come off is off, though the jar that was to go on is held and nobody decides', async () => {
  await demo.onTablet(async ({ page }) => {
    await pass(page, 2 * 3_600_000);
    await signInAgain(page);
    await page.getByTestId('stencil-jars').click();
    const [old, next] = [page.getByTestId('jar-J-0417'), page.getByTestId('jar-J-0500')];
    await old.click();
    await page.getByTestId('jar-off').click();
    // It may be opened once it has thawed for long enough.
    await scan(page, reelLabel({ P: 'SP-4405', '1T': 'LP-2240', '3S': 'J-0500' }));
    await page.getByTestId('jar-new').click();
    await next.click();
    await page.getByTestId('jar-out').click();
    await toldLast(page, 'J-0500', 'out');
    await pass(page, 5 * 3_600_000);
    await signInAgain(page);
    for (const step of ['opened', 'on']) {
      await next.click();
      await page.getByTestId(`jar-${step}`).click();
    }
    await old.click();
    await page.getByTestId('jar-on').click();
    await page.getByTestId('jar-cleared').click();
    await expect.poll(() => page.locator('dialog[open]').textContent()).toContain('A lead decides');
    await page.keyboard.press('Escape');
    await expect.poll(() => next.textContent()).not.toContain('on the stencil');
    const told = (await ownEntries(page, 'jar.told')).map(({ payload }) => [payload['jar'], payload['says']]);
    expect(told.slice(-2)).toEqual([
      ['J-0500', 'on'],
      ['J-0500', 'off'],
    ]);
  });
});
