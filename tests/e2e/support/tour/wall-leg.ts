// The tour of a wall screen: the browser begins anew, is let in to show the lines alone, hears nothing for a while, and is shut out.

import { waitReady } from '../browser.ts';
import { passUntilSeen } from '../clock.ts';
import type { PlantServer } from '../serve.ts';
import type { Here, Leg } from './here.ts';

/** Forgets all that this browser kept of the app, as a new one has. */
async function forget(here: Here): Promise<void> {
  const { page, url } = here;
  await page.goto('about:blank');
  const session = await page.context().newCDPSession(page);
  await session.send('Storage.clearDataForOrigin', {
    origin: new URL(url).origin,
    storageTypes: 'indexeddb,local_storage',
  });
  await session.detach();
}

/** The leg; the lines that it shows are those of the legs before. */
export function wallLeg(server: () => PlantServer): Leg {
  async function* wall(here: Here): AsyncGenerator<string> {
    const { page, url } = here;
    await forget(here);
    await page.goto(`${url}#enrol=${await server().newCode('screen')}`);
    await waitReady(page);
    await page.getByTestId('enrol-name').fill('Hall 2');
    await page.getByTestId('enrol').click();
    await page.locator('.wall .line-row').first().waitFor();
    yield 'wall screen';
    await page.keyboard.press('Shift');
    await page.getByTestId('wall-reads').waitFor();
    yield 'wall screen, touched';
    await server().kill();
    await passUntilSeen(page, 'wall-unheard');
    yield 'wall screen, nothing heard';
    await server().start();
    const told = JSON.parse(await server().act('tablets')) as readonly {
      readonly tablet: string;
      readonly name: string;
    }[];
    await server().act('revoke', told.find(({ name }) => name === 'Hall 2')?.tablet ?? '');
    await page.reload();
    await page.getByTestId('screen-shut').waitFor();
    await page.getByTestId('enrol').waitFor();
    yield 'wall screen, shut out';
  }
  return { name: 'wall', stops: wall };
}
