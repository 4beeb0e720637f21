// From an empty plant to the first accepted reel: the steps that the app leads through, by what is touched on the page. Every tap, scan and
// typed field is counted, and what they would take a person is worked out with a pace for each.

import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startBrowser, waitReady } from './support/browser.ts';
import { drawn, giveClock } from './support/clock.ts';
import { tapOn, touch } from './support/finger.ts';
import { openAt, pad, readLog, reelLabel, scan, seeVerdict, steady } from './support/floor.ts';
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

/** A pace that nobody is hurried by, s. */
const SECONDS = { tap: 1.2, scan: 2, field: 6, read: 6 } as const;
/** The most taps, scans and fields from the first look to the first accepted reel. */
const MOST_ACTS = 60;
const MOST_MINUTES = 10;

/** A person with a count of what they did. */
function countedHand(page: Page) {
  const done = { tap: 0, scan: 0, field: 0, read: 0 };
  const tap = async (control: Locator) => {
    done.tap += 1;
    await steady(page);
    await touch(page, control);
  };
  return {
    done,
    tap,
    press: (name: string) => tap(page.getByRole('button', { name, exact: true })),
    follow: (name: string) => tap(page.getByRole('link', { name, exact: true })),
    fill: async (label: string, text: string) => {
      done.field += 1;
      await page
        .getByLabel(new RegExp(`^${label}`))
        .last()
        .fill(text);
    },
    scan: async (code: string) => {
      done.scan += 1;
      await scan(page, code);
    },
    /** A new page is read before anything is done on it. */
    read: async (where: string) => {
      done.read += 1;
      await drawn(page);
      await look(page, { where });
    },
    give: async (button: string, name: string, content: string) => {
      // Finding a file takes two taps in the tablet's own picker.
      done.tap += 2;
      const file = { name, mimeType: 'application/octet-stream', buffer: Buffer.from(content) };
      await page.getByTestId(button).first().setInputFiles(file);
      await drawn(page);
      await page.getByTestId('reading').waitFor({ state: 'detached', timeout: 60_000 });
    },
  };
}

const entriesOf = async (page: Page, kind: string) =>
  (await readLog(page, 'reelward-log')).filter((entry) => entry.kind === kind);

const places = [
  'Ref      Val     Package  PosX    PosY   Rot    Side',
  ...Array.from({ length: 60 }, (_, at) => `R${at + 1}  10k  R_0603  ${at}.5  3.2  0  top`),
  'U1       ctl     SOIC-8   20.0    9.9    180    top',
].join('\n');
const bill = 'Part,Qty,Designators,MPN\nBW-1,60,R1-R60,KP-1\nBW-3,1,U1,KP-3\n';

