// What the plant signs for everybody: notes, and the list of its tablets' keys. Its Ed25519 key is drawn from the server's one secret, so
// that there is one thing to keep and to carry over; the second signature under a note is by the P-256 key that tablets know.

import { createPrivateKey, createPublicKey, hkdfSync, type KeyObject, sign, verify } from 'node:crypto';
import { formatNote, type Note, type NoteKey, p256NoteKey, signaturesBy } from '../../shared/log/note.ts';
import {
  type PlantList,
  plantFingerprint,
  plantKeyName,
  plantListText,
} from '../../shared/log/plant-list.ts';
import type { Store } from './stores/store.ts';

/** The plant's key. */
export interface PlantKey {
  readonly ed25519: NoteKey;
  /** What people compare. */
  readonly fingerprint: string;
  /** Signs a text as a note. */
  readonly signNote: (text: string) => string;
}

/** An Ed25519 private key is its 32 bytes behind this (RFC 8410). */
const PKCS8_ED25519 = Buffer.from('302e020100300506032b657004220420', 'hex');
/** A public one is its 32 bytes behind this. */
const SPKI_ED25519 = Buffer.from('302a300506032b6570032100', 'hex');

/** Makes the plant's key out of the server's P-256 key: HKDF (RFC 5869) of its private number. `publicKey`: its point, base64url. */
export function plantKeyOf(secret: KeyObject, publicKey: string): PlantKey {
  const { d = '' } = secret.export({ format: 'jwk' });
  const drawn = hkdfSync('sha256', Buffer.from(d, 'base64url'), '', 'reelward plant ed25519', 32);
  const der = Buffer.concat([PKCS8_ED25519, Buffer.from(drawn)]);
  const own = createPrivateKey({ key: der, format: 'der', type: 'pkcs8' });
  const { x = '' } = createPublicKey(own).export({ format: 'jwk' });
  const key = new Uint8Array(Buffer.from(x, 'base64url'));
  const ed25519: NoteKey = { name: plantKeyName(key), type: 'ed25519', key };
  const p256 = p256NoteKey(ed25519.name, publicKey);
  if (!p256)
    throw new RangeError(
      `Cannot sign notes as the server's key must be a point: current value is ${publicKey}`,
    );
  return {
    ed25519,
    fingerprint: plantFingerprint(key),
    signNote: (text) => {
      const bytes = Buffer.from(text);
      return formatNote(text, [
        { key: ed25519, bytes: sign(null, bytes, own) },
        { key: p256, bytes: sign('sha256', bytes, secret) },
      ]);
    },
  };
}

/** True where the note is signed by this Ed25519 key and every signature that says so holds. */
export function noteHolds(note: Note, { name, key }: NoteKey): boolean {
  const signatures = signaturesBy(note, { name, type: 'ed25519', key });
  const der = Buffer.concat([SPKI_ED25519, key]);
  const own = createPublicKey({ key: der, format: 'der', type: 'spki' });
  const bytes = Buffer.from(note.text);
  return signatures.length > 0 && signatures.every((each) => verify(null, bytes, own, each));
}

/** The list of the keys of all tablets ever let in, signed. */
export async function signedKeys(
  store: Pick<Store, 'allKeys'>,
  key: PlantKey,
  { plant, nowMs }: { readonly plant: string; readonly nowMs: number },
): Promise<string> {
  const keys = await store.allKeys();
  const list: PlantList = {
    plantKey: key.ed25519,
    plant,
    at: new Date(nowMs).toISOString(),
    keys: keys.map(({ tablet, publicKey, sinceMs, revokedMs }) => ({
      tablet,
      key: publicKey,
      since: new Date(sinceMs).toISOString(),
      until: revokedMs === null ? null : new Date(revokedMs).toISOString(),
    })),
  };
  return key.signNote(plantListText(list));
}
