// The seal of an entry: SHA-256 over its RFC 8785 (JSON canonicalization) bytes with the hash of the entry before it.
// Synchronous on purpose: a foreign wait between reading the chain's head and writing would let a second writer in.

import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import canonicalize from 'canonicalize';
import type { Entry, EntryDraft, Json } from './entry.ts';

/** RFC 8785 text of a JSON value. Throws TypeError on what JSON cannot say: NaN, infinity, a lone surrogate. */
export function canonicalText(value: Json | EntryDraft): string {
  const text = canonicalize(value);
  if (text === undefined)
    throw new TypeError('Cannot canonicalize as value must be JSON: current value is undefined');
  return text;
}

/** SHA-256 of a text's UTF-8 bytes, lower-case hex. */
export function hashText(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

/** The draft inside an entry: everything that the hash covers. */
export function draftOf(entry: EntryDraft): EntryDraft {
  const { v, tablet, epoch, seq, at, hlc, who, kind, payload, prev } = entry;
  return { v, tablet, epoch, seq, at, hlc, who, kind, payload, prev };
}

/** The hash that an entry with these facts must carry. */
export function hashDraft(draft: EntryDraft): string {
  return hashText(canonicalText(draftOf(draft)));
}

/** The same; null where the facts have none, as of half a character: for entries that came from elsewhere. */
export function sealedHash(draft: EntryDraft): string | null {
  try {
    return hashDraft(draft);
  } catch {
    return null;
  }
}

/**
 * Seals a draft; the signature, if any, is added by whoever holds the key. The entry's keys stand in the order of the text that
 * the hash covers: written as JSON it holds that very text, and a server need not write it anew to check it.
 */
export function sealEntry(draft: EntryDraft): Entry {
  const text = canonicalText(draftOf(draft));
  return { ...(JSON.parse(text) as EntryDraft), hash: hashText(text), sig: null }; // the text of a draft
}

/** Replaces lone surrogates, which RFC 8785 refuses, by U+FFFD in every text of a JSON value. */
export function wellFormed<T extends Json>(value: T): T {
  return mapTexts(value, (text) =>
    text.replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '\ufffd'),
  ) as T; // same shape by construction
}

function mapTexts(value: Json, change: (text: string) => string): Json {
  if (typeof value === 'string') return change(value);
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map((item) => mapTexts(item, change));
  const result: Record<string, Json> = {};
  for (const [key, item] of Object.entries(value)) {
    Object.defineProperty(result, change(key), { value: mapTexts(item, change), enumerable: true });
  }
  return result;
}
