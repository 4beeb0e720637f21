// How much of what may be handed to a new tablet does the plant's state take? Both ends reckon alike, so that people hear of it before
// nothing is handed over any more, and not first when a new tablet stands there and reads the whole log.

import { snapshotBytes, snapshotUnpackedBytes } from './limits.ts';

/** Bytes of a packed state as it travels, and of what it unpacks to. */
export interface StateSize {
  readonly packed: number;
  readonly plain: number;
}

/** From this share of the room on people are told: there is time left to join spare tablets. Chosen here. */
export const roomNears = 0.5;

/** The share of the room that a state takes, 0 or more; above 1 it is not handed over. */
export function roomShare({ packed, plain }: StateSize): number {
  return Math.max(packed / snapshotBytes, plain / snapshotUnpackedBytes);
}

/** How a state stands to its room. */
export type RoomWord = 'fits' | 'nears' | 'over';

/** The word for a share. */
export function roomWord(share: number): RoomWord {
  return share > 1 ? 'over' : share >= roomNears ? 'nears' : 'fits';
}
