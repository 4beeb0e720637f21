// The tour of what reels teach and how long they last: feeders that lose parts, counts that agree, floor life that ends on the line.

import type { Page } from 'playwright-core';
import { applyAll } from '../../../../shared/floor/fold.ts';
import { slotEstimate } from '../../../../shared/floor/remaining.ts';
import { emptyState, type SlotState } from '../../../../shared/floor/state.ts';
import { keepRunning, pad, readLog, showSlot } from '../floor.ts';
import { closeDialogs, goThere, type Here, type Leg, openBy } from './here.ts';

async function openSlot(here: Here, slot: string): Promise<void> {
  await goThere(here, '#/load');
  await (await showSlot(here.page, slot)).click();
  await here.page.locator('dialog[open]').waitFor();
}

/** A reel that parts have been taken from: so many were on it, so many are gone by the log. */
interface Worked {
  readonly slot: string;
  readonly left: number;
  readonly gone: number;
}

/** Reels of the line, those that most was taken from first. */
async function worked(page: Page): Promise<readonly Worked[]> {
  const floor = applyAll(emptyState(), await readLog(page));
  const goneOf = (state: SlotState) => {
    const left = slotEstimate(floor, state).parts ?? 0;
    const [tape, joined] = state.tapes;
    const gone = joined === undefined && state.feeder !== null ? (tape?.count ?? 0) - left : 0;
    return { slot: state.slot, left: Math.round(left), gone: Math.round(gone) };
  };
  return [...floor.slots.values()]
    .map(goneOf)
    .filter(({ left, gone }) => left > gone)
    .sort((a, b) => b.gone - a.gone);
}

/** Takes a reel off and says how many parts a counting machine found on it. */
async function unload(here: Here, slot: string, parts: number): Promise<void> {
  const { page } = here;
  await openSlot(here, slot);
  await page.getByTestId('slot-unload').click();
  await page.getByTestId('unload-count').click();
  await page.getByTestId('count-machine').click();
  await page.getByTestId('count-field-parts').fill(String(parts));
  await page.getByTestId('count-take').click();
  await page.getByTestId('notice').getByText(slot).waitFor();
}

/** A feeder loses more than it did, and a count says more than any feeder loses. */
async function* losses(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await keepRunning(page);
  await openBy(here, 'plus-many');
  await pad(page, '150');
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  const [most, next, usual] = await worked(page);
  if (!most || !next || !usual || usual.gone < 600)
    throw new TypeError('Three reels must have fed 600 parts each');
  await unload(here, usual.slot, usual.left); // what others lose is what a feeder is measured by
  await unload(here, most.slot, Math.round(most.left - 0.08 * most.gone));
  yield 'toast, what a reel lost';
  await unload(here, next.slot, Math.round(next.left - 0.5 * next.gone));
  yield 'toast, a loss that is unlikely';
  await goThere(here, '#/line');
  await page.getByTestId('rising-losses').evaluate((box) => box.scrollIntoView({ block: 'center' }));
  yield 'line, a feeder loses more';
  await page.getByTestId('losses').locator('summary').click();
  await page.getByTestId('loss-aside').waitFor();
  await page.locator('[data-testid^=evidence-]').first().click();
  await page.locator('.losses .listed .evidence').first().waitFor();
  await page.getByTestId('losses').evaluate((fold) => fold.scrollIntoView());
  yield 'line, what feeders lose';
}

/** Hours that a moist part of the demo may lie open. */
const hoursOf = (part: string) => (part.startsWith('22-0603') ? 672 : 168);

/** One floor life is over, one ends before its reel does. */
async function* lives(here: Here): AsyncGenerator<string> {
  const { page } = here;
  const floor = applyAll(emptyState(), await readLog(page));
  const moist = [...floor.slots.values()].filter(({ tapes }) =>
    /^(22-0603|32-00)/.test(tapes.at(-1)?.part ?? ''),
  );
  for (const [index, hours] of [5, -0.1].entries()) {
    const state = moist[index];
    if (!state) throw new TypeError('The line has no two reels with a floor life');
    await openSlot(here, state.slot);
    await page.getByTestId('slot-air').click();
    await page.getByTestId('air-hours').fill(String(hoursOf(state.tapes.at(-1)?.part ?? '') + hours));
    await page.getByTestId('air-yes').click();
    await page.locator('dialog[open]').waitFor({ state: 'detached' });
  }
  await goThere(here, '#/line');
  await page.getByTestId('life-ends').getByText('floor life ended').waitFor();
  await page.getByTestId('life-ends').getByText('life ends').waitFor();
  await page.getByTestId('life-ends').evaluate((box) => box.scrollIntoView({ block: 'center' }));
  yield 'line, floor lives end';
}

/** A count by machine that says what the log says. */
async function* agreeing(here: Here): AsyncGenerator<string> {
  const { page } = here;
  const [state] = await worked(page);
  if (!state) throw new TypeError('No reel of the line has a count');
  await openSlot(here, state.slot);
  await page.getByTestId('slot-count').click();
  await page.getByTestId('count-machine').click();
  await page.getByTestId('count-field-parts').fill(String(state.left));
  await page.getByTestId('count-take-both').waitFor();
  yield 'count, agrees with what was counted down';
  await closeDialogs(page);
}

export const reelLegs: readonly Leg[] = [
  { name: 'agreeing', stops: agreeing },
  { name: 'losses', stops: losses },
  { name: 'lives', stops: lives },
];
