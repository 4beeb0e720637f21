// The first steps, left at one tablet and taken up again at another: both joined to the plant's server, each step seen done where it was not done.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startBrowser } from './support/browser.ts';
import { press } from './support/finger.ts';
import { expectWhole, readLog, scan, signIn } from './support/floor.ts';
import { joinPlant, untilSent } from './support/joined.ts';
import { look } from './support/look.ts';
import { type PlantServer, startServe } from './support/serve.ts';

let browser: Browser;
let server: PlantServer;
beforeAll(async () => {
  [browser, server] = await Promise.all([startBrowser(), startServe()]);
});
afterAll(async () => {
  await Promise.all([browser.close(), server.stop()]);
});

const stateOf = (page: Page, step: string) => page.getByTestId(`step-${step}`).getAttribute('data-state');
const open = async (page: Page, name: string) => {
  await page.goto(`${server.url}#/plant/${name}`);
};

/** Waits until the steps are in these states. */
async function expectSteps(page: Page, states: Readonly<Record<string, string>>): Promise<void> {
  for (const [step, state] of Object.entries(states))
    await expect.poll(() => stateOf(page, step), { timeout: 30_000 }).toBe(state);
}

it('goes on at a second tablet where the first stopped, and back', async () => {
  const one = await joinPlant(browser, server.url, { code: server.firstCode, name: 'Front' });
  await open(one, 'begin');
  // The server was set up with a name: nobody is asked for it again.
  await expect.poll(() => one.getByTestId('plant-name').inputValue()).toBe('Brae Works');
  await press(one, 'plant-save');
  await expectSteps(one, { plant: 'done', engineer: 'next' });
  await open(one, 'people');
  await one.getByTestId('person-name').fill('Elif');
  await one.getByTestId('person-badge').fill('E-1');
  await one.getByTestId('person-pin').fill('4401');
  await press(one, 'person-save');
  await one.getByText('Elif saved.').waitFor();
  await untilSent(one);

  // Left here. The second tablet knows how far it is, and does the line.
  const two = await joinPlant(browser, server.url, { code: await server.newCode(), name: 'Office' });
  await open(two, 'begin');
  await expectSteps(two, { plant: 'done', engineer: 'done', line: 'next' });
  await look(two, { where: 'first steps at the second tablet' });
  await signIn(two, 'E-1');
  await open(two, 'lines');
  await two.getByTestId('bank-first-1').fill('M1-F-001');
  await two.getByTestId('bank-last-1').fill('M1-F-025');
  await press(two, 'line-save');
  await two.getByTestId('line-L1').waitFor();
  await untilSent(two);

  // Taken up again at the first; what belongs to one tablet is asked of each.
  await open(one, 'begin');
  await expectSteps(one, { line: 'done', people: 'next', scanner: 'open', label: 'open' });
  await open(one, 'scanner');
  await one.getByTestId('label-test').waitFor();
  await scan(one, 'Z9-Q-077');
  await expect.poll(() => one.getByTestId('label-outcome').getAttribute('data-read')).toBe('false');
  await look(one, { where: 'a label that is not known' });
  await scan(one, 'E-1');
  await expect.poll(() => one.getByTestId('label-outcome').getAttribute('data-read')).toBe('true');
  await look(one, { where: 'a label that is read' });
  await open(one, 'begin');
  await expectSteps(one, { label: 'done' });
  await open(two, 'begin');
  await expectSteps(two, { label: 'open' });
  expectWhole(await readLog(one, 'reelward-log'));
  await Promise.all([one.context().close(), two.context().close()]);
});
