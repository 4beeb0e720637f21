// HTTPS on a local network: an authority made once on this computer, and a leaf for its names and addresses.
// The limits are the strictest platform's: names in the alternative-name extension, server use stated, at most 397 days,
// P-256; the authority can sign leaves only (path length 0).

import { DAY_MS } from '../../../shared/kit/moment.ts';
import 'reflect-metadata'; // the certificate package's decorators need it loaded first
import {
  createPrivateKey,
  type KeyObject,
  X509Certificate as NodeCertificate,
  randomBytes,
  webcrypto,
} from 'node:crypto';
import { isIP } from 'node:net';
import * as x509 from '@peculiar/x509';
import { isPrivate, nameConstraints, nameConstraintsId, nameTree } from './constraints.ts';

// Node's and the page's declarations of the same object differ in small print; the library wants the page's.
type LibraryCrypto = NonNullable<Parameters<typeof x509.SubjectKeyIdentifierExtension.create>[2]>;
const crypto = webcrypto;
const libraryCrypto = webcrypto as unknown as LibraryCrypto;
x509.cryptoProvider.set(libraryCrypto);

/** Life of the authority: two years, since its key lies on a computer of the plant. Each tablet is asked to trust the next one once. */
const AUTHORITY_DAYS = 731;
/** Longest that every platform accepts for a leaf (CA/Browser Forum baseline requirements: 398 days). */
export const leafDays = 397;
/** Clocks of tablets may be behind: valid since yesterday. */
const BEFORE_MS = DAY_MS;

const KEY = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const;
const SERVER_USE = '1.3.6.1.5.5.7.3.1'; // RFC 5280, id-kp-serverAuth

/** A certificate with its key, as PEM. */
export interface PemPair {
  readonly cert: string;
  readonly key: string;
}

/** Makes the authority, which may speak for private addresses, `.local` and `names` only, and for servers only. */
export async function makeAuthority(
  plant: string,
  names: readonly string[],
  nowMs: number,
): Promise<PemPair> {
  const keys = await crypto.subtle.generateKey(KEY, true, ['sign', 'verify']);
  const tag = randomBytes(3).toString('hex');
  const cert = await x509.X509CertificateGenerator.createSelfSigned({
    serialNumber: newSerial(),
    name: `CN=${escapeName(`Reelward authority ${plant} ${tag}`)}`,
    notBefore: new Date(nowMs - BEFORE_MS),
    notAfter: new Date(nowMs + AUTHORITY_DAYS * DAY_MS),
    signingAlgorithm: KEY,
    keys,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
      new x509.ExtendedKeyUsageExtension([SERVER_USE], false),
      new x509.Extension(nameConstraintsId, true, nameConstraints(names)),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey, false, libraryCrypto),
    ],
  });
  return { cert: cert.toString('pem'), key: await exportKey(keys.privateKey) };
}

/** Makes a leaf for names and addresses, signed by the authority. */
export async function makeLeaf(
  authority: PemPair,
  names: readonly string[],
  nowMs: number,
): Promise<PemPair> {
  const issuer = new x509.X509Certificate(authority.cert);
  const keys = await crypto.subtle.generateKey(KEY, true, ['sign', 'verify']);
  const endMs = Math.min(nowMs + leafDays * DAY_MS - BEFORE_MS, issuer.notAfter.getTime());
  const cert = await x509.X509CertificateGenerator.create({
    serialNumber: newSerial(),
    subject: `CN=${escapeName(names[0] ?? 'localhost')}`,
    issuer: issuer.subject,
    notBefore: new Date(nowMs - BEFORE_MS),
    notAfter: new Date(endMs),
    signingAlgorithm: KEY,
    publicKey: keys.publicKey,
    signingKey: await importKey(authority.key),
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([SERVER_USE], false),
      new x509.SubjectAlternativeNameExtension(
        names.map((value) => ({ type: isIP(value) ? ('ip' as const) : ('dns' as const), value })),
        false,
      ),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey, false, libraryCrypto),
      await x509.AuthorityKeyIdentifierExtension.create(issuer, false, libraryCrypto),
    ],
  });
  return { cert: cert.toString('pem'), key: await exportKey(keys.privateKey) };
}

/** What can be read from a certificate, own or made here. */
export interface CertificateFacts {
  readonly endsMs: number;
  /** SHA-256 over the DER bytes, as people compare it: `AB:CD:…`. */
  readonly fingerprint: string;
  readonly fits: (name: string) => boolean;
  readonly der: Buffer;
}

/** Reads the first certificate of a PEM text. Throws where there is none. */
export function readCertificate(pem: string): CertificateFacts {
  const cert = new NodeCertificate(pem);
  return {
    endsMs: Date.parse(cert.validTo),
    fingerprint: cert.fingerprint256,
    fits: (name) => (isIP(name) ? cert.checkIP(name) : cert.checkHost(name)) !== undefined,
    der: cert.raw,
  };
}

/** True where the authority may speak for the name: one made by an earlier version may for any. */
export function maySpeakFor(authority: PemPair, name: string): boolean {
  const extension = new x509.X509Certificate(authority.cert).getExtension(nameConstraintsId);
  if (!extension || isPrivate(name)) return true;
  // Own names stand in it as they are; those of a kind are private.
  const value = Buffer.from(extension.value);
  return value.includes(nameTree(name));
}

/** True where the authority signed the leaf. */
export function isIssuedBy(leaf: PemPair, authority: PemPair): boolean {
  const issuer = new NodeCertificate(authority.cert);
  const cert = new NodeCertificate(leaf.cert);
  return cert.checkIssued(issuer) && cert.verify(issuer.publicKey);
}

/** True where the key belongs to the certificate. */
export function keyFits(pair: PemPair): boolean {
  const key: KeyObject = createPrivateKey(pair.key);
  return new NodeCertificate(pair.cert).checkPrivateKey(key);
}

/** A positive serial of 16 bytes (RFC 5280 allows 20). */
function newSerial(): string {
  const bytes = randomBytes(16);
  bytes[0] = ((bytes[0] ?? 0) & 0x7f) | 0x40;
  return bytes.toString('hex');
}

/** Distinguished names give these signs a meaning (RFC 4514). */
function escapeName(text: string): string {
  return text.replace(/[\\",+<>;=#]/g, ' ').trim();
}

async function exportKey(key: webcrypto.CryptoKey): Promise<string> {
  return x509.PemConverter.encode(await crypto.subtle.exportKey('pkcs8', key), 'PRIVATE KEY');
}

async function importKey(pem: string): Promise<webcrypto.CryptoKey> {
  const [der] = x509.PemConverter.decode(pem);
  if (!der) throw new TypeError('Cannot read the authority as its key must be PEM: current value is empty');
  return crypto.subtle.importKey('pkcs8', der, KEY, false, ['sign']);
}
