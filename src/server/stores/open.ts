// Which store a server uses, from its settings.

import { openPostgres } from './postgres/open.ts';
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
export function openStore(choice: StoreChoice): Promise<Store> {
  const { folder, database, nowMs, onFault } = choice;
  if (database === null) return openSqlite({ folder, nowMs });
  return openPostgres({ url: database, folder, nowMs, ...(onFault ? { onFault } : {}) });
}
