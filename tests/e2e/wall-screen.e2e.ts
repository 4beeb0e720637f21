// A wall screen that a lead lets in by a code of its own: it shows the lines, takes nothing and writes nothing, starts without a network and
// says since when it has heard nothing, and is shut out from the same list as tablets.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startBrowser, waitReady } from './support/browser.ts';
import { giveClock, passUntilSeen } from './support/clock.ts';
import { goTo, openAt, readLog, scan } from './support/floor.ts';
import { addPerson, enterPin, joinPlant, untilSent } from './support/joined.ts';
import { look } from './support/look.ts';
import { type PlantServer, startServe } from './support/serve.ts';
import { confirm } from './support/tour/here.ts';

let server: PlantServer;
let browser: Browser;
let lead: Page;
let screen: Page;

beforeAll(async () => {
  [server, browser] = await Promise.all([startServe(), startBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

const written = async () => (await readLog(screen, 'reelward-log')).map(({ kind }) => kind);

/** A plant with one line, and a tablet where an engineer is. */
async function prepare(): Promise<void> {
  lead = await joinPlant(browser, server.url, { code: server.firstCode, name: 'Line front' });
  await addPerson(lead, 'Elif', { badge: 'E-1', role: 'Engineer', pin: '4401' });
  await enterPin(lead, 'Elif', '4401');
  await lead.goto(`${server.url}#/plant/sheet`);
  await lead
    .getByTestId('sheet-paste')
    .fill('Slot\tPart\tQty per panel\tTape width\tPitch\nK1-F-001\tBW-11\t3\t8\t4\n');
  await lead.getByTestId('sheet-paste-read').click();
  await lead.getByTestId('take-product').fill('Fell switch');
  await lead.getByTestId('take-revision').fill('1');
  await lead.getByTestId('take-top').click();
  await lead.getByTestId('sheet-take').click();
  await lead.getByTestId('sheet-taken').waitFor();
  await untilSent(lead);
}

describe('a wall screen', () => {
  it('is let in by a code that a lead makes for it, and shows the lines with nothing to press', async () => {
    await prepare();
    await goTo(lead, 'plant');
    await lead.goto(`${server.url}#/plant/server`);
    await lead.getByTestId('lead-open').click();
    await confirm(lead, 'E-1', '4401');
    await lead.getByTestId('new-screen-code').click();
    const made = lead.getByTestId('made-code');
    await expect.poll(() => made.textContent()).toMatch(/^[0-9A-Z]{5}-[0-9A-Z]{5}$/);
    const code = (await made.textContent()) ?? '';
    await look(lead, { where: 'server, a code for a wall screen' });
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    await giveClock(context);
    screen = await context.newPage();
    screen.setDefaultTimeout(60_000);
    await screen.goto(`${server.url}#enrol=${code}`);
    await waitReady(screen);
    await screen.getByTestId('enrol-name').fill('Hall 2');
    await screen.getByTestId('enrol').click();
    await screen.locator('.wall .line-row').first().waitFor({ timeout: 60_000 });
    expect(await screen.locator('nav, .dock, .topbar, main button, main a').count()).toBe(0);
    // Elif acted on the line last, and whoever passes by does not read that.
    await screen.locator('.wall .line-row', { hasText: /last entry .+ ago/ }).waitFor();
    expect(await screen.getByTestId('screen-wall').textContent()).not.toContain('Elif');
    await look(screen, { where: 'wall screen' });
  });

  it('takes no scan, signs nobody in, leads nowhere, and writes nothing', async () => {
    const before = await written();
    await scan(screen, 'E-1');
    await scan(screen, 'K1-F-001');
    await openAt(screen, '#/plant/people');
    await screen.mouse.click(400, 300);
    await screen.getByTestId('wall-reads').waitFor();
    expect(await screen.getByTestId('wall-leave').count()).toBe(0);
    await expect.poll(() => screen.locator('.wall .line-row').count()).toBe(1);
    expect(await written()).toEqual(before);
    expect(JSON.parse(await server.act('aside'))).toEqual([]);
  });

  it('starts without a network and says since when it has heard nothing, until it hears again', async () => {
    await screen.evaluate(async () => void (await navigator.serviceWorker.ready));
    await passUntilSeen(screen, 'screen-wall');
    await screen.context().setOffline(true);
    await screen.reload();
    await waitReady(screen);
    await screen.locator('.wall .line-row').first().waitFor();
    await passUntilSeen(screen, 'wall-unheard');
    await expect
      .poll(() => screen.getByTestId('wall-unheard').textContent())
      .toMatch(/Nothing heard since \d{1,2}:\d{2}.*, for .+\. What stands here is from then/);
    await look(screen, { where: 'wall screen, nothing heard' });
    await screen.context().setOffline(false);
    await passUntilSeen(screen, 'wall-unheard', false);
  });

  it('stands in the list of tablets, and shows nothing any more once a lead shuts it out', async () => {
    await lead.getByRole('button', { name: 'Refresh' }).click();
    const row = lead.getByTestId('tablet').filter({ hasText: 'Hall 2' });
    await row.getByText('wall screen').waitFor();
    await row.getByTestId('revoke').click();
    await lead.getByTestId('revoke-yes').click();
    await row.getByText('shut out').waitFor();
    await screen.getByTestId('screen-shut').waitFor({ timeout: 60_000 });
    await screen.getByTestId('enrol').waitFor();
    expect(await screen.locator('.line-row').count()).toBe(0);
    await look(screen, { where: 'wall screen, shut out' });
    await screen.reload();
    await screen.getByTestId('screen-shut').waitFor({ timeout: 60_000 });
  });
});
