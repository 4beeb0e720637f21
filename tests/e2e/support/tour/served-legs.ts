// The tour of a plant with a server: a tablet joins, people and a setup come in, two tablets that were apart disagree, the server
// is away, and the log is taken over by a newer window.

import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { waitReady } from '../browser.ts';
import { drawn, pass } from '../clock.ts';
import { goOn, goTo, pad, reelLabel, scanAll, signIn } from '../floor.ts';
import { joinPlant, untilSent, untilSync } from '../joined.ts';
import { leaveToTour } from '../look.ts';
import type { PlantServer } from '../serve.ts';
import { closeDialogs, confirm, goThere, type Here, type Leg, openBy } from './here.ts';
import { newTabletsLeg } from './new-tablets-leg.ts';
import { rightLegs } from './right-legs.ts';
import { stationLegs } from './station-legs.ts';
import { wallLeg } from './wall-leg.ts';
import { boardWithoutLine, fromPlantFile } from './way-legs.ts';

const sheet =
  'Slot\tPart\tQty per panel\tTape width\tPitch\nK1-F-001\tBW-11\t3\t8\t4\nK1-F-002\tBW-12\t2\t8\t4\nK1-F-003\tBW-13\t1\t8\t4\n';

/** The first person signs in at once, and is led on to the next one and the first sheet. */
async function* firstPeople(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/people');
  await page.getByTestId('person-name').fill('Elif');
  await page.getByTestId('person-badge').fill('E-1');
  await page.getByTestId('person-pin').fill('4401');
  await page.getByTestId('person-save').click();
  await page.locator('dialog[open]').waitFor();
  yield 'first person, who is there';
  await page.locator('dialog').getByRole('button', { name: 'Elif' }).click();
  await page.locator('.pinpad').waitFor();
  yield 'first person, PIN';
  await pad(page, '4401');
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  yield 'people, the first';
  await page.getByRole('button', { name: 'Change Elif' }).click();
  await page.getByTestId('person-last').waitFor();
  yield 'person, the last who adds people';
  await goThere(here, '#/change');
  await page.getByTestId('missing-people').waitFor();
  yield 'change, a person and no product';
  await goThere(here, '#/plant/people');
  await page.getByTestId('person-add').click();
  await page.getByTestId('person-name').fill('Ailsa');
  await page.getByTestId('person-badge').fill('O-1');
  await page.getByTestId('role-operator').click();
  await page.getByTestId('person-save').click();
  await page.getByTestId('listed-Ailsa').waitFor();
  yield 'people, the next';
  await signIn(page, 'O-1');
  await page.getByTestId('plant-gate').waitFor();
  yield 'gate, what was begun is kept';
  await openBy(here, 'gate-sign-in');
  yield 'gate, sign in';
  await signIn(page, 'E-1');
  await page.getByTestId('plant-gate').waitFor({ state: 'detached' });
  yield* fromPlantFile(here);
  yield* boardWithoutLine(here);
}

/** Takes in a sheet of a product. */
async function takeSheet(here: Here, product: string, rows: string): Promise<void> {
  const { page } = here;
  await goThere(here, '#/plant/sheet');
  await page.getByTestId('sheet-paste').fill(rows);
  await page.getByTestId('sheet-paste-read').click();
  await page.getByTestId('take-product').fill(product);
  await page.getByTestId('take-revision').fill('1');
  await page.getByTestId('take-top').click();
  await page.getByTestId('sheet-take').click();
  await page.getByTestId('sheet-taken').waitFor();
}

/** A second tablet that joins with a code of its own. */
async function second(browser: Browser, server: PlantServer, name = 'Line rear'): Promise<Page> {
  const page = await joinPlant(browser, server.url, { code: await server.newCode(), name });
  leaveToTour(page);
  await page
    .getByText(/Fell (switch|button)/)
    .first()
    .waitFor();
  await signIn(page, 'O-1');
  return page;
}

