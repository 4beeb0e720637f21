// How long is the page's own thread blocked while the camera runs, before one label and passed over a dozen? The built app in Chromium, a film as its lens, every task of
// the page's main thread as the browser's own trace has it. Wanted: none above 16 ms while frames are looked at. Baseline in the
// same run: the same screen for as long with the camera closed. BENCH_SECONDS changes how long each is watched.

import type { Browser, Page } from 'playwright-core';
import { type FakeCode, filmCodes, filmPan, type ShelfLabel } from '../e2e/harness/scan/fake-camera.ts';
import { startBrowser } from '../e2e/support/browser.ts';
import { startDemo } from '../e2e/support/demo.ts';
import { openTablet } from '../e2e/support/floor.ts';
import { parameter } from './server-process.ts';

const SECONDS = parameter('BENCH_SECONDS', 20);
/** The first moments of an open camera (permission, lens, decoder) are told apart from the frames after them. */
const OPENING_MS = 3000;

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  /** How long it lasted and how much of that the thread was on a processor, µs: the rest was other work on the machine. */
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** One task of the page's main thread, ms: by the clock, and on a processor. */
interface Task {
  readonly clock: number;
  readonly busy: number;
}

/** The tasks of the page's main thread while something goes on, from the browser's trace. */
async function tasksWhile(browser: Browser, page: Page, work: () => Promise<void>): Promise<readonly Task[]> {
  await browser.startTracing(page, { categories: ['disabled-by-default-devtools.timeline', '__metadata'] });
  await work();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    traceEvents: TraceEvent[];
  };
  const threadOf = ({ pid, tid }: TraceEvent) => `${pid} ${tid}`;
  const mains = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(threadOf),
  );
  const threads = new Map<string, Task[]>();
  for (const event of traceEvents) {
    if (event.name !== 'RunTask' || event.ph !== 'X' || !mains.has(threadOf(event))) continue;
    const task = { clock: (event.dur ?? 0) / 1000, busy: (event.tdur ?? event.dur ?? 0) / 1000 };
    const tasks = threads.get(threadOf(event));
    if (tasks) tasks.push(task);
    else threads.set(threadOf(event), [task]);
  }
  // A spare page of the browser has a main thread too; ours is the one that works.
  return [...threads.values()].sort((a, b) => b.length - a.length)[0] ?? [];
}

function print(name: string, tasks: readonly Task[]): void {
  const told = (['busy', 'clock'] as const).map((by) => {
    const sorted = tasks.map((task) => task[by]).sort((a, b) => a - b);
    const at = (share: number) => (sorted[Math.floor((sorted.length - 1) * share)] ?? 0).toFixed(1);
    const long = sorted.filter((ms) => ms > 16).length;
    const mean = sorted.reduce((sum, ms) => sum + ms, 0) / 1000;
    return `${by === 'busy' ? 'processor' : 'clock'}: p99 ${at(0.99)}, longest ${at(1)} ms, ${long} above 16 ms, ${mean.toFixed(2)} s in all`;
  });
  console.log(`${name.padEnd(32)} ${String(tasks.length).padStart(5)} tasks   ${told.join('   ')}`);
}

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
  print('  baseline: camera closed', closed);
  print('  camera opening, its first 3 s', opening);
  print('  camera open', open);
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
print('  opening, until all are read', reading);
print('  passed over again', passed);
await passing.close();
await plain.close();
await demo.stop();
