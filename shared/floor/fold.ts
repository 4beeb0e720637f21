// From the log to the floor: applies entries, in folding order, to the state. The same entries give the same state on every
// tablet and server. An entry that does not fit what is there (unload of an empty slot, clearing of nothing) changes nothing:
// it stays in the log, and what contradicts is kept as a conflict until a lead settles it. What each kind does stands in registry.ts.

import type { Entry } from '../log/entry.ts';
import { actOf } from './acts.ts';
import { endsWork, keepWork, workingBefore } from './fold-feeders.ts';
import { notePasskeyUse } from './fold-passkeys.ts';
import { asNamed } from './fold-print.ts';
import { forgetReels } from './gone-reels.ts';
import { type FloorEntry, readFloorEntry } from './kinds.ts';
import { foldOf, touchesOf } from './registry.ts';
import { foldRights, type Trust } from './rights.ts';
import type { FloorState } from './state.ts';

/**
 * Applies one entry. Returns false where this version does not know the kind or the payload does not fit it.
 * `trust`: whose tickets prove a right; null where nothing is asked for one.
 */
export function applyEntry(state: FloorState, entry: Entry, trust: Trust | null = null): boolean {
  const known = readFloorEntry(entry);
  if (!known) return false;
  applyFloorEntry(state, known, trust);
  return true;
}

/** Applies one checked entry. `isWhole`: no reel leaves the state, however long ago it was used up. */
export function applyFloorEntry(
  state: FloorState,
  entry: FloorEntry,
  trust: Trust | null = null,
  isWhole = false,
): void {
  if (trust) foldRights(state, entry, actOf(state, entry), trust);
  if (trust && 'passkey' in entry.payload) notePasskeyUse(state, entry, trust.signedBy(entry));
  const working = endsWork.has(entry.kind) ? workingBefore(state, touchesOf(state, entry).slots) : null;
  if (!isWhole && entry.kind === 'run.started' && !state.runs.has(entry.payload.run))
    forgetReels(state, entry.hlc.ms);
  foldOf(entry)(state, asNamed(state, entry));
  if (working) keepWork(state, working);
}

/** Applies entries that are already in folding order. */
export function applyAll(
  state: FloorState,
  entries: readonly Entry[],
  trust: Trust | null = null,
): FloorState {
  for (const entry of entries) applyEntry(state, entry, trust);
  return state;
}
