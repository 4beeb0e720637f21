// Keeps the trace's index of a log that grows, so that a question costs what its answer costs and not what the log costs.
// Method: what is old enough is folded once, in folding order, and kept in the store (settled); the newest hour is folded in
// memory on a copy of it (the tip), since entries of other tablets may still belong between. An entry that comes later than that
// makes the index anew, in the background. All in small pieces: tablets are answered in between. Folding at each question was
// refused: a year takes minutes.

import { setImmediate as turn } from 'node:timers/promises';
import { copyState } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { copyTrace, takeSettled } from '../../../shared/trace/parts.ts';
import { emptyTrace, type TraceIndex, traceEntry } from '../../../shared/trace/stretches.ts';
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
  /** Entries of the log that are not in the index yet. */
  readonly behind: number;
}

export interface TraceKeeper {
  /** The index up to the log's end where the keeper has caught up with it, else as far as it is. */
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

/** Starts keeping. */
export function createTraceKeeper({ store, nowMs, onFault }: KeeperParts): TraceKeeper {
  let settled = emptyTrace();
  let written = asWritten(settled);
  /** Null where the store's index is to be begun anew. */
  let base: string | null = null;
  let place = start;
  let tip = emptyTrace();
  let tipPlace = start;
  let isLoaded = false;
  let isStopped = false;
  let timer: NodeJS.Timeout | null = null;
  /** When the oldest append that was not looked at was told. */
  let firstMs: number | null = null;
  let running: Promise<void> | null = null;
  let wanted = false;
  /** What ended the last look. */
  let fault: Error | null = null;

  /** The index as the store has it. */
  const load = async () => {
    base = await store.tracePlace();
    settled = emptyTrace();
    place = readPlaceText(base) ?? start;
    if (place === start) base = null;
    else {
      for (let last: { part: string; key: string } | null = null; !isStopped; ) {
        const rows = await store.traceState(last, 500);
        putRows(settled, rows);
        last = rows.at(-1) ?? null;
        if (!last) break;
        await turn();
      }
    }
    written = asWritten(settled);
    tipAnew();
    await foldTip();
    isLoaded = true;
  };

  /** The tip begins where the settled part ends. */
  const tipAnew = () => {
    tip = copyTrace(settled);
    tipPlace = place;
  };

  const foldTip = async () => {
    while (!isStopped) {
      const entries = await readOrdered(tipPlace);
      for (const entry of entries) traceEntry(tip, entry);
      tipPlace = after(tipPlace, entries);
      if (entries.length < AT_ONCE) return;
      await turn();
    }
  };

  const readOrdered = async ({ position, untilPos }: TracePlace): Promise<readonly Entry[]> => {
    const rows = await store.orderedPage(position, AT_ONCE, untilPos);
    return rows.map((row) => JSON.parse(row.text) as Entry); // the store holds checked entries only
  };

  /** Takes in that the log has grown; an entry that belongs before the index's place begins it, or the tip, anew. */
  const lookAt = async (): Promise<boolean> => {
    if (place.position === null && tipPlace.position === null) {
      // Nothing folded yet that anything could come before.
      const { pos } = await store.head();
      place = { ...place, untilPos: pos };
      tipPlace = place;
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
      settled = emptyTrace();
      written = asWritten(settled);
      place = start;
      base = null;
    }
    place = { ...place, untilPos: last.pos };
    tipPlace = { ...tipPlace, untilPos: last.pos };
    if (isTipOld) tipAnew();
    return true;
  };

  /** Folds what is old enough and commits it; false where nothing was. */
  const settle = async (): Promise<boolean> => {
    const olderThan = nowMs() - SETTLE_MS;
    const from = place;
    while (!isStopped && place.count - from.count < COMMIT_EVERY) {
      const waiting = place.untilPos - place.count;
      const entries = await readOrdered(place);
      const due = entries.filter((entry, at) => waiting - at > TIP_AT_MOST || entry.hlc.ms < olderThan);
      for (const entry of due) traceEntry(settled, entry);
      place = after(place, due);
      if (due.length < AT_ONCE) break;
      await turn();
    }
    if (place.count === from.count) return false;
    await commit();
    return true;
  };

  const commit = async () => {
    const { put, drop, open } = changedRows(written, settled);
    const { stretches, serials } = takeSettled(settled);
    const to = placeText(place);
    const change = { from: base, to, put, drop, stretches: stretches.map(toRow), serials };
    if (!(await store.moveTrace(change))) {
      // Another process on the same store went on from here: so does this one, from where that is.
      await load();
      return;
    }
    base = to;
    written = { state: copyState(settled.state), open };
    tipAnew();
  };

  const isSettlingDue = async () => {
    const waiting = place.untilPos - place.count;
    if (waiting > 2 * TIP_AT_MOST) return true;
    if (waiting < SETTLE_EVERY) return false;
    const [first] = await store.orderedPage(place.position, 1, place.untilPos);
    const entry = first && (JSON.parse(first.text) as Entry);
    return entry !== undefined && entry.hlc.ms < nowMs() - SETTLE_MS - SETTLE_MS / 4;
  };

  const run = async () => {
    if (!isLoaded) await load();
    do {
      wanted = false;
      while (!isStopped && (await lookAt())) await turn();
      while (!isStopped && (await isSettlingDue()) && (await settle())) await turn();
      await foldTip();
    } while (wanted && !isStopped);
  };

  const begin = () => {
    timer = null;
    firstMs = null;
    if (isStopped) return;
    if (!running) fault = null;
    running ??= run()
      .catch((error) => {
        isLoaded = false;
        fault = error as Error;
        if (!isStopped) onFault(fault);
      })
      .finally(() => {
        running = null;
        if (wanted) schedule();
      });
  };
  const schedule = () => {
    wanted = true;
    if (running || isStopped) return;
    firstMs ??= performance.now();
    if (timer) clearTimeout(timer);
    timer = setTimeout(begin, Math.max(0, Math.min(PACE_MS, firstMs + LATEST_MS - performance.now())));
    timer.unref();
  };
  const unwatch = store.watch((signal) => {
    if (signal.kind === 'appended') schedule();
  });
  schedule();

  const caughtUp = async () => {
    while (!isStopped) {
      if (timer) clearTimeout(timer);
      begin();
      await running;
      if (fault) throw fault;
      if (isLoaded && tipPlace.untilPos === (await store.head()).pos) return;
      await turn();
    }
  };
  return {
    caughtUp,
    tip: async () => {
      const { pos } = await store.head();
      // A little behind is caught up with here; more than that is said.
      if (isLoaded && pos - tipPlace.count <= TIP_AT_MOST) await caughtUp();
      return { index: tip, behind: Math.max(0, pos - tipPlace.count) };
    },
    stop: async () => {
      isStopped = true;
      unwatch();
      if (timer) clearTimeout(timer);
      await running;
    },
  };
}

function after(place: TracePlace, entries: readonly Entry[]): TracePlace {
  const last = entries.at(-1);
  if (!last) return place;
  const { hlc, tablet, epoch, seq } = last;
  return { ...place, position: { hlc, tablet, epoch, seq }, count: place.count + entries.length };
}
