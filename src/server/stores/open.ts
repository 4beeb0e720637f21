// Which store a server uses, from its settings.

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type Migrated, StoreRefused } from './migrate.ts';
import { logFile, openSqlite } from './sqlite/open.ts';
import type { Step } from './step.ts';
import type { Store } from './store.ts';

export interface StoreChoice {
  readonly folder: string;
  /** A PostgreSQL address, or null for the embedded store in the folder. */
  readonly database: string | null;
  /** The folder where the files of months lie whose texts left the store; absent or null where nobody said. */
  readonly months?: string | null;
  readonly nowMs: () => number;
  readonly onFault?: (error: Error) => void;
  /** What a process that stays does: servers must be alone with others of their kind, as no backup may be put in under one. A data folder has its own lock. Absent for an act. */
  readonly role?: 'server' | 'trace';
  /** Told where the store's schema was brought forward. */
  readonly onMigrated?: (migrated: Migrated) => void;
  /** Told where the log got another name, as the database was put back to an earlier moment (`lost`) or may have been (`unknown`). */
  readonly onPutBack?: (met: 'lost' | 'unknown') => void;
  /** The caller has made sure that no server runs on the store. */
  readonly isAlone?: boolean;
  /** The schema's steps; a test hands in its own. */
  readonly steps?: readonly Step[];
}

/** Opens the store that the settings name. */
export async function openStore(choice: StoreChoice): Promise<Store> {
  const { folder, database, nowMs, onFault, onMigrated, onPutBack, role, isAlone, steps } = choice;
  const { months = null } = choice;
  const told = { months, ...(onMigrated ? { onMigrated } : {}), ...(steps ? { steps } : {}) };
  // A server has its folder's lock before it opens.
  if (database === null)
    return openSqlite({ folder, nowMs, isAlone: isAlone === true || role === 'server', ...told });
  // Loaded when wanted only: a server with the embedded store need not hold the other's driver.
  const { openPostgres } = await import('./postgres/open.ts');
  return openPostgres({
    url: database,
    folder,
    nowMs,
    ...(role ? { role } : {}),
    ...(isAlone ? { isAlone } : {}),
    ...(onPutBack ? { onPutBack } : {}),
    ...told,
    ...(onFault ? { onFault } : {}),
  });
}

/** Opens the store that the settings name where there is one; an act on a store does not make it. */
export async function openPresentStore(choice: StoreChoice): Promise<Store> {
  const { folder, database } = choice;
  if (database === null) {
    if (!existsSync(join(folder, logFile)))
      throw new StoreRefused(`--data: no store in ${folder}; name the data folder of the server`);
    return openStore(choice);
  }
  const { holdsStore } = await import('./postgres/open.ts');
  if (!(await holdsStore(database)))
    throw new StoreRefused('--database: no store in this database; name the one that the server uses');
  return openStore(choice);
}
