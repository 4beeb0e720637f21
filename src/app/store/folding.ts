// What comes into the log is folded, one after the other. While a bootstrap snapshot stands in for history, what belongs to it is only counted;
// once all of it is here it is folded beside the work in hand, compared, and put in place of the snapshot.

import type { Draft } from '../../../shared/floor/draft.ts';
import { createReplica, foldIn, foldSteps } from '../../../shared/floor/replica.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { bySlices } from '../device/slices.ts';
import { type Bootstrap, countMissing, dropBootstrap, isIn } from './bootstrap.ts';
import type { OwnFold } from './bootstrap-check.ts';
import { countUpTo, storeFault } from './database.ts';
import { addMissing, checkDraft } from './drafts.ts';
import { foldAll, readFrom } from './load.ts';
import { tellFault } from './opening.ts';
import { keepSnapshot, keepWhereDue } from './snapshots.ts';
import { guarded, inTurn, type StoreState, sawClock, tellChange } from './state.ts';
import { foldWith } from './this-fold.ts';
import { type KeptTrust, keepTrust, trustOf } from './trust.ts';

/** How far the history is, is told each time so many more of its entries are here. */
const TELL_EVERY = 5000;

/** Writes entries of this tablet, all or none. Resolves when they are durable and folded; rejects with `StoreError`, or with `TypeError` on a wall screen. */
export async function append(
  state: StoreState,
  drafts: readonly Draft[],
  who: string | null,
): Promise<readonly Entry[]> {
  if (state.isScreen) throw new TypeError('Cannot write as a wall screen only reads');
  return guarded(state, async () => {
    const entries = await (await state.writing).append(drafts.map(checkDraft), who);
    await fold(state, entries, false);
    return entries;
  });
}

/** Takes in entries of other tablets. Resolves when they are durable and folded; rejects with `StoreError`. */
export function takeIn(state: StoreState, entries: readonly Entry[]): Promise<void> {
  return guarded(state, async () => {
    const fresh = await addMissing(state.log, entries);
    if (fresh.length > 0) await fold(state, fresh, false);
  });
}

/** Folds entries that are in the log. `told`: another window of this tablet told them. */
export function fold(state: StoreState, entries: readonly Entry[], told: boolean): Promise<void> {
  return inTurn(state, () => foldNow(state, entries, told));
}

async function foldNow(state: StoreState, entries: readonly Entry[], told: boolean): Promise<void> {
  await state.fold.trust?.look(entries);
  // A page of some hundred entries takes longer than a finger waits; the few of an act are folded at once.
  const isFolded = await bySlices(foldSteps(state.replica, await afterBootstrap(state, entries)));
  if (!isFolded) state.replica = await foldAll(state.log, state.bootstrap, state.fold);
  for (const entry of entries) if (entry.tablet !== state.identity.tablet) sawClock(state, entry.hlc);
  if (!told) state.peers.postMessage(entries);
  keepWhereDue(state);
  if (!isOnlyHistory(state, entries)) tellChange(state, entries);
}

/** Pages of history change nothing on the floor: how far they are is told now and then. */
function isOnlyHistory(state: StoreState, entries: readonly Entry[]): boolean {
  const { bootstrap, missing, toldMissing } = state;
  if (!bootstrap || missing <= 0 || entries.some((entry) => !isIn(bootstrap, entry))) return false;
  if (toldMissing - missing < TELL_EVERY && toldMissing >= missing) return true;
  state.toldMissing = missing;
  return false;
}

/** The entries to fold: those that a bootstrap snapshot holds, or that belong before it, are only counted. */
async function afterBootstrap(state: StoreState, entries: readonly Entry[]): Promise<readonly Entry[]> {
  const { bootstrap } = state;
  if (!bootstrap) return entries;
  const { position } = bootstrap;
  const behind = entries.filter((entry) => compareEntries(entry, position) <= 0);
  for (const entry of behind) if (isIn(bootstrap, entry)) state.missing -= 1;
  // Told by another window while this one counted, some may have been taken off twice.
  if (state.missing <= 0) state.missing = await countMissing(state.log, bootstrap);
  checkWhereWhole(state);
  return entries.filter((entry) => compareEntries(entry, position) > 0);
}

/** Where the history is here: folds it beside the work in hand, and then goes on from what this tablet folded itself. */
export function checkWhereWhole(state: StoreState): void {
  const taken = state.bootstrap;
  if (state.checking || !taken || state.missing > 0 || state.isClosed) return;
  state.checking = checkBootstrap(state, taken)
    .catch((error) => tellFault(state, storeFault(error)))
    .finally(() => {
      state.checking = null;
    });
}

async function checkBootstrap(state: StoreState, taken: Bootstrap): Promise<void> {
  const isOver = () => state.isClosed || state.bootstrap !== taken;
  const { foldBehind } = await import('./bootstrap-check.ts');
  for (let isDone = false; !isDone && !isOver(); ) {
    const own = await foldBehind(state.log, taken, { fold: state.fold, isOver });
    if (!own) return;
    isDone = await inTurn(state, () => putInPlace(state, taken, own));
    if (isDone && own.differs.length > 0) await tellDifference(state, taken, own.differs);
  }
}

/** False where an entry came in late meanwhile, so that it must be folded once more. */
async function putInPlace(state: StoreState, taken: Bootstrap, own: OwnFold): Promise<boolean> {
  const { log } = state;
  if (state.isClosed || state.bootstrap !== taken) return true;
  if ((await countUpTo(log, taken.position)) !== own.count) return false;
  const replica = createReplica(
    { state: own.state, position: taken.position, count: own.count },
    state.fold.trust,
  );
  state.replica = replica;
  await readFrom(log, taken.position, async (entries) => {
    await state.fold.trust?.look(entries);
    foldIn(replica, entries);
  });
  await dropBootstrap(log);
  state.bootstrap = null;
  state.peers.postMessage('given-back');
  keepSnapshot(state);
  tellChange(state, []);
  return true;
}

/** The snapshot was wrong: the log keeps who folded it and what was otherwise. A wall screen writes nothing: a tablet that went on from it tells. */
async function tellDifference(
  state: StoreState,
  { from, count }: Bootstrap,
  parts: readonly string[],
): Promise<void> {
  if (state.isScreen) return;
  const payload = { from: from ?? null, entries: count, parts: [...parts] };
  await append(state, [{ kind: 'state.differed', payload }], null);
}

/** The plant gives tickets from somewhere on: what is here is folded anew, once in the life of a plant. */
export function trustTickets(state: StoreState, kept: KeptTrust): Promise<void> {
  return inTurn(state, async () => {
    // A state that stands in for history was folded elsewhere: it is gone on from as it is, and this is heard of again.
    if (state.fold.trust?.id === kept.id || state.bootstrap) return;
    await keepTrust(state.log, kept);
    const fold = foldWith(trustOf(kept));
    state.replica = await foldAll(state.log, null, fold);
    state.fold = fold;
    keepSnapshot(state);
    state.peers.postMessage('trusted');
    tellChange(state, []);
  });
}
