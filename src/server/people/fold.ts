// The plant's people, by the log's own fold: the one thing of the floor that the server knows, to check badges and roles.

import { readFloorEntry } from '../../../shared/floor/kinds.ts';
import { foldPeople } from '../../../shared/floor/people.ts';
import type { PeopleFold } from '../settings.ts';

/** Learns people from `person.added` and `person.removed`; an entry that is not as expected changes nothing. */
export const plantPeople: PeopleFold = {
  kinds: ['person.added', 'person.removed'],
  fold: (people, entry) => {
    const read = readFloorEntry(entry);
    if (read) foldPeople(people, read);
  },
};
