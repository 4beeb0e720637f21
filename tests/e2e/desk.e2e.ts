// The desk and the verdict as a hand meets them: refused at the first scan that can tell, a blocked lot that runs on, half a scan that
// outlives a reload, a bake that was too short.

import { describe, expect, it } from 'vitest';
import {
  endRun,
  firstSlot,
  goOn,
  goTo,
  ownEntries,
  pad,
  readLog,
  reelAct,
  reelLabel,
  scan,
  scanAll,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();
const { onTablet } = demo;

const place = { slot: 'M2-F-026', feeder: 'F-0113', part: '25-0023-113' } as const;
const labelOf = (part: string, reel: string, more: Readonly<Record<string, string>> = {}) =>
  reelLabel({ P: part, Q: '4000', '1T': 'LT-9500', '3S': reel, ...more });

describe('a wrong reel', () => {
  it('is refused at its own scan while the feeder is still wanted, once, with what to do', async () => {
    await onTablet(async ({ page }) => {
      const seen = await scanAll(page, place.slot, labelOf('25-0023-311', 'R-980001'));
      expect(seen.verdict).toBe('refused');
      expect(seen.text).toContain('Wrong part');
      expect(seen.text).toContain('This reel belongs on');
      expect(seen.text).toContain(`${place.slot} needs`);
      expect(seen.text).toContain('Stop the machine before you reach in');
      await expect.poll(() => page.getByTestId('well-feeder').textContent()).toContain('not needed yet');
      const refused = await ownEntries(page, 'reel.verified');
      expect(refused.map(({ payload }) => [payload['verdict'], payload['feeder']])).toEqual([
        ['refused', null],
      ]);
      await goOn(page);
      expect((await scanAll(page, labelOf(place.part, 'R-980002'), place.feeder)).verdict).toBe('accepted');
    });
  });

  it('is refused before any slot where no slot wants it, and its trailing codes change nothing', async () => {
    await onTablet(async ({ page }) => {
      const seen = await scanAll(page, 'P25-0023-13H', 'Q4000', '1TLT-9500');
      expect(seen.verdict).toBe('refused');
      expect(seen.text).toContain('Not in this setup');
      expect(seen.text).toContain('M2-F-026');
      expect(await ownEntries(page, 'reel.verified')).toHaveLength(1);
    });
  });

  it('offers the unload that it asks for, and goes on with the reel in hand', async () => {
    await onTablet(
      async ({ page }) => {
        await endRun(page);
        await page.goto(`${demo.url}#/plant/setups`);
        await page.getByTestId('choose-greenhouse-node-top-F').click();
        await page.getByTestId('screen-load').waitFor();
        const slot = await firstSlot(page, 'other');
        const chosen = (await readLog(page)).find(
          ({ kind, payload }) => kind === 'setup.taken' && payload['setup'] === 'greenhouse-node-top-F',
        );
        const slots = chosen?.payload['slots'] as { slot: string; part: string }[]; // shape of the entry
        const part = slots.find((each) => each.slot === slot)?.part ?? '';
        const seen = await scanAll(page, slot, labelOf(part, 'R-980003'));
        expect(seen.text).toContain('Slot already loaded');
        await page.getByTestId('verdict-unload').click();
        await page.getByTestId('unload-uncounted').click();
        await page.getByTestId('verdict').waitFor({ state: 'detached' });
        await expect.poll(() => page.getByTestId('well-reel').getAttribute('data-filled')).toBe('true');
        await expect.poll(() => page.getByTestId('well-slot').getAttribute('data-filled')).toBe('true');
      },
      { badge: 'BADGE-3301' },
    );
  });
});

describe('a lot that is blocked while it runs', () => {
  it('alarms over every screen with its slot and the panels since, until a lead lets it run', async () => {
    await onTablet(
      async ({ page }) => {
        const loaded = (await readLog(page))
          .filter(
            ({ kind, payload }) =>
              kind === 'reel.verified' && payload['slot'] === 'M1-F-001' && payload['verdict'] === 'accepted',
          )
          .at(-1);
        const lot = String(loaded?.payload['lot']);
        await page.goto(`${demo.url}#/plant/parts/blocks`);
        await page.getByTestId('block-add').click();
        await page.getByTestId('block-value').fill(lot);
        await page.getByTestId('block-reason').fill('Cracked bodies');
        await page.getByTestId('block-save').click();
        const banner = page.getByTestId('blocked');
        await banner.waitFor();
        for (const screen of ['line', 'load', 'stock'] as const) {
          await goTo(page, screen);
          await expect.poll(() => banner.textContent()).toContain('M1-F-001');
          await expect.poll(() => banner.textContent()).toContain('Cracked bodies');
        }
        await expect
          .poll(() => page.getByTestId('blocked-panels').textContent())
          .toMatch(/built with it in this run, \d+ of them since the block/);
        await page.getByTestId('blocked-heard').click();
        await page.getByTestId('blocked-heard').waitFor({ state: 'detached' });
        await page.getByTestId('blocked-trace').click();
        await page.getByTestId('screen-log').waitFor();
        await expect.poll(() => page.getByTestId('screen-log').textContent()).toContain('M1-F-001');
        await banner.waitFor();
      },
      { badge: 'BADGE-3301' },
    );
  });
});

describe('half a scan', () => {
  it('comes back after a reload for the person who had it, and goes on', async () => {
    await onTablet(async ({ page }) => {
      await scan(page, place.slot);
      await scan(page, place.feeder);
      await expect.poll(() => page.getByTestId('well-feeder').getAttribute('data-filled')).toBe('true');
      await page.reload();
      await page.getByTestId('dock-go-on').waitFor();
      await expect.poll(() => page.getByTestId('told').textContent()).toContain('This scan was open at');
      await expect.poll(() => page.getByTestId('well-slot').textContent()).toContain(place.slot);
      await page.getByTestId('dock-go-on').click();
      expect((await scanAll(page, labelOf(place.part, 'R-980005'))).verdict).toBe('accepted');
    });
  });
});

describe('a bake that was too short', () => {
  it('gives no floor life back: the reel is held for a lead, with what is known of the bake', async () => {
    await onTablet(async ({ page }) => {
      const label = labelOf('22-0603-B', 'R-980006');
      await goTo(page, 'stock');
      await scan(page, label);
      await page.getByTestId('put-new').click();
      await scan(page, 'A2-S11');
      const told = async (fill: () => Promise<void>) => {
        await reelAct(page, 'air', 'R-980006');
        await fill();
        await page.getByTestId('air-yes').click();
        await page.getByTestId('air-yes').waitFor({ state: 'detached' });
      };
      const life = page.getByTestId('life-R-980006');
      await told(() => page.getByTestId('air-hours').fill('100'));
      await expect.poll(() => life.textContent()).toContain('left, until');
      await told(async () => {
        await page.getByTestId('air-bake').click();
        await page.getByTestId('air-celsius').fill('40');
        await page.getByTestId('air-hours').fill('1');
        // Below 125 °C the table holds for dry air alone: nobody may leave that open.
        await expect.poll(() => page.getByTestId('air-yes').getAttribute('aria-disabled')).toBe('true');
        await page.getByTestId('air-oven-dry').click();
      });
      expect((await ownEntries(page, 'reel.aired')).at(-1)?.payload).toMatchObject({
        air: 'bake',
        humidity: 5,
      });
      await expect.poll(() => life.textContent()).toContain('oven');
      await told(() => page.getByTestId('air-floor').click());
      await expect.poll(() => life.textContent()).toContain('baked shorter');
      await goTo(page, 'load');
      const seen = await scanAll(page, 'M2-F-023', 'F-0112', label);
      expect(seen.verdict).toBe('held');
      expect(seen.text).toContain('Bake too short');
      expect(seen.text).toContain('Baked 1 h at 40 °C');

      // A lead clears the reel and lets the bake count: both in one append, and the reel says so.
      await page.getByTestId('verdict-clear').click();
      await page.getByTestId('badge').fill('BADGE-3301');
      await page.getByTestId('badge-enter').click();
      await pad(page, '3301');
      await page.getByTestId('held-bake-good').click();
      await page.getByRole('button', { name: 'Approved by engineering for this lot' }).click();
      await page.getByTestId('clear-accept').click();
      await page.getByTestId('clear-accept').waitFor({ state: 'detached' });
      const decided = await ownEntries(page, 'bake.approved', 'hold.cleared');
      expect(decided.map(({ kind, payload }) => [kind, payload['by'], payload['reel'] ?? null])).toEqual([
        ['bake.approved', 'p-3301', 'R-980006'],
        ['hold.cleared', 'p-3301', null],
      ]);
      await goTo(page, 'stock');
      await scan(page, label);
      await expect.poll(() => life.textContent()).toContain('short bake counts: Morag');
      expect(await life.textContent()).not.toContain('baked shorter');
    });
  });
});
