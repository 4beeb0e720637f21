// Does the signature of a passkey in an entry hold, by the key that the entry brings? Whether that key is the person's is asked of the fold.
// What was signed is read by the core, which every tablet does alike; the assertion itself is checked by a library made for that.

import type { AuthenticationResponseJSON } from '@simplewebauthn/server';
import { readFloorEntry } from '../../../shared/floor/kinds.ts';
import type { PasskeyKey } from '../../../shared/floor/kinds-passkeys.ts';
import { passkeyUse, type SignedBy } from '../../../shared/floor/passkey.ts';
import { readUse } from '../../../shared/floor/passkey-sign.ts';
import type { Entry } from '../../../shared/log/entry.ts';

/** What the signature says, where it was made for this entry, by a user made sure of, and holds; else null. */
export async function signedBy(entry: Entry): Promise<SignedBy | null> {
  const use = readFloorEntry(entry) ? passkeyUse(entry) : null;
  const read = use && readUse(entry);
  if (!read) return null;
  const { challenge, origin, host, key } = read;
  const { credential: id, data, client, sig } = use;
  const response: AuthenticationResponseJSON = {
    id,
    rawId: id,
    type: 'public-key',
    clientExtensionResults: {},
    response: { authenticatorData: data, clientDataJSON: client, signature: sig },
  };
  const { verifyAuthenticationResponse } = await import('@simplewebauthn/server');
  try {
    const { verified } = await verifyAuthenticationResponse({
      response,
      expectedChallenge: challenge,
      expectedOrigin: origin,
      expectedRPID: host,
      // Counts are told by the fold: one that fell makes no signature false.
      credential: { id, publicKey: await toCose(key), counter: 0 },
      requireUserVerification: true,
    });
    return verified ? read : null;
  } catch {
    return null; // what does not fit is told by throwing
  }
}

/** The key as COSE writes it (RFC 9052, section 7; RFC 9053, section 2.1; RFC 8812): which algorithm stands beside it. */
async function toCose(key: PasskeyKey): Promise<Uint8Array<ArrayBuffer>> {
  const { isoBase64URL, isoCBOR } = await import('@simplewebauthn/server/helpers');
  const bytes = (text: string) => isoBase64URL.toBuffer(text);
  const facts: readonly (readonly [number, number | Uint8Array])[] =
    key.kty === 'EC'
      ? [
          [1, 2],
          [3, -7],
          [-1, 1],
          [-2, bytes(key.x)],
          [-3, bytes(key.y)],
        ]
      : [
          [1, 3],
          [3, -257],
          [-1, bytes(key.n)],
          [-2, bytes(key.e)],
        ];
  return isoCBOR.encode(new Map(facts));
}
