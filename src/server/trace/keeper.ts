// Keeps the trace's index of a log that grows, so that a question costs what its answer costs and not what the log costs.
// Method: what is old enough is folded once, in folding order, and kept in the store (settled); the newest hour is folded in
// memory on a copy of it (the tip), since entries of other tablets may still belong between. An entry that comes later than that
// makes the index anew, in the background. All in small pieces: tablets are answered in between. Of several processes on one database
// one leads and writes; the others fold to where it came, and read what it wrote only where they cannot. Folding at each question
// was refused: a year takes minutes.

import { setImmediate as turn } from 'node:timers/promises';
import { copyState } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { copyTrace, takeSettled } from '../../../shared/trace/parts.ts';
import { emptyTrace, type TraceIndex, traceEntry } from '../../../shared/trace/stretches.ts';
import { createPaced } from '../paced.ts';
import { isTextFault, type TextFault } from '../stores/month-store.ts';
import type { Store } from '../stores/store.ts';
import { asWritten, changedRows, placeText, putRows, readPlaceText, type TracePlace, toRow } from './fold.ts';

/** Entries read and folded at once: some thousandths of a second. */
const AT_ONCE = 100;
/** Entries of one commit while the index is behind. */
const COMMIT_EVERY = 2_000;
/** How long an entry may come late without the index being made anew, ms; where more entries than that wait for it, less long. */
const SETTLE_MS = 60 * 60_000;
const TIP_AT_MOST = 4_000;
/** Settled again after that many entries at the earliest: each time the tip is folded anew. */
const SETTLE_EVERY = 500;
/** What was appended is looked at when nothing more has come for so long, ms, or after so long at the latest: a backlog goes first. */
const PACE_MS = 1_000;
const LATEST_MS = 10_000;

/** The index at one moment. */
export interface TraceTip {
  /** What the store's part of the index does not hold: open stretches, and all of the newest time. Read only. */
  readonly index: TraceIndex;
  /** The place up to which the store has the rest; null where it has nothing of this index. */
  readonly base: string | null;
  /** Entries of the log that are not in the index yet. */
  readonly behind: number;
}