it('leads from an empty plant to the first accepted reel on a line of three machines with 150 slots', async () => {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  await giveClock(context);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(server.url);
  await waitReady(page);
  const hand = countedHand(page);
  const step = (name: string) => page.getByTestId(`step-${name}`);
  const goOnWith = async (name: string) => {
    await expect.poll(() => step(name).getAttribute('data-state')).toBe('next');
    await hand.read(`before ${name}`);
    await hand.tap(step(name).getByRole('link').last());
  };
  /** Back to the steps: one touch within the plant’s pages, by the tile from elsewhere. */
  const backToSteps = async () => {
    if (!(await page.getByTestId('to-steps').isVisible())) await hand.tap(page.getByTestId('nav-plant'));
    await hand.tap(page.getByRole('link', { name: /^First steps/ }));
  };

  await hand.follow('Set up this plant');
  await expect.poll(() => step('plant').getAttribute('data-state')).toBe('next');
  await hand.read('before the plant');
  await hand.fill('Name of the plant', 'Fell Works');
  await hand.press('Save the name');
  await goOnWith('engineer');
  await hand.fill('Name', 'Elif');
  await hand.fill('Badge', 'E-1');
  await hand.fill('PIN, 4 to 8 digits', '4401');
  await hand.press('Save');
  const dialog = page.locator('dialog');
  await hand.tap(dialog.getByRole('button', { name: 'Elif' }));
  hand.done.tap += 5;
  await pad(page, '4401');
  await dialog.waitFor({ state: 'detached' });
  await backToSteps();

  await goOnWith('line');
  await hand.fill('First slot', 'M1-F-001');
  await hand.fill('Last slot', 'M1-F-025');
  await hand.press('Add the other side: M1-R-001');
  await hand.press('Add the next machine: M2-F-001');
  await hand.press('Add the next machine: M3-F-001');
  await hand.read('the line');
  await hand.press('Save line');
  await page.getByTestId('line-L1').waitFor();
  const defined = (await entriesOf(page, 'line.defined'))[0];
  expect(defined?.payload).toMatchObject({
    line: 'L1',
    name: 'Line 1',
    machines: ['M1', 'M2', 'M3'].map((machine) => ({
      machine,
      banks: [
        { bank: 'F', positions: 25, first: `${machine}-F-001` },
        { bank: 'R', positions: 25, first: `${machine}-R-001` },
      ],
    })),
  });
  await backToSteps();

  await goOnWith('people');
  await hand.press('Add the next person');
  await hand.fill('Name', 'Ailsa');
  await hand.fill('Badge', 'O-1');
  await hand.press('Save');
  await page.getByTestId('listed-Ailsa').waitFor();
  await backToSteps();

  await goOnWith('product');
  await hand.give('file-sheet', 'tarn.pos', `${places}\n`);
  await page.getByTestId('board').waitFor();
  await hand.give('file-bill', 'tarn-bill.csv', bill);
  await expect.poll(() => page.getByTestId('bill-count').textContent()).toContain('2 parts');
  await hand.tap(page.getByTestId('propose'));
  await page.getByTestId('slots-difference').waitFor();
  await hand.read('the proposal');
  const wanted = await page.getByTestId('slot-row-BW-1').textContent();
  const slot = /M\d-[FR]-\d{3}/.exec(wanted ?? '')?.[0] ?? '';
  expect(slot).toMatch(/^M\d-[FR]-0\d\d$/);
  await hand.fill('Product', 'Tarn switch');
  await hand.fill('Revision', '1');
  await hand.tap(page.getByTestId('sheet-take'));
  await page.getByTestId('sheet-taken').waitFor();
  await hand.tap(page.getByTestId('sheet-build'));
  await page.getByTestId('screen-load').waitFor();
  await backToSteps();

  // All 150 slots are there to be printed, in walking order, as they are written.
  await goOnWith('labels');
  const names = page.getByTestId('print-names').getByRole('button');
  await expect.poll(() => names.count()).toBe(150);
  await expect.poll(() => names.first().textContent()).toBe('M1-F-001');
  await expect.poll(() => names.last().textContent()).toBe('M3-R-025');
  await page.evaluate(() => {
    globalThis.print = () => undefined;
  });
  await hand.tap(page.getByTestId('print-many'));
  await expect.poll(async () => (await entriesOf(page, 'labels.printed')).length).toBe(1);
  await backToSteps();

  // The scanner can be tested at any time: what is left open keeps nobody from the reel.
  await expect.poll(() => step('scanner').getAttribute('data-state')).toBe('next');
  await hand.read('after the labels');
  await hand.tap(step('load').getByRole('link'));
  await page.getByTestId('screen-load').waitFor();
  await hand.scan('O-1');
  await hand.scan(slot);
  await hand.scan('F-0001');
  await hand.scan(reelLabel({ P: 'BW-1', '1P': 'KP-1', Q: '4000', '1T': 'LT-7', '3S': 'R-77001' }));
  expect((await seeVerdict(page)).verdict).toBe('accepted');

  const { done } = hand;
  const acts = done.tap + done.scan + done.field;
  const seconds = (Object.keys(SECONDS) as (keyof typeof SECONDS)[]).reduce(
    (sum, kind) => sum + done[kind] * SECONDS[kind],
    0,
  );
  console.log(`first run: ${JSON.stringify(done)}, ${acts} acts, ${(seconds / 60).toFixed(1)} min`);
  expect(acts).toBeLessThanOrEqual(MOST_ACTS);
  expect(seconds / 60).toBeLessThanOrEqual(MOST_MINUTES);
  await context.close();
});

it('begins anew at a tablet that has not joined, and says what is wrong with a bank beside its row', async () => {
  const context = await browser.newContext({ viewport: { width: 800, height: 1280 } });
  await giveClock(context);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(`${server.url}#/plant/begin`);
  await waitReady(page);
  // Not joined yet: this tablet knows nothing of the plant and says so by its first step.
  await expect.poll(() => page.getByTestId('step-plant').getAttribute('data-state')).toBe('next');
  await openAt(page, '#/plant/lines');
  const press = (name: string) => tapOn(page, page.getByRole('button', { name, exact: true }));
  await page.getByLabel('First slot').fill('M1-F-001');
  await page.getByLabel('Last slot').fill('M1-R-025');
  await expect
    .poll(() => page.getByTestId('line-form').textContent())
    .toContain('Only the number at the end may differ.');
  await expect
    .poll(() => page.getByTestId('line-save').textContent())
    .toContain('Mend the bank marked above.');
  await look(page, { where: 'a bank that is wrong' });
  await page.getByLabel('Last slot').fill('M1-F-004');
  await press('Save line');
  await page.getByTestId('line-L1').waitFor();
  await look(page, { where: 'the lines' });
  await context.close();
});
