// Does the signature of a passkey in an entry hold, by the key that the entry brings? By the page's own cryptography. Whether that key is
// the person's is asked of the fold. Fetched where there is such an entry, and never in a verdict's way.

import { readFloorEntry } from '../../../shared/floor/kinds.ts';
import type { SignedBy } from '../../../shared/floor/passkey.ts';
import { readUse } from '../../../shared/floor/passkey-sign.ts';
import type { Entry } from '../../../shared/log/entry.ts';

const ES256 = { name: 'ECDSA', namedCurve: 'P-256' };
const RS256 = { name: 'RSASSA-PKCS1-v1_5', hash: 'SHA-256' };

/** What the signature says, where it was made for this entry and holds; else null. */
export async function signedBy(entry: Entry): Promise<SignedBy | null> {
  const read = readFloorEntry(entry) ? readUse(entry) : null;
  if (!read || !globalThis.crypto?.subtle) return null;
  const { key } = read;
  const isEc = key.kty === 'EC';
  try {
    const own = await crypto.subtle.importKey('jwk', { ...key }, isEc ? ES256 : RS256, false, ['verify']);
    const how = isEc ? { name: 'ECDSA', hash: 'SHA-256' } : RS256.name;
    const holds = await crypto.subtle.verify(how, own, Uint8Array.from(read.signature), read.signedBytes);
    return holds ? read : null;
  } catch {
    return null; // no key
  }
}
