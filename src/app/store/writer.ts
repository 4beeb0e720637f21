// Appends to the log. Method: take the chain's head and seal outside any transaction, then in one transaction add the
// entries and move the head. A second window that has written in the meantime has taken the next number: the entry cannot be
// added, nothing of the transaction is kept, and all starts over from the new head. A foreign wait inside a transaction would
// commit half of it. Refused: reading the head again inside the transaction; it tells no more and delays every verdict.

import Dexie from 'dexie';
import { formatMoment } from '../../../shared/kit/moment.ts';
import { mayFollow, mergeClock, tickClock } from '../../../shared/log/clock.ts';
import {
  type ClockReading,
  type Entry,
  entryId,
  firstPrev,
  type JsonObject,
} from '../../../shared/log/entry.ts';
import { sealEntry, wellFormed } from '../../../shared/log/seal.ts';
import { unlessAwaited } from '../device/awaited.ts';
import type { Clock } from '../device/clock.ts';
import { entryToRow, type LogDatabase } from './database.ts';
import { type Identity, rememberChain, signHash } from './identity.ts';
import { signHead } from './signed-heads.ts';

/** What is to be written: the rest of the envelope is the writer's business. */
export interface CheckedDraftEntry {
  readonly kind: string;
  readonly payload: JsonObject;
  /** True for what is signed by itself; all else is vouched for by the signed head after it. */
  readonly isSigned: boolean;
}

/** A draft entry, or what it is once the ids of the entries before it in the same append, and its own, are known. */
export type EntryDraft = CheckedDraftEntry | ((before: readonly string[], own: string) => CheckedDraftEntry);

/** The end of this tablet's chain, and the latest clock reading seen from anywhere. */
export interface Head {
  readonly seq: number;
  readonly hash: string;
  readonly hlc: ClockReading | null;
}

const emptyHead: Head = { seq: 0, hash: firstPrev, hlc: null };
/** Two windows that both write lose at most a few races; more means that something else is wrong. */
const TRIES = 20;
/** A head is signed so long after the first entry that it vouches for, ms; where a verdict is awaited then, after that, but within a second in all. */
const SIGN_AFTER_MS = 400;
const SIGN_HELD_MS = 500;

/** Writes to this tablet's chain. */
export interface Writer {
  /** Appends entries, all or none; resolves when they are durable. */
  readonly append: (drafts: readonly EntryDraft[], who: string | null) => Promise<readonly Entry[]>;
  /** Takes note of another tablet's clock, so that own later entries come after what was seen. */
  readonly sawClock: (seen: ClockReading) => void;
  /** Forgets what clocks were seen: some were wrong. */
  readonly forgetClock: () => void;
  /** Goes on in another life of this tablet's chain, whose head is in the database. */
  readonly goOnAs: (identity: Identity) => void;
  /** Runs work that changes the chain; no append runs meanwhile. */
  readonly alone: <T>(work: () => Promise<T>) => Promise<T>;
  /** Signs no head any more: the database is about to close. */
  readonly stop: () => void;
}

/** True where an entry of that number was there already. */
function isTaken(error: unknown): boolean {
  return error instanceof Dexie.BulkError && error.failures.some(({ name }) => name === 'ConstraintError');
}

/** What a writer works on. */
interface Writing {
  readonly db: LogDatabase;
  readonly clock: Clock;
  readonly isPassing: boolean;
  identity: Identity;
  queue: Promise<unknown>;
  seen: ClockReading | null;
  /** The head as last written here: saves a look before each append; another window's append is noticed within. */
  lastHead: Head | null;
  /** Until the head is signed; undefined while nothing waits for that. */
  signing: ReturnType<typeof setTimeout> | undefined;
}

/** By whom and when entries are sealed. `seen`: the latest clock reading of others. */
export interface Sealing {
  readonly identity: Identity;
  readonly clock: Clock;
  readonly seen: ClockReading | null;
  /** The person; null for what the tablet says itself. */
  readonly who: string | null;
}

/** The end of the chain as it is written down. */
export async function readHead(db: LogDatabase): Promise<Head> {
  return ((await db.meta.get('head'))?.value as Head | undefined) ?? emptyHead; // written below only
}

