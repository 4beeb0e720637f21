// Which open warning of several lines is said first? Each comes with the outlook that gives it. Method: the line that is meant is the outlook's: a
// slot is told of the line that has the machines, whichever of its lanes runs short.

import { loudestOf, type Outlook, type SlotOutlook } from './line.ts';

/** An open warning, and the outlook of the line or lane that gives it. */
export interface OpenWarning {
  readonly slot: SlotOutlook;
  readonly outlook: Outlook;
}

/** The one that is said first; null where none is open. */
export function loudestOpen(open: readonly OpenWarning[]): OpenWarning | null {
  const loudest = loudestOf(open.map(({ slot }) => slot));
  return open.find(({ slot }) => slot === loudest) ?? null;
}
