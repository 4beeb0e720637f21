// A text with the signatures under it, in the open signed-note form, so that anybody's tools can check what a plant signed.
// Source: C2SP signed-note v1.0.0 (the form of golang.org/x/mod/sumdb/note): text, blank line, then lines of an em dash, the key's name
// and base64 of four bytes of key id with the signature. Signing and checking are the caller's, since each runtime has its own.
// A plant signs twice: with Ed25519 for everybody, and with the P-256 key that its tablets know since they joined, since
// browsers of some years ago check only that one.

import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { fromBase64, fromBase64Url, toBase64 } from '../kit/base64.ts';
import { bytesToHex } from './bytes.ts';

/** Signature types of the form: Ed25519, and ECDSA with SHA-256 in ASN.1 DER. */
export type NoteKeyType = 'ed25519' | 'p256';

/** A key that may have signed a note. */
export interface NoteKey {
  /** No blank and no plus sign. */
  readonly name: string;
  readonly type: NoteKeyType;
  /** Ed25519: 32 bytes. P-256: the uncompressed point, 65 bytes. */
  readonly key: Uint8Array;
}

/** One signature line. */
export interface NoteSignature {
  readonly name: string;
  /** Four bytes, lower-case hex. */
  readonly id: string;
  readonly bytes: Uint8Array;
}

/** A note taken apart. `text` ends in a line end; it is what is signed. */
export interface Note {
  readonly text: string;
  readonly signatures: readonly NoteSignature[];
}

const DASH = '\u2014';
/** Most signature lines that are read; the form wants 16 at least. */
const SIGNATURES_MOST = 16;
const NAME = /^[^\s+]+$/u;

/** The DER of a P-256 public key is this and the point (RFC 5480). */
const SPKI_P256 = '3059301306072a8648ce3d020106082a8648ce3d030107034200';

/** The four bytes that name a key beside its name, lower-case hex. */
export function noteKeyId({ name, type, key }: NoteKey): string {
  if (type === 'p256') {
    const prefix = Uint8Array.from(SPKI_P256.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
    return bytesToHex(sha256(Uint8Array.of(...prefix, ...key)).subarray(0, 4));
  }
  const head = utf8ToBytes(`${name}\n`);
  return bytesToHex(sha256(Uint8Array.of(...head, 1, ...key)).subarray(0, 4));
}

/** Writes a note; the text must end in a line end and have no other control character. Throws RangeError where it is not so. */
export function formatNote(
  text: string,
  signatures: readonly { readonly key: NoteKey; readonly bytes: Uint8Array }[],
): string {
  if (!isNoteText(text)) {
    throw new RangeError(
      `Cannot sign a note as its text must end in a line end and have no other control character: current value is ${JSON.stringify(text.slice(-40))}`,
    );
  }
  const lines = signatures.map(({ key, bytes }) => signatureLine(key.name, noteKeyId(key), bytes));
  return `${text}\n${lines.join('')}`;
}

/** One signature line. `id`: the key's four bytes, lower-case hex. */
export function signatureLine(name: string, id: string, bytes: Uint8Array): string {
  const head = Uint8Array.from(id.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
  return `${DASH} ${name} ${toBase64(Uint8Array.of(...head, ...bytes))}\n`;
}

function isNoteText(text: string): boolean {
  return text.endsWith('\n') && !/[\u0000-\u0009\u000b-\u001f]/.test(text);
}

/** Takes a note apart; null where it is none. */
export function parseNote(note: string): Note | null {
  const cut = note.lastIndexOf('\n\n');
  if (cut < 0 || !note.endsWith('\n')) return null;
  const text = note.slice(0, cut + 1);
  const lines = note.slice(cut + 2, -1).split('\n');
  if (!isNoteText(text) || lines.length > SIGNATURES_MOST) return null;
  const signatures: NoteSignature[] = [];
  for (const line of lines) {
    const [dash, name = '', base64 = '', ...more] = line.split(' ');
    const bytes = fromBase64(base64);
    if (dash !== DASH || !NAME.test(name) || more.length > 0 || !bytes || bytes.length < 5) return null;
    signatures.push({ name, id: bytesToHex(bytes.subarray(0, 4)), bytes: bytes.subarray(4) });
  }
  return { text, signatures };
}

/** Signatures that say they are by this key; the caller checks each, and one that does not hold spoils the note. */
export function signaturesBy(note: Note, key: NoteKey): readonly Uint8Array[] {
  const id = noteKeyId(key);
  return note.signatures.filter((one) => one.name === key.name && one.id === id).map(({ bytes }) => bytes);
}

/** An Ed25519 key as text: name, key id, type and key (the verifier key of golang.org/x/mod/sumdb/note). */
export function formatNoteKey(key: NoteKey): string {
  return `${key.name}+${noteKeyId(key)}+${toBase64(Uint8Array.of(1, ...key.key))}`;
}

/** Reads such a text; null where it is none. */
export function parseNoteKey(text: string): NoteKey | null {
  const [, name = '', id, base64 = ''] = /^([^\s+]+)\+([0-9a-f]{8})\+(.+)$/u.exec(text) ?? [];
  const bytes = fromBase64(base64);
  if (bytes?.length !== 33 || bytes[0] !== 1) return null;
  const key: NoteKey = { name, type: 'ed25519', key: bytes.slice(1) };
  return noteKeyId(key) === id ? key : null;
}

/** A tablet's or server's P-256 point (65 bytes, base64url) as a key of notes; null where it is none. */
export function p256NoteKey(name: string, publicKey: string): NoteKey | null {
  const key = fromBase64Url(publicKey);
  return key?.length === 65 && key[0] === 4 ? { name, type: 'p256', key } : null;
}

/**
 * An ECDSA signature out of ASN.1 DER (two whole numbers) as r and s joined, 64 bytes, which browsers want; null where it is none.
 * Source: RFC 3279, section 2.2.3.
 */
export function ecdsaFromDer(der: Uint8Array): Uint8Array<ArrayBuffer> | null {
  if (der.length < 8 || der[0] !== 0x30 || der[1] !== der.length - 2) return null;
  const joined = new Uint8Array(64);
  let at = 2;
  for (const end of [32, 64]) {
    const length = der[at + 1] ?? 0;
    const from = at + 2;
    if (der[at] !== 2 || length < 1 || length > 33 || from + length > der.length) return null;
    const number = der.subarray(length === 33 && der[from] === 0 ? from + 1 : from, from + length);
    if (number.length > 32) return null;
    joined.set(number, end - number.length);
    at = from + length;
  }
  return at === der.length ? joined : null;
}
