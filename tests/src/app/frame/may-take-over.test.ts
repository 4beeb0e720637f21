// Who is told above every screen that nobody has taken over: whoever may, and so not the lead who handed over.

import { expect, test } from 'vitest';
import type { Person } from '../../../../shared/floor/state.ts';
import { mayTakeOver } from '../../../../src/app/frame/may-take-over.ts';

const person = (name: string, role: Person['role']) => ({ person: name, name, role }) as Person; // all that is asked
const open = { by: 'lea', taken: null };

test('a handover is told to leads and engineers who did not sign it', () => {
  expect(mayTakeOver(person('bo', 'lead'), open)).toBe(true);
  expect(mayTakeOver(person('kit', 'engineer'), open)).toBe(true);
  expect(mayTakeOver(person('ana', 'operator'), open)).toBe(false);
  expect(mayTakeOver(null, open)).toBe(false);
});

test('it is not told to whoever handed over, as another lead must take over', () => {
  expect(mayTakeOver(person('lea', 'lead'), open)).toBe(false);
});
