// The line's hours on one view of a week, and what is said of a feeder beyond its width: entered as a lead does, read back from the log.

import { describe, expect, it } from 'vitest';
import { goTo, ownEntries, signIn } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const { onTablet } = useDemo();

describe('a line’s week', () => {
  it('shows its shifts; a shift is added with a break, two weeks take turns, and the log has them', async () => {
    await onTablet(async ({ page }) => {
      await signIn(page, 'BADGE-4401');
      await goTo(page, 'plant');
      await page.getByTestId('tile-rules').click();
      await page.getByTestId('shift-0').waitFor();
      await page.getByTestId('week-alternate').click();
      await page.getByTestId('week-after').click();
      await expect.poll(() => page.getByTestId('week-shown').textContent()).toContain('Week B');
      await page.getByTestId('week-add-shift').click();
      await page.getByTestId('shift-from').fill('05:00');
      await page.getByTestId('shift-to').fill('06:00');
      await page.getByTestId('break-add').click();
      await page.getByTestId('rules-save').click();
      // Three hours into a shift of one hour.
      await expect
        .poll(() => page.getByTestId('rules-wrong').textContent())
        .toContain('not inside its shift');
      await page.getByTestId('break-0-from').fill('05:30');
      await page.getByTestId('break-0-to').fill('05:45');
      await page.getByTestId('rules-save').click();
      await expect.poll(async () => (await ownEntries(page, 'line.calendar-ruled')).length).toBe(1);
      const [entry] = await ownEntries(page, 'line.calendar-ruled');
      const weeks = entry?.payload['weeks'] as { from: string; breaks: { from: string }[] }[][]; // as the schema has it
      expect(weeks).toHaveLength(2);
      expect(weeks[1]?.at(-1)).toMatchObject({ from: '05:00', breaks: [{ from: '05:30', to: '05:45' }] });
      // The demo's own shifts begin by the hour at which it is started: one may be at five in both weeks.
      const added = JSON.stringify(weeks[1]?.at(-1));
      expect(weeks[0]?.map((shift) => JSON.stringify(shift))).not.toContain(added);
      expect(weeks[1]).toHaveLength((weeks[0]?.length ?? 0) + 1);
    });
  });
});

describe('a feeder type', () => {
  it('is described once, said of a feeder, and its lengths come after the feeder’s own', async () => {
    await onTablet(async ({ page }) => {
      await signIn(page, 'BADGE-4401');
      await goTo(page, 'plant');
      await page.getByTestId('tile-parts').click();
      await page.getByTestId('parts-types').click();
      await page.getByTestId('type-add').click();
      await page.getByTestId('type-type').fill('twin 8');
      await page.getByTestId('type-lanes').selectOption('2');
      await page.getByTestId('type-hubToPickMm').fill('700');
      await page.getByTestId('type-trailerMm').fill('50');
      await page.getByTestId('type-save').click();
      await page.getByTestId('type-twin 8').waitFor();
      await page.getByTestId('parts-feeders').click();
      await page.locator('[data-testid^=feeder-edit-]').first().click();
      await page.getByTestId('feeder-type').selectOption('twin 8');
      await page.getByTestId('feeder-trailerMm').fill('45');
      const counts = page.getByTestId('feeder-counts');
      await expect.poll(() => counts.textContent()).toContain('700 mm, from its type');
      await expect.poll(() => counts.textContent()).toContain('45 mm, measured on this feeder');
      await expect.poll(() => counts.textContent()).toContain('300 mm, from the line’s rules');
      await expect.poll(() => counts.textContent()).toContain('before the first part: not known');
      await page.getByTestId('feeder-save').click();
      await expect.poll(async () => (await ownEntries(page, 'feeder.typed')).length).toBe(1);
    });
  });
});
