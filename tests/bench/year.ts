// A year of a plant for benches: a simulated line that never stops, put into a store as its tablets would have. Simulating costs
// minutes, so a filled folder can be kept and used again (BENCH_FOLDER).

import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { simulateShift } from '../../demo/simulate.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { draftText } from '../../src/server/stores/canonical.ts';
import { openStore } from '../../src/server/stores/open.ts';
import type { Store } from '../../src/server/stores/store.ts';
import { createTraceKeeper } from '../../src/server/trace/keeper.ts';
import { newFolder } from '../contract/databases.ts';
import { toChecked } from '../contract/entries.ts';

/** Entries that the simulated line writes an hour, a little less than it does. */
const ENTRIES_AN_HOUR = 124;
const AT_ONCE = 2_000;

/** A data folder with that many entries, ending now; `remove` keeps a folder that was asked for by name. */
export async function yearFolder(
  count: number,
): Promise<{ readonly path: string; readonly remove: () => void }> {
  const named = process.env['BENCH_FOLDER'];
  if (named === undefined) {
    const folder = newFolder();
    await fillYear(folder.path, null, count);
    return folder;
  }
  const path = join(named, String(count));
  if (!existsSync(join(path, 'filled'))) {
    mkdirSync(path, { recursive: true });
    await fillYear(path, null, count);
    writeFileSync(join(path, 'filled'), '');
  }
  return { path, remove: () => undefined };
}

/** Fills a store with a simulated year that ends now. Unsigned: the simulation's tablets have no key. */
export async function fillYear(folder: string, database: string | null, count: number): Promise<void> {
  const hours = Math.ceil(count / ENTRIES_AN_HOUR) + 4;
  const startMs = Date.now() - hours * 3_600_000;
  const { entries } = simulateShift({ seed: 1, hours, zone: 'Europe/London', startMs });
  if (entries.length < count) throw new Error(`the simulated year has ${entries.length} entries of ${count}`);
  const store = await openStore({ folder, database, nowMs: Date.now });
  for (let at = 0; at < count; at += AT_ONCE)
    await appendAll(store, entries.slice(at, Math.min(count, at + AT_ONCE)));
  await keepTrace(store);
  await store.close();
}

/** Makes the trace's index, as the plant's server has it after a year. */
async function keepTrace(store: Store): Promise<void> {
  const keeper = createTraceKeeper({
    store,
    nowMs: Date.now,
    onFault: (error) => {
      throw error;
    },
  });
  await keeper.caughtUp();
  await keeper.stop();
}

async function appendAll(store: Store, entries: readonly Entry[]): Promise<void> {
  const checked = entries.map((entry) => toChecked(entry, draftText(entry)));
  const [appended] = await store.append([{ sender: 'bench', entries: checked }], Date.now());
  if (appended?.added !== entries.length)
    throw new Error(`the store took ${appended?.added} of ${entries.length} entries`);
}
