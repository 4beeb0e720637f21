// People as the log says.

import { expect, test } from 'vitest';
import { personByBadge } from '../../../shared/setup/people.ts';
import { beginStory } from './story.ts';

const ana = { person: 'ana', name: 'Ana', role: 'operator', badge: 'B-1', pin: null } as const;

test('`foldPeople()` adds, changes and removes people', () => {
  const story = beginStory();
  story.tell('person.added', ana);
  story.tell('person.added', { ...ana, person: 'bo', badge: 'B-2' });
  story.tell('person.added', { ...ana, role: 'lead' });
  story.tell('person.removed', { person: 'bo' });
  story.tell('person.removed', { person: 'nobody' });
  expect([...story.floor().people.values()]).toEqual([{ ...ana, role: 'lead' }]);
});

test('`personByBadge()` needs the whole badge', () => {
  const story = beginStory();
  story.tell('person.added', ana);
  const { people } = story.floor();
  expect(personByBadge(people, 'B-1')?.person).toBe('ana');
  for (const badge of ['B-', 'B-11', 'b-1', '']) expect(personByBadge(people, badge), badge).toBeNull();
});
