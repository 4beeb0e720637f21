// The tour of the plant's pages: one by one, each with its forms, questions and faults.

import type { Page } from 'playwright-core';
import { stripedCalibration } from '../../../../src/app/scan/calibration.ts';
import { readLog, scan } from '../floor.ts';
import { closeDialogs, goThere, type Here, type Leg, openBy } from './here.ts';

async function* tiles(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant');
  yield 'plant';
  const addresses = await page
    .locator('[data-testid^=tile-][href*="#/plant/"]')
    .evaluateAll((all) => all.map((tile) => tile.getAttribute('href') ?? ''));
  for (const address of addresses) {
    await goThere(here, address);
    await page.locator('main h1').first().waitFor();
    yield address.replace('#/plant/', 'plant: ');
  }
}

/** A line that is told by its banks, whole and with one that is wrong; then one that is there. */
async function* lines(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/lines');
  await page.getByTestId('line-add').click();
  await page.getByTestId('bank-first-1').fill('K1-F-001');
  await page.getByTestId('bank-last-1').fill('K1-F-024');
  await page.getByTestId('line-across').waitFor();
  yield 'plant: a new line';
  await page.getByTestId('bank-last-1').fill('K1-R-024');
  await page.getByTestId('line-across').waitFor({ state: 'detached' });
  yield 'plant: a new line, a bank is wrong';
  await goThere(here, '#/plant/people');
  await goThere(here, '#/plant/lines');
  await page.locator('[data-testid^=line-edit-]').first().waitFor();
  yield 'plant: lines';
  await page.locator('[data-testid^=line-edit-]').first().click();
  await page.getByTestId('line-save').waitFor();
  yield 'plant: a line that is there';
}

/** The plant's own page with lines that are there; what a file brings is asked where there are none yet. */
async function* thisPlant(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/this');
  await page.getByTestId('plant-name').fill('');
  yield 'plant: this plant, a name is missing';
}

async function* people(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/people');
  await openBy(here, 'person-remove-BADGE-2201');
  yield 'person goes';
  await closeDialogs(page);
  await openBy(here, 'person-passkeys-BADGE-3301');
  yield 'passkeys, where none can be';
  await closeDialogs(page);
  await page.getByTestId('person-add').click();
  await page.getByTestId('person-name').waitFor();
  yield 'person comes';
  await page.getByTestId('person-save').click();
  yield 'person comes, a name is missing';
}

async function* parts(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/parts');
  await page.getByTestId('search').fill('nothing of that kind');
  await page.locator('.empty').waitFor();
  yield 'supplier parts, none found';
  await goThere(here, '#/plant/parts');
  await page.getByTestId('approve-add').click();
  await page.getByTestId('approve-supplier').waitFor();
  yield 'supplier part, new';
  await goThere(here, '#/plant/parts');
  await page.locator('[data-testid^=withdraw-]').first().click();
  await page.getByTestId('notice').waitFor();
  yield 'supplier part, withdrawn';
  yield* feeders(here);
  await goThere(here, '#/plant/parts/types');
  await page.getByTestId('type-add').click();
  await page.getByTestId('type-form').waitFor();
  yield 'feeder type, new';
  await page.getByTestId('type-type').fill('twin 8');
  await page.getByTestId('type-save').click();
  await page.getByTestId('type-twin 8').waitFor();
  yield 'feeder types';
  await goThere(here, '#/plant/parts/blocks');
  yield 'blocks';
  await page.getByTestId('block-add').click();
  await page.getByTestId('block-value').waitFor();
  yield 'block, new';
  await page.getByTestId('block-kind-part').click();
  await page.getByTestId('block-value').fill(await loadedPart(page));
  await page.locator('.caution').waitFor();
  yield 'block, what is on the line';
  await goThere(here, '#/plant/parts/blocks');
  await page.locator('[data-testid^=lift-]').first().click();
  await page.locator('dialog[open]').waitFor();
  yield 'block, lifted';
  yield* moisture(here);
}

