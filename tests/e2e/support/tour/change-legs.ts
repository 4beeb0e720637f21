// The tour of a change from one product to the next: planned, made ready, stood, released; the order of jobs.

import type { Page } from 'playwright-core';
import { firstSlot, readLog, reelAct, reelLabel, scan, scanAll, steady } from '../floor.ts';
import { holdWorkers } from '../workers.ts';
import { closeDialogs, confirm, goThere, type Here, type Leg, openBy } from './here.ts';

const next = 'greenhouse-node-top-F';

async function* order(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/change');
  await page.getByTestId(`plan-${next}`).waitFor();
  yield 'change, none open';
  await goThere(here, '#/change/order');
  await page.getByTestId('job-setup').waitFor();
  yield 'order of jobs, none';
  const asked = [
    ['pump-driver-bottom-B', '900', '2026-01-01T08:00'],
    ['tide-gauge-top-C', '100', ''],
    [next, '200', ''],
  ] as const;
  for (const [index, [setup, panels, due]] of asked.entries()) {
    await page.getByTestId('job-setup').selectOption(setup);
    await page.getByTestId('job-panels').fill(panels);
    if (due) await page.getByTestId('job-due').fill(due);
    await steady(page);
    await page.getByTestId('job-add').click();
    await page.getByTestId(`job-${index}`).waitFor();
  }
  await holdWorkers(page, true);
  await page.getByTestId('order-find').click();
  await page.getByTestId('order-stop').waitFor();
  yield 'order of jobs, being searched';
  await holdWorkers(page, false);
  await page.getByTestId('order-find').waitFor();
  yield 'order of jobs';
  await page.getByTestId('order-keep').click();
  await page.getByTestId('order-kept').waitFor();
  await page.getByTestId('down-0').click();
  await openBy(here, 'order-take-kept');
  yield 'order of jobs, the kept one taken';
  await goThere(here, '#/change');
  await page.getByTestId('next-kept').waitFor();
  yield 'change, an order kept';
}

async function* lists(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/change/list/shift-start');
  await page.getByTestId('list-open').waitFor();
  yield 'checklist, not open';
  await page.getByTestId('list-open').click();
  await page.getByTestId('checklist').waitFor();
  yield 'checklist, shift start';
  await goThere(here, '#/change/list/splice');
  await page.getByTestId('list-open').click();
  await page.getByTestId('checklist').waitFor();
  yield 'checklist, splice';
  await goThere(here, '#/log/shift');
  await page.locator('.handover [data-what=checklist]').first().waitFor({ state: 'attached' });
  const all = page.getByTestId('matters-all').first();
  if (await all.isVisible()) await all.click();
  await page.getByTestId('matter-list').first().waitFor();
  yield 'handover, checklists that are open';
  await page.getByTestId('matter-list').first().click();
  await page.getByTestId('one-list').waitFor();
  yield 'checklist, from the handover';
}

