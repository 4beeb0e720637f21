// Parts that are measured before they feed: the engineer's rule and the plant's list make the desk ask; a keyboard meter or a person answers, without a
// network too, and the verdict shows its arithmetic.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { goOn, goTo, openAt, ownEntries, readLog, reelLabel, scan, seeVerdict } from './support/floor.ts';
import { look } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-4401', hash: '#/plant/parts/list' });

const place = { slot: 'M2-R-005', feeder: 'F-0114', part: '10-0603-3R3' } as const;
const label = (reel: string) => reelLabel({ P: place.part, Q: '4000', '1T': 'LT-9800-V', '3S': reel });

/** The list states the value, and the line wants it measured. */
async function rule(page: Page): Promise<void> {
  await page.getByTestId('listed-add').click();
  await page.getByTestId('part-part').fill(place.part);
  await page.getByTestId('part-value').fill('3.3 Ω');
  await page.getByTestId('part-tolerance').fill('1 %');
  await page.getByTestId('part-save').click();
  await page.getByTestId('part-form').waitFor({ state: 'detached' });
  await openAt(page, '#/plant/rules');
  await page.getByTestId('value-add').click();
  await page.getByTestId('value-0-begins').fill('10-0603');
  await look(page, { where: 'rules' });
  await page.getByTestId('rules-save').click();
  await expect.poll(async () => (await ownEntries(page, 'line.values-ruled')).length).toBe(1);
}

async function ask(page: Page, ...codes: readonly string[]): Promise<void> {
  for (const code of codes) await scan(page, code);
  await page.getByTestId('value-dialog').waitFor();
}

it('a reel is measured before it feeds: by a meter that types, by hand, or a lead decides; offline', async () => {
  await demo.onTablet(
    async ({ page }) => {
      await rule(page);
      await goTo(page, 'load');
      await page.context().setOffline(true);
      await ask(page, place.slot, place.feeder, label('R-990001'));
      await expect
        .poll(() => page.getByTestId('value-wanted').textContent())
        .toBe('Wanted: 3.3 Ω, from 3.267 to 3.333 Ω');
      expect(await ownEntries(page, 'reel.verified')).toHaveLength(0);
      // By hand, and wrong: 3.5 Ω ± (0.5 % + 2 × 0.1 Ω) cannot be told from 3.333 Ω; 3.50 Ω can.
      await page.getByTestId('value-typed').fill('3.5');
      await page.getByTestId('value-check').click();
      expect(await seeVerdict(page)).toMatchObject({ verdict: 'held' });
      await page.getByTestId('verdict-go-on').click();
      await ask(page, label('R-990001'));
      // A meter that names its unit is believed at once.
      await scan(page, '3.50 Ohm');
      const refused = await seeVerdict(page);
      expect(refused).toMatchObject({ verdict: 'refused' });
      expect(refused.text).toContain('Measured: 3.5 ± 0.0375 Ω. Wanted: 3.3 Ω, from 3.267 to 3.333.');
      await page.getByTestId('verdict-go-on').click();
      // It cannot be measured: a lead's.
      await ask(page, label('R-990002'));
      await page.getByTestId('value-cannot').click();
      const held = await seeVerdict(page);
      expect(held).toMatchObject({ verdict: 'held' });
      expect(held.text).toContain('Value not measured');
      await page.getByTestId('verdict-go-on').click();
      // A meter types, as a scanner does.
      await ask(page, label('R-990003'));
      await expect.poll(() => page.getByTestId('value-reel').textContent()).toContain('R-990003');
      await page.getByTestId('value-typed').fill('3.31');
      // Another reel in hand: what was typed for the one before is gone.
      await scan(page, label('R-990004'));
      await expect.poll(() => page.getByTestId('value-reel').textContent()).toContain('R-990004');
      await expect.poll(() => page.getByTestId('value-typed').inputValue()).toBe('');
      await scan(page, label('R-990003'));
      await expect.poll(() => page.getByTestId('value-reel').textContent()).toContain('R-990003');
      // A bare figure may be a code of a label: a person says that it is the meter's.
      await scan(page, '2432');
      await expect.poll(() => page.getByTestId('value-typed').inputValue()).toBe('2432');
      await scan(page, '+3.30500E+00');
      await expect.poll(() => page.getByTestId('value-typed').inputValue()).toBe('+3.30500E+00');
      await look(page, { where: 'measure' });
      await page.getByTestId('value-check').click();
      const accepted = await seeVerdict(page);
      expect(accepted).toMatchObject({ verdict: 'accepted' });
      expect(accepted.text).toContain('Value checked');
      await goOn(page);
      await page.context().setOffline(false);
      const measured = await ownEntries(page, 'reel.measured');
      expect(measured.map(({ payload }) => [payload['reel'], payload['verdict'], payload['via']])).toEqual([
        ['R-990001', 'held', 'typed'],
        ['R-990001', 'refused', 'wedge'],
        ['R-990003', 'accepted', 'wedge'],
      ]);
      expect(measured.at(-1)?.payload).toMatchObject({
        slot: place.slot,
        part: place.part,
        nominal: 3.3,
        unit: 'Ω',
        quantity: 3.305,
        uncertainty: 0.016545,
      });
      expect((await readLog(page)).some(({ kind }) => kind === 'reel.measured')).toBe(true);
      await goTo(page, 'log');
      await page.getByText('Value measured').first().waitFor();
      await look(page, { where: 'log' });
    },
    { offlineCopy: true },
  );
});
