// What sync needs from the tablet: a log, a key, time, chance, a network. Small on purpose, so that tests hand in their own
// and the loop runs in the page as it does in a test.

import type { Entry } from '../../../shared/log/entry.ts';
import type { EntryFault } from '../../../shared/wire/codes.ts';
import type { Head, PinsHanded } from '../../../shared/wire/messages.ts';

/** What sync remembers between starts. Kept beside the log, in the same database. */
export interface SyncMemory {
  /** Set once enrolled. */
  readonly enrolled: {
    readonly plant: string;
    readonly serverKey: string;
    /** True on a wall screen: it reads the plant's log, and nothing that it holds is ever sent. */
    readonly screen?: boolean;
  } | null;
  /** Which life of the server the rest belongs to. */
  readonly serverEpoch: string | null;
  /** How far the server's log was read. */
  readonly cursor: string | null;
  /** Where the log's history still comes in, after a start from a snapshot; null where all of it is here. */
  readonly history: { readonly at: string; readonly untilPos: number } | null;
  /** `tablet/epoch` -> sequence number up to which the server holds that chain. */
  readonly acked: Readonly<Record<string, number>>;
  /** The server's clock minus this tablet's, ms, as last seen. */
  readonly clockOffMs: number;
  /** When the server was found to hold less than it had, ms since 1970; null where it never was, or somebody took note. */
  readonly rolledBackMs: number | null;
  /** The newest head of the server's log that was checked, a signed note; null before the first. */
  readonly head: string | null;
  /** What of the server's heads did not hold; null where all did, or somebody took note. */
  readonly headFault: HeadFault | null;
  /** Entries of the largest head that this tablet signed as a witness; 0 before the first. */
  readonly cosigned: number;
}

/**
 * True where sync's memory, written by this tablet's log alone, says that the tablet was let in as a wall screen; undefined before any sync.
 * Such a screen reads the plant's log and writes nothing: the store asks this with the first reading of the log, so that no part of the page
 * or of the store itself can write before that is known.
 */
export function isScreenIn(memory: unknown): boolean {
  const { enrolled } = (memory ?? {}) as { readonly enrolled?: { readonly screen?: boolean } | null };
  return enrolled?.screen === true;
}

/** `forked`: its log does not go on from the one it showed; `other-key`: another key signs; `no-proof`: it proves nothing any more. */
export const headFaultCodes = ['forked', 'other-key', 'no-proof'] as const;
/** One of them. */
export type HeadFaultCode = (typeof headFaultCodes)[number];

/** A fault with its evidence. */
export interface HeadFault {
  readonly code: HeadFaultCode;
  /** When it was met, ms since 1970. */
  readonly atMs: number;
  /** The head that was known, and the one that does not go with it: signed notes. */
  readonly known: string | null;
  readonly shown: string;
  /** The key that the server says it has, where it is another. */
  readonly serverKey: string | null;
}

/** What the server gave for a push: a head of its log, and where it says that an entry lies in it. */
export interface Receipt {
  readonly note: string;
  readonly leaf: { readonly index: number; readonly hash: string } | null;
}

/** Before anything was ever synced. */
export const emptyMemory: SyncMemory = {
  enrolled: null,
  serverEpoch: null,
  cursor: null,
  history: null,
  acked: {},
  clockOffMs: 0,
  rolledBackMs: null,
  head: null,
  headFault: null,
  cosigned: 0,
};