async function* moisture(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/parts/packages');
  yield 'packages';
  await page.locator('[data-testid^=package-edit-]').first().click();
  await page.getByTestId('package-pins').fill('many');
  yield 'package, a number that is none';
  await goThere(here, '#/plant/parts/moisture');
  yield 'moisture tables, floor life';
  await page.getByTestId('cell-30-60').click();
  await page.getByTestId('moisture-value').fill('20');
  yield 'moisture tables, a value out of order';
  await page.getByTestId('moisture-take').click();
  yield 'moisture tables, an own value without its copy';
  await openBy(here, 'cell-30-60');
  await page.getByTestId('moisture-shipped').waitFor();
  yield 'moisture tables, an own value in hand';
  await closeDialogs(page);
  await page.getByTestId('table-bake').click();
  await page.getByTestId('body-large').click();
  yield 'moisture tables, bake';
  await closeDialogs(page);
}

async function loadedPart(page: Page): Promise<string> {
  const loaded = (await readLog(page)).filter(
    ({ kind, payload }) => kind === 'reel.verified' && payload['verdict'] === 'accepted',
  );
  return String(loaded.at(-1)?.payload['part']);
}

async function* feeders(here: Here): AsyncGenerator<string> {
  const { page } = here;
  const rows = page.locator('[data-testid^=feeder-F]');
  const loaded = rows.filter({ has: page.locator('.chip') }).first();
  await goThere(here, '#/plant/parts/feeders');
  yield 'feeders';
  const name = (await loaded.locator('b').first().textContent()) ?? '';
  await page.getByTestId('feeder-add').click();
  await page.getByTestId('feeder-width').first().waitFor();
  yield 'feeder, new';
  await page.getByTestId('feeder-feeder').fill(name);
  await page.getByTestId('feeder-there').waitFor();
  yield 'feeder, there already';
  await page.getByTestId('feeder-change-it').click();
  await page.getByTestId('feeder-width').selectOption('44');
  await page.getByTestId('feeder-positions').fill('4');
  await page.getByTestId('feeder-changes').locator('.chip').first().waitFor();
  yield 'feeder, changed so that it no longer fits';
  await goThere(here, '#/plant/parts/feeders');
  await page.getByTestId('feeder-paste').click();
  await page
    .getByTestId('feeder-rows')
    .fill(`Feeder;Tape width;Pitch\nF-9001;8;2/4\nF-9002;9;4\n${name};44;4\n`);
  await page.getByTestId('feeder-changed').waitFor();
  yield 'feeders, pasted';
  await goThere(here, '#/plant/parts/feeders');
  await page.getByTestId('search').fill('F-0113');
  await page.getByTestId('feeder-F-0113').getByRole('button', { name: 'Withdraw' }).click();
  await page.locator('dialog[open]').waitFor();
  yield 'feeder, withdrawn';
  await goThere(here, '#/plant/parts/feeders');
  await loaded.getByRole('button', { name: 'Withdraw' }).click();
  await page.getByTestId('why-caution').waitFor();
  yield 'feeder on the line, withdrawn';
}

async function* checklists(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/checklists');
  await page.getByTestId('edit-changeover').click();
  await page.getByTestId('step-add').waitFor();
  yield 'checklist, steps';
  await page.getByTestId('language-add').selectOption('ar');
  await page.getByTestId('step-add').click();
  await page.getByTestId('step-form').waitFor();
  yield 'checklist, a new step';
  const form = page.getByTestId('step-form');
  const kind = form.locator('select').first();
  await kind.selectOption('sign');
  await page.getByTestId('signer-0').selectOption('lead');
  await page.getByTestId('signer-1').selectOption('engineer');
  await page.getByTestId('signer-2').waitFor();
  yield 'checklist, a step that two sign';
  await kind.selectOption('known');
  await form.locator('select').nth(3).waitFor();
  yield 'checklist, a step that is known';
  await kind.selectOption('choice');
  yield 'checklist, a step to choose';
  await kind.selectOption('measure');
  yield 'checklist, a step to measure';
}

