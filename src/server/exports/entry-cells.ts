// How wide a workbook of the log has to be: known before its first row is written.

import type { Entry } from '../../../shared/log/entry.ts';
import { entryCellsOf } from '../../../shared/log/export-rows.ts';
import type { Store } from '../stores/store.ts';

/** A record of at most this many characters fits one cell, even if every sign of it is escaped. */
const ONE_CELL = 5_000;

/** How many cells the longest record up to a position takes. */
export async function entryCellsOfLog(store: Pick<Store, 'longPage'>, untilPos: number): Promise<number> {
  let cells = 1;
  for (let pos = 0; ; ) {
    const rows = await store.longPage(pos, 20, ONE_CELL);
    for (const row of rows) {
      if (row.pos > untilPos) return cells;
      cells = Math.max(cells, entryCellsOf(JSON.parse(row.text) as Entry)); // the store holds checked entries only
      pos = row.pos;
    }
    if (rows.length === 0) return cells;
  }
}
