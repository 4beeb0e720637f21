// What a station of IPC-2591 has told, on disk before its message is accepted: machines say "one more", so the running total is kept here,
// with the names of the newest messages, since what a broker or a machine sends again is counted once.
// Method: a line a message, total and name together, so that a power cut cannot part them; the file is written anew now and then.

import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type LineFile, openLines, readLines, writeWhole } from '../files.ts';

/** Names of messages that are remembered: five hours of a busy machine. */
const KEYS_KEPT = 20_000;
/** Panels with something to tell that may not be in the log yet. */
const UNTOLD_KEPT = 256;
/** Work that has begun and not ended. */
const WORKS_KEPT = 64;
const BOOTS_KEPT = 4;

/** A panel counted. */
export interface Counted {
  readonly boot: string;
  readonly total: number;
  readonly code: string | null;
  readonly skipped: readonly number[] | null;
}

/** What was said of a panel when work on it began. */
export interface Work {
  readonly code: string | null;
  readonly skipped: readonly number[] | null;
}

type Line =
  | readonly ['boot', name: string, total: number]
  | readonly ['key', key: string]
  | readonly [
      'panel',
      key: string,
      boot: string,
      total: number,
      code: string | null,
      skipped: Work['skipped'],
    ]
  | readonly ['told', key: string]
  | readonly ['work', key: string, id: string, code: string | null, skipped: readonly number[] | null]
  | readonly ['clock', offMs: number]
  | readonly ['consumed'];

/** One station's. Changes are known at once; promises resolve when they are on the disk. */
export interface Journal {
  /** The newest stretch of counting; null before the first. */
  readonly boot: () => string | null;
  /** The one before it. */
  readonly bootBefore: () => string | null;
  readonly total: (boot: string) => number;
  /** True where a message of that name is here already. */
  readonly has: (key: string) => boolean;
  /** The true time less the machine's, ms, as it was last known. */
  readonly offMs: () => number | null;
  /** True where the machine has ever told what it consumed. */
  readonly tellsConsumed: () => boolean;
  readonly workOf: (id: string) => Work | null;
  /** Begins a new stretch from none. */
  readonly begin: () => { readonly boot: string; readonly saved: Promise<void> };
  /** `id`: the work's own. */
  readonly panel: (
    key: string,
    boot: string,
    work: Work,
    id: string | null,
  ) => { readonly total: number; readonly saved: Promise<void> };
  /** The panel of a work that was counted without a code, since its beginning had not come yet; told once, and forgotten by a kill. */
  readonly uncoded: (id: string) => { readonly boot: string; readonly total: number } | null;
  /** What was said of that panel is in the log. */
  readonly told: (key: string) => void;
  /** Panels of which something was said that is not known to be in the log. */
  readonly untold: () => ReadonlyMap<string, Counted>;
  readonly work: (key: string, id: string, work: Work) => Promise<void>;
  readonly key: (key: string) => Promise<void>;
  readonly setOff: (offMs: number) => void;
  readonly setConsumed: () => void;
  readonly close: () => Promise<void>;
}

/** What a journal holds. */
interface Held {
  readonly boots: Map<string, number>;
  readonly keys: Set<string>;
  readonly works: Map<string, Work>;
  readonly untold: Map<string, Counted>;
  offMs: number | null;
  consumed: boolean;
}

function shorten(of: Map<string, unknown> | Set<string>, most: number): void {
  for (const oldest of of.keys()) {
    if (of.size <= most) return;
    of.delete(oldest);
  }
}

function take(held: Held, line: Line): void {
  const { boots, keys, works, untold } = held;
  if (line[0] === 'boot') boots.set(line[1], line[2]);
  else if (line[0] === 'clock') held.offMs = line[1];
  else if (line[0] === 'consumed') held.consumed = true;
  else if (line[0] === 'told') untold.delete(line[1]);
  else {
    keys.add(line[1]);
    if (line[0] === 'panel') {
      const [, key, boot, total, code, skipped] = line;
      boots.set(boot, Math.max(total, boots.get(boot) ?? 0));
      if (code !== null || skipped !== null) untold.set(key, { boot, total, code, skipped });
    } else if (line[0] === 'work') {
      works.delete(line[2]);
      works.set(line[2], { code: line[3], skipped: line[4] });
    }
  }
  shorten(boots, BOOTS_KEPT);
  shorten(keys, KEYS_KEPT);
  shorten(works, WORKS_KEPT);
  shorten(untold, UNTOLD_KEPT);
}

function wholeText({ boots, keys, works, untold, offMs, consumed }: Held): string {
  const lines: Line[] = [
    ...[...keys].map((key): Line => ['key', key]),
    ...[...boots].map(([boot, total]): Line => ['boot', boot, total]),
    ...[...untold].map(
      ([key, { boot, total, code, skipped }]): Line => ['panel', key, boot, total, code, skipped],
    ),
    ...[...works].map(([id, { code, skipped }]): Line => ['work', '', id, code, skipped]),
    ...(offMs === null ? [] : ([['clock', offMs]] as const)),
    ...(consumed ? ([['consumed']] as const) : []),
  ];
  return lines.map((line) => `${JSON.stringify(line)}\n`).join('');
}

/** Opens a station's journal in the link's folder. `flush`: as of lines. */
export function openJournal(folder: string, station: string, flush = true): Journal {
  const file = join(folder, `ipc2591-${encodeURIComponent(station)}.ndjson`);
  const held: Held = {
    boots: new Map(),
    keys: new Set(),
    works: new Map(),
    untold: new Map(),
    offMs: null,
    consumed: false,
  };
  if (existsSync(file)) for (const line of readLines(file)) take(held, JSON.parse(line) as Line); // written below
  writeWhole(file, wholeText(held));
  const lines: LineFile = openLines(file, flush);
  const uncoded = new Map<string, { readonly boot: string; readonly total: number }>();
  let count = 0;
  const add = (line: Line): Promise<void> => {
    take(held, line);
    count += 1;
    if (count <= KEYS_KEPT) return lines.add(JSON.stringify(line));
    count = 0;
    return lines.renew(() => wholeText(held));
  };
  const note = (line: Line): void => {
    take(held, line);
    count += 1;
    lines.note(JSON.stringify(line));
  };
  const total = (boot: string) => held.boots.get(boot) ?? 0;
  return {
    boot: () => [...held.boots.keys()].at(-1) ?? null,
    bootBefore: () => [...held.boots.keys()].at(-2) ?? null,
    total,
    has: (key) => held.keys.has(key),
    offMs: () => held.offMs,
    tellsConsumed: () => held.consumed,
    workOf: (id) => held.works.get(id) ?? null,
    begin: () => {
      const boot = randomBytes(4).toString('hex');
      return { boot, saved: add(['boot', boot, 0]) };
    },
    uncoded: (id) => {
      const of = uncoded.get(id) ?? null;
      uncoded.delete(id);
      return of;
    },
    panel: (key, boot, { code, skipped }, id) => {
      const next = total(boot) + 1;
      if (code === null && id !== null) {
        uncoded.set(id, { boot, total: next });
        shorten(uncoded, WORKS_KEPT);
      }
      return { total: next, saved: add(['panel', key, boot, next, code, skipped]) };
    },
    told: (key) => note(['told', key]),
    untold: () => held.untold,
    work: (key, id, { code, skipped }) => add(['work', key, id, code, skipped]),
    key: (key) => add(['key', key]),
    setOff: (offMs) => note(['clock', offMs]),
    setConsumed: () => note(['consumed']),
    close: () => lines.close(),
  };
}
