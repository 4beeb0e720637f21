// The tour of a plant that begins: every screen with nothing in it, the first person, joining the server, two tablets that
// disagree, and the faults that stop the work.

import { openAt } from '../floor.ts';
import { endPractice, goThere, type Here, type Leg } from './here.ts';

async function* empty(here: Here): AsyncGenerator<string> {
  const { page } = here;
  for (const screen of ['line', 'load', 'change', 'stock', 'log', 'plant']) {
    await openAt(page, `#/${screen}`);
    await page.getByTestId(`screen-${screen}`).waitFor();
    yield `empty plant: ${screen}`;
  }
  const addresses = await page
    .locator('[data-testid^=tile-][href*="#/plant/"]')
    .evaluateAll((all) => all.map((tile) => tile.getAttribute('href') ?? ''));
  for (const address of addresses) {
    await goThere(here, address);
    await page.locator('main h1').first().waitFor();
    yield `empty plant: ${address.replace('#/plant/', '')}`;
  }
  await page.getByTestId('sign-in').click();
  await page.locator('dialog[open]').waitFor();
  yield 'empty plant: sign in';
  await goThere(here, '#/stock');
  await page.getByTestId('stock-reels').click();
  yield 'empty plant: reels';
  await page.getByTestId('stock-blocks').click();
  yield 'empty plant: stock blocks';
  await goThere(here, '#/plant/people');
  await page.getByTestId('person-name').fill('Elif');
  await page.getByTestId('person-badge').fill('E-1');
  await page.getByTestId('person-save').click();
  await page.getByTestId('person-wrong').waitFor();
  yield 'empty plant: first person, a PIN is missing';
}

/** Practice where there is no line yet has one of its own. */
async function* practice(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/practice');
  await page.getByTestId('practice-start').click();
  await page.getByTestId('practice-print').waitFor();
  yield 'empty plant: practice, labels';
  await goThere(here, '#/line');
  yield 'empty plant: practice, line';
  await page.getByTestId('run-start').click();
  await page.getByTestId('run-start-yes').click();
  await page.getByTestId('no-rules').waitFor();
  yield 'empty plant: practice, a run without rules';
  await endPractice(here);
}

export const emptyLegs: readonly Leg[] = [
  { name: 'empty plant', stops: empty },
  { name: 'empty practice', stops: practice },
];
