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
  'clear-hold': 'lead',
  'block-material': 'lead',
  'settle-conflict': 'lead',
  'export-log': 'lead',
  'skip-step': 'lead',
  'enrol-tablet': 'lead',
  'manage-people': 'lead',
  'take-setup': 'engineer',
  'rule-line': 'engineer',
  'define-line': 'engineer',
  'approve-supplier': 'engineer',
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
