// `reelward serve month`: the entries of a month that is over as one packed file, which `log verify` and `trace` read. It is read back and held against
// the store before it gets its name. Nothing is taken out of the store by it: that is an act of its own (`serve-month-out.ts`).

import { createWriteStream, existsSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { lacksSecrets } from '../../shared/floor/secrets.ts';
import { entryId } from '../../shared/log/entry.ts';
import { verifyExport } from '../../shared/log/export-verify.ts';
import { exportBytes } from '../server/http/export-routes.ts';
import { openServerKey } from '../server/keys.ts';
import { createTicketDesk } from '../server/people/tickets.ts';
import { StoreRefused } from '../server/stores/migrate.ts';
import { findMonth, type LogStretch, monthSpan } from '../server/stores/months.ts';
import { openPresentStore, type StoreChoice } from '../server/stores/open.ts';
import { plantOf } from '../server/stores/plant-name.ts';
import type { Store } from '../server/stores/store.ts';
import { createHeadSigner } from '../server/tree-heads.ts';
import { createWitnesses } from '../server/witnesses.ts';
import { type CommandIo, NotUnderstood } from './command.ts';
import { readLogFile } from './log-file.ts';
import { checkTree, toRoot } from './log-tree.ts';
import { packPieces } from './month-pieces.ts';
import { keysInExport } from './plant-keys.ts';

const ROWS_AT_ONCE = 1_000;

/** What a month's file is called. */
export function monthFileName(month: string): string {
  return `reelward-${month}.ndjson.gz`;
}

/** The first moment of a month and of the next; throws `NotUnderstood` where it is none. `name`: of the argument. */
export function readMonth(month: string, name: string): NonNullable<ReturnType<typeof monthSpan>> {
  const span = monthSpan(month);
  if (!span) throw new NotUnderstood(`${name}: expected a month such as 2026-03, found ${month}`);
  return span;
}

/** Writes the month to a new file in the folder. `month`: as `2026-03`; the last that is over where it is not given. */
export async function writeMonth(
  folder: string,
  {
    month,
    place,
    plant,
  }: { readonly month: string | undefined; readonly place: StoreChoice; readonly plant: string | null },
  io: CommandIo,
): Promise<number> {
  const wanted = month ?? monthBefore(place.nowMs());
  const span = readMonth(wanted, '--month');
  if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory())
    throw new StoreRefused(`month: expected a folder that is there, found ${folder}`);
  const file = join(folder, monthFileName(wanted));
  if (existsSync(file)) throw new StoreRefused(`month: ${file} exists already: it is left as it is`);
  const store = await openPresentStore(place);
  try {
    const named = await plantOf(store, plant);
    const places = await findMonth(store, span);
    if (!places)
      throw new StoreRefused(`month: ${wanted} is not over in this log: nothing has come in after it yet`);
    if (places.untilPos === places.afterPos)
      throw new StoreRefused(`month: nothing came in during ${wanted}: there is nothing to write`);
    const part = `${file}.part`;
    try {
      rmSync(part, { force: true });
      await write(part, { store, places, plant: named, nowMs: place.nowMs });
      const wrong = await faultOfMonth(part, { store, places }, io);
      if (wrong !== null)
        throw new StoreRefused(
          `month: what was written is not what the store holds (${wrong}); it was taken away: look after the store`,
        );
      renameSync(part, file);
    } catch (error) {
      rmSync(part, { force: true });
      throw inWords(error, folder);
    }
    io.stderr(
      `${places.untilPos - places.afterPos} entries of ${wanted} written to ${file}, read back and found as they are in the store, which keeps them too\n`,
    );
    return 0;
  } finally {
    await store.close();
  }
}

/** What keeps the file from the folder; what is wrong with the store is told elsewhere. */
function inWords(error: unknown, folder: string): unknown {
  const { code, syscall } = error as NodeJS.ErrnoException;
  if ((code === 'ENOSPC' || code === 'EDQUOT') && syscall !== undefined)
    return new StoreRefused(`month: no room for it in ${folder}; make room there, or name another folder`);
  if ((code === 'EACCES' || code === 'EPERM' || code === 'EROFS') && syscall !== undefined)
    return new StoreRefused(`month: this user may not write in ${folder}; name another folder`);
  return error;
}

function monthBefore(nowMs: number): string {
  const now = new Date(nowMs);
  return new Date(Date.UTC(now.getUTCFullYear(), now.getUTCMonth() - 1)).toISOString().slice(0, 7);
}

/** A month in the store. */
export interface Month {
  readonly store: Store;
  readonly places: LogStretch;
}

async function write(
  file: string,
  { store, places, plant, nowMs }: Month & { readonly plant: string; readonly nowMs: () => number },
): Promise<void> {
  const key = await openServerKey(store);
  const heads = createHeadSigner(key.plant);
  const bytes = await exportBytes(
    { format: 'json', from: null, to: null, line: null },
    {
      store,
      key,
      heads,
      plant,
      nowMs,
      serverEpoch: await store.serverEpoch(),
      witnesses: createWitnesses({ store, heads, origin: key.plant.ed25519.name, nowMs }),
      tickets: createTicketDesk({ store, key, plant }),
    },
    places,
  );
  await pipeline(
    Readable.from(packPieces(bytes), { objectMode: false }),
    createWriteStream(file, { flags: 'wx', mode: 0o600, flush: true }),
  );
}

/**
 * Reads the file as whoever gets it would, then each entry of the month in the store: it must be in the file, by its hash, and the head in the file that of this
 * log's tree. Answers what is wrong; null where nothing is.
 */
export async function faultOfMonth(
  file: string,
  { store, places }: Month,
  io: CommandIo,
): Promise<string | null> {
  const reading = await readLogFile(file, io);
  const { plant, fault } = keysInExport(reading.proofs ?? []);
  const report = verifyExport(reading, { lacksFields: lacksSecrets });
  const { tree, fault: treeFault } = checkTree(reading, plant?.key ?? null, null);
  const wrong =
    fault ??
    treeFault ??
    (report.ok ? null : `entry ${report.firstBroken?.id} does not hold`) ??
    (tree === null ? 'it has no signed head: the log has a hole' : null);
  if (wrong !== null || tree === null) return wrong;
  const [root] = await store.treeHashes([{ from: 0, to: tree.size }]).catch(() => []);
  if (toRoot(root) !== tree.root) return 'its head is of another log';
  const hashes = new Map(reading.entries.map((entry) => [entryId(entry), entry.hash]));
  if (hashes.size !== places.untilPos - places.afterPos) return 'another number of entries';
  let missing = 0;
  for await (const row of rowsOf(places, store.signedPage))
    if (hashes.get(entryId(row)) !== row.hash) missing += 1;
  return missing === 0 ? null : `${missing} entries differ`;
}

/** The rows of a month, in the log's order. `page`: the store's, of what is wanted of each. Throws where one is not there. */
export async function* rowsOf<R extends { readonly pos: number }>(
  places: LogStretch,
  page: (pos: number, limit: number) => Promise<readonly R[]>,
): AsyncGenerator<R> {
  for (let pos = places.afterPos; pos < places.untilPos; ) {
    const rows = await page(pos, Math.min(ROWS_AT_ONCE, places.untilPos - pos));
    if (rows.length === 0) throw new StoreRefused(`month: the store lacks entries after place ${pos}`);
    yield* rows;
    pos = rows.at(-1)?.pos ?? places.untilPos;
  }
}
