// The tour of a tablet that serves two lines: where that is chosen, the other line's row, a scan that either may mean.

import { scan } from '../floor.ts';
import { closeDialogs, goThere, type Here, type Leg } from './here.ts';

async function* twoLines(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/tablet');
  await page.getByTestId('also-none').waitFor();
  yield 'this tablet, one line';
  await page.getByTestId('also-L3').click();
  yield 'this tablet, two lines';
  await goThere(here, '#/line');
  await page.getByTestId('beside-L3').waitFor();
  yield 'line, another beside it';
  await goThere(here, '#/load');
  await scan(page, 'M1-F-001');
  await page.getByTestId('which-slot').first().waitFor();
  yield 'slot of which line?';
  await page.getByTestId('which-slot').last().click();
  await page.getByTestId('well-slot').waitFor();
  yield 'slot of the other line';
  await closeDialogs(page);
}

/** A line whose conveyor has two lanes: told in its form, a product for the second, a slot that both take from. */
async function* lanes(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/lines');
  await page.getByTestId('line-edit-L2').click();
  await page.getByTestId('line-add-lane').click();
  await page.getByTestId('lane-name-2').waitFor();
  yield 'plant: a line of two lanes';
  await page.getByTestId('line-save').click();
  await page.getByTestId('lane-L2~lane2').waitFor();
  yield 'plant: lines, one with two lanes';
  await goThere(here, '#/plant/sheet');
  await page
    .getByTestId('sheet-paste')
    .fill('Slot\tPart\tQty per panel\tTape width\tPitch\nM1-F-001\tBW-1\t3\t8\t4\n');
  await page.getByTestId('sheet-paste-read').click();
  await page.getByTestId('take-product').fill('Tarn lamp');
  await page.getByTestId('take-revision').fill('1');
  await page.getByTestId('take-top').click();
  await page.getByTestId('take-line-L2~lane2').click();
  yield 'sheet for the second lane';
  await page.getByTestId('sheet-take').click();
  await page.getByTestId('sheet-taken').waitFor();
  await page.getByTestId('sheet-build').click();
  await page.getByTestId('screen-load').waitFor();
  yield 'load of the second lane';
  await goThere(here, '#/load/M1-F-001');
  await page.getByTestId('for-lanes').waitFor();
  yield 'slot that two lanes take from';
  await goThere(here, '#/lines');
  await page.getByTestId('line-L2~lane2').waitFor();
  yield 'lines, two of them lanes';
  await goThere(here, '#/plant/lines');
  await page.getByTestId('line-edit-L2').click();
  await page.getByTestId('line-remove-lane').waitFor();
  yield 'plant: a line whose second lane may go';
}

export const twoLineLegs: readonly Leg[] = [
  { name: 'two-lines', stops: twoLines },
  { name: 'lanes', stops: lanes },
];
