// Bytes as text and back: standard base64 and base64url (RFC 4648, sections 4 and 5).

const SIGNS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Standard base64 with padding. */
export function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const group = ((bytes[at] ?? 0) << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0);
    for (let sign = 0; sign < 4; sign += 1) {
      text += at + sign > bytes.length ? '=' : SIGNS[(group >> (18 - 6 * sign)) & 63];
    }
  }
  return text;
}

/** Bytes of standard base64; null where it is none, or another text than the one that these bytes have. */
export function fromBase64(text: string): Uint8Array | null {
  if (!/^[A-Za-z0-9+/]*={0,2}$/.test(text) || text.length % 4 !== 0) return null;
  const plain = text.replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((plain.length * 3) / 4));
  for (let at = 0; at < bytes.length; at += 1) {
    // Eight bits from bit 8·at on: they lie in two signs.
    const first = Math.floor((at * 8) / 6);
    const pair = (SIGNS.indexOf(plain[first] ?? '') << 6) | SIGNS.indexOf(plain[first + 1] ?? '');
    bytes[at] = (pair >> (4 - ((at * 8) % 6))) & 255;
  }
  return toBase64(bytes) === text ? bytes : null;
}

/** Bytes of base64url without padding; null where it is none, or another text than the one that these bytes have. */
export function fromBase64Url(text: string): Uint8Array | null {
  if (!/^[A-Za-z0-9_-]*$/.test(text) || text.length % 4 === 1) return null;
  const plain = text.replaceAll('-', '+').replaceAll('_', '/');
  return fromBase64(plain.padEnd(Math.ceil(plain.length / 4) * 4, '='));
}

/** Base64url without padding. */
export function toBase64Url(bytes: Uint8Array): string {
  return toBase64(bytes).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}
