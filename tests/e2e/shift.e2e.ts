// One whole shift with the network off, by three people on one tablet: a sheet comes in, reels are loaded (one wrong, one that a
// lead decides on), the run is started, counted, stopped, spliced, the line swept, the run ended, and the lead takes the log out;
// the command line finds it whole, and the trace out of it names the lots of a panel.

import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dist, outside } from './support/demo.ts';
import {
  endRun,
  expectWhole,
  goOn,
  goTo,
  openTablet,
  ownEntries,
  pad,
  readLog,
  reelLabel,
  scan,
  scanAll,
  signIn,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'reelward-shift-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

function reelward(...args: readonly string[]): Promise<{ code: number | null; out: string }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [path.join(dist, 'cli/reelward.js'), ...args], { env: outside() });
    let out = '';
    child.stdout.on('data', (chunk) => (out += String(chunk)));
    child.on('close', (code) => resolve({ code, out }));
  });
}

let reels = 980_000;
const reelOf = (part: string, lot: string, quantity = 4000) =>
  reelLabel({ P: part, Q: String(quantity), '1T': lot, '3S': `R-${++reels}` });

/** The engineer's sheet: three slots on a line of its own, the second with a critical part. */
const sheet =
  'Slot\tPart\tQty per panel\tTape width\tPitch\nK1-F-001\tBW-1\t4\t8\t4\nK1-F-002\tBW-2\t1\t8\t4\nK1-F-003\tBW-3\t2\t12\t8\n';

async function bringSheet(page: Page): Promise<void> {
  await goTo(page, 'plant');
  await page.getByTestId('tile-sheet').click();
  await page.getByTestId('sheet-paste').fill(sheet);
  await page.getByTestId('sheet-paste-read').click();
  await page.getByTestId('take-product').fill('Fell switch');
  await page.getByTestId('take-revision').fill('1');
  await page.getByTestId('take-bottom').click();
  await page.getByTestId('take-new-line').click();
  await page.getByTestId('sheet-take').click();
  await page.getByTestId('sheet-build').click();
}

/** A lead's word for the reel on the screen: badge, PIN, reason. */
async function clearHeld(page: Page): Promise<void> {
  await page.getByTestId('verdict-clear').click();
  await page.getByTestId('badge').waitFor();
  await scan(page, 'BADGE-3301');
  await pad(page, '3301');
  await page.getByRole('button', { name: 'Checked and measured by hand' }).click();
  await page.getByTestId('clear-accept').click();
  await page.getByTestId('verdict').waitFor({ state: 'detached' });
}

describe('a shift without a network', () => {
  it('goes from the sheet to the exported log, and nothing of it is lost', async () => {
    const tablet = await openTablet(demo.browser, demo.url, { badge: 'BADGE-4401', offlineCopy: true });
    const { page, context } = tablet;
    await expect
      .poll(() => page.getByTestId('offline').getAttribute('data-state'), { timeout: 60_000 })
      .toBe('ready');
    await context.setOffline(true);
    await bringSheet(page);

    // The operator loads: a wrong reel, a right one, one by reel first, one that a lead decides on.
    await signIn(page, 'BADGE-2201');
    const progress = () => page.getByTestId('load-progress').textContent();
    await expect.poll(progress).toBe('0 of 3 slots loaded');
    const wrong = await scanAll(page, 'K1-F-001', reelOf('BW-7', 'LT-A'));
    expect([wrong.verdict, wrong.marks]).toEqual(['refused', ['1', '7']]);
    const first = reelOf('BW-1', 'LT-A', 400);
    expect((await scanAll(page, first)).verdict).toBe('accepted');
    await goOn(page);
    expect((await scanAll(page, reelOf('BW-2', 'LT-B'), 'K1-F-002')).verdict).toBe('accepted');
    await goOn(page);
    const old = reelLabel({ P: 'BW-3', Q: '4000', '1T': 'LT-C', '14D': '20250131', '3S': `R-${++reels}` });
    expect((await scanAll(page, 'K1-F-003', old)).verdict).toBe('held');
    await clearHeld(page);
    await expect.poll(progress).toBe('3 of 3 slots loaded');

    // The run: started, counted, stopped with a reason, resumed.
    await goTo(page, 'line');
    await page.getByTestId('run-start').click();
    await page.getByTestId('panels-wanted').fill('200');
    await page.getByTestId('panel-seconds').fill('30');
    await page.getByTestId('run-start-yes').click();
    const panels = () => page.locator('.runbar .panels').textContent();
    await expect.poll(panels).toBe('0 of 200 panels');
    await page.getByTestId('plus-many').click();
    await pad(page, '40');
    await expect.poll(panels).toBe('40 of 200 panels');
    // 400 parts at 4 a panel last 100 panels; 200 are wanted: the slot heads the list.
    await expect
      .poll(() => page.locator('[data-testid^=row-]').first().getAttribute('data-testid'))
      .toBe('row-K1-F-001');
    await page.getByTestId('run-stop').click();
    await page.getByTestId('stop-jam').click();
    await page.getByTestId('run-resume').click();
    await page.getByTestId('stopped').waitFor({ state: 'detached' });

    // The splice: old reel, new reel; a dead tablet in between costs nothing.
    await page.reload();
    await page.getByTestId('splice-K1-F-001').click();
    expect((await scanAll(page, first, reelOf('BW-1', 'LT-D'))).verdict).toBe('accepted');
    await goOn(page);
    await page.getByTestId('plus-many').click();
    await pad(page, '160');
    await expect.poll(panels).toBe('200 of 200 panels');

    // The line is swept, the run ends.
    await goTo(page, 'load');
    await page.getByTestId('sweep-start').click();
    await page.getByTestId('sweep-progress').waitFor();
    expect((await scanAll(page, 'K1-F-003', old)).verdict).toBe('accepted');
    await goOn(page);
    await page.getByTestId('sweep-end').click();
    await page.getByTestId('sweep-progress').waitFor({ state: 'detached' });
    await goTo(page, 'line');
    await endRun(page);

    // The lead takes the log out; the command line finds it whole and answers which lots are on a panel.
    await signIn(page, 'BADGE-3301');
    await goTo(page, 'log');
    await page.getByTestId('entries').waitFor();
    await page.getByTestId('span-all').click();
    const entries = await readLog(page);
    const waiting = page.waitForEvent('download');
    await page.getByTestId('log-export').click();
    await page.getByTestId('export-json').click();
    const file = path.join(folder, 'log.json');
    await (await waiting).saveAs(file);
    const verified = await reelward('log', 'verify', file);
    expect([verified.code, JSON.parse(verified.out)]).toMatchObject([
      0,
      { ok: true, entries: entries.length },
    ]);
    const run = (await ownEntries(page, 'run.started')).at(-1)?.payload['run'];
    const lotsOn = async (panel: number) => {
      const { out } = await reelward('trace', file, '--panel', String(panel), '--run', String(run));
      return [...new Set([...out.matchAll(/LT-[A-D]/g)].map(([lot]) => lot))].sort();
    };
    expect(await lotsOn(10)).toEqual(['LT-A', 'LT-B', 'LT-C']);
    expect(await lotsOn(150)).toEqual(['LT-B', 'LT-C', 'LT-D']);

    const kinds = (await ownEntries(page)).map(({ kind }) => kind);
    for (const kind of [
      'setup.taken',
      'hold.cleared',
      'run.stopped',
      'sweep.ended',
      'run.ended',
      'log.exported',
    ])
      expect(kinds).toContain(kind);
    expectWhole(await readLog(page));
    await context.setOffline(false);
    await tablet.putAway();
  });
});
