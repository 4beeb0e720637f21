// What a tablet signs by itself beside the heads of its chain: what speaks by its key, and what stands before a text that exports leave out.

import { describe, expect, test } from 'vitest';
import { isSignedItself } from '../../../shared/floor/own-signature.ts';
import { needsOwnSignature } from '../../../shared/floor/unvouched.ts';
import type { Entry, JsonObject } from '../../../shared/log/entry.ts';
import { makeChain } from '../../contract/entries.ts';

const entry = (kind: string, payload: JsonObject = {}) =>
  makeChain({ tablet: 't1', count: 1, kind, payload: () => payload })[0] as Entry;
const note = entry('test.noted');
const person = { person: 'ana', name: 'Ana', role: 'lead' };

describe('`needsOwnSignature()`', () => {
  test('is true for a ticket, whatever comes after it, and for no other kind', () => {
    expect(isSignedItself('ticket.taken')).toBe(true);
    expect(needsOwnSignature(entry('ticket.taken'), null)).toBe(true);
    expect(needsOwnSignature(entry('ticket.taken'), note)).toBe(true);
    expect(needsOwnSignature(note, null)).toBe(false);
    expect(needsOwnSignature(note, note)).toBe(false);
  });

  test('is true before a badge or what checks a PIN, and not before a person with neither', () => {
    expect(needsOwnSignature(note, entry('person.added', { ...person, badge: 'B-1', pin: null }))).toBe(true);
    expect(
      needsOwnSignature(note, entry('person.added', { ...person, badge: null, pin: { hash: 'x' } })),
    ).toBe(true);
    expect(needsOwnSignature(note, entry('person.added', { ...person, badge: null, pin: null }))).toBe(false);
    expect(needsOwnSignature(entry('person.added', { ...person, badge: 'B-1' }), note)).toBe(false);
  });
});
