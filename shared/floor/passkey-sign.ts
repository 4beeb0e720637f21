// What does a passkey's signature say? A passkey (Web Authentication, level 2) signs a challenge that the page hands it, after it has made
// sure of its user. Here the challenge is the hash of what is done, so that whoever reads the entry later computes the challenge
// anew and sees that this, and nothing else, was signed.
// Method: the entry's own hash cannot be signed, as the signature is part of what that hash covers, and its number is not known while a
// person looks for the key. So the act is signed: kind and payload without the signature, of this tablet in this life, asked at that time.
// Which entry it is then stands in a window of minutes; the same act told twice within it says no more than once.
// Nothing in this room knows a key: whoever believes a signature checks it (`signedBytes`) with the key that the entry brings; whether that
// key is the person's says passkey.ts. Apart from it, since the fold need not hash anything.

import * as z from 'zod/mini';
import { fromBase64Url, toBase64Url } from '../kit/base64.ts';
import { bytesToHex, fromHex } from '../log/bytes.ts';
import { driftLimitMs } from '../log/clock.ts';
import type { Entry, Json, JsonObject } from '../log/entry.ts';
import { canonicalText, hashText, wellFormed } from '../log/seal.ts';
import { type PasskeyUse, passkeyUseSchema } from './kinds-passkeys.ts';
import type { SignedBy } from './passkey.ts';

/** From asking for the passkey until the entry is written, at most, ms. */
const USE_MS = 10 * 60_000;
/** Bits of the authenticator's flags (section 6.1): the user was there, and was made sure of; the passkey can be backed up, and is; more follows. */
const [PRESENT, VERIFIED, BACK_UP, BACKED_UP, MORE] = [1, 4, 8, 16, 0xc0];
/** Where authenticatorData holds what (section 6.1): hash of the host's name, flags, count; of one that was asked for nothing more. */
const [FLAGS_AT, COUNT_AT, DATA_BYTES] = [32, 33, 37];
/** Bytes of a number of the curve. */
const SIZE = 32;

/** What is signed of an entry: its kind, and its payload as it is without the signature. */
export function actHash(kind: string, payload: object): string {
  const { passkey: _, ...rest } = payload as JsonObject & { passkey?: Json }; // JSON by construction of the schemas
  return hashText(canonicalText({ act: kind, payload: wellFormed(rest) }));
}

/** The challenge of acts by a tablet, base64url of 32 bytes. `asked`: ms since 1970. */
export function passkeyChallenge(
  { tablet, epoch }: Pick<Entry, 'tablet' | 'epoch'>,
  { asked, acts }: Pick<PasskeyUse, 'asked' | 'acts'>,
): string {
  const hash = hashText(canonicalText({ passkey: 1, tablet, epoch, asked, acts: [...acts] }));
  return toBase64Url(fromHex(hash, 32) ?? new Uint8Array());
}

/** What of a passkey stands in an entry; null where nothing does, or nothing that can be read. */
export function passkeyUse({ payload }: { readonly payload: object }): PasskeyUse | null {
  if (!('passkey' in payload) || payload.passkey === undefined) return null;
  const read = z.safeParse(passkeyUseSchema, payload.passkey);
  return read.success ? read.data : null;
}

/** A passkey's signature that fits the entry it stands in, but for the signature itself. */
export interface ReadUse extends SignedBy {
  readonly challenge: string;
  readonly origin: string;
  /** What is signed (section 6.3.3). */
  readonly signedBytes: Uint8Array<ArrayBuffer>;
  /** The signature: of a P-256 key its two numbers joined, as keys in a browser want it. */
  readonly signature: Uint8Array;
}

/**
 * Reads what of a passkey stands in an entry; null where there is none, or where it was signed for something else: another act, tablet or
 * time, another page, no user made sure of.
 */
