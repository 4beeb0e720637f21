// Files that survive a kill and a power cut: small ones are put in place whole, long ones grow by whole lines that are flushed before
// anybody is told. Many lines that wait together are flushed in one go, since a flush costs the same for one as for a hundred.

import {
  closeSync,
  fsyncSync,
  openSync,
  readFileSync,
  renameSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { dirname } from 'node:path';

/** Writes a file whole, or leaves the one before. */
export function writeWhole(file: string, text: string): void {
  const beside = `${file}.new`;
  const fd = openSync(beside, 'w', 0o600);
  try {
    writeFileSync(fd, text);
    fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
  renameSync(beside, file);
  // The name itself is in the folder.
  const folder = openSync(dirname(file), 'r');
  fsyncSync(folder);
  closeSync(folder);
}

/** The whole lines of a file; what stands behind the last of them was cut off by a kill and is taken off. */
export function readLines(file: string): string[] {
  const bytes = readFileSync(file);
  const end = bytes.lastIndexOf(10) + 1;
  if (end < bytes.length) truncateSync(file, end);
  const text = bytes.subarray(0, end).toString('utf8');
  return text === '' ? [] : text.slice(0, -1).split('\n');
}

/** A file that grows line by line. */
export interface LineFile {
  /** Resolves when the line is on the disk. */
  readonly add: (line: string) => Promise<void>;
  /** The line goes there with the next one that is added, or at the end: nobody waits for it. */
  readonly note: (line: string) => void;
  /** Lines from now on go to this file; those that wait go to the one before. */
  readonly moveTo: (file: string) => void;
  /** The file is written anew with what `text` gives then; lines that wait come before it, those added later behind it. */
  readonly renew: (text: () => string) => Promise<void>;
  readonly close: () => Promise<void>;
}

/** Opens a file for lines; it is made where it is not there. `flush`: false only where a power cut is played and not feared. */
export function openLines(first: string, flush = true): LineFile {
  interface Waiting {
    readonly file: string;
    readonly line: string | (() => string);
    readonly done: () => void;
    readonly failed: (error: unknown) => void;
  }
  let file = first;
  let waiting: Waiting[] = [];
  let handle: { readonly file: string; readonly to: FileHandle } | null = null;
  let busy: Promise<void> | null = null;

  const write = async () => {
    while (waiting.length > 0) {
      const to = waiting[0]?.file ?? file;
      const isAlone = typeof waiting[0]?.line === 'function';
      const next = isAlone
        ? 1
        : waiting.findIndex((each) => each.file !== to || typeof each.line === 'function');
      const batch = next < 0 ? waiting : waiting.slice(0, next);
      waiting = next < 0 ? [] : waiting.slice(next);
      try {
        const [first] = batch;
        if (first && typeof first.line === 'function') {
          await handle?.to.close();
          handle = null;
          writeWhole(to, first.line());
          first.done();
          continue;
        }
        if (handle?.file !== to) {
          await handle?.to.close();
          handle = { file: to, to: await open(to, 'a', 0o600) };
        }
        await handle.to.appendFile(batch.map(({ line }) => `${line}\n`).join(''));
        if (flush) await handle.to.datasync();
        for (const each of batch) each.done();
      } catch (error) {
        for (const each of batch) each.failed(error);
      }
    }
    busy = null;
  };
  const put = (line: Waiting['line']) =>
    new Promise<void>((done, failed) => {
      waiting.push({ file, line, done, failed });
      busy ??= write();
    });
  return {
    add: put,
    note: (line) => {
      waiting.push({ file, line, done: () => undefined, failed: () => undefined });
    },
    renew: put,
    moveTo: (next) => {
      file = next;
    },
    close: async () => {
      if (waiting.length > 0) busy ??= write();
      await busy;
      await handle?.to.close();
      handle = null;
    },
  };
}
