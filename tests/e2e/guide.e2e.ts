// Guided practice: each guide is gone through as its steps ask for it; it sees what was done and what was something else, is left and
// taken up at its step, after a reload and after the practice too. Nothing of it reaches the plant's log.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { goOn, goTo, openExport, pad, readLog, scan, seeVerdict } from './support/floor.ts';
import { openBy } from './support/tour/here.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const untilStep = (page: Page, step: string) =>
  page.locator(`[data-testid=guide][data-step=${step}]`).waitFor();
const guideSays = (page: Page) => page.getByTestId('guide').getByRole('status').textContent();

async function beginGuide(page: Page, guide: string): Promise<void> {
  await goTo(page, 'plant');
  await page.getByTestId('tile-practice').click();
  await page.getByTestId(`guide-start-${guide}`).click();
  await page.getByTestId('guide').waitFor();
}

/** Goes to the labels by the guide's own way. */
async function toLabels(page: Page): Promise<readonly string[]> {
  await page.getByTestId('guide-go').click();
  await page.getByTestId('practice-print').waitFor();
  await page.locator('[data-testid^="label-slot-"]').first().waitFor();
  return page
    .locator('[data-testid^="label-"]')
    .evaluateAll((cards) => cards.map((card) => card.getAttribute('data-testid') ?? ''));
}

/** Taps a slot, its feeder where it wants one, and a reel; `splices`: on a slot that is loaded. */
async function tapReel(page: Page, reel: 'own' | 'wrong' | 'bare', splices = false) {
  const ids = await toLabels(page);
  const slots = ids.filter((id) => id.startsWith('label-slot-')).map((id) => id.replace('label-slot-', ''));
  const hasFeeder = (slot: string) => ids.includes(`label-feeder-${slot}`);
  const slot = (splices ? slots.find((each) => !hasFeeder(each)) : slots[0]) ?? '';
  await page.getByTestId(`label-slot-${slot}`).click();
  if (hasFeeder(slot)) await page.getByTestId(`label-feeder-${slot}`).click();
  await page.getByTestId(`label-reel-${reel === 'own' ? slot : reel}`).click();
  return { slot, ...(await seeVerdict(page)) };
}

it('takes an operator through three reels, a splice and a warning, one step at a time', () =>
  demo.onTablet(async ({ page }) => {
    const before = (await readLog(page)).filter(({ kind }) => kind !== 'warning.raised').length;
    await beginGuide(page, 'operator');
    await untilStep(page, 'first');
    await expect.poll(() => guideSays(page)).toContain('Step 1 of 7');
    // A wrong reel first: it is seen, and the step stays.
    expect((await tapReel(page, 'wrong')).verdict).toBe('refused');
    await page.getByTestId('guide').getByText('That was something else').waitFor();
    await goOn(page);
    const first = await tapReel(page, 'own');
    expect(first.verdict).toBe('accepted');
    await untilStep(page, 'wrong');
    await expect.poll(() => guideSays(page)).toContain(`${first.slot}: accepted.`);
    await goOn(page);
    await page.reload();
    await untilStep(page, 'wrong');
    // Each person is as far as that person went.
    await scan(page, 'BADGE-4401');
    await untilStep(page, 'first');
    await scan(page, 'BADGE-2201');
    await untilStep(page, 'wrong');
    expect((await tapReel(page, 'wrong')).verdict).toBe('refused');
    await untilStep(page, 'second');
    await goOn(page);
    // Left, ended, and taken up.
    await page.getByTestId('guide-leave').click();
    await page.getByTestId('guide').waitFor({ state: 'detached' });
    await page.getByTestId('practice-end').click();
    await page.getByTestId('practice-band').waitFor({ state: 'detached' });
    await page.waitForSelector('html[data-ready]');
    await goTo(page, 'plant');
    await page.getByTestId('tile-practice').click();
    await expect
      .poll(() => page.getByTestId('guide-start-operator').textContent())
      .toBe('Go on at step 3 of 7');
    await page.getByTestId('guide-start-operator').click();
    await untilStep(page, 'second');
    await tapReel(page, 'own');
    await untilStep(page, 'splice');
    await goOn(page);
    // The copied run runs already, which would end its step at once: it is stopped, so that the step waits for somebody to start it.
    await goTo(page, 'line');
    await page.getByTestId('run-stop').click();
    await page.getByTestId('stop-jam').click();
    await page.getByTestId('stopped').waitFor();
    await tapReel(page, 'own', true);
    await untilStep(page, 'run');
    await goOn(page);
    await page.getByTestId('guide-go').click();
    await page.getByTestId('run-resume').click();
    await page.locator('[data-testid=guide]:not([data-step=run])').waitFor();
    await page.getByTestId('runbar').waitFor();
    const here = { page, url: demo.url };
    await openBy(here, 'plus-many');
    await pad(page, '150');
    await untilStep(page, 'answer');
    await page.getByTestId('warning-ack').click();
    await untilStep(page, 'over');
    await page.getByTestId('practice-end').click();
    await page.getByTestId('practice-band').waitFor({ state: 'detached' });
    const after = (await readLog(page)).filter(({ kind }) => kind !== 'warning.raised').length;
    expect(after).toBe(before);
  }));

it('takes a lead through a hold and an export, an engineer through a setup', () =>
  demo.onTablet(
    async ({ page }) => {
      const saved: string[] = [];
      page.on('download', (download) => saved.push(download.suggestedFilename()));
      await beginGuide(page, 'lead');
      expect((await tapReel(page, 'bare')).verdict).toBe('held');
      await untilStep(page, 'clear');
      await page.getByTestId('verdict-clear').click();
      await scan(page, 'BADGE-4401');
      await page.locator('.pinpad').waitFor();
      await pad(page, '4401');
      await page.getByRole('button', { name: 'Counted by hand' }).click();
      await page.getByTestId('clear-accept').click();
      await untilStep(page, 'export');
      await page.getByTestId('guide-go').click();
      await openExport(page);
      await page.getByTestId('export-csv').click();
      await untilStep(page, 'over');
      expect(saved).toEqual([]);
      await page.getByTestId('guide-leave').click();
      await goTo(page, 'plant');
      await page.getByTestId('tile-practice').click();
      await page.getByTestId('guide-start-engineer').click();
      await untilStep(page, 'open');
      await page.getByTestId('guide-go').click();
      await page.getByTestId('tile-sheet').click();
      await untilStep(page, 'take');
      await page.getByTestId('sheet-example').click();
      await page.getByTestId('sheet-take').click();
      await untilStep(page, 'look');
      await page.getByTestId('guide-go').click();
      await untilStep(page, 'over');
      await expect.poll(() => page.getByText('Practice sensor').first().isVisible()).toBe(true);
    },
    { badge: 'BADGE-4401' },
  ));
