// The tour of the floor: the line, loading, verdicts, the dock and its dialogs, the store, the log.

import { waitReady } from '../browser.ts';
import { withoutTimers } from '../clock.ts';
import {
  endRun,
  pad,
  readLog,
  reelLabel,
  resumeRun,
  scan,
  scanAll,
  seeVerdict,
  showSlot,
  signIn,
} from '../floor.ts';
import { closeDialogs, confirm, goThere, type Here, type Leg, openBy, warn } from './here.ts';

const right = reelLabel({ P: '22-0603-B', Q: '4000', '1T': 'LT-9400-H', '3S': 'R-970001' });
const alternate = reelLabel({ P: '12-0603-105H', Q: '4000', '3S': 'R-970003' });

async function* line(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/line');
  await resumeRun(page);
  yield 'line';
  await page.getByTestId('line-all').click();
  await openBy(here, 'walks-open');
  await page.getByTestId('crew-2').click();
  await page.getByTestId('crew-2').and(page.locator('[aria-pressed=true]')).waitFor();
  yield 'walks, two people';
  await closeDialogs(page);
  yield 'line, all slots, two people';
  await page.locator('.slotrow .opens').nth(1).click();
  await page.getByTestId('slot-sheet').waitFor();
  yield 'line, a slot';
  await closeDialogs(page);
  await openBy(here, 'plus-many');
  yield 'count of panels';
  await closeDialogs(page);
  await page.getByTestId('plus-one').click();
  await page.getByTestId('notice').waitFor();
  yield 'toast';
  await openBy(here, 'run-stop');
  yield 'why it stopped';
  await page.getByTestId('stop-jam').click();
  await page.getByTestId('stopped').waitFor();
  yield 'line, stopped';
  await openBy(here, 'run-end');
  yield 'end of the run';
  await closeDialogs(page);
  await page.getByTestId('run-resume').click();
  await page.getByTestId('run-stop').waitFor();
}

/** Brings the first slot of the list into its window, so that it warns. */
async function* warning(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await warn(here);
  yield 'line, a warning';
  await page.locator('.slotrow .opens').first().click();
  await page.getByTestId('slot-sheet').waitFor();
  yield 'line, a slot that warns';
  await closeDialogs(page);
  await openBy(here, 'walks-open');
  await page.getByTestId('walks').waitFor();
  yield 'walks, and what is not possible';
  await closeDialogs(page);
  await goThere(here, '#/load');
  await page.getByTestId('warning').waitFor();
  yield 'load, a warning over it';
}

async function* load(here: Here): AsyncGenerator<string> {
  const { page } = here;
  const slot = async (name: string) => {
    await closeDialogs(page);
    await (await showSlot(page, name)).click();
    await page.locator('dialog[open]').waitFor();
  };
  await goThere(here, '#/load');
  yield 'load';
  await slot('M2-F-023');
  yield 'slot, empty';
  await slot('M2-F-022');
  yield 'slot, loaded';
  await page.getByTestId('slot-count').click();
  await page.getByTestId('count-typed').waitFor();
  yield 'count, typed';
  await page.getByTestId('count-weighed').click();
  yield 'count, weighed';
  await page.getByTestId('count-measured').click();
  yield 'count, measured';
  await page.getByTestId('count-typed').click();
  await page.locator('[data-testid^=count-field-]').first().fill('12');
  yield 'count, far from what was counted down';
  await slot('M2-F-022');
  await page.getByTestId('slot-unload').click();
  await page.getByTestId('unload-count').waitFor();
  yield 'unload';
  await slot('M2-F-022');
  await page.getByTestId('slot-air').click();
  await page.getByTestId('air-hours').waitFor();
  yield 'out of the bag';
  await page.getByTestId('air-bake').click();
  yield 'bake';
  await page.getByTestId('air-dry').click();
  yield 'dry store';
  await closeDialogs(page);
  await page.getByTestId('sweep-start').click();
  await page.getByTestId('sweep-progress').waitFor();
  yield 'sweep';
  await page.reload();
  await waitReady(page);
  await page.getByTestId('sweep-resume').scrollIntoViewIfNeeded();
  yield 'sweep, begun before the page was loaded anew';
  await page.getByTestId('sweep-resume').click();
  await page.getByTestId('sweep-end').click();
  await page.getByTestId('notice').waitFor();
  yield 'sweep, what was not seen';
}

