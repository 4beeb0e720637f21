// A label that follows no standard is taught once on a tablet of the demo plant: scanned, its pieces tapped, the rule tried on
// the log and approved by a lead; then the line reads it. The rules leave the tablet as a file that the command line takes,
// and come back out of it.

import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { call } from '../cli/call.ts';
import { goTo, ownEntries, pad, scan, scanAll, seeVerdict, steady, type Tablet } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ hash: '#/plant/labels' });

const onTablet = (work: (tablet: Tablet) => Promise<void>, badge = 'BADGE-2201') =>
  demo.onTablet(
    async (tablet) => {
      await tablet.page.getByTestId('teach').waitFor();
      await work(tablet);
    },
    { badge },
  );

/** A label of the demo's empty slot M2-F-023 as no standard has it. */
const labelOf = (part: string, quantity: number, lot: string) =>
  `ART#${part}#MENGE#${quantity}#CH#${lot}#2618`;
const slot = 'M2-F-023';
const feeder = 'F-0112';
const part = '22-0603-B';

async function name(page: Page, text: string, field: string): Promise<void> {
  await page.locator('.token', { hasText: text }).first().click();
  await page.getByTestId(`name-${field}`).click();
}

/** Taps part, quantity and lot of the label on the page, names the rule, and has Morag approve it. */
async function teachRule(page: Page, rule: string): Promise<void> {
  await name(page, part, 'part');
  await name(page, '4000', 'quantity');
  await name(page, 'GL-1', 'lot');
  await page.getByTestId('teach-name').fill(rule);
  await page.getByTestId('trial').waitFor();
  // Shown on three labels made up from this one before anybody can approve it.
  await expect.poll(() => page.locator('[data-testid="teach-varied"] [data-read="true"]').count()).toBe(3);
  await page.getByTestId('teach-approve').click();
  await approve(page);
  await page.getByTestId(`rule-${rule}`).waitFor();
}

async function approve(page: Page): Promise<void> {
  await page.getByTestId('badge').fill('BADGE-3301');
  await page.getByTestId('badge-enter').click();
  await pad(page, '3301');
}

describe('a label that follows no standard', () => {
  it('is not read, is taught once, and then loads', async () => {
    await onTablet(async ({ page }) => {
      await scan(page, labelOf(part, 4000, 'GL-1'));
      await expect.poll(() => page.getByTestId('scanned').textContent()).toContain('Nothing on it is read');
      await page.getByTestId('teach-scanned').click();
      await teachRule(page, 'Glen');
      const [taught] = await ownEntries(page, 'label.taught');
      expect(taught?.payload).toMatchObject({
        rule: 'Glen',
        version: 1,
        by: 'p-3301',
        definition: { rule: 'Glen', examples: [{ reads: { part, quantity: '4000', lot: 'GL-1' } }] },
      });

      await goTo(page, 'load');
      const seen = await scanAll(page, slot, feeder, labelOf(part, 3500, 'GL-2'));
      expect(seen.verdict).toBe('accepted');
      const loaded = (await ownEntries(page, 'reel.verified')).at(-1);
      expect(loaded?.payload).toMatchObject({ slot, part, quantity: 3500, lot: 'GL-2', verdict: 'accepted' });
    });
  });

  it('is not offered for teaching where another keyboard spoiled it', async () => {
    await onTablet(async ({ page }) => {
      await scan(page, 'ART#22ß0603ßB#MENGE#4000');
      await expect
        .poll(() => page.getByTestId('scanned').textContent())
        .toContain('types for another keyboard (German (QWERTZ))');
      expect(await page.getByTestId('teach-scanned').count()).toBe(0);
    });
  });

  it('that the line cannot read is taken along to be taught', async () => {
    await onTablet(async ({ page }) => {
      await goTo(page, 'load');
      await scan(page, slot);
      await page.getByTestId('well-slot').waitFor();
      await scan(page, feeder);
      await scan(page, labelOf(part, 4000, 'GL-1'));
      await page.getByTestId('dock-teach').click();
      await expect
        .poll(() => page.getByTestId('scanned').textContent())
        .toContain(labelOf(part, 4000, 'GL-1'));
      await page.getByTestId('teach-scanned').click();
      await teachRule(page, 'Glen');
      await goTo(page, 'load');
      // The slot and the feeder are still in hand.
      await scan(page, labelOf(part, 3500, 'GL-2'));
      expect(await seeVerdict(page)).toMatchObject({ verdict: 'accepted' });
    });
  });

  it('still refuses a wrong part that the rule reads', async () => {
    await onTablet(async ({ page }) => {
      await scan(page, labelOf(part, 4000, 'GL-1'));
      await page.getByTestId('teach-scanned').click();
      await teachRule(page, 'Glen');
      await goTo(page, 'load');
      for (const code of [slot, feeder, labelOf('99-9999-X', 3500, 'GL-2')]) await scan(page, code);
      expect(await seeVerdict(page)).toMatchObject({ verdict: 'refused' });
    });
  });

  it('is stretched to the character where nothing separates its pieces, and keeps what was tapped elsewhere', async () => {
    await onTablet(async ({ page }) => {
      await page.getByTestId('teach').click();
      await scan(page, `K${part}/Q4000`);
      await page.locator('.token', { hasText: part }).click();
      await page.getByTestId('from-later').click();
      await expect.poll(() => page.getByTestId('teach-piece').textContent()).toBe(part);
      await page.getByTestId('name-part').click();
      await page.locator('.token', { hasText: 'Q4000' }).click();
      await steady(page);
      await page.getByTestId('from-later').click();
      await page.getByTestId('name-quantity').click();
      await expect.poll(() => page.getByTestId('teach-reading').textContent()).toContain('4000');
      await page.getByTestId('nav-log').click();
      await page.getByTestId('screen-log').waitFor();
      await page.goBack();
      await expect.poll(() => page.getByTestId('teach-reading').textContent()).toContain(part);
    });
  });

  it('cannot be approved by an operator', async () => {
    await onTablet(async ({ page }) => {
      await scan(page, labelOf(part, 4000, 'GL-1'));
      await page.getByTestId('teach-scanned').click();
      await name(page, part, 'part');
      await page.getByTestId('teach-name').fill('Mine');
      await page.getByTestId('teach-approve').click();
      await page.getByTestId('badge').fill('BADGE-2201');
      await page.getByTestId('badge-enter').click();
      await expect.poll(() => page.getByRole('dialog').textContent()).toContain('Shift lead');
      expect(await ownEntries(page, 'label.taught')).toEqual([]);
    });
  });
});

