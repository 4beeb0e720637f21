// How two copies of the log become one: the union by name. The same name with another hash is kept apart and told,
// since one of the two writers is wrong or lying; which one stays is the same on every machine.

import { type Entry, entryId } from './entry.ts';
import { compareEntries } from './order.ts';

/** The union of logs and what contradicts it. */
export interface MergedLog {
  /** In folding order. */
  readonly entries: readonly Entry[];
  /** Entries whose name was taken by another entry. */
  readonly quarantined: readonly Entry[];
}

/** Merges logs: the same entry twice is one; of two that contradict, the smaller hash stays, whatever the order of the inputs. */
export function mergeLogs(...logs: readonly (readonly Entry[])[]): MergedLog {
  const byId = new Map<string, Entry>();
  const quarantined: Entry[] = [];
  for (const log of logs) {
    for (const entry of log) {
      const id = entryId(entry);
      const there = byId.get(id);
      if (!there) byId.set(id, entry);
      else if (there.hash < entry.hash) quarantined.push(entry);
      else if (there.hash > entry.hash) {
        byId.set(id, entry);
        quarantined.push(there);
      }
    }
  }
  return { entries: [...byId.values()].sort(compareEntries), quarantined };
}