async function* verdicts(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await scan(page, 'M2-F-023');
  await page.getByTestId('well-slot').waitFor();
  yield 'slot in hand';
  await scan(page, 'P22-0603-B');
  await page.getByTestId('dock-enough').waitFor();
  yield 'half a label in hand';
  await goThere(here, '#/load');
  await scanAll(page, 'M2-F-023', 'F-0112', right);
  yield 'accepted';
  await page.getByTestId('verdict-undo').click();
  await page.getByTestId('verdict').waitFor({ state: 'detached' });
  await goThere(here, '#/load');
  await scanAll(page, 'M2-F-022', reelLabel({ P: '10-0603-101', Q: '4000', '3S': 'R-970002' }));
  yield 'refused, wrong part';
  await goThere(here, '#/load');
  const blocked = reelLabel({ P: '22-0603-B', Q: '4000', '1T': 'LT-7781-Q', '3S': 'R-970009' });
  await scanAll(page, 'M2-F-023', 'F-0186', blocked);
  yield 'refused, blocked, on a feeder too wide';
  await goThere(here, '#/load');
  await scanAll(page, 'M2-R-010', alternate);
  yield 'held';
  await page.getByTestId('verdict-clear').click();
  await page.getByTestId('badge').waitFor();
  yield 'held: badge';
  await scan(page, 'BADGE-2202');
  await page.locator('dialog').getByRole('alert').waitFor();
  yield 'held: badge of somebody who may not';
  await scan(page, 'BADGE-3301');
  await page.locator('.pinpad').waitFor();
  yield 'held: PIN';
  await pad(page, '1111');
  await page.locator('.pinpad .wrong').waitFor();
  yield 'held: wrong PIN';
  await pad(page, '3301');
  await page.getByTestId('clear-accept').waitFor();
  yield 'held: reason';
  await goThere(here, '#/load');
  await page.getByTestId('holds').waitFor();
  yield 'load, a reel held';
  await scanAll(page, 'M2-F-026', 'F-0113', reelLabel({ P: '25-0023-113', '1T': 'LT-9', '3S': 'R-970004' }));
  yield 'held, no quantity';
  await page.getByRole('button', { name: 'Type the quantity' }).click();
  await page.locator('.pinpad').waitFor();
  yield 'quantity';
}

async function* splices(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/line');
  await page.getByTestId('timeline').waitFor();
  const row = (await page.locator('.slotrow').nth(3).getAttribute('data-testid')) ?? '';
  const slot = row.slice(4);
  await page.getByTestId(`splice-${slot}`).click();
  await page.getByTestId('well-old-reel').waitFor();
  yield 'splice in hand';
  const part = (await readLog(page))
    .filter(({ kind, payload }) => kind === 'reel.verified' && payload['slot'] === slot)
    .at(-1)?.payload['part'];
  await scan(page, reelLabel({ P: String(part), Q: '100', '3S': 'R-910001' }));
  await page.getByTestId('told').waitFor();
  yield 'splice, not the old reel';
  await goThere(here, '#/line');
  await scan(page, slot);
  await scan(page, reelLabel({ P: String(part), Q: '3000', '1T': 'LT-NEW', '3S': 'R-910002' }));
  await seeVerdict(page);
  yield 'spliced';
}

async function* dock(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await openBy(here, 'dock-type');
  yield 'type';
  await closeDialogs(page);
  await openBy(here, 'sign-in');
  yield 'sign in';
  await closeDialogs(page);
  await scan(page, 'M2-F-023');
  await page.getByTestId('well-slot').waitFor();
  await scan(page, 'F-9999');
  await page.locator('dialog[open]').waitFor();
  yield 'question: is it the feeder';
  await goThere(here, '#/load');
  await scan(page, 'M9-F-001');
  await page.getByTestId('told').waitFor();
  yield 'told: no such slot';
  await goThere(here, '#/load');
  await scan(page, 'ART#22-0603-B#MENGE#4000#CH#GL-1');
  await page.getByTestId('dock-teach').waitFor();
  yield 'told: no such label';
  await goThere(here, '#/load');
  await scan(page, right);
  await page.getByTestId('well-reel').waitFor();
  yield 'reel in hand';
  await goThere(here, '#/load');
  await page.getByTestId('dock-camera').click();
  await page.getByTestId('camera').waitFor();
  await page.locator('video').waitFor();
  yield 'camera';
  await page.getByTestId('nav-line').click();
  await page.getByTestId('camera').waitFor({ state: 'detached' });
}

