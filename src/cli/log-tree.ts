// Is an exported log the one whose head the plant signed? The plant's line in the file says where each entry lies in the log's tree, and
// covers what the file leaves out; root and head have to be one. A part of an export takes a cover of its own along.

import { toBase64 } from '../../shared/kit/base64.ts';
import { fromHex } from '../../shared/log/bytes.ts';
import { chainId, type Entry, entryId } from '../../shared/log/entry.ts';
import { type ExportItem, isOmitted } from '../../shared/log/export.ts';
import type { ExportReading } from '../../shared/log/export-read.ts';
import { type NoteKey, parseNote } from '../../shared/log/note.ts';
import { type ExportTree, makeProofRecord, readProofRecord } from '../../shared/log/proof-record.ts';
import { inclusionRanges } from '../../shared/log/tree.ts';
import {
  coverRanges,
  createRunBook,
  foldPart,
  formatRuns,
  type LeafRun,
  type LeafSet,
  leavesOf,
  parseRuns,
  type TreePart,
} from '../../shared/log/tree-cover.ts';
import { parseTreeHead } from '../../shared/log/tree-head.ts';
import { noteHolds } from '../server/plant-key.ts';
import { joinHex, leafOf } from '../server/stores/tree.ts';

/** What the head proves of the file. */
export interface TreeProven {
  /** Entries of the plant's whole log at that head. */
  readonly size: number;
  /** Base64. */
  readonly root: string;
  /** Entries of the file that are proved to be in it, and at their places. */
  readonly entries: number;
  /** Entries of the log that the file leaves out. */
  readonly leftOut: number;
  /** Entries of the file of which the head says nothing. */
  readonly beyond: number;
  /** The signed head, to be kept elsewhere. */
  readonly head: string;
  /** Does the log begin with that of an earlier head? Null where none was given, `unknown` where the file leaves out what would say so. */
  readonly beginsWithEarlier: true | 'unknown' | null;
}

/** The verdict. */
export interface TreeVerdict {
  readonly tree: TreeProven | null;
  /** What does not hold, for people; null where all does, or where the file has no head. */
  readonly fault: string | null;
}

/**
 * Checks the head in a file; `key`: the plant's, as its list says, null where none is known; `earlier`: a head that was kept elsewhere, null
 * without one. Cost: two hashes an entry.
 */
export function checkTree(reading: ExportReading, key: NoteKey | null, earlier: string | null): TreeVerdict {
  const [record] = reading.proofs ?? [];
  const told = record ? readProofRecord(record)?.tree : undefined;
  if (!told) return { tree: null, fault: null };
  const no = (why: string): TreeVerdict => ({ tree: null, fault: `the log's tree: ${why}` });
  const note = parseNote(told.head);
  const head = note && parseTreeHead(note.text);
  if (!note || !head) return no('the head in the file cannot be read');
  // A list of the reader's own names no plant: nobody is known who could have signed.
  if (!key) return { tree: null, fault: null };
  if (head.origin !== key.name || !noteHolds(note, key))
    return no("the head in the file is not signed by the plant's key");
  const read = readPart(reading.entries, told, head.size);
  if (!read) return no('where the entries lie cannot be read');
  const { part, count } = read;
  if (read.missing !== null)
    return no(`entry ${read.missing} is in the plant's log there, and not in the file`);
  const root = toBase64(head.root);
  const folded = head.size === 0 ? root : toRoot(foldPart(part, part.set)?.root);
  if (folded !== root) return no("the file's entries are not those of the log whose head the plant signed");
  const begins = earlier === null ? null : checkEarlier(part, { key, earlier, root });
  if (typeof begins === 'object' && begins !== null) return no(begins.fault);
  return {
    tree: {
      size: head.size,
      root,
      entries: count,
      leftOut: head.size - count,
      beyond: reading.entries.length - count,
      head: told.head,
      beginsWithEarlier: begins,
    },
    fault: null,
  };
}

/** Computes the tree that the log had at the earlier head, where the file holds all of that. */
function checkEarlier(
  part: TreePart<string>,
  { key, earlier, root }: { readonly key: NoteKey; readonly earlier: string; readonly root: string },
): true | 'unknown' | { readonly fault: string } {
  const note = parseNote(earlier);
  const head = note && parseTreeHead(note.text);
  if (!note || !head || head.origin !== key.name || !noteHolds(note, key))
    return { fault: "the earlier head is not signed by the plant's key" };
  const { size } = head;
  if (size > part.size)
    return { fault: `the log had ${size} entries at the earlier head, and has ${part.size} now` };
  const isWhole = size === 0 || (part.set[0]?.from === 0 && part.set[0].to >= size);
  if (!isWhole && size !== part.size) return 'unknown';
  const set = [{ from: 0, to: size }];
  const now = size === part.size ? root : toRoot(foldPart({ ...part, size, set, cover: [] }, set)?.root);
  if (size === 0 || now === toBase64(head.root)) return true;
  return { fault: 'the log does not begin with that of the earlier head: it was changed since' };
}

/** A root of the tree as heads have it, base64, out of hex; null without one. */
export function toRoot(hex: string | undefined): string | null {
  return hex === undefined ? null : Buffer.from(hex, 'hex').toString('base64');
}

