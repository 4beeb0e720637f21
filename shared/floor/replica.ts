// The folded state of a growing log whose entries may come late: another tablet's entry can belong before what was folded
// already. Method: copies of the state every few hundred entries (cheap, see state.ts); a late entry goes back to the newest
// copy before it and folds on from there. Folding all from the start each time was refused: it grows with the plant's life.

import { type Entry, entryId } from '../log/entry.ts';
import { compareEntries } from '../log/order.ts';
import { applyEntry } from './fold.ts';
import type { Trust } from './rights.ts';
import { copyState, emptyState, type FloorState, type FoldPosition } from './state.ts';

/** Entries between two copies. */
const COPY_EVERY = 400;
/** Copies kept where nothing else is asked for; older late entries need a fold from the start. */
const COPIES_KEPT = 12;

interface Mark {
  readonly state: FloorState;
  /** Null before any entry. */
  readonly position: FoldPosition | null;
  readonly count: number;
}

/** A folded log. Change it only through `foldIn`. */
export interface Replica {
  state: FloorState;
  position: FoldPosition | null;
  /** Entries folded since the start of the log. */
  count: number;
  /** Copies, oldest first. */
  marks: Mark[];
  /** Entries after the oldest copy, in folding order. */
  tail: Entry[];
  /** Whose tickets prove a right; null where nothing is asked for one. */
  readonly trust: Trust | null;
  /** Copies kept, 1 or more: the fewer, the less memory, and the sooner an entry is too late. */
  readonly copies: number;
}

/** What a snapshot keeps. */
export interface Snapshot {
  readonly state: FloorState;
  readonly position: FoldPosition;
  readonly count: number;
}

/** An empty replica, or one that goes on from a snapshot. */
export function createReplica(
  snapshot?: Snapshot,
  trust: Trust | null = null,
  copies: number = COPIES_KEPT,
): Replica {
  const state = snapshot ? copyState(snapshot.state) : emptyState();
  const position = snapshot?.position ?? null;
  const count = snapshot?.count ?? 0;
  const marks = [{ state: copyState(state), position, count }];
  return { state, position, count, marks, tail: [], trust, copies };
}

/**
 * Folds entries in, in any order; an entry that is there already changes nothing. Returns false where an entry belongs
 * before the oldest copy: then the caller must make a new replica from the whole log.
 */
export function foldIn(replica: Replica, entries: readonly Entry[]): boolean {
  const steps = foldSteps(replica, entries);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * `foldIn` in steps of an entry each, for whoever lets others have their turn in between. Between two steps the replica is as after some of the
 * entries, in folding order, or, where one of them is late, as it was before.
 */
export function* foldSteps(replica: Replica, entries: readonly Entry[]): Generator<undefined, boolean> {
  const added = [...entries].sort(compareEntries);
  const first = added[0];
  if (!first) return true;
  if (replica.position !== null && compareEntries(first, replica.position) <= 0)
    return yield* foldLate(replica, added);
  yield* foldEach(replica, added);
  return true;
}

/** What to keep of a replica so that the next start is short; null before any entry. */
export function snapshotOf(replica: Replica): Snapshot | null {
  if (replica.position === null) return null;
  return { state: copyState(replica.state), position: replica.position, count: replica.count };
}

function foldOne(replica: Replica, entry: Entry): void {
  if (replica.position !== null && compareEntries(entry, replica.position) === 0) return;
  applyEntry(replica.state, entry, replica.trust);
  replica.position = { hlc: entry.hlc, tablet: entry.tablet, epoch: entry.epoch, seq: entry.seq };
  replica.count += 1;
  replica.tail.push(entry);
  if (replica.count - (replica.marks.at(-1)?.count ?? 0) < COPY_EVERY) return;
  replica.marks.push({ state: copyState(replica.state), position: replica.position, count: replica.count });
  if (replica.marks.length <= replica.copies) return;
  const dropped = replica.marks.shift();
  replica.tail.splice(0, (replica.marks[0]?.count ?? 0) - (dropped?.count ?? 0));
}

function* foldEach(replica: Replica, entries: readonly Entry[]): Generator<undefined, void> {
  for (const entry of entries) {
    foldOne(replica, entry);
    yield;
  }
}

function* foldLate(replica: Replica, added: readonly Entry[]): Generator<undefined, boolean> {
  const first = added[0] as Entry; // the caller saw it
  const there = new Set(replica.tail.map(entryId));
  const fresh = added.filter((entry) => !there.has(entryId(entry)));
  const later = replica.marks.findIndex(
    (mark) => mark.position !== null && compareEntries(mark.position, first) >= 0,
  );
  const at = (later < 0 ? replica.marks.length : later) - 1;
  const mark = replica.marks[at];
  const oldest = replica.marks[0];
  if (!mark || !oldest) {
    // An entry at or before the oldest copy that is not new to the log has been folded already.
    return false;
  }
  const kept = mark.count - oldest.count;
  const again = [...replica.tail.slice(kept), ...fresh].sort(compareEntries);
  // Beside it: what is known must not be missing for a while because something earlier was not.
  const beside: Replica = {
    ...replica,
    state: copyState(mark.state),
    position: mark.position,
    count: mark.count,
    marks: replica.marks.slice(0, at + 1),
    tail: replica.tail.slice(0, kept),
  };
  yield* foldEach(beside, again);
  Object.assign(replica, beside);
  return true;
}