async function* stock(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/stock');
  await page.getByTestId('pick-list').waitFor();
  yield 'stock, what to bring';
  await page.getByTestId('stock-outlook').click();
  await page.getByTestId('reel-outlook').waitFor();
  yield 'stock, reel by reel';
  await page.getByTestId('stock-reels').click();
  await page.getByTestId('reel-list').waitFor();
  yield 'stock, reels';
  await page.getByTestId('reel-search').fill('nothing of that kind');
  await page.locator('.empty').waitFor();
  yield 'stock, no reel found';
  await page.getByTestId('reel-search').fill('');
  await page.locator('.reel-row').first().click();
  await page.locator('dialog[open]').waitFor();
  yield 'reel';
  await page.locator('[data-testid^=count-]').first().click();
  await page.locator('dialog[open]').waitFor();
  yield 'reel, count';
  await closeDialogs(page);
  await page.locator('.reel-row').first().click();
  await page.locator('[data-testid^=block-]').first().click();
  await page.locator('dialog[open]').waitFor();
  yield 'reel, block';
  await closeDialogs(page);
  await scan(page, reelLabel({ P: '22-0603-B', Q: '4000', '1T': 'LT-9400-H', '3S': 'R-970050' }));
  await page.getByTestId('put-new').waitFor();
  yield 'stock, a new reel';
  await openBy(here, 'put-new');
  yield 'reel, put away';
  await page.getByTestId('put-place').fill('A2-S10');
  await page.getByTestId('put-yes').click();
  await page.getByTestId('life-R-970050').waitFor();
  yield 'reel with a floor life';
  await goThere(here, '#/stock');
  await page.getByTestId('stock-blocks').click();
  await page.getByTestId('blocks').waitFor();
  yield 'stock, blocks';
}

async function* log(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/log');
  await page.getByTestId('entries').waitFor();
  yield 'log';
  await page.getByTestId('entry').first().click();
  await page.locator('dialog[open]').waitFor();
  yield 'entry';
  await closeDialogs(page);
  await page.getByTestId('log-export').click();
  await page.locator('dialog[open]').waitFor();
  yield 'log, export';
  await closeDialogs(page);
  await page.getByTestId('verdict-held').click();
  await page.getByTestId('entry').first().click();
  await page.locator('dialog[open]').waitFor();
  yield 'entry, held';
  await closeDialogs(page);
  await page.getByTestId('log-filters').click();
  await page.getByTestId('filter-slot').fill('M7-F-001');
  await page.locator('main .empty').waitFor();
  yield 'log, nothing fits';
  await page.getByTestId('log-trace').click();
  await page.getByTestId('trace-text').waitFor();
  yield 'trace';
  const traced = (await readLog(page)).find(
    ({ kind, payload }) => kind === 'reel.verified' && payload['verdict'] === 'accepted' && payload['lot'],
  );
  await page.getByTestId('trace-text').fill(String(traced?.payload['lot']));
  await page.getByTestId('trace-ask').click();
  await page.getByTestId('trace-places').waitFor();
  yield 'trace, a lot';
  await page.getByTestId('trace-panel').click();
  await page.getByTestId('trace-text').fill('1');
  await page.getByTestId('trace-ask').click();
  await page.locator('[data-testid=trace-panel] table, main .empty').first().waitFor();
  yield 'trace, a panel';
  await page.getByTestId('trace-text').fill('none such');
  await page.getByTestId('trace-ask').click();
  await page.locator('main .empty').waitFor();
  yield 'trace, nothing known';
  await page.getByTestId('log-conflicts').click();
  await page.locator('main .empty').waitFor();
  yield 'log, tablets agree';
}

