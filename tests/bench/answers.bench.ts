// How much memory and time does a link need that may answer its machine? It follows the plant's log, which here is a simulated line's, handed to it
// page by page as a server would. A process of its own is started on the whole log, then once more on what it kept, and asked a question each time.
// BENCH_HOURS: how long a simulated line is played. What grows with the years is reels: BENCH_REELS of them, as many as such a line uses in a year,
// each verified onto a slot in the place of the one before.

import { fork } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { simulateShift } from '../../demo/simulate.ts';
import { answerPlaces } from '../../shared/floor/interlock.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { followFloor } from '../../src/link/floor.ts';
import { openIdentity } from '../../src/link/identity.ts';
import { keepSmall } from '../../src/link/small.ts';
import { makeChain } from '../contract/entries.ts';
import { asJson, beginStory, startMs, tellPlant, verified } from '../shared/floor/story.ts';

const ROLE = 'answers-process';
const HOURS = Number(process.env['BENCH_HOURS'] ?? 400);
const PAGE = 500;
const REELS = Number(process.env['BENCH_REELS'] ?? 250_000);
const YEAR_HOURS = 365 * 24;
/** Slots of the line on which the year's reels stand. */
const SLOTS = ['M1-F-001', 'M1-F-002', 'M1-F-010', 'M1-R-003'];

/** In the child: follows the log of a file. */
async function beLink(file: string, folder: string): Promise<void> {
  keepSmall();
  const bare = process.memoryUsage.rss();
  // Not the whole text at once: a server's pages come one by one.
  const pages = JSON.parse(readFileSync(`${file}.pages`, 'utf8')) as readonly string[];
  const fetchPage = async (url: string | URL | Request): Promise<Response> => {
    if (String(url).endsWith('/api/keys')) {
      const body = `{"serverEpoch":"e1","serverMs":${Date.now()},"keys":"none"}`;
      return new Response(body, { headers: { 'content-type': 'application/json' } });
    }
    const at = Number(new URL(String(url)).searchParams.get('after')?.split('.')[0] ?? 0);
    const entries = at < pages.length ? readFileSync(String(pages[at]), 'utf8') : '[]';
    const next = Math.min(at + 1, pages.length);
    const cursor = `${next}.${'0'.repeat(16)}`;
    const body = `{"serverEpoch":"e1","cursor":"${cursor}","more":${next < pages.length},"serverMs":${Date.now()},"entries":${entries}}`;
    return new Response(body, { headers: { 'content-type': 'application/json' } });
  };
  const startMs = performance.now();
  const watch = followFloor({
    identity: openIdentity(folder),
    world: {
      origin: 'http://plant',
      fetch: fetchPage as typeof fetch,
      nowMs: () => Date.now(),
      sawServer: () => undefined,
      chance: () => 0.5,
      sleep: async () => undefined,
      nonce: () => 'bench',
    },
    signal: new AbortController().signal,
    folder,
    serverKey: async () => 'none',
    say: (line) => console.error(line),
  });
  let state = null;
  for (let tries = 0; tries < 20 && state === null; tries += 1) state = await watch.upToDate(600_000);
  const seconds = (performance.now() - startMs) / 1000;
  if (!state) throw new Error('the floor could not be had');
  const [line = ''] = state.lines.keys();
  const places = [...state.slots.values()]
    .slice(0, 40)
    .map(({ slot, tapes }) => ({ slot, reel: tapes[0]?.reel ?? null, part: null, feeder: null }));
  const askedMs = performance.now();
  const fresh = await watch.upToDate(600_000);
  const answers = fresh ? answerPlaces(fresh, line, places, 'Warning') : [];
  const answerMs = performance.now() - askedMs;
  const right = answers.filter(({ why }) => why === 'verified').length;
  process.send?.({
    seconds,
    answerMs,
    right,
    asked: places.length,
    bare: bare / 1e6,
    now: process.memoryUsage.rss() / 1e6,
    peak: process.resourceUsage().maxRSS / 1e3,
  });
  process.disconnect();
}

type Figures = Readonly<Record<'seconds' | 'answerMs' | 'right' | 'asked' | 'bare' | 'now' | 'peak', number>>;

function figuresOf(file: string, folder: string): Promise<Figures> {
  const child = fork(new URL(import.meta.url).pathname, [ROLE, file, folder]);
  return new Promise((resolve, reject) => {
    child.once('message', (told) => resolve(told as Figures));
    child.once('exit', (code) => code && reject(new Error(`ended with ${code}`)));
  });
}

/** A log in pages as a server hands it out; where they lie. */
function writePages(folder: string, name: string, pages: Iterable<readonly Entry[]>): string {
  const files: string[] = [];
  for (const page of pages) {
    const file = join(folder, `${name}-${files.length}.json`);
    writeFileSync(file, JSON.stringify(page));
    files.push(file);
  }
  writeFileSync(join(folder, `${name}.pages`), JSON.stringify(files));
  return join(folder, name);
}

function* inPages(entries: readonly Entry[]): Generator<readonly Entry[]> {
  for (let at = 0; at < entries.length; at += PAGE) yield entries.slice(at, at + PAGE);
}

/** A plant, and so many reels after each other on its slots. */
function* yearOfReels(): Generator<readonly Entry[]> {
  const story = beginStory();
  tellPlant(story);
  yield story.entries;
  let after: Entry | undefined;
  for (let reel = 0; reel < REELS; reel += PAGE) {
    const chain = makeChain({
      tablet: 'line-side',
      count: Math.min(PAGE, REELS - reel),
      atMs: startMs + 3_600_000,
      kind: 'reel.verified',
      payload: (seq) =>
        asJson(
          verified(SLOTS[seq % SLOTS.length] ?? '', seq % 2 === 0 ? 'R-100' : 'C-200', {
            reel: `K7PM2Q3-${seq}`,
            supplierPart: `MFR-0603-${seq % 400}-XYZ`,
            lot: `LOT-2026-${seq >> 2}`,
            dateCode: '2611',
          }),
        ),
      ...(after === undefined ? null : { after }),
    });
    after = chain.at(-1);
    yield chain;
  }
}

async function tellFigures(file: string, data: string): Promise<void> {
  for (const start of ['on the whole log', 'on what it kept']) {
    const { seconds, answerMs, right, asked, bare, now, peak } = await figuresOf(file, data);
    console.log(
      `  ${start}: ${seconds.toFixed(1)} s, an answer ${answerMs.toFixed(0)} ms (${right} of ${asked} right), memory ${now.toFixed(0)} MB, peak ${peak.toFixed(0)} MB, ${bare.toFixed(0)} MB of it before`,
    );
  }
}

async function measure(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'reelward-answers-bench-'));
  const load = () => loadavg()[0]?.toFixed(1);
  try {
    console.log(`${REELS} reels after each other; load ${load()}`);
    await tellFigures(writePages(folder, 'reels', yearOfReels()), mkdtempSync(join(folder, 'link-')));
    const { entries } = simulateShift({ seed: 1, hours: HOURS, startMs: Date.now() - HOURS * 3_600_000 });
    const share = (HOURS / YEAR_HOURS).toFixed(3);
    console.log(`${HOURS} h of a line, ${entries.length} entries, ${share} of a year; load ${load()}`);
    await tellFigures(writePages(folder, `${HOURS}`, inPages(entries)), mkdtempSync(join(folder, 'link-')));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const [, , role, file = '', folder = ''] = process.argv;
if (role === ROLE) await beLink(file, folder);
else await measure();