/** A panel is scanned before a machine, then where panels are counted. */
async function* scannedTwice(here: Here): AsyncGenerator<string> {
  const { page } = here;
  const run = (await readLog(page)).filter(({ kind }) => kind === 'run.started').at(-1)?.payload;
  const code = `${String(run?.['panelPrefix'])}9901`;
  await goThere(here, '#/plant/tablet');
  await page.getByTestId('panels-at-M1').click();
  yield 'this tablet, panels scanned before a machine';
  await page.getByTestId('open-exit').click();
  await page.getByTestId('exit-panels').waitFor();
  yield 'exit, nothing scanned yet';
  await scan(page, 'PN-EXIT-0001');
  await page.getByTestId('exit-told').waitFor();
  yield 'exit, a panel counted';
  await page.getByTestId('exit-leave').click();
  await goThere(here, '#/plant/tablet');
  await page.getByTestId('panels-at-M1').click();
  await goThere(here, '#/line');
  await page.getByTestId('panels-at').waitFor();
  await scan(page, code);
  await page.getByTestId('notice').waitFor();
  yield 'line, a panel scanned before a machine';
  await goThere(here, '#/plant/tablet');
  await page.getByTestId('panels-at-count').click();
  await goThere(here, '#/line');
  await scan(page, code);
  await goThere(here, '#/plant/rules');
  await page.getByTestId('in-line-take').click();
  yield 'rules, panels in the line that scans showed';
}

async function* rules(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/rules');
  await page.getByTestId('rule-floorCelsius').fill('80');
  await page.getByTestId('rules-save').click();
  await page.getByTestId('rules-wrong').waitFor();
  yield 'rules, out of bounds';
  await goThere(here, '#/plant/rules');
  await page.getByTestId('rule-idleMinutes').fill('9999');
  await page.getByTestId('rules-save').click();
  await page.getByTestId('rules-wrong').waitFor();
  yield 'rules, minutes left alone beyond a shift';
  await goThere(here, '#/plant/rules');
  await page.getByTestId('pictures-keep').click();
  await page.getByTestId('pictures-days').fill('0');
  await page.getByTestId('rules-save').click();
  await page.getByTestId('rules-wrong').waitFor();
  yield 'rules, pictures of labels for no day';
  await goThere(here, '#/plant/rules');
  await page.getByTestId('shift-0').click();
  await page.getByTestId('break-add').click();
  await page.getByTestId('week-alternate').click();
  for (const list of ['holidays', 'overtime', 'stops']) await page.getByTestId(`${list}-add`).click();
  await page.getByTestId('age-add').click();
  await page.getByTestId('week-plan').evaluate((plan) => plan.scrollIntoView());
  yield 'rules, a week with all that it may hold';
  await page.getByTestId('rule-splice-other').evaluate((field) => field.scrollIntoView());
  yield 'rules, what a splice loses and which reel comes first';
  await goThere(here, '#/line');
  await goThere(here, '#/plant/rules');
  await page.getByTestId('in-line-missed').fill('80');
  await page.getByTestId('in-line-save').click();
  await page.getByTestId('in-line-wrong').waitFor();
  yield 'rules, panels in the line out of bounds';
  yield* scannedTwice(here);
}

async function* scanner(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/scanner');
  await page.getByTestId('calibration-code').first().waitFor();
  await scan(page, 'M2-F-023');
  await page.getByTestId('arrived').first().waitFor();
  yield 'scanner, what arrived';
  await page.locator('.striped summary').click();
  await page.getByTestId('calibration-bars').first().waitFor();
  yield 'scanner, bar codes';
  await scan(page, stripedCalibration.text);
  await page.getByTestId('scanner-keep').waitFor();
  yield 'scanner, what it can do';
}

export const plantLegs: readonly Leg[] = [
  { name: 'tiles', stops: tiles },
  { name: 'lines', stops: lines },
  { name: 'this', stops: thisPlant },
  { name: 'people', stops: people },
  { name: 'parts', stops: parts },
  { name: 'checklists', stops: checklists },
  { name: 'rules', stops: rules },
  { name: 'scanner', stops: scanner },
];
