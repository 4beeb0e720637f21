// The built app as a plant gets it, in Chromium, with a log as long as a bench wants: a simulated line for weeks, and on top of it
// an engineer's setup as wide as wanted, loaded and running. Entries are put straight into the page's database, sealed like any.

import type { BrowserContext, Page } from 'playwright-core';
import { simulateShift } from '../../demo/simulate.ts';
import { formatSlot } from '../../shared/floor/address.ts';
import type { SetupSlot } from '../../shared/floor/kinds.ts';
import { tickClock } from '../../shared/log/clock.ts';
import { type Entry, firstPrev } from '../../shared/log/entry.ts';
import { sealEntry } from '../../shared/log/seal.ts';
import { waitReady } from '../e2e/support/browser.ts';

/** The simulated plant's line. */
export const line = 'L2';

/** The slots of a wide setup: banks of 60 positions, parts by number. */
export function wideSlots(count: number): readonly SetupSlot[] {
  return Array.from({ length: count }, (_, index) => ({
    slot: formatSlot({
      machine: `M${5 + Math.floor(index / 120)}`,
      bank: Math.floor(index / 60) % 2 === 0 ? 'F' : 'R',
      position: 1 + (index % 60),
    }),
    part: `BW-${1000 + index}`,
    alternates: [] as string[],
    perPanel: 1 + (index % 7),
    tapeWidthMm: 8,
    pitchMm: 4,
    positions: 1,
    supplierParts: [] as string[],
  }));
}

/** A log of about `entries` entries that ends now; with `slots`, on a setup that wide, all of it loaded but the last slot. */
export function longLog(settings: {
  readonly entries: number;
  readonly slots: number | null;
  readonly nowMs: number;
}): readonly Entry[] {
  const { slots, nowMs } = settings;
  const own = slots === null ? 0 : slots + 30;
  // About 128 entries an hour; a little more is simulated than needed, and the newest kept away.
  const hours = ((settings.entries - own) / 125) * 1.02;
  const endMs = nowMs - 60_000;
  const { entries } = simulateShift({
    seed: 1,
    hours,
    zone: 'Europe/London',
    startMs: endMs - hours * 3_600_000,
  });
  const kept = entries.slice(0, settings.entries - own);
  return slots === null ? kept : [...kept, ...wideRun(kept, wideSlots(slots), nowMs)];
}

function wideRun(before: readonly Entry[], slots: readonly SetupSlot[], nowMs: number): readonly Entry[] {
  const written: Entry[] = [];
  let prev = firstPrev;
  let hlc = before.at(-1)?.hlc ?? null;
  const write = (kind: string, payload: Entry['payload'], who: string | null = 'p-4401') => {
    hlc = tickClock(hlc, nowMs - 50_000 + written.length);
    const entry = sealEntry({
      v: 1,
      tablet: 'bench-tablet',
      epoch: 'bench-epoch',
      seq: written.length + 1,
      at: new Date(hlc.ms).toISOString().replace('Z', '+00:00'),
      hlc,
      who,
      kind,
      payload,
      prev,
    });
    written.push(entry);
    prev = entry.hash;
  };
  const setup = 'wide-top-A';
  const running = before.filter(({ kind }) => kind === 'run.started').at(-1)?.payload['run'] ?? '';
  const isEnded = before.some(({ kind, payload }) => kind === 'run.ended' && payload['run'] === running);
  if (!isEnded) write('run.ended', { run: running, line, panels: 1, note: '' });
  const facts = { setup, product: 'Wide board', side: 'top', revision: 'A', line, source: 'bench' };
  write('setup.taken', { ...facts, slots: slots as unknown as Entry['payload'][string] }); // plain JSON
  write('setup.chosen', { line, setup });
  for (const [index, slot] of slots.slice(0, -1).entries()) {
    write('reel.verified', {
      act: 'load',
      line,
      setup,
      run: null,
      slot: slot.slot,
      feeder: null,
      reel: `BR-${index}`,
      part: slot.part,
      supplierPart: null,
      quantity: 9000 - index,
      lot: `BL-${index}`,
      dateCode: null,
      codes: [`P${slot.part}`],
      verdict: 'accepted',
      reasons: [],
      panels: 0,
      via: 'wedge',
      basis: 'label',
    });
  }
  const run = 'bench-run';
  write('run.started', {
    run,
    line,
    setup,
    product: 'Wide board',
    panelsWanted: 5000,
    panelSeconds: 30,
    panelSd: 1,
    panelPrefix: 'BP-',
  });
  return written;
}

/** Puts entries into the page's log, as a sync of weeks would have. */
export async function fillLog(page: Page, entries: readonly Entry[]): Promise<void> {
  for (let from = 0; from < entries.length; from += 2500) {
    await page.evaluate(
      (json) =>
        new Promise<void>((resolve, reject) => {
          const chunk = JSON.parse(json) as {
            tablet: string;
            epoch: string;
            seq: number;
            hlc: { ms: number; n: number };
          }[];
          const opening = indexedDB.open('reelward-log');
          opening.onerror = () => reject(opening.error);
          opening.onsuccess = () => {
            const db = opening.result;
            const writing = db.transaction('entries', 'readwrite');
            const store = writing.objectStore('entries');
            for (const entry of chunk)
              store.add({
                tablet: entry.tablet,
                epoch: entry.epoch,
                seq: entry.seq,
                ms: entry.hlc.ms,
                n: entry.hlc.n,
                entry,
              });
            writing.onerror = () => reject(writing.error);
            writing.oncomplete = () => {
              db.close();
              resolve();
            };
          };
        }),
      JSON.stringify(entries.slice(from, from + 2500)),
    );
  }
}

/** Opens the app and waits until its own copy is complete, so that it starts without a network. */
export async function openOffline(context: BrowserContext, url: string): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(url);
  await waitReady(page);
  await page.waitForSelector('[data-testid=offline][data-state=ready]');
  return page;
}

/** Slows the page's own thread down by a factor, as a cheap tablet would be. */
export async function slowDown(page: Page, rate: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate });
}

/** The value below which a share of the sorted values lies. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

/** `p50 12.3, p95 45.6` in ms. */
export function spread(values: readonly number[]): string {
  return `p50 ${percentile(values, 0.5).toFixed(1)}, p95 ${percentile(values, 0.95).toFixed(1)} ms (${values.length} times)`;
}
