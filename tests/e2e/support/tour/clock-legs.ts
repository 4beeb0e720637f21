// The tour of what time does: nobody counts, a tablet left alone, a clock set wrong. On a tablet of its own, since its time goes on.

import type { Page } from 'playwright-core';
import { pass } from '../clock.ts';
import { keepRunning, lookAgain, scan } from '../floor.ts';
import { closeDialogs, goThere, type Here, type Leg, openBy } from './here.ts';

const minuteMs = 60_000;

/** Counts have ceased: what the screens say, and what a stop asks. */
async function* nobody(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/line');
  await keepRunning(page);
  await page.getByTestId('plus-one').click();
  // Time that goes by before it is written would make it a later panel.
  await page.getByTestId('notice').getByRole('button').waitFor();
  await pass(page, 25 * minuteMs);
  await lookAgain(page);
  await page.getByTestId('nobody-counts').waitFor();
  await page.getByTestId('warning').waitFor();
  yield 'line, nobody counts';
  await goThere(here, '#/load');
  const late = page.getByTestId('late');
  for (let minutes = 0; minutes < 60 && (await late.count()) === 0; minutes++) {
    await pass(page, minuteMs);
    await page.keyboard.press('Shift'); // somebody is there: nobody is signed out
    await lookAgain(page);
  }
  await late.waitFor();
  yield 'load, a late warning that nobody answers';
  await goThere(here, '#/plant/tablet');
  await page.getByTestId('open-exit').click();
  await page.getByTestId('exit-go').waitFor();
  yield 'exit, a late warning';
  await page.getByTestId('exit-leave').click();
  await goThere(here, '#/line');
  await openBy(here, 'run-stop');
  await page.getByTestId('stood').waitFor();
  yield 'why it stopped, and since when';
  await closeDialogs(page);
  await goThere(here, '#/change');
  await page.locator('[data-testid^=plan-]').first().click();
  await page.getByTestId('changeover').waitFor();
  await openBy(here, 'last-panel');
  await page.getByTestId('stood').waitFor();
  yield 'last panel, and since when';
  await closeDialogs(page);
}

/** Left alone with a dialog open, and with none. */
async function* leftAlone(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await openBy(here, 'dock-type');
  await pass(page, 31 * minuteMs);
  await page.getByTestId('away').waitFor();
  yield 'left alone, a dialog open';
  await scan(page, 'BADGE-4401');
  await page.getByTestId('away').waitFor({ state: 'detached' });
  await closeDialogs(page);
  await scan(page, 'M2-F-023');
  await page.getByTestId('well-slot').waitFor();
  await pass(page, 31 * minuteMs);
  await page.getByTestId('sign-in').getByText('Sign in').or(page.getByTestId('notice')).first().waitFor();
  yield 'left alone, a slot in hand';
  await scan(page, 'BADGE-4401');
  await page.getByTestId('sign-in').getByText('Elif').waitFor();
}

/** Somebody sets the tablet's clock, and the page looks at it at once. */
async function setClock(page: Page, byMs: number): Promise<void> {
  await page.evaluate((by) => {
    const before = Date.now;
    Date.now = () => before() + by;
    document.dispatchEvent(new Event('visibilitychange'));
  }, byMs);
}

async function* clock(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/line');
  await setClock(page, 9 * 60 * minuteMs);
  await page.getByTestId('clock-right').waitFor();
  yield 'line, a clock ahead';
  await page.getByTestId('clock-right').click();
  await page.getByTestId('clock-slip').waitFor({ state: 'detached' });
  await setClock(page, -60 * minuteMs);
  await page.getByTestId('clock-slip').waitFor();
  yield 'line, a clock set back';
  await goThere(here, '#/load');
  yield 'load, a clock set back';
}

export const clockLegs: readonly Leg[] = [
  { name: 'nobody', stops: nobody },
  { name: 'left alone', stops: leftAlone },
  { name: 'clock', stops: clock },
];
