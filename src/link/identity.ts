// Who this link is: a name, a key that never leaves its folder, and the life of its log. Made at the first start.

import { createPrivateKey, createPublicKey, generateKeyPairSync, randomBytes, sign } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { JsonObject } from '../../shared/log/entry.ts';
import type { SyncKey } from '../app/sync/ports.ts';
import { writeWhole } from './files.ts';

/** This link's name, the life of its log, and its key. */
export interface LinkIdentity {
  readonly tablet: string;
  readonly epoch: string;
  /** The public half, for the first entry of the log. */
  readonly jwk: JsonObject;
  readonly key: SyncKey;
}

/** Reads who this link is, or makes it. The folder must be there. */
export function openIdentity(folder: string): LinkIdentity {
  const nameFile = join(folder, 'link.json');
  const keyFile = join(folder, 'key.pem');
  if (!existsSync(keyFile)) {
    const { privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
    writeWhole(keyFile, privateKey.export({ type: 'pkcs8', format: 'pem' }).toString());
  }
  if (!existsSync(nameFile)) {
    const made = { tablet: `link-${newId(9)}`, epoch: newId(12) };
    writeWhole(nameFile, `${JSON.stringify(made)}\n`);
  }
  const { tablet, epoch } = JSON.parse(readFileSync(nameFile, 'utf8')) as { tablet: string; epoch: string }; // written above
  const key = createPrivateKey(readFileSync(keyFile));
  const { x = '', y = '' } = createPublicKey(key).export({ format: 'jwk' });
  const point = Buffer.concat([Buffer.from([4]), Buffer.from(x, 'base64url'), Buffer.from(y, 'base64url')]);
  const signText = (text: string) =>
    sign('sha256', Buffer.from(text), { key, dsaEncoding: 'ieee-p1363' }).toString('base64url');
  return {
    tablet,
    epoch,
    jwk: { kty: 'EC', crv: 'P-256', x, y },
    key: { tablet, publicKey: point.toString('base64url'), sign: async (text) => signText(text) },
  };
}

/** A random name: letters, digits, - and _. */
function newId(bytes: number): string {
  return randomBytes(bytes).toString('base64url');
}

/** A nonce for one request. */
export function newNonce(): string {
  return newId(18);
}
