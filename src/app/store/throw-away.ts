// Throws a passing store away, whoever left it behind: its log and its cache. What is not there is no failure.

import { CacheDatabase, LogDatabase } from './database.ts';

/** Deletes the databases of a store by its name. The plant's own log has no name and cannot be deleted here. */
export async function throwAwayStore(name: string): Promise<void> {
  await Promise.all([new LogDatabase(name).delete(), new CacheDatabase(`${name}-cache`).delete()]);
}
