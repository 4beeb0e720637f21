// Is a scanned code a panel that leaves the line? Pure. Panels need no list, so that what nothing knows is one; refused: counting the code of
// what the plant knows as something else, as a slot, a feeder or a reel that is scanned at the end of the line was meant for another screen.

import type { Recognised } from '../../../../shared/floor/recognise.ts';

/** `known`: all that the code names here. */
export function isPanel(known: readonly Recognised[]): boolean {
  return known.every(({ is }) => is === 'panel');
}
