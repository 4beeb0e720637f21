// The snapshot that the next start goes on from, and when it is worth writing one.

import { FOLD_VERSION } from '../../../shared/floor/fold-version.ts';
import { snapshotOf } from '../../../shared/floor/replica.ts';
import { whenIdle } from '../device/later.ts';
import { snapshotKey, snapshotPlaceKey } from './database.ts';
import { inTurn, type StoreState } from './state.ts';

/** A snapshot is written after this many entries; on a long log after this share of it, since the state to write grows too. */
const SNAPSHOT_EVERY = 200;
const SNAPSHOT_SHARE = 1 / 1000;
/** How long after a start that folded much its snapshot is written: by then the first screen stands. */
const SNAPSHOT_AFTER_MS = 3000;

function isSnapshotDue({ replica, keptCount }: StoreState): boolean {
  return replica.count - keptCount >= Math.max(SNAPSHOT_EVERY, replica.count * SNAPSHOT_SHARE);
}

/** Keeps a snapshot where one is due, once the verdict that made it due is drawn: what a long log comes to takes longer to copy than to judge. */
export function keepWhereDue(state: StoreState): void {
  if (state.isKeeping || !isSnapshotDue(state)) return;
  state.isKeeping = true;
  whenIdle(() => {
    state.isKeeping = false;
    keepInTurn(state);
  });
}

/** The same soon after a start: one that had to fold much is slow once, not every time until enough is written. */
export function keepSoon(state: StoreState): void {
  if (isSnapshotDue(state)) state.keeping = setTimeout(() => keepInTurn(state), SNAPSHOT_AFTER_MS);
}

/** Not while the log is folded anew: the floor in hand is then one of before. */
function keepInTurn(state: StoreState): void {
  void inTurn(state, async () => {
    if (!state.isClosed && isSnapshotDue(state)) keepSnapshot(state);
  });
}

/** Keeps a snapshot of the floor as it is. Only in turn with folding. */
export function keepSnapshot(state: StoreState): void {
  if (state.bootstrap) return; // a start goes on from that
  state.keptCount = state.replica.count;
  const snapshot = snapshotOf(state.replica);
  if (!snapshot) return;
  // Only a shortcut for the next start: if it cannot be kept, the log is folded instead.
  const rows = [
    { key: snapshotKey, value: { version: FOLD_VERSION, name: state.fold.name, life: state.life, snapshot } },
    { key: snapshotPlaceKey, value: snapshot.position },
  ];
  state.cache.kept.bulkPut(rows).catch(() => undefined);
}
