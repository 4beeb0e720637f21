// What is searched: the floor as it stands, and the newest entries of this tablet's log, made ready in parts so that the page stays alive.

import { type Entry, entryId } from '../../../../shared/log/entry.ts';
import { entryThings } from '../../../../shared/search/entry-things.ts';
import { floorThings, type Thing, type ThingKind } from '../../../../shared/search/floor-things.ts';
import { indexTexts, type TextIndex } from '../../../../shared/search/index-of-texts.ts';
import type { App } from '../../app.ts';

/** Entries searched, the newest: older ones are found by time and person in the log, and by the server's trace. */
export const MOST_ENTRIES = 20_000;
/** Entries made ready at once. */
const PART = 2000;
/** The floor is made ready anew no more often than this while it changes. */
const ANEW_MS = 5000;

/** What is ready to be searched. */
export interface Ready {
  readonly indexes: readonly TextIndex<ThingKind, Thing>[];
  readonly entries: ReadonlyMap<string, Entry>;
  /** True while older entries are still being read. */
  readonly isReading: boolean;
  /** The oldest entry that is searched; null while none is. */
  readonly oldest: Entry | null;
  /** True where that is the oldest of the log. */
  readonly isWhole: boolean;
}

/** Makes ready, and tells each time that more is; answers how to stop. */
export function startReading(app: Pick<App, 'store' | 'clock'>, tell: (ready: Ready) => void): () => void {
  let isOver = false;
  let floor = indexTexts(floorThings(app.store.floor()));
  let madeMs = app.clock.nowMs();
  let fresh: readonly Entry[] = [];
  const parts: TextIndex<ThingKind, Thing>[] = [];
  const entries = new Map<string, Entry>();
  let end: Pick<Ready, 'isReading' | 'oldest' | 'isWhole'> = {
    isReading: true,
    oldest: null,
    isWhole: false,
  };
  const make = (some: readonly Entry[]) => {
    for (const entry of some) entries.set(entryId(entry), entry);
    return indexTexts(entryThings(some, app.store.floor()));
  };
  const say = () => {
    if (!isOver)
      tell({ indexes: [floor, ...(fresh.length > 0 ? [make(fresh)] : []), ...parts], entries, ...end });
  };
  const stop = app.store.onChange((added) => {
    const isNewer = (entry: Entry) => !entries.has(entryId(entry));
    fresh = [...added.filter(isNewer).reverse(), ...fresh];
    if (Math.abs(app.clock.nowMs() - madeMs) >= ANEW_MS) {
      floor = indexTexts(floorThings(app.store.floor()));
      madeMs = app.clock.nowMs();
    }
    say();
  });
  const read = async () => {
    for (let before: Entry | undefined; !isOver; ) {
      const some = await app.store.newest(PART, before);
      const unknown = some.filter((entry) => !entries.has(entryId(entry)));
      if (unknown.length > 0) parts.push(make(unknown));
      before = some.at(-1);
      const isWhole = some.length < PART;
      const isReading = !isWhole && entries.size < MOST_ENTRIES;
      end = { isReading, isWhole, oldest: before ?? end.oldest };
      say();
      if (!isReading) return;
      await new Promise((resolve) => setTimeout(resolve));
    }
  };
  say();
  read().catch(() => undefined); // a closed database is told by the fault screen
  return () => {
    isOver = true;
    stop();
  };
}
