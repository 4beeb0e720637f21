// The five main tasks, done at the keyboard with a scanner beside it: loading a reel, a splice that a warning asks for, a changeover through
// its checklist, a trace with an export, a hold cleared by a lead. Each stops where something was told, so that a test can ask what.

import type { Page } from 'playwright-core';
import { labelOf, readLog, scan } from './floor.ts';
import { act, press, seenFocus, tabTo, type } from './keys.ts';

/** A task: goes on until something was told, and says what was done. */
export type Task = (page: Page) => AsyncGenerator<string>;

const place = { slot: 'M2-F-026', feeder: 'F-0113', part: '25-0023-113' } as const;

/** Waits for something on the screen; never for a person's act. */
const shows = (page: Page, text: string | RegExp) =>
  page.getByText(text).filter({ visible: true }).first().waitFor();

async function verdict(page: Page, which: 'accepted' | 'refused' | 'held'): Promise<void> {
  await page.locator(`[data-verdict=${which}]`).waitFor();
  await seenFocus(page, `the verdict ${which}`);
}

/** A reel that is wrong, then the right one. */
export const loadReel: Task = async function* (page) {
  await act(page, 'Load');
  await page.locator('.slotmap button').first().waitFor();
  await scan(page, place.slot);
  await scan(page, labelOf('25-0023-311', 'R-980101'));
  await verdict(page, 'refused');
  yield 'refused';
  await act(page, 'Scan another reel');
  yield 'left';
  await scan(page, place.feeder);
  await scan(page, labelOf(place.part, 'R-980103'));
  await verdict(page, 'accepted');
  yield 'accepted';
  await act(page, 'Go on');
};

/** What runs on a slot, as its log has it. */
async function runningOn(
  page: Page,
  slot: string,
): Promise<{ readonly part: string; readonly reel: string }> {
  const last = (await readLog(page))
    .filter(
      ({ kind, payload }) =>
        kind === 'reel.verified' && payload['slot'] === slot && payload['verdict'] === 'accepted',
    )
    .at(-1)?.payload;
  return { part: String(last?.['part']), reel: String(last?.['reel']) };
}

/** A warning, answered; the splice it asks for, taken. */
export const answerAndSplice: Task = async function* (page) {
  await page.getByTestId('timeline').waitFor();
  const stands = await page.getByText(/^Stopped: /).count();
  if (stands > 0) await act(page, 'Resume');
  await act(page, '+ n');
  await page.locator('dialog').waitFor();
  await tabTo(page, 'How many more panels?');
  await type(page, '150');
  await press(page, 'Enter');
  await page.locator('dialog').waitFor({ state: 'detached' });
  await page.getByTestId('warning').waitFor();
  await seenFocus(page, 'counting');
  yield 'warned';
  await act(page, 'I’ll go');
  yield 'answered';
  const { name } = await tabTo(page, /^(Splice|Change|Refill) M\d-[FR]-\d+$/);
  const slot = /M\d-[FR]-\d+/.exec(name)?.[0] ?? '';
  const { part, reel } = await runningOn(page, slot);
  await press(page, 'Enter');
  await scan(page, labelOf(part, reel));
  await scan(page, labelOf(part, 'R-980201'));
  await verdict(page, 'accepted');
  yield 'spliced';
  await act(page, 'Go on');
};

/** A hold, decided by a lead with badge and PIN. */
export const clearHold: Task = async function* (page) {
  await act(page, 'Load');
  await page.locator('.slotmap button').first().waitFor();
  await scan(page, place.slot);
  await scan(page, place.feeder);
  await scan(page, labelOf(place.part, 'R-980102', null));
  await verdict(page, 'held');
  yield 'held';
  await act(page, 'Let a lead decide');
  await page.locator('dialog').waitFor();
  await seenFocus(page, 'the question opened');
  yield 'asked';
  await scan(page, 'BADGE-3301');
  await page.getByRole('heading', { name: /^PIN of/ }).waitFor();
  await seenFocus(page, 'the badge');
  yield 'badge read';
  await tabTo(page, /^PIN of/);
  await type(page, '1111');
  await press(page, 'Enter');
  await shows(page, /That is not the PIN/);
  yield 'wrong PIN';
  await type(page, '3301');
  await press(page, 'Enter');
  await page.getByRole('heading', { name: 'Reason' }).waitFor();
  await seenFocus(page, 'the PIN');
  yield 'PIN read';
  await act(page, 'Counted by hand', 'Space');
  await act(page, 'Accept the reel');
  await page.locator('dialog').waitFor({ state: 'detached' });
  await seenFocus(page, 'the decision');
  yield 'cleared';
};

