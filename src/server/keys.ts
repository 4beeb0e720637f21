// Keys and signatures: ECDSA P-256 with SHA-256, r and s joined (IEEE P1363), as WebCrypto on a tablet makes them.
// Checked on the thread that asks, a ten-thousandth of a second each: handing one over to another thread costs half as much
// again. Who checks many lets others have their turn in between.

import {
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  hash,
  type KeyObject,
  randomBytes,
  sign,
  verify,
} from 'node:crypto';
import { type PlantKey, plantKeyOf } from './plant-key.ts';
import type { Store } from './stores/store.ts';
import { serverKeyName } from './stores/tables.ts';

const readKeys = new Map<string, KeyObject | null>();
const KEYS_KEPT = 5_000;
/** 65 bytes as base64url. */
const POINT_CHARS = 87;

/** Reads a public key from its point (65 bytes, base64url); null where it is not a point of the curve. */
export function readPublicKey(text: string): KeyObject | null {
  // Before anything is kept of it: a text of any length would be.
  if (text.length !== POINT_CHARS) return null;
  const known = readKeys.get(text);
  if (known !== undefined) return known;
  const key = parsePublicKey(text);
  if (readKeys.size >= KEYS_KEPT) readKeys.clear();
  readKeys.set(text, key);
  return key;
}

/** A point of P-256 (65 bytes, uncompressed) as a JWK; whether it lies on the curve is not looked at. */
export function jwkOf(point: Buffer): {
  readonly kty: string;
  readonly crv: string;
  readonly x: string;
  readonly y: string;
} {
  const x = point.subarray(1, 33).toString('base64url');
  const y = point.subarray(33).toString('base64url');
  return { kty: 'EC', crv: 'P-256', x, y };
}

function parsePublicKey(text: string): KeyObject | null {
  const point = Buffer.from(text, 'base64url');
  if (point.length !== 65 || point[0] !== 4) return null;
  try {
    return createPublicKey({ key: jwkOf(point), format: 'jwk' });
  } catch {
    return null; // not on the curve: the caller says so
  }
}

/** Says whether `sig` (base64url) is the key's signature over the text's UTF-8 bytes. */
export function signatureHolds(publicKey: string, text: string, sig: string): boolean {
  const key = readPublicKey(publicKey);
  const bytes = Buffer.from(sig, 'base64url');
  if (!key || bytes.length !== 64) return false;
  return verify('sha256', Buffer.from(text), { key, dsaEncoding: 'ieee-p1363' }, bytes);
}

/** The server's own key, that signs checkpoints. */
export interface ServerKey {
  readonly publicKey: string;
  readonly sign: (text: string) => string;
  /** The key itself, for tokens. */
  readonly secret: KeyObject;
  /** Signs what is for everybody. */
  readonly plant: PlantKey;
}

/** Reads the server's key from the store, or makes it: several processes on one store share it. */
export async function openServerKey(store: Pick<Store, 'keepMeta'>): Promise<ServerKey> {
  const fresh = generateKeyPairSync('ec', { namedCurve: 'P-256' }).privateKey;
  const pem = await store.keepMeta(serverKeyName, fresh.export({ type: 'pkcs8', format: 'pem' }).toString());
  const key = createPrivateKey(pem);
  const { x = '', y = '' } = createPublicKey(key).export({ format: 'jwk' });
  const point = Buffer.concat([Buffer.from([4]), Buffer.from(x, 'base64url'), Buffer.from(y, 'base64url')]);
  const publicKey = point.toString('base64url');
  return {
    publicKey,
    secret: key,
    plant: plantKeyOf(key, publicKey),
    sign: (text) =>
      sign('sha256', Buffer.from(text), { key, dsaEncoding: 'ieee-p1363' }).toString('base64url'),
  };
}

/** SHA-256 of bytes, or of a text's UTF-8 bytes, lower-case hex. */
export function hashOf(content: string | Uint8Array): string {
  return hash('sha256', content, 'hex');
}

/** A random text of `bytes` bytes, base64url. */
export function randomToken(bytes = 32): string {
  return randomBytes(bytes).toString('base64url');
}