/** What those see who may do less. */
async function* others(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant');
  await signIn(page, 'BADGE-2201');
  yield 'plant, for an operator';
  await goThere(here, '#/plant/people');
  yield 'people, for an operator';
  await goThere(here, '#/log');
  await page.getByTestId('entries').waitFor();
  yield 'log, for an operator';
  await goThere(here, '#/change');
  yield 'change, for an operator';
  await goThere(here, '#/line');
  await openBy(here, 'sign-in');
  await page.getByRole('button', { name: 'Sign out' }).click();
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await scan(page, 'M2-F-023');
  await scan(page, 'F-0112');
  await scan(page, right);
  await page.getByTestId('told').waitFor();
  yield 'nobody signed in';
  await scan(page, 'BADGE-4401');
  await seeVerdict(page);
}

/** A person beyond the PIN: asked for where a hold is decided from the list. */
async function* holds(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await page.getByTestId('holds').getByRole('button').first().click();
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('clear-accept').waitFor();
  yield 'hold decided from the list';
}

/** No run: what stands there before and while one is begun. */
async function* noRun(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await (await showSlot(page, 'M2-F-022')).click();
  await page.getByTestId('slot-count').click();
  await page.getByTestId('count-machine').click();
  await page.getByTestId('count-field-parts').fill('12'); // far less than a run like the last one takes in its first minutes
  await page.getByTestId('count-take').click();
  await goThere(here, '#/line');
  await endRun(page);
  await page.getByTestId('short-M2-F-022').waitFor();
  yield 'line, no run';
  await openBy(here, 'run-start');
  yield 'start of a run';
  await goThere(here, '#/stock');
  await page.locator('main .empty').waitFor();
  yield 'stock, no run';
}

/** Not even the words of the page come. */
async function* noWords({ page }: Here): AsyncGenerator<string> {
  await page.evaluate(async () => {
    for (const worker of await navigator.serviceWorker.getRegistrations()) await worker.unregister();
    for (const name of await caches.keys()) await caches.delete(name);
  });
  await page.route('**/words-en-first-*.js', (route) => route.abort());
  await page.reload();
  await page.getByTestId('no-words').waitFor();
  yield 'fault: the words do not come';
  await page.unroute('**/words-en-first-*.js');
  await page.getByTestId('no-words').getByRole('button').click();
  await waitReady(page);
}

async function* search(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await page.getByTestId('open-search').click();
  await page.getByTestId('search-coverage').waitFor();
  yield 'search, nothing asked';
  await page.getByTestId('search-text').fill('22-0603');
  await page.getByTestId('found-reel').waitFor();
  yield 'search, a part';
  await page.getByTestId('search-text').fill('m2');
  await page.getByTestId('found-slot').waitFor();
  yield 'search, slots and entries';
  await scan(page, right);
  await page.getByTestId('search-others').waitFor();
  await page.getByTestId('search-none').waitFor();
  yield 'search, a label that nothing knows';
  await page.getByTestId('search-server').click();
  await page.getByTestId('search-server').waitFor({ state: 'detached' });
  yield 'search, no server';
}

async function* lines(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/lines');
  await page.getByTestId('line-L2').waitFor();
  yield 'all lines';
  await page.getByTestId('lines-wall').click();
  await page.getByTestId('wall-L2').waitFor();
  await page.getByTestId('screen-wall').click({ position: { x: 300, y: 300 } });
  await page.getByTestId('wall-way-out').waitFor();
  yield 'wall screen, touched';
  // The way out may have gone by itself meanwhile; it does not while it is pressed.
  await withoutTimers(page, async () => {
    await page.keyboard.press('Shift');
    await page.getByTestId('wall-leave').click();
  });
  await page.getByTestId('screen-lines').waitFor();
  await signIn(page, 'BADGE-2201');
}

export const floorLegs: readonly Leg[] = [
  { name: 'search', stops: search },
  { name: 'line', stops: line },
  { name: 'load', stops: load },
  { name: 'verdicts', stops: verdicts },
  { name: 'holds', stops: holds },
  { name: 'log', stops: log },
  { name: 'lines', stops: lines },
];

export const dockLegs: readonly Leg[] = [
  { name: 'splices', stops: splices },
  { name: 'dock', stops: dock },
  { name: 'stock', stops: stock },
  { name: 'warning', stops: warning },
];

export const lastLegs: readonly Leg[] = [
  { name: 'others', stops: others },
  { name: 'no run', stops: noRun },
  { name: 'no words', stops: noWords },
];
