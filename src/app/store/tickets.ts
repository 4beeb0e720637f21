// Is a ticket the plant's, and of the tablet that wrote it down? By the page's own cryptography: what the server uses for tokens would be
// many times the size of what is asked here. Fetched where there is a ticket to check, and never in a verdict's way.

import { readFloorEntry } from '../../../shared/floor/kinds.ts';
import { readClaims, splitToken, type TicketClaims } from '../../../shared/floor/ticket.ts';
import { fromBase64Url } from '../../../shared/kit/base64.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { parseNote } from '../../../shared/log/note.ts';
import { hashText } from '../../../shared/log/seal.ts';
import { serverChain } from '../../../shared/log/server-chain.ts';
import { parseTicketStart } from '../../../shared/log/ticket-start.ts';
import { entryText } from '../../../shared/wire/signing.ts';
import type { KeptTrust } from './trust.ts';

const CURVE = { name: 'ECDSA', namedCurve: 'P-256' };
const HOW = { name: 'ECDSA', hash: 'SHA-256' };
/** Digits of a trust's name: enough to tell one from another. */
const ID_DIGITS = 12;

/** A P-256 key: its point (65 bytes), or the coordinates of it. */
export type PublicPoint = Uint8Array | { readonly x: string; readonly y: string };

/** What a ticket says, where the plant signed it and the tablet that wrote the entry is the one that it names, by its key; else null. */
export async function checkTicket(
  entry: Entry,
  plant: Pick<KeptTrust, 'issuer' | 'serverKey'>,
): Promise<TicketClaims | null> {
  const read = readFloorEntry(entry);
  const split = read?.kind === 'ticket.taken' ? splitToken(read.payload.ticket) : null;
  const claims = split && readClaims(split);
  const signature = entry.sig === null ? null : fromBase64Url(entry.sig);
  const key = fromBase64Url(plant.serverKey);
  if (!split || !claims || !signature || !key) return null;
  if (claims.tablet !== entry.tablet || claims.issuer !== plant.issuer) return null;
  const isTheirs =
    (await isSigned(split.signed, split.signature, key)) &&
    (await isSigned(entryText(entry.hash), signature, claims.key));
  return isTheirs ? claims : null;
}

/** True for an entry of the server's own chain that the plant's key signed. */
export async function isOfServer(
  { tablet, hash, sig }: Pick<Entry, 'tablet' | 'hash' | 'sig'>,
  plant: Pick<KeptTrust, 'serverKey'>,
): Promise<boolean> {
  const [signature, key] = [sig === null ? null : fromBase64Url(sig), fromBase64Url(plant.serverKey)];
  return tablet === serverChain && !!signature && !!key && isSigned(entryText(hash), signature, key);
}

/** True where these bytes (r and s joined, 64) are the key's ES256 signature over the text (RFC 7518, section 3.4). */
export async function isSigned(text: string, signature: Uint8Array, point: PublicPoint): Promise<boolean> {
  if (signature.length !== 64 || !globalThis.crypto?.subtle) return false;
  const importing =
    point instanceof Uint8Array
      ? crypto.subtle.importKey('raw', Uint8Array.from(point), CURVE, false, ['verify'])
      : crypto.subtle.importKey('jwk', { kty: 'EC', crv: 'P-256', x: point.x, y: point.y }, CURVE, false, [
          'verify',
        ]);
  const key = await importing.catch(() => null); // no point of the curve
  if (!key) return false;
  return crypto.subtle.verify(HOW, key, Uint8Array.from(signature), new TextEncoder().encode(text));
}

/** What is kept of the plant's start of tickets; null where the note is none. Who signed it was looked at by whoever brings it. */
export function trustFromNote({
  note,
  serverKey,
}: {
  readonly note: string;
  readonly serverKey: string;
}): KeptTrust | null {
  const start = parseTicketStart(parseNote(note)?.text ?? '');
  if (!start) return null;
  const { origin: issuer, at, before } = start;
  const id = hashText(JSON.stringify([issuer, serverKey, at, [...before]])).slice(0, ID_DIGITS);
  return { id, issuer, serverKey, before };
}
