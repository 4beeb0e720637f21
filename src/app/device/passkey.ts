// Passkeys of this tablet, or of a key held to it: made and asked to sign, by Web Authentication. The browser offers them to secure pages
// alone, and only where the address is a name.

import { fromBase64Url, toBase64Url } from '../../../shared/kit/base64.ts';

/** Whether a page can have passkeys, and if not why: no secure page, an address by number, a browser without. */
export type PasskeysHere = 'here' | 'unsafe' | 'by-number' | 'none';

/** A passkey as it was made. */
export interface MadePasskey {
  readonly credential: string;
  readonly host: string;
  readonly key:
    | { readonly kty: 'EC'; readonly crv: 'P-256'; readonly x: string; readonly y: string }
    | { readonly kty: 'RSA'; readonly n: string; readonly e: 'AQAB' };
}

/** What it signed, base64url. */
export interface Assertion {
  readonly credential: string;
  readonly data: string;
  readonly client: string;
  readonly sig: string;
}

/** COSE's names: ES256 and RS256 (RFC 9053, RFC 8812). */
const [ES256, RS256] = [-7, -257];
/** A person looks for the key in this time, ms. */
const ASK_MS = 90_000;

/** The name of the page's host, for which passkeys are made. */
export function pageHost(): string {
  return location.hostname.toLowerCase();
}

/** Whether this page can have passkeys. */
export function passkeysHere(): PasskeysHere {
  if (!globalThis.isSecureContext) return 'unsafe';
  if (/^[\d.]+$|:/.test(pageHost())) return 'by-number';
  return typeof PublicKeyCredential === 'function' ? 'here' : 'none';
}

/** Makes a passkey for a person; null where the browser, the authenticator or the person does not. `known`: those that the person has. */
export async function makePasskey(
  person: { readonly person: string; readonly name: string },
  known: readonly string[],
): Promise<MadePasskey | null> {
  const made = await navigator.credentials
    .create({
      publicKey: {
        rp: { id: pageHost(), name: 'Reelward' },
        user: {
          id: new TextEncoder().encode(person.person),
          name: person.name,
          displayName: person.name,
        },
        challenge: crypto.getRandomValues(new Uint8Array(32)),
        pubKeyCredParams: [ES256, RS256].map((alg) => ({ type: 'public-key', alg })),
        authenticatorSelection: { userVerification: 'required', residentKey: 'discouraged' },
        excludeCredentials: known.map(toDescriptor),
        attestation: 'none',
        timeout: ASK_MS,
      },
    })
    .catch(() => null); // called off, not known, timed out: nothing was made
  if (!(made instanceof PublicKeyCredential)) return null;
  const response = made.response as AuthenticatorAttestationResponse; // what `create` gives
  const key = await keyOf(response).catch(() => null); // a key that this browser cannot read
  return key && { credential: textOf(made.rawId), host: pageHost(), key };
}

async function keyOf(response: AuthenticatorAttestationResponse): Promise<MadePasskey['key'] | null> {
  const spki = response.getPublicKey();
  if (!spki) return null;
  const isEc = response.getPublicKeyAlgorithm() === ES256;
  const how = isEc ? { name: 'ECDSA', namedCurve: 'P-256' } : { name: 'RSASSA-PKCS1-v1_5', hash: 'SHA-256' };
  const read = await crypto.subtle.importKey('spki', spki, how, true, ['verify']);
  const { x = '', y = '', n = '', e } = await crypto.subtle.exportKey('jwk', read);
  if (isEc) return { kty: 'EC', crv: 'P-256', x, y };
  return e === 'AQAB' ? { kty: 'RSA', n, e } : null;
}

/** Has one of these passkeys sign a challenge (base64url), its user made sure of; null where none did. */
export async function askPasskey(
  challenge: string,
  credentials: readonly string[],
): Promise<Assertion | null> {
  const given = await navigator.credentials
    .get({
      publicKey: {
        challenge: bytesOf(challenge),
        rpId: pageHost(),
        allowCredentials: credentials.map(toDescriptor),
        userVerification: 'required',
        timeout: ASK_MS,
      },
    })
    .catch(() => null); // called off, another key, timed out: nothing was signed
  if (!(given instanceof PublicKeyCredential)) return null;
  const { authenticatorData, clientDataJSON, signature } = given.response as AuthenticatorAssertionResponse; // what `get` gives
  return {
    credential: textOf(given.rawId),
    data: textOf(authenticatorData),
    client: textOf(clientDataJSON),
    sig: textOf(signature),
  };
}

function toDescriptor(credential: string): PublicKeyCredentialDescriptor {
  return { type: 'public-key', id: bytesOf(credential) };
}

const textOf = (bytes: ArrayBuffer) => toBase64Url(new Uint8Array(bytes));
const bytesOf = (text: string) => Uint8Array.from(fromBase64Url(text) ?? []);
