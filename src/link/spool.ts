// The link's own log on its disk: a sealed chain like a tablet's, whose head is signed at each send, in files of so many entries, and what sync remembers.
// Method: an entry is told of only when it is flushed, so that a name that travelled is never used again. Whole files that the server
// holds are dropped once there are many: a server that lost them gets them from the tablets.
// Refused: a database; it is one writer that adds and one reader that goes on from a number.

import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { checkPayload, type EntryKind, type PayloadOf } from '../../shared/floor/kinds.ts';
import { tickClock } from '../../shared/log/clock.ts';
import { type ClockReading, chainId, type Entry, firstPrev } from '../../shared/log/entry.ts';
import { sealEntry, sealedHash } from '../../shared/log/seal.ts';
import { emptyMemory, type SyncLog, type SyncMemory } from '../app/sync/ports.ts';
import { LinkRefused } from './config.ts';
import { openLines, readLines, writeWhole } from './files.ts';
import type { LinkIdentity } from './identity.ts';

/** Entries of one file. */
export const FILE_ENTRIES = 2_000;
/** Files kept whatever the server holds: some 200,000 entries. */
const FILES_KEPT = 100;
/** The newest entries are kept in hand, for the next push. */
const TAIL_KEPT = 1_000;
/** Entries of one page out of a file: some pages are on their way at one time, and weeks of them go out one after the other. */
const PAGE_READ = 200;

/** The link's log. */
export interface Spool {
  /** Writes an entry; resolves when it is on the disk. */
  readonly write: <K extends EntryKind>(kind: K, payload: PayloadOf<K>) => Promise<Entry>;
  readonly log: SyncLog;
  /** Entries written so far. */
  readonly length: () => number;
  /** Entries that the server is not known to hold. */
  readonly backlog: () => number;
  readonly close: () => Promise<void>;
}

const fileName = (first: number) => `log-${String(first).padStart(12, '0')}.ndjson`;

/** Opens the log in a folder. `wallMs`: the true time as far as it is known; `flush`: as of lines. Throws `LinkRefused` where the files are damaged. */
export function openSpool(folder: string, identity: LinkIdentity, wallMs: () => number, flush = true): Spool {
  const starts = readdirSync(folder)
    .flatMap((name) => /^log-(\d{12})\.ndjson$/.exec(name)?.[1] ?? [])
    .map(Number)
    .sort((a, b) => a - b);
  let tail = readNewest(folder, starts, identity);
  const newest = tail.at(-1);
  let [seq, hash] = [newest?.seq ?? 0, newest?.hash ?? firstPrev];
  let hlc: ClockReading | null = newest?.hlc ?? null;
  /** The last entry that is flushed. */
  let head = newest ?? null;
  const firstOf = (of: number) => of - ((of - 1) % FILE_ENTRIES);
  const lines = openLines(join(folder, fileName(firstOf(seq + 1))), flush);
  const listeners = new Set<() => void>();
  const memoryFile = join(folder, 'sync.json');
  let memory: SyncMemory = existsSync(memoryFile)
    ? { ...emptyMemory, ...(JSON.parse(readFileSync(memoryFile, 'utf8')) as SyncMemory) } // written below
    : emptyMemory;
  const acked = () => memory.acked[chainId(identity)] ?? 0;

  const write: Spool['write'] = async (kind, payload) => {
    hlc = tickClock(hlc, wallMs());
    const entry = sealEntry({
      v: 1,
      tablet: identity.tablet,
      epoch: identity.epoch,
      seq: seq + 1,
      at: new Date(wallMs()).toISOString(),
      hlc,
      who: null,
      kind,
      payload: checkPayload(kind, payload),
      prev: hash,
    });
    [seq, hash] = [entry.seq, entry.hash];
    const first = firstOf(entry.seq);
    if (first === entry.seq) {
      lines.moveTo(join(folder, fileName(first)));
      starts.push(first);
      dropHeld(folder, starts, acked());
    }
    await lines.add(JSON.stringify(entry));
    tail.push(entry);
    if (tail.length > 2 * TAIL_KEPT) tail = tail.slice(-TAIL_KEPT);
    head = entry;
    for (const listener of listeners) listener();
    return entry;
  };

  const pages: Pages = { folder, firstOf, tail: () => tail, end: () => head?.seq ?? 0, read: null };
  return {
    write,
    length: () => seq,
    backlog: () => Math.max(0, seq - acked()),
    close: () => lines.close(),
    log: {
      heads: async () =>
        head === null ? [] : [{ tablet: head.tablet, epoch: head.epoch, seq: head.seq, hash: head.hash }],
      entriesAfter: async (_chain, after, limit) => entriesAfter(pages, after, limit),
      // Others' entries are none of a link's business.
      takeIn: async () => undefined,
      readMemory: async () => memory,
      writeMemory: async (next) => {
        memory = next;
        writeWhole(memoryFile, `${JSON.stringify(next)}\n`);
      },
      onAppend: (listener) => {
        listeners.add(listener);
        return () => void listeners.delete(listener);
      },
    },
  };
}