export interface TraceKeeper {
  /** The index up to the log's end where the keeper has caught up with it, else as far as it is. Throws where it cannot be made, as texts it is made of cannot be read. */
  readonly tip: () => Promise<TraceTip>;
  /** Resolves when the index has caught up with the log. */
  readonly caughtUp: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

export interface KeeperParts {
  readonly store: Store;
  readonly nowMs: () => number;
  readonly onFault: (error: Error) => void;
}

const start: TracePlace = { untilPos: 0, position: null, count: 0 };

/** What the keeper has in memory. */
interface Held {
  /** What is old enough, as the store has it or will have it at the next commit. */
  settled: TraceIndex;
  /** What of it the store has. */
  written: ReturnType<typeof asWritten>;
  /** The store's place; null where the store's index is to be begun anew. */
  base: string | null;
  place: TracePlace;
  /** The settled part and the newest time on top of it. */
  tip: TraceIndex;
  tipPlace: TracePlace;
  isLoaded: boolean;
  /** What kept the index from being made, and after how many entries of it; null once it went on past that. */
  unread: { readonly fault: TextFault; readonly count: number } | null;
  readonly store: Store;
  readonly nowMs: () => number;
  readonly isStopped: () => boolean;
}

/** Starts keeping. */
export function createTraceKeeper({ store, nowMs, onFault }: KeeperParts): TraceKeeper {
  const settled = emptyTrace();
  const held: Held = {
    settled,
    written: asWritten(settled),
    base: null,
    place: start,
    tip: emptyTrace(),
    tipPlace: start,
    isLoaded: false,
    unread: null,
    store,
    nowMs,
    isStopped: () => paced.isStopped(),
  };
  const paced = createPaced({
    work: () => keepUp(held),
    onFault,
    pauseMs: PACE_MS,
    latestMs: LATEST_MS,
  });
  const unwatch = store.watch((signal) => {
    if (signal.kind === 'appended') paced.ask();
  });
  paced.ask();

  const caughtUp = async () => {
    while (!paced.isStopped()) {
      const fault = await paced.now();
      if (fault) throw fault;
      if (held.isLoaded && held.tipPlace.untilPos === (await store.head()).pos) return;
      await turn();
    }
  };
  return {
    caughtUp,
    tip: async () => {
      if (held.unread) {
        // No answer is made of nothing; that the file is back nobody says but it.
        paced.ask();
        throw held.unread.fault;
      }
      const { pos } = await store.head();
      // A little behind is caught up with here; more than that is said.
      if (held.isLoaded && pos - held.tipPlace.count <= TIP_AT_MOST) await caughtUp();
      return { index: held.tip, base: held.base, behind: Math.max(0, pos - held.tipPlace.count) };
    },
    stop: async () => {
      unwatch();
      await paced.stop();
    },
  };
}

/** Takes in what the log has grown by. */
async function keepUp(held: Held): Promise<void> {
  try {
    if (!held.isLoaded) await load(held);
    while (!held.isStopped() && (await lookAt(held))) await turn();
    if (!held.store.leads()) await follow(held);
    else while (!held.isStopped() && (await isSettlingDue(held)) && (await settle(held))) await turn();
    await foldTip(held);
    held.unread = null;
  } catch (error) {
    held.isLoaded = false;
    throw error;
  }
}

/** The index as the store has it. */
async function load(held: Held): Promise<void> {
  let read = await readIndex(held);
  // Another process moved it while it was read: rows of one place and of the next are the index of neither.
  while (!held.isStopped() && read.told !== (await held.store.tracePlace())) read = await readIndex(held);
  const place = readPlaceText(read.told);
  held.base = place && read.told;
  held.place = place ?? start;
  held.settled = read.index;
  held.written = asWritten(held.settled);
  tipAnew(held);
  await foldTip(held);
  held.isLoaded = true;
}

/** The store's rows as they come, and the place at which they were begun. */
async function readIndex({ store, isStopped }: Held): Promise<{ told: string | null; index: TraceIndex }> {
  const told = await store.tracePlace();
  const index = emptyTrace();
  // That of another version is none for this one.
  if (readPlaceText(told) === null) return { told, index };
  for (let last: { part: string; key: string } | null = null; !isStopped(); ) {
    const rows = await store.traceState(last, 500);
    putRows(index, rows);
    last = rows.at(-1) ?? null;
    if (!last) break;
    await turn();
  }
  return { told, index };
}

/** The tip begins where the settled part ends. */
function tipAnew(held: Held): void {
  held.tip = copyTrace(held.settled);
  held.tipPlace = held.place;
}

async function foldTip(held: Held): Promise<void> {
  while (!held.isStopped()) {
    const entries = await readOrdered(held, held.tipPlace);
    for (const entry of entries) traceEntry(held.tip, entry);
    held.tipPlace = after(held.tipPlace, entries);
    if (entries.length < AT_ONCE) return;
    await turn();
  }
}

async function readOrdered(
  held: Held,
  { position, untilPos, count }: TracePlace,
  most = AT_ONCE,
): Promise<readonly Entry[]> {
  const rows = await held.store.orderedPage(position, most, untilPos).catch((error: unknown) => {
    if (isTextFault(error)) held.unread = { fault: error, count };
    throw error;
  });
  if (held.unread && count + rows.length > held.unread.count) held.unread = null;
  return rows.map((row) => JSON.parse(row.text) as Entry); // the store holds checked entries only
}

/** Takes in that the log has grown; an entry that belongs before the index's place begins it, or the tip, anew. */
async function lookAt(held: Held): Promise<boolean> {
  const { store, place, tipPlace } = held;
  if (place.position === null && tipPlace.position === null) {
    // Nothing folded yet that anything could come before.
    const { pos } = await store.head();
    held.place = { ...place, untilPos: pos };
    held.tipPlace = held.place;
    return false;
  }
  const rows = await store.page(tipPlace.untilPos, AT_ONCE);
  const last = rows.at(-1);
  if (!last) return false;
  const fresh = rows.map((row) => JSON.parse(row.text) as Entry);
  const isBefore = ({ position }: TracePlace) =>
    position !== null && fresh.some((entry) => compareEntries(entry, position) <= 0);
  const beginsAnew = isBefore(place);
  const isTipOld = beginsAnew || isBefore(tipPlace);
  if (beginsAnew) {
    held.settled = emptyTrace();
    held.written = asWritten(held.settled);
    held.base = null;
  }
  held.place = { ...(beginsAnew ? start : place), untilPos: last.pos };
  held.tipPlace = { ...tipPlace, untilPos: last.pos };
  if (isTipOld) tipAnew(held);
  return true;
}

/** Folds what is old enough and commits it; false where nothing was. */
async function settle(held: Held): Promise<boolean> {
  const { settled } = held;
  const olderThan = held.nowMs() - SETTLE_MS;
  const from = held.place;
  while (!held.isStopped() && held.place.count - from.count < COMMIT_EVERY) {
    const waiting = held.place.untilPos - held.place.count;
    const entries = await readOrdered(held, held.place);
    const due = entries.filter((entry, at) => waiting - at > TIP_AT_MOST || entry.hlc.ms < olderThan);
    for (const entry of due) traceEntry(settled, entry);
    held.place = after(held.place, due);
    if (due.length < AT_ONCE) break;
    await turn();
  }
  if (held.place.count === from.count) return false;
  await commit(held);
  return true;
}

async function commit(held: Held): Promise<void> {
  const { settled } = held;
  const { put, drop, open } = changedRows(held.written, settled);
  const { stretches, serials } = takeSettled(settled);
  const to = placeText(held.place);
  const change = { from: held.base, to, put, drop, stretches: stretches.map(toRow), serials };
  if (!(await held.store.moveTrace(change))) {
    // Another process on the same store went on from here: so does this one, from where that is.
    await load(held);
    return;
  }
  held.base = to;
  held.written = { state: copyState(settled.state), open };
  tipAnew(held);
}

/** Goes to the place to which the process that leads has come. */
async function follow(held: Held): Promise<void> {
  const told = await held.store.tracePlace();
  const to = readPlaceText(told);
  // A program of another version leads: its index is none for this one, which keeps its own in memory.
  if (told === held.base || to === null) return;
  if (!(await foldTo(held, to))) return load(held);
  takeSettled(held.settled);
  held.base = told;
  held.written = asWritten(held.settled);
  tipAnew(held);
}

/** Folds up to a place; false where the entries on the way to it are not those that led there. */
async function foldTo(held: Held, to: TracePlace): Promise<boolean> {
  const { position } = to;
  if (position === null || to.count < held.place.count) return false;
  while (!held.isStopped() && held.place.count < to.count) {
    const entries = await readOrdered(held, held.place);
    const some = entries.filter((entry) => compareEntries(entry, position) <= 0);
    for (const entry of some) traceEntry(held.settled, entry);
    held.place = after(held.place, some);
    if (some.length < AT_ONCE) break;
    await turn();
  }
  const last = held.place.position;
  return held.place.count === to.count && last !== null && compareEntries(last, position) === 0;
}

async function isSettlingDue(held: Held): Promise<boolean> {
  const { place, nowMs } = held;
  const waiting = place.untilPos - place.count;
  if (waiting > 2 * TIP_AT_MOST) return true;
  if (waiting < SETTLE_EVERY) return false;
  const [entry] = await readOrdered(held, place, 1);
  return entry !== undefined && entry.hlc.ms < nowMs() - SETTLE_MS - SETTLE_MS / 4;
}

function after(place: TracePlace, entries: readonly Entry[]): TracePlace {
  const last = entries.at(-1);
  if (!last) return place;
  const { hlc, tablet, epoch, seq } = last;
  return { ...place, position: { hlc, tablet, epoch, seq }, count: place.count + entries.length };
}
