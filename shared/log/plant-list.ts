// Which keys are the plant's? The list of its tablets' keys, signed by the plant's own key: what makes a signature of an entry a
// proof, and not only the word of whoever wrote the file. The list names the key that signs it, so that one text says all; whether that
// is the plant's key is for people to compare, by its fingerprint.

import { sha256 } from '@noble/hashes/sha2.js';
import { fromBase64Url } from '../kit/base64.ts';
import { bytesToHex } from './bytes.ts';
import { formatNoteKey, type NoteKey, parseNoteKey } from './note.ts';

/** A key that a tablet signs with, or signed with. */
export interface ListedKey {
  readonly tablet: string;
  /** P-256 point, 65 bytes, base64url. */
  readonly key: string;
  /** When the plant took it in, ISO 8601. */
  readonly since: string;
  /** When the tablet was shut out, ISO 8601; null where it is not. */
  readonly until: string | null;
}

/** The list. */
export interface PlantList {
  readonly plantKey: NoteKey;
  /** What the plant is called. */
  readonly plant: string;
  /** When it was signed, ISO 8601. */
  readonly at: string;
  readonly keys: readonly ListedKey[];
}

/** Bytes of the hash that a plant's name is made of. */
const NAME_BYTES = 8;

/** The name of a plant's key, made out of the key: nobody else's key has it. */
export function plantKeyName(ed25519: Uint8Array): string {
  return `reelward-${bytesToHex(sha256(ed25519).subarray(0, NAME_BYTES))}`;
}

/** What people compare: SHA-256 of the key's 32 bytes, in pairs of hex digits. */
export function plantFingerprint(ed25519: Uint8Array): string {
  return (bytesToHex(sha256(ed25519)).toUpperCase().match(/../g) ?? []).join(':');
}

/** The list as the text of a note. */
export function plantListText({ plantKey, plant, at, keys }: PlantList): string {
  const lines = keys.map(({ tablet, key, since, until }) => `${tablet} ${key} ${since} ${until ?? '-'}\n`);
  return `${plantKey.name}/keys\n${formatNoteKey(plantKey)}\n${at}\n${plant}\n${lines.join('')}`;
}

/** Reads the text of a note; null where it is no list. */
export function parsePlantList(text: string): PlantList | null {
  const [title = '', key = '', at = '', plant = '', ...rest] = text.split('\n');
  const plantKey = parseNoteKey(key);
  if (rest.pop() !== '' || !plantKey || plant === '' || !isMoment(at)) return null;
  if (plantKey.name !== plantKeyName(plantKey.key) || title !== `${plantKey.name}/keys`) return null;
  const keys: ListedKey[] = [];
  for (const line of rest) {
    const [tablet = '', publicKey = '', since = '', until = '', ...more] = line.split(' ');
    if (tablet === '' || more.length > 0 || !isPoint(publicKey) || !isMoment(since)) return null;
    if (until !== '-' && !isMoment(until)) return null;
    keys.push({ tablet, key: publicKey, since, until: until === '-' ? null : until });
  }
  return { plantKey, plant, at, keys };
}

function isMoment(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?Z$/.test(text) && !Number.isNaN(Date.parse(text));
}

function isPoint(text: string): boolean {
  const bytes = fromBase64Url(text);
  return bytes !== null && bytes.length === 65 && bytes[0] === 4;
}
