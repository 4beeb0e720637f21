// Which run-outs were prevented? One counts where a package came onto a slot (spliced, poured in, or in place of the old one) while the count
// said that the old one still had parts, and that what was being built would take more than it had. Nobody can know whether the slot would
// have run dry: parts may have been lost, the run may have been cut short. So what is counted is what came in time, and no more.
// Told apart as not sure: a count that is unknown or was used up, one that rests on a word taken back or contradicted, a stop beside it of
// which nobody said why, and a stop for an empty slot just after it, since no stop names its slot. What came while the line stood for an empty
// slot, or after a machine had none left there, came too late. A reel loaded onto an emptied slot is none of these: the slot was empty.

import type { EntryOf, FloorEntry } from '../floor/kinds.ts';
import { feedersOf, sharesSlots } from '../floor/lanes.ts';
import { hasOwnId } from '../floor/reel-id.ts';
import type { FloorState } from '../floor/state.ts';
import type { CameToSlot } from '../floor/state-run-outs.ts';
import type { StopReason } from '../floor/vocabulary.ts';

/** A stop for an empty slot this soon after may be of this slot, ms. Made up: no source has a figure. */
export const JUST_AFTER_MS = 300_000;

/** What came onto a slot that had too few parts for what was being built. */
export interface Came {
  readonly atMs: number;
  readonly slot: string;
  /** Parts that the old one still had by count; null where that was not known. */
  readonly left: number | null;
  readonly is: 'prevented' | 'unsure' | 'late';
}

interface Stop {
  readonly fromMs: number;
  readonly toMs: number;
  readonly reason: StopReason | null;
}

/**
 * What came on a line from `fromMs` on and before `toMs`, oldest first; what was taken back is not in it. `stops`: those of every lane that feeds from the same
 * slots, in that span and so long after it. The floor keeps a day of it before the newest: of earlier spans too few are told.
 */
export function cameInTime(
  floor: FloorState,
  entries: readonly FloorEntry[],
  ask: {
    readonly line: string;
    readonly fromMs: number;
    readonly toMs: number;
    readonly stops: readonly Stop[];
  },
): readonly Came[] {
  const empties = entries.filter(
    (entry): entry is EntryOf<'tape.empty'> =>
      entry.kind === 'tape.empty' && sharesSlots(entry.payload.line, ask.line),
  );
  const contradicted = new Set([...floor.conflicts.values()].flatMap((each) => each.entries));
  const isHeld = (entry: string) => !floor.corrected.has(entry) && !contradicted.has(entry);
  return (floor.came.get(feedersOf(ask.line)) ?? []).flatMap((came) => {
    const { entry, line, atMs, slot, left, on } = came;
    if (line !== ask.line || atMs < ask.fromMs || atMs >= ask.toMs || floor.corrected.has(entry)) return [];
    const isKnown = left !== null && left >= 1 && [entry, ...on].every(isHeld);
    const near = byStops(came, ask.stops);
    const is = near === 'late' || empties.some((empty) => isDry(came, empty)) ? 'late' : near;
    return [{ atMs, slot, left, is: is ?? (isKnown ? 'prevented' : 'unsure') }];
  });
}

/** What the stops say of it; null where nothing. */
function byStops({ atMs }: CameToSlot, stops: readonly Stop[]): 'late' | 'unsure' | null {
  const within = stops.filter(({ fromMs, toMs }) => fromMs <= atMs && atMs <= toMs);
  if (within.some(({ reason }) => reason === 'run-out')) return 'late';
  const isNear = stops.some(
    ({ fromMs, reason }) => reason === 'run-out' && fromMs > atMs && fromMs <= atMs + JUST_AFTER_MS,
  );
  return isNear || within.some(({ reason }) => reason === null) ? 'unsure' : null;
}

/** A machine had no parts left there before it came, and meant what stood there last. */
function isDry(
  { atMs, sinceMs, slot, feeder, reel }: CameToSlot,
  { hlc, payload }: EntryOf<'tape.empty'>,
): boolean {
  const emptyMs = hlc.ms - payload.late * 1000;
  if (emptyMs > atMs || emptyMs < sinceMs) return false;
  // Of an earlier one of the tapes it says that its end has passed.
  if (payload.reel !== null && hasOwnId(reel)) return payload.reel === reel;
  return payload.slot === slot || (feeder !== null && payload.feeder === feeder);
}
