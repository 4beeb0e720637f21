// What a witness says under a head that it saw: that the log grew from the one before it, and when. A signature line more in the signed note.
// Source: C2SP tlog-cosignature, cosignature/v1 with Ed25519. Signing and checking are the caller's.

import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { fromBase64, toBase64 } from '../kit/base64.ts';
import { bytesToHex, fromHex } from './bytes.ts';
import { type Note, signatureLine } from './note.ts';

/** A witness's Ed25519 key: 32 bytes. Its name has no blank and no plus sign. */
export interface WitnessKey {
  readonly name: string;
  readonly key: Uint8Array;
}

/** When it signed, seconds since 1970, and its signature over `cosignedText`. */
export interface Cosignature {
  readonly seconds: number;
  readonly bytes: Uint8Array;
}

/** The form's number for such keys. */
export const COSIGNATURE = 4;
const TIME_BYTES = 8;
const SIGNATURE_BYTES = 64;

/** The four bytes that name a witness's key beside its name, lower-case hex. */
export function witnessKeyId({ name, key }: WitnessKey): string {
  return bytesToHex(sha256(Uint8Array.of(...utf8ToBytes(`${name}\n`), COSIGNATURE, ...key)).subarray(0, 4));
}

/** A witness's key as text: name, key id, type and key. */
export function formatWitnessKey(key: WitnessKey): string {
  return `${key.name}+${witnessKeyId(key)}+${toBase64(Uint8Array.of(COSIGNATURE, ...key.key))}`;
}

/** Reads such a text; null where it is none. */
export function parseWitnessKey(text: string): WitnessKey | null {
  const [, name = '', id, base64 = ''] = /^([^\s+]+)\+([0-9a-f]{8})\+(.+)$/u.exec(text) ?? [];
  const bytes = fromBase64(base64);
  if (bytes?.length !== 33 || bytes[0] !== COSIGNATURE) return null;
  const key = { name, key: bytes.slice(1) };
  return witnessKeyId(key) === id ? key : null;
}

/** The text whose UTF-8 bytes a witness signs. `note`: the text of the note, `seconds`: since 1970. */
export function cosignedText(note: string, seconds: number): string {
  return `cosignature/v1\ntime ${seconds}\n${note}`;
}

/** Cosignatures that say they are by this key; the caller checks each. One of another length spoils nothing and is left out. */
export function cosignaturesBy(note: Note, key: WitnessKey): readonly Cosignature[] {
  const id = witnessKeyId(key);
  return note.signatures.flatMap((one) =>
    one.name === key.name && one.id === id ? readCosignature(one.bytes) : [],
  );
}

/** Takes the bytes of a signature line apart; none where they are no cosignature. */
export function readCosignature(bytes: Uint8Array): readonly Cosignature[] {
  if (bytes.length !== TIME_BYTES + SIGNATURE_BYTES) return [];
  const seconds = Number.parseInt(bytesToHex(bytes.subarray(0, TIME_BYTES)), 16);
  return Number.isSafeInteger(seconds) ? [{ seconds, bytes: bytes.subarray(TIME_BYTES) }] : [];
}

/** The bytes of a signature line: the time, then the signature. */
export function cosignatureBytes({ seconds, bytes }: Cosignature): Uint8Array {
  const time =
    fromHex(seconds.toString(16).padStart(2 * TIME_BYTES, '0'), TIME_BYTES) ?? new Uint8Array(TIME_BYTES);
  return Uint8Array.of(...time, ...bytes);
}

/** The note with the cosignature below its other lines. */
export function addCosignature(note: string, key: WitnessKey, cosignature: Cosignature): string {
  return note + signatureLine(key.name, witnessKeyId(key), cosignatureBytes(cosignature));
}
