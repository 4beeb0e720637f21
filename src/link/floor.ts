// The plant's floor as its log has it, for a link that may answer its machine: pulled from the server, folded here, kept in memory alone.
// Method: what says nothing of material on slots is left out as it comes; all else is folded in the log's order, anew from the start where an
// entry belongs further back than the fold remembers. Before each answer the log is asked for what is new.
// Refused: a question to the server, which knows no fold; and an answer from what was known a while ago.

import { createReplica, foldIn, type Replica } from '../../shared/floor/replica.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { chainId, type Entry } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { formatCursor, startCursor } from '../../shared/wire/cursor.ts';
import { pulledSchema } from '../../shared/wire/messages.ts';
import { checkPulled } from '../app/sync/check.ts';
import { type Caller, createCaller } from '../app/sync/http.ts';
import type { SyncWorld } from '../app/sync/ports.ts';
import type { LinkIdentity } from './identity.ts';

/** Without a question the log is asked so often, ms. */
const EVERY_MS = 60_000;
const TIMEOUT_MS = 10_000;

/** Kinds that say nothing of which reel stands where: counts, words of stations, ticks of lists. */
const left =
  /^(panels\.|panel\.|parts\.|machine\.|warning\.|step\.|checklist\.|log\.|state\.|sweep\.|labels\.|person\.signed)|^station\.(counted|state|recipe|silent|noticed|doubled|answered)$|^tape\.empty$/;

/** The floor, followed. */
export interface FloorWatch {
  /** The floor up to the end of the server's log; null where that cannot be had within so long, ms. */
  readonly upToDate: (withinMs: number) => Promise<FloorState | null>;
  /** As it was known last; null before the first time. */
  readonly known: () => FloorState | null;
  readonly tick: (nowMs: number) => void;
}

/** Begins to follow. `isEnrolled`: the server knows this link. */
export function followFloor(parts: {
  readonly identity: LinkIdentity;
  readonly world: SyncWorld;
  readonly signal: AbortSignal;
  readonly isEnrolled: () => Promise<boolean>;
}): FloorWatch {
  const { identity, world, signal } = parts;
  const caller = createCaller(world, identity.key, { signal });
  const firsts = new Map<string, Entry>();
  let replica: Replica | null = null;
  let cursor = formatCursor(startCursor);
  let busy: Promise<boolean> | null = null;
  let lastMs = Number.NEGATIVE_INFINITY;

  const beginAnew = () => {
    cursor = formatCursor(startCursor);
    firsts.clear();
  };
  /** Pulls to the end; true where the floor is up to date then. */
  const pull = async (): Promise<boolean> => {
    if (!(await parts.isEnrolled())) return false;
    const isAnew = cursor === formatCursor(startCursor);
    const read = await readOn(caller, cursor, firsts);
    if (read === 'epoch-changed') beginAnew();
    if (typeof read === 'string') return false;
    if (isAnew) replica = createReplica();
    if (replica === null || !foldIn(replica, read.entries.sort(compareEntries))) {
      // Something belongs further back: all is read once more.
      beginAnew();
      return isAnew ? false : pull();
    }
    cursor = read.cursor;
    return true;
  };
  const pullOnce = (): Promise<boolean> => {
    busy ??= pull()
      .catch(() => false)
      .finally(() => {
        busy = null;
      });
    return busy;
  };
  return {
    known: () => replica?.state ?? null,
    upToDate: async (withinMs) => {
      // What is under way may have begun before the question.
      const fresh = busy === null ? pullOnce() : busy.then(pullOnce);
      let timer: NodeJS.Timeout | undefined;
      const late = new Promise<boolean>((resolve) => {
        timer = setTimeout(() => resolve(false), withinMs);
      });
      const isFresh = await Promise.race([fresh, late]);
      clearTimeout(timer);
      return isFresh ? (replica?.state ?? null) : null;
    },
    tick: (nowMs) => {
      if (nowMs - lastMs < EVERY_MS || busy !== null) return;
      lastMs = nowMs;
      void pullOnce();
    },
  };
}

/** Reads from a cursor to the end of the log; or why not. */
async function readOn(
  caller: Caller,
  from: string,
  firsts: Map<string, Entry>,
): Promise<{ readonly entries: Entry[]; readonly cursor: string } | string> {
  const entries: Entry[] = [];
  let cursor = from;
  const log = {
    firstOf: async (chain: { readonly tablet: string; readonly epoch: string }) =>
      firsts.get(chainId(chain)) ?? null,
  };
  for (;;) {
    const pulled = await caller.call(`/api/pull?after=${cursor}`, pulledSchema, { timeoutMs: TIMEOUT_MS });
    if (!pulled.ok) return pulled.error.code;
    const checked = await checkPulled(pulled.value.entries, { log, serverMs: pulled.value.serverMs });
    for (const entry of checked.entries) {
      if (entry.seq === 1) firsts.set(chainId(entry), entry);
      if (!left.test(entry.kind)) entries.push(entry);
    }
    cursor = pulled.value.cursor;
    if (!pulled.value.more) return { entries, cursor };
  }
}
