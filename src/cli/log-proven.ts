// What of an exported log is proven, by whose key, and what is only claimed. Proven: the entry's text is what its hash says, and its
// signature holds by a key of the plant's list. Everything else is the word of whoever wrote the file, however well it hangs together.

import { lacksSecrets } from '../../shared/floor/secrets.ts';
import { chainId, type Entry, entryId } from '../../shared/log/entry.ts';
import type { ExportReading } from '../../shared/log/export-read.ts';
import type { ListedKey } from '../../shared/log/plant-list.ts';
import { type BroughtChain, readProofRecord } from '../../shared/log/proof-record.ts';
import { sealedHash } from '../../shared/log/seal.ts';
import { broughtText } from '../../shared/wire/signing.ts';
import { signatureHolds } from '../server/keys.ts';
import type { ClaimReason, SignatureCheck } from './log-file.ts';

/** How much is proven, by whose key, and what is only claimed and why. */
export interface Proven {
  readonly proven: number;
  readonly claimed: number;
  readonly provenBy: readonly (ListedKey & { readonly entries: number })[];
  readonly claims: readonly {
    readonly tablet: string;
    readonly epoch: string;
    readonly why: ClaimReason;
    readonly entries: number;
    /** The tablet that brought the chain, by its signed word; null where none of the plant's did. */
    readonly broughtBy: string | null;
  }[];
  /** Entries of which the export says that it left out fields: their hash and signature hold, the rest of their text is claimed. */
  readonly textsLeftOut: readonly string[];
}

/** The words in a JSON export; none in one of another form. */
export function broughtIn({ proofs = [] }: ExportReading): readonly BroughtChain[] {
  const [record] = proofs;
  return (record && readProofRecord(record)?.brought) ?? [];
}

/** What else the count may use. */
export interface ProvenEvidence {
  /** Every entry's text is known to be what its hash says. */
  readonly isWhole: boolean;
  /** The plant's list. */
  readonly listed: readonly ListedKey[];
  /** Words of those that brought chains of others, as the file has them. */
  readonly brought: readonly BroughtChain[];
}

/** True where the entry's text is what its hash says; `isWhole`: known of all texts of the file. */
export function holdsText(entry: Entry, isWhole: boolean): boolean {
  return (isWhole && !lacksSecrets(entry)) || sealedHash(entry) === entry.hash;
}

/** Counts it. */
export function countProven(
  entries: readonly Entry[],
  check: SignatureCheck,
  { isWhole, listed, brought }: ProvenEvidence,
): Proven {
  const provenBy = new Map<ListedKey, number>();
  const claims = new Map<string, Proven['claims'][number]>();
  const bringers = bringersOf(entries, listed, brought);
  const textsLeftOut: string[] = [];
  let proven = 0;
  for (const entry of entries) {
    const isText = holdsText(entry, isWhole);
    if (!isText && lacksSecrets(entry)) textsLeftOut.push(entryId(entry));
    const key = isText ? check.keyOf(entry) : null;
    if (key !== null && typeof key === 'object') {
      proven += 1;
      provenBy.set(key, (provenBy.get(key) ?? 0) + 1);
      continue;
    }
    const { tablet, epoch } = entry;
    const why = key ?? (isText || !lacksSecrets(entry) ? 'does-not-hold' : 'text-left-out');
    const name = `${chainId(entry)} ${why}`;
    const before = claims.get(name)?.entries ?? 0;
    const broughtBy = bringers.get(chainId(entry)) ?? null;
    claims.set(name, { tablet, epoch, why, entries: before + 1, broughtBy });
  }
  return {
    proven,
    claimed: entries.length - proven,
    provenBy: [...provenBy].map(([key, count]) => ({ ...key, entries: count })),
    claims: [...claims.values()],
    textsLeftOut,
  };
}

/** Who answers for which chain: the word is signed by a listed key of the one that brought it, and names an entry of the file by its hash. */
function bringersOf(
  entries: readonly Entry[],
  listed: readonly ListedKey[],
  brought: readonly BroughtChain[],
): ReadonlyMap<string, string> {
  const bringers = new Map<string, string>();
  if (brought.length === 0) return bringers;
  const hashes = new Map(entries.map((entry) => [entryId(entry), entry.hash]));
  for (const word of brought) {
    if (hashes.get(entryId(word)) !== word.hash) continue;
    const keys = listed.filter(({ tablet }) => tablet === word.via);
    if (keys.some(({ key }) => signatureHolds(key, broughtText(word), word.sig)))
      bringers.set(chainId(word), word.via);
  }
  return bringers;
}
