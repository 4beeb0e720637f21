// Puts a backup back. Never over a store that holds entries unless that was asked for, and then a copy of it is kept.

import { existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { Kysely, SqliteDialect } from 'kysely';
import { type Filled, fillFrom } from './copy.ts';
import { lookAtStore } from './look.ts';
import { migrate, newBackupFile, StoreRefused } from './migrate.ts';
import { openStore, type StoreChoice } from './open.ts';
import { isOtherPlant } from './plant-name.ts';
import { type Present, readPlantName } from './present.ts';
import { logFile, lookInside, openCopy, openDatabase } from './sqlite/open.ts';
import type { Store } from './store.ts';
import type { Tables } from './tables.ts';

export interface RestoreOptions extends StoreChoice {
  readonly file: string;
  /** Put it over a store that holds entries. */
  readonly replace: boolean;
  /** What the store's plant is called by whoever asks; null or absent where nobody says. */
  readonly plant?: string | null;
}

/** Puts the backup in; the caller makes sure that no server runs on the store. Returns how many entries it holds, and who is let in by it. */
export async function restoreInto(
  options: RestoreOptions,
): Promise<Filled & { readonly keptAt: string | null }> {
  if (!existsSync(options.file)) throw new StoreRefused(`${options.file}: no such file`);
  const { keptAt, present } = await keepPresent(options);
  if (options.database !== null) {
    const { openPostgresDatabase } = await import('./postgres/open.ts');
    const db = openPostgresDatabase(options.database);
    try {
      return { ...(await fillFrom(options.file, db, present)), keptAt };
    } finally {
      await db.destroy();
    }
  }
  // Built beside the present file and put in its place when whole: a restore that fails half-way changes nothing.
  const fresh = join(options.folder, 'restoring.sqlite');
  removeDatabase(fresh);
  const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: openDatabase(fresh) }) });
  let filled: Filled;
  try {
    await migrate(db, 'sqlite', { backup: async () => null });
    filled = await fillFrom(options.file, db, present);
  } finally {
    await db.destroy();
  }
  const place = join(options.folder, logFile);
  removeDatabase(place);
  renameSync(fresh, place);
  return { ...filled, keptAt };
}

/** Refuses, or copies away, what is there now. Opening also makes the tables of an empty store. */
async function keepPresent(
  options: RestoreOptions,
): Promise<{ readonly keptAt: string | null; readonly present: Present }> {
  const store = (await openNewer(options)) ?? (await openStore({ ...options, isAlone: true }));
  try {
    const { pos } = await store.head();
    const present = await store.present();
    await refuseOther(options.file, present.plant ?? options.plant ?? null);
    if (pos === 0) return { keptAt: null, present };
    if (!options.replace) {
      throw new StoreRefused(
        `the store holds entries already (${pos}): add --replace to put the backup in their place`,
      );
    }
    const keptAt = newBackupFile(options.folder, 'restore', options.nowMs());
    await store.backupTo(keptAt);
    return { keptAt, present };
  } finally {
    await store.close();
  }
}

/** Refuses a backup of another plant: put in here, its log would be served to tablets of this one. */
async function refuseOther(file: string, plant: string | null): Promise<void> {
  // What is no backup is refused with its reason where it is read.
  const named = await lookInside(file, readPlantName).catch(() => null);
  if (!isOtherPlant(named, plant)) return;
  throw new StoreRefused(
    `${file}: a backup of “${named}”, and this is the store of “${plant}”: name that plant’s own store with --data or --database; a plant that was renamed since is called as before first, with serve rename`,
  );
}

/** A store in the folder that a newer program brought forward, read as it is: the way back to this program leads over it. */
async function openNewer({ folder, database }: RestoreOptions): Promise<Store | null> {
  const found = database === null ? await lookAtStore({ folder, database }) : null;
  return found !== null && found.schema > found.known ? openCopy(join(folder, logFile), null) : null;
}

function removeDatabase(file: string): void {
  for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
}
