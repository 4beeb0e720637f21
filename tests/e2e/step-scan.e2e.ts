// A scan answers the step of the checklist that is next, with no field entered; what it does not ask for goes to the desk.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { filmLabel } from './harness/scan/fake-camera.ts';
import { startBrowser } from './support/browser.ts';
import { tap } from './support/finger.ts';
import { goTo, openTablet, ownEntries, scan, steady } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-3301' });

/** A line that stands for its changeover, with the checklist open. */
async function openChecklist(page: Page): Promise<void> {
  await goTo(page, 'change');
  await page.getByTestId('plan-greenhouse-node-top-F').click();
  await page.getByTestId('last-panel').click();
  await page.getByTestId('last-panel-yes').click();
  await page.getByTestId('release').waitFor();
  await page.getByTestId('tab-checklist').click();
  await page.getByTestId('checklist-open').click();
  await page.getByTestId('checklist').waitFor();
}

it('answers the stencil and then the paste from outside their fields, and leaves a slot to the desk', () =>
  demo.onTablet(async ({ page }) => {
    await openChecklist(page);
    const stateOf = (step: string) => page.getByTestId(`step-${step}`).getAttribute('data-state');
    const answers = async () =>
      (await ownEntries(page, 'step.answered')).map(({ payload }) => [payload['step'], payload['value']]);

    // Nobody has come to the stencil yet: the desk asks what the code is.
    await scan(page, 'ST-GN-F');
    const question = page.locator('dialog[open]');
    await question.getByText('The label says “ST-GN-F”').waitFor();
    expect(await answers()).toEqual([]);
    await steady(page);
    await question.getByRole('button', { name: 'Cancel', exact: true }).click();
    await question.waitFor({ state: 'detached' });

    // Entered once, it is next, also after the field was left for the heading.
    await page.getByTestId('value-stencil-in').click();
    await page.getByTestId('next-scan-stencil-in').waitFor();
    await page.getByRole('heading', { name: 'Stencil and paste' }).click();
    await page.getByTestId('next-scan-stencil-in').waitFor();
    await scan(page, 'ST-GN-F');
    await expect.poll(() => stateOf('stencil-in')).toBe('done');
    await page.getByText('Step answered: ST-GN-F').waitFor();
    expect(await answers()).toEqual([['stencil-in', 'ST-GN-F']]);

    // A slot is no paste: it lies on the desk, and what comes then is for the slot.
    await page.getByTestId('value-paste-lot').click();
    await page.getByRole('heading', { name: 'Stencil and paste' }).click();
    await page.getByTestId('next-scan-paste-lot').waitFor();
    await scan(page, 'M2-F-023');
    await page.getByTestId('dock').getByText('M2-F-023').first().waitFor();
    expect(await page.getByTestId('next-scan-paste-lot').count()).toBe(0);
    await expect.poll(() => stateOf('paste-lot')).toBe('open');
  }));

it('answers a step by the camera, which says what the step asks for', async () => {
  const stencil = { part: 'Stencil', codes: [{ text: 'ST-GN-F', name: 'ST-GN-F' }] };
  const lens = await startBrowser(await filmLabel(demo.browser, stencil));
  const tablet = await openTablet(lens, demo.url, { badge: 'BADGE-3301' });
  const { page } = tablet;
  await openChecklist(page);
  await page.getByTestId('value-stencil-in').click();
  await tap(page, 'Camera');
  await page.getByRole('region', { name: 'Camera' }).getByText('Scan the stencil.').waitFor();
  await page.getByText('Step answered: ST-GN-F').waitFor();
  const [answered] = await ownEntries(page, 'step.answered');
  expect(answered?.payload).toMatchObject({ step: 'stencil-in', value: 'ST-GN-F' });
  await tablet.putAway();
  await lens.close();
});
