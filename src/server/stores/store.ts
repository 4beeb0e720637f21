// The one contract that every database must meet: what the server may ask of its store, and what it may rely on.
// Appending is serialised and durable before it is answered; positions are 1, 2, 3 … in commit order, so that a reader
// who has seen position n has been able to see all before it. The same test body runs on every store.

import type { ClockReading } from '../../../shared/log/entry.ts';
import type { OrderKey } from '../../../shared/log/order.ts';
import type { LeafRange } from '../../../shared/log/tree.ts';
import type { EntryFault } from '../../../shared/wire/codes.ts';
import type { Cursor } from '../../../shared/wire/cursor.ts';
import type { Brought, ChainMark, Head } from '../../../shared/wire/messages.ts';
import type { MonthStore, TextFault } from './month-store.ts';
import type { Joined } from './packed.ts';
import type { PictureStore } from './picture-store.ts';
import type { Present } from './present.ts';
import type { PushStore } from './push-store.ts';
import type { TreeState } from './tree.ts';

/** An entry that was read, hashed and judged, ready to be appended. `body` is the RFC 8785 text that `hash` covers. */
export interface Checked extends Joined {
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
  readonly prev: string;
  readonly hash: string;
  readonly sig: string | null;
  readonly kind: string;
  readonly hlc: ClockReading;
  readonly atMs: number;
  readonly body: string;
  /** How far its clock runs ahead of the server's beyond the limit, in ms; 0 within. */
  readonly aheadMs: number;
  /** The tablet that brought another tablet's entry; null when it brought its own. */
  readonly via: string | null;
  /** A fault found before the store was asked: the entry is quarantined. */
  readonly fault: EntryFault | null;
}

/** What became of an appended batch. */
export interface Appended {
  /** One for each chain of the batch: held without a gap up to `seq`. */
  readonly acks: readonly ChainMark[];
  /** By `tablet/epoch/seq`. */
  readonly faults: readonly { readonly id: string; readonly fault: EntryFault }[];
  /** The end of the log after the append. */
  readonly head: LogHead;
  /** The log's hash tree after the append; null where entries of the log are missing. */
  readonly tree: TreeState | null;
  /** Where the batch's entries that are held lie. */
  readonly places: readonly Place[];
  readonly added: number;
}

/** Entries of one chain that lie one after the other in the log: the first is leaf `index` of its tree. */
export interface Place {
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
  readonly count: number;
  readonly index: number;
}

/** The end of the log: position and running hash (64 hex digits). */
export type LogHead = Cursor;

/** An entry as stored. `text` is the whole entry as JSON. */
export interface StoredEntry {
  readonly pos: number;
  readonly root: string;
  readonly atMs: number;
  readonly text: string;
}

/** What is known of an entry's signature. */
export type SignedEntry = Pick<Checked, 'tablet' | 'epoch' | 'seq' | 'hash' | 'sig'> & {
  readonly pos: number;
};

/** A row of the log with its seals; in place of a text in a month's file that cannot be read now, why. */
export interface SealedRow {
  readonly pos: number;
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
  readonly hash: string;
  readonly root: string;
  readonly body: string | TextFault;
}

export interface Tablet {
  readonly tablet: string;
  readonly name: string;
  readonly publicKey: string;
  readonly enrolledMs: number;
  readonly seenMs: number | null;
  readonly revokedMs: number | null;
  readonly clockOffMs: number | null;
  /** True for a wall screen: it reads the log and sends nothing. */
  readonly screen: boolean;
}

/** A key that a tablet has or had. */
export interface TabletKey {
  readonly tablet: string;
  readonly publicKey: string;
  readonly sinceMs: number;
  readonly revokedMs: number | null;
}

/** That a tablet was heard of; `clockOffMs` null leaves what is known. */
export interface Seen {
  readonly tablet: string;
  readonly seenMs: number;
  readonly clockOffMs: number | null;
}

/** A one-time code or ticket, kept as its hash. */
export interface OneTime {
  readonly hash: string;
  /** One for wall screens has its own, which a server that knows of none does not find. */
  readonly purpose: 'enrol' | 'enrol-screen' | 'export';
  /** JSON of what it is good for. */
  readonly detail: string;
  readonly untilMs: number;
}

/** A person who was checked on a tablet, kept under the hash of its token. */
export interface Session {
  readonly hash: string;
  readonly tablet: string;
  readonly person: string;
  readonly role: string;
  readonly pinChecked: boolean;
  readonly untilMs: number;
}

