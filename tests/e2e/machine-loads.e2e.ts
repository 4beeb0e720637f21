// What a machine believes to be loaded, seen from a tablet: a real link asks a machine over AMQP, the line says that something differs,
// Stations says it slot by slot, and the act beside it opens that slot; when the machine says otherwise it is gone.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type RunningLink, startLink } from '../../src/link/link.ts';
import { tellPlant, verified } from '../shared/floor/story.ts';
import { type AnsweringMachine, startAnswering } from '../src/link/ipc2591/answering.ts';
import * as said from '../src/link/ipc2591/said.ts';
import { sendEnvelopes } from './support/amqp.ts';
import { startBrowser } from './support/browser.ts';
import { tellAt } from './support/colleague.ts';
import { openTablet } from './support/floor.ts';
import { look } from './support/look.ts';
import { type PlantServer, startServe } from './support/serve.ts';

const [one, two] = ['M1-F-001', 'M1-F-002'];
let server: PlantServer;
let browser: Browser;
let machine: AnsweringMachine;
let folder: string;
let link: RunningLink;
/** What the machine has on its first place. */
let reel = 'K9';

beforeAll(async () => {
  [server, browser] = await Promise.all([startServe(), startBrowser()]);
  folder = await mkdtemp(path.join(tmpdir(), 'reelward-link-'));
  machine = await startAnswering(({ RequestID }) =>
    said.loadedMaterials([said.location('P1', reel, 900), said.location('P2', 'K2', 900)], { RequestID }),
  );
});
afterAll(async () => {
  await browser?.close();
  await link?.stop();
  await machine?.close();
  await server?.stop();
  await rm(folder, { recursive: true, force: true });
});

it('a slot of which machine and scans say different things is told on the line and in Stations until it is cured', async () => {
  await tellAt(server, (tell) => {
    tellPlant({
      tell,
      entries: [],
      floor: () => {
        throw new Error('nothing is folded here');
      },
    });
    tell('reel.verified', verified(one, 'R-100', { reel: 'K1', lot: 'LOT-1' }));
    tell('reel.verified', verified(two, 'C-200', { reel: 'K2', lot: 'LOT-2' }));
  });
  const tablet = await openTablet(browser, server.url, { badge: null, hash: `#enrol=${server.firstCode}` });
  const { page } = tablet;
  await page.getByTestId('enrol-name').fill('Line side');
  await page.getByTestId('enrol').click();
  link = await startLink(
    {
      server: server.url,
      code: await server.newCode(),
      data: folder,
      stations: [
        {
          station: 'placer-1',
          line: 'L1',
          machine: 'M1',
          at: 'work',
          source: {
            kind: 'ipc2591',
            handle: 'L1.Placer',
            listen: '127.0.0.1:0',
            ask: { connect: `amqp://${machine.at}` },
            slots: { P1: one, P2: two },
          },
        },
      ],
    },
    { version: '0.1.0', say: () => undefined },
  );
  const at = link.listens[0]?.at ?? '';
  const stamp = () => ({ TimeStamp: new Date().toISOString() });
  await sendEnvelopes(at, [said.heartbeat('00:01:00', stamp())]);
  const believes = page.getByTestId('machine-believes');
  const goTo = (hash: string) =>
    page.evaluate((to) => {
      location.hash = to;
    }, hash);
  // A tablet that has just joined goes to a screen of its own choice.
  await expect
    .poll(
      async () => {
        await goTo('#/line');
        return believes.isVisible();
      },
      { timeout: 60_000 },
    )
    .toBe(true);
  await look(page);
  expect(await believes.textContent()).toContain('The machine believes something else on 1 slot.');
  await believes.getByRole('link').click();
  const row = page.getByTestId(`loads-${one}`);
  await row.waitFor();
  await look(page);
  expect(await row.textContent()).toContain(
    `${one}: the machine believes K9 (R-100), the scans say K1 (R-100). Open the slot and scan the reel there.`,
  );
  expect(await page.getByTestId('loads').textContent()).toContain('1 slot is as the scans say.');
  await row.getByRole('link').click();
  await page.getByRole('dialog').waitFor();
  expect(await page.getByRole('dialog').textContent()).toContain('K1');
  reel = 'K1';
  await sendEnvelopes(at, [said.materialsLoaded('K1')]);
  await goTo('#/plant/stations');
  await row.waitFor({ state: 'detached', timeout: 60_000 });
  expect(await page.getByTestId('loads').textContent()).toContain('2 slots are as the scans say.');
  expect(machine.asked.every(({ MessageName }) => MessageName.endsWith('GetLoadedMaterialsRequest'))).toBe(
    true,
  );
  await tablet.putAway();
});
