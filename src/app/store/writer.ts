// Appends to the log. Method: take the chain's head, seal and sign outside any transaction, then in one transaction add the
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
import type { Clock } from '../device/clock.ts';
import { entryToRow, type LogDatabase } from './database.ts';
import { type Identity, rememberChain, signHash } from './identity.ts';

/** What is to be written: the rest of the envelope is the writer's business. */
export interface EntryWish {
  readonly kind: string;
  readonly payload: JsonObject;
}

/** A wish, or what it is once the ids of the entries before it in the same append are known. */
export type EntryDraft = EntryWish | ((before: readonly string[]) => EntryWish);

/** The end of this tablet's chain, and the latest clock reading seen from anywhere. */
interface Head {
  readonly seq: number;
  readonly hash: string;
  readonly hlc: ClockReading | null;
}

const emptyHead: Head = { seq: 0, hash: firstPrev, hlc: null };
/** Two windows that both write lose at most a few races; more means that something else is wrong. */
const TRIES = 20;

/** Writes to this tablet's chain. */
export interface Writer {
  /** Appends entries, all or none; resolves when they are durable. */
  readonly append: (drafts: readonly EntryDraft[], who: string | null) => Promise<readonly Entry[]>;
  /** Does all of an append but the writing: the first one is then as quick as the tenth. */
  readonly rehearse: (wishes: readonly EntryWish[]) => Promise<void>;
  /** Takes note of another tablet's clock, so that own later entries come after what was seen. */
  readonly sawClock: (seen: ClockReading) => void;
  /** Forgets what clocks were seen: some were wrong. */
  readonly forgetClock: () => void;
  /** Goes on in another life of this tablet's chain, whose head is in the database. */
  readonly goOnAs: (identity: Identity) => void;
  /** Runs work that changes the chain; no append runs meanwhile. */
  readonly alone: <T>(work: () => Promise<T>) => Promise<T>;
}

/** True where an entry of that number was there already. */
function isTaken(error: unknown): boolean {
  return error instanceof Dexie.BulkError && error.failures.some(({ name }) => name === 'ConstraintError');
}

/** Makes the writer of a tablet's chain. `isPassing`: nothing of it is remembered outside the database. */
export function createWriter(
  db: LogDatabase,
  firstIdentity: Identity,
  { clock, isPassing = false }: { readonly clock: Clock; readonly isPassing?: boolean },
): Writer {
  let identity = firstIdentity;
  let queue: Promise<unknown> = Promise.resolve();
  let seen: ClockReading | null = null;
  /** The head as last written here: saves a look before each append; another window's append is noticed within. */
  let lastHead: Head | null = null;

  async function readHead(): Promise<Head> {
    return ((await db.meta.get('head'))?.value as Head | undefined) ?? emptyHead; // written below only
  }

  async function seal(head: Head, drafts: readonly EntryDraft[], who: string | null): Promise<Entry[]> {
    let { seq, hash } = head;
    // A head that an older app let a wrong clock carry away is not gone on from.
    const own = head.hlc && mayFollow(head.hlc, null) ? head.hlc : null;
    let hlc = seen === null ? own : mergeClock(own, seen);
    const sealed: Entry[] = [];
    for (const told of drafts) {
      const wish = typeof told === 'function' ? told(sealed.map(entryId)) : told;
      const nowMs = clock.nowMs();
      hlc = tickClock(hlc, nowMs);
      seq += 1;
      const draft = {
        v: 1 as const,
        tablet: identity.tablet,
        epoch: identity.epoch,
        seq,
        at: formatMoment(clock.wallMs?.() ?? nowMs),
        hlc,
        who,
        kind: wish.kind,
        payload: wellFormed(wish.payload),
        prev: hash,
      };
      const entry = sealEntry(draft);
      sealed.push({ ...entry, sig: await signHash(identity, entry.hash) });
      hash = entry.hash;
    }
    return sealed;
  }

  async function write(drafts: readonly EntryDraft[], who: string | null): Promise<readonly Entry[]> {
    for (let tries = 0; tries < TRIES; tries++) {
      const head: Head = lastHead ?? (await readHead());
      const sealed = await seal(head, drafts, who);
      const last = sealed.at(-1);
      if (!last) return [];
      const written: Head = { seq: last.seq, hash: last.hash, hlc: last.hlc };
      lastHead = null; // until it is known to be durable
      try {
        await db.transaction('rw', db.entries, db.meta, async () => {
          await Promise.all([
            db.entries.bulkAdd(sealed.map(entryToRow)),
            db.meta.put({ key: 'head', value: written }),
          ]);
        });
      } catch (error) {
        if (isTaken(error)) continue;
        throw error;
      }
      lastHead = written;
      if (!isPassing) rememberChain({ tablet: last.tablet, epoch: last.epoch, seq: last.seq });
      return sealed;
    }
    throw new Dexie.AbortError(
      'Cannot append as the head of the chain must hold still: another window keeps writing',
    );
  }

  return {
    append: (drafts, who) => {
      const result = queue.then(() => write(drafts, who));
      queue = result.catch(() => undefined); // the caller gets the failure; the queue goes on
      return result;
    },
    rehearse: async (wishes) => {
      await queue;
      const head = lastHead ?? (await readHead());
      await seal(head, wishes, null);
      // What the head is was read for nothing else; an append in the meantime knows better.
      lastHead ??= head;
    },
    sawClock: (reading) => {
      if (mayFollow(reading, clock.isSure?.() ? clock.nowMs() : null)) seen = mergeClock(seen, reading);
    },
    forgetClock: () => {
      seen = null;
      lastHead = null;
    },
    goOnAs: (next) => {
      identity = next;
      lastHead = null;
    },
    alone: (work) => {
      const result = queue.then(work);
      queue = result.catch(() => undefined); // the caller gets the failure; the queue goes on
      return result;
    },
  };
}
