// The texts of entries that lie in a month's file. The file is an export as packed JSON lines, in pieces that gzip (RFC 1952) calls members: any
// unpacker reads it as one, and one text costs the unpacking of its piece alone. Nothing in the file is believed: each text is held
// against the hash that the store kept. Refused: an index file beside it, which can be lost or be of another file.

import { createHash, hash as hashAtOnce } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { gunzip } from 'node:zlib';
import type { Entry } from '../../../shared/log/entry.ts';
import { draftText } from './canonical.ts';
import {
  isTextFault,
  type LeftMonth,
  MonthAway,
  PlaceChanged,
  pieceMost,
  type TextFault,
} from './month-store.ts';
import { type PackedRow, readPlaceInFile } from './packed.ts';

const unpack = promisify(gunzip);

/** Pieces kept unpacked, a quarter of a megabyte each: reading in folding order goes to and fro at the border of two months. */
const PIECES_KEPT = 16;
/** A packed piece is no longer than this, bytes: what does not shrink grows by little. */
const PACKED_MOST = pieceMost + 65_536;

/** A row whose text may lie in a file. */
export type TextRow = PackedRow & { readonly pos: number; readonly hash: string };

/** Reads them. */
export interface MonthTexts {
  /** The rows with their texts as they are or as the file has them; in place of one that cannot be read, why. */
  readonly read: <R extends TextRow>(rows: readonly R[]) => Promise<readonly (R | TextFault)[]>;
  /** The rows with their texts. Throws `MonthAway` or `PlaceChanged` where one cannot be read. */
  readonly fill: <R extends TextRow>(rows: readonly R[]) => Promise<readonly R[]>;
  /** What is wrong with the files as they lie; `whole`: each is read from its first bit to its last; `only`: of these months. */
  readonly faults: (how?: 'whole', only?: ReadonlySet<string>) => Promise<readonly TextFault[]>;
}

/** Where a text lies in its month's file. */
type InFile = NonNullable<ReturnType<typeof readPlaceInFile>>;

/** `folder`: where the files lie, null where nobody said; `months`: the months that the store knows. */
export function createMonthTexts(
  folder: string | null,
  months: () => Promise<readonly LeftMonth[]>,
): MonthTexts {
  const asLeft = createAsLeft(folder);
  const textOf = createTextReader(folder, months, asLeft);
  const fillOne = async <R extends TextRow>(row: R): Promise<R> => {
    const place = readPlaceInFile(row.body);
    return place === null ? row : { ...row, body: await textOf(row, place) };
  };
  const faultIn = (error: unknown): TextFault => {
    if (isTextFault(error)) return error;
    throw error;
  };
  return {
    read: async <R extends TextRow>(rows: readonly R[]) => {
      const filled: (R | TextFault)[] = [];
      for (const row of rows) filled.push(await fillOne(row).catch(faultIn));
      return filled;
    },
    fill: async <R extends TextRow>(rows: readonly R[]) => {
      const filled: R[] = [];
      for (const row of rows) filled.push(await fillOne(row));
      return filled;
    },
    faults: async (how, only) => {
      const faults: TextFault[] = [];
      for (const month of await months()) {
        if (only?.has(month.month) === false) continue;
        if (how === 'whole') asLeft.forget(month);
        const fault = await faultOfFile(folder, month, how === 'whole' ? asLeft : null);
        if (fault) faults.push(fault);
      }
      return faults;
    },
  };
}

/** What is wrong with a file as it lies. `asLeft`: null where it is enough that its size is right. */
async function faultOfFile(
  folder: string | null,
  month: LeftMonth,
  asLeft: AsLeft | null,
): Promise<TextFault | null> {
  const wrong = changedIn(month);
  if (wrong !== null) return new PlaceChanged(wrong);
  try {
    if ((await stat(fileOf(folder, month))).size !== month.bytes) return otherFile(folder, month);
  } catch (error) {
    return inWords(error, folder, month);
  }
  return asLeft === null || (await asLeft.is(month)) ? null : otherFile(folder, month);
}

/** Reads one text. Throws `MonthAway` where it cannot be read, `PlaceChanged` where the file is right and the store is not. */
function createTextReader(
  folder: string | null,
  months: () => Promise<readonly LeftMonth[]>,
  asLeft: AsLeft,
): (row: TextRow, place: InFile) => Promise<string> {
  const pieces = createPieces(folder);
  let known: readonly LeftMonth[] = [];
  const monthOf = async (pos: number) => {
    const find = () => known.find(({ afterPos, untilPos }) => pos > afterPos && pos <= untilPos);
    if (!find()) known = await months();
    return find();
  };
  /** Null where another text lies there. */
  const textAt = async (month: LeftMonth, { piece, line }: InFile, hash: string) => {
    const text = bodyOf((await pieces.read(month, piece))[line] ?? '');
    return text !== null && hashAtOnce('sha256', text, 'hex') === hash ? text : null;
  };
  return async (row, place) => {
    const name = `${row.tablet}/${row.epoch}/${row.seq}`;
    const month = await monthOf(row.pos);
    if (!month) throw new PlaceChanged(`no month of the store holds ${name}, whose text left it`);
    const wrong = changedIn(month, place.piece);
    if (wrong !== null) throw new PlaceChanged(wrong);
    let why: unknown = null;
    try {
      const text = await textAt(month, place, row.hash);
      if (text !== null) return text;
    } catch (error) {
      why = error;
    }
    pieces.forget(month, place.piece);
    if (!(await asLeft.is(month)))
      throw why === null ? otherFile(folder, month) : inWords(why, folder, month);
    // The file is right now; what was read may be of before.
    const text = await textAt(month, place, row.hash).catch((error: unknown) => {
      if (isUnpackers(error)) return null;
      throw inWords(error, folder, month);
    });
    if (text !== null) return text;
    pieces.forget(month, place.piece);
    throw new PlaceChanged(
      `the file of ${month.month} is the one that its texts left for, and has another text where the store says that ${name} lies`,
    );
  };
}

