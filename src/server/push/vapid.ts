// The server shows a push service who sends, and the browser takes messages of no other sender: RFC 8292. Its key is drawn from the server's
// one secret, so that there is nothing more to keep, to back up or to lose.

import { createECDH, createPrivateKey, hkdfSync, type KeyObject, sign } from 'node:crypto';

/** Who sends. */
export interface Sender {
  /** What browsers subscribe with: the uncompressed point, base64url. */
  readonly publicKey: string;
  /** The header `authorization` for a push service at this origin. `nowMs`: ms since 1970. */
  readonly authorization: (origin: string, nowMs: number) => string;
}

/** A token is good for so long, s; a push service refuses more than a day (RFC 8292, 2). */
const LIFE_S = 12 * 3600;
const encode = (value: object) => Buffer.from(JSON.stringify(value)).toString('base64url');

/** Draws the sender from the server's secret. `contact`: where a push service reaches who runs the server, `mailto:` or `https:`. */
export function senderOf(secret: KeyObject, contact: string): Sender {
  const seed = Buffer.from(secret.export({ format: 'jwk' }).d ?? '', 'base64url');
  const scalar = Buffer.from(hkdfSync('sha256', seed, '', 'reelward web push sender', 32));
  const pair = createECDH('prime256v1');
  pair.setPrivateKey(scalar); // every number below the curve's order, which all but one in 2^32 are
  const point = pair.getPublicKey();
  const x = point.toString('base64url', 1, 33);
  const y = point.toString('base64url', 33);
  const jwk = { kty: 'EC', crv: 'P-256', x, y, d: scalar.toString('base64url') };
  const key = createPrivateKey({ key: jwk, format: 'jwk' });
  const publicKey = point.toString('base64url');
  return {
    publicKey,
    authorization: (origin, nowMs) => {
      const claims = { aud: origin, exp: Math.floor(nowMs / 1000) + LIFE_S, sub: contact };
      const text = `${encode({ typ: 'JWT', alg: 'ES256' })}.${encode(claims)}`;
      const seal = sign('sha256', Buffer.from(text), { key, dsaEncoding: 'ieee-p1363' });
      return `vapid t=${text}.${seal.toString('base64url')}, k=${publicKey}`;
    },
  };
}
