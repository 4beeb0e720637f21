// What does a ticket say? The plant's server signs one for whoever was made sure of with a PIN: who, in which role, on which tablet,
// from when until when. A JSON Web Token (RFC 7519) signed with ES256 (RFC 7515, RFC 7518), tied to the tablet's key by `cnf`
// (RFC 7800). Read here; whoever believes it checks the signature first: nothing in this room knows a key.

import * as z from 'zod/mini';
import { fromBase64Url } from '../kit/base64.ts';
import { type Role, roles } from '../kit/roles.ts';
import { bytesToHex } from '../log/bytes.ts';

/** The longest time that a ticket is good for, ms: a long shift. */
export const ticketMs = 14 * 3_600_000;
/** The type that its header names, so that no other token of the server is taken for one. */
export const ticketType = 'reelward-ticket+jwt';

/** What it says. */
export interface TicketClaims {
  /** The name of the plant's key. */
  readonly issuer: string;
  readonly person: string;
  readonly role: Role;
  readonly tablet: string;
  /** The tablet's P-256 key: its point's coordinates, base64url. */
  readonly key: { readonly x: string; readonly y: string };
  /** From when until when it is good, ms since 1970. */
  readonly fromMs: number;
  readonly untilMs: number;
}

/** A token taken apart: what is signed, by which bytes, and what it says. */
export interface SignedToken {
  /** Header and payload as they were signed, ASCII. */
  readonly signed: string;
  readonly signature: Uint8Array;
  readonly header: unknown;
  readonly payload: unknown;
}

const coordinate = z.string().check(z.regex(/^[A-Za-z0-9_-]{43}$/));
const text = z.string().check(z.minLength(1), z.maxLength(120));
const seconds = z.int().check(z.minimum(0));
const headerSchema = z.object({ alg: z.literal('ES256'), typ: z.literal(ticketType) });
const claimsSchema = z.object({
  iss: text,
  sub: text,
  role: z.enum(roles),
  tablet: text,
  nbf: seconds,
  exp: seconds,
  cnf: z.object({
    jwk: z.object({ kty: z.literal('EC'), crv: z.literal('P-256'), x: coordinate, y: coordinate }),
  }),
});

/** Takes a token in its compact form apart (RFC 7515, section 7.1); null where it is none. The signature is not looked at. */
export function splitToken(token: string): SignedToken | null {
  const [header = '', payload = '', signature = '', ...more] = token.split('.');
  const [head, body, bytes] = [header, payload, signature].map(fromBase64Url);
  if (more.length > 0 || !head || !body || !bytes || bytes.length === 0) return null;
  try {
    // UTF-8; throws where it is none.
    const read = (part: Uint8Array): unknown =>
      JSON.parse(decodeURIComponent(bytesToHex(part).replace(/../g, '%$&')));
    return { signed: `${header}.${payload}`, signature: bytes, header: read(head), payload: read(body) };
  } catch {
    return null; // no JSON, or no text
  }
}

/** Reads what a token says as a ticket; null where it is none, or good for longer than a ticket may be. The signature is not looked at. */
export function readClaims({
  header,
  payload,
}: Pick<SignedToken, 'header' | 'payload'>): TicketClaims | null {
  const claims = z.safeParse(claimsSchema, payload);
  if (!z.safeParse(headerSchema, header).success || !claims.success) return null;
  const { iss, sub, role, tablet, nbf, exp, cnf } = claims.data;
  const [fromMs, untilMs] = [nbf * 1000, exp * 1000];
  if (untilMs <= fromMs || untilMs - fromMs > ticketMs) return null;
  const { x, y } = cnf.jwk;
  return { issuer: iss, person: sub, role, tablet, key: { x, y }, fromMs, untilMs };
}
