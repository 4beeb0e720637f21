// A year of a plant: a million entries on the server. Exported to CSV as a stream, read by a client that keeps nothing; and a
// new tablet that starts from a snapshot and the tail. Wanted: at most 150 MB of memory for the server while it exports, and at
// most 10 s until the new tablet is usable. The baselines of the same run: an export that holds all rows at once (on a tenth,
// since it would not fit), and a tablet that pulls the whole log. BENCH_ENTRIES changes the size.

import { gzipSync } from 'node:zlib';
import type { Entry } from '../../shared/log/entry.ts';
import { csvHeader, itemToCsv } from '../../shared/log/export-rows.ts';
import { canonicalText, draftOf } from '../../shared/log/seal.ts';
import { pulledSchema } from '../../shared/wire/messages.ts';
import { enrolTablet } from '../../src/app/sync/enrol.ts';
import { makeTicket } from '../../src/server/codes.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { newFolder } from '../contract/databases.ts';
import { makeChain, toChecked } from '../contract/entries.ts';
import { newTablet, until } from '../src/server/tablets.ts';
import { isServerProcess, parameter, startServerProcess, verdictPayload } from './server-process.ts';

const COUNT = parameter('BENCH_ENTRIES', 1_000_000);
const TABLETS = 20;
const TAIL = 5_000;
const CHUNK = 2_000;

/** Fills the store as tablets would have: chains of twenty tablets, interleaved. */
async function fill(folder: string): Promise<void> {
  const store = await openStore({ folder, database: null, nowMs: Date.now });
  const ends = new Map<string, Entry>();
  for (let at = 0; at < COUNT; at += CHUNK) {
    const tablet = `t${(at / CHUNK) % TABLETS}`;
    const after = ends.get(tablet);
    const chain = makeChain({
      tablet,
      count: Math.min(CHUNK, COUNT - at),
      payload: verdictPayload,
      kind: 'reel.verified',
      ...(after ? { after } : {}),
    });
    const signed = chain.map((entry) => ({ ...entry, sig: 'A'.repeat(86) }));
    await store.append([{ sender: tablet, entries: signed.map((entry) => toChecked(entry)) }], Date.now());
    const last = chain.at(-1);
    if (last) ends.set(tablet, last);
  }
  await store.close();
}

/** Reads an answer without keeping it. */
async function drain(response: Response): Promise<{ bytes: number; lines: number }> {
  let bytes = 0;
  let lines = 0;
  if (!response.ok || !response.body) throw new Error(`the export answers ${response.status}`);
  for await (const chunk of response.body as unknown as AsyncIterable<Uint8Array>) {
    bytes += chunk.length;
    for (const byte of chunk) if (byte === 10) lines += 1;
  }
  return { bytes, lines };
}

async function main(): Promise<void> {
  const folder = newFolder();
  await fill(folder.path);
  const place = { folder: folder.path, database: null, nowMs: Date.now };

  // The snapshot of a plant's state is some hundred kilobytes; its content is the app's own business.
  const store = await openStore(place);
  const pos = COUNT - TAIL;
  const state = JSON.stringify({ slots: Array.from({ length: 2_000 }, (_, seq) => verdictPayload(seq)) });
  const cursor = { pos, root: (await store.rootAt(pos)) ?? '' };
  await store.putSnapshot({ fold: 'bench', cursor, tablet: 't0', atMs: Date.now(), bytes: gzipSync(state) });
  const wish = { format: 'csv', from: null, to: null, line: null } as const;
  const { path } = await makeTicket(store, wish, Date.now());
  await store.close();

  let server = await startServerProcess(import.meta.url, { folder: folder.path });
  const idle = await server.peakBytes();
  let startMs = performance.now();
  const { bytes, lines } = await drain(
    await fetch(server.url + path, { headers: { 'accept-encoding': 'identity' } }),
  );
  const exportSeconds = (performance.now() - startMs) / 1000;
  const peak = await server.peakBytes();
  if (lines !== COUNT + 1) throw new Error(`the export has ${lines} lines`);
  await server.stop();

  server = await startServerProcess(import.meta.url, { folder: folder.path });
  const fresh = await newTablet('fresh', server.url);
  await enrolTablet(fresh, { code: await server.code(), name: 'Fresh' });
  let taken = 0;
  const snapshots = {
    fold: 'bench',
    make: async () => null,
    take: async (bytesOfState: Uint8Array) => {
      taken = (JSON.parse(new TextDecoder().decode(bytesOfState)) as { slots: unknown[] }).slots.length;
      return true;
    },
  };
  Object.assign(fresh.log, { snapshots });
  startMs = performance.now();
  fresh.start();
  await until('the tail', () => fresh.log.entries().length >= TAIL, 120_000);
  const usableSeconds = (performance.now() - startMs) / 1000;
  await fresh.stop();
  if (taken !== 2_000) throw new Error('the snapshot was not taken');

  // Baseline of the start: pulling the log, measured on a part and reckoned for the whole.
  startMs = performance.now();
  let pulled = 0;
  for (let after = '0.0000000000000000'; pulled < Math.min(COUNT, 20_000); ) {
    const page = await fresh.caller.call(`/api/pull?after=${after}`, pulledSchema);
    if (!page.ok) throw new Error(page.error.code);
    pulled += page.value.entries.length;
    after = page.value.cursor;
  }
  const pullSeconds = ((performance.now() - startMs) / 1000 / pulled) * COUNT;
  await server.stop();

  // Baseline of the export: all rows at once, on a tenth.
  const tenth = Math.round(COUNT / 10);
  const again = await openStore(place);
  const before = process.memoryUsage().rss;
  const rows = (await again.page(0, tenth)).map((row) => JSON.parse(row.text) as Entry);
  const text = csvHeader() + rows.map(itemToCsv).join('');
  const whole = process.memoryUsage().rss - before;
  await again.close();
  folder.remove();

  const mb = (size: number) => `${(size / 1e6).toFixed(0)} MB`;
  console.log(
    `entries                        ${COUNT}, ${canonicalText(draftOf(rows[0] as Entry)).length} bytes each`,
  );
  console.log(
    `CSV streamed                   ${exportSeconds.toFixed(1)} s, ${mb(bytes)}, ${(COUNT / exportSeconds).toFixed(0)} entries/s`,
  );
  console.log(
    `server's memory at most        ${mb(peak)} (before the export ${mb(idle)})   (wanted: at most 150 MB)`,
  );
  console.log(
    `all rows at once, a tenth      ${mb(whole)} more for ${mb(text.length)}   ratio ${((whole * 10) / (peak - idle)).toFixed(0)} x for the whole`,
  );
  console.log(
    `new tablet usable              ${usableSeconds.toFixed(2)} s with snapshot and a tail of ${TAIL}   (wanted: at most 10 s)`,
  );
  console.log(
    `pulling the whole log instead  ${pullSeconds.toFixed(0)} s (reckoned from ${pulled})   ratio ${(pullSeconds / usableSeconds).toFixed(0)} x`,
  );
}

if (!(await isServerProcess())) {
  await main();
  process.exit(0);
}
