// Tickets on two tablets and the plant's real server: a lead who signs in with a PIN is proven on the other tablet too; who was added under
// a badge alone works at once, stands as unproven, and is known to the server from a lead's word on.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startBrowser, waitReady } from './support/browser.ts';
import { goTo, readLog, signIn } from './support/floor.ts';
import { addPerson, enterPin, joinPlant, untilSent } from './support/joined.ts';
import { type PlantServer, startServe } from './support/serve.ts';
import { confirm } from './support/tour/here.ts';

let server: PlantServer;
let browser: Browser;
let one: Page;
let two: Page;

beforeAll(async () => {
  [server, browser] = await Promise.all([startServe(), startBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

async function join(code: string, name: string): Promise<Page> {
  const page = await joinPlant(browser, server.url, { code, name });
  await untilSent(page);
  return page;
}

/** Begins to sync anew: what the plant says of tickets is asked then. */
async function again(page: Page): Promise<void> {
  await page.reload();
  await waitReady(page);
  await untilSent(page);
}

const own = async (page: Page, kind: string) =>
  (await readLog(page, 'reelward-log')).filter((entry) => entry.kind === kind);

describe('tickets', () => {
  it('are taken by whoever signs in with a PIN, and prove to others what is done then', async () => {
    one = await join(server.firstCode, 'Line front');
    await addPerson(one, 'Elif', { badge: 'E-1', role: 'Engineer', pin: '4401' });
    await untilSent(one);
    await enterPin(one, 'Elif', '4401');
    await expect.poll(async () => (await own(one, 'ticket.taken')).length).toBe(1);
    await addPerson(one, 'Morag', { badge: 'L-1', role: 'Shift lead', pin: '3301' });
    await untilSent(one);
    two = await join(await server.newCode(), 'Line rear');
    await goTo(two, 'log');
    const rows = two.locator('[data-testid=entry][data-kind="person.added"]');
    await expect.poll(() => rows.count(), { timeout: 60_000 }).toBe(2);
    expect(await two.getByTestId('right-unproven').count()).toBe(0);
    await rows.first().click();
    await two.getByTestId('entry-right').getByText('proven by a ticket').waitFor();
    await two.keyboard.press('Escape');
    await rows.last().click();
    await two.getByTestId('entry-right').getByText('made before tickets').waitFor();
    await two.keyboard.press('Escape');
  });

  it('are missing under a badge alone: the act counts at once, and stands as unproven on every tablet', async () => {
    await signIn(two, 'E-1');
    await two.getByTestId('notice').getByText('by badge alone').waitFor();
    await addPerson(two, 'Ailsa', { badge: 'O-1', role: 'Operator', pin: '2201' });
    await untilSent(two);
    await enterPin(two, 'Ailsa', '2201');
    const signedIn = (await own(two, 'person.signed-in'))
      .filter(({ payload }) => payload['how'] === 'pin')
      .at(-1);
    expect(signedIn?.payload).toMatchObject({ checked: 'tablet' });
    await again(one);
    await goTo(one, 'log');
    await one.getByTestId('log-unproven').getByText('(1)').waitFor();
    await expect.poll(() => one.getByTestId('right-unproven').count()).toBe(1);
  });

  it("end with a lead's word, and the server knows who was added", async () => {
    await one.getByTestId('log-unproven').click();
    await one.getByTestId('unproven-entry').getByText('Ailsa').waitFor();
    await one.getByTestId('unproven-confirm').click();
    await confirm(one, 'L-1', '3301');
    await one.getByTestId('settle-unproven-reason').fill('I hired her');
    await one.getByTestId('settle-unproven-yes').click();
    await one.getByTestId('notice').getByText('The entry is confirmed.').waitFor();
    await one.getByTestId('unproven-entry').waitFor({ state: 'detached' });
    await untilSent(one);
    await goTo(two, 'log');
    await two.getByTestId('right-confirmed').waitFor();
    await enterPin(two, 'Elif', '4401');
    await enterPin(two, 'Ailsa', '2201');
    const last = (await own(two, 'person.signed-in')).at(-1);
    expect(last?.payload).toMatchObject({ checked: 'server' });
  });
});
