// A conveyor of two lanes, from an empty plant to two products that run at once: lanes told in the line's form, a setup each, one reel that feeds
// both, counts that go down by what both take, a splice told for one lane that serves the other, and a trace that names both products.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startBrowser, waitReady } from './support/browser.ts';
import { drawn, giveClock } from './support/clock.ts';
import { press } from './support/finger.ts';
import {
  endRun,
  expectWhole,
  goOn,
  goTo,
  openAt,
  pad,
  readLog,
  reelLabel,
  scanAll,
  signIn,
  steady,
} from './support/floor.ts';
import { addPerson } from './support/joined.ts';
import { look } from './support/look.ts';
import { type PlantServer, startServe } from './support/serve.ts';

let browser: Browser;
let server: PlantServer;
beforeAll(async () => {
  [browser, server] = await Promise.all([startBrowser(), startServe()]);
});
afterAll(async () => {
  await Promise.all([browser.close(), server.stop()]);
});

const SHARED = 'M1-F-001';
const lanes = [
  {
    line: 'L1',
    name: 'Line 1, lane 1',
    product: 'Fell relay',
    perPanel: 20,
    own: 'M1-F-002',
    part: 'BW-200',
  },
  {
    line: 'L1~lane2',
    name: 'Line 1, lane 2',
    product: 'Tarn lamp',
    perPanel: 30,
    own: 'M1-F-003',
    part: 'BW-300',
  },
] as const;
type Lane = (typeof lanes)[number];

const entriesOf = async (page: Page, kind: string) =>
  (await readLog(page, 'reelward-log')).filter((entry) => entry.kind === kind);

async function takeInHand(page: Page, { line, name }: Lane): Promise<void> {
  await openAt(page, '#/lines');
  await press(page, `line-${line}`);
  await page.getByTestId('screen-line').waitFor();
  await expect.poll(() => page.locator('.topbar .whereabouts b').textContent()).toBe(name);
}

/** Imports a lane's setup: the slot that both take from (`shared`: with what part), and one of its own. */
async function importSetup(
  page: Page,
  lane: Omit<Lane, 'product'> & { readonly product: string },
  shared = 'BW-100',
): Promise<void> {
  await openAt(page, '#/plant/sheet');
  const sheet = `Slot,Part,Qty per panel,Tape width,Pitch\n${SHARED},${shared},${lane.perPanel},8,4\n${lane.own},${lane.part},1,8,4\n`;
  const name = `${lane.product.toLowerCase().replace(' ', '-')}.csv`;
  const file = { name, mimeType: 'application/octet-stream', buffer: Buffer.from(sheet) };
  await page.getByTestId('file-sheet').first().setInputFiles(file);
  await drawn(page);
  await page.getByTestId('reading').waitFor({ state: 'detached', timeout: 60_000 });
  await page.getByTestId('take-product').fill(lane.product);
  await page.getByTestId('take-revision').fill('A');
  await press(page, 'take-top');
  await press(page, `take-line-${lane.line}`);
  await press(page, 'sheet-take');
  await page.getByTestId('sheet-taken').waitFor();
  await steady(page);
  await press(page, 'sheet-build');
  await page.getByTestId('screen-load').waitFor();
}

async function load(
  page: Page,
  slot: string,
  fields: Readonly<Record<string, string>>,
): Promise<string | null> {
  const { verdict } = await scanAll(page, slot, reelLabel(fields));
  await goOn(page);
  return verdict;
}

/** Opens the slot's dialog on Load, which must say that, and closes it. */
async function expectOn(page: Page, slot: string, said: RegExp): Promise<void> {
  await goTo(page, 'line'); // the address of a slot is read by a Load that opens
  await openAt(page, `#/load/${slot}`);
  const dialog = page.locator('dialog[open]');
  await dialog.waitFor();
  await expect.poll(() => dialog.textContent()).toMatch(said);
  await dialog.getByRole('button', { name: 'Close', exact: true }).click();
  await dialog.waitFor({ state: 'detached' });
}

async function startRun(page: Page): Promise<void> {
  await goTo(page, 'line');
  await press(page, 'run-start');
  await page.getByTestId('panels-wanted').fill('300');
  await page.getByTestId('panel-seconds').fill('20');
  await press(page, 'run-start-yes');
  await page.getByTestId('plus-one').waitFor();
}

async function countPanels(page: Page, panels: string): Promise<void> {
  await steady(page);
  await press(page, 'plus-many');
  await pad(page, panels);
  await expect.poll(() => page.locator('.runbar .panels').textContent()).toContain(`${panels} of 300`);
}

