// Two tablets and the plant's real server, from nothing: joined by one-time codes, live beside each other, cut off and back, the
// server killed under them, its store put back from a backup, one of them shut out. Both browsers' own databases are compared.

import path from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createReplica, foldIn } from '../../shared/floor/replica.ts';
import { type FloorState, slotKey } from '../../shared/floor/state.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { startBrowser } from './support/browser.ts';
import { expectWhole, goOn, goTo, pad, reelLabel, scanAll, signIn } from './support/floor.ts';
import { addPerson, chip, enrolAs, joinPlant, untilSent, untilSync } from './support/joined.ts';
import { type PlantServer, startServe } from './support/serve.ts';

interface Joined {
  readonly context: BrowserContext;
  readonly page: Page;
}

const sheet =
  'Slot\tPart\tQty per panel\tTape width\tPitch\nK1-F-001\tBW-11\t3\t8\t4\nK1-F-002\tBW-12\t2\t8\t4\nK1-F-003\tBW-13\t1\t8\t4\nK1-F-004\tBW-14\t4\t8\t4\nK1-F-005\tBW-14\t4\t8\t4\n';

let server: PlantServer;
let browser: Browser;
let one: Joined;
let two: Joined;

beforeAll(async () => {
  [server, browser] = await Promise.all([startServe(), startBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

async function join(code: string, name: string): Promise<Joined> {
  const page = await joinPlant(browser, server.url, { code, name });
  return { context: page.context(), page };
}

/** Waits until the app's own copy is kept, so that its parts load without a network. */
async function untilOffline(page: Page): Promise<void> {
  await expect.poll(() => chip(page).getAttribute('data-state'), { timeout: 60_000 }).toBe('ready');
}

/** Every entry in the tablet's own database. */
async function logOf({ page }: Joined): Promise<readonly Entry[]> {
  const rows = await page.evaluate(
    () =>
      new Promise<{ entry: unknown }[]>((resolve, reject) => {
        const opening = indexedDB.open('reelward-log');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const all = opening.result.transaction('entries').objectStore('entries').getAll();
          all.onerror = () => reject(all.error);
          all.onsuccess = () => {
            opening.result.close();
            resolve(all.result as { entry: unknown }[]);
          };
        };
      }),
  );
  return rows.map((row) => row.entry as Entry).sort(compareEntries); // the store checked them when they were written
}

function floorOf(entries: readonly Entry[]): FloorState {
  const replica = createReplica();
  foldIn(replica, entries);
  return replica.state;
}

const hashes = (entries: readonly Entry[]) => entries.map((entry) => entry.hash);

/** Both tablets hold the same entries, and every chain of them is whole. */
async function expectSame(): Promise<FloorState> {
  const both = async () => {
    const [own, others] = [hashes(await logOf(one)), hashes(await logOf(two))];
    const missing = { one: others.filter((hash) => !own.includes(hash)).length, two: 0 };
    return { ...missing, two: own.filter((hash) => !others.includes(hash)).length };
  };
  await expect.poll(both, { timeout: 60_000 }).toEqual({ one: 0, two: 0 });
  const entries = await logOf(one);
  expectWhole(entries);
  return floorOf(entries);
}

let lastReel = 500;
const reel = (part: string, id = `R-${++lastReel}`) =>
  reelLabel({ P: part, Q: '2000', '1T': `LT-${id}`, '3S': id });

describe('two tablets and their server', () => {
  it('join by a code each, and what one brings in the other sees', async () => {
    one = await join(server.firstCode, 'Line front');
    const { page } = one;
    await addPerson(page, 'Elif', { badge: 'E-1', role: 'Engineer', pin: '4401' });
    await signIn(page, 'E-1');
    await addPerson(page, 'Morag', { badge: 'L-1', role: 'Shift lead', pin: '3301' });
    await addPerson(page, 'Ailsa', { badge: 'O-1', role: 'Operator', pin: '2201' });
    await page.goto(`${server.url}#/plant/sheet`);
    await page.getByTestId('sheet-paste').fill(sheet);
    await page.getByTestId('sheet-paste-read').click();
    await page.getByTestId('take-product').fill('Fell switch');
    await page.getByTestId('take-revision').fill('1');
    await page.getByTestId('take-top').click();
    await page.getByTestId('sheet-take').click();
    await page.getByTestId('sheet-taken').waitFor();
    await page.getByTestId('sheet-build').click();
    await page.getByTestId('screen-load').waitFor();
    await untilSent(page);

    two = await join(await server.newCode(), 'Line rear');
    await two.page.getByText('Fell switch').first().waitFor();
    await signIn(two.page, 'O-1');
    const floor = await expectSame();
    expect([...floor.tablets.keys()].filter((tablet) => tablet !== 'server').length).toBe(2);
  });

  it('see a splice of the other as it happens', async () => {
    const { page } = one;
    for (const [slot, part] of [
      ['K1-F-001', 'BW-11'],
      ['K1-F-002', 'BW-12'],
    ] as const) {
      expect(await scanAll(page, slot, reel(part))).toMatchObject({ verdict: 'accepted' });
      await goOn(page);
    }
    await untilSent(page);
    await goTo(two.page, 'log');
    await two.page.getByTestId('entries').waitFor();
    const id = 'R-600';
    expect(await scanAll(page, 'K1-F-001', reel('BW-11', id))).toMatchObject({ verdict: 'accepted' });
    const writtenMs = Date.now();
    await expect
      .poll(
        async () => {
          const tapes = floorOf(await logOf(two)).slots.get(slotKey('L1', 'K1-F-001'))?.tapes;
          return tapes?.map((tape) => tape.reel).includes(id);
        },
        { timeout: 60_000, interval: 20 },
      )
      .toBe(true);
    console.log(`a splice was on the other tablet after ${Date.now() - writtenMs} ms`);
    await goOn(page);
    await expectSame();
  });

  it('tell who checked a PIN: the server while it answers, the tablet for those it has seen', async () => {
    const { page, context } = one;
    const signInByPin = async (name: string, pin: string) => {
      await page.getByTestId('sign-in').click();
      await page.locator('dialog').getByRole('button', { name }).click();
      await pad(page, pin);
    };
    const lastCheck = async () =>
      (await logOf(one)).filter((entry) => entry.kind === 'person.signed-in').at(-1)?.payload['checked'];
    await signInByPin('Elif', '9999');
    await page.getByText('4 tries left').waitFor();
    await pad(page, '4401');
    await page.locator('dialog').waitFor({ state: 'detached' });
    await expect.poll(lastCheck).toBe('server');
    await untilOffline(page);
    await context.setOffline(true);
    await signInByPin('Elif', '4401');
    await page.locator('dialog').waitFor({ state: 'detached' });
    await expect.poll(lastCheck).toBe('tablet');
    await signInByPin('Morag', '3301');
    await page.getByText('this tablet has never confirmed Morag').waitFor();
    await page.keyboard.press('Escape');
    await context.setOffline(false);
    await untilSent(page);
  });

  it('work on apart, agree again when joined, and a lead settles what they disagree about', async () => {
    await Promise.all([untilOffline(one.page), untilOffline(two.page)]);
    await one.context.setOffline(true);
    await two.context.setOffline(true);
    const load = async ({ page }: Joined, slot: string, label: string) => {
      expect(await scanAll(page, slot, label)).toMatchObject({ verdict: 'accepted' });
      await goOn(page);
    };
    await load(one, 'K1-F-003', reel('BW-13', 'R-701'));
    await load(two, 'K1-F-003', reel('BW-13', 'R-702'));
    await load(one, 'K1-F-004', reel('BW-14', 'R-703'));
    await load(two, 'K1-F-005', reel('BW-14', 'R-703'));
    await expect.poll(() => chip(two.page).getAttribute('data-backlog')).not.toBe('0');
    await one.context.setOffline(false);
    await two.context.setOffline(false);
    await Promise.all([untilSent(one.page), untilSent(two.page)]);
    const apart = await expectSame();
    expect([...apart.conflicts.values()].map(({ kind }) => kind).sort()).toEqual([
      'reel-on-two-slots',
      'slot-loaded-twice',
    ]);

    const { page } = two;
    await signIn(page, 'L-1');
    await goTo(page, 'log');
    await page.getByTestId('log-conflicts').click();
    for (let left = 2; left > 0; left -= 1) {
      await expect.poll(() => page.getByTestId('settle').count()).toBe(left);
      await page.getByTestId('settle').first().click();
      await page.getByTestId('settle-reason').fill('Looked at the machine');
      await page
        .locator('dialog button', { hasText: /R-701|K1-F-004/ })
        .first()
        .click();
      await page.locator('dialog').waitFor({ state: 'detached' });
    }
    await page.getByText('The tablets agree.').waitFor();
    await untilSent(page);
    const settled = await expectSame();
    expect(settled.conflicts.size).toBe(0);
    const tapesOn = (slot: string) =>
      settled.slots.get(slotKey('L1', slot))?.tapes.map((tape) => tape.reel) ?? [];
    expect(tapesOn('K1-F-003')).toEqual(['R-701']);
    expect(tapesOn('K1-F-004')).toEqual(['R-703']);
    expect(tapesOn('K1-F-005')).toEqual([]);
  });

  it('lose nothing when the server is killed, and say meanwhile that it is away', async () => {
    await server.kill();
    expect(await scanAll(one.page, 'K1-F-002', reel('BW-12', 'R-801'))).toMatchObject({
      verdict: 'accepted',
    });
    await goOn(one.page);
    await untilSync(one.page, 'waiting');
    await expect.poll(() => chip(one.page).textContent()).toMatch(/Server not reached for .*1 to send/);
    await chip(one.page).click();
    await expect.poll(() => one.page.getByTestId('reason').textContent()).toContain('does not answer');
    await server.start();
    await one.page.getByTestId('sync-now').click();
    await Promise.all([untilSent(one.page), untilSent(two.page)]);
    const floor = await expectSame();
    expect(floor.slots.get(slotKey('L1', 'K1-F-002'))?.tapes.at(-1)?.reel).toBe('R-801');
  });

  it('bring back what a restored backup lacks', async () => {
    const backup = path.join(server.folder, 'backup.sqlite');
    await server.act('backup', backup);
    expect(await scanAll(one.page, 'K1-F-001', reel('BW-11', 'R-901'))).toMatchObject({
      verdict: 'accepted',
    });
    await goOn(one.page);
    await untilSent(one.page);
    await expectSame();
    const before = await logOf(one);
    await server.kill();
    await server.act('restore', backup, '--replace');
    await server.start();
    await untilSync(one.page, 'live');
    // Each says that the server went back, until somebody has looked.
    for (const { page } of [one, two]) {
      await untilSync(page, 'live');
      await chip(page).click();
      await page.getByTestId('rolled-back').waitFor();
      await page.getByTestId('rolled-back-seen').click();
      await page.getByTestId('rolled-back').waitFor({ state: 'detached' });
    }
    // Only a tablet that was never here shows what the server itself holds.
    const three = await join(await server.newCode(), 'Stores');
    // What the server itself has told stands beside it: the restore, and who was let in.
    const byTablets = (entries: readonly Entry[]) => entries.filter(({ tablet }) => tablet !== 'server');
    await expect
      .poll(async () => byTablets(await logOf(three)).length, { timeout: 60_000 })
      .toBe(byTablets(before).length + 1);
    expect(hashes(await logOf(three))).toEqual(expect.arrayContaining([...hashes(before)]));
    await three.context.close();
  });

  it('are let in and shut out by a lead, and one that is shut out is told so', async () => {
    const { page } = one;
    await untilSent(page);
    await untilSync(two.page, 'live');
    await page.goto(`${server.url}#/plant/server`);
    await page.getByTestId('lead-open').click();
    await page.getByTestId('badge').fill('L-1');
    await page.getByTestId('badge-enter').click();
    await pad(page, '3301');
    await page.getByTestId('new-code').click();
    const made = page.getByTestId('made-code');
    await expect.poll(() => made.textContent()).toMatch(/^[0-9A-Z]{5}-[0-9A-Z]{5}$/);
    const code = (await made.textContent()) ?? '';
    await expect.poll(() => page.getByTestId('tablet').count()).toBe(3);
    await page.getByTestId('tablet').filter({ hasText: 'Line rear' }).getByTestId('revoke').click();
    await page.getByTestId('revoke-yes').click();
    await page.getByText('Line rear is shut out.').waitFor();
    await untilSync(two.page, 'refused');
    await chip(two.page).click();
    await expect.poll(() => two.page.getByTestId('reason').textContent()).toContain('shut this tablet out');

    // It has signed out whoever was there; work goes on by badge.
    await signIn(two.page, 'O-1');
    expect(await scanAll(two.page, 'K1-F-002', reel('BW-12', 'R-951'))).toMatchObject({
      verdict: 'accepted',
    });
    await goOn(two.page);
    // The link of the code, followed where the page is open already.
    await two.page.goto(`${server.url}#enrol=${code}`);
    await enrolAs(two.page, code, 'Line rear');
    await untilSent(two.page);
    const floor = await expectSame();
    expect(floor.slots.get(slotKey('L1', 'K1-F-002'))?.tapes.at(-1)?.reel).toBe('R-951');
  });
});
