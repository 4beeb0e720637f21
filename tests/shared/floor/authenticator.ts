// An authenticator made of Node's cryptography: what a browser hands a page when a passkey signs (Web Authentication, level 2,
// sections 5.8.1, 6.1 and 6.5.5), and each part of it to be bent.

import { createHash, generateKeyPairSync, type KeyObject, randomBytes, sign } from 'node:crypto';
import type { PasskeyKey, PasskeyUse } from '../../../shared/floor/kinds-passkeys.ts';
import { actHash, passkeyChallenge } from '../../../shared/floor/passkey-sign.ts';
import type { Entry } from '../../../shared/log/entry.ts';

/** A passkey that signs. */
export interface TestPasskey {
  readonly credential: string;
  readonly key: PasskeyKey;
  readonly secret: KeyObject;
}

/** What is signed, and what of it is otherwise than honest. */
export interface Signing {
  readonly chain: Pick<Entry, 'tablet' | 'epoch'>;
  readonly asked: number;
  readonly acts: readonly { readonly kind: string; readonly payload: object }[];
  readonly host?: string;
  readonly origin?: string;
  /** Of the data: 1 present, 4 verified. */
  readonly flags?: number;
  readonly count?: number;
  readonly type?: string;
  readonly challenge?: string;
  readonly crossOrigin?: boolean;
}

const sha256 = (bytes: Buffer | string) => createHash('sha256').update(bytes).digest();

/** A new passkey. */
export function newPasskey(kind: 'EC' | 'RSA' = 'EC'): TestPasskey {
  const credential = randomBytes(16).toString('base64url');
  if (kind === 'RSA') {
    const { publicKey, privateKey } = generateKeyPairSync('rsa', { modulusLength: 2048 });
    const { n = '' } = publicKey.export({ format: 'jwk' });
    return { credential, key: { kty: 'RSA', n, e: 'AQAB' }, secret: privateKey };
  }
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const { x = '', y = '' } = publicKey.export({ format: 'jwk' });
  return { credential, key: { kty: 'EC', crv: 'P-256', x, y }, secret: privateKey };
}

/** What the page writes into the payloads that the passkey signed. */
export function signWith({ credential, key, secret }: TestPasskey, signing: Signing): PasskeyUse {
  const { chain, asked, host = 'plant.test', flags = 5, count = 0 } = signing;
  const acts = signing.acts.map(({ kind, payload }) => actHash(kind, payload));
  const client = Buffer.from(
    JSON.stringify({
      type: signing.type ?? 'webauthn.get',
      challenge: signing.challenge ?? passkeyChallenge(chain, { asked, acts }),
      origin: signing.origin ?? `https://${host}`,
      crossOrigin: signing.crossOrigin ?? false,
    }),
  );
  const counted = Buffer.alloc(4);
  counted.writeUInt32BE(count);
  const data = Buffer.concat([sha256(host), Buffer.from([flags]), counted]);
  const sig = sign('sha256', Buffer.concat([data, sha256(client)]), secret);
  const text = (bytes: Buffer) => bytes.toString('base64url');
  return { credential, key, asked, acts, data: text(data), client: text(client), sig: text(sig) };
}

/** Registers it, as an entry says it. */
export function registered(
  { credential, key }: TestPasskey,
  person: string,
  facts: { readonly role?: 'lead' | 'engineer'; readonly by?: string; readonly host?: string } = {},
) {
  const { role = 'lead', by = person, host = 'plant.test' } = facts;
  return { credential, key, person, role, name: `key of ${person}`, host, by, checked: 'server' } as const;
}
