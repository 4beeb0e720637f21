// Tokens that others check by a public key: JSON Web Tokens (RFC 7519) under ECDSA P-256 (RFC 7518, ES256).

import type { KeyObject } from 'node:crypto';
import { type JWTPayload, SignJWT } from 'jose';

/** Signs claims; `typ`: what the token's header says it is, times in them are s since 1970. */
export function signToken(typ: string, claims: JWTPayload, key: KeyObject): Promise<string> {
  return new SignJWT(claims).setProtectedHeader({ alg: 'ES256', typ }).sign(key);
}