/** Where entries are read again. */
interface Pages {
  readonly folder: string;
  /** The first number of the file that holds a number. */
  readonly firstOf: (seq: number) => number;
  readonly tail: () => readonly Entry[];
  /** The last number that is flushed. */
  readonly end: () => number;
  /** The lines of a whole file, for its next page. */
  read: { readonly first: number; readonly lines: readonly string[] } | null;
}

/** Entries after a number: out of hand, or out of their file. */
function entriesAfter(pages: Pages, after: number, limit: number): readonly Entry[] {
  const tail = pages.tail();
  const first = tail[0]?.seq ?? 1;
  const found =
    after + 1 >= first
      ? tail.slice(after + 1 - first, after + 1 - first + limit)
      : readFrom(pages, after, Math.min(limit, PAGE_READ));
  return found.filter((entry) => entry.seq <= pages.end());
}

/** The entries of the newest file that holds any, checked: what is wrong there would be refused by the server for ever. */
function readNewest(folder: string, starts: number[], identity: LinkIdentity): Entry[] {
  for (;;) {
    const first = starts.at(-1);
    if (first === undefined) return [];
    const name = fileName(first);
    const entries = readLines(join(folder, name)).map((line, at) =>
      readEntry(line, `${name}: line ${at + 1}`),
    );
    if (entries.length === 0) {
      // Made just before a kill.
      rmSync(join(folder, name));
      starts.pop();
      continue;
    }
    entries.forEach((entry, at) => {
      const before = entries[at - 1];
      const isNext = before === undefined ? entry.seq === first : entry.seq === before.seq + 1;
      const holds = entry.hash === sealedHash(entry) && (before === undefined || entry.prev === before.hash);
      if (!isNext || !holds || chainId(entry) !== chainId(identity)) throw damaged(`${name}: line ${at + 1}`);
    });
    return entries;
  }
}

function readEntry(line: string, where: string): Entry {
  try {
    return JSON.parse(line) as Entry; // checked by its hash
  } catch {
    throw damaged(where);
  }
}

function damaged(where: string): LinkRefused {
  return new LinkRefused(
    `data: ${where} is damaged; keep the folder, and start with an empty one and a new one-time code`,
  );
}

/** Entries after a number out of their file; none where that is not here any more. */
function readFrom(pages: Pages, after: number, limit: number): readonly Entry[] {
  const first = pages.firstOf(after + 1);
  const lines = pages.read?.first === first ? pages.read.lines : linesOf(join(pages.folder, fileName(first)));
  // A file that still grows is read anew, and one that was read to its end is done with.
  const isLast = after - first + 1 + limit >= FILE_ENTRIES;
  pages.read = lines.length === FILE_ENTRIES && !isLast ? { first, lines } : null;
  return lines.slice(after + 1 - first, after + 1 - first + limit).map((line) => JSON.parse(line) as Entry); // written by `write`
}

function linesOf(file: string): readonly string[] {
  // What stands behind the last line end is being written.
  return existsSync(file) ? readFileSync(file, 'utf8').split('\n').slice(0, -1) : [];
}

function dropHeld(folder: string, starts: number[], acked: number): void {
  while (starts.length > FILES_KEPT && (starts[1] ?? Number.POSITIVE_INFINITY) - 1 <= acked) {
    const first = starts.shift();
    if (first !== undefined) rmSync(join(folder, fileName(first)), { force: true });
  }
}
