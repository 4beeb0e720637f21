// A message for one browser, so that the push service in between cannot read it: RFC 8291, with the coding of RFC 8188 in one record.

import { createCipheriv, createECDH, ECDH, hkdfSync, randomBytes } from 'node:crypto';

/** What a browser gave for its messages: its public key (65 bytes) and its secret (16 bytes). */
export interface PushKeys {
  readonly publicKey: Uint8Array;
  readonly auth: Uint8Array;
}

/** What makes each message another one; a test hands in its own. */
export interface PushChance {
  /** Private key of the sender, 32 bytes. */
  readonly privateKey: Uint8Array;
  readonly salt: Uint8Array;
}

/** Bytes of a record: the whole message goes into one, so it is the most that a receiver must take (RFC 8291, 4). */
const RECORD = 4096;
/** Bytes of text that fit: without header (86), tag (16) and the end's mark (1). */
export const mostPushBytes = RECORD - 86 - 16 - 1;

const derive = (secret: Uint8Array, salt: Uint8Array, info: Uint8Array, bytes: number) =>
  Buffer.from(hkdfSync('sha256', secret, salt, info, bytes));

/** True for a point of P-256: a browser's public key is one. */
export function isPushKey(publicKey: Uint8Array): boolean {
  try {
    ECDH.convertKey(publicKey, 'prime256v1');
    return true;
  } catch {
    return false;
  }
}

/** Encrypts a text's UTF-8 bytes for a browser. Throws `RangeError` where they do not fit, and where the browser's key is no point of P-256. */
export function encryptPush(text: string, to: PushKeys, chance?: PushChance): Buffer {
  const plain = Buffer.from(text);
  if (plain.length > mostPushBytes)
    throw new RangeError(`Cannot encrypt as ${mostPushBytes} bytes fit: current length is ${plain.length}`);
  const pair = createECDH('prime256v1');
  if (chance) pair.setPrivateKey(chance.privateKey);
  else pair.generateKeys();
  const salt = chance?.salt ?? randomBytes(16);
  const own = pair.getPublicKey();
  let shared: Buffer;
  try {
    shared = pair.computeSecret(to.publicKey);
  } catch {
    throw new RangeError('Cannot encrypt as the key must be a point of P-256: it is none');
  }
  const info = Buffer.concat([Buffer.from('WebPush: info\0'), to.publicKey, own]);
  const key = derive(shared, to.auth, info, 32);
  const cipher = createCipheriv(
    'aes-128-gcm',
    derive(key, salt, Buffer.from('Content-Encoding: aes128gcm\0'), 16),
    derive(key, salt, Buffer.from('Content-Encoding: nonce\0'), 12),
  );
  const length = Buffer.alloc(4);
  length.writeUInt32BE(RECORD);
  // 2 marks the last record.
  const sealed = [cipher.update(plain), cipher.update(Buffer.from([2])), cipher.final(), cipher.getAuthTag()];
  return Buffer.concat([salt, length, Buffer.from([own.length]), own, ...sealed]);
}