/** Seals drafts as the entries that follow a head, signs what is signed by itself, and writes nothing. */
export async function sealAfter(
  head: Head,
  drafts: readonly EntryDraft[],
  { identity, clock, seen, who }: Sealing,
): Promise<readonly Entry[]> {
  let { seq, hash } = head;
  // A head that an older app let a wrong clock carry away is not gone on from.
  const last = head.hlc && mayFollow(head.hlc, null) ? head.hlc : null;
  let hlc = seen === null ? last : mergeClock(last, seen);
  const sealed: Entry[] = [];
  for (const told of drafts) {
    seq += 1;
    const own = entryId({ tablet: identity.tablet, epoch: identity.epoch, seq });
    const content = typeof told === 'function' ? told(sealed.map(entryId), own) : told;
    const nowMs = clock.nowMs();
    hlc = tickClock(hlc, nowMs);
    const draft = {
      v: 1 as const,
      tablet: identity.tablet,
      epoch: identity.epoch,
      seq,
      at: formatMoment(clock.wallMs?.() ?? nowMs),
      hlc,
      who,
      kind: content.kind,
      payload: wellFormed(content.payload),
      prev: hash,
    };
    const entry = sealEntry(draft);
    sealed.push(content.isSigned ? { ...entry, sig: await signHash(identity, entry.hash) } : entry);
    hash = entry.hash;
  }
  return sealed;
}

/** Adds entries and moves the head, all or none; false where another window took the numbers. */
async function addSealed(db: LogDatabase, sealed: readonly Entry[], head: Head): Promise<boolean> {
  try {
    await db.transaction('rw', db.entries, db.meta, async () => {
      await Promise.all([
        db.entries.bulkAdd(sealed.map(entryToRow)),
        db.meta.put({ key: 'head', value: head }),
      ]);
    });
  } catch (error) {
    if (isTaken(error)) return false;
    throw error;
  }
  return true;
}

async function write(
  writing: Writing,
  drafts: readonly EntryDraft[],
  who: string | null,
): Promise<readonly Entry[]> {
  const { db, clock, isPassing } = writing;
  for (let tries = 0; tries < TRIES; tries++) {
    const head = writing.lastHead ?? (await readHead(db));
    const { identity, seen } = writing;
    const sealed = await sealAfter(head, drafts, { identity, clock, seen, who });
    const last = sealed.at(-1);
    if (!last) return [];
    const written: Head = { seq: last.seq, hash: last.hash, hlc: last.hlc };
    writing.lastHead = null; // until it is known to be durable
    if (!(await addSealed(db, sealed, written))) continue;
    writing.lastHead = written;
    signSoon(writing);
    if (!isPassing) rememberChain({ tablet: last.tablet, epoch: last.epoch, seq: last.seq });
    return sealed;
  }
  throw new Dexie.AbortError(
    'Cannot append as the head of the chain must hold still: another window keeps writing',
  );
}

/** Never in the way of what is written: the head is signed when whoever waits for the entries has had them for a while. */
function signSoon(writing: Writing): void {
  const sign = () => {
    if (writing.signing === undefined) return; // stopped meanwhile
    writing.signing = undefined;
    // A database that was closed or fails meanwhile: the next start signs, and each send does.
    signHead(writing.db, writing.identity).catch(() => undefined);
  };
  writing.signing ??= setTimeout(() => unlessAwaited(sign, SIGN_HELD_MS), SIGN_AFTER_MS);
}

function inTurn<T>(writing: Writing, work: () => Promise<T>): Promise<T> {
  const result = writing.queue.then(work);
  writing.queue = result.catch(() => undefined); // the caller gets the failure; the queue goes on
  return result;
}

/** Makes the writer of a tablet's chain. `isPassing`: nothing of it is remembered outside the database. */
export function createWriter(
  db: LogDatabase,
  identity: Identity,
  { clock, isPassing = false }: { readonly clock: Clock; readonly isPassing?: boolean },
): Writer {
  const writing: Writing = {
    db,
    clock,
    isPassing,
    identity,
    queue: Promise.resolve(),
    seen: null,
    lastHead: null,
    signing: undefined,
  };
  // What an earlier life of the page did not come to: the end of the chain as it lies here.
  signSoon(writing);
  return {
    append: (drafts, who) => inTurn(writing, () => write(writing, drafts, who)),
    sawClock: (reading) => {
      if (mayFollow(reading, clock.isSure?.() ? clock.nowMs() : null))
        writing.seen = mergeClock(writing.seen, reading);
    },
    forgetClock: () => {
      writing.seen = null;
      writing.lastHead = null;
    },
    goOnAs: (next) => {
      writing.identity = next;
      writing.lastHead = null;
    },
    alone: (work) => inTurn(writing, work),
    stop: () => {
      clearTimeout(writing.signing);
      writing.signing = undefined;
    },
  };
}
