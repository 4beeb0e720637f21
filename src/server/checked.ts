// Reads the entries of a page: hash over the exact RFC 8785 text that will be stored, signature by the tablet that wrote it.
// A fault does not stop the page: the entry is quarantined with its fault, so that nothing that a tablet wrote is thrown away.

import { setImmediate as turn } from 'node:timers/promises';
import { aheadLimitMs, clockAhead, driftLimitMs } from '../../shared/log/clock.ts';
import { chainId, type Entry, entryId } from '../../shared/log/entry.ts';
import { entrySchema } from '../../shared/log/entry-schema.ts';
import { proofKind } from '../../shared/log/proof-record.ts';
import { goesOn } from '../../shared/log/vouched.ts';
import { entryBytes } from '../../shared/wire/limits.ts';
import type { Brought } from '../../shared/wire/messages.ts';
import { ArrivedEntry } from './arrived.ts';
import { Refused } from './http/refuse.ts';
import { type SignatureWalk, signatureFault } from './signatures.ts';
import { type DraftText, draftText } from './stores/canonical.ts';
import type { Checked, Store } from './stores/store.ts';
import { createStrangers, type Strangers } from './strangers.ts';

/** Who brings the entries, and when. */
export interface Carrier {
  /** Empty for what comes out of a file. */
  readonly tablet: string;
  readonly publicKey: string;
  readonly nowMs: number;
  /** Its signed words for the chains of others in the page. */
  readonly brought?: readonly Brought[];
}

export interface CheckParts {
  readonly store: Pick<Store, 'tabletKeys' | 'findTablet' | 'firstOf' | 'keepBrought'>;
  readonly signatures: Pick<SignatureWalk, 'proved'>;
}

/**
 * Checks a page whose entries were read. Of a run of entries that follow each other by hash, the last is a head: its signature is checked
 * before the answer, and vouches through the hashes for all before it. Signatures of those are checked once they are in the log.
 * What is vouched for only behind an entry at fault is not among the answer: the log would hold it without its head, so it is not taken
 * until it comes with one of its own.
 */
export async function checkEntries(
  entries: readonly ArrivedEntry[],
  carrier: Carrier,
  parts: CheckParts,
): Promise<readonly Checked[]> {
  for (const entry of entries) judge(entry, carrier);
  const keysOf = keysFrom(parts.store, carrier);
  const strangers = createStrangers(entries, carrier, parts.store);
  const headless = new Set<ArrivedEntry>();
  for (let end = entries.length - 1; end >= 0; ) {
    const from = runStart(entries, end);
    const { signatures, store } = parts;
    const run = entries.slice(from, end + 1);
    await judgeSignatures(run, { carrier, keysOf, strangers, signatures, store });
    const next = entries[end + 1];
    if (next?.fault && chainId(next) === chainId(entries[end] ?? next))
      for (const entry of run) if (entry.fault === 'signature-missing') headless.add(entry);
    end = from - 1;
  }
  await parts.store.keepBrought(strangers.words());
  return headless.size === 0 ? entries : entries.filter((entry) => !headless.has(entry));
}

/** Every key of a tablet: old entries of one that lost its key since are signed with a key that it had before. */
type KeysOf = (tablet: string) => Promise<readonly string[]>;

function keysFrom(store: CheckParts['store'], carrier: Carrier): KeysOf {
  const known = new Map<string, readonly string[]>();
  return async (tablet) => {
    const kept = known.get(tablet) ?? (await store.tabletKeys(tablet));
    known.set(tablet, kept);
    return tablet === carrier.tablet && !kept.includes(carrier.publicKey)
      ? [carrier.publicKey, ...kept]
      : kept;
  };
}

/** Where the run that ends at `end` begins: each entry names the hash of the one before it, and holds its own. */
function runStart(entries: readonly Checked[], end: number): number {
  let from = end;
  for (; from > 0; from -= 1) {
    const [before, after] = [entries[from - 1], entries[from]];
    if (!before || !after || before.fault || after.fault || !goesOn(before, after)) break;
  }
  return from;
}

async function judgeSignatures(
  run: readonly ArrivedEntry[],
  parts: {
    readonly carrier: Carrier;
    readonly keysOf: KeysOf;
    readonly strangers: Strangers;
    readonly signatures: CheckParts['signatures'];
    readonly store: Pick<Store, 'findTablet'>;
  },
): Promise<void> {
  const { carrier, keysOf, strangers, signatures, store } = parts;
  const last = run.at(-1);
  if (!last) return;
  let keys: readonly string[] = [];
  // Mostly the tablet brings its own, signed with the key that it has: the store need not be asked.
  const isOwn = last.fault === null && last.tablet === carrier.tablet;
  if (!isOwn || signatureFault(last, [carrier.publicKey]) !== null) {
    keys = await keysOf(last.tablet);
    if (keys.length === 0) {
      // A wall screen is no stranger: it was let in, to write nothing.
      if ((await store.findTablet(last.tablet))?.screen) {
        for (const entry of run) entry.fault ??= 'signature-differs';
        return;
      }
      const own = await strangers.take(run);
      if (own === null) return;
      keys = own;
    }
    last.fault ??= signatureFault(last, keys);
  }
  if (last.fault === null) {
    signatures.proved(last);
    return;
  }
  // The end does not vouch for the rest: each for itself, and for those before it that have no signature.
  let isVouched = false;
  for (const entry of run.slice(0, -1).reverse()) {
    if (entry.sig === null && isVouched) continue;
    const fault = signatureFault(entry, keys);
    entry.fault ??= fault;
    isVouched ||= fault === null;
    await turn();
  }
}

function judge(entry: ArrivedEntry, carrier: Carrier): void {
  entry.aheadMs = aheadMs(entry, carrier.nowMs);
  entry.via = entry.tablet === carrier.tablet ? null : carrier.tablet;
  if (entry.bodyHash !== entry.hash) entry.fault = 'hash-differs';
  // The plant's own word in exports: whoever writes it in a tablet's name takes that name.
  else if (entry.kind === proofKind) entry.fault = 'name-taken';
  else entry.fault = entry.aheadMs > aheadLimitMs ? 'clock-ahead' : null;
}

/** Reads an entry that has passed the wire's schema. */
export function readEntry(entry: Entry): ArrivedEntry {
  return new ArrivedEntry(entry, readText(entry));
}

function readText(entry: Entry): DraftText {
  let text: DraftText;
  try {
    text = draftText(entry);
  } catch (error) {
    // A lone surrogate or too deep a nesting: the app writes neither.
    throw new Refused('bad-entry', `${entryId(entry)}: ${(error as Error).message}`, { id: entryId(entry) });
  }
  if (Buffer.byteLength(text.body) <= entryBytes) return text;
  throw new Refused('bad-entry', `${entryId(entry)}: over ${entryBytes} bytes`, { id: entryId(entry) });
}

function aheadMs(entry: ArrivedEntry, nowMs: number): number {
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
