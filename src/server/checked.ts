// Reads the entries of a page: hash over the exact RFC 8785 text that will be stored, signature by the tablet that wrote it.
// A fault does not stop the page: the entry goes aside with its fault, so that nothing that a tablet wrote is thrown away.

import { clockAhead, driftLimitMs } from '../../shared/log/clock.ts';
import { type Entry, entryId, entrySchema } from '../../shared/log/entry.ts';
import type { EntryFault } from '../../shared/wire/codes.ts';
import { entryBytes } from '../../shared/wire/limits.ts';
import { draftText } from './canonical.ts';
import { Refused } from './http/refuse.ts';
import { hashOf } from './keys.ts';
import type { ReadEntry } from './page.ts';
import { type SignatureQueue, signatureFault } from './signatures.ts';
import type { Checked, Store } from './stores/store.ts';

/** Who brings the entries, and when. */
export interface Carrier {
  readonly tablet: string;
  readonly publicKey: string;
  readonly nowMs: number;
}

export interface CheckParts {
  readonly store: Pick<Store, 'tabletKeys'>;
  readonly signatures: SignatureQueue;
}

/**
 * Checks a page whose entries were read. Of a run of entries that follow each other by hash, the last
 * signature is checked before the answer: through the hashes it vouches for all before it. The others are checked after.
 */
export async function checkEntries(
  entries: readonly ReadEntry[],
  carrier: Carrier,
  parts: CheckParts,
): Promise<readonly Checked[]> {
  const keys = new Map<string, readonly string[]>();
  for (const { tablet } of entries) {
    if (!keys.has(tablet)) keys.set(tablet, await keysOf(tablet, carrier, parts.store));
  }
  const checked = entries.map((entry) => toChecked(entry, carrier));
  for (let end = checked.length - 1; end >= 0; ) {
    const from = runStart(checked, end);
    const run = checked.slice(from, end + 1);
    const faults = await runFaults(run, keys.get(run[0]?.tablet ?? '') ?? [], parts.signatures);
    faults.forEach((fault, at) => {
      const one = checked[from + at];
      if (one && fault) checked[from + at] = { ...one, fault };
    });
    end = from - 1;
  }
  return checked;
}

/** Every key of the tablet: old entries of one that lost its key since are signed with a key that it had before. */
async function keysOf(
  tablet: string,
  carrier: Carrier,
  store: CheckParts['store'],
): Promise<readonly string[]> {
  const kept = await store.tabletKeys(tablet);
  return tablet === carrier.tablet && !kept.includes(carrier.publicKey) ? [carrier.publicKey, ...kept] : kept;
}

/** Where the run that ends at `end` begins: each entry names the hash of the one before it, and holds its own. */
function runStart(checked: readonly Checked[], end: number): number {
  let from = end;
  for (; from > 0; from -= 1) {
    const [before, after] = [checked[from - 1], checked[from]];
    if (!before || !after || before.fault || after.fault || after.prev !== before.hash) break;
    if (before.tablet !== after.tablet || before.epoch !== after.epoch || before.sig === null) break;
  }
  return from;
}

/** An entry of a tablet never enrolled here can only be vouched for by the tablet that brings it: `via` names that one. */
async function runFaults(
  run: readonly Checked[],
  keys: readonly string[],
  signatures: SignatureQueue,
): Promise<readonly (EntryFault | null)[]> {
  const last = run.at(-1);
  if (!last || keys.length === 0) return [];
  const lastFault = last.fault ?? (await signatureFault(last, keys));
  if (lastFault === null) {
    signatures.add(run.slice(0, -1), keys);
    return [];
  }
  // The end does not vouch for the rest: each for itself.
  const others = run.slice(0, -1).map((entry) => entry.fault ?? signatureFault(entry, keys));
  return [...(await Promise.all(others)), lastFault];
}

function toChecked(entry: ReadEntry, carrier: Carrier): Checked {
  const { tablet, epoch, seq, prev, hash, sig, kind, hlc, atMs, body } = entry;
  return {
    tablet,
    epoch,
    seq,
    prev,
    hash,
    sig,
    kind,
    hlc,
    atMs,
    body,
    aheadMs: aheadMs(entry, carrier.nowMs),
    via: tablet === carrier.tablet ? null : carrier.tablet,
    fault: hashOf(body) === hash ? null : 'hash-differs',
  };
}

/** Reads an entry that has passed the wire's schema. */
export function readEntry(entry: Entry): ReadEntry {
  const { tablet, epoch, seq, prev, hash, sig, kind, hlc } = entry;
  const atMs = Date.parse(entry.at);
  return { tablet, epoch, seq, prev, hash, sig, kind, hlc, atMs, body: readBody(entry) };
}

function readBody(entry: Entry): string {
  let body: string;
  try {
    body = draftText(entry);
  } catch (error) {
    // A lone surrogate or too deep a nesting: the app writes neither.
    throw new Refused('bad-entry', `${entryId(entry)}: ${(error as Error).message}`, { id: entryId(entry) });
  }
  if (Buffer.byteLength(body) > entryBytes) {
    throw new Refused('bad-entry', `${entryId(entry)}: over ${entryBytes} bytes`, { id: entryId(entry) });
  }
  return body;
}

function aheadMs(entry: ReadEntry, nowMs: number): number {
  const ahead = clockAhead(entry.hlc, nowMs);
  return ahead > driftLimitMs ? ahead : 0;
}

/** Entries that came another way (a file, the demo's shift): hashed and checked alike, signatures where a key is known. */
export function checkImported(
  entries: readonly Entry[],
  parts: CheckParts,
  nowMs: number,
): Promise<readonly Checked[]> {
  for (const entry of entries) entrySchema.parse(entry);
  return checkEntries(entries.map(readEntry), { tablet: '', publicKey: '', nowMs }, parts);
}
