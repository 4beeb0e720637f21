// Who is known: the people that the log names, folded by a function that is handed in, kept up with the log by position.

import type { Entry } from '../../../shared/log/entry.ts';
import type { KnownPerson, PeopleFold } from '../settings.ts';
import type { Store } from '../stores/store.ts';

export interface PeopleBook {
  /** The people as of the newest entry. */
  readonly people: () => Promise<ReadonlyMap<string, KnownPerson>>;
}

/** Reads only what is new since the last call. */
export function createPeopleBook(store: Pick<Store, 'ofKinds'>, fold: PeopleFold): PeopleBook {
  const people = new Map<string, KnownPerson>();
  let readTo = 0;
  let reading: Promise<void> | null = null;

  const catchUp = async () => {
    for (const stored of await store.ofKinds(fold.kinds, readTo)) {
      fold.fold(people, JSON.parse(stored.text) as Entry); // the store holds checked entries only
      readTo = stored.pos;
    }
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
