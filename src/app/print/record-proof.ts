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

/** The proof of an entry: as the server tells it now, else as it was kept; null where there is none. `id`: the entry's. */
export async function proofFor(app: App, entry: Entry, id: string): Promise<PaperProof | null> {
  const asked = (await app.connection.peek()?.recordOf(entry)) ?? null;
  // It may be lost: then it is asked for again.
  if (asked) await keepRecord(app.store.cache, id, asked).catch(() => undefined);
  const record = asked ?? (await keptRecord(app.store.cache, id));
  const keys = record ? await readPlantKeys(app.store.log) : null;
  return record && keys !== null ? paperProof(entry, record, keys) : null;
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
  if (!point || !signature) return false;
  const curve = { name: 'ECDSA', namedCurve: 'P-256' };
  const how = { name: 'ECDSA', hash: 'SHA-256' };
  try {
    const key = await crypto.subtle.importKey('raw', Uint8Array.from(point), curve, false, ['verify']);
    return await crypto.subtle.verify(how, key, Uint8Array.from(signature), new TextEncoder().encode(text));
  } catch {
    return false; // no point of the curve
  }
}
