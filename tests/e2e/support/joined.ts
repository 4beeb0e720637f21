// A tablet that joins a plant's real server by a code, how far it is with it, and who is there.

import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import { waitReady } from './browser.ts';
import { giveClock } from './clock.ts';
import { openAt, pad } from './floor.ts';

/** The chip that tells how the tablet stands to its own copy and to the server. */
export const chip = (page: Page) => page.getByTestId('offline');

/** Waits until sync is in this phase, once a key has unlocked the sound of the page: till then it tells that in the same place. */
export async function untilSync(page: Page, phase: string): Promise<void> {
  await page.keyboard.press('Shift');
  await expect.poll(() => chip(page).getAttribute('data-sync'), { timeout: 60_000 }).toBe(phase);
}

/** Waits until the server holds all that this tablet wrote. */
export async function untilSent(page: Page): Promise<void> {
  await page.keyboard.press('Shift');
  // Both in one look: what is written between two is not sent yet.
  const standing = () =>
    chip(page).evaluate((it) => [it.getAttribute('data-sync'), it.getAttribute('data-backlog')]);
  await expect.poll(standing, { timeout: 60_000 }).toEqual(['live', '0']);
}

/** Opens the app by the link of a code, as a scanned code does, and joins. `before`: what is to be so before the page is opened. */
export async function joinPlant(
  browser: Browser,
  url: string,
  how: {
    readonly code: string;
    readonly name: string;
    readonly before?: (page: Page) => Promise<unknown>;
  },
): Promise<Page> {
  const { code, name, before } = how;
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await giveClock(context);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await before?.(page);
  await page.goto(`${url}#enrol=${code}`);
  await waitReady(page);
  await enrolAs(page, code, name);
  return page;
}

/** Joins with a code that the page has from its link. */
export async function enrolAs(page: Page, code: string, name: string): Promise<void> {
  await expect.poll(() => page.getByTestId('enrol-code').inputValue()).toBe(code);
  await page.getByTestId('enrol-name').fill(name);
  await page.getByTestId('enrol').click();
  await untilSync(page, 'live');
}

/** Adds a person at the screen for that; the first one, an engineer whatever the role, is asked to sign in next. */
export async function addPerson(
  page: Page,
  name: string,
  row: { readonly badge: string; readonly role: string; readonly pin: string },
): Promise<void> {
  await openAt(page, '#/plant/people');
  await page.getByTestId('person-form').or(page.getByTestId('person-add')).first().waitFor();
  const isFirst = await page.getByTestId('person-first').isVisible();
  if (!isFirst) await page.getByTestId('person-add').click();
  await page.getByTestId('person-name').fill(name);
  await page.getByTestId('person-badge').fill(row.badge);
  if (!isFirst) await page.getByRole('button', { name: row.role }).click();
  await page.getByTestId('person-pin').fill(row.pin);
  await page.getByTestId('person-save').click();
  await page.getByText(`${name} saved.`).waitFor();
  if (isFirst) await page.locator('dialog[open]').waitFor();
}

/** Signs in by name and PIN. */
export async function enterPin(page: Page, name: string, pin: string): Promise<void> {
  const dialog = page.locator('dialog[open]');
  if (!(await dialog.isVisible())) await page.getByTestId('sign-in').click();
  await dialog.getByRole('button', { name }).click();
  await page.locator('.pinpad').waitFor();
  await pad(page, pin);
  await page.getByTestId('sign-in').getByText(name).waitFor();
  await dialog.waitFor({ state: 'detached' });
}
