// The tour of the plant's pages: one by one, each with its forms, questions and faults.

import { scan } from '../floor.ts';
import { closeDialogs, confirm, goThere, type Here, type Leg, openBy } from './here.ts';

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
  await page.getByTestId('approve-add').click();
  await page.getByTestId('approve-supplier').waitFor();
  yield 'supplier part, new';
  await goThere(here, '#/plant/parts');
  await page.locator('[data-testid^=withdraw-]').first().click();
  await page.getByTestId('notice').waitFor();
  yield 'supplier part, withdrawn';
  await goThere(here, '#/plant/parts/feeders');
  yield 'feeders';
  await page.getByTestId('feeder-add').click();
  await page.getByTestId('feeder-width').first().waitFor();
  yield 'feeder, new';
  await goThere(here, '#/plant/parts/feeders');
  await page.getByTestId('feeder-paste').click();
  await page
    .getByTestId('feeder-rows')
    .fill('Feeder;Tape width;Pitch\nF-9001;8;2/4\nF-9002;9;4\nF-0001;8;2/4\n');
  await page.getByTestId('feeder-found').waitFor();
  yield 'feeders, pasted';
  await goThere(here, '#/plant/parts/feeders');
  await page.locator('[data-testid^=feeder-F]').first().getByRole('button', { name: 'Withdraw' }).click();
  await page.locator('dialog[open]').waitFor();
  yield 'feeder, withdrawn';
  await goThere(here, '#/plant/parts/blocks');
  yield 'blocks';
  await page.getByTestId('block-add').click();
  await page.getByTestId('block-value').waitFor();
  yield 'block, new';
  await goThere(here, '#/plant/parts/blocks');
  await page.locator('[data-testid^=lift-]').first().click();
  await page.locator('dialog[open]').waitFor();
  yield 'block, lifted';
}

const label = 'ART#22-0603-B#MENGE#4000#CH#GL-1#2618';

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
  await openBy(here, 'withdraw-Glen');
  yield 'label, withdrawn';
  await closeDialogs(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByTestId('rules-export').click(),
  ]);
  await page.getByTestId('rules-import').setInputFiles(await download.path());
  await page.getByTestId('import-Glen').waitFor();
  yield 'labels, a file of rules';
  await page
    .getByTestId('rules-import')
    .setInputFiles({ name: 'torn.json', mimeType: 'application/json', buffer: Buffer.from('{"a"') });
  await page.getByTestId('import-problem').first().waitFor();
  yield 'labels, a torn file';
}

const header = 'Address,Item,Units,Carrier,Pitch,Maker ref\n';
const rowOf = (at: number) => `M1-F-${String(at).padStart(3, '0')},BW-${1000 + at},${at},8,4,AC-${at}\n`;
const good = `Product:,Loch sensor,Revision:,A,Side:,Top\n\n${header}${[1, 2, 3, 4, 5].map(rowOf).join('')}`;

async function* sheet(here: Here): AsyncGenerator<string> {
  const { page } = here;
  const give = async (name: string, content: string, input = 'sheet') => {
    await page
      .getByTestId(`file-${input}`)
      .first()
      .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(content) });
    await page.getByText(name).first().waitFor();
  };
  const choose = (index: number, field: string) =>
    page.getByTestId(`columns-${index}`).locator('select').selectOption(field);
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
  await give('loch-right.csv', good);
  await give('loch-xy.csv', 'Designator,Part,X,Y,Side\nR1,BW-1001,1,1,Top\n', 'placements');
  await page.getByTestId('placement-count').waitFor();
  yield 'sheet, with placements';
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
}

async function* rules(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/rules');
  await page.getByTestId('rule-floorCelsius').fill('80');
  await page.getByTestId('rules-save').click();
  await page.getByTestId('rules-wrong').waitFor();
  yield 'rules, out of bounds';
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
];
