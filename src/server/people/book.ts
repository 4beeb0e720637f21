// Who is known: the people that the log names, folded by a function that is handed in, kept up with the log by position.
// Entries are folded in the log's order and not in that of their arrival, so that server and tablets know the same people; of the few
// entries that name people all are kept, and folded anew where one comes late or a right may stand otherwise than before.

import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import type { Store } from '../stores/store.ts';
import type { CheckedTrust, KnownPeople, KnownPerson, PeopleFold } from './known.ts';

export interface PeopleBook {
  /** The people as of the newest entry. */
  readonly people: () => Promise<ReadonlyMap<string, KnownPerson>>;
  /** True where an entry of this tablet set a PIN of this name. */
  readonly setsPin: (tablet: string, pin: string) => Promise<boolean>;
}

/** Reads only what is new since the last call. `trustNow`: whose tickets prove a right; null where nothing is asked for one. */
export function createPeopleBook(
  store: Pick<Store, 'ofKinds'>,
  fold: PeopleFold,
  trustNow: () => Promise<CheckedTrust | null> = async () => null,
): PeopleBook {
  let people: ReadonlyMap<string, KnownPerson> = new Map();
  const entries: Entry[] = [];
  let readTo = 0;
  let foldedWith: CheckedTrust | null = null;
  let reading: Promise<void> | null = null;

  const catchUp = async () => {
    const fresh: Entry[] = [];
    for (const stored of await store.ofKinds(fold.kinds, readTo)) {
      fresh.push(JSON.parse(stored.text) as Entry); // the store holds checked entries only
      readTo = stored.pos;
    }
    const trust = await trustNow();
    await trust?.look(fresh);
    if (fresh.length === 0 && trust === foldedWith) return;
    entries.push(...fresh);
    entries.sort(compareEntries);
    const without = trust ? fold.withoutRight(entries, trust) : new Set();
    const folded: KnownPeople = { people: new Map(), badgeKeys: new Map() };
    for (const entry of entries) if (!without.has(entryId(entry))) fold.fold(folded, entry);
    people = folded.people;
    foldedWith = trust;
  };
  const read = async () => {
    reading ??= catchUp().finally(() => {
      reading = null;
    });
    await reading;
  };
  return {
    people: async () => {
      await read();
      return people;
    },
    setsPin: async (tablet, pin) => {
      await read();
      return entries.some((entry) => entry.tablet === tablet && entry.payload['pinSet'] === pin);
    },
  };
}
