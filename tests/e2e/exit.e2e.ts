// Where panels leave the line: a keyboard scanner counts each once, a code scanned twice adds nothing, what warns is answered there, and a page
// that lost the keyboard says so.

import { expect, it } from 'vitest';
import { waitReady } from './support/browser.ts';
import { passUntilSeen } from './support/clock.ts';
import { goTo, keepRunning, ownEntries, pad, scan, steady } from './support/floor.ts';
import { look } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-3301', hash: '#/line' });

it('counts each panel once, and stays an exit over a reload', () =>
  demo.onTablet(async ({ page }) => {
    await keepRunning(page);
    await goTo(page, 'plant');
    await page.getByTestId('tile-tablet').click();
    await steady(page);
    await page.getByTestId('open-exit').click();
    await page.getByTestId('screen-exit').waitFor();
    const number = async () =>
      Number((await page.getByTestId('exit-panels').textContent())?.replace(/\D/g, ''));
    const before = await number();
    await look(page, { where: 'exit' });
    // The line was on the screen before: a number in a box is the number of a walk there.
    const border = await page
      .getByTestId('exit-panels')
      .evaluate((it) => getComputedStyle(it).borderTopWidth);
    expect(border).toBe('0px');
    await scan(page, 'PN-EXIT-0001');
    await expect.poll(number).toBe(before + 1);
    await scan(page, 'PN-EXIT-0002');
    await expect.poll(number).toBe(before + 2);
    await expect.poll(() => page.getByTestId('exit-told').textContent()).toContain('Counted: PN-EXIT-0002');
    await look(page, { where: 'exit, counted' });
    await scan(page, 'PN-EXIT-0001');
    await page.getByTestId('exit-told').getByText('nothing added').waitFor();
    expect(await number()).toBe(before + 2);
    await page.reload();
    await waitReady(page);
    await page.getByTestId('screen-exit').waitFor();
    await expect.poll(number).toBe(before + 2);
    await scan(page, 'PN-EXIT-0003');
    await expect.poll(number).toBe(before + 3);
    const counted = await ownEntries(page, 'panels.counted');
    expect(counted.slice(-3).map(({ payload }) => payload['serial'])).toEqual([
      'PN-EXIT-0001',
      'PN-EXIT-0002',
      'PN-EXIT-0003',
    ]);
    await page.getByTestId('exit-leave').click();
    await page.getByTestId('runbar').waitFor();
  }));

it('shows what warns on the line, which is answered there, or gone to', () =>
  demo.onTablet(async ({ page }) => {
    await keepRunning(page);
    await page.getByTestId('plus-many').click();
    await pad(page, '150');
    await page.getByTestId('warning').waitFor();
    await goTo(page, 'plant');
    await page.getByTestId('tile-tablet').click();
    await steady(page);
    await page.getByTestId('open-exit').click();
    await page.getByTestId('screen-exit').waitFor();
    const chip = page.getByTestId('warning');
    const slot = await chip.locator('b.code').textContent();
    const level = await chip.getAttribute('data-level');
    for (const [width, height] of [
      [390, 844],
      [1280, 800],
    ] as const) {
      await page.setViewportSize({ width, height });
      await look(page, { where: `exit at ${width}, a warning` });
    }
    await page.getByTestId('exit-go').click();
    await expect.poll(async () => (await ownEntries(page, 'warning.acknowledged')).length).toBe(1);
    expect((await ownEntries(page, 'warning.acknowledged'))[0]?.payload).toMatchObject({ slot, level });
    // Others may warn by now; this one is no more in question.
    const named = () => chip.locator('b.code').allTextContents();
    await expect.poll(async () => (await named()).includes(slot ?? '')).toBe(false);
    expect(await page.getByTestId('screen-exit').count()).toBe(1);
    await passUntilSeen(page, 'warning');
    await chip.click();
    await page.getByTestId('timeline').waitFor();
  }));

it('says that it lost the keyboard, and not once it has it again', () =>
  demo.onTablet(async ({ page }) => {
    await page.evaluate(() => {
      const scope = document as Document & { away?: boolean };
      const has = document.hasFocus.bind(document);
      document.hasFocus = () => !scope.away && has();
    });
    await goTo(page, 'plant');
    await page.getByTestId('tile-tablet').click();
    await steady(page);
    await page.getByTestId('open-exit').click();
    await page.getByTestId('screen-exit').waitFor();
    expect(await page.getByTestId('exit-lost').count()).toBe(0);
    const setAway = (away: boolean) =>
      page.evaluate((is) => {
        (document as Document & { away?: boolean }).away = is;
        dispatchEvent(new Event(is ? 'blur' : 'focus'));
      }, away);
    await setAway(true);
    await page.getByTestId('exit-lost').waitFor();
    await look(page, { where: 'exit, keyboard lost' });
    await setAway(false);
    await page.getByTestId('exit-lost').waitFor({ state: 'detached' });
  }));
