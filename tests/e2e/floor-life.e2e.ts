// Floor life on the tablet: a reel that lay open too long is refused at its slot, a bake gives it its life back, and the line says
// where a floor life ends before the reel does. 672 h at level 2a by J-STD-020.

import { describe, expect, it } from 'vitest';
import {
  goTo,
  ownEntries,
  readLog,
  reelAct,
  reelLabel,
  scan,
  scanAll,
  showSlot,
  signIn,
  steady,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const { onTablet } = demo;

// A slot that the demo leaves empty; its setup states level 2a.
const [slot, feeder, part] = ['M2-F-023', 'F-0112', '22-0603-B'] as const;

describe('a reel that lay open too long', () => {
  it('is refused, has its life back after a bake, and shows what is left on its slot', async () => {
    await onTablet(async ({ page }) => {
      const label = reelLabel({ P: part, Q: '4000', '1T': 'LT-9100-E', '3S': 'R-970001' });
      const life = page.getByTestId('life-R-970001');
      const told = async (fill: () => Promise<void>) => {
        await steady(page);
        await reelAct(page, 'air', 'R-970001');
        await fill();
        await page.getByTestId('air-yes').click();
      };
      await goTo(page, 'stock');
      await scan(page, label);
      await page.getByTestId('put-new').click();
      await scan(page, 'A2-S10');
      await expect
        .poll(() => life.textContent())
        .toBe('MSL 2a · not opened yet: 672\u00a0h\u00a000 of floor life');
      await told(() => page.getByTestId('air-hours').fill('700'));
      await expect.poll(() => life.textContent()).toContain('floor life ended');

      await goTo(page, 'load');
      const refused = await scanAll(page, slot, feeder, label);
      expect(refused.verdict).toBe('refused');
      expect(refused.text).toContain('Floor life is over');

      await goTo(page, 'stock');
      await scan(page, label);
      await told(async () => {
        await page.getByTestId('air-bake').click();
        await page.getByTestId('air-celsius').fill('900');
        await expect.poll(() => page.getByTestId('air-yes').getAttribute('aria-disabled')).toBe('true');
        await page.getByTestId('air-celsius').fill('125');
        await page.getByTestId('air-hours').fill('20');
      });
      await expect.poll(() => life.textContent()).toContain('in the oven');
      await told(() => page.getByTestId('air-floor').click());
      await expect.poll(() => life.textContent()).toContain('672\u00a0h\u00a000 of floor life left, until');
      const aired = await ownEntries(page, 'reel.aired');
      expect(aired.map(({ payload }) => [payload['air'], payload['celsius']])).toEqual([
        ['floor', null],
        ['bake', 125],
        ['floor', null],
      ]);

      await goTo(page, 'load');
      const accepted = await scanAll(page, slot, feeder, label);
      expect(accepted.verdict).toBe('accepted');
      await page.reload();
      await goTo(page, 'load');
      await (await showSlot(page, slot)).click();
      await expect.poll(() => page.getByTestId('slot-life').textContent()).toContain('floor life left');
    });
  });
});

describe('the running line', () => {
  it('says which reel’s floor life ends before the reel does, and when it is over', async () => {
    await onTablet(async ({ page }) => {
      const loaded = [...(await readLog(page))]
        .reverse()
        .find(
          ({ kind, payload }) =>
            kind === 'reel.verified' &&
            payload['verdict'] === 'accepted' &&
            payload['slot'] !== null &&
            /^(22-0603|32-00)/.test(String(payload['part'])),
        );
      const at = String(loaded?.payload['slot']);
      const hoursOf = String(loaded?.payload['part']).startsWith('22') ? 672 : 168;
      const openedAgo = async (hours: number) => {
        await goTo(page, 'load');
        await (await showSlot(page, at)).click();
        await page.getByTestId('slot-air').click();
        await page.getByTestId('air-hours').fill(String(hours));
        await page.getByTestId('air-yes').click();
        await goTo(page, 'line');
      };
      await page.getByTestId('timeline').waitFor();
      expect(await page.getByTestId('life-ends').count()).toBe(0);
      await openedAgo(hoursOf - 0.1);
      await expect
        .poll(() => page.getByTestId('life-ends').textContent())
        .toContain(`${at}: floor life ends`);
      await openedAgo(hoursOf + 5);
      await expect
        .poll(() => page.getByTestId('life-ends').textContent())
        .toContain(`${at}: floor life ended`);
    });
  });
});

describe('the climate of a line’s floor', () => {
  // Level 2a, body unknown: the shortest of the classes, class C, has 1 day at 30 °C / 70 % and half a day at 35 °C / 90 % (J-STD-033).
  it('is entered with the line’s rules, and floor life is computed for it, beyond the table by its worst', async () => {
    await onTablet(async ({ page }) => {
      const label = reelLabel({ P: part, Q: '4000', '1T': 'LT-9101-E', '3S': 'R-970002' });
      const life = page.getByTestId('life-R-970002');
      const enter = async (celsius: string, humidity: string) => {
        await goTo(page, 'plant');
        await page.getByTestId('tile-rules').click();
        await page.getByTestId('rule-floorCelsius').fill(celsius);
        await page.getByTestId('rule-floorHumidity').fill(humidity);
        await page.getByTestId('rules-save').click();
      };
      await signIn(page, 'BADGE-4401');
      await goTo(page, 'stock');
      await scan(page, label);
      await page.getByTestId('put-new').click();
      await scan(page, 'A2-S11');
      await expect.poll(() => life.textContent()).toContain('672\u00a0h\u00a000 of floor life');

      await enter('80', '70');
      await expect.poll(() => page.getByTestId('rules-wrong').textContent()).toContain('0 to 60 °C');
      expect(await ownEntries(page, 'line.climate-ruled')).toHaveLength(0);
      const computesWith = async (entries: number, left: string, climate: string) => {
        await expect.poll(() => ownEntries(page, 'line.climate-ruled')).toHaveLength(entries);
        await goTo(page, 'stock');
        await scan(page, label);
        await expect.poll(() => life.textContent()).toContain(left);
        await reelAct(page, 'air', 'R-970002');
        await expect.poll(() => page.getByTestId('air-climate').textContent()).toContain(climate);
        await page.keyboard.press('Escape');
      };
      await enter('30', '70');
      await computesWith(1, '24\u00a0h\u00a000 of floor life', '30 °C and 70 %');
      await enter('38', '70');
      await computesWith(2, '12\u00a0h\u00a000 of floor life', 'outside the table');
    });
  });
});
