// That one entry is in the plant's log, as a text that is checked without the log: for paper. It holds the entry, or its hash where the entry is
// long, the place, the proof and the signed head.
// Source: C2SP tlog-proof: a line that names the form, `extra`, `index`, the proof's hashes, a blank line, the checkpoint.

import { utf8ToBytes } from '@noble/hashes/utils.js';
import { fromBase64, toBase64 } from '../kit/base64.ts';
import { type Note, type NoteKey, noteKeyId, signatureLine } from './note.ts';
import { proofFromTexts, proofToTexts } from './tree-head.ts';

/** The proof of one entry. */
export interface EntryProof {
  /** The entry as JSON in UTF-8, or the 32 bytes of its hash. */
  readonly extra: Uint8Array;
  /** The entry's leaf, from 0. */
  readonly index: number;
  readonly proof: readonly Uint8Array[];
  /** The head, a signed note. */
  readonly note: string;
}

const FORM = 'c2sp.org/tlog-proof@v1';

/** Writes it. */
export function formatEntryProof({ extra, index, proof, note }: EntryProof): string {
  const lines = [FORM, `extra ${toBase64(extra)}`, `index ${index}`, ...proofToTexts(proof)];
  return `${lines.join('\n')}\n\n${note}`;
}

/** Reads it; null where it is none. Line ends of any kind, and blanks around it, as scanners and mail add them. */
export function parseEntryProof(text: string): EntryProof | null {
  const plain = `${text.replace(/\r\n?/g, '\n').trim()}\n`;
  const cut = plain.indexOf('\n\n');
  if (cut < 0) return null;
  const [form, second = '', third = '', ...lines] = plain.slice(0, cut).split('\n');
  const [, base64] = /^extra (\S+)$/.exec(second) ?? [];
  const [, place] = /^index (0|[1-9]\d{0,15})$/.exec(third) ?? [];
  const extra = base64 === undefined ? null : fromBase64(base64);
  const proof = proofFromTexts(lines);
  const index = Number(place);
  if (form !== FORM || !extra || place === undefined || !proof || !Number.isSafeInteger(index)) return null;
  return { extra, index, proof, note: plain.slice(cut + 2) };
}

/**
 * Characters of such a text: a code of 145 modules a side at most, 69 mm with its quiet zone where a module has 0.45 mm. Where the entry
 * itself makes it longer its hash stands there.
 */
export const recordMost = 2_000;

/** Witnesses on a paper: more would leave a code that a scanner hardly reads. */
const WITNESSES_MOST = 4;

/** A signed head with the plant's signatures (by one of them another tablet checks the paper) and those of some witnesses; null where the plant's key did not sign it. */
export function noteForPaper({ text, signatures }: Note, key: NoteKey): string | null {
  const id = noteKeyId(key);
  const own = signatures.filter((one) => one.name === key.name && one.id === id);
  if (own.length === 0) return null;
  const forTablets = signatures.filter((one) => one.name === key.name && one.id !== id);
  const kept = [
    ...forTablets,
    ...own,
    ...signatures.filter((one) => one.name !== key.name).slice(0, WITNESSES_MOST),
  ];
  return `${text}\n${kept.map((one) => signatureLine(one.name, one.id, one.bytes)).join('')}`;
}

/** The text for paper: with the entry where it fits and may be told, else with its hash. `hash`: its 32 bytes. */
export function recordText(
  place: Omit<EntryProof, 'extra'>,
  { entry, hash }: { readonly entry: object | null; readonly hash: Uint8Array },
): string {
  const whole =
    entry === null ? null : formatEntryProof({ ...place, extra: utf8ToBytes(JSON.stringify(entry)) });
  return whole !== null && whole.length <= recordMost ? whole : formatEntryProof({ ...place, extra: hash });
}