/** One tablet splices onto a reel that the other has taken off meanwhile. */
async function* emptied(here: Here, other: Page): AsyncGenerator<string> {
  const { page } = here;
  const both = [page, other];
  await goTo(other, 'log');
  await other.getByTestId('log-conflicts').click();
  await other.locator('main .empty').waitFor(); // what was settled has come
  await goTo(other, 'load');
  for (const each of both) await each.context().setOffline(true);
  try {
    await goThere(here, '#/load');
    await page.getByRole('button', { name: 'K1-F-003:' }).first().click();
    await page.getByTestId('slot-unload').click();
    await page.getByTestId('unload-empty').click();
    await page.getByTestId('notice').getByText('K1-F-003').waitFor();
    await scanAll(other, 'K1-F-003', reelLabel({ P: 'BW-13', Q: '900', '1T': 'LT-S', '3S': 'R-710' }));
    await goOn(other);
  } finally {
    for (const each of both) await each.context().setOffline(false);
  }
  await Promise.all(both.map(untilSent));
  await goThere(here, '#/log');
  await page.getByTestId('log-conflicts').click();
  await openBy(here, 'settle');
  await page.getByTestId('settle-empty').waitFor();
  yield 'disagreement, spliced or emptied';
  await closeDialogs(page);
}

/** The legs of one plant's server; they need each other's work, in this order. */
export function servedLegs(browser: () => Browser, server: () => PlantServer): readonly Leg[] {
  async function* join(here: Here): AsyncGenerator<string> {
    const { page, url } = here;
    await page.goto(`${url}#enrol=${server().firstCode}`);
    await page.getByTestId('enrol-code').waitFor();
    yield 'server, a tablet joins';
    await page.getByTestId('enrol-code').fill('ABCDE');
    await page.getByTestId('enrol-name').fill('Line front');
    await page.getByTestId('enrol').click();
    await page.getByTestId('enrol-wrong').waitFor();
    yield 'server, a wrong code';
    await page.getByTestId('enrol-code').fill(server().firstCode);
    await page.getByTestId('enrol').click();
    await untilSync(page, 'live');
    yield 'server, joined';
    yield* firstPeople(here);
    await takeSheet(here, 'Fell switch', sheet);
    await page.getByTestId('sheet-build').click();
    await page.getByTestId('screen-load').waitFor();
    yield 'load, nothing loaded yet';
    await goThere(here, '#/change');
    yield 'change, one product only';
    await untilSent(page);
  }

  async function* apart(here: Here): AsyncGenerator<string> {
    const { page } = here;
    const other = await second(browser(), server());
    const both = [page, other];
    await Promise.all(
      both.map((each) =>
        each.locator('[data-testid=offline][data-state=ready]').waitFor({ timeout: 60_000 }),
      ),
    );
    for (const each of both) await each.context().setOffline(true);
    await goThere(here, '#/load');
    try {
      for (const [index, each] of both.entries()) {
        const reel = reelLabel({ P: 'BW-13', Q: '2000', '1T': `LT-${index}`, '3S': `R-70${index}` });
        await scanAll(each, 'K1-F-003', reel);
        await goOn(each);
      }
    } finally {
      for (const each of both) await each.context().setOffline(false);
    }
    await Promise.all(both.map(untilSent));
    await goThere(here, '#/log');
    await page.getByTestId('log-conflicts').click();
    await page.getByTestId('settle').waitFor();
    yield 'log, a disagreement';
    await openBy(here, 'settle');
    yield 'disagreement, settled';
    await page.getByTestId('settle-reason').fill('Looked at the machine');
    await page.getByTestId('settle-keep').first().click();
    await page.getByTestId('settle').waitFor({ state: 'detached' });
    await untilSent(page);
    yield* emptied(here, other);
    await goTo(other, 'plant');
    await other.context().close();
  }

  /** From one product to another and back, again and again: nothing moves, so a changeover is done as soon as it has begun. */
  async function* again(here: Here): AsyncGenerator<string> {
    const { page } = here;
    await takeSheet(
      here,
      'Fell button',
      'Slot\tPart\tQty per panel\tTape width\tPitch\nK1-F-003\tBW-13\t1\t8\t4\n',
    );
    await goThere(here, '#/load');
    await page.getByRole('button', { name: 'K1-F-003:' }).first().click();
    await page.locator('dialog[open]').waitFor();
    await drawn(page);
    const unload = page.getByTestId('slot-unload');
    if (await unload.isVisible()) {
      await unload.click();
      await page.getByTestId('unload-uncounted').click();
    }
    await goThere(here, '#/load');
    await scanAll(page, 'K1-F-003', reelLabel({ P: 'BW-13', Q: '900', '1T': 'LT-T', '3S': 'R-720' }));
    for (let change = 0; change < 3; change++) {
      await goThere(here, '#/change');
      await page.locator('[data-testid^=plan-]').first().click();
      await page.getByTestId('changeover').waitFor();
      await page.getByTestId('release').waitFor(); // nothing is built, so the line stands
      if (change === 2) break;
      await openBy(here, 'release');
      await confirm(page, 'E-1', '4401');
      await page.getByTestId('release-reason').fill('Nothing to move');
      await page.getByTestId('release-yes').click();
      await page.getByTestId('screen-line').waitFor();
    }
    await page.getByTestId('tab-feeders').click();
    yield 'change, back to a product that was built before';
    await page.getByTestId('tab-times').click();
    await page.getByTestId('times-median').waitFor();
    yield 'change, times against the last time';
  }

  /** One tablet cancels the changeover that the other releases meanwhile. */
  async function* parted(here: Here): AsyncGenerator<string> {
    const { page } = here;
    const other = await second(browser(), server(), 'Line far');
    const both = [page, other];
    await other.locator('[data-testid=offline][data-state=ready]').waitFor({ timeout: 60_000 });
    await signIn(other, 'E-1');
    await goTo(other, 'change');
    await other.getByTestId('release').waitFor();
    for (const each of both) await each.context().setOffline(true);
    try {
      await other.getByRole('button', { name: 'Cancel changeover' }).click();
      await other.locator('dialog').getByRole('button', { name: 'Cancel changeover' }).click();
      await other.getByTestId('release').waitFor({ state: 'detached' });
      await goThere(here, '#/change');
      await openBy(here, 'release');
      await confirm(page, 'E-1', '4401');
      await page.getByTestId('release-reason').fill('Nothing to move');
      await page.getByTestId('release-yes').click();
      await page.getByTestId('screen-line').waitFor();
    } finally {
      for (const each of both) await each.context().setOffline(false);
    }
    await Promise.all(both.map(untilSent));
    await goThere(here, '#/log');
    await page.getByTestId('log-conflicts').click();
    await page.getByTestId('settle').waitFor();
    yield 'log, a changeover released and cancelled';
    await openBy(here, 'settle');
    await page.getByTestId('settle-keep').nth(1).waitFor();
    yield 'disagreement, a changeover';
    await page.getByTestId('settle-reason').fill('It was run');
    await page.getByTestId('settle-keep').first().click();
    await page.getByTestId('settle').waitFor({ state: 'detached' });
    await untilSent(page);
    await other.context().close();
  }

  async function* lead(here: Here): AsyncGenerator<string> {
    const { page } = here;
    await goThere(here, '#/plant/server');
    await page.getByTestId('lead-open').click();
    await page.getByTestId('badge').waitFor();
    yield 'server, who asks';
    await confirm(page, 'E-1', '4401');
    await page.getByTestId('new-screen-code').click();
    await page.getByTestId('made-code').waitFor();
    yield 'server, a code for a wall screen';
    await page.getByTestId('new-code').click();
    await page.getByTestId('made-code').waitFor();
    yield 'server, tablets and a code';
    await page.getByTestId('tablet').filter({ hasText: 'Line rear' }).getByTestId('revoke').click();
    await page.locator('dialog[open]').waitFor();
    yield 'server, a tablet shut out';
  }

  async function* away(here: Here): AsyncGenerator<string> {
    const { page } = here;
    await goThere(here, '#/plant/server');
    await page.getByTestId('lead-open').click();
    await confirm(page, 'E-1', '4401');
    await page.getByTestId('new-code').waitFor();
    await server().kill();
    await page.getByTestId('new-code').click();
    await page.getByTestId('lead-wrong').waitFor();
    await page.getByTestId('reason').waitFor({ timeout: 60_000 });
    yield 'server, away';
    await goThere(here, '#/line');
    yield 'line, the server is away';
    await server().start();
    await untilSync(page, 'live');
  }

  async function* restored(here: Here): AsyncGenerator<string> {
    const { page } = here;
    const backup = path.join(server().folder, 'backup.sqlite');
    await server().act('backup', backup);
    await goThere(here, '#/load');
    await scanAll(page, 'K1-F-001', reelLabel({ P: 'BW-11', Q: '900', '1T': 'LT-R', '3S': 'R-740' }));
    await goOn(page);
    await untilSent(page);
    await server().kill();
    await server().act('restore', backup, '--replace');
    await server().start();
    await untilSync(page, 'live');
    await goThere(here, '#/plant/server');
    await page.getByTestId('rolled-back').waitFor();
    yield 'server, it holds less than before';
    await page.getByTestId('rolled-back-seen').click();
    await page.getByTestId('rolled-back').waitFor({ state: 'detached' });
  }

  /** What lies between bends the proofs: as good as a server that shows another log than before. */
  async function* forked(here: Here): AsyncGenerator<string> {
    const { page } = here;
    await goThere(here, '#/plant/server');
    await page.route('**/api/tree', async (route) => {
      const response = await route.fetch();
      const told = (await response.json()) as { readonly consistency: readonly string[][] };
      const bent = told.consistency.map(() => [`${'A'.repeat(43)}=`]);
      await route.fulfill({ response, json: { ...told, consistency: bent } });
    });
    await page.reload();
    await waitReady(page);
    await page.getByTestId('head-fault').waitFor();
    yield 'server, it shows two logs';
    await page.unroute('**/api/tree');
    await page.getByTestId('head-fault-seen').click();
    await page.getByTestId('head-fault').waitFor({ state: 'detached' });
  }

  /** Another tablet's clock is wrong; it sends an entry, so that the server sees it. */
  async function* clocks(here: Here): AsyncGenerator<string> {
    const { page } = here;
    const other = await second(browser(), server(), 'Stores');
    await pass(other, 20 * 60_000);
    await goTo(other, 'load');
    await scanAll(other, 'K1-F-002', reelLabel({ P: 'BW-12', Q: '900', '1T': 'LT-C', '3S': 'R-730' }));
    await goOn(other);
    await untilSent(other);
    // A tablet hears of it when it begins to sync.
    await page.reload();
    await waitReady(page);
    await goThere(here, '#/plant/server');
    await page.getByTestId('clocks-off').waitFor({ timeout: 60_000 });
    yield 'server, a tablet’s clock is off';
    await other.context().close();
  }

  async function* taken({ page }: Here): AsyncGenerator<string> {
    await page.evaluate(() => {
      indexedDB.open('reelward-log', 999_999);
    });
    await page.getByTestId('fault').waitFor();
    yield 'fault: a newer version has the log';
  }

  return [
    { name: 'join', stops: join },
    { name: 'apart', stops: apart },
    ...stationLegs(server),
    { name: 'again', stops: again },
    { name: 'parted', stops: parted },
    { name: 'lead', stops: lead },
    { name: 'away', stops: away },
    ...rightLegs((name) => second(browser(), server(), name)),
    { name: 'restored', stops: restored },
    { name: 'forked', stops: forked },
    { name: 'clocks', stops: clocks },
    newTabletsLeg,
    wallLeg(server),
    { name: 'taken', stops: taken },
  ];
}
