// Badges: the log holds their marks, never what they say; those of before there were marks count as ever; every order of arrival knows the same.

import { createHmac } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { badgeKeyOf, hasBadge, personByBadge, thoseWithBadge } from '../../../shared/floor/badge.ts';
import { applyAll } from '../../../shared/floor/fold.ts';
import { foldPeople, type PeopleState } from '../../../shared/floor/people.ts';
import { recognise } from '../../../shared/floor/recognise.ts';
import { withoutSecrets } from '../../../shared/floor/secrets.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import { keyedHash } from '../../../shared/log/keyed-hash.ts';
import { beginStory, type Story } from './story.ts';

const secret = Buffer.alloc(32, 7).toString('base64url');
const other = Buffer.alloc(32, 8).toString('base64url');

const foldAll = (story: Story) => applyAll(emptyState(), story.entries);

test('a mark is HMAC with SHA-256 of the text, as Node computes it', () => {
  fc.assert(
    fc.property(fc.uint8Array({ minLength: 32, maxLength: 32 }), fc.string(), (key, text) => {
      const wanted = createHmac('sha256', key).update(text, 'utf8').digest('base64url');
      expect(keyedHash(Buffer.from(key).toString('base64url'), text)).toBe(wanted);
    }),
  );
});

describe('a badge', () => {
  const told = (text: string, by = secret, key = 'k1') => ({ key, mark: keyedHash(by, text) });

  test('is known by its mark, and nothing in the log says what is on it', () => {
    const story = beginStory();
    story.tell('badges.keyed', { key: 'k1', secret });
    story.tell('person.added', { person: 'zoe', name: 'Zoe', role: 'operator', badgeMark: told('Z-1') });
    const state = foldAll(story);
    expect(personByBadge(state.people, 'Z-1')?.person).toBe('zoe');
    expect(personByBadge(state.people, 'Z-2')).toBeNull();
    expect(personByBadge(state.people, '')).toBeNull();
    expect(recognise(state, null, ' Z-1 ')).toEqual([{ is: 'person', person: 'zoe' }]);
    expect(JSON.stringify(story.entries)).not.toContain('Z-1');
    const shown = story.entries.map(withoutSecrets);
    expect(JSON.stringify(shown)).not.toContain(secret);
    // The person's own entry goes out whole: its text can be checked.
    expect(shown.find((item) => 'kind' in item && item.kind === 'person.added')).toBe(
      story.entries.find(({ kind }) => kind === 'person.added'),
    );
  });

  test('of before there were marks counts as ever, until the person gets another', () => {
    const story = beginStory();
    story.tell('person.added', { person: 'zoe', name: 'Zoe', role: 'lead', badge: 'OLD-1', pinSet: null });
    expect(personByBadge(foldAll(story).people, 'OLD-1')?.person).toBe('zoe');
    // Changed without a word of the badge: it stays.
    story.tell('person.added', { person: 'zoe', name: 'Zoe B', role: 'lead' });
    expect(personByBadge(foldAll(story).people, 'OLD-1')?.name).toBe('Zoe B');
    story.tell('badges.keyed', { key: 'k1', secret });
    story.tell('person.added', { person: 'zoe', name: 'Zoe B', role: 'lead', badgeMark: told('NEW-1') });
    const state = foldAll(story);
    expect([personByBadge(state.people, 'OLD-1'), personByBadge(state.people, 'NEW-1')?.person]).toEqual([
      null,
      'zoe',
    ]);
    story.tell('person.added', { person: 'zoe', name: 'Zoe C', role: 'lead' });
    expect(personByBadge(foldAll(story).people, 'NEW-1')?.name).toBe('Zoe C');
  });

  test('of a plant with keys of several tablets is known by each, in every order of arrival', () => {
    const story = beginStory();
    story.tell('badges.keyed', { key: 'k1', secret });
    story.tell('badges.keyed', { key: 'k2', secret: other });
    story.tell('person.added', { person: 'a', name: 'A', role: 'lead', badgeMark: told('A-1') });
    story.tell('person.added', { person: 'b', name: 'B', role: 'lead', badgeMark: told('B-1', other, 'k2') });
    fc.assert(
      fc.property(fc.shuffledSubarray([...story.entries], { minLength: story.entries.length }), (order) => {
        const known: PeopleState = { people: new Map(), badgeKeys: new Map() };
        for (const entry of order) foldPeople(known, entry as Parameters<typeof foldPeople>[1]);
        expect([
          personByBadge(known.people, 'A-1')?.person,
          personByBadge(known.people, 'B-1')?.person,
        ]).toEqual(['a', 'b']);
      }),
    );
  });

  test('whose key never came is nobody’s', () => {
    const person = { badge: '', badgeMark: { ...told('A-1'), secret: null } };
    expect(thoseWithBadge([person], 'A-1')).toEqual([]);
    expect([hasBadge(person), hasBadge({ badge: 'x' }), hasBadge({ badge: '' })]).toEqual([
      true,
      true,
      false,
    ]);
  });

  test('a key is drawn where the plant has none, and the first that it has is used', () => {
    const draw = () => ({ key: 'k9', secret: other });
    const state = emptyState();
    expect(badgeKeyOf(state, draw)).toEqual({ key: 'k9', secret: other, isNew: true });
    state.badgeKeys.set('k1', secret);
    expect(badgeKeyOf(state, draw)).toEqual({ key: 'k1', secret, isNew: false });
  });
});
