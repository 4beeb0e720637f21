// Reads a log from its first entry to its last: each text against its hash, each running hash against the one before. Of a server's own
// store and of a backup alike.

import { hash } from 'node:crypto';
import { setImmediate as turn } from 'node:timers/promises';
import { firstRoot, nextRoot } from './append.ts';
import { MonthAway, PlaceChanged } from './month-store.ts';
import type { Store } from './store.ts';

/** What is found wrong in a log. */
export type LogFault = 'text-changed' | 'log-broken' | 'month-away';

const ROWS_AT_ONCE = 200;

/**
 * Reads the whole log; `tell` hears of each fault and where it is, and of which month. Answers how many entries were read. `isStopped`: asked between pages,
 * ends it early.
 */
export async function readThrough(
  store: Pick<Store, 'sealedPage'>,
  tell: (fault: LogFault, where: string, month?: string) => void,
  isStopped: () => boolean = () => false,
): Promise<number> {
  let [pos, root, count] = [0, firstRoot, 0];
  while (!isStopped()) {
    const rows = await store.sealedPage(pos, ROWS_AT_ONCE);
    for (const row of rows) {
      const name = `${row.tablet}/${row.epoch}/${row.seq}`;
      // Of a text that lies elsewhere the row alone is looked at; what its file holds is held against the hash as it is read.
      if (row.body instanceof MonthAway) tell('month-away', row.body.message, row.body.month);
      else if (row.body instanceof PlaceChanged) tell('text-changed', row.body.message);
      else if (hash('sha256', row.body, 'hex') !== row.hash)
        tell('text-changed', `the text of ${name} is not what its hash says`);
      root = nextRoot(root, row.hash);
      if (root !== row.root) tell('log-broken', `the log does not go on from before ${name}`);
      // Told once: from here on the log is compared with itself.
      root = row.root;
      pos = row.pos;
    }
    count += rows.length;
    await turn(); // the tablets go first
    if (rows.length < ROWS_AT_ONCE) break;
  }
  return count;
}