/** A tablet's signed word that it brought a chain up to here. */
export interface KeptBrought extends Brought {
  readonly via: string;
  readonly atMs: number;
}

/** What checks a PIN. */
export interface KeptPin {
  /** The tablet that set it, and its name there. */
  readonly pin: string;
  readonly salt: string;
  readonly rounds: number;
  /** Sealed (`people/pin-seal.ts`). */
  readonly verifier: string;
  readonly setMs: number;
}

/** Whose PIN was tried on which tablet; an empty name stands for all of them. */
export interface TriedAt {
  readonly tablet: string;
  readonly person: string;
}

/** How many wrong PINs in a row lock, for how long at first, for how long at most, and after what pause all is forgotten; ms. */
export interface TryLimits {
  readonly tries: number;
  readonly lockMs: number;
  readonly lockMostMs: number;
  readonly forgetMs: number;
}

export type Tries = { readonly wrong: number; readonly lockedUntilMs: number };

export interface Snapshot {
  readonly fold: string;
  readonly cursor: Cursor;
  readonly tablet: string;
  readonly atMs: number;
  readonly bytes: Uint8Array;
}

export interface Quarantined {
  readonly id: string;
  readonly hash: string;
  readonly fault: string;
  readonly receivedMs: number;
  readonly via: string;
  readonly text: string;
}

/** A piece of the state that the trace's index was folded to. */
export interface TraceRow {
  readonly part: string;
  readonly key: string;
  readonly value: string;
}

/** A stretch of panels that a tape served, told once nothing can change it any more. `body` is the whole as JSON. */
export interface TraceStretch {
  readonly run: string;
  readonly slot: string;
  readonly feeder: string | null;
  readonly reel: string | null;
  readonly part: string;
  readonly lot: string | null;
  readonly who: string | null;
  readonly atMs: number;
  readonly body: string;
}

/** A scanned panel: its code, and its number within the run. */
export interface TraceSerial {
  readonly serial: string;
  readonly run: string;
  readonly panel: number;
  readonly at: string;
}

/** How the trace's index goes on from one place of the log to the next; all of it or nothing is kept. */
export interface TraceChange {
  /** The place that it goes on from; null for an index that begins anew, whatever was there before. */
  readonly from: string | null;
  readonly to: string;
  readonly put: readonly TraceRow[];
  readonly drop: readonly Pick<TraceRow, 'part' | 'key'>[];
  readonly stretches: readonly TraceStretch[];
  readonly serials: readonly TraceSerial[];
}

/** Which stretches are asked for: every field given must fit. */
export interface TraceWanted {
  /** Stretches of these reels too, whatever reel, lot and part are said; the rest must fit. */
  readonly orReels?: readonly string[];
  readonly run?: string;
  readonly slot?: string;
  readonly feeder?: string;
  readonly reel?: string;
  readonly part?: string;
  readonly lot?: string;
  readonly who?: string;
  /** When they began, ms since 1970, both included. */
  readonly fromMs?: number;
  readonly toMs?: number;
}

/** What other processes on the same database are told. */
export type Signal =
  | { readonly kind: 'appended' }
  | { readonly kind: 'revoked'; readonly tablet: string }
  /** Told within a process alone: a database that was away is back. */
  | { readonly kind: 'back' };

/** Where a chain ends in the log. */
export type ChainEnd = Pick<Checked, 'seq' | 'hash' | 'hlc'>;