/** A lot, traced to its panels; the log, exported. */
export const traceAndExport: Task = async function* (page) {
  const lot = String(
    (await readLog(page)).find(({ kind, payload }) => kind === 'reel.verified' && payload['lot'])?.payload[
      'lot'
    ],
  );
  await act(page, /^Log/);
  await page.getByTestId('entries').waitFor();
  await act(page, 'Trace');
  await tabTo(page, 'What to trace');
  await type(page, lot);
  yield 'asked';
  await act(page, 'Trace');
  await page
    .getByText(/^on since|, by /)
    .first()
    .waitFor({ state: 'attached' });
  await seenFocus(page, 'the answer');
  yield 'traced';
  await tabTo(page, 'Entries', 'Shift+Tab');
  await press(page, 'Enter');
  await page.getByTestId('entries').waitFor();
  await act(page, 'Export');
  await page.locator('dialog').waitFor();
  await seenFocus(page, 'the question opened');
  yield 'export asked';
  const download = page.waitForEvent('download');
  await act(page, /CSV/);
  await download;
  await page.getByRole('status').filter({ hasText: /\w/ }).first().waitFor();
  await seenFocus(page, 'the export');
  yield 'exported';
};

/** The lead of the shift, made sure of where a question asks for one. */
async function sureOfLead(page: Page): Promise<void> {
  await scan(page, 'BADGE-3301');
  await page.getByRole('heading', { name: /^PIN of/ }).waitFor();
  await seenFocus(page, 'the badge');
  await tabTo(page, /^PIN of/);
  await type(page, '3301');
  await press(page, 'Enter');
  await page.getByRole('heading', { name: /^PIN of/ }).waitFor({ state: 'detached' });
  await seenFocus(page, 'the PIN');
}

/** A product changed over: planned while the line runs, its checklist answered in each way that it asks, released by a lead. */
export const changeOver: Task = async function* (page) {
  await act(page, 'Change');
  await shows(page, 'Greenhouse node');
  await act(page, /^Plan this: Greenhouse node/);
  await shows(page, /The line is running/);
  await seenFocus(page, 'planning');
  yield 'planned';
  await act(page, 'The last panel is built');
  await page.locator('dialog').waitFor();
  await act(page, 'The last panel is built');
  await page.locator('dialog').waitFor({ state: 'detached' });
  await seenFocus(page, 'the last panel');
  yield 'line stopped';
  await tabTo(page, /^Moves/);
  await press(page, 'ArrowRight');
  await act(page, 'Open the checklist');
  await shows(page, /^0 of \d+ steps/);
  await seenFocus(page, 'opening the checklist');
  yield 'checklist';
  await act(page, '✓ Done', 'Space');
  await shows(page, /^1 of \d+ steps/);
  await seenFocus(page, 'a tick');
  yield 'ticked';
  await tabTo(page, /^Scan or type/);
  await scan(page, 'ST-GN-F');
  await shows(page, /^2 of \d+ steps/);
  await seenFocus(page, 'a scan');
  yield 'scanned';
  await tabTo(page, /^Note/);
  await type(page, '240 good');
  await act(page, 'Save');
  await shows(page, /^3 of \d+ steps/);
  await seenFocus(page, 'a note');
  yield 'noted';
  await tabTo(page, /^Value in µm/);
  await type(page, '120');
  await act(page, 'Save');
  await shows(page, /^4 of \d+ steps/);
  await seenFocus(page, 'a value');
  yield 'measured';
  await act(page, 'Skip');
  await page.locator('dialog').waitFor();
  await sureOfLead(page);
  await tabTo(page, 'Why?');
  await type(page, 'seen');
  await act(page, 'Skip');
  await page.locator('dialog').waitFor({ state: 'detached' });
  await seenFocus(page, 'a step left out');
  yield 'skipped';
  await tabTo(page, 'Release the run', 'Shift+Tab');
  await press(page, 'Enter');
  await page.locator('dialog').waitFor();
  yield 'release asked';
  await sureOfLead(page);
  await tabTo(page, 'Why release anyway?');
  await type(page, 'trial');
  await act(page, 'Release the run');
  await page.locator('dialog').waitFor({ state: 'detached' });
  await seenFocus(page, 'the release');
  yield 'released';
};
