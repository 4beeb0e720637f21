// Which store a server uses, from its settings.

import { openSqlite } from './sqlite/open.ts';
import type { Store } from './store.ts';

export interface StoreChoice {
  readonly folder: string;
  /** A PostgreSQL address, or null for the embedded store in the folder. */
  readonly database: string | null;
  readonly nowMs: () => number;
  readonly onFault?: (error: Error) => void;
}

/** Opens the store that the settings name. */
export async function openStore(choice: StoreChoice): Promise<Store> {
  const { folder, database, nowMs, onFault } = choice;
  if (database === null) return openSqlite({ folder, nowMs });
  // Loaded when wanted only: a server with the embedded store need not hold the other's driver.
  const { openPostgres } = await import('./postgres/open.ts');
  return openPostgres({ url: database, folder, nowMs, ...(onFault ? { onFault } : {}) });
}
