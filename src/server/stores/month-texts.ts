// The texts of entries that lie in a month's file. The file is an export as packed JSON lines, in pieces that gzip (RFC 1952) calls members: any
// unpacker reads it as one, and one text costs the unpacking of its piece alone. Nothing in the file is believed: each text is held
// against the hash that the store kept. Refused: an index file beside it, which can be lost or be of another file.

import { hash as hashAtOnce } from 'node:crypto';
import { open, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';
import type { EntryDraft } from '../../../shared/log/entry.ts';
import { canonicalText, draftOf } from '../../../shared/log/seal.ts';
import { type LeftMonth, MonthAway } from './month-store.ts';
import { type PackedRow, readPlaceInFile } from './packed.ts';

const unpack = promisify(gunzip);

/** Pieces kept unpacked, a quarter of a megabyte each: reading in folding order goes to and fro at the border of two months. */
const PIECES_KEPT = 16;

/** A row whose text may lie in a file. */
export type TextRow = PackedRow & { readonly pos: number; readonly hash: string };

/** Reads them. */
export interface MonthTexts {
  /** The rows with their texts as they are or as the file has them; in place of one that cannot be read, why. */
  readonly read: <R extends TextRow>(rows: readonly R[]) => Promise<readonly (R | MonthAway)[]>;
  /** The rows with their texts. Throws `MonthAway` where one cannot be read. */
  readonly fill: <R extends TextRow>(rows: readonly R[]) => Promise<readonly R[]>;
  /** What is wrong with the files as they lie. */
  readonly faults: (months: readonly LeftMonth[]) => Promise<readonly MonthAway[]>;
}

/** Where a text lies in its month's file. */
type InFile = NonNullable<ReturnType<typeof readPlaceInFile>>;

/** `folder`: where the files lie, null where nobody said; `months`: the months that the store knows. */
export function createMonthTexts(
  folder: string | null,
  months: () => Promise<readonly LeftMonth[]>,
): MonthTexts {
  const textOf = createTextReader(folder, months);
  const read = async <R extends TextRow>(rows: readonly R[]): Promise<readonly (R | MonthAway)[]> => {
    const filled: (R | MonthAway)[] = [];
    for (const row of rows) {
      const place = readPlaceInFile(row.body);
      if (place === null) filled.push(row);
      else
        filled.push(
          await textOf(row, place).then(
            (body) => ({ ...row, body }),
            (error: unknown) => {
              if (error instanceof MonthAway) return error;
              throw error;
            },
          ),
        );
    }
    return filled;
  };
  return {
    read,
    fill: async (rows) =>
      (await read(rows)).map((row) => {
        if (row instanceof MonthAway) throw row;
        return row;
      }),
    faults: async (all) => {
      const faults: MonthAway[] = [];
      for (const month of all) {
        try {
          if ((await stat(fileOf(folder, month))).size !== month.bytes) faults.push(otherFile(folder, month));
        } catch (error) {
          faults.push(inWords(error, folder, month));
        }
      }
      return faults;
    },
  };
}

/** Reads one text. Throws `MonthAway` where it cannot be read, or is not the one that the row's hash covers. */
function createTextReader(
  folder: string | null,
  months: () => Promise<readonly LeftMonth[]>,
): (row: TextRow, place: InFile) => Promise<string> {
  const pieceOf = createPieces(folder);
  let known: readonly LeftMonth[] = [];
  const monthOf = async (pos: number) => {
    const find = () => known.find(({ afterPos, untilPos }) => pos > afterPos && pos <= untilPos);
    if (!find()) known = await months();
    return find();
  };
  return async (row, { piece, line }) => {
    const month = await monthOf(row.pos);
    if (!month) throw new MonthAway({ month: `entry ${row.pos}` }, 'no month of the store holds it');
    let lines: readonly string[];
    try {
      lines = await pieceOf(month, piece);
    } catch (error) {
      throw inWords(error, folder, month);
    }
    const text = bodyOf(lines[line] ?? '');
    if (text === null || hashAtOnce('sha256', text, 'hex') !== row.hash) throw otherFile(folder, month);
    return text;
  };
}

/** Keeps some pieces unpacked; the one that was used longest ago goes first. */
function createPieces(
  folder: string | null,
): (month: LeftMonth, piece: number) => Promise<readonly string[]> {
  const pieces = new Map<string, Promise<readonly string[]>>();
  return (month, piece) => {
    const name = `${month.month} ${month.leftMs} ${piece}`;
    const kept = pieces.get(name);
    if (kept) {
      pieces.delete(name);
      pieces.set(name, kept);
      return kept;
    }
    const reading = new Promise<readonly string[]>((resolve) =>
      resolve(readPiece(fileOf(folder, month), month, piece)),
    );
    pieces.set(name, reading);
    // A file that comes back is read then.
    reading.catch(() => pieces.delete(name));
    for (const oldest of [...pieces.keys()].slice(0, Math.max(0, pieces.size - PIECES_KEPT)))
      pieces.delete(oldest);
    return reading;
  };
}

function fileOf(folder: string | null, { file }: LeftMonth): string {
  if (folder === null) throw new NoFolder();
  return join(folder, file);
}

class NoFolder extends Error {}

async function readPiece(file: string, month: LeftMonth, piece: number): Promise<readonly string[]> {
  const from = month.pieces[piece];
  const to = month.pieces[piece + 1] ?? month.bytes;
  if (from === undefined) throw new RangeError(`Cannot read as the file must have piece ${piece}`);
  const handle = await open(file, 'r');
  try {
    const packed = Buffer.alloc(to - from);
    await handle.read(packed, 0, packed.length, from);
    return (await unpack(packed)).toString('utf8').split('\n');
  } finally {
    await handle.close();
  }
}

/** The text that the hash covers, of a line of the file; null where it is no entry. */
export function bodyOf(line: string): string | null {
  try {
    return canonicalText(draftOf(JSON.parse(line) as EntryDraft)); // what is none has another hash
  } catch {
    return null;
  }
}

const ways = 'put it back there, name the folder it lies in with --months, or restore a backup of the file';

function otherFile(folder: string | null, month: LeftMonth): MonthAway {
  return new MonthAway(
    month,
    `${month.file} in ${folder} is not the file that they left for (SHA-256 ${month.sha256}): ${ways}`,
  );
}

function inWords(error: unknown, folder: string | null, month: LeftMonth): MonthAway {
  if (error instanceof NoFolder)
    return new MonthAway(month, `lie in ${month.file}: name the folder of that file with --months`);
  const { code, message } = error as NodeJS.ErrnoException;
  if (code === 'ENOENT' || code === 'ENOTDIR')
    return new MonthAway(month, `${month.file} is not in ${folder}: ${ways}`);
  // Every other code of a file system says that it cannot be read; one of the unpacker, or none, that it is not what was written.
  if (code?.startsWith('Z_') || code === undefined) return otherFile(folder, month);
  return new MonthAway(month, `${month.file} in ${folder} cannot be read (${message})`);
}
