// A new tablet at a plant that has run for a year: how long from the tap that joins it until its line's screen stands with the
// run in hand? The server holds a simulated year, another tablet gave it the folded state TAIL entries ago; the new one is a real
// page in a real browser with its database on the disk. Wanted: at most 10 s with a million entries. Baseline of the same run: the
// same join where the server has no folded state, on a log of a tenth or of 20,000 entries, computed for the whole.
// BENCH_ENTRIES, BENCH_TAIL, BENCH_WATCH_SECONDS (how long the history is watched) change the size; BENCH_FOLDER keeps filled data.

import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { createReplica, foldIn } from '../../shared/floor/replica.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { formatCursor } from '../../shared/wire/cursor.ts';
import { giveBootstrap } from '../../src/app/store/bootstrap-handover.ts';
import { packBootstrap } from '../../src/app/store/pack.ts';
import { foldName } from '../../src/app/store/store.ts';
import { enrolTablet } from '../../src/app/sync/enrol.ts';
import { giveSnapshot } from '../../src/app/sync/snapshot.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { chromiumPath, quietSwitches, waitReady } from '../e2e/support/browser.ts';
import { dist } from '../e2e/support/demo.ts';
import { newTablet } from '../src/server/tablets.ts';
import { isServerProcess, parameter, type ServerProcess, startServerProcess } from './server-process.ts';
import { yearFolder } from './year.ts';

const COUNT = parameter('BENCH_ENTRIES', 1_000_000);
const TAIL = parameter('BENCH_TAIL', 5_000);
const WATCH_SECONDS = parameter('BENCH_WATCH_SECONDS', 30);
const PLAIN = Math.min(20_000, Math.round(COUNT / 10));

const seconds = (ms: number) => `${(ms / 1000).toFixed(2)} s`;

/** What a tablet that followed the server's log up to a position would give as a bootstrap snapshot. */
async function stateOf(
  folder: string,
  untilPos: number,
): Promise<{ readonly bytes: Uint8Array; readonly cursor: string }> {
  const store = await openStore({ folder, database: null, nowMs: Date.now });
  const cursor = formatCursor({ pos: untilPos, root: (await store.rootAt(untilPos)) ?? '' });
  const kept = path.join(process.env['BENCH_FOLDER'] ?? folder, `state-${COUNT}-${untilPos}-${foldName}`);
  if (existsSync(kept)) {
    await store.close();
    return { bytes: readFileSync(kept), cursor };
  }
  const replica = createReplica();
  const heads = new Map<string, { tablet: string; epoch: string; seq: number }>();
  let startMs = performance.now();
  for (let pos = 0; pos < untilPos; ) {
    const rows = await store.page(pos, Math.min(500, untilPos - pos));
    const entries = rows.map((row) => JSON.parse(row.text) as Entry); // as the store wrote it
    if (!foldIn(replica, entries)) throw new Error('the simulated year is not in order');
    for (const { tablet, epoch, seq } of entries) heads.set(`${tablet}/${epoch}`, { tablet, epoch, seq });
    const last = rows.at(-1);
    if (!last) throw new Error(`the store ends at ${pos}`);
    pos = last.pos;
  }
  await store.close();
  console.log(`fold of ${untilPos} entries       ${seconds(performance.now() - startMs)}`);
  startMs = performance.now();
  const handed = giveBootstrap(foldName, replica, [...heads.values()]);
  if (!handed) throw new Error('no bootstrap snapshot to give');
  const bytes = packBootstrap(handed);
  console.log(
    `folded state packed            ${seconds(performance.now() - startMs)}, ${(bytes.length / 1e6).toFixed(1)} MB`,
  );
  if (process.env['BENCH_FOLDER'] !== undefined) writeFileSync(kept, bytes);
  return { bytes, cursor };
}

/** Gives the state as that tablet would. */
async function give(folder: string, server: ServerProcess, untilPos: number): Promise<void> {
  const { bytes, cursor } = await stateOf(folder, untilPos);
  const old = await newTablet('old', server.url);
  await enrolTablet(old, { code: await server.code(), name: 'Old' });
  const snapshots = { fold: foldName, make: async () => bytes, take: async () => false };
  await giveSnapshot({ log: { ...old.log, snapshots }, caller: old.caller, cursor });
  const got = await old.caller.open(`/api/snapshot?fold=${foldName}`);
  if (!got.ok) throw new Error(`the server keeps no state: ${JSON.stringify(got.error)}`);
  console.log(
    `on the wire                    ${((await got.value.arrayBuffer()).byteLength / 1e6).toFixed(1)} MB`,
  );
}

interface Joined {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly profile: string;
  readonly lineMs: number;
}

