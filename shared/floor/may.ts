// Who may do what, and why not: one table. Screens ask here and never test conditions of their own.

import type { Person } from './state.ts';
import { isAtLeast, type Role } from './vocabulary.ts';

/** Every act that a person does, and the least role for it; null = nobody need have signed in. */
export const actRoles = {
  look: null,
  'verify-reel': 'operator',
  'count-panels': 'operator',
  'stop-run': 'operator',
  'acknowledge-warning': 'operator',
  'correct-own-entry': 'operator',
  'tick-checklist': 'operator',
  'start-run': 'operator',
  'end-run': 'operator',
  'choose-setup': 'lead',
  'keep-plan': 'lead',
  'choose-counter': 'lead',
  'keep-stations': 'lead',
  'clear-hold': 'lead',
  'block-material': 'lead',
  'settle-conflict': 'lead',
  'settle-unproven': 'lead',
  'export-log': 'lead',
  'skip-step': 'lead',
  'hand-over': 'lead',
  'enrol-tablet': 'lead',
  'manage-people': 'lead',
  'keep-own-passkey': 'lead',
  'keep-passkeys': 'engineer',
  'take-setup': 'engineer',
  'rule-line': 'engineer',
  'rule-interlock': 'engineer',
  'define-line': 'engineer',
  'approve-supplier': 'engineer',
  'describe-part': 'engineer',
  'rule-moisture': 'engineer',
  'teach-label': 'lead',
  'edit-checklist': 'engineer',
} as const satisfies Record<string, Role | null>;

export type Act = keyof typeof actRoles;

/** Yes, or why not and which role it takes. */
export type May =
  | { readonly may: true }
  | { readonly may: false; readonly why: 'nobody-signed-in' | 'role'; readonly needs: Role };

/** Says whether a person may do an act. A plant without any people yet may do everything: somebody must be the first. */
export function mayDo(act: Act, person: Person | null, peopleKnown: boolean): May {
  const needs = actRoles[act];
  if (needs === null || !peopleKnown) return { may: true };
  if (!person) return { may: false, why: 'nobody-signed-in', needs };
  return isAtLeast(person.role, needs) ? { may: true } : { may: false, why: 'role', needs };
}

/** True for somebody who may add and change people. */
export function addsPeople(person: Pick<Person, 'role'>): boolean {
  return isAtLeast(person.role, actRoles['manage-people']);
}

/** True where somebody of these may add people. */
export function hasAdder(people: Iterable<Pick<Person, 'role'>>): boolean {
  for (const person of people) if (addsPeople(person)) return true;
  return false;
}

/** True for the one person who may add people where nobody else may: who must neither go nor step down. */
export function isLastAdder(person: Person, people: Iterable<Person>): boolean {
  if (!addsPeople(person)) return false;
  for (const other of people) if (other.person !== person.person && addsPeople(other)) return false;
  return true;
}

/**
 * Says whether a person may add and change people. While the plant has nobody who may, everybody may: a plant of operators alone would
 * otherwise stay as it is for ever.
 */
export function mayManagePeople(person: Person | null, people: Iterable<Person>): May {
  return mayDo('manage-people', person, hasAdder(people));
}
