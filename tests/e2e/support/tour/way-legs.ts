// The tour of a board's own files without a sheet: read, corrected, given slots, and given other ones by hand.

import { drawn } from '../clock.ts';
import { closeDialogs, goThere, type Here, type Leg, openBy } from './here.ts';

const head = 'Ref,Value,Package,X,Y,Side\n';
const resistors = [1, 2, 3, 4, 5, 6].map((at) => `R${at},10k,R_0603,${at},1,Top`);
const places = `${head}${resistors.join('\n')}\nU1,ctl,SOIC-8,9,1,Top\nU2,mcu,,12,1,Top\nFID1,fid,FID,0,0,Top\n`;
const lines = [
  '10-0402-103,"R1,R2",KP-1,X,X',
  '12-0603-104,"R3,R4",KP-2,X,X',
  'TX-56,"R5,R6",KP-3,X,-',
  'TX-100,U1,KP-4,X,X',
  'TX-200,U2,KP-5,X,X',
];
const bill = (header: string) => `${header}\n${lines.join('\n')}\n`;

async function give(here: Here, name: string, content: string, input: string): Promise<void> {
  const { page } = here;
  const file = { name, mimeType: 'text/csv', buffer: Buffer.from(content) };
  await page.getByTestId(`file-${input}`).first().setInputFiles(file);
  await page.getByText(name).first().waitFor();
  await drawn(page);
  await page.getByTestId('reading').waitFor({ state: 'detached' });
}

/** A board without a line: what is missing, and the way on. */
export async function* boardWithoutLine(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/sheet');
  await give(here, 'moor.pos', places, 'sheet');
  await page.getByTestId('board-no-line').waitFor();
  yield 'board, no line is known yet';
  await page.getByTestId('board-to-sheet').click();
  await page.getByTestId('sheet-paste').waitFor();
}

/** The file of another plant, where there is no line yet: one that is none, and what a right one brings. */
export async function* fromPlantFile(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/this');
  const giveFile = async (name: string, text: string) => {
    const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) };
    await page.getByTestId('plant-file').setInputFiles(file);
    await drawn(page);
  };
  await giveFile('notes.json', '{}');
  await page.getByTestId('plant-file-fault').waitFor();
  yield 'this plant, a file that is none';
  const line = { line: 'L1', name: 'Line 1', zone: 'Europe/Berlin', machines: [] };
  const told = [{ kind: 'line.defined', payload: line }];
  await giveFile(
    'moor.json',
    JSON.stringify({ file: 'reelward-plant', version: 1, name: 'Moor Works', told }),
  );
  await page.getByTestId('plant-file-brings').waitFor();
  yield 'this plant, what a file brings';
}

async function* files(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/sheet');
  const away = page.getByTestId('sheet-put-away');
  await page.getByTestId('screen-plant').waitFor();
  if (await away.isVisible()) await away.click();
  await give(here, 'moor-bill.csv', bill('Part,Designators,MPN,Alpha,Beta'), 'sheet');
  yield 'board, a bill that came first';
  await page.getByTestId('sheet-put-away').click();
  await give(here, 'moor.pos', places, 'sheet');
  await page.getByTestId('named-by-value').waitFor();
  yield 'board, a placement file alone';
  await give(here, 'moor-bill.csv', bill('Thing,Where,Whose,Alpha,Beta'), 'bill');
  await page.getByTestId('bill-columns-0').waitFor();
  yield 'board, a bill that is not understood';
  await give(here, 'fell-bill.csv', bill('Part,Designators,MPN,Alpha,Beta'), 'bill');
  await page.getByTestId('bill-variant').selectOption('Alpha');
  await drawn(page);
  await page.getByTestId('bill-columns-open').waitFor();
  yield 'board, both files and a variant';
  await page.getByTestId('propose').click();
  await page.getByTestId('widths-unknown').waitFor();
  yield 'board, its slots';
  await page.getByTestId('slots-add-board').click();
  await page.getByTestId('boards-held').waitFor();
  yield 'board, one that waits';
  await give(here, 'heath.pos', places, 'sheet');
  await page.getByTestId('slots-together').waitFor();
  yield 'board, proposed with one that waits';
  await page.getByTestId('sheet-put-away').click();
  await page.getByTestId('board-take-up').click();
  await page.getByTestId('slots-difference').waitFor();
  await openBy(here, 'slot-row-TX-100');
  await page.locator('.pick-place').first().click();
  yield 'board, another slot';
  await page.getByTestId('pick-leave').click();
  await page.getByTestId('slots-left').waitFor();
  yield 'board, a part that the line does not place';
  await openBy(here, 'slot-row-TX-100');
  await page.getByTestId('pick-leave').click();
  await page.getByTestId('slots-open').waitFor();
  yield 'board, a part without a slot';
  await closeDialogs(page);
  await page.getByTestId('sheet-put-away').click();
}

export const wayLegs: readonly Leg[] = [{ name: 'board', stops: files }];
