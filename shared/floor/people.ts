// Who belongs to the plant, as the log says; also used by the server, which needs nothing else of the floor.

import type { Entry } from '../log/entry.ts';
import type { EntryOf, FloorEntry } from './kinds.ts';
import { addsPeople, isLastAdder } from './may.ts';
import type { FloorState, Person } from './state.ts';

/** True for somebody with a PIN, wherever what checks it lies. */
export function hasPin({ pin, pinSet }: Pick<Person, 'pin' | 'pinSet'>): boolean {
  return pin !== null || pinSet !== undefined;
}

/** What is known of people. */
export type PeopleState = Pick<FloorState, 'people' | 'badgeKeys'>;

/**
 * Applies one entry to the people; other kinds change nothing. A plant that had somebody who may add people keeps one, in every history
 * and every order of arrival: where the last such person would go or step down, the person stays in the old role, and `stays` says so.
 * Refused: giving the role to somebody else instead, which nobody decided.
 */
export function foldPeople({ people, badgeKeys }: PeopleState, entry: FloorEntry): void {
  if (entry.kind === 'badges.keyed') {
    const { key, secret } = entry.payload;
    // A key that is told twice is the one that was told first.
    if (badgeKeys.has(key)) return;
    badgeKeys.set(key, secret);
    for (const one of people.values())
      if (one.badgeMark?.key === key)
        people.set(one.person, { ...one, badgeMark: { ...one.badgeMark, secret } });
  } else if (entry.kind === 'person.added') {
    const there = people.get(entry.payload.person);
    const told = personOf(entry, there, badgeKeys);
    const stepsDown = there !== undefined && !addsPeople(told) && isLastAdder(there, people.values());
    people.set(told.person, stepsDown ? { ...told, role: there.role, stays: 'role' } : told);
  } else if (entry.kind === 'person.language-chosen') {
    const there = people.get(entry.payload.person);
    if (there) people.set(there.person, { ...there, language: entry.payload.language });
  } else if (entry.kind === 'person.removed') {
    const there = people.get(entry.payload.person);
    if (!there) return;
    if (isLastAdder(there, people.values())) people.set(there.person, { ...there, stays: 'removed' });
    else people.delete(there.person);
  }
}

/** The person as an entry tells it; badge and PIN of which it says nothing stay as they were. */
function personOf(
  { tablet, payload }: EntryOf<'person.added'>,
  there: Person | undefined,
  badgeKeys: ReadonlyMap<string, string>,
): Person {
  const { person, name, role, badge, badgeMark, pin, pinSet } = payload;
  const mark =
    badgeMark !== undefined
      ? { ...badgeMark, secret: badgeKeys.get(badgeMark.key) ?? null }
      : badge === undefined
        ? there?.badgeMark
        : undefined;
  const text = badge ?? (badgeMark === undefined ? (there?.badge ?? '') : '');
  const language = there?.language;
  const known = {
    person,
    name,
    role,
    badge: text,
    ...(mark !== undefined && { badgeMark: mark }),
    ...(language !== undefined && { language }),
  };
  if (typeof pinSet === 'string') return { ...known, pin: null, pinSet: { pin: pinSet, tablet } };
  if (pinSet === null || pin !== undefined) return { ...known, pin: pin ?? null };
  const told: Person = { ...known, pin: there?.pin ?? null };
  return there?.pinSet ? { ...told, pinSet: there.pinSet } : told;
}

/** Takes the name that an entry gives a person; other entries give none. Who was removed keeps the last name. */
export function takeName(names: Map<string, string>, { kind, payload }: Entry): void {
  const { person, name } = payload;
  if (kind === 'person.added' && typeof person === 'string' && typeof name === 'string')
    names.set(person, name);
}