/** The tablet's log as sync sees it. Every promise resolves when the change is durable. */
export interface SyncLog {
  /** The end of every chain held here, own and others'. */
  readonly heads: () => Promise<readonly Head[]>;
  /** Entries of one chain after `seq`, ascending, without a gap, at most `limit`. */
  readonly entriesAfter: (
    chain: { readonly tablet: string; readonly epoch: string },
    seq: number,
    limit: number,
  ) => Promise<readonly Entry[]>;
  /** Adds entries that are not here yet; those already here change nothing. */
  readonly takeIn: (entries: readonly Entry[]) => Promise<void>;
  /** The first entry of a chain, where it is here: it names the key that signs the others. */
  readonly firstOf?: (chain: { readonly tablet: string; readonly epoch: string }) => Promise<Entry | null>;
  /** True for an entry that is signed by itself, whatever head comes after it; absent where none is. `next`: the one after it in its page. */
  readonly signsItself?: (entry: Entry, next: Entry | null) => boolean;
  /** Keeps what came and is no part of the log, once each; answers how many are kept so in all. */
  readonly quarantine?: (found: readonly QuarantinedEntry[]) => Promise<number>;
  /** The true time is known: what was dated beyond the limit ahead of it is quarantined, and own entries are written anew. */
  readonly rightClocks?: (request: ClockCorrection) => Promise<void>;
  /** The server holds another chain under this name: where it is the tablet's present one, its entries are written anew in a new life of it; else false. */
  readonly beginNewLife?: (chain: { readonly epoch: string }) => Promise<boolean>;
  readonly readMemory: () => Promise<SyncMemory>;
  readonly writeMemory: (memory: SyncMemory) => Promise<void>;
  /** Keeps the plant's signed list of its tablets' keys; absent where nothing is exported. */
  readonly keepPlantKeys?: (keys: string) => Promise<void>;
  /** Keeps from where on the plant gives tickets, a note signed by the key that is known since the tablet joined. */
  readonly keepTicketStart?: (start: { readonly note: string; readonly serverKey: string }) => Promise<void>;
  /** What checks PINs that were set on this tablet, for the server alone; absent where none are set. */
  readonly pins?: PinPort;
  /** Pictures of labels; absent where none are kept. */
  readonly pictures?: PicturePort;
  /** The plant shut this tablet out: what opens something there is forgotten. The log stays, with what was never sent. */
  readonly forgetPlant?: () => Promise<void>;
  /** Proofs of entries that people print; absent where nothing is printed. */
  readonly records?: RecordPort;
  /** Told after each own append; returns how to stop. */
  readonly onAppend: (listener: () => void) => () => void;
  /** Folded state for other tablets, and how to start from one; absent where the app does without. */
  readonly snapshots?: SnapshotPort;
}

/** What came from the server and is no part of the log: as it came, and why. */
export interface QuarantinedEntry {
  readonly value: unknown;
  readonly fault: EntryFault | 'unreadable';
}

/** What is known when clocks are put right. */
export interface ClockCorrection {
  /** The server's time, ms since 1970. */
  readonly nowMs: number;
  /** The server's clock minus this tablet's, ms. */
  readonly offMs: number;
  /** `tablet/epoch` -> sequence number up to which the server holds that chain. */
  readonly acked: Readonly<Record<string, number>>;
}

/** What checks PINs that were set on this tablet. */
export interface PinPort {
  /** Those that this life of the server does not have. */
  readonly waiting: (serverEpoch: string) => Promise<PinsHanded['pins']>;
  readonly handed: (pins: readonly string[], serverEpoch: string) => Promise<void>;
}

/** Proofs that entries are in the server's log, kept for when there is no server. */
export interface RecordPort {
  /** Own entries that are asked for and have no proof yet, the oldest first; `acked`: what the server holds. */
  readonly wanted: (
    acked: Readonly<Record<string, number>>,
  ) => Promise<readonly Pick<Entry, 'tablet' | 'epoch' | 'seq' | 'hash'>[]>;
  readonly keep: (id: string, record: KeptRecord) => Promise<void>;
}

/** Where an entry lies in the server's log, checked. */
export interface KeptRecord {
  readonly index: number;
  /** Hashes, base64. */
  readonly proof: readonly string[];
  /** The head that the proof leads to, a signed note. */
  readonly head: string;
}

/** A picture of a label that the server does not have. */
export interface PictureToSend {
  readonly sha256: string;
  /** The verdict's entry. */
  readonly of: string;
  /** When its days are over, ms since 1970. */
  readonly untilMs: number;
  readonly bytes: Uint8Array;
}

