// A scan answers the step of the checklist that is next, with no field entered; what it does not ask for goes to the desk.

import { expect, it } from 'vitest';
import { goTo, ownEntries, scan, steady } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-3301' });

it('answers the stencil and then the paste from outside their fields, and leaves a slot to the desk', () =>
  demo.onTablet(async ({ page }) => {
    await goTo(page, 'change');
    await page.getByTestId('plan-greenhouse-node-top-F').click();
    await page.getByTestId('last-panel').click();
    await page.getByTestId('last-panel-yes').click();
    await page.getByTestId('release').waitFor();
    await page.getByTestId('tab-checklist').click();
    await page.getByTestId('checklist-open').click();
    await page.getByTestId('checklist').waitFor();
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
    expect(await stateOf('paste-lot')).toBe('open');
  }));
