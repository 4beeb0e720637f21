// The address that answers "which panels?" for what was found late: the trace of the reel, its lot or its part, and what tells it, so that
// the panels are held for that and for nothing else.

import { hasOwnId } from '../../shared/floor/reel-id.ts';
import type { ContainCause } from '../../shared/floor/vocabulary.ts';
import { address } from './router.ts';

/** What was found: why panels are asked for, the entry or the block that tells it, and the material by its names. */
export interface FoundLate {
  readonly cause: ContainCause;
  readonly of: string;
  readonly reel: string | null;
  readonly lot: string | null;
  readonly part: string | null;
}

/** The address; a reel that the log names itself has no id of its own to trace it by. */
export function whichPanels({ cause, of, reel, lot, part }: FoundLate): string {
  if (reel !== null && hasOwnId(reel)) return address('log', 'trace', 'reel', reel, cause, of);
  if (lot !== null) return address('log', 'trace', 'lot', lot, cause, of);
  return part === null ? address('log', 'trace') : address('log', 'trace', 'part', part, cause, of);
}
