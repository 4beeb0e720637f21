// Which tablets signed which head of the log? Every minute at most one head is put up for all tablets to sign, since signatures under
// heads of their own would never lie together. Kept in the store's `meta`, the last few heads alone: what a tablet signed once it never goes
// back behind, so that its newest signature says all that its older ones did.
// Two processes on one database may lose a signature to each other; the tablet signs the next head.

import { z } from 'zod';
import { openTurn } from '../../shared/kit/turn.ts';
import { fromHex } from '../../shared/log/bytes.ts';
import { parseNote } from '../../shared/log/note.ts';
import {
  addTabletCosignature,
  canWitness,
  cosignaturesMost,
  tabletCosignedText,
  tabletKeyId,
} from '../../shared/log/tablet-cosignature.ts';
import { consistencyHolds, emptyRoot, inclusionHolds, leafHash } from '../../shared/log/tree.ts';
import { parseTreeHead, proofFromTexts, type SignedHead } from '../../shared/log/tree-head.ts';
import type { Cosign } from '../../shared/wire/messages-heads.ts';
import { signatureHolds } from './keys.ts';
import type { Store } from './stores/store.ts';
import type { TreeState } from './stores/tree.ts';
import { type HeadSigner, proveTree } from './tree-heads.ts';

/** A head that tablets signed, as a note, and the proof that the log begins with it: base64. */
export interface WitnessedHead {
  readonly size: number;
  readonly note: string;
  readonly proof: readonly string[];
}

/** Where an entry lies, with the head that the proof leads to. */
export interface EntryPlace {
  readonly index: number;
  readonly proof: string[];
  readonly head: string;
}

/** Heads that the plant's tablets sign. */
export interface Witnesses {
  /** The head that is to be signed now; null while the log is empty. */
  readonly wanted: (tree: TreeState) => Promise<string | null>;
  /** Takes a tablet's signature; false where that head is not to be signed any more, or the signature does not hold. */
  readonly take: (key: { readonly tablet: string; readonly key: string }, said: Cosign) => Promise<boolean>;
  /** Heads with signatures that the log as it is now begins with, the newest first. */
  readonly held: (tree: TreeState) => Promise<readonly WitnessedHead[]>;
  /** Proves an entry, by the newest signed head that holds it, else by the log's head of now; null where the entry is not in the log. */
  readonly placeOf: (
    name: { tablet: string; epoch: string; seq: number },
    tree: TreeState,
  ) => Promise<EntryPlace | null>;
}

/** How long one head is put up, ms: tablets ask twice a minute while something is written. */
const PUT_UP_MS = 60_000;
const HEADS_KEPT = 4;
const META = 'witnessed heads';

const keptSchema = z.array(z.strictObject({ atMs: z.number(), note: z.string() }));
type Kept = z.infer<typeof keptSchema>;

/** What it needs. */
export interface WitnessParts {
  readonly store: Pick<Store, 'readMeta' | 'swapMeta' | 'treeHashes' | 'placed'>;
  readonly heads: HeadSigner;
  /** The name of the plant's key. */
  readonly origin: string;
  readonly nowMs: () => number;
}

/** Signatures under a note but for the plant's own two. */
const OWN_SIGNATURES = 2;
const cosignatures = (note: string) => (parseNote(note)?.signatures.length ?? 0) - OWN_SIGNATURES;
const headOf = (note: string) => parseTreeHead(parseNote(note)?.text ?? '');

