// A line whose machine has told its stops for two hours: beside a slot's run-out stands when it is if the line stops as often as so far.

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { emptyState } from '../../shared/floor/state.ts';
import { counted, started, tellPlant, verified } from '../shared/floor/story.ts';
import { startBrowser } from './support/browser.ts';
import { tellAt } from './support/colleague.ts';
import { openAt, openTablet } from './support/floor.ts';
import { look } from './support/look.ts';
import { type PlantServer, startServe } from './support/serve.ts';

const slot = 'M1-F-001';
/** Of each half hour the last so many seconds. */
const STANDS = 300;
let server: PlantServer;
let browser: Browser;

beforeAll(async () => {
  [server, browser] = await Promise.all([startServe(), startBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

it('a slot says when it runs out with as many stops as so far', async () => {
  const beganMs = Date.now() - 7_205_000;
  let second = 0;
  await tellAt(
    server,
    (tell) => {
      tellPlant({ tell, entries: [], floor: emptyState });
      const station = { station: 'placer', line: 'L1' };
      const known = { machine: 'M1', at: 'work', means: 'counter', version: '1', address: '' } as const;
      tell('station.known', { ...station, ...known });
      tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', quantity: 600 }));
      tell('run.started', started('r1', { panelSeconds: 60 }));
      for (second = 1; second <= 7_200; second += 1) {
        const stands = second % 1_800 >= 1_800 - STANDS;
        const turns = second % 1_800 === 0 || second % 1_800 === 1_800 - STANDS;
        if (turns || second === 1) tell('station.state', { ...station, code: stands ? 5200 : 1100 });
        if (!stands && second % 60 === 0) tell('panels.counted', counted('r1', 1));
        if (second % 120 === 0)
          tell('station.counted', { ...station, boot: 'b', total: 0, serial: null, skipped: null });
      }
    },
    () => beganMs + second * 1000,
  );
  const tablet = await openTablet(browser, server.url, { badge: null, hash: `#enrol=${server.firstCode}` });
  const { page } = tablet;
  await page.getByTestId('enrol-name').fill('Line side');
  await page.getByTestId('enrol').click();
  const row = page.getByTestId(`row-${slot}`);
  // A tablet that has just joined goes to a screen of its own choice.
  const isThere = async () => {
    await openAt(page, '#/line');
    return row.isVisible();
  };
  await expect.poll(isThere, { timeout: 60_000 }).toBe(true);
  await row.click();
  const said = page.getByTestId('with-stops');
  await said.waitFor();
  await expect
    .poll(() => said.textContent())
    .toMatch(/^about \d{1,2}:\d{2}.* if it stops as often as so far$/);
  await look(page);
  await tablet.putAway();
});
