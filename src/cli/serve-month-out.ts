// `reelward serve month-out` and `month-in`: the texts of a month leave the store for the month's file, and come back out of it. Never by itself,
// never while a server runs, and only what the file gives back to the last character.

import { closeSync, fsyncSync, openSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { FOLD_VERSION } from '../../shared/floor/fold-version.ts';
import { type Entry, entryId } from '../../shared/log/entry.ts';
import { hashOf } from '../server/keys.ts';
import { stayingKinds } from '../server/people/staying.ts';
import { StoreRefused } from '../server/stores/migrate.ts';
import type { TextPlace } from '../server/stores/month-store.ts';
import { bodyOf } from '../server/stores/month-texts.ts';
import { findMonth } from '../server/stores/months.ts';
import { openPresentStore, type StoreChoice } from '../server/stores/open.ts';
import { packedMost } from '../server/stores/packed.ts';
import { plantOf } from '../server/stores/plant-name.ts';
import type { Store } from '../server/stores/store.ts';
import { type CommandIo, NotUnderstood } from './command.ts';
import { piecesIn } from './month-pieces.ts';
import { faultOfMonth, type Month, monthFileName, readMonth, rowsOf } from './serve-month.ts';

const MEGABYTE = 1_000_000;

/** Where the store is, whose it is by whoever asks, and where the month's file lies. */
export interface MonthCall {
  readonly place: StoreChoice;
  readonly plant: string | null;
}

/** Lets the texts of a month, as `2026-03`, leave for its file. Throws `StoreRefused` where anything speaks against it; then nothing was changed. */
export async function letMonthLeave(
  month: string,
  { place, plant }: MonthCall,
  io: CommandIo,
): Promise<number> {
  const span = readMonth(month, 'month-out');
  const file = findFile(month, place);
  const store = await openPresentStore(place);
  try {
    await plantOf(store, plant);
    const places = await findMonth(store, span);
    if (!places) throw new StoreRefused(`month-out: ${month} is not over in this log`);
    if ((await store.monthsLeft()).some((left) => left.month === month))
      throw new StoreRefused(`month-out: the texts of ${month} have left the store already`);
    await refuseUncovered(store, month, places.untilPos);
    toDisk(file, place);
    const wrong = await faultOfMonth(file, { store, places }, io).catch((error: unknown) => {
      if (error instanceof NotUnderstood) return error.message;
      throw error;
    });
    if (wrong !== null) throw new StoreRefused(`month-out: ${file} is not what the store holds (${wrong})`);
    // What is held against the store from here on is what was read just now, and no later state of the file.
    const bytes = readFileSync(file);
    const { pieces, leaving } = await placesIn(bytes, { store, places }, file);
    const before = (await store.measure()).bytes;
    const sha256 = hashOf(bytes);
    await store.letTextsLeave(
      {
        month,
        ...places,
        file: monthFileName(month),
        bytes: bytes.length,
        sha256,
        pieces,
        texts: leaving.length,
        leftMs: place.nowMs(),
      },
      leaving,
    );
    await giveBack(store, io);
    const after = (await store.measure()).bytes;
    const count = places.untilPos - places.afterPos;
    io.stderr(
      `${leaving.length} of ${count} texts of ${month} left the store for ${file} (SHA-256 ${sha256}); it has ${inMegabytes(after)} now, and had ${inMegabytes(before)}\n` +
        'That file holds the only copy of them: keep others on other disks. Every server of this plant needs "months" in its settings from now on\n',
    );
    return 0;
  } finally {
    await store.close();
  }
}

/** Puts the texts of a month back into the store; the file stays as it is. */
export async function bringMonthBack(
  month: string,
  { place, plant }: MonthCall,
  io: CommandIo,
): Promise<number> {
  readMonth(month, 'month-in');
  const store = await openPresentStore(place);
  try {
    await plantOf(store, plant);
    const count = await store.bringTextsBack(month);
    io.stderr(`${count} texts of ${month} are in the store again, each held against its hash\n`);
    return 0;
  } finally {
    await store.close();
  }
}

function inMegabytes(bytes: number): string {
  return `${(bytes / MEGABYTE).toFixed(1)} MB`;
}

/** Room that is not given back is used again by what comes in. */
async function giveBack(store: Store, io: CommandIo): Promise<void> {
  await store.shrink().catch((error: Error) => {
    io.stderr(
      `The room was not given back to the disk, and is used again by what comes in: ${error.message}\n`,
    );
  });
}

function findFile(month: string, { months = null, folder, database }: StoreChoice): string {
  if (months === null)
    throw new NotUnderstood('month-out: name the folder that the month’s file lies in with --months');
  const file = join(months, monthFileName(month));
  if (!statSync(file, { throwIfNoEntry: false })?.isFile())
    throw new StoreRefused(`month-out: ${file} is not there; write it first with serve month`);
  if (database === null && realpathSync(file).startsWith(`${realpathSync(folder)}${sep}`))
    throw new StoreRefused(
      `month-out: ${file} lies in the data folder, and would be lost with it: move it to another disk, and name that folder with --months`,
    );
  return file;
}

/** A tablet that begins anew, or is of a new version, is to find a state and not only the log. */
async function refuseUncovered(store: Store, month: string, untilPos: number): Promise<void> {
  const fold = `floor-${FOLD_VERSION}`;
  const kept = await store.snapshotsKept();
  const isCovered = kept.some(
    (one) => (one.fold === fold || one.fold.startsWith(`${fold}-`)) && one.pos >= untilPos,
  );
  if (isCovered) return;
  throw new StoreRefused(
    `month-out: no tablet of this version has handed the server a state that covers ${month}: let one sync with the server, and ask again`,
  );
}

/** What was written may still be in memory alone. */
function toDisk(file: string, { months = null }: StoreChoice): void {
  for (const path of [file, months ?? file]) {
    const handle = openSync(path, 'r');
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  }
}

interface Found {
  readonly piece: number;
  readonly line: number;
  /** SHA-256 of the text as the line gives it back (hex). */
  readonly hash: string;
}

/** Where each text lies that leaves. */
async function placesIn(
  bytes: Buffer,
  { store, places }: Month,
  file: string,
): Promise<{ readonly pieces: readonly number[]; readonly leaving: readonly TextPlace[] }> {
  const pieces: number[] = [];
  const found = new Map<string, Found>();
  for (const piece of piecesIn(bytes)) {
    if (!piece)
      throw new StoreRefused(
        `month-out: ${file} was written in one piece, as by a version before this one: move it away, and write it anew with serve month`,
      );
    for (const [line, text] of piece.lines.entries()) {
      const body = bodyOf(text);
      if (body === null) continue;
      found.set(entryId(JSON.parse(text) as Entry), {
        piece: pieces.length,
        line,
        hash: hashOf(body),
      });
    }
    pieces.push(piece.from);
  }
  const leaving: TextPlace[] = [];
  for await (const { pos, hash, body, seq, ...row } of rowsOf(places, store.sealedPage)) {
    if (typeof body !== 'string') throw body;
    const mayLeave =
      seq > 1 && body.length <= packedMost && !stayingKinds.has((JSON.parse(body) as Entry).kind);
    if (!mayLeave) continue;
    const id = entryId({ ...row, seq });
    const there = found.get(id);
    // To the last character, whatever hash the line names.
    if (there?.hash !== hash)
      throw new StoreRefused(`month-out: ${file} does not give back the text of ${id}`);
    leaving.push({ pos, hash, piece: there.piece, line: there.line });
  }
  return { pieces, leaving };
}
