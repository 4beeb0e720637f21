// The plant's floor as its log has it, for a link that may answer its machine: pulled from the server, judged and folded here as on a tablet.
// Method: what says nothing of material on slots is left out as it comes; all else is folded page by page, and kept in the link's folder for
// the next start. An entry that belongs further back than the fold remembers is put aside; the log is then read once more from its start, with
// those at their places. Before each answer the log is asked for what is new.
// Refused: a question to the server, which knows no fold; an answer from what was known a while ago; and the log in memory, which a year fills.

import { FOLD_VERSION } from '../../shared/floor/fold-version.ts';
import { isReelKnown } from '../../shared/floor/gone-reels.ts';
import { createReplica, foldIn, type Replica } from '../../shared/floor/replica.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { chainId, type Entry, entryId } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { parseTicketStart } from '../../shared/log/ticket-start.ts';
import { formatCursor, startCursor } from '../../shared/wire/cursor.ts';
import { plantKeysSchema, pulledSchema } from '../../shared/wire/messages.ts';
import { trustFromNote } from '../app/store/tickets.ts';
import { type TabletTrust, trustOf } from '../app/store/trust.ts';
import { checkPulled } from '../app/sync/check.ts';
import { noteSignedBy } from '../app/sync/heads.ts';
import { type Caller, createCaller } from '../app/sync/http.ts';
import type { SyncWorld } from '../app/sync/ports.ts';
import { COPIES, dropFloor, keepFloor, readFloor } from './floor-file.ts';
import { thinReplica } from './floor-thin.ts';
import type { LinkIdentity } from './identity.ts';

/** Without a question the log is asked so often, ms. */
const EVERY_MS = 60_000;
const TIMEOUT_MS = 10_000;
/** How often it is asked whose tickets count, and what was folded is kept, ms. */
const KEYS_EVERY_MS = 600_000;
const KEEP_EVERY_MS = 4 * 3_600_000;

/**
 * Kinds that say nothing of which reel stands where: counts, words of stations, ticks of lists; and pictures of parts, which are most of a list's bytes.
 * Changeovers and sweeps are folded, as a lane of a conveyor is not taken away while one goes on.
 */
const left =
  /^(panels\.|panel\.|parts\.|machine\.|warning\.|step\.|checklist\.|changeover\.left-open|log\.|state\.|labels\.|person\.signed)|^station\.(counted|state|recipe|silent|noticed|doubled|answered(-again)?)$|^(tape\.empty|part\.pictured)$/;

/** The floor, followed. */
export interface FloorWatch {
  /** The floor up to the end of the server's log; null where that cannot be had within so long, ms. */
  readonly upToDate: (withinMs: number) => Promise<FloorState | null>;
  /** As it was known last; null before the first time. */
  readonly known: () => FloorState | null;
  /** True for a reel that the log names, also one that is not part of the state any more. */
  readonly knows: (reel: string) => boolean;
  readonly tick: (nowMs: number) => void;
}

/** What following needs. */
export interface FollowParts {
  /** Where what was folded is kept for the next start. */
  readonly folder: string;
  readonly identity: LinkIdentity;
  readonly world: SyncWorld;
  readonly signal: AbortSignal;
  /** The plant's key as it was told when the link joined; null before. */
  readonly serverKey: () => Promise<string | null>;
  /** A line for people. */
  readonly say: (line: string) => void;
}

/** What is followed, as it stands. */
interface Following extends FollowParts {
  readonly caller: Caller;
  trust: TabletTrust | null;
  keysMs: number;
  keptMs: number;
  hasRead: boolean;
  replica: Replica | null;
  cursor: string;
  firsts: Map<string, Entry>;
  /** Reels that the log names and no answer asks for. */
  reels: Set<string>;
  /** Entries further back than the fold remembers, by their names: folded at their places when the log is read anew. */
  aside: Map<string, Entry>;
  /** How many of them are at their places. */
  placed: number;
}

const start = formatCursor(startCursor);

/** Begins to follow. */
export function followFloor(parts: FollowParts): FloorWatch {
  const { identity, world, signal } = parts;
  const never = Number.NEGATIVE_INFINITY;
  const following: Following = {
    ...parts,
    caller: createCaller(world, identity.key, { signal }),
    trust: null,
    keysMs: never,
    keptMs: never,
    hasRead: false,
    replica: null,
    cursor: start,
    firsts: new Map(),
    reels: new Set(),
    aside: new Map(),
    placed: 0,
  };
  let busy: Promise<boolean> | null = null;
  let lastMs = never;
  const pullOnce = (): Promise<boolean> => {
    busy ??= pull(following)
      .catch(() => false)
      .finally(() => {
        busy = null;
      });
    return busy;
  };
  return {
    known: () => following.replica?.state ?? null,
    knows: (reel) =>
      following.reels.has(reel) || (following.replica !== null && isReelKnown(following.replica.state, reel)),
    upToDate: async (withinMs) => {
      // What is under way may have begun before the question.
      const fresh = busy === null ? pullOnce() : busy.then(pullOnce);
      let timer: NodeJS.Timeout | undefined;
      const late = new Promise<boolean>((resolve) => {
        timer = setTimeout(() => resolve(false), withinMs);
      });
      const isFresh = await Promise.race([fresh, late]);
      clearTimeout(timer);
      return isFresh ? (following.replica?.state ?? null) : null;
    },
    tick: (nowMs) => {
      if (nowMs - lastMs < EVERY_MS || busy !== null) return;
      lastMs = nowMs;
      void pullOnce();
    },
  };
}

