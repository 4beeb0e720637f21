// Is the log as it was written? Walks every tablet's chain and names the first link that does not hold.
// What it shows: an entry changed, dropped, doubled or moved inside the file. What it cannot show alone: a cut tail or a
// chain rewritten whole; for those it needs a checkpoint from elsewhere, or signatures with a key known from elsewhere.

import { chainId, type Entry, entryId, firstPrev } from './entry.ts';
import { compareText } from './order.ts';
import { sealedHash } from './seal.ts';

/** Why a link does not hold. */
export const chainFaults = [
  'hash-differs',
  'prev-differs',
  'missing',
  'doubled',
  'truncated',
  'signature-differs',
] as const;
export type ChainFault = (typeof chainFaults)[number];

/** The first link that does not hold. `found` and `wanted` are hashes or sequence numbers. */
export interface ChainBreak {
  readonly id: string;
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
  readonly fault: ChainFault;
  readonly wanted: string;
  readonly found: string;
}

/** A stretch that an export left out on purpose: the chain goes on from `hash`, the hash of entry `toSeq`. */
export interface Omitted {
  readonly tablet: string;
  readonly epoch: string;
  readonly fromSeq: number;
  readonly toSeq: number;
  readonly hash: string;
}

/** How far a chain is known to reach, from a party other than the file's holder. */
export interface Checkpoint {
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
  readonly hash: string;
}

/** The verdict on a log. */
export interface ChainReport {
  readonly entries: number;
  readonly tablets: number;
  readonly omitted: number;
  readonly ok: boolean;
  readonly firstBroken: ChainBreak | null;
  /** The end of each chain: to be kept elsewhere as a checkpoint. */
  readonly heads: readonly Checkpoint[];
}

/** What the check may use besides the entries. */
export interface ChainEvidence {
  readonly omitted?: readonly Omitted[];
  readonly checkpoints?: readonly Checkpoint[];
  /** Says whether the signature of an entry holds; asked only for entries that carry one. */
  readonly signatureHolds?: (entry: Entry) => boolean;
  /** Says of an entry whose text is not what its hash says that the export left fields of it out: no fault, and no proof of its text. */
  readonly lacksFields?: (entry: Entry) => boolean;
}

/**
 * Checks every chain of a log. The order of `entries` does not matter. Cost: O(n log n), one hash an entry.
 * The break named is the first in the order (tablet, epoch, seq).
 */
export function verifyChains(entries: readonly Entry[], evidence: ChainEvidence = {}): ChainReport {
  const chains = new Map<string, Entry[]>();
  for (const entry of entries) {
    const id = chainId(entry);
    const chain = chains.get(id);
    if (chain) chain.push(entry);
    else chains.set(id, [entry]);
  }
  const omitted = evidence.omitted ?? [];
  for (const stretch of omitted) if (!chains.has(chainId(stretch))) chains.set(chainId(stretch), []);
  for (const point of evidence.checkpoints ?? [])
    if (!chains.has(chainId(point))) chains.set(chainId(point), []);

  let firstBroken: ChainBreak | null = null;
  const heads: Checkpoint[] = [];
  for (const [id, chain] of [...chains].sort((a, b) => compareText(a[0], b[0]))) {
    chain.sort((a, b) => a.seq - b.seq);
    const walked = walkChain(
      chain,
      omitted.filter((stretch) => chainId(stretch) === id),
      evidence,
    );
    if (walked.head) heads.push(walked.head);
    firstBroken ??= walked.broken;
    firstBroken ??= missedCheckpoint(id, chain, walked.head, evidence.checkpoints ?? []);
  }
  return {
    entries: entries.length,
    tablets: new Set(entries.map((entry) => entry.tablet)).size,
    omitted: omitted.reduce((sum, stretch) => sum + stretch.toSeq - stretch.fromSeq + 1, 0),
    ok: firstBroken === null,
    firstBroken,
    heads,
  };
}

function walkChain(
  chain: readonly Entry[],
  omitted: readonly Omitted[],
  evidence: ChainEvidence,
): { broken: ChainBreak | null; head: Checkpoint | null } {
  const stretchByStart = new Map(omitted.map((stretch) => [stretch.fromSeq, stretch]));
  let seq = 0;
  let hash = firstPrev;
  let head: Checkpoint | null = null;
  const skip = () => {
    for (
      let stretch = stretchByStart.get(seq + 1);
      stretch && stretch.toSeq > seq;
      stretch = stretchByStart.get(seq + 1)
    ) {
      seq = stretch.toSeq;
      hash = stretch.hash;
      head = { tablet: stretch.tablet, epoch: stretch.epoch, seq, hash };
    }
  };
  for (const entry of chain) {
    skip();
    const fault = linkFault(entry, seq, hash, evidence);
    if (fault) return { broken: { ...nameOf(entry), ...fault }, head };
    seq = entry.seq;
    hash = entry.hash;
    head = { tablet: entry.tablet, epoch: entry.epoch, seq, hash };
  }
  skip();
  // A stretch said to be left out beyond a gap: what stood in between is gone.
  const beyond = omitted.filter((stretch) => stretch.fromSeq > seq).sort((a, b) => a.fromSeq - b.fromSeq)[0];
  if (!beyond) return { broken: null, head };
  const fault = { fault: 'missing', wanted: String(seq + 1), found: String(beyond.fromSeq) } as const;
  return { broken: { ...nameOf({ ...beyond, seq: beyond.fromSeq }), ...fault }, head };
}

function linkFault(
  entry: Entry,
  lastSeq: number,
  lastHash: string,
  evidence: ChainEvidence,
): Pick<ChainBreak, 'fault' | 'wanted' | 'found'> | null {
  if (entry.seq === lastSeq)
    return { fault: 'doubled', wanted: String(lastSeq + 1), found: String(entry.seq) };
  if (entry.seq !== lastSeq + 1)
    return { fault: 'missing', wanted: String(lastSeq + 1), found: String(entry.seq) };
  const wantedHash = sealedHash(entry);
  if (wantedHash !== entry.hash && !evidence.lacksFields?.(entry))
    return { fault: 'hash-differs', wanted: wantedHash ?? 'a text that can be sealed', found: entry.hash };
  if (entry.prev !== lastHash) return { fault: 'prev-differs', wanted: lastHash, found: entry.prev };
  if (entry.sig !== null && evidence.signatureHolds && !evidence.signatureHolds(entry)) {
    return { fault: 'signature-differs', wanted: 'signature by the tablet', found: entry.sig };
  }
  return null;
}

function missedCheckpoint(
  id: string,
  chain: readonly Entry[],
  head: Checkpoint | null,
  checkpoints: readonly Checkpoint[],
): ChainBreak | null {
  for (const point of checkpoints.filter((candidate) => chainId(candidate) === id)) {
    if ((head?.seq ?? 0) < point.seq) {
      return {
        ...nameOf(point),
        fault: 'truncated',
        wanted: String(point.seq),
        found: String(head?.seq ?? 0),
      };
    }
    const there = chain.find((entry) => entry.seq === point.seq);
    if (there && there.hash !== point.hash) {
      return { ...nameOf(point), fault: 'hash-differs', wanted: point.hash, found: there.hash };
    }
  }
  return null;
}

function nameOf(
  point: Pick<Entry, 'tablet' | 'epoch' | 'seq'>,
): Pick<ChainBreak, 'id' | 'tablet' | 'epoch' | 'seq'> {
  return { id: entryId(point), tablet: point.tablet, epoch: point.epoch, seq: point.seq };
}
