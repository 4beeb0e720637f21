// The tour of the plant's pages: one by one, each with its forms, questions and faults.

import type { Page } from 'playwright-core';
import writeXlsxFile from 'write-excel-file/node';
import { stripedCalibration } from '../../../../src/app/scan/calibration.ts';
import { drawn } from '../clock.ts';
import { readLog, scan, scanAll, seeVerdict } from '../floor.ts';
import { closeDialogs, confirm, endPractice, goThere, type Here, type Leg, openBy } from './here.ts';

async function* tiles(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant');
  yield 'plant';
  const addresses = await page
    .locator('[data-testid^=tile-]')
    .evaluateAll((all) => all.map((tile) => tile.getAttribute('href') ?? ''));
  for (const address of addresses) {
    await goThere(here, address);
    await page.locator('main h1').first().waitFor();
    yield address.replace('#/plant/', 'plant: ');
  }
}

async function* people(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/people');
  await openBy(here, 'person-remove-BADGE-2201');
  yield 'person goes';
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

const label = 'ART#22-0603-B#MENGE#4000#CH#GL-1#2618';

/** A second rule that fits what the first one has read on the floor. */
async function* twoRules(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await scanAll(page, 'M2-F-023', 'F-0112', label);
  await goThere(here, '#/plant/labels');
  await page.getByTestId('teach').click();
  await page.getByTestId('teach-typed').fill(label);
  yield 'label, typed';
  await page.getByTestId('teach-typed-add').click();
  await page.locator('.token', { hasText: '22-0603-B' }).first().click();
  await page.getByTestId('name-part').click();
  await page.getByTestId('teach-name').fill('Fen');
  await page.getByTestId('collides-Glen').waitFor();
  yield 'label, two rules fit it';
  await page.getByTestId('teach-cancel').click();
}

async function* labels(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/labels');
  await scan(page, label);
  await page.getByTestId('scanned').waitFor();
  yield 'label, scanned';
  await page.getByTestId('teach-scanned').click();
  await page.locator('.token').first().waitFor();
  yield 'label, taught';
  for (const [text, field] of [
    ['22-0603-B', 'part'],
    ['4000', 'quantity'],
    ['GL-1', 'lot'],
  ] as const) {
    await page.locator('.token', { hasText: text }).first().click();
    yield `label, what ${field} is`;
    await page.getByTestId(`name-${field}`).click();
  }
  await page.getByTestId('teach-name').fill('Glen');
  await page.getByTestId('trial').waitFor();
  yield 'label, tried on the log';
  await openBy(here, 'teach-approve');
  yield 'label, approved';
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('rule-Glen').waitFor();
  yield 'labels, a rule';
  yield* twoRules(here);
  await openBy(here, 'withdraw-Glen');
  yield 'label, withdrawn';
  await closeDialogs(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByTestId('rules-export').click(),
  ]);
  const file = await download.path();
  await page.getByTestId('rules-import').setInputFiles(file);
  await page.getByTestId('import-Glen').waitFor();
  yield 'labels, a file of rules';
  // What was withdrawn is new in the file.
  await openBy(here, 'withdraw-Glen');
  await page.getByTestId('withdraw-why').fill('they print another label now');
  await page.getByTestId('withdraw-yes').click();
  await page.getByTestId('rule-Glen').waitFor({ state: 'detached' });
  await goThere(here, '#/plant/labels');
  await page.getByTestId('rules-import').setInputFiles(file);
  await page.getByTestId('import-trial-Glen').waitFor();
  yield 'labels, a file tried on the log';
  await openBy(here, 'import-take');
  yield 'labels, a file approved';
  await closeDialogs(page);
  await page
    .getByTestId('rules-import')
    .setInputFiles({ name: 'torn.json', mimeType: 'application/json', buffer: Buffer.from('{"a"') });
  await page.getByTestId('import-problem').first().waitFor();
  yield 'labels, a torn file';
}

const header = 'Address,Item,Units,Carrier,Pitch,Maker ref\n';
const rowOf = (at: number) => `M1-F-${String(at).padStart(3, '0')},BW-${1000 + at},${at},8,4,AC-${at}\n`;
const good = `Product:,Loch sensor,Revision:,A,Side:,Top\n\n${header}${[1, 2, 3, 4, 5].map(rowOf).join('')}`;

/** No machine or bank in any address, and more columns than stand side by side. */
const bare =
  'Position,Part,Qty per panel,Tape width,Pitch,Height,Colour,Shelf,Remark\n' +
  [1, 2, 3].map((at) => `${at},BW-${at},1,8,4,1.2,black,A${at},none\n`).join('');

