// How soon is a machine's message on every tablet's screen? A device tells its link over HTTP that a panel passed, with its code, which the link logs
// at once; server and link are processes of their own. 300 tablets are too many browsers for this computer: they are wire clients in one process
// that read each live entry, fold it and look at the line as the screen does. They stand in one row, so the last waits for all before it, which
// real tablets do not; so the time to the entry's arrival is told beside it. Wanted: 95 % within a second.
// BENCH_TABLETS and BENCH_PANELS change the size.

import { fork } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { countedBy } from '../../shared/floor/counters.ts';
import { createReplica, foldIn } from '../../shared/floor/replica.ts';
import { lineCalendar } from '../../shared/forecast/line-calendar.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { lineOutlook } from '../../shared/outlook/line.ts';
import { startLink } from '../../src/link/link.ts';
import { keepSmall } from '../../src/link/small.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { freePort } from '../contract/databases.ts';
import { beginStory, started, tellPlant, verified } from '../shared/floor/story.ts';
import { newCounts, newFleetTablet } from './fleet-tablet.ts';
import { isServerProcess, parameter, quantile, startServerProcess } from './server-process.ts';

const ROLE = 'link-process';
const SECRET = 'a secret of the bench';
const TABLETS = parameter('BENCH_TABLETS', 300);
const PANELS = parameter('BENCH_PANELS', 40);
const EVERY_MS = 700;
const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

/** In the child: a link of one station. */
async function beLink(server: string, code: string, data: string): Promise<void> {
  keepSmall();
  const source = { kind: 'counter' as const, listen: '127.0.0.1:0', secret: SECRET };
  const station = { station: 'exit', line: 'L1', machine: null, at: 'out' as const, source };
  const link = await startLink(
    { server, code, data, stations: [station] },
    { version: '1', say: () => undefined },
  );
  process.on('message', () => void link.stop().then(() => process.exit(0)));
  process.on('disconnect', () => process.exit(1));
  process.send?.(link.listens[0]?.at);
}

/** What each tablet begins with: a line that builds, counted by the station. */
function beginning(): readonly Entry[] {
  const story = beginStory();
  tellPlant(story);
  for (const [slot, part] of [
    ['M1-F-001', 'R-100'],
    ['M1-F-002', 'C-200'],
    ['M1-F-010', 'U-300'],
  ] as const)
    story.tell('reel.verified', verified(slot, part, { reel: `K-${slot}`, quantity: 5_000 }));
  story.tell('run.started', started('r1', { panelsWanted: 2_000 }));
  story.tell('line.counted-by', { line: 'L1', station: 'exit' });
  return [...story.entries].sort(compareEntries);
}

async function measure(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'reelward-screens-bench-'));
  const port = await freePort();
  const known = beginning();
  /** Code -> when the device sent it. */
  const sentMs = new Map<string, number>();
  const arrived: number[] = [];
  const shown: number[] = [];
  let doneLast = 0;
  const screen = () => {
    const replica = createReplica();
    foldIn(replica, known);
    return (text: string) => {
      const atMs = performance.now();
      const { entries } = JSON.parse(text) as { entries: Entry[] | null };
      foldIn(replica, entries ?? []);
      const nowMs = Date.now();
      const calendar = lineCalendar(replica.state, 'L1', nowMs);
      lineOutlook(replica.state, 'L1', { nowMs, calendar });
      const counted = countedBy(replica.state, 'L1', nowMs);
      doneLast = replica.state.runs.get('r1')?.done ?? 0;
      for (const { payload } of entries ?? []) {
        const from = sentMs.get(String(payload['serial']));
        if (from === undefined || counted.by !== 'station') continue;
        arrived.push(atMs - from);
        shown.push(performance.now() - from);
      }
    };
  };
  const counts = newCounts();
  const tablets = Array.from({ length: TABLETS }, (_, at) =>
    newFleetTablet({ name: `t${at}`, port: () => port, counts, sent: new Map(), onLive: screen() }),
  );
  const store = await openStore({ folder: join(folder, 'server'), database: null, nowMs: Date.now });
  for (const { name, key } of tablets)
    await store.enrolTablet({ tablet: name, name, publicKey: key.publicKey }, Date.now());
  await store.close();
  const server = await startServerProcess(import.meta.url, { folder: join(folder, 'server'), port });
  for (const tablet of tablets) {
    tablet.listen();
    await pause(5);
  }
  const link = fork(new URL(import.meta.url).pathname, [
    ROLE,
    server.url,
    await server.code(),
    join(folder, 'link'),
  ]);
  const at = await new Promise<string>((resolve) => link.once('message', (told) => resolve(String(told))));
  const send = (message: object) =>
    fetch(`http://${at}/api/stations/exit/count`, {
      method: 'POST',
      headers: { authorization: `Bearer ${SECRET}` },
      body: JSON.stringify({ boot: 'b', skipped: null, state: 1100, at: null, ...message }),
    });
  await send({ total: 0, serial: null });
  await pause(5_000);
  for (let panel = 1; panel <= PANELS; panel += 1) {
    sentMs.set(`SN-${panel}`, performance.now());
    await send({ total: panel, serial: `SN-${panel}` });
    await pause(EVERY_MS);
  }
  await pause(5_000);
  const show = (of: readonly number[]) =>
    `p50 ${quantile(of, 0.5).toFixed(0)} ms, p95 ${quantile(of, 0.95).toFixed(0)} ms, most ${Math.max(...of).toFixed(0)} ms`;
  console.log(
    `${TABLETS} wire clients that fold, ${PANELS} panels, ${shown.length} of ${TABLETS * PANELS} shown, last number ${doneLast}; load ${loadavg()[0]?.toFixed(1)}`,
  );
  console.log(`  from the device's message to its arrival: ${show(arrived)}`);
  console.log(
    `  to its place on the screen, all clients in one process: ${show(shown)}   (wanted: p95 at most 1000 ms)`,
  );
  for (const tablet of tablets) tablet.stop();
  link.send('stop');
  await new Promise((resolve) => link.once('exit', resolve));
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
  process.exit();
}

if (process.argv[2] === ROLE) {
  const [server = '', code = '', data = ''] = process.argv.slice(3);
  await beLink(server, code, data);
} else if (!(await isServerProcess())) await measure();