/** The fold of this link: with another trust other entries are unproven, and the state is another. */
const foldName = (trust: TabletTrust | null): string => `link-3 floor-${FOLD_VERSION} ${trust?.id ?? ''}`;

function beginAnew(of: Following): void {
  of.cursor = start;
  of.firsts = new Map();
  of.reels = new Set();
  of.replica = null;
  of.placed = of.aside.size;
}

/** Pulls to the end of the log; true where the floor is up to date then. */
async function pull(of: Following): Promise<boolean> {
  const serverKey = await of.serverKey();
  if (serverKey === null) return false;
  if (!(await learnTrust(of, serverKey))) return false;
  if (!of.hasRead) {
    of.hasRead = true;
    const kept = await readFloor(of.folder, foldName(of.trust), of.trust);
    if (kept) Object.assign(of, kept);
    of.keptMs = kept ? of.world.nowMs() : Number.NEGATIVE_INFINITY;
  }
  const isAnew = of.replica === null;
  // A floor that is half read is nobody's answer.
  const replica = of.replica ?? createReplica(undefined, of.trust, COPIES);
  const read = await readOn(of, replica);
  if (read === 'epoch-changed') {
    of.aside = new Map();
    beginAnew(of);
  }
  if (read !== null) {
    if (isAnew) beginAnew(of);
    return false;
  }
  if (of.aside.size > of.placed) {
    // All is read once more, with these at their places.
    beginAnew(of);
    dropFloor(of.folder);
    return pull(of);
  }
  of.aside = new Map();
  of.placed = 0;
  of.replica = replica;
  keepWhereDue(of, replica);
  return true;
}

/** Whose tickets count, by the plant's own note. No answer, and what was known stands; false where nothing was known yet. */
async function learnTrust(of: Following, serverKey: string): Promise<boolean> {
  const nowMs = of.world.nowMs();
  if (nowMs - of.keysMs < KEYS_EVERY_MS) return true;
  const told = await of.caller.call('/api/keys', plantKeysSchema, { timeoutMs: TIMEOUT_MS });
  // Servers of before tickets know no such list.
  if (!told.ok && told.error.code !== 'not-found') return of.keysMs > 0;
  of.keysMs = nowMs;
  const note = told.ok ? told.value.tickets : undefined;
  if (note === undefined || typeof (await noteSignedBy(note, serverKey, parseTicketStart)) === 'string')
    return true;
  const kept = trustFromNote({ note, serverKey });
  if (!kept || kept.id === of.trust?.id) return true;
  of.trust = trustOf(kept);
  beginAnew(of);
  return true;
}

function keepWhereDue(of: Following, replica: Replica): void {
  const nowMs = of.world.nowMs();
  if (nowMs - of.keptMs < KEEP_EVERY_MS) return;
  of.keptMs = nowMs;
  try {
    keepFloor(of.folder, foldName(of.trust), replica, of);
  } catch (error) {
    of.say(
      `what is known of the floor could not be kept (${String(error)}); the next start reads the whole log`,
    );
  }
}

/** Reads from where it is to the end of the log and folds page by page; null, or why not. */
async function readOn(of: Following, replica: Replica): Promise<string | null> {
  const log = {
    firstOf: async (chain: { readonly tablet: string; readonly epoch: string }) =>
      of.firsts.get(chainId(chain)) ?? null,
  };
  /** Entries put aside before, for their places. */
  const late = of.cursor === start ? [...of.aside.values()].sort(compareEntries) : [];
  const isLate = new Set(late.map(entryId));
  for (;;) {
    const path = `/api/pull?after=${of.cursor}`;
    const pulled = await of.caller.call(path, pulledSchema, { timeoutMs: TIMEOUT_MS });
    if (!pulled.ok) return pulled.error.code;
    const checked = await checkPulled(pulled.value.entries, { log, serverMs: pulled.value.serverMs });
    const page: Entry[] = [];
    for (const entry of checked.entries) {
      if (entry.seq === 1) of.firsts.set(chainId(entry), entry);
      if (!left.test(entry.kind) && !isLate.has(entryId(entry))) page.push(entry);
    }
    page.sort(compareEntries);
    const last = page.at(-1);
    const inTime = late.findIndex((each) => last === undefined || compareEntries(each, last) > 0);
    const due = late.splice(
      0,
      pulled.value.more ? Math.max(0, inTime < 0 ? late.length : inTime) : late.length,
    );
    await foldPage(of, replica, [...page, ...due].sort(compareEntries));
    of.cursor = pulled.value.cursor;
    if (!pulled.value.more) return null;
  }
}

async function foldPage(of: Following, replica: Replica, page: readonly Entry[]): Promise<void> {
  await of.trust?.look(page);
  const oldest = replica.marks[0]?.position ?? null;
  const isTooLate = (entry: Entry) => oldest !== null && compareEntries(entry, oldest) <= 0;
  for (const entry of page) if (isTooLate(entry)) of.aside.set(entryId(entry), entry);
  foldIn(
    replica,
    page.filter((entry) => !isTooLate(entry)),
  );
  thinReplica(replica, of.reels);
}
