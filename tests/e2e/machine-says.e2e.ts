// What a machine of IPC-2591 says beside its count, seen on the line's screen: that it stands and why, another recipe than the line builds until an
// engineer says that it is the right one, and faults of picking beside the loss of their slot.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { emptyState } from '../../shared/floor/state.ts';
import { makePin } from '../../src/app/device/pin.ts';
import { type RunningLink, startLink } from '../../src/link/link.ts';
import { started, tellPlant, verified } from '../shared/floor/story.ts';
import * as said from '../src/link/ipc2591/said.ts';
import { sendEnvelopes } from './support/amqp.ts';
import { startBrowser } from './support/browser.ts';
import { tellAt } from './support/colleague.ts';
import { openAt, openTablet, readLog, signIn } from './support/floor.ts';
import { look } from './support/look.ts';
import { type PlantServer, startServe } from './support/serve.ts';

const slot = 'M1-F-001';
let server: PlantServer;
let browser: Browser;
let folder: string;
let link: RunningLink;

beforeAll(async () => {
  [server, browser] = await Promise.all([startServe(), startBrowser()]);
  folder = await mkdtemp(path.join(tmpdir(), 'reelward-link-'));
});
afterAll(async () => {
  await browser?.close();
  await link?.stop();
  await server?.stop();
  await rm(folder, { recursive: true, force: true });
});

it('a machine’s stop, its recipe and its faults of picking stand on the line with the next act', async () => {
  const pin = await makePin('4401');
  await tellAt(server, (tell) => {
    tellPlant({ tell, entries: [], floor: emptyState });
    tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', lot: 'LOT-1', quantity: 600 }));
    tell('run.started', started('r1'));
    tell('person.added', { person: 'lea', name: 'Lea', role: 'engineer', badge: 'E-1', pin });
  });
  const tablet = await openTablet(browser, server.url, { badge: null, hash: `#enrol=${server.firstCode}` });
  const { page } = tablet;
  await page.getByTestId('enrol-name').fill('Line side');
  await page.getByTestId('enrol').click();
  const source = {
    kind: 'ipc2591' as const,
    handle: 'L1.Placer',
    listen: '127.0.0.1:0',
    slots: { SLOT22: slot },
  };
  link = await startLink(
    {
      server: server.url,
      code: await server.newCode(),
      data: folder,
      stations: [{ station: 'placer-1', line: 'L1', machine: 'M1', at: 'work', source }],
    },
    { version: '0.1.0', say: () => undefined },
  );
  const now = { TimeStamp: new Date().toISOString() };
  await sendEnvelopes(link.listens[0]?.at ?? '', [
    said.heartbeat('00:01:00', now),
    { ...said.stateChanged(5200), ...now },
    { ...said.recipeActivated('P-4711'), ...now },
    { ...said.faultOccurred('f-1'), ...now },
    { ...said.faultOccurred('f-2'), ...now },
  ]);
  const state = page.getByTestId('told-state');
  // A tablet that has just joined goes to a screen of its own choice.
  const isThere = async () => {
    await openAt(page, '#/line');
    return state.isVisible();
  };
  await expect.poll(isThere, { timeout: 60_000 }).toBe(true);
  await expect.poll(() => state.textContent()).toContain('The machine says: Unplanned stop (5200), since');
  await expect.poll(() => page.getByTestId('line-summary').textContent()).toContain('if it starts again now');
  const recipe = page.getByTestId('machine-recipe');
  await recipe.waitFor();
  await expect
    .poll(() => recipe.textContent())
    .toContain('placer-1 runs “P-4711 B”. This line builds Brook, top.');
  await look(page);
  await signIn(page, 'E-1');
  await page.getByTestId('recipe-right-placer-1').click();
  await recipe.waitFor({ state: 'detached' });
  const known = (await readLog(page, 'reelward-log')).find(({ kind }) => kind === 'recipe.known');
  expect(known?.payload).toEqual({ line: 'L1', recipe: 'P-4711', product: 'Brook', side: 'top' });
  // What is summed is told at the latest when the link ends.
  await link.stop();
  await page.getByTestId(`row-${slot}`).click();
  const sheet = page.getByTestId('slot-sheet');
  await expect
    .poll(() => sheet.textContent(), { timeout: 60_000 })
    .toContain('The machine told 2 pick faults since');
  await look(page);
  await tablet.putAway();
});
