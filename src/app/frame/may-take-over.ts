// Who is told that nobody has taken a handover over?

import type { Person } from '../../../shared/floor/state.ts';
import type { Handed } from '../../../shared/floor/state-handover.ts';
import { isAtLeast } from '../../../shared/floor/vocabulary.ts';

/** Whoever may take over is told that nobody has: a lead, and not the one who handed over. */
export function mayTakeOver(person: Person | null, { by, taken }: Pick<Handed, 'by' | 'taken'>): boolean {
  return taken === null && person !== null && isAtLeast(person.role, 'lead') && person.person !== by;
}
