// Stretches of panels that are not read along the log but out of the state: reels found where they did not belong, jars of paste.

import type { FloorState } from '../floor/state.ts';
import { foundStretches } from './finds.ts';
import { pasteStretches } from './pasted.ts';
import type { Stretch } from './stretches.ts';

/** All of them. Cost: finds times runs of their lines, and jars. */
export function stretchesBeside(state: FloorState): readonly Stretch[] {
  return [...foundStretches(state), ...pasteStretches(state)];
}
