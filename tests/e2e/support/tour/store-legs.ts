// The tour of the plant's part list and of the store: a list that comes in, a part by hand, look-alikes and a mix-up; goods-in, places and their
// air, packages cut and joined, a counter's file.

import type { Page } from 'playwright-core';
import { reelAct, reelLabel, scan, scanAll } from '../floor.ts';
import { closeDialogs, goThere, type Here, type Leg } from './here.ts';

const list = [
  'Ours;Description;Value;Tol;Package;MSL;Packing;Tape width;Pitch;MPN',
  'TOUR-100;Resistor;4k7;1 %;0402;;Tape;8;2;ZR-4701',
  'TOUR-101;Resistor;4.7 kΩ;5 %;0402;9;barrel;8;2;ZR-4702',
].join('\n');

async function openStore(page: Page, part: 'in' | 'places' | 'paste'): Promise<void> {
  await page.getByTestId('stock-store').click();
  await page.getByTestId(`store-${part}`).click();
}

async function give(here: Here, name: string, content: string | Buffer): Promise<void> {
  const file = { name, mimeType: 'text/csv', buffer: Buffer.from(content) };
  await here.page.getByTestId('list-file').first().setInputFiles(file);
}

async function* partList(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/parts/list');
  yield 'part list';
  await page.getByTestId('look-alikes').waitFor();
  await page.getByTestId('look-alikes-all').click();
  await page.getByTestId('look-alikes').evaluate((box) => box.scrollIntoView());
  yield 'part list, all look-alikes';
  await page.getByTestId('listed-import').click();
  await page.getByTestId('list-paste').fill(list);
  yield 'part list, a list to be read';
  await page.getByTestId('list-paste-read').click();
  await page.getByTestId('list-columns').waitFor();
  yield 'part list, a column is missing';
  await page.getByTestId('list-columns-0').locator('select').selectOption('part');
  await page.getByTestId('list-changes').getByText('TOUR-101').waitFor();
  yield 'part list, what a list changes';
  await give(here, 'picture.png', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0]));
  await page.getByTestId('list-fault').waitFor();
  yield 'part list, a file that is no list';
  await page.getByTestId('list-take').click();
  await page.getByTestId('search').fill('TOUR-100');
  await page.getByTestId('listed-TOUR-100').waitFor();
  await page.getByTestId('listed-edit-TOUR-100').click();
  await page.getByTestId('part-pins').fill('many');
  yield 'part list, a part by hand';
  await page.getByTestId('part-remove').click();
  await page.locator('dialog[open]').waitFor();
  yield 'part list, a part goes';
  await closeDialogs(page);
  await goThere(here, '#/plant/parts/list');
  await page.getByTestId('listed-add').click();
  await page.getByTestId('part-form').waitFor();
  yield 'part list, a new part';
}

async function* mixUp(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  const seen = await scanAll(
    page,
    'M2-F-023',
    'F-0112',
    reelLabel({ P: '22-0603-D', Q: '100', '3S': 'R-970801' }),
  );
  if (seen.verdict !== 'refused') throw new TypeError('A look-alike must be refused');
  await page.getByTestId('mix-up').waitFor();
  yield 'refusal, a mix-up of look-alikes';
}

const label = (reel: string) => reelLabel({ P: '22-0603-B', Q: '4000', '1T': 'LT-9100-E', '3S': reel });

