// A machine of IPC-2591 seen from a tablet: a real link beside the plant's real server, the machine's messages by AMQP, and what Stations says of
// them: heard, what differs from the log, what is not used, what to type at the machine.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type RunningLink, startLink } from '../../src/link/link.ts';
import * as said from '../src/link/ipc2591/said.ts';
import { sendEnvelopes } from './support/amqp.ts';
import { startBrowser } from './support/browser.ts';
import { openAt, openTablet } from './support/floor.ts';
import { enrolAs } from './support/joined.ts';
import { look } from './support/look.ts';
import { type PlantServer, startServe } from './support/serve.ts';

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

it('a machine is heard, and what it says differently from the log stands beside it with the next act', async () => {
  const tablet = await openTablet(browser, server.url, { badge: null, hash: `#enrol=${server.firstCode}` });
  const { page } = tablet;
  await enrolAs(page, server.firstCode, 'Line front');
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
          source: { kind: 'ipc2591', handle: 'L1.Placer', listen: '127.0.0.1:0' },
        },
      ],
    },
    { version: '0.1.0', say: () => undefined },
  );
  const at = link.listens[0]?.at ?? '';
  const TimeStamp = new Date().toISOString();
  await sendEnvelopes(at, [
    said.heartbeat('00:01:00', { TimeStamp }),
    said.stateChanged(1100),
    said.workCompleted('w1', 'Completed', { TimeStamp }),
    said.splicePoint('K1', 'K2', 10, { TimeStamp }),
    said.envelope('Heartbeat', {}, { TimeStamp, Source: 'L1.Oven' }),
  ]);
  await openAt(page, '#/plant/stations');
  const card = page.getByTestId('station-placer-1');
  await card.getByTestId('machine-differs').waitFor({ timeout: 60_000 });
  await look(page);
  for (const said of [
    'Working',
    'the machine goes on with K2, the scans say nothing of it',
    'A machine sends for which no station is set',
    'L1.Oven',
  ])
    await expect.poll(() => card.textContent(), { timeout: 60_000 }).toContain(said);
  await expect
    .poll(() => page.getByTestId('what-to-type-at-machine').textContent())
    .toContain(`amqp://${at}`);
  await tablet.putAway();
});
