// An empty plant from its first person on: an engineer with a PIN, led on to the next; nobody can leave it without one who adds people.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startBrowser, waitReady } from './support/browser.ts';
import { giveClock } from './support/clock.ts';
import { pad, signIn, steady } from './support/floor.ts';
import { type PlantServer, startServe } from './support/serve.ts';

let server: PlantServer;
let browser: Browser;

beforeAll(async () => {
  [server, browser] = await Promise.all([startServe(), startBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

async function open(hash: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await giveClock(context);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(`${server.url}${hash}`);
  await waitReady(page);
  return page;
}

it('the first person is an engineer with a PIN, signs in, and is led on to the next and to the line', async () => {
  const page = await open('');
  await page.getByTestId('sign-in').click();
  await page.getByTestId('add-first').click();
  await expect
    .poll(() => page.getByTestId('person-first').textContent())
    .toContain('The first person is an engineer');
  await expect.poll(() => page.getByTestId('person-role').textContent()).toContain('Engineer');
  expect(await page.getByTestId('role-operator').count()).toBe(0);
  await page.getByTestId('person-name').fill('Elif');
  await page.getByTestId('person-badge').fill('E-1');
  await page.getByTestId('person-save').click();
  await expect.poll(() => page.getByTestId('person-wrong').textContent()).toContain('needs a PIN');
  await page.getByTestId('person-pin').fill('4401');
  await steady(page);
  await page.getByTestId('person-save').click();

  // Saved: the question who is there comes by itself, and one try is said as one.
  const dialog = page.locator('dialog');
  await dialog.getByRole('button', { name: 'Elif' }).click();
  for (const left of ['4 tries left', '3 tries left', '2 tries left', '1 try left']) {
    await pad(page, '0000');
    await page.getByText(left).waitFor();
  }
  await pad(page, '4401');
  await dialog.waitFor({ state: 'detached' });
  const next = page.getByTestId('people-next');
  await expect.poll(() => next.textContent()).toContain('Add the next person now, or at any time later');
  await expect.poll(() => page.getByTestId('next-sheet').isVisible()).toBe(true);

  // The only one who may add people neither steps down nor goes.
  await page.getByRole('button', { name: 'Change Elif' }).click();
  await expect.poll(() => page.getByTestId('role-operator').getAttribute('aria-disabled')).toBe('true');
  const box = await page.getByTestId('role-operator').boundingBox();
  if (!box) throw new TypeError('the role stands on the page');
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  await expect.poll(() => page.getByTestId('role-engineer').getAttribute('aria-pressed')).toBe('true');
  await page.getByRole('button', { name: 'Cancel', exact: true }).click();

  await page.getByTestId('person-add').click();
  await page.getByTestId('person-name').fill('Ailsa');
  await page.getByTestId('person-badge').fill('O-1');
  await page.getByTestId('person-save').click();
  await page.getByText('Ailsa is on the list').waitFor();

  // An operator stands before the page, and is told who may; the way in is one tap.
  await signIn(page, 'O-1');
  const gate = page.getByTestId('plant-gate');
  await expect.poll(() => gate.textContent()).toContain('Needs: Shift lead');
  await page.getByTestId('gate-sign-in').click();
  await signIn(page, 'E-1');
  await gate.waitFor({ state: 'detached' });
  await page.getByText('Ailsa is on the list').waitFor();
  await page.getByTestId('next-line').click();
  await page.getByTestId('screen-line').waitFor();
  await page.context().close();
});