async function* store(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/stock');
  await openStore(page, 'in');
  await page.getByTestId('goods-place-typed').waitFor();
  yield 'goods-in, where to';
  await scan(page, 'TOUR-S01');
  await page.getByTestId('goods-place').waitFor();
  await scan(page, label('R-970701'));
  await scan(page, label('R-970702'));
  await page.getByTestId('goods-done').getByText('2').first().waitFor();
  yield 'goods-in, reels put away';
  await scan(page, reelLabel({ P: '22-0603-B', Q: '4000', '1T': 'LT-9100-E' }));
  await page.getByTestId('goods-no-id').waitFor();
  yield 'goods-in, a label without an id';
  await openStore(page, 'places');
  await page.getByTestId('place-search').fill('TOUR');
  await page.getByTestId('place-TOUR-S01').waitFor();
  yield 'places';
  await page.getByTestId('place-describe-TOUR-S01').click();
  await page.getByTestId('place-air-dry').click();
  await page.getByTestId('place-humidity').fill('much');
  yield 'place, its air cannot be read';
  await closeDialogs(page);
  await page.getByTestId('stock-reels').click();
  await page.getByTestId('reel-search').fill('TOUR-S01');
  await page.getByTestId('reel-R-970701').waitFor();
  yield 'reels at a place';
  await reelAct(page, 'split', 'R-970701');
  await page.getByTestId('split-parts').fill('9000');
  yield 'a package to be cut, too much';
  await closeDialogs(page);
  await reelAct(page, 'merge', 'R-970701');
  await page.getByTestId('merge-other').fill('R-970701');
  yield 'packages to be joined, the same one';
  await closeDialogs(page);
  await page.getByTestId('reels-from-file').click();
  await give(here, 'counter.csv', 'Barcode;Counted parts\nR-970701;3 812\nR-000000;5');
  await page.getByTestId('list-counts').waitFor();
  yield 'counts from a file';
}

async function* paste(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/stock');
  await openStore(page, 'paste');
  await page.getByTestId('paste').waitFor();
  yield 'paste, the jars';
  await scan(page, reelLabel({ P: 'SP-TOUR', '3S': 'J-TOUR' }));
  await page.getByTestId('paste-wrong').waitFor();
  yield 'paste, a jar without a sheet';
  await page.getByTestId('paste-sheet').click();
  await page.getByTestId('paste-name').fill('SP-TOUR');
  await page.getByTestId('paste-thawHours').fill('4');
  await page.getByTestId('paste-openHours').fill('12');
  yield 'paste, its sheet';
  await page.getByTestId('paste-save').click();
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await scan(page, reelLabel({ P: 'SP-TOUR', '1T': 'LP-1', '3S': 'J-TOUR' }));
  await page.getByTestId('jar-new').waitFor();
  yield 'paste, a new jar';
  await page.getByTestId('jar-new').click();
  await page.getByTestId('jar-J-TOUR').click();
  await page.getByTestId('jar-out').click();
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await page.getByTestId('jar-J-TOUR').click();
  await page.getByTestId('jar-dialog').waitFor();
  yield 'paste, a jar that thaws';
  await page.getByTestId('jar-opened').click();
  await page.locator('dialog[open]').getByText('decides').waitFor();
  yield 'paste, a jar is held';
  await closeDialogs(page);
  await page.getByTestId('paste-sheet').click();
  await page.getByTestId('paste-name').fill('SP-TOUR');
  await page.getByTestId('paste-thawHours').fill('');
  await page.getByTestId('paste-save').click();
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await page.getByTestId('jar-J-TOUR').click();
  await page.getByTestId('jar-opened').click();
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await page.getByTestId('jar-J-TOUR').click();
  await page.getByTestId('jar-on').click();
  await page.getByTestId('jar-cleared').waitFor();
  yield 'paste, a jar for a stencil with paste on it';
  await page.getByTestId('jar-on-top').click();
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await page.getByTestId('jar-J-TOUR').click();
  await page.getByTestId('jar-off').waitFor();
  yield 'paste, a jar on top of another';
  await closeDialogs(page);
  await scan(page, reelLabel({ P: 'SP-TOUR', '1T': 'LP-2' }));
  await page.getByTestId('jar-print').waitFor();
  yield 'paste, a jar without an id';
}

export const storeLegs: readonly Leg[] = [
  { name: 'part-list', stops: partList },
  { name: 'mix-up', stops: mixUp },
  { name: 'store', stops: store },
  { name: 'paste', stops: paste },
];
