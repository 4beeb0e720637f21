// What a store is spared when a month's texts leave it for a file, and what reading them there costs: a simulated line, two thirds of it in an old
// month, on both stores. Sizes are bytes on the disk before and after; times bend with whoever else works here. BENCH_ENTRIES (30000).

import { mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { simulateShift } from '../../demo/simulate.ts';
import { FOLD_VERSION } from '../../shared/floor/fold-version.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { runReelward } from '../../src/cli/reelward.ts';
import { draftText } from '../../src/server/stores/canonical.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { newFolder, startPostgres } from '../contract/databases.ts';
import { toChecked } from '../contract/entries.ts';
import { parameter } from './server-process.ts';

const ENTRIES = parameter('BENCH_ENTRIES', 30_000);
const AT_ONCE = 2_000;
const startMs = Date.UTC(2026, 2, 2, 6);
const mega = (bytes: number) => `${(bytes / 1_000_000).toFixed(1)} MB`;

const { entries } = simulateShift({
  seed: 1,
  hours: Math.ceil(ENTRIES / 120) + 4,
  zone: 'Europe/London',
  startMs,
});
const postgres = await startPostgres();

async function act(...args: readonly string[]): Promise<void> {
  const code = await runReelward(['serve', ...args], {
    stdin: async () => new Uint8Array(),
    stdout: () => undefined,
    stderr: (text) => process.stdout.write(`  ${text}`),
  });
  if (code !== 0) throw new Error(`serve ${args[0]} ended with ${code}`);
}

async function bench(database: string | null): Promise<void> {
  const folder = newFolder();
  const [data, files] = [join(folder.path, 'data'), join(folder.path, 'months')];
  mkdirSync(files);
  const open = () => openStore({ folder: data, database, months: files, nowMs: Date.now });
  const store = await open();
  const border = Math.floor((ENTRIES * 2) / 3);
  const append = async (some: readonly Entry[], at: string) => {
    const checked = some.map((entry) => toChecked(entry, { body: draftText(entry).body }));
    await store.append([{ sender: 'bench', entries: checked }], Date.parse(at));
  };
  for (let at = 0; at < border; at += AT_ONCE)
    await append(entries.slice(at, Math.min(border, at + AT_ONCE)), '2026-03-10T00:00:00Z');
  for (let at = border; at < ENTRIES; at += AT_ONCE)
    await append(entries.slice(at, Math.min(ENTRIES, at + AT_ONCE)), '2026-04-10T00:00:00Z');
  const state = { fold: `floor-${FOLD_VERSION}`, cursor: await store.head(), tablet: 'T1', atMs: 0 };
  await store.putSnapshot({ ...state, bytes: Buffer.from('state') });
  // What was written over is given back before as after, so that the two sizes say one thing.
  await store.shrink();
  const read = async (from: Pick<typeof store, 'page'>) => {
    const fromMs = performance.now();
    for (let pos = 0; pos < border; ) pos = (await from.page(pos, 500)).at(-1)?.pos ?? border;
    return (performance.now() - fromMs) / border;
  };
  const before = (await store.measure()).bytes;
  const inStore = await read(store);
  await store.close();
  const place = ['--data', data, '--months', files, ...(database === null ? [] : ['--database', database])];
  await act('month', files, '--month', '2026-03', ...place);
  const fromMs = performance.now();
  await act('month-out', '2026-03', ...place);
  const tookMs = performance.now() - fromMs;
  const again = await open();
  const after = (await again.measure()).bytes;
  const inFile = await read(again);
  await again.close();
  const spared = (before - after) / border;
  const packed = statSync(join(files, 'reelward-2026-03.ndjson.gz')).size;
  console.log(
    `${database === null ? 'data folder' : 'PostgreSQL'}: ${ENTRIES} entries, ${border} of them in the month: ${mega(before)} before, ${mega(after)} after, ` +
      `${spared.toFixed(0)} bytes less for each of the month; the file ${mega(packed)}, ${(packed / border).toFixed(0)} bytes each. ` +
      `The act ${(tookMs / 1000).toFixed(1)} s; an entry pulled out of the store ${(inStore * 1000).toFixed(0)} µs, out of the file ${(inFile * 1000).toFixed(0)} µs`,
  );
  folder.remove();
}

try {
  await bench(null);
  await bench(await postgres.newDatabase());
} finally {
  await postgres.stop();
}
