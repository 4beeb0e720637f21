// The tour of what parts come in: packages, trays, what lies loose; and of feeders in a run.

import type { Page } from 'playwright-core';
import { beaconSetup, stickFeeder } from '../../../../demo/trays.ts';
import { endRun, reelLabel, scan, scanAll, seeVerdict, showSlot } from '../floor.ts';
import { closeDialogs, goThere, type Here, type Leg, openBy } from './here.ts';

/** A slot that the run places from and no other part of the tour goes to. */
const slot = 'M2-R-009';
const [first, second] = ['F-0112', 'F-0113'];
const label = (reel: string) => reelLabel({ P: '12-0603-224', Q: '4000', '1T': `LT-${reel}`, '3S': reel });

async function openSlot(here: Here, which = slot): Promise<void> {
  await goThere(here, '#/load');
  await (await showSlot(here.page, which)).click();
  await here.page.locator('dialog[open]').waitFor();
}

/** Takes off what stands on the slot, so that each part of the tour begins with an empty one. */
async function empty(here: Here, by: string): Promise<void> {
  await openSlot(here);
  await here.page.getByTestId('slot-unload').click();
  await here.page.getByTestId(by).click();
  await here.page.getByTestId('notice').waitFor();
}

/** Says in the dialog how a stack of trays is laid out, and taps a pocket. */
async function describeTray(page: Page): Promise<void> {
  for (const [name, figure] of [
    ['rows', '6'],
    ['columns', '15'],
    ['trays', '3'],
  ] as const)
    await page.getByTestId(`pack-${name}`).fill(figure);
  await page.getByTestId('pack-pin1').selectOption('bottom-left');
  await page.getByTestId('pack-open').selectOption('2');
  await page.getByTestId('tray-picture').click();
}

async function* packages(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await empty(here, 'unload-uncounted');
  await goThere(here, '#/load');
  await scanAll(page, slot, first ?? '', label('R-981001'));
  await openSlot(here);
  yield 'slot, with its package and feeder';
  await page.getByTestId('slot-pack').click();
  await page.getByTestId('pack-dialog').waitFor();
  yield 'package, tape';
  await page.getByTestId('pack-tube').click();
  await page.getByTestId('pack-tubes').fill('3');
  await page.getByTestId('pack-parts').fill('50');
  await page.getByTestId('pack-loose').fill('12');
  await page.getByTestId('pack-next').waitFor();
  yield 'package, tubes';
  await page.getByTestId('pack-cut-tape').click();
  yield 'package, cut tape';
  await page.getByTestId('pack-tray').click();
  yield 'package, a tray not described yet';
  await describeTray(page);
  await page.getByTestId('pack-next').waitFor();
  yield 'package, a tray';
  await page.getByTestId('pack-columns').fill('101');
  yield 'package, a tray of too many columns';
  await page.getByTestId('pack-columns').fill('15');
  await page.getByTestId('tray-picture').click();
  await page.getByTestId('pack-save').click();
  await openSlot(here);
  yield 'slot, with a tray';
  await goThere(here, '#/line');
  const row = page.getByTestId(`open-${slot}`);
  if (!(await row.isVisible())) await page.getByTestId('line-all').click();
  await row.click();
  await page.getByTestId('slot-feeds').waitFor();
  yield 'line, a slot with a tray';
  await goThere(here, '#/load');
  await scan(page, slot);
  await page.getByTestId('well-reel').waitFor();
  yield 'dock, an exchange begun';
  await scan(page, label('R-981002'));
  await seeVerdict(page);
  yield 'accepted, an exchange';
  await empty(here, 'unload-uncounted');
}

async function* loose(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await scanAll(page, slot, first ?? '', label('R-981003'));
  await openSlot(here);
  await page.getByTestId('slot-pack').click();
  await page.getByTestId('pack-bulk').click();
  yield 'package, bulk';
  await page.getByTestId('pack-save').click();
  await goThere(here, '#/load');
  await scan(page, slot);
  await scan(page, label('R-981004'));
  await seeVerdict(page);
  await page.getByTestId('verdict-label').waitFor();
  yield 'accepted, a refill';
  await openSlot(here);
  await page.getByTestId('slot-mixed').waitFor();
  yield 'slot, one lot over another';
  await goThere(here, '#/line');
  await page.getByTestId('plus-one').click();
  await goThere(here, '#/log/trace');
  await page.getByTestId('trace-lot').click();
  await page.getByTestId('trace-text').fill('LT-R-981003');
  await page.getByTestId('trace-ask').click();
  await page.getByTestId('trace-mixed').first().waitFor();
  yield 'trace, lots poured over each other';
  await openSlot(here);
  await page.getByTestId('slot-unload').click();
  await page.getByTestId('unload-purged').waitFor();
  yield 'unload, bulk';
  await page.getByTestId('unload-uncounted').click();
  await openSlot(here);
  await page.getByTestId('slot-loose').waitFor();
  yield 'slot, empty, something may lie in its feeder';
  await page.getByTestId('slot-purge').click();
  await page.getByTestId('slot-loose').waitFor({ state: 'detached' });
  await closeDialogs(page);
}

