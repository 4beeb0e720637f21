// Rows of the log as the filters want them, newest first.

import { DAY_MS } from '../../../../shared/kit/moment.ts';
import type { Entry } from '../../../../shared/log/entry.ts';
import { filterToTest } from '../../../../shared/log/export.ts';
import type { useApp } from '../../app.ts';
import { type LogFilters, toExportFilter } from './model.ts';

/** Entries read at once while looking for rows that fit. */
const CHUNK = 400;

/** Looks backwards through the log until enough rows fit or the span's start is passed. */
export async function readRows(
  app: ReturnType<typeof useApp>,
  filters: LogFilters,
  wanted: number,
): Promise<{ rows: readonly Entry[]; more: boolean }> {
  const filter = toExportFilter(filters, app.clock.nowMs());
  const isKept = filterToTest(filter);
  const fromMs = filter.from === undefined ? null : Date.parse(filter.from);
  const rows: Entry[] = [];
  let before: Entry | undefined;
  for (;;) {
    const chunk = await app.store.newest(CHUNK, before);
    for (const entry of chunk) if (isKept(entry)) rows.push(entry);
    before = chunk.at(-1);
    if (rows.length > wanted) return { rows: rows.slice(0, wanted), more: true };
    if (!before || chunk.length < CHUNK) return { rows, more: false };
    // The order is the hybrid clock's, which never lies behind the wall clock by more than a clock set back.
    if (fromMs !== null && before.hlc.ms < fromMs - DAY_MS) return { rows, more: false };
  }
}