/** Pictures of labels, for the server to keep beside the log. */
export interface PicturePort {
  readonly waiting: (serverEpoch: string, most: number) => Promise<readonly PictureToSend[]>;
  readonly sent: (sha256: string, serverEpoch: string) => Promise<void>;
}

/** State folded up to a cursor. The bytes are the app's own business. */
export interface SnapshotPort {
  /** Names fold and shape: only a snapshot of the same name can be taken. */
  readonly fold: string;
  /** The state of all that this tablet holds; null where there is none to give now. */
  readonly make: () => Promise<Uint8Array | null>;
  /** True where the state was taken: the log before the cursor then comes in later, in the background. `from`: the tablet that folded it. */
  readonly take: (bytes: Uint8Array, from: string | null) => Promise<boolean>;
}

/** This tablet's name and key. */
export interface SyncKey {
  readonly tablet: string;
  /** P-256 point, 65 bytes, base64url. */
  readonly publicKey: string;
  /** ECDSA P-256, SHA-256 over the text's UTF-8 bytes: 64 bytes, base64url. */
  readonly sign: (text: string) => Promise<string>;
}

/** The outside world. */
export interface SyncWorld {
  /** Where the server is, without a slash at the end; empty for the page's own origin. */
  readonly origin: string;
  readonly fetch: typeof fetch;
  /** Packs what goes out; absent: the engine's own streams do. */
  readonly gzip?: (bytes: Uint8Array) => Promise<Uint8Array>;
  readonly nowMs: () => number;
  /** Told the server's time as an answer brings it, ms since 1970. */
  readonly sawServer?: (serverMs: number) => void;
  /** From 0 up to 1. */
  readonly chance: () => number;
  /** Resolves after `ms`, or at once when the signal is raised. */
  readonly sleep: (ms: number, signal: AbortSignal) => Promise<void>;
  /** Fresh every time: at least 16 letters, digits, - or _. */
  readonly nonce: () => string;
}

/** What people are told about sync. */
export interface SyncStatus {
  readonly phase: SyncPhase;
  /** When the server last answered, by this tablet's clock; null never. */
  readonly lastAnswerMs: number | null;
  /** Own entries that the server does not hold yet. */
  readonly backlog: number;
  /** Why it does not go on: a wire code, or `unreachable`; null while it does. */
  readonly reason: string | null;
  /** When it tries again; null where it does not by itself. */
  readonly againMs: number | null;
  /** The server's clock minus this tablet's, ms. */
  readonly clockOffMs: number;
  /** Own entries that the server quarantined: somebody has to look. */
  readonly quarantined: readonly string[];
  /** Entries of others that came and are no part of the log, quarantined here. */
  readonly quarantinedHere: number;
  /** Tablets of the plant whose clocks are off, by name; positive is ahead, ms. */
  readonly clocksOff: readonly ClockOff[];
  /** The share of what may be handed to a new tablet that the plant's state takes, above 1 where it is too large; null where the server does not say. */
  readonly stateShare: number | null;
  /** When the server was found to hold less than before, ms since 1970; null where it never was, or somebody took note. */
  readonly rolledBackMs: number | null;
  /** What of the server's heads did not hold; null where all did, or somebody took note. */
  readonly headFault: HeadFault | null;
}

/** A tablet whose clock is off. */
export interface ClockOff {
  readonly tablet: string;
  readonly name: string;
  readonly offMs: number;
}

/** Before anything is known. */
export const noStatus: SyncStatus = {
  phase: 'alone',
  lastAnswerMs: null,
  backlog: 0,
  reason: null,
  againMs: null,
  clockOffMs: 0,
  quarantined: [],
  quarantinedHere: 0,
  clocksOff: [],
  stateShare: null,
  rolledBackMs: null,
  headFault: null,
};

/** `alone`: not enrolled. `follower`: another window of this tablet syncs. `refused`: the server said no; a person must act. */
export const syncPhases = ['alone', 'follower', 'syncing', 'live', 'waiting', 'refused'] as const;
export type SyncPhase = (typeof syncPhases)[number];
