// The trace's index of the whole log on this tablet, chunk by chunk, so that the page stays alive meanwhile.

import { emptyTrace, type TraceIndex, traceEntry } from '../../../../shared/trace/stretches.ts';
import type { App } from '../../app.ts';

/** Builds the index; `tell` hears how many entries are read. */
export async function readIndex(
  app: Pick<App, 'store'>,
  tell: (entries: number) => void,
): Promise<TraceIndex> {
  const index = emptyTrace();
  let read = 0;
  await app.store.readAll(async (entries) => {
    for (const entry of entries) traceEntry(index, entry);
    read += entries.length;
    tell(read);
    await new Promise((resolve) => setTimeout(resolve));
  });
  return index;
}
