// Who belongs to the plant, as the log says; also used by the server, which needs nothing else of the floor.

import type { Entry } from '../log/entry.ts';
import type { FloorEntry } from './kinds.ts';
import type { Person } from './state.ts';

/** Applies one entry to the people; other kinds change nothing. */
export function foldPeople(people: Map<string, Person>, entry: FloorEntry): void {
  if (entry.kind === 'person.added') people.set(entry.payload.person, { ...entry.payload });
  else if (entry.kind === 'person.removed') people.delete(entry.payload.person);
}

/** Takes the name that an entry gives a person; other entries give none. Who was removed keeps the last name. */
export function takeName(names: Map<string, string>, { kind, payload }: Entry): void {
  const { person, name } = payload;
  if (kind === 'person.added' && typeof person === 'string' && typeof name === 'string')
    names.set(person, name);
}

/** The person whose badge carries this text, null where nobody's does. */
export function personByBadge(people: ReadonlyMap<string, Person>, badge: string): Person | null {
  for (const person of people.values()) if (person.badge === badge) return person;
  return null;
}
