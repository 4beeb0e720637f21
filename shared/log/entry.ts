// What one line of the log is: its envelope. The log knows no word of the floor; the payload is opaque here.
// Method: every tablet writes its own chain; (tablet, epoch, seq) names an entry for ever. An epoch is one life of one
// tablet's database, so that a wiped tablet never uses a name twice. A single shared sequence was refused: it needs a network.

/** Any JSON value; numbers must be finite. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** A JSON object, as payloads are. */
export type JsonObject = { readonly [key: string]: Json };

/** A hybrid logical clock reading: `ms` since 1970 and a counter for events within one millisecond. */
export interface ClockReading {
  readonly ms: number;
  readonly n: number;
}

/** The facts of an entry before it is sealed. */
export interface EntryDraft {
  readonly v: 1;
  /** The tablet that wrote it. */
  readonly tablet: string;
  /** Which life of that tablet's database. */
  readonly epoch: string;
  /** 1, 2, 3 … without a gap within (tablet, epoch). */
  readonly seq: number;
  /** The tablet's wall clock, ISO 8601 with offset, as a person would have read it. */
  readonly at: string;
  /** Hybrid logical clock: orders entries of different tablets. */
  readonly hlc: ClockReading;
  /** The person's id, null where nobody had signed in. */
  readonly who: string | null;
  /** What happened, e.g. `reel.verified`. */
  readonly kind: string;
  readonly payload: JsonObject;
  /** Hash of the entry before it in the same (tablet, epoch); `firstPrev` for seq 1. */
  readonly prev: string;
}

/** An entry as it is kept: sealed by its hash, and signed where the tablet has a key. */
export interface Entry extends EntryDraft {
  /** SHA-256, lower-case hex, over the RFC 8785 bytes of the draft. */
  readonly hash: string;
  /** The tablet's signature over the hash (ECDSA P-256, SHA-256, base64url), null without a key. */
  readonly sig: string | null;
}

/** `prev` of the first entry of a chain. */
export const firstPrev = '0'.repeat(64);

/**
 * Form of a signature: 64 bytes as base64url without padding, and no other text for the same bytes (the last of 86 characters
 * carries two bits). Source: RFC 4648, sections 5 and 3.5.
 */
export const signatureForm = /^[A-Za-z0-9_-]{85}[AQgw]$/;

/** Bounds of a clock reading: far beyond any real one (the year 2109; two thousand million events in a millisecond). */
export const clockMsMost = 2 ** 42 - 1;
/** The other bound: its counter. */
export const clockCountMost = 2 ** 31 - 1;

/** Most levels of lists and objects in a payload; what kinds hold has six at most. Beyond what a stack holds nothing can be checked. */
export const payloadLevelsMost = 64;

/** True for a value of no more than so many levels of lists and objects. */
export function isWithinLevels(value: unknown, most: number): boolean {
  if (typeof value !== 'object' || value === null) return true;
  if (most === 0) return false;
  const items: readonly unknown[] = Array.isArray(value) ? value : Object.values(value);
  return items.every((item) => isWithinLevels(item, most - 1));
}

/** True for a clock reading that can be gone on from without leaving its bounds. */
export function isBounded(reading: ClockReading): boolean {
  return reading.ms <= clockMsMost && reading.n <= clockCountMost;
}

/** The name of an entry for ever: `tablet/epoch/seq`. */
export function entryId(entry: Pick<Entry, 'tablet' | 'epoch' | 'seq'>): string {
  return `${entry.tablet}/${entry.epoch}/${entry.seq}`;
}

/** The chain that an entry belongs to: `tablet/epoch`. */
export function chainId(entry: Pick<Entry, 'tablet' | 'epoch'>): string {
  return `${entry.tablet}/${entry.epoch}`;
}
