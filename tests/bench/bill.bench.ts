// How long does it take to lay a placement file of 10,000 rows over a bill of 2,000 rows, from text to joined parts? And from two files to what
// the page is answered, by the worker's own desk in a thread that has done nothing before? Wanted there: at most 300 ms.
// Baselines of the same run: splitting both texts at line ends and separators, which reads nothing and joins nothing; once warm, once in such a thread.
// A thread's own time leaves out what others on the machine take, and what the engine does beside it, which no page waits for.

import { readFileSync } from 'node:fs';
import { isMainThread, parentPort, Worker } from 'node:worker_threads';
import { readBill } from '../../shared/sheet/bill.ts';
import { billRows } from '../../shared/sheet/bill-rows.ts';
import { joinBill } from '../../shared/sheet/join.ts';
import { readPlacements } from '../../shared/sheet/placements.ts';
import { createSheetDesk } from '../../src/worker/sheet-desk.ts';
import type { SheetReply, SheetSettings } from '../../src/worker/sheet-protocol.ts';

const places = 10_000;
const lines = 2_000;

const letters = ['R', 'C', 'U', 'D', 'L'];
const nameOf = (at: number) => `${letters[at % letters.length]}${1 + Math.floor(at / letters.length)}`;

function placementText(): string {
  const rows = Array.from(
    { length: places },
    (_, at) =>
      `${nameOf(at)},${at % lines}k,R0603,${(at % 400) + 0.25},${(at % 300) + 0.5},90,${at % 3 === 0 ? 'bottom' : 'top'}`,
  );
  return ['Ref,Val,Package,PosX,PosY,Rot,Side', ...rows].join('\n');
}

function billText(): string {
  const namesByLine = Array.from({ length: lines }, (): string[] => []);
  for (let at = 0; at < places; at++) namesByLine[at % lines]?.push(nameOf(at));
  const rows = namesByLine.map(
    (names, at) =>
      `${at + 1};BW-${10_000 + at};${names.length};"${names.join(', ')}";resistor ${at}k;KP-${at} | SR-${at}`,
  );
  return ['Item;Part Number;Qty;Designators;Description;MPN', ...rows].join('\r\n');
}

/** Milliseconds of processor so far: a machine with other work on it shows the same. */
function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Median of nine runs in ms of processor; the first run of all is shown on its own, since a worker reads once. */
function times(run: () => unknown): { readonly first: number; readonly median: number } {
  const taken: number[] = [];
  for (let round = 0; round < 9; round++) {
    const start = cpuMs();
    run();
    taken.push(cpuMs() - start);
  }
  return { first: taken[0] ?? 0, median: [...taken].sort((a, b) => a - b)[4] ?? 0 };
}

/** Milliseconds that this thread has run so far; of the clock where the system does not tell. */
function threadMs(): number {
  try {
    return Number(readFileSync('/proc/thread-self/schedstat', 'utf8').split(' ')[0]) / 1e6;
  } catch {
    return performance.now();
  }
}

const settings: SheetSettings = {
  columns: null,
  placementColumns: null,
  billColumns: null,
  variant: null,
  remembered: {},
  page: null,
  scope: null,
  boardsPerPanel: 1,
  machine: '',
  bank: '',
  approved: [],
};

const splitBoth = (texts: readonly string[]) =>
  texts.map((text) => text.split(/\r?\n/).map((line) => line.split(/[,;]/)));

interface Answer {
  readonly ms: number;
  readonly reply: SheetReply | null;
}

/** In a thread of its own: does one thing once, as the page's worker does. */
function beWorker(): void {
  parentPort?.on('message', async (asked: { readonly does: 'desk' | 'split'; readonly files: Blob[] }) => {
    const [placements, bill] = asked.files.map((content, at) => ({
      number: at + 1,
      name: `${at}.csv`,
      content,
    }));
    const decode = (bytes: Uint8Array, encoding: string) => {
      try {
        return new TextDecoder(encoding, { fatal: true }).decode(bytes);
      } catch {
        return null;
      }
    };
    const desk = createSheetDesk({ decode, readWorkbook: async () => [] });
    const start = threadMs();
    let reply: SheetReply | null = null;
    if (asked.does === 'split') splitBoth(await Promise.all(asked.files.map((file) => file.text())));
    else if (placements && bill)
      reply = await desk.read({ id: 1, sheet: null, placements, bill, settings }, () => undefined);
    parentPort?.postMessage({ ms: threadMs() - start, reply } satisfies Answer);
  });
}

/** Asks a new thread for one thing. */
function askOnce(does: 'desk' | 'split', files: readonly Blob[]): Promise<Answer> {
  const worker = new Worker(new URL(import.meta.url));
  return new Promise((resolve, reject) => {
    worker.once('error', reject);
    worker.once('message', (answer: Answer) => void worker.terminate().then(() => resolve(answer)));
    worker.postMessage({ does, files });
  });
}

async function inNewThreads(texts: readonly string[]): Promise<void> {
  const files = texts.map((text) => new Blob([text]));
  const [desk, split]: [number[], number[]] = [[], []];
  let joined = 0;
  for (let round = 0; round < 7; round++) {
    split.push((await askOnce('split', files)).ms);
    const { ms, reply } = await askOnce('desk', files);
    desk.push(ms);
    joined = reply?.kind === 'read' ? (reply.summary.bill?.parts.length ?? 0) : 0;
  }
  const median = (of: readonly number[]) => [...of].sort((a, b) => a - b)[3] ?? 0;
  console.log(
    `two files to the page's answer, the first time in a new thread, ${joined} parts: median ${median(desk).toFixed(0)} ms, most ${Math.max(...desk).toFixed(0)} ms of the thread (wanted: at most 300), ${(median(desk) / median(split)).toFixed(1)} x splitting alone there`,
  );
}

async function measure(): Promise<void> {
  const [place, bill] = [placementText(), billText()];
  const read = () => joinBill(readPlacements(place, { hasBill: true }), readBill(billRows(bill).rows));
  const joined = times(read);
  const split = times(() => splitBoth([place, bill]));
  const { parts, placements, problems } = read();
  console.log(
    `bill: ${places} + ${lines} rows, ${parts.length} parts, ${placements.length} placements, ${problems.length} problems`,
  );
  console.log(
    `read and joined: first ${joined.first.toFixed(0)} ms of processor, median ${joined.median.toFixed(0)} ms, ${(joined.median / split.median).toFixed(1)} x splitting alone`,
  );
  await inNewThreads([place, bill]);
}

if (isMainThread) await measure();
else beWorker();
