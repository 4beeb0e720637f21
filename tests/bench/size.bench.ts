// How much JavaScript does the first screen need? Counts every script that the page itself fetches on a first visit until the
// line's first screen stands and takes scans, each gzipped (level 9). What comes after, unasked, is told apart; so is what is
// fetched only when used. The service worker's own fetches for the offline copy are no part of the first screen.
// Baseline: all JavaScript of the app, as a build without parts would have to load.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { startBrowser } from '../e2e/support/browser.ts';
import { dist, startDemo } from '../e2e/support/demo.ts';

const TARGET_KB = 90;
const folder = path.join(dist, 'app/assets');
const sizeOf = (name: string) => gzipSync(readFileSync(path.join(folder, name)), { level: 9 }).length / 1000;
const sum = (names: readonly string[]) => names.reduce((total, name) => total + sizeOf(name), 0);
const tell = (names: readonly string[]) =>
  [...names]
    .sort((a, b) => sizeOf(b) - sizeOf(a))
    .map((name) => `    ${sizeOf(name).toFixed(1).padStart(6)} kB  ${name}`)
    .join('\n');

const demo = await startDemo();
const browser = await startBrowser();
try {
  const page = await (await browser.newContext()).newPage();
  const fetched: string[] = [];
  page.on('request', (request) => {
    const { pathname } = new URL(request.url());
    if (pathname.endsWith('.js') && pathname.startsWith('/assets/')) fetched.push(path.basename(pathname));
  });
  await page.goto(demo.url);
  await page.waitForSelector('html[data-ready] [data-testid=runbar]');
  const first = [...new Set(fetched)];
  await page.waitForTimeout(3000);
  const later = [...new Set(fetched)].filter((name) => !first.includes(name));
  // Only a demo asks for these.
  const forDemo = first.filter((name) => /^(demo|play)-/.test(name));
  const counted = first.filter((name) => !forDemo.includes(name));
  const all = readdirSync(folder).filter((name) => name.endsWith('.js'));
  const decoder = all.filter((name) => /^(decode|CameraView|decoder)/.test(name));
  console.log(
    `first screen: ${sum(counted).toFixed(1)} kB gzipped (target <= ${TARGET_KB}), ${counted.length} files`,
  );
  console.log(tell(counted));
  console.log(`fetched by the demo's mark besides: ${sum(forDemo).toFixed(1)} kB`);
  console.log(`fetched after the first screen stands: ${sum(later).toFixed(1)} kB\n${tell(later)}`);
  console.log(`decoder and camera, when first used: ${sum(decoder).toFixed(1)} kB`);
  console.log(
    `baseline, all JavaScript: ${sum(all).toFixed(1)} kB; ratio ${(sum(counted) / sum(all)).toFixed(2)}`,
  );
} finally {
  await browser.close();
  await demo.stop();
}
