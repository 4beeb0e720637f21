// A hash that only whoever has the key can make: HMAC (RFC 2104) with SHA-256.

import { hmac } from '@noble/hashes/hmac.js';
import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { fromBase64Url, toBase64Url } from '../kit/base64.ts';

/** The keyed hash of a text's UTF-8 bytes, 32 bytes in base64url. `secret`: the key, base64url. */
export function keyedHash(secret: string, text: string): string {
  return toBase64Url(hmac(sha256, fromBase64Url(secret) ?? new Uint8Array(), utf8ToBytes(text)));
}
