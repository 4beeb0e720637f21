// How many boards has this link seen pass at one machine? The standard has no running total, so the link keeps one, on its disk before the
// desk hears of it: a power cut neither counts a board twice nor loses one that was read.
// Method: a file of lines; a board's number and the total with it are one line, so that they are there together or not at all. A boot is a
// while in which the machine was heard without a hole: what passes in a hole is in no total, and so a new boot begins behind it.
// Refused: the total and the numbers in two files; a boot that goes on over a hole, since its total would take the place of people's counts.

import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { LinkRefused } from '../config.ts';
import { openLines, readLines, writeWhole } from '../files.ts';

/** Boards whose numbers are remembered, over any number of connections and starts. */
export const BOARDS_KEPT = 2_000;
/** Lines after which the file is written anew. */
const LINES_MOST = 20_000;

/** What one board adds. */
export interface Passed {
  /** Names the board; null where nothing does. */
  readonly key: string | null;
  readonly serial: string | null;
  readonly skipped: number[] | number | null;
}

/** One board as it is counted. */
export interface Totalled extends Passed {
  readonly boot: string;
  readonly total: number;
}

/** The total of one station's machine. */
export interface OwnTotal {
  /** The present boot and how many it has; null before the first. */
  readonly now: () => { readonly boot: string; readonly total: number } | null;
  /** The newest moment in the file, ms since 1970; null where there is none. */
  readonly lastMs: () => number | null;
  /** The machine whose boards are counted here; null until one was. */
  readonly machineId: () => string | null;
  /** Counted and on the disk; whether the desk has taken them is not known. To be told to it again at the start. */
  readonly untold: () => readonly Totalled[];
  /** A new boot; resolves when it is on the disk. */
  readonly begin: (wallMs: number) => Promise<void>;
  /** One board more; resolves when that is on the disk, with null for a board that was counted before. Needs a boot. */
  readonly add: (passed: Passed, wallMs: number) => Promise<Totalled | null>;
  /** The desk has taken all so far; nobody waits for this. */
  readonly told: () => void;
  readonly pin: (machineId: string) => Promise<void>;
  /** The link ends in order. */
  readonly close: (wallMs: number) => Promise<void>;
}

type Line =
  | readonly ['boot', string, total: number, wallMs: number]
  | readonly ['board', string | null, string | null, Passed['skipped'], wallMs: number]
  | readonly ['seen', string]
  | readonly ['told']
  | readonly ['machine', string]
  | readonly ['end', wallMs: number];

interface Work {
  boot: string | null;
  total: number;
  lastMs: number | null;
  machineId: string | null;
  untold: Totalled[];
  readonly keys: Set<string>;
  lines: number;
}

/** Opens the total of a station in a folder. `flush`: as of lines. Throws `LinkRefused` where the file is damaged. */
export function openOwnTotal(folder: string, station: string, flush = true): OwnTotal {
  const file = join(folder, `hermes-${encodeURIComponent(station)}.ndjson`);
  const work = recall(file);
  writeWhole(file, wholeText(work));
  const lines = openLines(file, flush);
  const add = async (line: Line): Promise<void> => {
    take(work, line);
    work.lines += 1;
    if (work.lines <= LINES_MOST) return lines.add(JSON.stringify(line));
    work.lines = 0;
    // As of now: what is added before it is written stands behind it.
    const text = wholeText(work);
    return lines.renew(() => text);
  };
  return {
    now: () => (work.boot === null ? null : { boot: work.boot, total: work.total }),
    lastMs: () => work.lastMs,
    machineId: () => work.machineId,
    untold: () => work.untold,
    begin: (wallMs) => add(['boot', randomBytes(4).toString('hex'), 0, wallMs]),
    add: async (passed, wallMs) => {
      const { key, serial, skipped } = passed;
      if (key !== null && work.keys.has(key)) return null;
      const saved = add(['board', key, serial, skipped, wallMs]);
      const counted = work.untold.at(-1);
      await saved;
      return counted ?? null;
    },
    told: () => {
      take(work, ['told']);
      lines.note(JSON.stringify(['told'] satisfies Line));
    },
    pin: (machineId) => add(['machine', machineId]),
    close: (wallMs) => {
      lines.note(JSON.stringify(['end', wallMs] satisfies Line));
      return lines.close();
    },
  };
}

function recall(file: string): Work {
  const work: Work = {
    boot: null,
    total: 0,
    lastMs: null,
    machineId: null,
    untold: [],
    keys: new Set(),
    lines: 0,
  };
  if (!existsSync(file)) return work;
  readLines(file).forEach((line, at) => {
    try {
      take(work, JSON.parse(line) as Line); // written below
    } catch {
      throw new LinkRefused(
        `data: ${file}: line ${at + 1} is damaged; move that file away, and the machine’s total begins anew`,
      );
    }
  });
  return work;
}

function take(work: Work, line: Line): void {
  switch (line[0]) {
    case 'boot':
      [, work.boot, work.total, work.lastMs] = line;
      return;
    case 'board': {
      const [, key, serial, skipped, wallMs] = line;
      work.total += 1;
      work.lastMs = wallMs;
      if (key !== null) remember(work, key);
      work.untold = [...work.untold, { boot: work.boot ?? '', total: work.total, key, serial, skipped }];
      return;
    }
    case 'seen':
      remember(work, line[1]);
      return;
    case 'told':
      work.untold = [];
      return;
    case 'machine':
      [, work.machineId] = line;
      return;
    case 'end':
      [, work.lastMs] = line;
      return;
    default:
      line satisfies never;
  }
}

function remember(work: Work, key: string): void {
  work.keys.add(key);
  const [oldest] = work.keys;
  if (work.keys.size > BOARDS_KEPT && oldest !== undefined) work.keys.delete(oldest);
}

/** All that is known, as lines; boards that are not told stand behind the total before them. */
function wholeText({ boot, total, lastMs, machineId, untold, keys }: Work): string {
  const waiting = new Set(untold.map(({ key }) => key));
  const lines: Line[] = [...keys].filter((key) => !waiting.has(key)).map((key) => ['seen', key]);
  if (machineId !== null) lines.push(['machine', machineId]);
  if (boot !== null) lines.push(['boot', boot, total - untold.length, lastMs ?? 0]);
  for (const { key, serial, skipped } of untold) lines.push(['board', key, serial, skipped, lastMs ?? 0]);
  return lines.map((line) => `${JSON.stringify(line)}\n`).join('');
}
