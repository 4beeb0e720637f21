// This tablet's key as sync uses it: made by the browser, its private half never leaves it, not even to this code.

import { toBase64Url } from '../../../shared/kit/base64.ts';
import type { SyncKey } from './ports.ts';

/** Wraps a P-256 key pair made with `extractable: false`. */
export async function createSyncKey(tablet: string, pair: CryptoKeyPair): Promise<SyncKey> {
  const point = new Uint8Array(await crypto.subtle.exportKey('raw', pair.publicKey));
  const signing = { name: 'ECDSA', hash: 'SHA-256' };
  return {
    tablet,
    publicKey: toBase64Url(point),
    sign: async (text) =>
      toBase64Url(
        new Uint8Array(await crypto.subtle.sign(signing, pair.privateKey, new TextEncoder().encode(text))),
      ),
  };
}

/** A nonce for one request. */
export function newNonce(): string {
  return toBase64Url(crypto.getRandomValues(new Uint8Array(18)));
}
