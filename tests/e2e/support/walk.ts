// A walk through every screen, page, verdict and dialog of the app, each by its own way in: for checks that hold everywhere.

import type { Page } from 'playwright-core';
import { drawn } from './clock.ts';
import { arrived, goOn, goTo, keepRunning, reelLabel, scan, scanAll } from './floor.ts';

/** A place of the app and how it is left again. */
export interface Stop {
  readonly name: string;
  readonly leave: () => Promise<void>;
}

const stay = async () => undefined;

/** Goes everywhere, calls `look` at each stop. The person signed in must be an engineer. */
export async function walkEverywhere(
  page: Page,
  url: string,
  look: (name: string) => Promise<void>,
): Promise<void> {
  for await (const { name, leave } of stops(page, url)) {
    await arrived(page);
    await drawn(page);
    await look(name);
    await leave();
  }
}

async function* stops(page: Page, url: string): AsyncGenerator<Stop> {
  for (const screen of ['line', 'load', 'change', 'stock', 'log', 'plant']) {
    await goTo(page, screen);
    await page.locator('main').getByRole('button').or(page.locator('main a')).first().waitFor();
    yield { name: screen, leave: stay };
  }
  await page.locator('[data-testid^=tile-]').first().waitFor();
  const pages = await page
    .locator('[data-testid^=tile-]')
    .evaluateAll((tiles) => tiles.map((tile) => tile.getAttribute('href') ?? ''));
  for (const address of pages) {
    await page.goto(`${url}${address}`);
    await page.locator('main h1').first().waitFor();
    yield { name: address, leave: stay };
  }
  yield* verdicts(page);
  yield* dialogs(page);
}

async function* verdicts(page: Page): AsyncGenerator<Stop> {
  const right = reelLabel({ P: '22-0603-B', Q: '4000', '1T': 'LT-9400-H', '3S': 'R-970001' });
  const leave = () => goOn(page);
  await goTo(page, 'load');
  await scan(page, 'M2-F-023');
  await page.getByTestId('well-slot').waitFor();
  yield { name: 'slot in hand', leave: stay };
  await scanAll(page, 'F-0112', right);
  yield {
    name: 'accepted',
    leave: async () => {
      await page.getByTestId('verdict-undo').click();
      await page.getByTestId('verdict').waitFor({ state: 'detached' });
    },
  };
  await scanAll(page, 'M2-F-022', reelLabel({ P: '10-0603-101', Q: '4000', '3S': 'R-970002' }));
  yield { name: 'refused', leave };
  await page.getByTestId('dock-clear').click();
  await scanAll(page, 'M2-R-010', reelLabel({ P: '12-0603-105H', Q: '4000', '3S': 'R-970003' }));
  yield { name: 'held', leave: stay };
  await page.getByTestId('verdict-clear').click();
  await page.getByTestId('badge').waitFor();
  yield { name: 'held: badge', leave: stay };
  await scan(page, 'BADGE-3301');
  await page.locator('.pinpad').waitFor();
  yield { name: 'held: PIN', leave: stay };
  for (const digit of '3301')
    await page.locator('.pinpad').getByRole('button', { name: digit, exact: true }).click();
  await page.getByTestId('pin-enter').click();
  await page.getByTestId('clear-accept').waitFor();
  yield { name: 'held: reason', leave: () => page.keyboard.press('Escape') };
  await goOn(page);
  await page.getByTestId('dock-clear').click();
}

async function* dialogs(page: Page): AsyncGenerator<Stop> {
  const leave = async () => {
    await page.keyboard.press('Escape');
    await page.locator('dialog').waitFor({ state: 'detached' });
  };
  const open = async (testId: string) => {
    await page.getByTestId(testId).click();
    await page.locator('dialog[open]').waitFor();
  };
  await keepRunning(page);
  await open('run-stop');
  yield { name: 'stop', leave };
  await open('plus-many');
  yield { name: 'count', leave };
  await open('dock-type');
  yield { name: 'type', leave };
  await open('sign-in');
  yield { name: 'sign in', leave };
  await goTo(page, 'load');
  const openSlot = async () => {
    await page.getByRole('button', { name: /^M2-F-022:/ }).click();
    await page.locator('dialog[open]').waitFor();
  };
  await openSlot();
  yield { name: 'slot', leave };
  await openSlot();
  await open('slot-air');
  await page.getByTestId('air-bake').click();
  yield { name: 'floor life', leave };
  await goTo(page, 'log');
  await page.getByTestId('entry').first().click();
  await page.locator('dialog[open]').waitFor();
  yield { name: 'entry', leave };
  await goTo(page, 'load');
  await scan(page, 'M2-F-023');
  await scan(page, 'F-9999');
  await page.locator('dialog[open]').waitFor();
  yield { name: 'question', leave };
}
