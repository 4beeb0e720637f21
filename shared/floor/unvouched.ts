// Which entries a tablet signs by themselves, whatever signed head comes after them in its chain.

import type { Entry } from '../log/entry.ts';
import { isSignedItself } from './own-signature.ts';
import { secretsOf } from './secrets.ts';

/**
 * True for an entry that a head after it cannot vouch for everywhere: it speaks by itself, or the next one's text is left out of exports,
 * where nothing then shows that the next one goes on from it. `next`: null for the last.
 */
export function needsOwnSignature(entry: Entry, next: Entry | null): boolean {
  return isSignedItself(entry.kind) || (next !== null && secretsOf(next).length > 0);
}
