// The server knows the same people as every tablet, in whatever order their entries reach it.

import { expect, test } from 'vitest';
import type { Entry } from '../../../shared/log/entry.ts';
import { createPeopleBook } from '../../../src/server/people/book.ts';
import { plantPeople } from '../../../src/server/people/fold.ts';
import type { StoredEntry } from '../../../src/server/stores/store.ts';
import { beginStory } from '../../shared/floor/story.ts';

const lea = { person: 'lea', name: 'Lea', role: 'lead', badge: 'B-3', pin: null } as const;

test('two removals that arrive in the wrong order leave the same person as on the tablets', async () => {
  const story = beginStory();
  const first = story.tell('person.added', lea, { at: 1 });
  const second = story.tell('person.added', { ...lea, person: 'ana', badge: 'B-1' }, { at: 2 });
  const early = story.tell('person.removed', { person: 'ana' }, { tablet: 'T2', at: 10 });
  const late = story.tell('person.removed', { person: 'lea' }, { tablet: 'T1', at: 11 });
  const arrived: Entry[] = [first, second, late];
  const book = createPeopleBook(
    {
      ofKinds: async (_kinds, after) =>
        arrived
          .map((entry, at) => ({ pos: at + 1, text: JSON.stringify(entry) }) as StoredEntry)
          .filter(({ pos }) => pos > after),
    },
    plantPeople,
  );
  expect([...(await book.people()).keys()]).toEqual(['ana']);
  arrived.push(early);
  expect([...(await book.people()).keys()]).toEqual(['lea']);
  expect([...story.floor().people.keys()]).toEqual(['lea']);
});