function book(): Promise<Buffer> {
  const cells = (rows: readonly (readonly (string | number)[])[]) =>
    rows.map((row) => row.map((value) => ({ value })));
  return writeXlsxFile([
    { sheet: 'Cover', data: cells([['Loch sensor']]) },
    {
      sheet: 'Slots',
      data: cells([
        ['Slot', 'Part', 'Qty per panel', 'Tape width', 'Pitch'],
        ['M1-F-001', 'BW-1', 4, 8, 4],
      ]),
    },
  ]).toBuffer();
}

async function* sheet(here: Here): AsyncGenerator<string> {
  const { page } = here;
  const give = async (name: string, content: string | Buffer, input = 'sheet') => {
    await page
      .getByTestId(`file-${input}`)
      .first()
      .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(content) });
    await page.getByText(name).first().waitFor();
  };
  const choose = async (index: number, field: string) => {
    await page.getByTestId(`columns-${index}`).locator('select').selectOption(field);
    await drawn(page);
    await page.getByTestId('reading').waitFor({ state: 'detached' });
  };
  await goThere(here, '#/plant/sheet');
  await page
    .getByTestId('sheet-paste')
    .fill('Slot\tPart\tQty per panel\tTape width\tPitch\nM1-F-001\tBW-1\t3\t8\t4\n');
  await page.getByTestId('sheet-paste-read').click();
  await page.getByTestId('take-product').fill('Fell switch');
  await page.getByTestId('take-revision').fill('1');
  await page.getByTestId('take-bottom').click();
  await page.getByTestId('sheet-take').click();
  await page.getByTestId('sheet-taken').waitFor();
  yield 'sheet, taken in';
  await page.getByTestId('sheet-next').click();
  await give('empty.csv', '');
  await page.getByTestId('sheet-fault').waitFor();
  yield 'sheet, not read';
  await give('loch.csv', good.replace(rowOf(5), rowOf(4)).replace(',3,8,4', ',three,8,4'));
  await page.getByTestId('columns').waitFor();
  yield 'sheet, columns to be named';
  await choose(2, 'perPanel');
  await choose(3, 'tapeWidth');
  await choose(5, 'supplierParts'); // else there are warnings too
  await page.getByTestId('error-count').waitFor();
  yield 'sheet, with errors';
  await give('loch.xlsx', await book());
  await page.getByTestId('sheet-page').waitFor();
  yield 'sheet, one page of a book';
  await give('loch-bare.csv', bare);
  await page.getByTestId('lack-machine').waitFor();
  yield 'sheet, machine and bank to be named';
  await give('loch-right.csv', good);
  await give('loch-xy.csv', 'Designator,Part,X,Y,Side\nR1,BW-1001,1,1,Top\n', 'placements');
  await page.getByTestId('placement-count').waitFor();
  yield 'sheet, with placements';
  await page.getByTestId('take-product').fill('Fell switch');
  await page.getByTestId('take-revision').fill('2');
  await page.getByTestId('take-bottom').click();
  await page.getByTestId('changes').waitFor();
  yield 'sheet, what changes';
  await page.getByTestId('take-new-line').click();
  await page.getByTestId('growth').waitFor();
  yield 'sheet, for a line of its own';
}

async function* checklists(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/checklists');
  await page.getByTestId('edit-changeover').click();
  await page.getByTestId('step-add').waitFor();
  yield 'checklist, steps';
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
  await page.getByTestId('in-line-missed').fill('80');
  await page.getByTestId('in-line-save').click();
  await page.getByTestId('in-line-wrong').waitFor();
  yield 'rules, panels in the line out of bounds';
}

/** The practice floor: marked wherever one looks, its labels to tap, and what may not leave it. */
async function* practice(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/line');
  await page.getByTestId('warning').waitFor();
  await goThere(here, '#/plant/practice');
  await page.getByTestId('practice-start').click();
  await page.getByTestId('practice-print').waitFor();
  await page.getByTestId('practice-real').waitFor();
  yield 'practice, labels to tap';
  const slot = page.locator('[data-testid^=label-slot-]').first();
  await slot.click();
  await page.getByTestId('label-reel-wrong').click();
  await seeVerdict(page);
  yield 'practice, refused';
  await goThere(here, '#/line');
  await page.getByTestId('runbar').waitFor();
  yield 'practice, line';
  await openBy(here, 'sign-in');
  yield 'practice, a dialog';
  await goThere(here, '#/load');
  yield 'practice, load';
  await goThere(here, '#/log');
  await page.getByTestId('export-csv').waitFor();
  yield 'practice, the log and its export refused';
  await endPractice(here);
  yield 'practice, ended';
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
  { name: 'people', stops: people },
  { name: 'parts', stops: parts },
  { name: 'labels', stops: labels },
  { name: 'sheet', stops: sheet },
  { name: 'checklists', stops: checklists },
  { name: 'rules', stops: rules },
  { name: 'scanner', stops: scanner },
  { name: 'practice', stops: practice },
];