/** A new tablet, from the tap that joins it until the line's screen shows the run. */
async function join(server: ServerProcess, withState: boolean): Promise<Joined> {
  const profile = mkdtempSync(path.join(tmpdir(), 'reelward-bench-tablet-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: chromiumPath(),
    args: [...quietSwitches],
    viewport: { width: 1280, height: 800 },
  });
  const page = await context.newPage();
  page.setDefaultTimeout(600_000);
  page.on('pageerror', (error) => console.log('page error:', error.message));
  await page.goto(`${server.url}/#enrol=${await server.code()}`);
  await waitReady(page);
  await page.getByTestId('enrol-name').fill('New');
  const startMs = performance.now();
  await page.getByTestId('enrol').click();
  // Joined, the page goes back to where sync is shown: a person taps the line when it does.
  while (!(await page.getByTestId('runbar').isVisible())) {
    await page.getByTestId('nav-line').click();
    await page
      .getByTestId('runbar')
      .waitFor({ timeout: 250 })
      .catch(() => undefined);
  }
  const behind = await page.getByTestId('offline').getAttribute('data-behind');
  if (withState && !(Number(behind) > 0)) throw new Error(`the tablet did not take the state: ${behind}`);
  return { context, page, profile, lineMs: performance.now() - startMs };
}

async function leave({ context, profile }: Joined): Promise<void> {
  await context.close();
  rmSync(profile, { recursive: true, force: true });
}

/** Entries in the page's database. */
function countOf(page: Page): Promise<number> {
  return page.evaluate(
    () =>
      new Promise<number>((resolve, reject) => {
        const opening = indexedDB.open('reelward-log');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const counting = opening.result.transaction('entries').objectStore('entries').count();
          counting.onsuccess = () => {
            opening.result.close();
            resolve(counting.result);
          };
        };
      }),
  );
}

async function main(): Promise<void> {
  const year = await yearFolder(COUNT);
  // The bench enrols and keeps a state: on a copy, so that the filled folder stays as it was.
  const folder = mkdtempSync(path.join(tmpdir(), 'reelward-bench-year-'));
  cpSync(year.path, folder, { recursive: true });
  year.remove();
  const server = await startServerProcess(import.meta.url, { folder, appRoot: path.join(dist, 'app') });
  await give(folder, server, COUNT - TAIL);

  const joined = await join(server, true);
  console.log(`entries                        ${COUNT}, state of ${COUNT - TAIL} and a tail of ${TAIL}`);
  console.log(`new tablet's line stands after  ${seconds(joined.lineMs)}   (wanted: at most 10 s)`);
  const from = await countOf(joined.page);
  await joined.page.evaluate(() => {
    const scope = globalThis as unknown as { longest: number; blocked: number };
    Object.assign(scope, { longest: 0, blocked: 0 });
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) {
        scope.longest = Math.max(scope.longest, duration);
        scope.blocked += duration;
      }
    }).observe({ entryTypes: ['longtask'] });
  });
  await joined.page.waitForTimeout(WATCH_SECONDS * 1000);
  const until = await countOf(joined.page);
  const busy = await joined.page.evaluate(() => {
    const { longest, blocked } = globalThis as unknown as { longest: number; blocked: number };
    return { longest, blocked };
  });
  const rate = (until - from) / WATCH_SECONDS;
  console.log(
    `history behind it               ${until} of ${COUNT} after ${WATCH_SECONDS} s more, ${rate.toFixed(0)} entries/s: whole after some ${(COUNT / Math.max(1, rate) / 60).toFixed(0)} min`,
  );
  console.log(
    `page held up meanwhile          longest ${busy.longest.toFixed(0)} ms, ${((busy.blocked / WATCH_SECONDS) * 0.1).toFixed(0)} % of the time over 50 ms`,
  );
  await leave(joined);
  await server.stop();
  rmSync(folder, { recursive: true, force: true });

  const small = await yearFolder(PLAIN);
  const plainFolder = mkdtempSync(path.join(tmpdir(), 'reelward-bench-plain-'));
  cpSync(small.path, plainFolder, { recursive: true });
  small.remove();
  const plain = await startServerProcess(import.meta.url, {
    folder: plainFolder,
    appRoot: path.join(dist, 'app'),
  });
  const slow = await join(plain, false);
  const startMs = performance.now();
  while ((await countOf(slow.page)) < PLAIN) await slow.page.waitForTimeout(100);
  const wholeMs = slow.lineMs + performance.now() - startMs;
  console.log(
    `without a state, ${PLAIN} entries  ${seconds(wholeMs)}, for the whole some ${((wholeMs / PLAIN) * COUNT * 0.001).toFixed(0)} s   ratio ${((wholeMs / PLAIN) * (COUNT / joined.lineMs)).toFixed(0)} x`,
  );
  await leave(slow);
  await plain.stop();
  rmSync(plainFolder, { recursive: true, force: true });
}

if (!(await isServerProcess())) {
  await main();
  process.exit(0);
}