export function readUse(
  entry: Pick<Entry, 'tablet' | 'epoch' | 'hlc' | 'kind'> & { readonly payload: object },
): ReadUse | null {
  const use = passkeyUse(entry);
  const data = use && fromBase64Url(use.data);
  const client = use && readClient(use.client);
  const sig = use && fromBase64Url(use.sig);
  const signature = sig && use.key.kty === 'EC' ? joinedSignature(sig) : sig;
  if (!use || !data || !client || !signature || data.length !== DATA_BYTES) return null;
  const challenge = passkeyChallenge(entry, use);
  const { hlc, kind, payload } = entry;
  const isThis =
    use.acts.includes(actHash(kind, payload)) &&
    client.challenge === challenge &&
    Math.abs(hlc.ms - use.asked) <= USE_MS + driftLimitMs;
  const flags = data[FLAGS_AT] ?? 0;
  const isHere = hashText(client.host) === bytesToHex(data.subarray(0, FLAGS_AT));
  if (!isThis || !isHere || !areGood(flags)) return null;
  const { origin, host, hash } = client;
  const signedBytes = new Uint8Array(data.length + hash.length);
  signedBytes.set(data);
  signedBytes.set(hash, data.length);
  const { credential, key } = use;
  return { credential, key, host, count: countIn(data), challenge, origin, signedBytes, signature };
}

/** The user was there and was made sure of; and what is backed up can be. */
function areGood(flags: number): boolean {
  const isUser = (flags & PRESENT) !== 0 && (flags & VERIFIED) !== 0;
  return isUser && (flags & MORE) === 0 && ((flags & BACKED_UP) === 0 || (flags & BACK_UP) !== 0);
}

function countIn(data: Uint8Array): number {
  return new DataView(data.buffer, data.byteOffset).getUint32(COUNT_AT);
}

/** What the browser says it asked for (section 5.8.1); null where it is no assertion by a page of its own. */
function readClient(client: string) {
  const bytes = fromBase64Url(client);
  try {
    // UTF-8; throws where it is none.
    const text = decodeURIComponent(bytesToHex(bytes ?? new Uint8Array()).replace(/../g, '%$&'));
    const told = JSON.parse(text) as Readonly<Record<string, unknown>>;
    const { type, challenge, origin, crossOrigin, tokenBinding } = told;
    if (type !== 'webauthn.get' || typeof origin !== 'string') return null;
    if (crossOrigin === true || tokenBinding !== undefined) return null;
    const hash = fromHex(hashText(text), 32);
    const host = hostOf(origin);
    return hash && host !== null ? { challenge, origin, host, hash } : null;
  } catch {
    return null; // no JSON, or no text
  }
}

/** The host's name in an origin; null where it is none. */
function hostOf(origin: string): string | null {
  return /^https?:\/\/([A-Za-z0-9.-]+)(:\d+)?$/.exec(origin)?.[1]?.toLowerCase() ?? null;
}

/**
 * The two numbers of an ECDSA signature, joined (64 bytes), out of their ASN.1 form (RFC 3279, section 2.2.3); null where it is none, or one
 * of several ways to write the same numbers: server and tablets must say the same of it.
 */
export function joinedSignature(der: Uint8Array): Uint8Array | null {
  const joined = new Uint8Array(2 * SIZE);
  if (der[0] !== 0x30 || der[1] !== der.length - 2) return null;
  let at = 2;
  for (const end of [SIZE, 2 * SIZE]) {
    const length = der[at + 1] ?? 0;
    if (der[at] !== 2 || length === 0 || at + 2 + length > der.length) return null;
    const [first = 0, second = 0] = [der[at + 2], der[at + 3]];
    // A zero stands in front of a number that would be below nothing without, and nowhere else.
    if (first > 127 || (first === 0 && length > 1 && second < 128)) return null;
    const number = der.subarray(at + 2 + (first === 0 ? 1 : 0), at + 2 + length);
    if (number.length > SIZE) return null;
    joined.set(number, end - number.length);
    at += 2 + length;
  }
  return at === der.length ? joined : null;
}
