// Reads the entries of a page: hash over the exact RFC 8785 text that will be stored, signature by the tablet that wrote it.
// A fault does not stop the page: the entry goes aside with its fault, so that nothing that a tablet wrote is thrown away.

import { clockAhead, driftLimitMs } from '../../shared/log/clock.ts';
import { type Entry, entryId, entrySchema } from '../../shared/log/entry.ts';
import { canonicalText, draftOf } from '../../shared/log/seal.ts';
import type { EntryFault } from '../../shared/wire/codes.ts';
import { entryBytes } from '../../shared/wire/limits.ts';
import { entryText } from '../../shared/wire/signing.ts';
import { Refused } from './http/refuse.ts';
import { hashOf, signatureHolds } from './keys.ts';
import type { Checked, Store } from './stores/store.ts';

/** Who brings the entries, and when. */
export interface Carrier {
  readonly tablet: string;
  readonly publicKey: string;
  readonly nowMs: number;
}

/** Checks a page. The entries have passed the wire's schema; `raw` are the same as they were parsed. */
export async function checkEntries(
  raw: readonly Entry[],
  carrier: Carrier,
  store: Pick<Store, 'tabletKeys'>,
): Promise<readonly Checked[]> {
  const keys = new Map<string, readonly string[]>([[carrier.tablet, [carrier.publicKey]]]);
  for (const { tablet } of raw) if (!keys.has(tablet)) keys.set(tablet, await store.tabletKeys(tablet));
  return Promise.all(raw.map((entry) => checkEntry(entry, keys.get(entry.tablet) ?? [], { carrier, store })));
}

async function checkEntry(
  entry: Entry,
  keys: readonly string[],
  from: { readonly carrier: Carrier; readonly store: Pick<Store, 'tabletKeys'> },
): Promise<Checked> {
  const { carrier } = from;
  const body = readBody(entry);
  const own = entry.tablet === carrier.tablet;
  const checked = {
    tablet: entry.tablet,
    epoch: entry.epoch,
    seq: entry.seq,
    prev: entry.prev,
    hash: entry.hash,
    sig: entry.sig,
    kind: entry.kind,
    hlc: entry.hlc,
    atMs: Date.parse(entry.at),
    body,
    aheadMs: aheadMs(entry, carrier.nowMs),
    via: own ? null : carrier.tablet,
  };
  if (hashOf(body) !== entry.hash) return { ...checked, fault: 'hash-differs' };
  let fault = await signatureFault(entry, keys);
  // Old entries of a tablet that lost its key since: signed with a key that it had before.
  if (fault === 'signature-differs' && own) {
    fault = await signatureFault(entry, await from.store.tabletKeys(entry.tablet));
  }
  return { ...checked, fault };
}

/** An entry of a tablet never enrolled here can only be vouched for by the tablet that brings it: `via` names that one. */
async function signatureFault(entry: Entry, keys: readonly string[]): Promise<EntryFault | null> {
  if (keys.length === 0) return null;
  if (entry.sig === null) return 'signature-missing';
  for (const key of keys) if (await signatureHolds(key, entryText(entry.hash), entry.sig)) return null;
  return 'signature-differs';
}

function readBody(entry: Entry): string {
  let body: string;
  try {
    body = canonicalText(draftOf(entry));
  } catch (error) {
    // A lone surrogate or too deep a nesting: the app writes neither.
    throw new Refused('bad-entry', `${entryId(entry)}: ${(error as Error).message}`, { id: entryId(entry) });
  }
  if (Buffer.byteLength(body) > entryBytes) {
    throw new Refused('bad-entry', `${entryId(entry)}: over ${entryBytes} bytes`, { id: entryId(entry) });
  }
  return body;
}

function aheadMs(entry: Entry, nowMs: number): number {
  const ahead = clockAhead(entry.hlc, nowMs);
  return ahead > driftLimitMs ? ahead : 0;
}

/** Entries that came another way (a file, the demo's shift): hashed and checked alike, signatures where a key is known. */
export async function checkImported(
  entries: readonly Entry[],
  store: Pick<Store, 'tabletKeys'>,
  nowMs: number,
): Promise<readonly Checked[]> {
  for (const entry of entries) entrySchema.parse(entry);
  return checkEntries(entries, { tablet: '', publicKey: '', nowMs }, store);
}
