// What a paper proves of an entry: the text for its code, where the entry lies in the plant's log, and which tablets saw that log. Checked
// here again, since a proof that does not hold is none.

import { withoutSecrets } from '../../../shared/floor/secrets.ts';
import { fromBase64Url } from '../../../shared/kit/base64.ts';
import { fromHex } from '../../../shared/log/bytes.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { noteForPaper, recordText } from '../../../shared/log/entry-proof.ts';
import { parseNote } from '../../../shared/log/note.ts';
import { type ListedKey, parsePlantList, plantFingerprint } from '../../../shared/log/plant-list.ts';
import { type TabletSaid, tabletsSaid, wasShutOut } from '../../../shared/log/tablet-cosignature.ts';
import { inclusionHolds, leafHash } from '../../../shared/log/tree.ts';
import { parseTreeHead, proofFromTexts } from '../../../shared/log/tree-head.ts';
import type { App } from '../app.ts';
import { readPlantKeys } from '../store/plant-keys.ts';
import { keepRecord, keptRecord } from '../store/records.ts';
import { isSigned } from '../store/tickets.ts';
import type { KeptRecord } from '../sync/ports.ts';

/** What a paper says of its proof. */
export interface PaperProof {
  /** The code. */
  readonly text: string;
  /** From 1. */
  readonly place: number;
  /** Entries of the log at that head. */
  readonly size: number;
  /** Tablets that signed the head, by id. */
  readonly seenBy: readonly string[];
  readonly fingerprint: string;
}

/** True for an entry of which a paper may be printed: one that holds a secret never is. */
export function mayPrint(entry: Entry): boolean {
  return withoutSecrets(entry) === entry;
}

/** Why a paper has no proof: the server does not hold the entry yet, or nobody gave one that holds. */
export type NoProof = 'not-there' | 'none';

/** The proof of an entry: as the server tells it now, else as it was kept; else why there is none. `id`: the entry's. */
export async function proofFor(app: App, entry: Entry, id: string): Promise<PaperProof | NoProof> {
  const told = (await app.connection.peek()?.recordOf(entry)) ?? null;
  const asked = told === 'not-there' ? null : told;
  // It may be lost: then it is asked for again.
  if (asked) await keepRecord(app.store.cache, id, asked).catch(() => undefined);
  const record = asked ?? (await keptRecord(app.store.cache, id));
  const keys = record ? await readPlantKeys(app.store.log) : null;
  const proof = record && keys !== null ? await paperProof(entry, record, keys) : null;
  return proof ?? (told === 'not-there' ? told : 'none');
}

/** The proof as it goes on paper; null where it does not hold. `keys`: the plant's signed list, checked when it was kept. */
export async function paperProof(
  entry: Entry,
  { index, proof, head }: KeptRecord,
  keys: string,
): Promise<PaperProof | null> {
  const list = parsePlantList(parseNote(keys)?.text ?? '');
  const note = parseNote(head);
  const tree = note && parseTreeHead(note.text);
  const hash = fromHex(entry.hash, 32);
  const hashes = proofFromTexts(proof);
  const paper = list && note && noteForPaper(note, list.plantKey);
  if (!list || !tree || !hash || !hashes || !paper) return null;
  const { size, root } = tree;
  if (!inclusionHolds({ leaf: leafHash(hash), index, size, root }, hashes)) return null;
  const text = recordText({ index, proof: hashes, note: paper }, { entry, hash });
  const seenBy = await seenUnder(paper, list.keys);
  return { text, place: index + 1, size, seenBy, fingerprint: plantFingerprint(list.plantKey.key) };
}

async function seenUnder(paper: string, listed: readonly ListedKey[]): Promise<readonly string[]> {
  const note = parseNote(paper);
  const seen: string[] = [];
  for (const said of note ? tabletsSaid(note, listed) : [])
    if (!wasShutOut(said) && (await holds(said))) seen.push(said.listed.tablet);
  return seen;
}

async function holds({ listed, text, sig }: TabletSaid): Promise<boolean> {
  const [point, signature] = [fromBase64Url(listed.key), fromBase64Url(sig)];
  return point !== null && signature !== null && isSigned(text, signature, point);
}
