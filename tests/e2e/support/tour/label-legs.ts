// The tour of what is taught and taken in: labels, setup sheets; and of practice.

import writeXlsxFile from 'write-excel-file/node';
import { drawn } from '../clock.ts';
import { reelLabel, scan, scanAll, seeVerdict } from '../floor.ts';
import { closeDialogs, confirm, endPractice, goThere, type Here, type Leg, openBy, warn } from './here.ts';

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
  await page.getByTestId('sheet-paste-read').waitFor();
  yield 'sheet, pasted';
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
  const places = [1, 2, 3, 4, 5, 6].map((at) => `R${at},${at},1,Top`);
  await give('loch-places.csv', `Designator,X,Y,Side\n${places.join('\n')}\nFID1,0,0,Top\n`, 'placements');
  const named = [1, 2, 3, 4, 5, 6].map((at) => `BW-${1000 + at},R${at},AC-${at}`);
  await give('loch-bill.csv', `Part,Designators,MPN\n${named.join('\n')}\n`, 'bill');
  await page.getByTestId('not-placed').waitFor();
  await page.getByTestId('joined-more').click();
  yield 'sheet, with a bill of materials';
  await page.getByTestId('take-product').fill('Fell switch');
  await page.getByTestId('take-revision').fill('2');
  await page.getByTestId('take-bottom').click();
  await page.getByTestId('changes').waitFor();
  yield 'sheet, what changes';
  await page.getByTestId('take-new-line').click();
  await page.getByTestId('growth').waitFor();
  yield 'sheet, for a line of its own';
}

/** The practice floor: marked wherever one looks, its labels to tap, and what may not leave it. */
async function* practice(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await warn(here);
  await openBy(here, 'open-help');
  await page.getByTestId('help-practise').waitFor();
  yield 'help of the line';
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
  await openBy(here, 'log-export');
  await page.getByTestId('export-csv').waitFor();
  yield 'practice, the log and its export';
  await closeDialogs(page);
  await goThere(here, '#/plant/practice');
  await page.getByTestId('guide-start-operator').click();
  await page.getByTestId('guide').waitFor();
  await page.getByTestId('guide-skip').click();
  yield 'practice, a guide';
  await page.getByTestId('guide-leave').click();
  await page.getByTestId('guide-again-operator').waitFor();
  await goThere(here, '#/plant/sheet');
  await page.getByTestId('sheet-example').waitFor();
  yield 'practice, an example sheet, after a guide was left';
  await endPractice(here);
  yield 'practice, ended';
}

/** Sizes that the plant has, and what is wrong with one. */
async function* paper(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await openBy(here, 'size-add');
  yield 'print, a size';
  await page.getByTestId('size-name').fill('A4 of 24');
  await page.getByTestId('size-paper-sheet').click();
  for (const [field, text] of [
    ['widthMm', '70'],
    ['heightMm', '37'],
    ['columns', '4'],
    ['rows', '8'],
  ] as const)
    await page.getByTestId(`size-field-${field}`).fill(text);
  yield 'print, a sheet that is too narrow';
  await page.getByTestId('size-field-columns').fill('3');
  await page.getByTestId('size-save').click();
  await page.getByTestId('size-A4 of 24').waitFor();
  await openBy(here, 'size-add');
  await page.getByTestId('size-name').fill('Tag');
  await page.getByTestId('size-field-widthMm').fill('34');
  await page.getByTestId('size-field-heightMm').fill('16');
  await page.getByTestId('size-field-dpi').fill('300');
  await page.getByTestId('size-save').click();
  await page.getByTestId('size-use-A4 of 24').click();
  yield 'print, sizes';
}

async function* print(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await page.evaluate(() => {
    window.print = () => undefined; // the browser's own dialog is not ours to look at
  });
  await goThere(here, '#/plant/print');
  await page.getByTestId('print-names').waitFor();
  await page.getByTestId('label-preview').waitFor();
  yield 'print, slots';
  for (const subject of ['feeder', 'cart', 'badge', 'station'] as const) {
    await page.getByTestId(`print-${subject}`).click();
    await drawn(page);
    yield `print, ${subject}`;
  }
  yield* paper(here);
  await page.getByTestId('print-place').click();
  await page.getByTestId('print-more').fill('A9-S01\nA9-S02');
  await page.getByTestId('label-preview').waitFor();
  await page.getByTestId('print-first').fill('3');
  await page.getByTestId('print-many').click();
  await page.getByTestId('notice').waitFor();
  yield 'print, places typed';
  await goThere(here, '#/stock');
  await scan(page, reelLabel({ P: '10-0402-000', Q: '5000', '1T': 'LT-9100-N' }));
  await page.getByTestId('label-new').waitFor();
  yield 'print, a package without an id';
  await openBy(here, 'label-new');
  await page.getByTestId('label-preview').waitFor();
  yield 'print, its label';
  await page.getByTestId('label-print').click();
  await page.locator('.reel-row').first().click();
  await page.locator('[data-testid^=mark-]').first().click();
  await page.getByTestId('label-again').waitFor();
  yield 'print, a reprint';
  await closeDialogs(page);
  await goThere(here, '#/plant/print');
  await page.getByTestId('size-use-Tag').click();
  await goThere(here, '#/stock');
  await scan(page, reelLabel({ P: '10-0402-000', Q: '5000', '1T': 'LT-9100-N' }));
  await page.locator('.reel-row').first().click();
  await page.locator('[data-testid^=mark-]').first().click();
  await page.getByTestId('label-left-out').waitFor();
  yield 'print, a label with too little room';
  await closeDialogs(page);
}

export const labelLegs: readonly Leg[] = [
  { name: 'labels', stops: labels },
  { name: 'sheet', stops: sheet },
  { name: 'print', stops: print },
  { name: 'practice', stops: practice },
];