async function* change(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/change');
  // It stands in the kept order where one was made, else among all.
  await page.locator(`[data-setup="${next}"]`).getByRole('button', { name: 'Plan this' }).first().click();
  await page.getByTestId('changeover').waitFor();
  yield 'change, feeders';
  await page.getByRole('button', { name: 'Cancel changeover' }).click();
  await page.locator('dialog[open]').waitFor();
  yield 'change, dropped';
  await closeDialogs(page);
  await page.getByTestId('tab-kit').click();
  await page.getByTestId('kit').waitFor();
  yield 'change, kit';
  yield* store(here);
  yield* cart(here);
  await goThere(here, '#/change');
  await page.getByTestId('tab-checklist').click();
  await page.getByTestId('checklist-open').waitFor();
  yield 'change, checklist not open';
  await page.getByTestId('checklist-open').click();
  await page.getByTestId('checklist').waitFor();
  yield 'change, checklist';
  await page.getByTestId('value-stencil-fetched').click();
  await page.getByTestId('next-scan-stencil-fetched').waitFor();
  yield 'change, a step takes the next scan';
  await openBy(here, 'skip-documents');
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('skip-reason').waitFor();
  yield 'checklist, a step left out';
  await closeDialogs(page);
  await page.getByTestId('tab-first').click();
  await page.getByTestId('first-panel').waitFor();
  yield 'change, first panel';
  await page.getByTestId('measure-other').selectOption({ index: 1 });
  await page.getByTestId('measure-reading').waitFor();
  yield 'measurement';
  await page.getByTestId('measure-code').fill('4k7');
  await page.getByRole('button', { name: '4.7 kΩ' }).click();
  await page.getByTestId('measure-tolerance').fill('1');
  await page.getByTestId('measure-reading').fill('4.5');
  await page.getByTestId('measure-outcome').waitFor();
  yield 'measurement, wrong';
  await page.getByTestId('measure-keep').click();
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await page.locator('[data-testid^=wrong-]').first().click();
  yield 'first panel, one part wrong';
  await closeDialogs(page);
  await openBy(here, 'last-panel');
  yield 'last panel';
  await page.getByTestId('last-panel-yes').click();
  await page.getByTestId('release').waitFor();
  yield 'change, the line stands';
  await page.getByTestId('tab-checklist').click();
  yield 'change, checklist, the line stands';
  await page.getByTestId('tick-documents').click();
  await page.locator('[data-testid=step-documents][data-state=done]').waitFor();
  yield* signatures(here);
  await page.getByTestId('tab-times').click();
  await page.getByTestId('times-outside').waitFor();
  yield 'change, times';
  await openBy(here, 'release');
  await page.getByTestId('release-wrong').waitFor();
  yield 'release, what is open and wrong';
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('release-reason').waitFor();
  yield 'release';
  await goThere(here, '#/line');
  yield 'line, between two products';
  await goThere(here, '#/load');
  yield 'load, between two products';
  const slot = await firstSlot(page, 'other');
  const part = (await wanted(page)).find((each) => each.slot === slot)?.part ?? '';
  await scanAll(page, slot, reelLabel({ P: part, Q: '4000', '1T': 'LT-1', '3S': 'R-980003' }));
  await page.getByTestId('verdict-unload').waitFor();
  yield 'refused, the old reel is still there';
}

/** Signed by one, and by who may not; taken back. */
async function* signatures({ page }: Here): AsyncGenerator<string> {
  const dialog = page.locator('dialog[open]');
  await page.getByTestId('sign-released-lead').click();
  await page.getByTestId('sign-dialog').waitFor();
  yield 'signature';
  await scan(page, 'BADGE-2201');
  await dialog.getByRole('alert').waitFor();
  yield 'signature, the wrong role';
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('signed-released-lead').waitFor();
  yield 'checklist, signed by one of two';
  await page.getByTestId('sign-released-operator').click();
  await page.getByTestId('sign-dialog').waitFor();
  await scan(page, 'BADGE-3301');
  await dialog.getByText('has signed already').waitFor();
  yield 'signature, of the same person';
  await scan(page, 'BADGE-2201');
  await page.getByTestId('signed-released-operator').waitFor();
  await page.getByTestId('unsign-released-operator').click();
  await page.getByTestId('unsign-dialog').waitFor();
  yield 'signature, taken back';
  await closeDialogs(page);
}

/** What the next product wants, as its entry says. */
async function wanted(page: Page) {
  const taken = (await readLog(page)).find(
    ({ kind, payload }) => kind === 'setup.taken' && payload['setup'] === next,
  );
  return taken?.payload['slots'] as { slot: string; part: string; tapeWidthMm: number; msl?: string }[]; // shape of the entry
}