export interface Store extends PushStore, PictureStore, MonthStore {
  readonly dialect: 'sqlite' | 'postgres';
  /** Random at creation, another one after a backup was put back. */
  readonly serverEpoch: () => Promise<string>;
  readonly readMeta: (key: string) => Promise<string | null>;
  /** Keeps the first value given for a key, and returns the one kept. */
  readonly keepMeta: (key: string, value: string) => Promise<string>;
  /** Keeps a value in place of the one before it. */
  readonly writeMeta: (key: string, value: string) => Promise<void>;
  /** Keeps a value where `before` is what is kept now, null for nothing; false where it is not. */
  readonly swapMeta: (key: string, before: string | null, value: string) => Promise<boolean>;
  /** Appends batches in one durable transaction, one after the other. `sender` is the tablet that brought each. */
  readonly append: (
    batches: readonly { readonly sender: string; readonly entries: readonly Checked[] }[],
    nowMs: number,
  ) => Promise<readonly Appended[]>;
  /** Appends to one chain what `make` makes of its end, null for none, in the append itself: whoever else extends it comes before or after. */
  readonly appendNext: (
    chain: { readonly tablet: string; readonly epoch: string },
    make: (end: ChainEnd | null) => readonly Checked[],
    nowMs: number,
  ) => Promise<void>;
  readonly head: () => Promise<LogHead>;
  /** The running hash at a position; null where the log does not reach it. */
  readonly rootAt: (pos: number) => Promise<string | null>;
  /** The log's hash tree, made up to the log's end where it is not; null where entries of the log are missing. */
  readonly tree: () => Promise<TreeState | null>;
  /** Hashes of ranges of the tree's leaves, lower-case hex: what proofs are made of. Rejects where the log does not reach them. */
  readonly treeHashes: (ranges: readonly LeafRange[]) => Promise<readonly string[]>;
  /** Entries after `pos` in commit order. */
  readonly page: (pos: number, limit: number) => Promise<readonly StoredEntry[]>;
  /** Signatures of the entries after `pos`, in commit order. */
  readonly signedPage: (pos: number, limit: number) => Promise<readonly SignedEntry[]>;
  /** Every row of the log as it lies there, after `pos`, with what its seals are checked by. */
  readonly sealedPage: (pos: number, limit: number) => Promise<readonly SealedRow[]>;
  /** What the database itself finds wrong with its file, in its words; empty where nothing is, or where it has no such check. */
  readonly quickCheck: () => Promise<readonly string[]>;
  /** Entries up to position `untilPos` in folding order, after a place in it; null for its start. Of one up to `textsAfter` (0) whose text left the store none is read. */
  readonly orderedPage: (
    after: OrderKey | null,
    limit: number,
    untilPos: number,
    textsAfter?: number,
  ) => Promise<readonly StoredEntry[]>;
  /** Entries after `pos` whose hashed text is longer than this many characters, by position. */
  readonly longPage: (pos: number, limit: number, longerThan: number) => Promise<readonly StoredEntry[]>;
  /** Entries of these kinds, in commit order. */
  readonly ofKinds: (kinds: readonly string[], afterPos: number) => Promise<readonly StoredEntry[]>;
  /** The first entry of a chain; null where the log has none of it. */
  readonly firstOf: (chain: { tablet: string; epoch: string }) => Promise<StoredEntry | null>;
  /** Where the first entry stands, from 1, that came in at this moment or later, ms since 1970; null where none did. */
  readonly firstSince: (ms: number) => Promise<number | null>;
  /** The hash of an entry by its name; null where the log has none of it. */
  readonly hashOf: (name: { tablet: string; epoch: string; seq: number }) => Promise<string | null>;
  /** Where an entry stands in the log, from 1, and its hash; null where it is not in it. */
  readonly placed: (name: {
    tablet: string;
    epoch: string;
    seq: number;
  }) => Promise<{ readonly pos: number; readonly hash: string } | null>;
  /** Keeps who brought a chain of a tablet that was never let in; the first word for an end counts. */
  readonly keepBrought: (ends: readonly KeptBrought[]) => Promise<void>;
  /** All of these words. */
  readonly allBrought: () => Promise<readonly KeptBrought[]>;
  readonly heads: () => Promise<readonly Head[]>;
  readonly marks: (chains: readonly { tablet: string; epoch: string }[]) => Promise<readonly ChainMark[]>;
  readonly quarantined: () => Promise<readonly Quarantined[]>;
  /**
   * Looks once at every signature that came in under an older rule: what is none by its form is quarantined, and the entry stays, sealed
   * and unsigned. Returns the ids of those entries.
   */
  readonly quarantineSignatures: (nowMs: number) => Promise<readonly string[]>;

