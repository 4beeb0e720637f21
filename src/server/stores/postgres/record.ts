// What this server saw last of the log, in its own folder and not in the database: who puts the database back to a moment does not put this back. A server that starts
// compares, so it knows by what the log holds, and not by guess, whether that is the one of before.

import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { LogHead } from '../store.ts';

/** The end of a log that a server saw, and the log's name. */
export interface LogRecord extends LogHead {
  readonly epoch: string;
}

/** Keeps it. */
export interface RecordKeeper {
  /** What was seen before this process began; null where nothing is known. */
  readonly before: LogRecord | null;
  /** Seen now; on the disk within ten seconds. */
  readonly saw: (record: LogRecord) => void;
  /** Writes what was seen last. */
  readonly close: () => void;
}

const fileName = 'log-seen.json';
/** How often it is written at most, ms: what a server saw last before it was killed is not in it. */
const EVERY_MS = 10_000;

/** Reads it. `onFault`: told where it cannot be written; the server goes on without. */
export function keepRecord(folder: string, onFault: (error: Error) => void): RecordKeeper {
  const file = join(folder, fileName);
  let next: LogRecord | null = null;
  let timer: NodeJS.Timeout | null = null;
  const write = () => {
    timer = null;
    if (!next) return;
    const part = `${file}.${process.pid}.part`;
    try {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      writeFileSync(part, `${JSON.stringify(next)}\n`, { mode: 0o600, flush: true });
      renameSync(part, file);
      next = null;
    } catch (error) {
      rmSync(part, { force: true });
      // Without its code: nothing is wrong with the store.
      onFault(new Error(`${file} cannot be written: ${(error as Error).message}`));
    }
  };
  return {
    before: read(file),
    saw: ({ epoch, pos, root }) => {
      next = { epoch, pos, root };
      timer ??= setTimeout(write, EVERY_MS).unref();
    },
    close: () => {
      if (timer) clearTimeout(timer);
      write();
    },
  };
}

function read(file: string): LogRecord | null {
  try {
    const { epoch, pos, root } = JSON.parse(readFileSync(file, 'utf8')) as Partial<LogRecord>; // checked below
    if (typeof epoch !== 'string' || typeof root !== 'string') return null;
    return Number.isSafeInteger(pos) && Number(pos) > 0 ? { epoch, pos: Number(pos), root } : null;
  } catch {
    return null; // none yet, or half of one after a power cut: nothing is known
  }
}
