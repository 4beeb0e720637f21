// How large does the log of one line grow that a station counts, in a year without a pause? Some days are played through the link's own desk, with the
// messages that a machine sends beside its count, and put into the server's store; a year is worked out of that. Wanted: at most 1 GB where panels
// have no codes. With codes each panel is an entry, which no batch can spare. A line that is faster than its budget is played with the budget spent,
// and the week that was spared counts once a year besides. How long panels wait for the log is told too. BENCH_DAYS: how many days are played.

import { randomBytes } from 'node:crypto';
import { readdirSync, statSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import { checkPayload, type EntryKind, type PayloadOf } from '../../shared/floor/kinds.ts';
import { tickClock } from '../../shared/log/clock.ts';
import { type Entry, firstPrev } from '../../shared/log/entry.ts';
import { sealEntry } from '../../shared/log/seal.ts';
import { openHeld } from '../../src/link/held.ts';
import { openIdentity } from '../../src/link/identity.ts';
import { answerPages, openToldAnswers } from '../../src/link/ipc2591/told-answers.ts';
import { SPARED_MOST } from '../../src/link/log-budget.ts';
import { openStationDesk } from '../../src/link/station-desk.ts';
import { draftText } from '../../src/server/stores/canonical.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { newFolder } from '../contract/databases.ts';
import { toChecked } from '../contract/entries.ts';
import { startMs } from '../shared/floor/story.ts';
import { parameter } from './server-process.ts';

const DAYS = parameter('BENCH_DAYS', 1);
const DAY_SECONDS = 86_400;
/** A machine stands so often, and for so long, s. */
const STOP_EVERY = 1_500;
const STOP_LASTS = 120;
const PLACES = 60;
/** Places that a machine asks of. */
const ASKED = 150;

interface Line {
  readonly name: string;
  readonly panelSeconds: number;
  readonly hasCodes: boolean;
  /** It runs so many hours of each day; absent: all. */
  readonly hours?: number;
  /** Totals that it has left at first. */
  readonly spared: number;
  /** The machine asks of all its places before each panel, and is answered. */
  readonly asks?: boolean;
}

interface Played {
  readonly entries: readonly Entry[];
  /** How long each panel waited for the log, s. */
  readonly waits: readonly number[];
}

async function play(line: Line): Promise<Played> {
  const { panelSeconds, hasCodes, hours = 24 } = line;
  const entries: Entry[] = [];
  const waits: number[] = [];
  /** When each panel that waits was made, s. */
  let waiting: number[] = [];
  const folder = newFolder();
  const held = openHeld(folder.path, false);
  held.keepSpared('L1-placer', line.spared);
  // As long as a link's own names are.
  const { tablet, epoch } = openIdentity(folder.path);
  let second = 1;
  const write = async (kind: EntryKind, payload: object) => {
    const last = entries.at(-1);
    const wallMs = startMs + second * 1000;
    const sealed = sealEntry({
      v: 1,
      tablet,
      epoch,
      seq: entries.length + 1,
      at: new Date(wallMs).toISOString(),
      hlc: tickClock(last?.hlc ?? null, wallMs),
      who: null,
      kind,
      payload: checkPayload(kind, payload as PayloadOf<EntryKind>),
      prev: last?.hash ?? firstPrev,
    });
    // As long as its own signature is.
    entries.push({ ...sealed, sig: randomBytes(64).toString('base64url') });
    if (kind !== 'station.counted') return;
    waits.push(...waiting.map((madeAt) => second - madeAt));
    waiting = [];
  };
  const now = () => ({ ms: second * 1000, wallMs: startMs + second * 1000 });
  const desk = openStationDesk({ station: 'L1-placer', line: 'L1' }, { held, write, start: now() });
  const common = { station: 'L1-placer', line: 'L1' };
  const placeAt = (at: number) => ({ slot: `M1-F-${at}`, reel: `K7PM2Q3-${at}`, feeder: `F-${at}` });
  const told = openToldAnswers();
  const answer = async (isEnd: boolean) => {
    const times = told.again(isEnd ? null : second * 1000);
    if (times === 0) return;
    await write('station.answered-again', { ...common, times });
    told.toldAgain(times);
  };
  const ask = async () => {
    // Every ten minutes a reel is exchanged somewhere.
    const results = Array.from({ length: ASKED }, (_, at) => ({
      slot: `M1-F-${at}`,
      reel: `K7PM2Q3-${at}-${Math.floor((second + (at * 600) / ASKED) / (600 * ASKED))}`,
      part: `22-0603-${at}`,
      result: 'Success' as const,
      why: 'verified' as const,
    }));
    const fresh = told.fresh(results);
    if (fresh.length > 0) await answer(true);
    for (const some of answerPages(fresh)) await write('station.answered', { ...common, results: [...some] });
    told.told(results, fresh, second * 1000);
  };
  let total = 0;
  for (second = 2; second < DAYS * DAY_SECONDS; second += 1) {
    const stands = second % STOP_EVERY < STOP_LASTS || second % DAY_SECONDS >= hours * 3_600;
    const isPanel = !stands && second % panelSeconds === 0;
    if (isPanel) {
      total += 1;
      waiting.push(second);
      if (line.asks) await ask();
    }
    if (isPanel || second % 10 === 0) {
      const serial = hasCodes && isPanel ? `BRK-2026-${String(total).padStart(7, '0')}` : null;
      await desk.take(
        { boot: 'b7f3a91c2', total, atMs: null, serial, skipped: null, state: stands ? 5200 : 1100 },
        now(),
      );
    }
    if (second % 3_600 === 0)
      await write('parts.used', {
        ...common,
        uses: Array.from({ length: PLACES }, (_, at) => ({
          ...placeAt(at),
          used: 180.5 + at,
          spoiled: at % 3,
        })),
      });
    // Half of the time somewhere a pick fails.
    if (second % 600 === 0)
      await write('parts.missed', {
        ...common,
        late: 300,
        misses: [0, 1, 2].map((at) => ({ ...placeAt(at), times: 2 })),
      });
    await desk.tick(now());
    await answer(false);
  }
  await held.close();
  folder.remove();
  return { entries, waits };
}

async function bytesOf(entries: readonly Entry[]): Promise<number> {
  const folder = newFolder();
  const store = await openStore({ folder: folder.path, database: null, nowMs: Date.now });
  for (let at = 0; at < entries.length; at += 2_000) {
    const page = entries.slice(at, at + 2_000).map((entry) => toChecked(entry, draftText(entry)));
    await store.append([{ sender: 'bench', entries: page }], Date.now());
  }
  await store.close();
  const bytes = readdirSync(folder.path).reduce(
    (sum, name) => sum + statSync(join(folder.path, name)).size,
    0,
  );
  folder.remove();
  return bytes;
}

const lines: readonly Line[] = [
  { name: 'without codes', panelSeconds: 20, hasCodes: false, spared: SPARED_MOST },
  { name: 'without codes', panelSeconds: 10, hours: 10, hasCodes: false, spared: SPARED_MOST },
  { name: 'without codes, its budget spent', panelSeconds: 8, hasCodes: false, spared: 0 },
  {
    name: 'without codes, its machine answered before each panel',
    panelSeconds: 20,
    hasCodes: false,
    spared: SPARED_MOST,
    asks: true,
  },
  { name: 'with a code for each panel', panelSeconds: 20, hasCodes: true, spared: SPARED_MOST },
];
for (const line of lines) {
  const { entries, waits } = await play(line);
  const bytes = (await bytesOf(entries)) - (await bytesOf(entries.slice(0, 1)));
  const text = entries.reduce((sum, entry) => sum + JSON.stringify(entry).length + 1, 0);
  const once = line.spared === 0 ? SPARED_MOST / entries.length : 0;
  const year = (of: number) => `${((of * (365 / DAYS + once)) / 1e9).toFixed(2)} GB`;
  const sorted = [...waits].sort((a, b) => a - b);
  const waited = `panels wait for the log p95 ${sorted[Math.floor(sorted.length * 0.95)] ?? 0} s, most ${sorted.at(-1) ?? 0} s`;
  console.log(
    `${line.name}, a panel every ${line.panelSeconds} s, ${line.hours ?? 24} hours a day: ${DAYS} days, ${entries.length} entries, ${waited}; a year as text ${year(text)} (${Math.round(text / entries.length)} bytes each), in the server’s store with its indexes and tree ${year(bytes)} (${Math.round(bytes / entries.length)} each); load ${loadavg()[0]?.toFixed(1)}`,
  );
}