interface PartRead {
  readonly part: TreePart<string>;
  /** Leaves of the part. */
  readonly count: number;
  /** The first entry that ought to be in the file; null where all are. */
  readonly missing: string | null;
}

/** The part of the tree that a file holds; null where what is told of it cannot be. */
function readPart(entries: readonly Entry[], told: ExportTree, size: number): PartRead | null {
  const byChain = new Map<string, readonly LeafRun[]>();
  for (const [chain, text] of Object.entries(told.at)) {
    const runs = parseRuns(text);
    if (!runs) return null;
    byChain.set(chain, runs);
  }
  const set = leavesOf(byChain.values());
  if (!set || (set.at(-1)?.to ?? 0) > size) return null;
  const hashes = new Map(entries.map((entry) => [entryId(entry), entry.hash]));
  const leaves = new Map<number, string>();
  let count = 0;
  let missing: string | null = null;
  for (const [chain, runs] of byChain)
    for (const run of runs)
      for (let at = 0; at < run.count; at += 1) {
        const hash = hashes.get(`${chain}/${run.seq + at}`);
        if (hash !== undefined) leaves.set(run.index + at, hash);
        else missing ??= `${chain}/${run.seq + at}`;
        count += 1;
        // What is told may be a lie of any length: no more is looked at than one lie needs.
        if (missing !== null) break;
      }
  const leafAt = (index: number) => {
    const hash = leaves.get(index);
    return hash === undefined ? null : leafOf(hash);
  };
  const cover = told.cover === '' ? [] : told.cover.split(' ').map(toHex);
  return { part: { size, set, leafAt, cover, join: joinHex }, count, missing };
}

function toHex(base64: string): string {
  return Buffer.from(base64, 'base64').toString('hex');
}

/** The plant's line for a part of a file: the same list and head, with the cover that the part needs. */
export function proofOfPart(reading: ExportReading, items: readonly ExportItem[]): readonly Entry[] {
  const [record] = reading.proofs ?? [];
  if (!record) return [];
  const proof = readProofRecord(record);
  const head = proof?.tree && parseTreeHead(parseNote(proof.tree.head)?.text ?? '');
  const read = proof?.tree && head ? readPart(reading.entries, proof.tree, head.size) : null;
  if (!proof?.tree || !read || read.missing !== null) return [record];
  const kept = runsOf(items, proof.tree);
  const folded = foldPart(read.part, kept.set);
  if (!folded) return [record];
  const cover = folded.cover.map((hex) => toRoot(hex) ?? '').join(' ');
  const tree = { head: proof.tree.head, at: kept.at, cover };
  return [makeProofRecord({ ...proof, tree }, { epoch: record.epoch, atMs: record.hlc.ms })];
}

/**
 * Tells where one entry lies in the log's tree when it had `size` entries and what proves it, in the proof's order; null where the file does
 * not say: of an earlier size only one that holds all of the log until then does. The file is read once for all sizes.
 */
export function entryProver(
  reading: ExportReading,
  entry: Entry,
): (size: number) => { readonly index: number; readonly proof: readonly Uint8Array[] } | null {
  const [record] = reading.proofs ?? [];
  const tree = record && readProofRecord(record)?.tree;
  const now = tree ? parseTreeHead(parseNote(tree.head)?.text ?? '')?.size : undefined;
  const read = tree && now !== undefined ? readPart(reading.entries, tree, now) : null;
  if (!tree || !read || read.missing !== null || now === undefined) return () => null;
  const { set } = runsOf([entry], tree);
  const [leaf] = set;
  const [first] = read.part.set;
  return (size) => {
    if (size > now || (size < now && !(first?.from === 0 && first.to >= size))) return null;
    const early = { ...read.part, size, set: [{ from: 0, to: size }], cover: [] };
    const folded = leaf && leaf.from < size ? foldPart(size < now ? early : read.part, set) : null;
    if (!leaf || !folded) return null;
    // The same subtrees, from the left there, from the leaf upwards here.
    const byFrom = new Map(coverRanges(size, set).map(({ from }, at) => [from, folded.cover[at]]));
    const proof = inclusionRanges(leaf.from, size).map(({ from }) => fromHex(byFrom.get(from) ?? '', 32));
    return proof.every((hash) => hash !== null) ? { index: leaf.from, proof } : null;
  };
}

/** Where the entries of a part lie, out of where those of the whole do. */
function runsOf(
  items: readonly ExportItem[],
  { at }: ExportTree,
): { readonly set: LeafSet; readonly at: Readonly<Record<string, string>> } {
  const book = createRunBook();
  const runs = new Map(Object.entries(at).map(([chain, text]) => [chain, parseRuns(text) ?? []]));
  for (const item of items) {
    if (isOmitted(item)) continue;
    const chain = chainId(item);
    const run = runs.get(chain)?.find(({ seq, count }) => item.seq >= seq && item.seq < seq + count);
    if (run) book.note(chain, item.seq, run.index + item.seq - run.seq);
  }
  return {
    set: leavesOf(book.runs().values()) ?? [],
    at: Object.fromEntries([...book.runs()].map(([chain, some]) => [chain, formatRuns(some)])),
  };
}
