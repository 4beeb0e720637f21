// The records of an export, read from the store page by page in folding order: memory does not grow with the log.
// What is appended meanwhile is left for the next export, so that the file is the log as of one moment.

import { setImmediate } from 'node:timers/promises';
import { takeName } from '../../../shared/floor/people.ts';
import { withoutSecrets } from '../../../shared/floor/secrets.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { createExporter, type ExportFilter, type ExportItem } from '../../../shared/log/export.ts';
import type { ExportRequest } from '../../../shared/wire/messages.ts';
import type { Store } from '../stores/store.ts';

const ENTRIES_AT_ONCE = 100;

/** The request as the log's filter. */
export function requestToFilter(request: ExportRequest): ExportFilter {
  const { from, to, line } = request;
  return {
    ...(from === null ? {} : { from }),
    ...(to === null ? {} : { to }),
    ...(line === null ? {} : { line }),
  };
}

/** What is told while the records are read, and where they begin. */
export interface ItemListeners {
  /** Grows by the people that the log has named so far. */
  readonly names?: Map<string, string>;
  /** An entry is among the records; `pos`: its place in the log, from 1. */
  readonly onEntry?: (entry: Entry, pos: number) => void;
  /** Entries up to this place are left out; absent for none. */
  readonly afterPos?: number;
}

/** Yields the records in small lots. */
export async function* readItems(
  store: Pick<Store, 'orderedPage'>,
  filter: ExportFilter,
  untilPos: number,
  { names = new Map(), onEntry, afterPos = 0 }: ItemListeners = {},
): AsyncGenerator<readonly ExportItem[]> {
  const exporter = createExporter(filter);
  let last: Entry | null = null;
  for (;;) {
    const rows = await store.orderedPage(last, ENTRIES_AT_ONCE, untilPos, afterPos);
    if (rows.length === 0) break;
    const items: ExportItem[] = [];
    for (const row of rows) {
      last = JSON.parse(row.text) as Entry; // the store holds checked entries only
      takeName(names, last);
      const { tablet, epoch, seq, hash } = last;
      const isBefore = row.pos <= afterPos;
      const taken = exporter.take(
        isBefore ? { omitted: { tablet, epoch, fromSeq: seq, toSeq: seq, hash } } : last,
      );
      items.push(...taken.map(withoutSecrets));
      if (taken.at(-1) === last) onEntry?.(last, row.pos);
    }
    yield items;
    // The embedded store answers at once: others get their turn here.
    await setImmediate();
  }
  yield exporter.end();
}
