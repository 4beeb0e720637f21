// Forecasting on the tablet: walks laid out, counts with their spread, losses shown with what they rest on, what the store must
// bring, blocking; and a demo that plays moves the line by itself. Counts are checked against the tape's area, computed here.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { startDemo } from './support/demo.ts';
import {
  endRun,
  goOn,
  goTo,
  lookAgain,
  openTablet,
  ownEntries,
  pad,
  readLog,
  reelAct,
  reelLabel,
  scan,
  scanAll,
  showSlot,
  type Tablet,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const onTablet = (work: (tablet: Tablet) => Promise<void>, badge = 'BADGE-2201') =>
  demo.onTablet(work, { badge });

/** Opens the list of all walks, once one is planned. */
async function openWalks(page: Page): Promise<void> {
  await page.locator('.walkmark').first().waitFor();
  await page.getByTestId('walks-open').click();
  await page.getByTestId('walk-1').waitFor();
}

describe('walks', () => {
  it('shows the next walks with their slots, and bands over the tapes', async () => {
    await onTablet(async ({ page }) => {
      await openWalks(page);
      const stops = (await page.getByTestId('walk-1').locator('.stops').textContent()) ?? '';
      await page.getByTestId('walks-close').click();
      const first = /[A-Z]\d-[FR]-\d{3}/.exec(stops)?.[0] ?? '';
      await page.getByTestId(`row-${first}`).locator('.walkband').waitFor();
      await expect.poll(() => page.getByTestId(`row-${first}`).locator('.walkband').textContent()).toBe('1');
      const slots = [...stops.matchAll(/[A-Z]\d-[FR]-\d{3}/g)].map(([slot]) => slot);
      expect(new Set(slots).size).toBe(slots.length);
    });
  });

  it('stay put while nothing happens, and are shared when a second person comes', async () => {
    await onTablet(async ({ page }) => {
      await openWalks(page);
      const before = await page.getByTestId('walk-2').locator('.stops').textContent();
      for (const _ of [1, 2]) await lookAgain(page);
      await expect.poll(() => page.getByTestId('walk-2').locator('.stops').textContent()).toBe(before);
      await page.getByTestId('crew-2').click();
      await expect.poll(() => page.getByTestId('walk-1').textContent()).toMatch(/Person [12]/);
      const crewed = await ownEntries(page, 'line.crewed');
      expect(crewed.map(({ payload }) => payload['operators'])).toEqual([2]);
      await page.reload();
      await openWalks(page);
      await expect.poll(() => page.getByTestId('crew-2').getAttribute('aria-pressed')).toBe('true');
    });
  });
});

describe('counts', () => {
  it('computes wound tape, warns of the flange, and writes the count with its spread', async () => {
    await onTablet(async ({ page }) => {
      await goTo(page, 'stock');
      await page.getByTestId('stock-reels').click();
      const row = page.locator('.reel-row').first();
      const reel = ((await row.getAttribute('data-testid')) ?? '').replace(/^reel-/, '');
      await reelAct(page, 'count', reel);
      await page.getByTestId('count-measured').click();
      const type = (field: string, text: string) => page.getByTestId(`count-field-${field}`).fill(text);
      await type('outerMm', '178');
      await type('hubMm', '60');
      await type('pitchMm', '2');
      await type('fullOuterMm', '137');
      await type('fullParts', '10000');
      await expect
        .poll(() => page.getByTestId('count-take').textContent())
        .toContain('larger than a full reel');
      await type('outerMm', '105');
      const parts = Math.round((10_000 * (105 ** 2 - 60 ** 2)) / (137 ** 2 - 60 ** 2));
      await expect
        .poll(async () => (await page.getByTestId('count-result').textContent())?.replaceAll(',', ''))
        .toMatch(new RegExp(`^${parts} ± \\d+ parts$`));
      await page.getByTestId('count-take').click();
      await expect.poll(() => page.getByTestId('notice').textContent()).toContain(reel);
      const [written] = await ownEntries(page, 'reel.counted');
      expect(written?.payload).toMatchObject({ reel, quantity: parts, basis: 'measured' });
      expect(Number(written?.payload['sd'])).toBeGreaterThan(20);
      // The full reel's figures are remembered for the part.
      await reelAct(page, 'count', reel);
      await page.getByTestId('count-measured').click();
      await expect.poll(() => page.getByTestId('count-field-fullOuterMm').inputValue()).toBe('137');
    });
  });

  it('says what a feeder lost when a counted reel comes off, and shows what that rests on', async () => {
    await onTablet(async ({ page }) => {
      await page.getByTestId('timeline').waitFor();
      const slot = ((await page.locator('.slotrow').first().getAttribute('data-testid')) ?? '').slice(4);
      const feeder = (await readLog(page))
        .filter(({ kind, payload }) => kind === 'reel.verified' && payload['slot'] === slot)
        .flatMap(({ payload }) => (typeof payload['feeder'] === 'string' ? [payload['feeder']] : []))
        .at(-1);
      await goTo(page, 'load');
      await (await showSlot(page, String(slot))).click();
      await page.getByTestId('slot-unload').click();
      // A few parts fewer than computed: a loss that a feeder may have had.
      const computed = Number(
        /[\d,]+/
          .exec((await page.getByTestId('unload-uncounted').textContent()) ?? '')?.[0]
          .replaceAll(',', ''),
      );
      await page.getByTestId('unload-count').click();
      await page.getByTestId('count-machine').click();
      await page.getByTestId('count-field-parts').fill(String(computed - 3));
      await page.getByTestId('count-take').click();
      await expect
        .poll(() => page.getByTestId('notice').textContent())
        .toMatch(new RegExp(`${slot} unloaded\\. ${feeder} lost [\\d,]+ of [\\d,]+ picks`));
      await goTo(page, 'line');
      await page.getByTestId('losses').locator('summary').click();
      const row = page.getByTestId(`loss-${feeder}`);
      await row.waitFor();
      await page.getByTestId(`evidence-${feeder}`).click();
      await expect
        .poll(() => row.locator('.evidence li').first().textContent())
        .toContain(String(computed - 3));
    });
  });
});

describe('reels', () => {
  it('lists what the store must bring, finds a reel by scan, and a lead blocks its lot', async () => {
    await onTablet(async ({ page }) => {
      await goTo(page, 'stock');
      await page.getByTestId('pick-list').waitFor();
      await expect.poll(() => page.locator('.pick').count()).toBeGreaterThan(3);
      // As close as the other lists of the screen.
      const gap = await page.getByTestId('pick-list').evaluate((list) => getComputedStyle(list).rowGap);
      expect(gap).toBe('8px');
      await page.getByTestId('stock-outlook').click();
      await expect.poll(() => page.getByTestId('reel-outlook').locator('.chain').count()).toBeGreaterThan(3);
      const known = (await readLog(page)).find(
        ({ kind, payload }) =>
          kind === 'reel.verified' && payload['verdict'] === 'accepted' && payload['lot'] !== null,
      )?.payload;
      await scan(page, String(known?.['reel']));
      await page.getByTestId(`reel-${known?.['reel']}`).waitFor();
      await expect.poll(() => page.locator('.reel-row').count()).toBe(1);
      await reelAct(page, 'block', String(known?.['reel']));
      await page.getByRole('button', { name: 'Supplier recall' }).click();
      await page.getByTestId('block-yes').click();
      await expect.poll(() => page.locator('.reel-row .chip.stop').count()).toBe(1);
      const [blocked] = await ownEntries(page, 'material.blocked');
      expect(blocked?.payload).toMatchObject({ lot: known?.['lot'], reel: null, reason: 'Supplier recall' });
      await page.getByTestId('stock-blocks').click();
      await expect.poll(() => page.getByTestId('blocks').textContent()).toContain(String(known?.['lot']));
    }, 'BADGE-3301');
  });

  it('takes a new reel’s place by scan, shows where it lies, and finds what lies at a place', async () => {
    await onTablet(async ({ page }) => {
      await goTo(page, 'stock');
      await scan(page, '3SR-990001');
      await page.getByTestId('put-new').click();
      await scan(page, 'A2-S10');
      const row = page.getByTestId('reel-R-990001');
      await expect.poll(() => row.locator('.where').textContent()).toBe('A2-S10');
      await reelAct(page, 'put', 'R-990001');
      await page.getByTestId('put-place').fill('A2-S11');
      await page.getByTestId('put-yes').click();
      await expect.poll(() => row.locator('.where').textContent()).toBe('A2-S11');
      await page.getByTestId('reel-search').fill('');
      await scan(page, 'A2-S11');
      await expect.poll(() => page.locator('.reel-row').count()).toBe(1);
      const written = await ownEntries(page, 'reel.put');
      expect(written.map(({ payload }) => [payload['place'], payload['via']])).toEqual([
        ['A2-S10', 'wedge'],
        ['A2-S11', 'typed'],
      ]);
    });
  });
});

describe('a demo that plays', () => {
  it('moves the line by itself: panels count up and a slot’s parts go down, with nobody touching it', async () => {
    const playing = await startDemo(['--play', '120']);
    const tablet = await openTablet(demo.browser, playing.url, { badge: null });
    const { page } = tablet;
    const done = async () =>
      Number(/^([\d,]+)/.exec((await page.locator('.runbar .panels').textContent()) ?? '')?.[1] ?? 0);
    await page.locator('.walkmark').first().waitFor();
    const before = await done();
    await expect.poll(done, { timeout: 30_000 }).toBeGreaterThan(before + 4);
    await tablet.putAway();
    await playing.stop();
  });
});

describe('slots in turn, from the sheet to the line', () => {
  it('are taken in as such, said to begin short before the run, and take over from each other while it runs', async () => {
    const [one, two] = [
      { slot: 'M2-F-023', feeder: 'F-0112', parts: 60 },
      { slot: 'M2-F-026', feeder: 'F-0113', parts: 3000 },
    ] as const; // the demo leaves both empty
    const row = ({ slot }: { slot: string }) => `${slot},BW-7,6,8,4,in turn`;
    const sheet = `Product:,Glen relay,Revision:,A,Side:,Top\n\nSlot,Part,Qty per panel,Tape width,Pitch,Sharing\n${row(one)}\n${row(two)}\n`;
    await onTablet(async ({ page }) => {
      await endRun(page);
      await page.goto(`${demo.url}#/plant/sheet`);
      const buffer = Buffer.from(sheet);
      await page
        .getByTestId('file-sheet')
        .first()
        .setInputFiles({ name: 'glen.csv', mimeType: 'text/csv', buffer });
      await page.getByTestId('sheet-take').click();
      await page.getByTestId('sheet-build').click();
      await page.getByTestId('screen-load').waitFor();
      for (const { slot, feeder, parts } of [one, two]) {
        const reel = reelLabel({ P: 'BW-7', Q: String(parts), '1T': 'LT-7', '3S': `R-7-${slot}` });
        expect(await scanAll(page, slot, feeder, reel)).toMatchObject({ verdict: 'accepted' });
        await goOn(page);
      }

      // 60 parts at 6 a panel are 10 panels, 5 min of 30 s: less than the line's lead. 3060 are 510 panels.
      await goTo(page, 'line');
      await page.getByTestId(`short-${one.slot}`).waitFor();
      expect(await page.getByTestId(`short-${two.slot}`).count()).toBe(0);
      await page.getByTestId('run-start').click();
      await page.getByTestId('panels-wanted').fill('8');
      await page.getByTestId('panel-seconds').fill('30');
      await page.getByTestId('begins-short').waitFor({ state: 'detached' }); // 8 panels need 48 parts
      await page.getByTestId('panels-wanted').fill('900');
      await page.getByTestId('begins-short').waitFor();
      await page.getByTestId('run-start-yes').click();
      // Begun all the same: the log says with what.
      await expect
        .poll(async () => (await ownEntries(page, 'run.began-short')).map(({ payload }) => payload['short']))
        .toEqual([[one.slot]]);

      const said = (slot: string) => page.getByTestId(`row-${slot}`).textContent();
      await expect.poll(() => said(one.slot)).toContain(`then ${two.slot} feeds, no stop`);
      await expect.poll(() => said(two.slot)).toContain(`waits until ${one.slot} is empty`);
      await expect.poll(() => said(two.slot)).toContain('3,000 parts');
      await page.getByTestId('plus-many').click();
      await pad(page, '20');
      // 20 panels took the first's 60 parts and 60 of the second's, and what the feeders lost.
      await expect.poll(() => said(two.slot)).not.toContain('waits until');
      await expect.poll(() => said(two.slot)).toMatch(/2,9[34]\d parts/);
    }, 'BADGE-4401');
  });
});
