// Who this tablet is: its id, the epoch of its database, the key that signs. Made once; a database that was lost gets a new
// epoch, so that no entry's name is ever used twice, and the log says what went before.

import { toBase64Url } from '../../../shared/kit/base64.ts';
import type { JsonObject } from '../../../shared/log/entry.ts';
import { newId } from '../device/ids.ts';
import type { LogDatabase } from './database.ts';

/** This tablet and the life of its database. */
export interface Identity {
  readonly tablet: string;
  readonly epoch: string;
  /** Signs entries; its private half cannot leave the device. Null where the browser offers no cryptography. */
  readonly keys: CryptoKeyPair | null;
}

/** The chain of a database that is gone, as remembered outside it. */
export interface Remembered {
  readonly tablet: string;
  readonly epoch: string;
  readonly seq: number;
}

const rememberedKey = 'reelward-chain';

/**
 * Reads this tablet's identity, or makes it. `lost` tells the chain that an earlier database held; a passing database (one that is
 * thrown away on purpose) has its own tablet and nothing before it.
 */
export async function openIdentity(
  db: LogDatabase,
  isPassing = false,
): Promise<{ identity: Identity; fresh: boolean; lost: Remembered | null }> {
  const found = await readIdentity(db);
  if (found) return { identity: found, fresh: false, lost: null };
  const lost = isPassing ? null : readRemembered();
  const identity: Identity = { tablet: lost?.tablet ?? newId(), epoch: newId(), keys: await newKeys() };
  try {
    await db.meta.add({ key: 'identity', value: identity });
  } catch (error) {
    // Another window of this tablet was first: its identity is the tablet's.
    const other = await readIdentity(db);
    if (!other) throw error;
    return { identity: other, fresh: false, lost: null };
  }
  return { identity, fresh: true, lost };
}

async function readIdentity(db: LogDatabase): Promise<Identity | undefined> {
  return (await db.meta.get('identity'))?.value as Identity | undefined; // written above only
}

async function newKeys(): Promise<CryptoKeyPair | null> {
  if (!globalThis.crypto?.subtle) return null; // only secure pages have it
  return crypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, false, ['sign', 'verify']);
}

/** The public half as JWK, for the chain's first entry. */
export async function publicKey(identity: Identity): Promise<JsonObject | null> {
  if (!identity.keys) return null;
  const { kty, crv, x, y } = await crypto.subtle.exportKey('jwk', identity.keys.publicKey);
  return { kty: kty ?? '', crv: crv ?? '', x: x ?? '', y: y ?? '' };
}

/** Signs an entry's hash: base64url of the raw ECDSA signature; null without a key. */
export async function signHash(identity: Identity, hash: string): Promise<string | null> {
  if (!identity.keys) return null;
  const bytes = new TextEncoder().encode(hash);
  const signature = await crypto.subtle.sign(
    { name: 'ECDSA', hash: 'SHA-256' },
    identity.keys.privateKey,
    bytes,
  );
  return toBase64Url(new Uint8Array(signature));
}

/** Remembers outside the database how far the chain got, so that its loss can be noticed and told. */
export function rememberChain(chain: Remembered): void {
  try {
    localStorage.setItem(rememberedKey, JSON.stringify(chain));
  } catch {
    // Only a reminder: without it a lost database is still given a new epoch.
  }
}

function readRemembered(): Remembered | null {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(rememberedKey) ?? 'null');
    if (value === null || typeof value !== 'object') return null;
    const { tablet, epoch, seq } = value as Record<string, unknown>; // checked on the next line
    if (typeof tablet !== 'string' || typeof epoch !== 'string' || typeof seq !== 'number') return null;
    return { tablet, epoch, seq };
  } catch {
    return null;
  }
}
