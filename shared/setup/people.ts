// Who belongs to the plant, as the log says; also used by the server, which needs nothing else of the floor.

import type { FloorEntry } from './kinds.ts';
import type { Person } from './state.ts';

/** Applies one entry to the people; other kinds change nothing. */
export function foldPeople(people: Map<string, Person>, entry: FloorEntry): void {
  if (entry.kind === 'person.added') people.set(entry.payload.person, { ...entry.payload });
  else if (entry.kind === 'person.removed') people.delete(entry.payload.person);
}

/** The person whose badge carries this text, null where nobody's does. */
export function personByBadge(people: ReadonlyMap<string, Person>, badge: string): Person | null {
  for (const person of people.values()) if (person.badge === badge) return person;
  return null;
}
