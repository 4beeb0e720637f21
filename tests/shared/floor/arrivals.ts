// In which orders the entries of several tablets reach one, and the floor that it comes to.

import fc from 'fast-check';
import { createReplica, foldIn } from '../../../shared/floor/replica.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';

/** How the entries reach one tablet: a mixed order in pages, with what was dropped and repeated coming again at the end. */
export function arrivals(entries: readonly Entry[]): fc.Arbitrary<readonly (readonly Entry[])[]> {
  const mixed = fc.shuffledSubarray([...entries], { minLength: entries.length, maxLength: entries.length });
  const lost = fc.array(fc.boolean(), { minLength: entries.length, maxLength: entries.length });
  return fc.tuple(mixed, lost, fc.integer({ min: 1, max: 9 })).map(([order, drops, page]) => {
    const first = order.filter((_, at) => drops[at] !== true);
    const again = [...order];
    const sent = [...first, ...again];
    return Array.from({ length: Math.ceil(sent.length / page) }, (_, at) =>
      sent.slice(at * page, (at + 1) * page),
    );
  });
}

/** A tablet as its store does it: known entries are left out, and an entry too old for its copies folds all anew. */
export function receive(pages: readonly (readonly Entry[])[]): FloorState {
  const held = new Map<string, Entry>();
  let replica = createReplica();
  for (const page of pages) {
    const fresh = page.filter((entry, at) => {
      const id = entryId(entry);
      return !held.has(id) && page.findIndex((other) => entryId(other) === id) === at;
    });
    for (const entry of fresh) held.set(entryId(entry), entry);
    if (foldIn(replica, fresh)) continue;
    replica = createReplica();
    foldIn(replica, [...held.values()]);
  }
  return replica.state;
}

/** The state as text, maps by their keys: two floors are the same where their texts are. */
export function textOf(state: FloorState): string {
  return JSON.stringify(state, (_, value: unknown) => {
    if (value instanceof Map) {
      return [...value].sort((a, b) => (String(a[0]) < String(b[0]) ? -1 : 1));
    }
    return value instanceof Set ? [...value].sort() : value;
  });
}
