// How long is the page's own thread blocked while the camera runs, before one label and passed over a dozen? The built app in Chromium, a film as its lens, every task of
// the page's main thread as the browser's own trace has it. Wanted: none above 16 ms while frames are looked at. Baseline in the
// same run: the same screen for as long with the camera closed. BENCH_SECONDS changes how long each is watched.

import { type FakeCode, filmCodes, filmPan, type ShelfLabel } from '../e2e/harness/scan/fake-camera.ts';
import { startBrowser } from '../e2e/support/browser.ts';
import { startDemo } from '../e2e/support/demo.ts';
import { openTablet } from '../e2e/support/floor.ts';
import { printTasks, tasksWhile } from './page-tasks.ts';
import { parameter } from './server-process.ts';

const SECONDS = parameter('BENCH_SECONDS', 20);
/** The first moments of an open camera (permission, lens, decoder) are told apart from the frames after them. */
const OPENING_MS = 3000;

const label: FakeCode = {
  bcid: 'datamatrix',
  x: 520,
  y: 220,
  scale: 4,
  text: '[)>\u001e06\u001dPCUST-0042\u001dQ4000\u001d1TLOT77\u001e\u0004',
};
/** A code that no rule of a label knows, so that the camera goes on looking. */
const films: readonly (readonly [string, readonly FakeCode[]])[] = [
  ['nothing to read: every pass, each frame', []],
  ['a label in view, read again and again', [label]],
];

/** Two dozen labels in three rows, a dozen of them in view at once, each with a reel of its own. */
const shelf = Array.from(
  { length: 24 },
  (_, at): ShelfLabel => ({
    text: `[)>\u001e06\u001dP77-00${at}-X\u001dQ4000\u001d1TLT-${at}\u001d3SR-9770${10 + at}\u001e\u0004`,
    print: `77-00${at}-X`,
    x: 160 + (at % 8) * 260,
    y: 30 + Math.floor(at / 8) * 220,
  }),
);
/** A hand that goes along them in 60 places and sways, then rests at the end. */
const hand = Array.from({ length: 60 }, (_, at) => ({
  x: Math.round(1050 * Math.min(1, at / 50) + 12 * Math.sin(at / 3)),
  y: Math.round(10 * Math.cos(at / 3)),
}));

const demo = await startDemo();
const plain = await startBrowser();
console.log(`page thread over ${SECONDS} s each, wanted: no task above 16 ms while frames are looked at`);
for (const [name, codes] of films) {
  const browser = await startBrowser(await filmCodes(plain, codes));
  const { page } = await openTablet(browser, demo.url);
  await page.getByTestId('timeline').waitFor();
  await page.waitForTimeout(OPENING_MS);
  const closed = await tasksWhile(browser, page, () => page.waitForTimeout(SECONDS * 1000));
  const opening = await tasksWhile(browser, page, async () => {
    await page.getByTestId('dock-camera').click();
    await page.locator('video').waitFor();
    await page.waitForTimeout(OPENING_MS);
  });
  const isOpen = await page.locator('video').count();
  const open = await tasksWhile(browser, page, () => page.waitForTimeout(SECONDS * 1000));
  console.log(`\n${name}${isOpen === 0 ? ' (the camera has closed by itself after the label)' : ''}`);
  printTasks('  baseline: camera closed', closed);
  printTasks('  camera opening, its first 3 s', opening);
  printTasks('  camera open', open);
  await browser.close();
}
const passing = await startBrowser(await filmPan(plain, shelf, hand));
const { page: shelfPage } = await openTablet(passing, demo.url, { hash: '#/load' });
// The film begins anew at its end: what was missed is passed again, and told.
const found = shelfPage.getByTestId('found-other');
const reading = await tasksWhile(passing, shelfPage, async () => {
  await shelfPage.getByTestId('find-camera').click();
  await found.nth(shelf.length - 1).waitFor({ timeout: 120_000 });
});
const passed = await tasksWhile(passing, shelfPage, () => shelfPage.waitForTimeout(SECONDS * 1000));
console.log(`\na hand that passes along a shelf, a dozen labels of ${shelf.length} in view, 60 places`);
printTasks('  opening, until all are read', reading);
printTasks('  passed over again', passed);
await passing.close();
await plain.close();
await demo.stop();
