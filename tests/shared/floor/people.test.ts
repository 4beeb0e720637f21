// People as the log says.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { personByBadge } from '../../../shared/floor/badge.ts';
import { applyEntry } from '../../../shared/floor/fold.ts';
import { hasAdder, mayManagePeople } from '../../../shared/floor/may.ts';
import { createReplica, foldIn } from '../../../shared/floor/replica.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import { roles } from '../../../shared/floor/vocabulary.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { beginStory, idOf } from './story.ts';

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

test('a PIN is named with the tablet that set it, stays where an entry says nothing of it, and goes where one says so', () => {
  const story = beginStory();
  const pinNow = () => {
    const { pin, pinSet } = story.floor().people.get('ana') ?? {};
    return { pin, pinSet };
  };
  const { pin: _, ...bare } = ana;
  const old = { salt: 's', hash: 'h', rounds: 1 };
  const set = (name: string, tablet: string) => ({ pin: null, pinSet: { pin: name, tablet } });
  const { tablet } = story.tell('person.added', { ...bare, pin: old });
  expect(pinNow()).toEqual({ pin: old, pinSet: undefined });
  story.tell('person.added', { ...bare, name: 'Ana B.' });
  expect(pinNow()).toEqual({ pin: old, pinSet: undefined });
  story.tell('person.added', { ...bare, pinSet: 'one' });
  expect(pinNow()).toEqual(set('one', tablet));
  story.tell('person.added', { ...bare, name: 'Ana C.' });
  expect(pinNow()).toEqual(set('one', tablet));
  story.tell('person.added', { ...bare, pinSet: null });
  expect(pinNow()).toEqual({ pin: null, pinSet: undefined });
});

test('the language that a person chose stays with them, whatever else of them changes', () => {
  const story = beginStory();
  story.tell('person.language-chosen', { person: 'ana', language: 'pl' });
  story.tell('person.added', ana);
  expect(story.floor().people.get('ana')).toEqual(ana);
  story.tell('person.language-chosen', { person: 'ana', language: 'pl' });
  story.tell('person.added', { ...ana, role: 'lead' });
  expect(story.floor().people.get('ana')).toEqual({ ...ana, role: 'lead', language: 'pl' });
});

test('`personByBadge()` needs the whole badge', () => {
  const story = beginStory();
  story.tell('person.added', ana);
  const { people } = story.floor();
  expect(personByBadge(people, 'B-1')?.person).toBe('ana');
  for (const badge of ['B-', 'B-11', 'b-1', '']) expect(personByBadge(people, badge), badge).toBeNull();
});

describe('somebody who may add people', () => {
  const lea = { ...ana, person: 'lea', name: 'Lea', role: 'lead', badge: 'B-3' } as const;

  test('neither goes nor steps down while nobody else may, and it says so', () => {
    const story = beginStory();
    story.tell('person.added', lea);
    story.tell('person.added', ana);
    story.tell('person.added', { ...lea, role: 'operator', name: 'Lea B.' });
    expect(story.floor().people.get('lea')).toMatchObject({ role: 'lead', name: 'Lea B.', stays: 'role' });
    story.tell('person.removed', { person: 'lea' });
    expect(story.floor().people.get('lea')).toMatchObject({ role: 'lead', stays: 'removed' });
    story.tell('person.added', { ...ana, role: 'engineer' });
    story.tell('person.removed', { person: 'lea' });
    expect([...story.floor().people.keys()]).toEqual(['ana']);
  });

  test('stays where two tablets remove each the other’s, out of reach of each other', () => {
    const story = beginStory();
    story.tell('person.added', lea, { at: 1 });
    story.tell('person.added', { ...ana, role: 'engineer' }, { at: 2 });
    story.tell('person.removed', { person: 'ana' }, { tablet: 'T1', at: 10 });
    story.tell('person.removed', { person: 'lea' }, { tablet: 'T2', at: 11 });
    expect([...story.floor().people.values()]).toMatchObject([{ person: 'lea', stays: 'removed' }]);
  });

  const names = ['p1', 'p2', 'p3'] as const;
  const actArb = fc.record({
    is: fc.constantFrom('add', 'remove', 'correct'),
    tablet: fc.constantFrom('T1', 'T2'),
    person: fc.constantFrom(...names),
    role: fc.constantFrom(...roles),
    at: fc.integer({ min: 1, max: 40 }),
  });

  test('is there in every history that ever named one, whatever the order and the place where it is cut', () => {
    fc.assert(
      fc.property(fc.array(actArb, { maxLength: 25 }), (acts) => {
        const story = beginStory();
        for (const { is, tablet, person, role, at } of acts) {
          const telling = { tablet, at };
          const last = story.entries.at(-1);
          if (is === 'add') story.tell('person.added', { ...ana, person, role, badge: person }, telling);
          else if (is === 'remove') story.tell('person.removed', { person }, telling);
          else if (last)
            story.tell('entry.corrected', { of: idOf(last), line: null, slot: null, reason: 'x' }, telling);
        }
        const ordered = [...story.entries].sort(compareEntries);
        const state = emptyState();
        let hadOne = false;
        for (const entry of ordered) {
          applyEntry(state, entry);
          hadOne ||= entry.kind === 'person.added' && entry.payload['role'] !== 'operator';
          expect(hasAdder(state.people.values())).toBe(hadOne);
        }
        // As a tablet gets them, in the order in which they were written: the late ones are folded anew.
        const replica = createReplica();
        for (const entry of story.entries) foldIn(replica, [entry]);
        expect(replica.state.people).toEqual(state.people);
      }),
    );
  });
});

describe('mayManagePeople()', () => {
  const operator = { ...ana };
  const lead = { ...ana, person: 'lea', role: 'lead' } as const;

  test('lets everybody add the first who may, also where operators are known', () => {
    expect(mayManagePeople(null, [])).toEqual({ may: true });
    expect(mayManagePeople(operator, [operator])).toEqual({ may: true });
    expect(mayManagePeople(null, [operator])).toEqual({ may: true });
  });

  test('keeps it from operators once there is one', () => {
    expect(mayManagePeople(operator, [operator, lead])).toMatchObject({ may: false, needs: 'lead' });
    expect(mayManagePeople(null, [lead])).toMatchObject({ may: false, why: 'nobody-signed-in' });
    expect(mayManagePeople(lead, [operator, lead])).toEqual({ may: true });
  });
});