async function* feeders(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await scanAll(page, slot, first ?? '', label('R-981005'));
  await openSlot(here);
  await page.getByTestId('slot-feeder').click();
  await page.getByTestId('feeder-placed').waitFor();
  yield 'feeder';
  await page.getByTestId('feeder-ready').click();
  await page.getByTestId('ready-use').waitFor();
  await page.getByTestId('ready-feeder').fill(second ?? '');
  yield 'second feeder, its code';
  await page.getByTestId('ready-use').click();
  await scan(page, reelLabel({ P: '10-0402-000', Q: '4000', '3S': 'R-981006' }));
  await page.getByTestId('ready-told').waitFor();
  yield 'second feeder, the wrong reel';
  await scan(page, 'P12-0603-224');
  await page.getByTestId('ready-enough').waitFor();
  yield 'second feeder, half a label';
  await scan(page, label('R-981007'));
  await page.getByTestId(`ready-${second}`).waitFor();
  yield 'second feeder, ready';
  await page.getByTestId('feeder-move').click();
  await page.getByTestId('move-dialog').waitFor();
  yield 'move, nowhere to go';
  await openSlot(here);
  await page.getByTestId('slot-feeder').click();
  await page.getByTestId('feeder-aside').click();
  await page.getByTestId('aside-why').fill('loses parts');
  yield 'feeder, set aside';
  await page.getByTestId('aside-save').click();
  await page.getByTestId('notice').waitFor();
  await goThere(here, '#/plant/parts/types');
  await page.getByTestId('care-every').fill('50');
  await page.getByTestId('care-save').click();
  await page.getByTestId(`care-${first}`).waitFor();
  await page.getByTestId('feeder-care-list').scrollIntoViewIfNeeded();
  yield 'care of feeders';
  await page.getByTestId(`feeder-cared-${first}`).click();
  await page.getByTestId(`care-${first}`).waitFor({ state: 'detached' });
  await page.getByTestId('care-every').fill('');
  await page.getByTestId('care-save').click();
  await empty(here, 'unload-empty');
}

async function* pieces(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/stock');
  await scan(page, reelLabel({ P: '10-0402-000', Q: '5000', '1T': 'LT-9100-S', '3S': 'R-981008' }));
  await openBy(here, 'put-new');
  await page.getByTestId('put-place').fill('R90-S02');
  await page.getByTestId('put-yes').click();
  await page.getByTestId('reel-search').fill('R-981008');
  await page.getByTestId('reel-R-981008').click();
  await page.getByTestId('split-R-981008').click();
  await page.getByTestId('split-parts').fill('250');
  yield 'a piece is cut off';
  await page.getByTestId('split-yes').click();
  await page.getByTestId('label-dialog').waitFor();
  await closeDialogs(page);
  await goThere(here, '#/log/trace');
  const ask = async (reel: string) => {
    await page.getByTestId('trace-reel').click();
    await page.getByTestId('trace-text').fill(reel);
    await page.getByTestId('trace-ask').click();
  };
  await ask('R-981008');
  const into = await page.getByTestId('trace-parts-to').textContent();
  yield 'trace, a reel that a piece was cut off';
  await ask(/\S+$/.exec(into ?? '')?.[0] ?? '');
  await page.getByTestId('trace-parts-from').waitFor();
  yield 'trace, a piece';
}

/** Another setup on the line, so nothing comes after it. */
async function* trays(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/line');
  await endRun(page);
  await goThere(here, '#/plant/setups');
  await page.getByTestId(`choose-${beaconSetup.setup}`).click();
  await page.getByTestId('screen-load').waitFor();
  await goThere(here, '#/load');
  await showSlot(page, 'M3-R-050-1');
  await page.getByTestId('lanes-50').waitFor();
  yield 'load, lanes of one feeder';
  for (const [at, part] of ['51-0612-002', '51-0612-003'].entries()) {
    const reel = reelLabel({ P: part, Q: '40', '1T': `LT-98110${at}`, '3S': `R-98110${at}` });
    await scanAll(page, `M3-R-050-${at + 1}`, stickFeeder.feeder, reel);
    await page.getByTestId('verdict-go-on').click();
  }
  await openSlot(here, 'M3-R-050-1');
  await page.getByTestId('slot-unload').click();
  await page.getByTestId('unload-whole').click();
  yield 'unload, a feeder with lanes';
  await closeDialogs(page);
  await showSlot(page, 'M3-T-001');
  yield 'load, trays of a lift';
}

export const kindLegs: readonly Leg[] = [
  { name: 'packages', stops: packages },
  { name: 'loose', stops: loose },
  { name: 'feeders', stops: feeders },
  { name: 'pieces', stops: pieces },
  { name: 'trays', stops: trays },
];
