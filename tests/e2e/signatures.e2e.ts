// Who signs a changeover, and for what: two people of the roles asked for, each by badge or PIN; scans that are nothing else; lists
// that are known and not ticked; a release that names all that is open or wrong.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  expectWhole,
  goTo,
  openTablet,
  ownEntries,
  pad,
  readLog,
  scan,
  type Tablet,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

/** A line that stands for its changeover, with the checklist open. */
async function standing(): Promise<Tablet> {
  const tablet = await openTablet(demo.browser, demo.url, { badge: 'BADGE-3301' });
  const { page } = tablet;
  await goTo(page, 'change');
  await page.getByTestId('plan-greenhouse-node-top-F').click();
  await page.getByTestId('last-panel').click();
  await page.getByTestId('last-panel-yes').click();
  await page.getByTestId('release').waitFor();
  await page.getByTestId('tab-checklist').click();
  await page.getByTestId('checklist-open').click();
  await page.getByTestId('checklist').waitFor();
  return tablet;
}

const stateOf = (page: Page, step: string) => page.getByTestId(`step-${step}`).getAttribute('data-state');

describe('a signature', () => {
  it('is a person with the role asked for, two are two people, and one is taken back by who gave it', async () => {
    const tablet = await standing();
    const { page } = tablet;
    const dialog = page.locator('dialog');
    await page.getByTestId('sign-released-lead').click();
    await scan(page, 'BADGE-2201');
    await dialog.getByText('Needs: Shift lead').waitFor();
    await scan(page, 'BADGE-3301');
    await pad(page, '3301');
    await page.getByTestId('signed-released-lead').waitFor();
    await expect.poll(() => stateOf(page, 'released')).toBe('open');
    expect(await page.getByTestId('sign-released-lead').count()).toBe(0);

    await page.getByTestId('sign-released-operator').click();
    await scan(page, 'BADGE-3301');
    await dialog.getByText('Morag has signed already').waitFor();
    await scan(page, 'BADGE-2201');
    await expect.poll(() => stateOf(page, 'released')).toBe('done');

    await page.getByTestId('unsign-released-operator').click();
    await scan(page, 'BADGE-2202');
    await dialog.getByText('This is the signature of Ailsa').waitFor();
    await scan(page, 'BADGE-2201');
    await expect.poll(() => stateOf(page, 'released')).toBe('open');
    const told = await ownEntries(page, 'step.signed', 'step.unsigned');
    expect(told.map(({ kind, payload }) => [kind, payload['by'], payload['role'] ?? null])).toEqual([
      ['step.signed', 'p-3301', 'lead'],
      ['step.signed', 'p-2201', 'operator'],
      ['step.unsigned', 'p-2201', null],
    ]);
    // The badge of a signature signs nobody in.
    await expect.poll(() => page.getByTestId('sign-in').textContent()).toContain('Morag');
    expectWhole(await readLog(page));
    await tablet.putAway();
  });
});

describe('a scan step', () => {
  it('takes no badge, slot or feeder for a stencil, and no stencil for the paste', async () => {
    const tablet = await standing();
    const { page } = tablet;
    const field = page.getByTestId('value-stencil-in');
    await field.click();
    for (const [code, said] of [
      ['BADGE-2201', 'That is the badge of Ailsa. Scan the stencil.'],
      ['M2-F-023', 'That is slot M2-F-023.'],
      ['F-0112', 'That is feeder F-0112.'],
    ] as const) {
      await scan(page, code);
      await page.getByTestId('wrong-stencil-in').getByText(said).waitFor();
    }
    expect(await ownEntries(page, 'step.answered')).toEqual([]);
    await scan(page, 'ST-GN-F');
    await expect.poll(() => stateOf(page, 'stencil-in')).toBe('done');
    await page.getByTestId('value-paste-lot').fill('ST-GN-F');
    await page.getByTestId('keep-paste-lot').click();
    await page.getByTestId('wrong-paste-lot').getByText('is already used in another step').waitFor();
    await tablet.putAway();
  });
});

describe('what can be known', () => {
  it('has nothing to tick, and says what is open', async () => {
    const tablet = await standing();
    const { page } = tablet;
    for (const step of ['feeders-done', 'slots-verified', 'first-measured']) {
      await expect.poll(() => stateOf(page, step), { message: step }).toBe('open');
      expect(await page.getByTestId(`tick-${step}`).count(), step).toBe(0);
    }
    await expect
      .poll(() => page.getByTestId('step-feeders-done').textContent())
      .toMatch(/\d+ feeder moves left/);
    await expect.poll(() => page.getByTestId('step-slots-verified').textContent()).toMatch(/\d+ slots? /);
    await expect
      .poll(() => page.getByTestId('step-first-measured').textContent())
      .toMatch(/\d+ parts not checked yet/);
    await tablet.putAway();
  });

  it('is named at the release, what is wrong first, and stays in the log with the reason', async () => {
    const tablet = await standing();
    const { page } = tablet;
    await page.getByTestId('tab-first').click();
    await page.locator('[data-testid^=wrong-]').first().click();
    await page.getByTestId('measure-other').selectOption({ index: 1 });
    await page.getByTestId('measure-nominal').fill('4.7');
    await page.getByTestId('measure-tolerance').fill('1');
    await page.getByTestId('measure-reading').fill('9');
    await page.getByTestId('measure-keep').click();
    await expect.poll(async () => (await ownEntries(page, 'panel.measured')).length).toBe(1);
    await page.getByTestId('release').click();
    const wrong = page.getByTestId('release-wrong');
    await expect.poll(() => wrong.textContent()).toContain('1 part measured wrong');
    await expect.poll(() => wrong.textContent()).toContain('1 part looks wrong');
    for (const said of ['feeder moves left', 'parts not checked yet', 'checklist steps'])
      await expect.poll(() => page.getByTestId('release-open').textContent()).toContain(said);
    await scan(page, 'BADGE-3301');
    await pad(page, '3301');
    await expect.poll(() => page.getByTestId('release-yes').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('release-reason').fill('Trial build');
    await page.getByTestId('release-yes').click();
    await page.getByTestId('screen-line').waitFor();
    const [left, released] = await ownEntries(page, 'changeover.left-open', 'changeover.released');
    const kinds = ((left?.payload['left'] ?? []) as { what: string }[]).map(({ what }) => what); // shape of the entry
    expect(kinds).toEqual(expect.arrayContaining(['measured-wrong', 'looked-wrong', 'move', 'unchecked']));
    expect(released?.payload).toMatchObject({ by: 'p-3301', reason: 'Trial build' });
    await tablet.putAway();
  });
});
