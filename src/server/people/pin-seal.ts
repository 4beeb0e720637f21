// What checks a PIN, as the server keeps it: made of what the tablet made of the PIN, with a secret of the server's own and in a way that
// takes memory as well as time. A PIN has four to eight digits: whoever had the verifier alone could try them all, whatever the way. With
// the secret, which no backup and no export holds, there is nothing to try against.
// Method: scrypt (RFC 7914) over HMAC-SHA-256 by a key drawn from the server's one secret. Cost: 32 MiB and about a tenth of a second.

import { createHmac, hkdfSync, type KeyObject, randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { openTurn } from '../../../shared/kit/turn.ts';
import { hashOf } from '../keys.ts';

/** 32 MiB, once: the secret is what stops guessing, and a sign-in waits for this. The tablet's own rounds come on top. */
const COST = { N: 2 ** 15, r: 8, p: 1 };
const BYTES_MOST = 64 * 1024 * 1024;
const LENGTH = 32;

/** Seals what checks a PIN. */
export interface PinSeal {
  /** `hash`: what the tablet derived of the PIN. */
  readonly seal: (hash: string) => Promise<string>;
  /** Is this what was sealed? */
  readonly fits: (hash: string, sealed: string) => Promise<boolean>;
  /** False for what another secret sealed: nothing fits it any more. */
  readonly isOwn: (sealed: string) => boolean;
}

/** Draws the sealing key from the server's secret. */
export function createPinSeal(secret: KeyObject): PinSeal {
  const { d = '' } = secret.export({ format: 'jwk' });
  const pepper = Buffer.from(hkdfSync('sha256', Buffer.from(d, 'base64url'), '', 'reelward pin', LENGTH));
  const name = hashOf(pepper).slice(0, 16);
  // One after the other: each takes its memory, and who waits is one tablet that guesses.
  const inTurn = openTurn();
  const derive = (hash: string, salt: Buffer): Promise<Buffer> => {
    const key = createHmac('sha256', pepper).update(hash).digest();
    return inTurn(
      () =>
        new Promise((resolve, reject) =>
          scrypt(key, salt, LENGTH, { ...COST, maxmem: BYTES_MOST }, (error, derived) =>
            error ? reject(error) : resolve(derived),
          ),
        ),
    );
  };
  return {
    isOwn: (sealed) => sealed.startsWith(`${name} `),
    seal: async (hash) => {
      const salt = randomBytes(16);
      const derived = await derive(hash, salt);
      return `${name} ${salt.toString('base64url')} ${derived.toString('base64url')}`;
    },
    fits: async (hash, sealed) => {
      const [by, salt = '', wanted = ''] = sealed.split(' ');
      const bytes = Buffer.from(wanted, 'base64url');
      if (by !== name || bytes.length !== LENGTH) return false;
      return timingSafeEqual(await derive(hash, Buffer.from(salt, 'base64url')), bytes);
    },
  };
}
