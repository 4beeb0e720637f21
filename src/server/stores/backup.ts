// A backup that can be trusted: written, then read back from its first entry to its last. One that nobody has read is found to be none
// on the day that it is wanted.

import { readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { StoreRefused } from './migrate.ts';
import { readThrough } from './read-through.ts';
import { openCopy } from './sqlite/open.ts';
import type { Store } from './store.ts';
import { troubleOf } from './trouble.ts';

/** The row of `meta` that says when the last backup was read back, ms since 1970. */
export const backupMade = 'backup_made_ms';

/** Names of backups in a folder; they sort by their moment. */
const named = /^reelward-\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2}-\d{3}Z\.sqlite$/;

/** What was written. */
export interface Backup {
  readonly file: string;
  readonly entries: number;
  /** Older backups that were taken away. */
  readonly removed: readonly string[];
  /** What kept texts that left for months' files from being read, each cause once. Where there is any, nobody knows whether those texts are left anywhere: it counts as no backup. */
  readonly away: readonly string[];
}

/**
 * Writes a backup to `place`, a new file or a folder that is there, and reads it back. `keep`: how many backups stay in the folder, the
 * newest; null for all. Throws `StoreRefused` where nothing was written, and where what was written is not a whole log; then none is taken away, as where `away` is not empty.
 */
export async function makeBackup(
  store: Store,
  place: string,
  {
    keep,
    nowMs,
    months,
  }: { readonly keep: number | null; readonly nowMs: number; readonly months: string | null },
): Promise<Backup> {
  const isFolder = statSync(place, { throwIfNoEntry: false })?.isDirectory() ?? false;
  if (keep !== null && !isFolder)
    throw new StoreRefused(`--keep: expected a folder that is there to keep backups in, found ${place}`);
  const moment = new Date(nowMs).toISOString().replaceAll(/[:.]/g, '-');
  const file = isFolder ? join(place, `reelward-${moment}.sqlite`) : place;
  try {
    await store.backupTo(file);
  } catch (error) {
    const why =
      troubleOf(error) === 'disk-full'
        ? `no room for it at ${place}; make room there, or name another disk`
        : (error as Error).message;
    throw new StoreRefused(`backup: ${why}`);
  }
  const { entries, faults, away } = await readBack(file, months);
  if (faults.length > 0) {
    throw new StoreRefused(
      `backup: ${file} was written but is no whole log (${faults.join('; ')}); look after the store before you trust it`,
    );
  }
  if (away.length > 0) return { file, entries, away, removed: [] };
  await store.writeMeta(backupMade, String(nowMs));
  return { file, entries, away, removed: keep === null ? [] : thin(place, keep) };
}

async function readBack(
  file: string,
  months: string | null,
): Promise<{
  readonly entries: number;
  readonly faults: readonly string[];
  readonly away: readonly string[];
}> {
  const copy = openCopy(file, months);
  const faults: string[] = [];
  const away = new Set<string>();
  try {
    const entries = await readThrough(copy, (fault, where) => {
      if (fault === 'month-away') away.add(where);
      else faults.push(where);
    });
    return { entries, away: [...away], faults: [...faults.slice(0, 3), ...(await copy.quickCheck())] };
  } finally {
    await copy.close();
  }
}

function thin(folder: string, keep: number): readonly string[] {
  const all = readdirSync(folder).filter((name) => named.test(name));
  const old = all.sort().slice(0, Math.max(0, all.length - keep));
  for (const name of old) rmSync(join(folder, name));
  return old;
}
