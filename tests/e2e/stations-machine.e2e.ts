// A machine that tells its boards by its own channel, seen under Plant → Stations: what is set at it, what it told, and what was not heard.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type RunningLink, startLink } from '../../src/link/link.ts';
import { clock, departed, guid, type Machine, startMachine } from '../src/link/hermes/machine.ts';
import { startBrowser } from './support/browser.ts';
import { openAt, openTablet } from './support/floor.ts';
import { enrolAs } from './support/joined.ts';
import { type PlantServer, startServe } from './support/serve.ts';

let server: PlantServer;
let browser: Browser;
let machine: Machine;
let link: RunningLink;
let folder = '';

beforeAll(async () => {
  clock.ms = Date.now();
  [server, browser, machine] = await Promise.all([startServe(), startBrowser(), startMachine()]);
  folder = await mkdtemp(path.join(tmpdir(), 'reelward-link-'));
  const source = { kind: 'hermes' as const, connect: machine.at };
  const station = { station: 'exit-1', line: 'L1', machine: null, at: 'out' as const, source };
  link = await startLink(
    { server: server.url, code: await server.newCode(), data: folder, stations: [station] },
    { version: '0.1.0', say: () => undefined },
  );
});
afterAll(async () => {
  await link?.stop();
  await machine?.stop();
  await browser?.close();
  await server?.stop();
  await rm(folder, { recursive: true, force: true });
});

it('a machine’s boards, what to set at it, and what it told that is not counted, stand under Stations', async () => {
  await expect.poll(() => machine.clients(), { timeout: 30_000 }).toBe(1);
  for (const at of [1, 2, 2]) machine.tell(departed({ BoardId: guid(at), TopBarcode: `SN-${at}` }));
  machine.tell(departed({ BoardId: guid(3), BoardTransfer: 3 }));
  const tablet = await openTablet(browser, `${server.url}#enrol=${server.firstCode}`, { badge: null });
  const { page } = tablet;
  await enrolAs(page, server.firstCode, 'Line front');
  const card = page.getByTestId('station-exit-1');
  // A tablet that has just joined goes to a screen of its own choice.
  const isThere = async () => {
    await openAt(page, '#/plant/stations');
    return card.isVisible();
  };
  await expect.poll(isThere, { timeout: 60_000 }).toBe(true);
  await expect
    .poll(() => card.textContent(), { timeout: 60_000 })
    .toMatch(/2, since the link last began to hear it/);
  await expect
    .poll(() => page.getByTestId('not-understood').textContent(), { timeout: 60_000 })
    .toContain('by hand');
  await expect.poll(() => page.getByTestId('not-understood').textContent()).toContain('Each is counted once');
  await expect.poll(() => page.getByTestId('what-to-set').textContent()).toContain(machine.at);
  expect(await page.getByTestId('what-to-type').count()).toBe(0);
  await tablet.putAway();
});
