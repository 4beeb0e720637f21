// Passkeys: who has which, and what of one stands in the entries that it signed, with the checked shape of each payload. How they are read
// and what they prove stands in passkey.ts.

import * as z from 'zod/mini';
import { id, short } from './payload-fields.ts';

const base64Url = (most: number) =>
  z.string().check(z.minLength(1), z.maxLength(most), z.regex(/^[A-Za-z0-9_-]+$/));
/** An authenticator's name for a passkey: 1023 bytes at most (WebAuthn level 2, section 4). */
const credential = base64Url(1364);
const coordinate = z.string().check(z.regex(/^[A-Za-z0-9_-]{43}$/));
/** A public key as JWK (RFC 7517): P-256 for ES256, or RSA of 2048 to 4096 bits for RS256. */
const key = z.union([
  z.strictObject({ kty: z.literal('EC'), crv: z.literal('P-256'), x: coordinate, y: coordinate }),
  z.strictObject({
    kty: z.literal('RSA'),
    n: z.string().check(z.regex(/^[A-Za-z0-9_-]{342,683}$/)),
    e: z.literal('AQAB'),
  }),
]);
/** Who may have one: it proves what takes a lead. */
const role = z.enum(['lead', 'engineer']);
const checked = z.enum(['tablet', 'server']);

/** What a passkey signed, in an entry of the acts that it signed. With it no PIN was asked for, whatever `checked` says. */
export const passkeyUseSchema = z.strictObject({
  credential,
  key,
  /** When it was asked for, ms since 1970. */
  asked: z.int().check(z.minimum(0)),
  /** All that was signed at once, this entry's act among them: hashes as `actHash()` makes them. */
  acts: z.array(z.string().check(z.regex(/^[0-9a-f]{64}$/))).check(z.minLength(1), z.maxLength(8)),
  /** The assertion as the browser gave it: authenticatorData, clientDataJSON, signature. */
  data: base64Url(1400),
  client: base64Url(1400),
  sig: base64Url(700),
});

/** The field of payloads that a passkey may sign. */
export const signedByPasskey = { passkey: z.optional(passkeyUseSchema) } as const;

/** Kinds of acts that a passkey may sign: those whose payloads have that field. */
export const signedKinds = [
  'hold.cleared',
  'hold.declined',
  'blocked.let-run',
  'bake.approved',
  'containment.signed',
  'step.signed',
  'step.skipped',
  'changeover.left-open',
  'changeover.released',
] as const;

/** A public key. */
export type PasskeyKey = z.output<typeof key>;
/** What a passkey signed. */
export type PasskeyUse = z.output<typeof passkeyUseSchema>;

/** Payloads by kind. */
export const passkeyPayloadSchemas = {
  /** `by`: an engineer, or the person. `host`: the name of the page's host, for which alone the passkey signs. */
  'passkey.added': () =>
    z.strictObject({
      credential,
      person: id,
      role,
      name: short,
      host: z.string().check(z.minLength(1), z.maxLength(253)),
      key,
      by: id,
      checked,
    }),
  'passkey.removed': () => z.strictObject({ credential, person: id, role, by: id, checked }),
} as const;
