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

export const twoLineLegs: readonly Leg[] = [{ name: 'two-lines', stops: twoLines }];
