// One server process for one data folder. The lock is the operating system's, held through an open SQLite transaction, so
// that a killed process leaves none behind; a file with a process number in it was refused, since it does.

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';

/** Takes the folder; null where another process holds it. Returns the release. */
export function lockFolder(folder: string): (() => void) | null {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const held = new Database(join(folder, 'lock.sqlite'), { timeout: 0 });
  try {
    held.exec('begin exclusive');
  } catch (error) {
    held.close();
    if ((error as { code?: string }).code === 'SQLITE_BUSY') return null;
    throw error;
  }
  return () => held.close();
}