it('builds two products at once from the same slots', { timeout: 600_000 }, async () => {
  const [one, two] = lanes;
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await giveClock(context);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(`${server.url}#/plant/people`);
  await waitReady(page);
  await addPerson(page, 'Elif', { badge: 'E-1', role: 'Engineer', pin: '4401' });
  await signIn(page, 'E-1');

  // The engineer tells the line and its second lane.
  await openAt(page, '#/plant/lines');
  await page.getByTestId('bank-first-1').fill('M1-F-001');
  await page.getByTestId('bank-last-1').fill('M1-F-010');
  await press(page, 'line-add-lane');
  await expect.poll(() => page.getByTestId('line-name').inputValue()).toBe(one.name);
  await expect.poll(() => page.getByTestId('lane-name-2').inputValue()).toBe(two.name);
  await look(page, { where: 'a line of two lanes' });
  await press(page, 'line-save');
  await page.getByTestId('line-L1').waitFor();
  await expect.poll(() => page.getByTestId('lane-L1~lane2').textContent()).toBe(two.name);
  await look(page, { where: 'the lines, one with two lanes' });

  for (const lane of lanes) await importSetup(page, lane);
  await takeInHand(page, one);
  await goTo(page, 'load');
  expect(await load(page, SHARED, { P: 'BW-100', Q: '6000', '1T': 'LOT-1', '3S': 'R-1' })).toBe('accepted');
  expect(await load(page, one.own, { P: one.part, Q: '5000', '1T': 'LOT-2', '3S': 'R-2' })).toBe('accepted');

  // The other lane finds the reel that it takes from too, and lacks its own alone.
  await takeInHand(page, two);
  await goTo(page, 'load');
  await expect.poll(() => page.getByTestId('screen-load').textContent()).toContain('1 of 2 slots loaded');
  expect(await load(page, two.own, { P: two.part, Q: '5000', '1T': 'LOT-3', '3S': 'R-3' })).toBe('accepted');
  await expectOn(page, SHARED, /For Line 1, lane 1: BW-100, 20 per panel\./);
  await look(page, { where: 'load of the second lane' });

  await startRun(page);
  await countPanels(page, '10');
  await takeInHand(page, one);
  await startRun(page);
  await countPanels(page, '40');
  // 6,000 less 10 panels of 30 and 40 of 20.
  await expectOn(page, SHARED, /4,[89]\d\d/);
  await openAt(page, '#/lines');
  for (const { line } of lanes)
    await expect.poll(() => page.getByTestId(`line-${line}`).getAttribute('data-state')).toBe('running');
  await look(page, { where: 'both lanes at one glance' });

  // A wrong reel is refused on either lane; a right one is spliced for both, whichever asked.
  await takeInHand(page, two);
  await page.getByTestId(`open-${SHARED}`).click();
  await expect.poll(() => page.getByTestId('for-lanes').textContent()).toContain('Line 1, lane 1');
  await look(page, { where: 'a slot that both lanes take from' });
  await page.getByTestId('slot-close').click();
  await steady(page);
  await goTo(page, 'load');
  expect(await load(page, SHARED, { P: 'BW-999', Q: '6000', '1T': 'LOT-8', '3S': 'R-8' })).toBe('refused');
  expect(await load(page, SHARED, { P: 'BW-100', Q: '6000', '1T': 'LOT-4', '3S': 'R-4' })).toBe('accepted');
  const spliced = (await entriesOf(page, 'reel.verified')).at(-1)?.payload;
  expect(spliced).toMatchObject({ act: 'splice', line: two.line, slot: SHARED, reel: 'R-4' });
  await takeInHand(page, one);
  await expectOn(page, SHARED, /10,[89]\d\d/);

  // The first reel is on the panels of both products.
  await openAt(page, '#/log/trace');
  await press(page, 'trace-lot');
  await page.getByTestId('trace-text').fill('LOT-1');
  await press(page, 'trace-ask');
  const places = page.getByTestId('trace-places');
  for (const { name, product } of lanes) {
    await expect.poll(() => places.textContent()).toContain(product);
    await expect.poll(() => places.textContent()).toContain(name);
  }
  await look(page, { where: 'the trace of a reel that fed both lanes' });

  // The second lane ends its run, and its next product wants another part on the shared slot: the reel stays for the first lane.
  await takeInHand(page, two);
  await endRun(page);
  await importSetup(page, { ...two, product: 'Scree lamp' }, 'BW-777');
  const screen = page.getByTestId('screen-load');
  await expect.poll(() => screen.textContent()).toContain('1 kept for another lane');
  const said = (await screen.textContent()) ?? '';
  expect(said).toContain('1 of 2 slots loaded');
  expect(said).toContain(`kept for ${one.name}`);
  expect(said).not.toContain('to take out');
  expect(said).not.toContain('Every slot has its reel');
  await look(page, { where: 'a slot that is kept for the other lane' });
  const kept = reelLabel({ P: 'BW-777', Q: '6000', '1T': 'LOT-9', '3S': 'R-9' });
  expect((await scanAll(page, SHARED, kept)).verdict).toBe('refused');
  await expect.poll(() => page.locator('body').textContent()).toContain('Kept for the other lane');
  await look(page, { where: 'a scan on a slot that is kept' });
  await goOn(page);

  // While something stands there for it alone the lane stays; then the engineer takes it away.
  await openAt(page, '#/plant/lines');
  await press(page, 'line-edit-L1');
  const remove = page.getByTestId('line-remove-lane');
  await expect.poll(() => remove.getAttribute('aria-disabled')).toBe('true');
  await look(page, { where: 'a lane that must stay' });
  await goTo(page, 'line'); // as above
  await openAt(page, `#/load/${two.own}`);
  await press(page, 'slot-unload');
  await press(page, 'unload-empty');
  await expect.poll(async () => (await entriesOf(page, 'reel.unloaded')).length).toBe(1);
  await openAt(page, '#/plant/lines');
  await press(page, 'line-edit-L1');
  await expect.poll(() => remove.getAttribute('aria-disabled')).toBe('false');
  await press(page, 'line-remove-lane');
  await press(page, 'line-save');
  await page.getByTestId('line-edit-L1').waitFor();
  await page.getByTestId(`lane-${two.line}`).waitFor({ state: 'detached' });
  expect((await entriesOf(page, 'lane.withdrawn')).map(({ payload }) => payload)).toEqual([
    { line: two.line },
  ]);

  expectWhole(await readLog(page, 'reelward-log'));
  await context.close();
});
