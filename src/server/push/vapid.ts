// The server shows a push service who sends, and the browser takes messages of no other sender: RFC 8292. Its key is drawn from the server's
// one secret, so that there is nothing more to keep, to back up or to lose.

import { createECDH, createPrivateKey, hkdfSync, type KeyObject } from 'node:crypto';
import { jwkOf } from '../keys.ts';
import { signToken } from '../people/token.ts';

/** Who sends. */
export interface Sender {
  /** What browsers subscribe with: the uncompressed point, base64url. */
  readonly publicKey: string;
  /** The header `authorization` for a push service at this origin. `nowMs`: ms since 1970. */
  readonly authorization: (origin: string, nowMs: number) => Promise<string>;
}

/** A token is good for so long, s; a push service refuses more than a day (RFC 8292, 2). */
const LIFE_S = 12 * 3600;

/** Draws the sender from the server's secret. `contact`: where a push service reaches who runs the server, `mailto:` or `https:`. */
export function senderOf(secret: KeyObject, contact: string): Sender {
  const seed = Buffer.from(secret.export({ format: 'jwk' }).d ?? '', 'base64url');
  const scalar = Buffer.from(hkdfSync('sha256', seed, '', 'reelward web push sender', 32));
  const pair = createECDH('prime256v1');
  pair.setPrivateKey(scalar); // every number below the curve's order, which all but one in 2^32 are
  const point = pair.getPublicKey();
  const key = createPrivateKey({ key: { ...jwkOf(point), d: scalar.toString('base64url') }, format: 'jwk' });
  const publicKey = point.toString('base64url');
  return {
    publicKey,
    authorization: async (origin, nowMs) => {
      const claims = { aud: origin, exp: Math.floor(nowMs / 1000) + LIFE_S, sub: contact };
      const token = await signToken('JWT', claims, key);
      return `vapid t=${token}, k=${publicKey}`;
    },
  };
}
