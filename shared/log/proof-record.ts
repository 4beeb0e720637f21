// What an export brings besides the log, so that it can be checked by itself: the plant's signed list of keys, the
// signed head of the log's tree, and what joins the file's entries to it. It stands in the file
// as one more line in the form of an entry, of a chain that is no tablet's: a reader that does not know it takes it for an
// entry of an unknown kind, and the file still checks. A line of another form would have stopped such a reader.

import { type Entry, firstPrev, type Json, type JsonObject } from './entry.ts';
import { sealEntry } from './seal.ts';

/** The kind of that line; no tablet may write it. */
export const proofKind = 'log.proof';

/** Stands for the plant where a tablet's name stands in an entry. */
const PROOF_TABLET = '(plant)';

/** What it says. */
export interface ExportProof {
  /** The plant's list of keys, a signed note (`plant-list.ts`). */
  readonly keys: string;
  /** The log's tree; absent where the server had none yet. */
  readonly tree?: ExportTree;
  /** Entries whose right nothing proved when the file was written; absent from a writer that asked none for a ticket. */
  readonly rights?: ExportRights;
  /** Who brought the chains of tablets that the plant never let in, signed by the one that brought each; absent from a writer that asked for none. */
  readonly brought?: readonly BroughtChain[];
  /** Heads that tablets of the plant signed, the newest first; absent from a writer whose tablets sign none. */
  readonly witnessed?: readonly ExportWitnessed[];
}

/** A head that tablets signed (`tablet-cosignature.ts`), and the proof that the log of the file's own head begins with it. */
export interface ExportWitnessed {
  /** A signed note. */
  readonly head: string;
  /** Hashes in base64, blanks between. */
  readonly proof: string;
}

/** A tablet's signed word that it brought a chain up to here (`wire/signing.ts`). */
export interface BroughtChain {
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
  readonly hash: string;
  readonly via: string;
  readonly sig: string;
}

/** Ids of entries that no ticket stands behind: nobody has said more, or a lead has. */
export interface ExportRights {
  readonly unproven: readonly string[];
  readonly confirmed: readonly string[];
  readonly rejected: readonly string[];
}

/** Where the file's entries lie in the plant's log. */
export interface ExportTree {
  /** The head of the log's tree, a signed note (`tree-head.ts`). */
  readonly head: string;
  /** By chain (`tablet/epoch`): runs of entries and leaves (`tree-cover.ts`). */
  readonly at: Readonly<Record<string, string>>;
  /** Hashes of the largest subtrees without an entry of the file, from the left: base64, blanks between. */
  readonly cover: string;
}

/** Makes the line. `epoch`: which life of the server wrote the file; `atMs`: when, ms since 1970. */
export function makeProofRecord(proof: ExportProof, { epoch, atMs }: { epoch: string; atMs: number }): Entry {
  return sealEntry({
    v: 1,
    tablet: PROOF_TABLET,
    epoch,
    seq: 1,
    at: new Date(atMs).toISOString(),
    hlc: { ms: atMs, n: 0 },
    who: null,
    kind: proofKind,
    payload: proof as unknown as JsonObject, // texts under names, as JSON has them
    prev: firstPrev,
  });
}

/** True for that line. */
export function isProofRecord(entry: Pick<Entry, 'kind' | 'tablet'>): boolean {
  return entry.kind === proofKind && entry.tablet === PROOF_TABLET;
}

/** Reads what it says; null where it says nothing of it. */
export function readProofRecord(entry: Entry): ExportProof | null {
  const { keys, tree, rights, brought, witnessed } = entry.payload;
  if (typeof keys !== 'string') return null;
  const [readOfTree, readOfRights] = [readTree(tree), readRights(rights)];
  const withTree: ExportProof = readOfTree ? { keys, tree: readOfTree } : { keys };
  const withRights = readOfRights ? { ...withTree, rights: readOfRights } : withTree;
  const withBrought = Array.isArray(brought)
    ? { ...withRights, brought: brought.flatMap(readBrought) }
    : withRights;
  if (!Array.isArray(witnessed)) return withBrought;
  return { ...withBrought, witnessed: witnessed.flatMap(readWitnessed) };
}

function readWitnessed(value: Json): readonly ExportWitnessed[] {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return [];
  const { head, proof } = value as JsonObject; // no array, as was just looked at
  return typeof head === 'string' && typeof proof === 'string' ? [{ head, proof }] : [];
}

function readBrought(value: Json): readonly BroughtChain[] {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return [];
  const { tablet, epoch, seq, hash, via, sig } = value as JsonObject; // no array, as was just looked at
  if (typeof tablet !== 'string' || typeof epoch !== 'string' || typeof seq !== 'number') return [];
  if (typeof hash !== 'string' || typeof via !== 'string' || typeof sig !== 'string') return [];
  return [{ tablet, epoch, seq, hash, via, sig }];
}

function readRights(value: Json | undefined): ExportRights | null {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return null;
  const lists = value as JsonObject; // no array, as was just looked at
  const ids = (name: keyof ExportRights): readonly string[] => {
    const list = lists[name];
    return Array.isArray(list) ? list.filter((id): id is string => typeof id === 'string') : [];
  };
  return { unproven: ids('unproven'), confirmed: ids('confirmed'), rejected: ids('rejected') };
}

function readTree(value: Json | undefined): ExportTree | null {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return null;
  const { head, at, cover } = value as JsonObject; // no array, as was just looked at
  if (typeof head !== 'string' || typeof cover !== 'string') return null;
  const isAt =
    typeof at === 'object' && at !== null && Object.values(at).every((runs) => typeof runs === 'string');
  return isAt ? { head, cover, at: at as Readonly<Record<string, string>> } : null;
}
