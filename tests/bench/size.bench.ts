// How much JavaScript does the first screen need? Counts every script that a real browser asks for on a first visit until the
// line's first screen stands with its list and takes scans, each gzipped (level 9); the moment is taken inside the page, so that
// nothing is counted or left out by a slow look from outside. What the demo alone asks for is counted too, and told apart.
// What comes after, unasked, and what comes only when used is told besides. The service worker's own fetches for the offline
// copy are no part of the first screen.
// Baseline: all JavaScript of the app, as a build without parts would have to load.

import path from 'node:path';
import { startBrowser } from '../e2e/support/browser.ts';
import { startDemo } from '../e2e/support/demo.ts';
import { allScripts, sizeOf, startGraph } from '../e2e/support/first-load.ts';

const TARGET_KB = 90;
const START_TARGET_KB = 85;
/** Long enough for everything that comes unasked. */
const LATER_MS = 5000;
const list = (names: readonly string[]) =>
  [...names]
    .sort((a, b) => sizeOf([b]) - sizeOf([a]))
    .map((name) => `    ${sizeOf([name]).toFixed(1).padStart(6)} kB  ${name}`)
    .join('\n');

/** Notes when the first screen can be used: drawn, with the run and its list, and the scanner listened to. */
function noteUsable(): void {
  const world = globalThis as { usableMs?: number };
  const look = () => {
    const { dataset } = document.documentElement;
    const isDrawn = ['runbar', 'line-summary'].every((id) => document.querySelector(`[data-testid=${id}]`));
    if (!dataset['ready'] || !isDrawn || document.querySelector('.dock')?.childElementCount === 0) return;
    world.usableMs = performance.now();
    watcher.disconnect();
  };
  const watcher = new MutationObserver(look);
  watcher.observe(document, { subtree: true, childList: true, attributes: true });
}

const demo = await startDemo();
const browser = await startBrowser();
try {
  const page = await (await browser.newContext()).newPage();
  await page.addInitScript(noteUsable);
  await page.addInitScript(() => performance.setResourceTimingBufferSize(2000));
  await page.goto(demo.url);
  await page.waitForFunction(() => 'usableMs' in globalThis);
  await page.waitForTimeout(LATER_MS);
  const asked = await page.evaluate(() => {
    const { usableMs = 0 } = globalThis as { usableMs?: number };
    return performance
      .getEntriesByType('resource')
      .map(({ name, startTime }) => ({ path: new URL(name).pathname, isFirst: startTime <= usableMs }))
      .filter(({ path }) => path.startsWith('/assets/') && path.endsWith('.js'));
  });
  const namesOf = (isFirst: boolean) =>
    asked.filter((one) => one.isFirst === isFirst).map((one) => path.basename(one.path));
  const first = [...new Set(namesOf(true))];
  const later = [...new Set(namesOf(false))].filter((name) => !first.includes(name));
  const forDemo = first.filter((name) => /^(demo|play)-/.test(name));
  const all = allScripts();
  const decoder = all.filter((name) => /^(decode|CameraView|decoder)/.test(name));
  const whole = sizeOf(all);
  const told = (what: string, names: readonly string[], target = '') =>
    console.log(
      `${what}: ${sizeOf(names).toFixed(1)} kB gzipped in ${names.length} files, ` +
        `${(sizeOf(names) / whole).toFixed(2)} of the baseline${target}`,
    );
  console.log(`baseline, all JavaScript of the app: ${whole.toFixed(1)} kB gzipped in ${all.length} files`);
  const words = first.filter((name) => /^pack-/.test(name));
  const start = [...startGraph(), ...words];
  const isSmall = sizeOf(start) <= START_TARGET_KB ? 'met' : 'not met';
  told('static start graph', [...startGraph()]);
  told('  with the words of the language in use', start, ` (target <= ${START_TARGET_KB} kB: ${isSmall})`);
  const verdict = sizeOf(first) <= TARGET_KB ? 'met' : 'not met';
  told('asked for until the first screen can be used', first, ` (target <= ${TARGET_KB} kB: ${verdict})`);
  console.log(list(first));
  told('  of these by the demo alone', forDemo);
  told('asked for by itself after that', later);
  console.log(list(later));
  told('decoder and camera, when first used', decoder);
} finally {
  await browser.close();
  await demo.stop();
}