/** Makes it. */
export function createWitnesses({ store, heads, origin, nowMs }: WitnessParts): Witnesses {
  /** One after the other in this process: each reads what is kept and writes it anew. */
  const inTurn = openTurn();
  const read = async (): Promise<Kept> => keptOf(await store.readMeta(META));
  /** Writes what the work makes of what is kept; once more where another process wrote meanwhile, so that no signature is lost. */
  const change = async <T>(work: (kept: Kept) => Promise<Change<T>>): Promise<T> => {
    for (;;) {
      const before = await store.readMeta(META);
      const { kept, told } = await work(keptOf(before));
      if (kept === null || (await store.swapMeta(META, before, JSON.stringify(kept)))) return told;
    }
  };
  /** The proof that the log begins with a head; null where it does not, as after an older copy was put back. */
  const growth = async (head: SignedHead, tree: TreeState): Promise<readonly string[] | null> => {
    if (head.origin !== origin || head.size > tree.size) return null;
    const { consistency } = await proveTree(store, tree, { sizes: [head.size], places: [] });
    const texts = consistency[0] ?? [];
    const now = { size: tree.size, root: fromHex(tree.root, 32) ?? emptyRoot };
    return consistencyHolds(head, now, proofFromTexts(texts) ?? []) ? texts : null;
  };
  const held = async (tree: TreeState): Promise<readonly WitnessedHead[]> => {
    const found: WitnessedHead[] = [];
    for (const { note } of await read()) {
      const head = headOf(note);
      const proof = head && cosignatures(note) > 0 ? await growth(head, tree) : null;
      if (head && proof) found.push({ size: head.size, note, proof });
    }
    return found;
  };
  /** The newest head that tablets signed, that holds the leaf, and that the log still grows from. */
  const firstHeld = async (tree: TreeState, index: number): Promise<string | null> => {
    for (const { note } of await read()) {
      const head = headOf(note);
      if (head && head.size > index && cosignatures(note) > 0 && (await growth(head, tree))) return note;
    }
    return null;
  };
  const wanted = async (tree: TreeState, kept: Kept): Promise<Change<string>> => {
    const [newest] = kept;
    const head = newest ? headOf(newest.note) : null;
    if (newest && head && (await growth(head, tree)) !== null) {
      const age = nowMs() - newest.atMs;
      if (head.size === tree.size || (age >= 0 && age < PUT_UP_MS)) return { kept: null, told: newest.note };
    }
    const note = heads.sign(tree);
    const before = kept.filter((one) => cosignatures(one.note) > 0);
    return { kept: [{ atMs: nowMs(), note }, ...before].slice(0, HEADS_KEPT), told: note };
  };
  return {
    wanted: async (tree) => (tree.size === 0 ? null : inTurn(() => change((kept) => wanted(tree, kept)))),
    take: (key, said) => inTurn(() => change(async (kept) => takeIn(kept, key, said))),
    held,
    placeOf: async (name, tree) => {
      const there = await store.placed(name);
      const hash = fromHex(there?.hash ?? '', 32);
      if (!there || !hash || there.pos > tree.size) return null;
      const index = there.pos - 1;
      const signed = await firstHeld(tree, index);
      const note = signed ?? heads.sign(tree);
      const head = headOf(note);
      if (!head) return null;
      const state = { size: head.size, root: Buffer.from(head.root).toString('hex') };
      const { inclusion } = await proveTree(store, state, { sizes: [], places: [index] });
      const proof = inclusion[0] ?? [];
      const isIn = inclusionHolds({ ...head, index, leaf: leafHash(hash) }, proofFromTexts(proof) ?? []);
      return isIn ? { index, proof, head: note } : null;
    },
  };
}

/** What becomes of what is kept, null for nothing, and what is told. */
interface Change<T> {
  readonly kept: Kept | null;
  readonly told: T;
}

function keptOf(text: string | null): Kept {
  return text === null ? [] : keptSchema.parse(JSON.parse(text));
}

function takeIn(
  kept: Kept,
  key: { readonly tablet: string; readonly key: string },
  { size, seconds, sig }: Cosign,
): Change<boolean> {
  const left = (told: boolean) => ({ kept: null, told });
  const one = kept.find(({ note }) => headOf(note)?.size === size);
  const note = one && parseNote(one.note);
  if (!one || !note || !canWitness(key.tablet)) return left(false);
  if (!signatureHolds(key.key, tabletCosignedText(note.text, seconds), sig)) return left(false);
  const id = tabletKeyId(key);
  if (note.signatures.some((each) => each.name === key.tablet && each.id === id)) return left(true);
  if (cosignatures(one.note) >= cosignaturesMost) return left(false);
  const signed = { ...one, note: addTabletCosignature(one.note, key, { seconds, sig }) };
  return { kept: kept.map((each) => (each === one ? signed : each)), told: true };
}
