// The database's own check of its file, on a thread of its own: it reads every page, which takes seconds for a plant's year, and
// nobody is answered meanwhile by the thread that does it.

import { createRequire } from 'node:module';
import { Worker } from 'node:worker_threads';

/** What the thread runs: plain script, since the program is one bundle. */
const script = `
const { parentPort, workerData } = require('node:worker_threads');
const Database = require(workerData.driver);
const db = new Database(workerData.file, { readonly: true });
const rows = db.pragma('quick_check(5)').map((row) => String(row.quick_check));
// First: whoever closes a database last puts its journal away, and one who only reads cannot.
db.close();
parentPort.postMessage(rows);
`;

/** What is wrong with the file, in the database's words; empty where nothing is. */
export function quickCheck(file: string): Promise<readonly string[]> {
  const driver = createRequire(import.meta.url).resolve('better-sqlite3');
  return new Promise((resolve) => {
    const worker = new Worker(script, { eval: true, workerData: { file, driver } });
    worker.once('message', (rows: readonly string[]) => resolve(rows.filter((row) => row !== 'ok')));
    // It could not even be read through.
    worker.once('error', (error: Error) => resolve([error.message]));
  });
}