describe('the rules', () => {
  it('leave as a file that the command line reads labels by; a withdrawn rule reads nothing', async () => {
    await onTablet(async ({ page }) => {
      await scan(page, labelOf(part, 4000, 'GL-1'));
      await page.getByTestId('teach-scanned').click();
      await teachRule(page, 'Glen');
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByTestId('rules-export').click(),
      ]);
      const file = await download.path();
      expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject([{ rule: 'Glen', version: 1 }]);
      const line = JSON.stringify({ codes: [labelOf('22-0603-C', 12, 'GL-9')] });
      const read = await call(['label', '-', '--rules', file], line);
      expect(read.code).toBe(0);
      expect(JSON.parse(read.out)).toMatchObject({ part: '22-0603-C', quantity: 12, lot: 'GL-9' });

      await scan(page, labelOf('22-0603-C', 12, 'GL-9'));
      await expect.poll(() => page.getByTestId('scanned').textContent()).toContain('22-0603-C');
      await page.getByTestId('withdraw-Glen').click();
      await page.getByTestId('withdraw-why').fill('they print a standard label now');
      await page.getByTestId('withdraw-yes').click();
      await page.getByTestId('rule-Glen').waitFor({ state: 'detached' });
      await scan(page, labelOf(part, 12, 'GL-9'));
      await expect.poll(() => page.getByTestId('scanned').textContent()).toContain('Nothing on it is read');

      await page.getByTestId('rules-import').setInputFiles(file);
      await page.getByTestId('import-Glen').waitFor();
      await expect.poll(() => page.getByTestId('import-Glen').getAttribute('data-status')).toBe('new');
      // What it does to the labels of the log stands there before anybody is asked to approve it.
      await expect
        .poll(() => page.getByTestId('import-trial-Glen').textContent())
        .toContain('labels in the log');
      await page.getByTestId('import-take').click();
      await expect.poll(() => page.getByTestId('approve-trial-Glen').textContent()).toContain('It fits');
      await approve(page);
      await page.getByTestId('rule-Glen').waitFor();
      await expect.poll(() => page.getByTestId('scanned').textContent()).toContain('GL-9');
    }, 'BADGE-3301');
  });
});
