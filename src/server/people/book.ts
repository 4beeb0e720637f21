// Who is known: the people that the log names, folded by a function that is handed in, kept up with the log by position.
// Entries are folded in the log's order and not in that of their arrival, so that server and tablets know the same people; of the few
// entries that name people all are kept, and folded anew where one comes late.

import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import type { KnownPerson, PeopleFold } from '../settings.ts';
import type { Store } from '../stores/store.ts';

export interface PeopleBook {
  /** The people as of the newest entry. */
  readonly people: () => Promise<ReadonlyMap<string, KnownPerson>>;
}

/** Reads only what is new since the last call. */
export function createPeopleBook(store: Pick<Store, 'ofKinds'>, fold: PeopleFold): PeopleBook {
  let people = new Map<string, KnownPerson>();
  const entries: Entry[] = [];
  let readTo = 0;
  let reading: Promise<void> | null = null;

  const catchUp = async () => {
    let isLate = false;
    for (const stored of await store.ofKinds(fold.kinds, readTo)) {
      const entry = JSON.parse(stored.text) as Entry; // the store holds checked entries only
      const newest = entries.at(-1);
      if (newest !== undefined && compareEntries(entry, newest) < 0) isLate = true;
      entries.push(entry);
      if (!isLate) fold.fold(people, entry);
      readTo = stored.pos;
    }
    if (!isLate) return;
    entries.sort(compareEntries);
    people = new Map();
    for (const entry of entries) fold.fold(people, entry);
  };
  return {
    people: async () => {
      reading ??= catchUp().finally(() => {
        reading = null;
      });
      await reading;
      return people;
    },
  };
}
