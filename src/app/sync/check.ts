// Is what came from the server part of the log? Checked here as the server checks it: form, hash, and the signature by the key that
// the chain's first entry names. What is not is told apart entry by entry, so that one does not keep the others out.

import * as z from 'zod/mini';
import { fromBase64Url } from '../../../shared/kit/base64.ts';
import { aheadLimitMs } from '../../../shared/log/clock.ts';
import { chainId, type Entry, isWithinLevels, payloadLevelsMost } from '../../../shared/log/entry.ts';
import { entrySchema } from '../../../shared/log/entry-schema.ts';
import { sealedHash } from '../../../shared/log/seal.ts';
import { goesOn } from '../../../shared/log/vouched.ts';
import type { EntryFault } from '../../../shared/wire/codes.ts';
import { entryText } from '../../../shared/wire/signing.ts';
import type { QuarantinedEntry, SyncLog } from './ports.ts';

/** What came, told apart. */
export interface CheckedPage {
  readonly entries: readonly Entry[];
  readonly quarantined: readonly QuarantinedEntry[];
}

/** What the check may ask. `serverMs`: the server's time; entries dated beyond the limit ahead of it are none of the log. */
export interface CheckParts {
  readonly log: Pick<SyncLog, 'firstOf'>;
  readonly serverMs: number;
}

/** Facts kept of what is nested too deep to be kept: an entry has twelve. */
const FACTS_MOST = 32;
/** Entries looked at before the page gets its turn. */
const AT_ONCE = 250;

/**
 * Tells entries of the log apart from what is none. Of a run sealed one to the next, the last signature vouches for all before it. What
 * comes without one after it is none of the log where the chain names a key: the server cuts its pages behind a signed entry.
 */
export async function checkPulled(
  values: readonly unknown[],
  { log, serverMs }: CheckParts,
): Promise<CheckedPage> {
  const quarantined: QuarantinedEntry[] = [];
  const sealed: Entry[] = [];
  const ahead = new Set<Entry>();
  let looked = 0;
  for (const value of values) {
    const read = readSealed(value, serverMs);
    if (read.fault !== null) quarantined.push({ value: keepable(value), fault: read.fault });
    if (read.entry !== null) sealed.push(read.entry);
    if (read.entry !== null && read.fault !== null) ahead.add(read.entry);
    looked += 1;
    if (looked % AT_ONCE === 0) await new Promise<void>((resolve) => setTimeout(resolve));
  }
  const keyOf = keysFrom(log, sealed);
  const out = new Set<Entry>(ahead);
  for (const run of runsOf(sealed)) {
    for (const [entry, fault] of await unvouched(run, keyOf)) {
      if (!out.has(entry)) quarantined.push({ value: entry, fault });
      out.add(entry);
    }
  }
  return { entries: out.size === 0 ? sealed : sealed.filter((entry) => !out.has(entry)), quarantined };
}

/** The entry is there wherever its hash is that of its text: one dated too far ahead is none of the log, and shows what stands before it. */
type Read =
  | { readonly fault: null; readonly entry: Entry }
  | { readonly fault: EntryFault | 'unreadable'; readonly entry: Entry | null };

function readSealed(value: unknown, serverMs: number): Read {
  const read = z.safeParse(entrySchema, value);
  if (!read.success) return { fault: 'unreadable', entry: null };
  const entry = read.data;
  if (sealedHash(entry) !== entry.hash) return { fault: 'hash-differs', entry: null };
  if (entry.hlc.ms > serverMs + aheadLimitMs) return { fault: 'clock-ahead', entry };
  return { fault: null, entry };
}

/** What can be kept of what is no entry: nested deeper than a stack it can neither be named by a hash nor stored, and its flat facts are. */
function keepable(value: unknown): unknown {
  if (isWithinLevels(value, payloadLevelsMost + 1)) return value;
  const facts = Object.entries(value as object); // what has levels is an object
  return Object.fromEntries(
    facts
      .slice(0, FACTS_MOST)
      .map(([key, fact]) => [key, typeof fact === 'object' ? '(nested too deep)' : fact]),
  );
}

/** Entries of one chain that name each the hash of the one before it, whatever lies between them in the page. */
function runsOf(entries: readonly Entry[]): readonly (readonly Entry[])[] {
  const runs: Entry[][] = [];
  const open = new Map<string, Entry[]>();
  for (const entry of entries) {
    const run = open.get(chainId(entry));
    const before = run?.at(-1);
    if (run && before && goesOn(before, entry)) run.push(entry);
    else {
      const next = [entry];
      runs.push(next);
      open.set(chainId(entry), next);
    }
  }
  return runs;
}

/** A key, by whatever name this runtime has for it: a link checks with it too. */
type Key = Awaited<ReturnType<typeof crypto.subtle.importKey>>;
type KeyOf = (entry: Entry) => Promise<Key | null>;

function keysFrom(log: CheckParts['log'], entries: readonly Entry[]): KeyOf {
  const keys = new Map<string, Promise<Key | null>>();
  const firsts = new Map(entries.filter(({ seq }) => seq === 1).map((entry) => [chainId(entry), entry]));
  return (entry) => {
    const chain = chainId(entry);
    const known = keys.get(chain) ?? readKey(log, entry, firsts.get(chain));
    keys.set(chain, known);
    return known;
  };
}

async function readKey(log: CheckParts['log'], chain: Entry, first: Entry | undefined): Promise<Key | null> {
  const opening = (await log.firstOf?.(chain)) ?? first;
  const named = opening ? keyIn(opening) : null;
  if (!named) return null;
  const algorithm = { name: 'ECDSA', namedCurve: 'P-256' };
  return crypto.subtle.importKey('jwk', named, algorithm, false, ['verify']).catch(() => null); // none of the curve
}

/** The key that a chain's first entry names; null where it names none. */
function keyIn(first: Entry): { kty: string; crv: string; x: string; y: string } | null {
  const key = first.kind === 'tablet.opened' ? first.payload['key'] : null;
  if (typeof key !== 'object' || key === null || Array.isArray(key)) return null;
  const { kty, crv, x, y } = key as Readonly<Record<string, unknown>>; // looked at on the next line
  if (kty !== 'EC' || crv !== 'P-256' || typeof x !== 'string' || typeof y !== 'string') return null;
  return { kty, crv, x, y };
}

/** What of a run nobody vouches for, and why. From its end: mostly that is signed, and one signature is all that is looked at. */
async function unvouched(
  run: readonly Entry[],
  keyOf: KeyOf,
): Promise<readonly (readonly [Entry, EntryFault])[]> {
  const found: (readonly [Entry, EntryFault])[] = [];
  let isVouched = false;
  for (const entry of [...run].reverse()) {
    if (isVouched && (entry.sig === null || found.length === 0)) continue;
    const key = await keyOf(entry);
    // Nothing to check by: no key known, or written before there was one.
    if (!key) return [];
    if (entry.sig === null) found.push([entry, 'signature-missing']);
    else if (await holds(entry.hash, entry.sig, key)) isVouched = true;
    else found.push([entry, 'signature-differs']);
  }
  return found;
}

function holds(hash: string, sig: string, key: Key): Promise<boolean> {
  const text = new TextEncoder().encode(entryText(hash));
  return crypto.subtle.verify(
    { name: 'ECDSA', hash: 'SHA-256' },
    key,
    Uint8Array.from(fromBase64Url(sig) ?? []),
    text,
  );
}