/** What cannot be true of a month as it was put into the store; null where nothing is. `piece`: one that a row names. */
function changedIn({ month, file, bytes, pieces }: LeftMonth, piece?: number): string | null {
  // A backup that somebody else made must not lead out of the folder.
  if (!/^\w[\w.-]*$/.test(file))
    return `the store has a file for ${month} whose name is none of this program`;
  if (piece === undefined) return null;
  const from = pieces[piece] ?? Number.NaN;
  const size = (pieces[piece + 1] ?? bytes) - from;
  return from >= 0 && size > 0 && size <= PACKED_MOST
    ? null
    : `the file of ${month} has no piece ${piece}, which the store names`;
}

/** Whether files are the ones that texts left for, to the last bit. */
interface AsLeft {
  readonly is: (month: LeftMonth) => Promise<boolean>;
  /** Reads it anew when next asked. */
  readonly forget: (month: LeftMonth) => void;
}

/** A file that was not touched since is not read again. */
function createAsLeft(folder: string | null): AsLeft {
  const known = new Map<string, { readonly touched: string; readonly reading: Promise<boolean> }>();
  const nameOf = ({ file, sha256 }: LeftMonth) => `${file} ${sha256}`;
  const isSame = async (file: string, sha256: string) => {
    const hash = createHash('sha256');
    for await (const some of createReadStream(file)) hash.update(some as Buffer);
    return hash.digest('hex') === sha256;
  };
  return {
    is: async (month) => {
      try {
        const file = fileOf(folder, month);
        const { size, mtimeMs, ctimeMs, ino } = await stat(file);
        if (size !== month.bytes) return false;
        const touched = [mtimeMs, ctimeMs, ino].join(' ');
        const kept = known.get(nameOf(month));
        const reading = kept?.touched === touched ? kept.reading : isSame(file, month.sha256);
        known.set(nameOf(month), { touched, reading });
        return await reading;
      } catch {
        known.delete(nameOf(month)); // the others were read as they are
        return false;
      }
    },
    forget: (month) => void known.delete(nameOf(month)),
  };
}

/** Pieces of files. */
interface Pieces {
  readonly read: (month: LeftMonth, piece: number) => Promise<readonly string[]>;
  readonly forget: (month: LeftMonth, piece: number) => void;
}

/** Keeps some pieces unpacked; the one that was used longest ago goes first. */
function createPieces(folder: string | null): Pieces {
  const pieces = new Map<string, Promise<readonly string[]>>();
  const nameOf = (month: LeftMonth, piece: number) => `${month.month} ${month.leftMs} ${piece}`;
  return {
    read: (month, piece) => {
      const name = nameOf(month, piece);
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
    },
    forget: (month, piece) => void pieces.delete(nameOf(month, piece)),
  };
}

function fileOf(folder: string | null, { file }: LeftMonth): string {
  if (folder === null) throw new NoFolder();
  return join(folder, file);
}

class NoFolder extends Error {}

async function readPiece(file: string, month: LeftMonth, piece: number): Promise<readonly string[]> {
  const from = month.pieces[piece] ?? 0;
  const to = month.pieces[piece + 1] ?? month.bytes;
  const handle = await open(file, 'r');
  try {
    const packed = Buffer.alloc(to - from);
    await handle.read(packed, 0, packed.length, from);
    return (await unpack(packed, { maxOutputLength: pieceMost })).toString('utf8').split('\n');
  } finally {
    await handle.close();
  }
}

/** The text that the hash covers, of a line of the file; null where it is no entry. */
export function bodyOf(line: string): string | null {
  try {
    return draftText(JSON.parse(line) as Entry).body; // what is none has another hash
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
  if (isUnpackers(error)) return otherFile(folder, month);
  return new MonthAway(month, `${month.file} in ${folder} cannot be read (${message})`);
}

/** A code of a file system says that a file cannot be read; one of the unpacker, or none, that it is not what was written. */
function isUnpackers(error: unknown): boolean {
  const { code } = error as NodeJS.ErrnoException;
  return code === undefined || code.startsWith('Z_') || code === 'ERR_BUFFER_TOO_LARGE';
}
