// Of which entries do people keep a paper? Of these a tablet keeps the proof that they are in the plant's log, so that it can be printed
// without a server; of any other it asks when somebody prints it.

import type { Entry } from '../log/entry.ts';
import type { EntryKind } from './kinds.ts';

const kinds = [
  'changeover.released',
  'changeover.left-open',
  'checklist.closed',
  'step.signed',
  'panel.measured',
  'panel.looked',
  'reel.measured',
  'panels.contained',
  'containment.signed',
  'shift.handed',
  'shift.taken',
] as const satisfies readonly EntryKind[];
const printedKinds: ReadonlySet<string> = new Set(kinds);

/** True for a changeover, a first panel, a measured reel, a splice, a containment and a handover. */
export function isKeptOnPaper({ kind, payload }: Pick<Entry, 'kind' | 'payload'>): boolean {
  return printedKinds.has(kind) || (kind === 'reel.verified' && payload['act'] === 'splice');
}
