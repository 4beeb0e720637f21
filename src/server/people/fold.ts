// The plant's people, by the log's own fold: the one thing of the floor that the server knows, to check badges and roles. Who was added
// or taken out by an entry whose right nothing proves is so on the floor, and not here until a lead confirms it.

import { applyEntry } from '../../../shared/floor/fold.ts';
import { readFloorEntry } from '../../../shared/floor/kinds.ts';
import { foldPeople } from '../../../shared/floor/people.ts';
import { isWithoutRight } from '../../../shared/floor/rights.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import type { PeopleFold } from './known.ts';

/** Learns people from `person.added`, `person.removed` and the keys of their badges; an entry that is not as expected changes nothing. */
export const plantPeople: PeopleFold = {
  kinds: [
    'badges.keyed',
    'person.added',
    'person.removed',
    'ticket.taken',
    'tablet.shut-out',
    'unproven.settled',
  ],
  fold: (known, entry) => {
    const read = readFloorEntry(entry);
    if (read) foldPeople(known, read);
  },
  withoutRight: (entries, trust) => {
    const state = emptyState();
    for (const entry of entries) applyEntry(state, entry, trust);
    const marks = [...state.unproven.values()].filter(isWithoutRight);
    return new Set(marks.map(({ entry }) => entry));
  },
};