/** Reels for the next product in the store: one with a floor life, one whose floor life is over, one that nobody counted. */
async function* store(here: Here): AsyncGenerator<string> {
  const { page } = here;
  const slots = await wanted(page);
  const moist = slots.find(({ msl }) => msl !== undefined)?.part ?? '';
  const dry = slots.find(({ msl }) => msl === undefined)?.part ?? '';
  const putAway = async (label: Readonly<Record<string, string>>) => {
    await goThere(here, '#/stock');
    await scan(page, reelLabel(label));
    await page.getByTestId('put-new').click();
    await scan(page, 'A2-S10');
    await page.getByTestId(`reel-${label['3S']}`).waitFor();
  };
  await putAway({ P: dry, '1T': 'LT-8', '3S': 'R-990301' });
  await putAway({ P: moist, Q: '4000', '1T': 'LT-8', '3S': 'R-990302' });
  await putAway({ P: moist, Q: '4000', '1T': 'LT-8', '3S': 'R-990303' });
  await reelAct(page, 'air', 'R-990303');
  await page.getByTestId('air-hours').fill('9000');
  await page.getByTestId('air-yes').click();
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await goThere(here, '#/change');
  await page.getByTestId('tab-kit').click();
  await page.getByTestId('kit-panels').fill('20000');
  await page.getByTestId('kit-unsure').waitFor();
  await page.getByTestId('pick-life').first().waitFor();
  await page.getByTestId('pick-spent').waitFor();
  await page.getByTestId('pick-spent').scrollIntoViewIfNeeded();
  yield 'change, kit for more than there is';
}

async function* cart(here: Here): AsyncGenerator<string> {
  const { page } = here;
  const place = (await wanted(page)).find((each) => each.tapeWidthMm === 8);
  if (!place) throw new TypeError('The next product has no 8 mm slot');
  await page.getByTestId('cart-code').fill('CART-1');
  await page.getByTestId('cart-use').click();
  await page.getByTestId('cart-filling').waitFor();
  yield 'cart, being filled';
  for (const text of [place.slot, 'F-0113', `P${place.part}`]) await scan(page, text);
  await page.getByTestId('cart-enough').waitFor();
  yield 'cart, half a label';
  await page.getByTestId('cart-enough').click();
  await page.getByTestId('cart-told').waitFor();
  yield 'cart, held without a quantity';
  await scan(page, place.slot);
  await scan(page, 'F-0113');
  await scan(page, reelLabel({ P: '10-0402-nothing', Q: '4000', '3S': 'R-990200' }));
  await page.getByTestId('cart-told').waitFor();
  yield 'cart, refused';
  for (const text of [
    place.slot,
    'F-0113',
    reelLabel({ P: place.part, Q: '4000', '1T': 'LT-8', '3S': 'R-990201' }),
  ])
    await scan(page, text);
  await page.getByTestId('cart-CART-1').waitFor();
  yield 'cart, with a reel';
  await goThere(here, '#/load');
  await page.getByTestId('holds').getByRole('button').first().click();
  await page.getByTestId('hold-kept').waitFor();
  yield 'hold of a cart, which has another reel since';
  await goThere(here, '#/stock');
  await scan(page, 'CART-1');
  await page.getByTestId('dock-cart').waitFor();
  yield 'told: a cart';
  await page.getByTestId('dock-cart').click();
  await page.getByTestId('dock-question').waitFor();
  yield 'cart, to be docked';
  await goThere(here, '#/plant/parts/blocks');
  await page.getByTestId('block-add').click();
  await page.getByTestId('block-value').fill('LT-8');
  await page.getByTestId('block-reason').fill('Cracked bodies');
  await page.getByTestId('block-save').click();
  await page.getByTestId('block-LT-8').waitFor();
  await goThere(here, '#/stock');
  await scan(page, 'CART-1');
  await page.getByTestId('dock-cart').click();
  await page.getByTestId('dock-unfit').waitFor();
  yield 'cart, its reel is blocked';
  await closeDialogs(page);
}

export const changeLegs: readonly Leg[] = [
  { name: 'order', stops: order },
  { name: 'lists', stops: lists },
  { name: 'change', stops: change },
];
