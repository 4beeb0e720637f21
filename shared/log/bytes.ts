// Bytes as lower-case hex and back.

import { bytesToHex, hexToBytes } from '@noble/hashes/utils.js';

export { bytesToHex };

/** Bytes of lower-case hex; null where it is none or not `length` bytes. */
export function fromHex(text: string, length: number): Uint8Array | null {
  return text.length === 2 * length && /^[0-9a-f]*$/.test(text) ? hexToBytes(text) : null;
}

/** True where both hold the same bytes. */
export function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, at) => byte === b[at]);
}
