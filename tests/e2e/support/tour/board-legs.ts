// The tour of panels that are several boards each, on a line of their own: boards skipped, panels scrapped, and what nobody said; and of a
// label without a reel's id, and a reel whose floor life stands on its bag.

import { applyAll } from '../../../../shared/floor/fold.ts';
import { slotEstimate } from '../../../../shared/floor/remaining.ts';
import { emptyState } from '../../../../shared/floor/state.ts';
import { goOn, pad, readLog, reelLabel, scan, scanAll, seeVerdict, steady } from '../floor.ts';
import { closeDialogs, goThere, type Here, type Leg, openBy, openReel } from './here.ts';

const rows =
  'Slot\tPart\tQty per panel\tTape width\tPitch\tPackage\tMSL\n' +
  'K1-F-001\tBW-1\t80\t8\t4\t\t\nK1-F-002\tBW-2\t8\t8\t4\tQFN-48\t6\n';

/** No id of the reel stands on it. */
const label = reelLabel({ P: 'BW-1', Q: '17000', '1T': 'LT-A' });

/** A product of eight boards a panel is built; nobody says what was skipped. */
async function* unsaid(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/sheet');
  await page.getByTestId('sheet-paste').fill(rows);
  await page.getByTestId('sheet-paste-read').click();
  await page.getByTestId('take-product').fill('Fell switch');
  await page.getByTestId('take-revision').fill('1');
  await page.getByTestId('take-boards').fill('8');
  await page.getByTestId('take-bottom').click();
  await page.getByTestId('take-new-line').click();
  await page.getByTestId('take-packages').waitFor();
  yield 'sheet, with packages and boards';
  await page.getByTestId('sheet-take').click();
  await page.getByTestId('sheet-build').click();
  await page.getByTestId('screen-load').waitFor();
  await scanAll(page, 'K1-F-001', 'F-0113', label);
  await goOn(page);
  await goThere(here, '#/line');
  await page.getByTestId('run-start').click();
  await page.getByTestId('panels-wanted').fill('400');
  await page.getByTestId('panel-seconds').fill('30');
  await page.getByTestId('run-start-yes').click();
  await openBy(here, 'plus-many');
  await pad(page, '150');
  await page.getByTestId('skipped-unknown').waitFor();
  yield 'boards skipped on many panels';
  await page.getByTestId('skipped-unknown').click();
  await page.getByTestId('skips-unknown').waitFor();
  yield 'line, nobody said what was skipped';
  yield* unnamed(here);
}

/** The reel comes off and is counted; its label, which has no id, is scanned again. */
async function* unnamed(here: Here): AsyncGenerator<string> {
  const { page } = here;
  const floor = applyAll(emptyState(), await readLog(page));
  const loaded = [...floor.slots.values()].find(({ slot }) => slot === 'K1-F-001');
  const left = loaded ? (slotEstimate(floor, loaded).parts ?? 0) : 0;
  await goThere(here, '#/load');
  await page.getByRole('button', { name: 'K1-F-001:' }).first().click();
  await page.getByTestId('slot-unload').click();
  await page.getByTestId('unload-count').click();
  await page.getByTestId('count-machine').click();
  await page.getByTestId('count-field-parts').fill(String(Math.round(0.99 * left)));
  await page.getByTestId('count-take').click();
  await page.getByTestId('notice').getByText('K1-F-001').waitFor();
  // It has no id: a label is offered, over whatever screen comes.
  await page.getByTestId('label-print').waitFor();
  await goThere(here, '#/line');
  await page.getByTestId('losses').locator('summary').click();
  await page.locator('[data-testid^=loss-skips-]').first().waitFor();
  await page.getByTestId('losses').evaluate((fold) => fold.scrollIntoView());
  yield 'line, a loss where nobody said what was skipped';
  await goThere(here, '#/load');
  for (const text of ['K1-F-001', 'F-0113', label]) await scan(page, text);
  await page.getByTestId('came-before').waitFor();
  yield 'question: a label that came before';
  await page.getByTestId('came-before-fresh').click();
  await seeVerdict(page);
  await goOn(page);
}

/** Which boards are skipped is said, and panels are scrapped. */
async function* skips(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/line');
  await openBy(here, 'skipped');
  await page.getByTestId('board-3').click();
  await page.getByTestId('board-8').click();
  yield 'boards skipped';
  await page.getByTestId('skipped-use').click();
  await page.getByTestId('plus-one').click();
  await openBy(here, 'plus-many');
  await page.getByTestId('panels-scrapped').click();
  yield 'panels scrapped';
  await pad(page, '2');
  await page.getByTestId('scrapped').waitFor();
  yield 'line, panels scrapped';
  await goThere(here, '#/stock');
  await page.getByTestId('stock-outlook').click();
  await page.getByTestId('splices-cost-none').waitFor();
  yield 'stock, what a splice loses is not known';
}

/** Moisture level 6: the time stands on the bag's label. */
async function* timed(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/stock');
  await scan(page, reelLabel({ P: 'BW-2', Q: '500', '1T': 'LT-B', '3S': 'R-981002' }));
  await page.getByTestId('put-new').click();
  await scan(page, 'A2-S12');
  await page.getByTestId('reel-R-981002').waitFor();
  await steady(page);
  await openReel(here, 'air', 'R-981002');
  await page.getByTestId('air-label-hours').waitFor();
  yield 'out of the bag, its time stands on the label';
  await closeDialogs(page);
}

export const boardLegs: readonly Leg[] = [
  { name: 'unsaid', stops: unsaid },
  { name: 'skips', stops: skips },
  { name: 'timed', stops: timed },
];