  /** Enrols a tablet, or enrols it anew: not revoked any more, and its newest key is the one that counts. `screen`: as a wall screen. */
  readonly enrolTablet: (
    tablet: { tablet: string; name: string; publicKey: string; screen?: boolean },
    nowMs: number,
  ) => Promise<void>;
  /** Keeps a key of a chain that no tablet writes. */
  readonly keepKey: (tablet: string, publicKey: string, nowMs: number) => Promise<void>;
  /** Every key that the tablet ever had, newest first; none of a wall screen, whose word counts for nothing. */
  readonly tabletKeys: (tablet: string) => Promise<readonly string[]>;
  /** Every key of every tablet but wall screens, in the order of names; `revokedMs`: when its tablet was shut out. */
  readonly allKeys: () => Promise<readonly TabletKey[]>;
  readonly findTablet: (tablet: string) => Promise<Tablet | null>;
  readonly listTablets: () => Promise<readonly Tablet[]>;
  readonly touchTablets: (seen: readonly Seen[]) => Promise<void>;
  /** Names of the tablets that were shut out. */
  readonly revokedTablets: () => Promise<ReadonlySet<string>>;
  /** What of this store outlives a restore. */
  readonly present: () => Promise<Present>;
  /** False where there is none of that name, or it is revoked already. */
  readonly revokeTablet: (tablet: string, nowMs: number) => Promise<boolean>;

  readonly addOneTime: (code: OneTime) => Promise<void>;
  /** True where `takeOneTime` would find it; it stays good. */
  readonly holdsOneTime: (hash: string, purpose: OneTime['purpose'], nowMs: number) => Promise<boolean>;
  /** Uses a code up; null where it is unknown, used or expired. */
  readonly takeOneTime: (hash: string, purpose: OneTime['purpose'], nowMs: number) => Promise<OneTime | null>;
  /** Counts one more of this name within a window that began with the first of them; ms. */
  readonly countRate: (
    name: string,
    nowMs: number,
    windowMs: number,
  ) => Promise<{ readonly count: number; readonly untilMs: number }>;
  /** False where the nonce was claimed before. */
  readonly claimNonce: (nonce: string, nowMs: number, untilMs: number) => Promise<boolean>;
  readonly addSession: (session: Session) => Promise<void>;
  readonly findSession: (hash: string, nowMs: number) => Promise<Session | null>;
  /** Counts one try before the PIN is looked at, so that parallel guesses count too. */
  readonly countTry: (where: TriedAt, nowMs: number, limits: TryLimits) => Promise<Tries>;
  readonly clearTries: (where: TriedAt) => Promise<void>;
  /** One try was none: the PIN was right. */
  readonly takeBackTry: (where: TriedAt) => Promise<void>;
  /** Keeps what checks a PIN, by the PIN's name; what was kept before gives way. */
  readonly keepPin: (pin: KeptPin) => Promise<void>;
  readonly findPin: (pin: string) => Promise<KeptPin | null>;
  readonly putSnapshot: (snapshot: Snapshot) => Promise<void>;
  readonly snapshot: (fold: string) => Promise<Snapshot | null>;
  /** How far the newest one of any fold goes; 0 for none. */
  readonly snapshotPos: () => Promise<number>;
  /** The place of the log that the trace's index was made up to; null where there is none. */
  readonly tracePlace: () => Promise<string | null>;
  /** The index's state, some rows at a time, after a row in the order of part and key. */
  readonly traceState: (
    after: Pick<TraceRow, 'part' | 'key'> | null,
    limit: number,
  ) => Promise<readonly TraceRow[]>;
  /** False, and nothing done, where the index is not at `from`: another process moved it. */
  readonly moveTrace: (change: TraceChange) => Promise<boolean>;
  /** Bodies of the stretches wanted, oldest first. */
  readonly traceStretches: (wanted: TraceWanted, limit: number) => Promise<readonly string[]>;
  /** Scanned panels of some runs, in the order in which they were scanned. */
  readonly traceSerials: (runs: readonly string[]) => Promise<readonly TraceSerial[]>;
  readonly traceSerial: (serial: string) => Promise<readonly TraceSerial[]>;
  /** Drops what has run out: codes, sessions, nonces, pictures. */
  readonly sweep: (nowMs: number) => Promise<void>;

  readonly tell: (signal: Signal) => Promise<void>;
  /** Told of appends and revocations, also by other processes on the same database. */
  readonly watch: (listener: (signal: Signal) => void) => () => void;
  /** True for the one process on a database that does what is to be done once for all of them; another takes over where it ends. */
  readonly leads: () => boolean;
  /** Writes a whole copy to one SQLite file, whichever the store, while others go on writing. */
  readonly backupTo: (file: string) => Promise<void>;
  /** Its size on the disk, bytes, and how many entries it keeps aside. */
  readonly measure: () => Promise<{ readonly bytes: number; readonly aside: number }>;
  readonly close: () => Promise<void>;
}
