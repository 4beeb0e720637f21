// Which entries an export holds, and what it says of those left out.
// Method: entries pass one by one; of a stretch that a filter leaves out, its place in the chain and its last hash are kept, so
// that whoever checks the export can walk the chain across the gap. Refused: a new numbering, which would prove nothing.

import type { Omitted } from './chain.ts';
import { chainId, type Entry, type Json } from './entry.ts';
import { compareEntries } from './order.ts';

/** What of the log is wanted; a part that is absent does not narrow. */
export interface ExportFilter {
  /** Moments as ISO 8601 with offset, both included; compared with the entry's `at`. */
  readonly from?: string;
  readonly to?: string;
  readonly line?: string;
  readonly slot?: string;
  readonly who?: string;
  readonly verdict?: string;
  readonly kinds?: readonly string[];
}

/** In the payload of a record: the names of fields that the export leaves out, so that the text no longer is what the hash covers. */
export const leftOutName = '(left out)';

/** One record of an export: an entry, or a stretch left out on purpose. */
export type ExportItem = Entry | { readonly omitted: Omitted };

/** True for a stretch left out. */
export function isOmitted(item: ExportItem): item is { readonly omitted: Omitted } {
  return 'omitted' in item;
}

/** A fact at the top level of an entry's payload; null where the entry has none of that name. */
export function payloadFact(entry: Entry, name: string): Json {
  return Object.hasOwn(entry.payload, name) ? (entry.payload[name] ?? null) : null;
}

/** Makes the test of a filter. Throws RangeError where `from` or `to` is no moment. */
export function filterToTest(filter: ExportFilter): (entry: Entry) => boolean {
  const fromMs = momentMs(filter.from);
  const toMs = momentMs(filter.to);
  const kinds = filter.kinds === undefined ? null : new Set(filter.kinds);
  const wanted = (['line', 'slot', 'verdict'] as const).flatMap((name) =>
    filter[name] === undefined ? [] : [[name, filter[name]] as const],
  );
  return (entry) => {
    const atMs = Date.parse(entry.at);
    if (fromMs !== null && atMs < fromMs) return false;
    if (toMs !== null && atMs > toMs) return false;
    if (filter.who !== undefined && entry.who !== filter.who) return false;
    if (kinds !== null && !kinds.has(entry.kind)) return false;
    return wanted.every(([name, value]) => payloadFact(entry, name) === value);
  };
}

function momentMs(text: string | undefined): number | null {
  if (text === undefined) return null;
  const ms = Date.parse(text);
  if (Number.isNaN(ms))
    throw new RangeError(`Cannot filter as a limit must be a moment: current value is ${text}`);
  return ms;
}

/** Turns a stream of entries into the records of an export. */
export interface Exporter {
  /** The next entry (or a stretch that the source itself left out) of the log, in folding order; answers what to write now. */
  readonly take: (item: ExportItem) => readonly ExportItem[];
  /** What is still to be written after the last entry. */
  readonly end: () => readonly ExportItem[];
}

/** Makes an exporter. Memory: one record a chain. */
export function createExporter(filter: ExportFilter = {}): Exporter {
  const isKept = filterToTest(filter);
  const openByChain = new Map<string, Omitted>();

  function leaveOut(stretch: Omitted): readonly ExportItem[] {
    const id = chainId(stretch);
    const open = openByChain.get(id);
    if (open && open.toSeq + 1 === stretch.fromSeq) {
      openByChain.set(id, { ...stretch, fromSeq: open.fromSeq });
      return [];
    }
    openByChain.set(id, stretch);
    return open ? [{ omitted: open }] : [];
  }

  return {
    take: (item) => {
      if (isOmitted(item)) return leaveOut(item.omitted);
      const { tablet, epoch, seq, hash } = item;
      if (!isKept(item)) return leaveOut({ tablet, epoch, fromSeq: seq, toSeq: seq, hash });
      const open = openByChain.get(chainId(item));
      openByChain.delete(chainId(item));
      return open ? [{ omitted: open }, item] : [item];
    },
    end: () => {
      const rest = [...openByChain.values()].map((omitted) => ({ omitted }));
      openByChain.clear();
      return rest;
    },
  };
}

/** The records of an export of a whole log, in folding order. `omitted`: stretches that the log itself lacks. */
export function exportLog(
  entries: readonly Entry[],
  filter: ExportFilter = {},
  omitted: readonly Omitted[] = [],
): readonly ExportItem[] {
  const exporter = createExporter(filter);
  const items: ExportItem[] = [];
  const waiting = new Map<string, Omitted[]>();
  for (const stretch of [...omitted].sort((a, b) => b.fromSeq - a.fromSeq)) {
    const id = chainId(stretch);
    waiting.set(id, [...(waiting.get(id) ?? []), stretch]);
  }
  for (const entry of [...entries].sort(compareEntries)) {
    const ahead = waiting.get(chainId(entry)) ?? [];
    for (let next = ahead.at(-1); next && next.toSeq < entry.seq; next = ahead.at(-1)) {
      items.push(...exporter.take({ omitted: next }));
      ahead.pop();
    }
    items.push(...exporter.take(entry));
  }
  for (const ahead of waiting.values()) {
    for (const stretch of ahead.reverse()) items.push(...exporter.take({ omitted: stretch }));
  }
  return [...items, ...exporter.end()];
}
