// The browser's end of a message, written from RFC 8291 and RFC 8188 by themselves: none of the sender’s code.

import { createDecipheriv, createECDH, createHmac, randomBytes } from 'node:crypto';

/** A browser that takes messages. */
export interface Receiver {
  readonly keys: { readonly publicKey: Buffer; readonly auth: Buffer };
  /** Reads a message. Throws where it is not for this browser, or not by the RFC. */
  readonly read: (body: Buffer) => string;
}

const hmac = (key: Buffer, ...parts: readonly Buffer[]) =>
  createHmac('sha256', key).update(Buffer.concat(parts)).digest();
/** One step of HKDF (RFC 5869), as RFC 8291 writes it out in its section 3.4. */
const step = (salt: Buffer, secret: Buffer, info: Buffer, length: number) =>
  hmac(hmac(salt, secret), info, Buffer.from([1])).subarray(0, length);

/** Makes one with keys of its own. */
export function newReceiver(): Receiver {
  const pair = createECDH('prime256v1');
  const publicKey = pair.generateKeys();
  const auth = randomBytes(16);
  return {
    keys: { publicKey, auth },
    read: (body) => {
      const salt = body.subarray(0, 16);
      const record = body.readUInt32BE(16);
      const sender = body.subarray(21, 21 + body.readUInt8(20));
      const sealed = body.subarray(21 + sender.length);
      if (sealed.length > record) throw new RangeError('more than one record');
      const info = Buffer.concat([Buffer.from('WebPush: info\0'), publicKey, sender]);
      const secret = step(auth, pair.computeSecret(sender), info, 32);
      const key = step(salt, secret, Buffer.from('Content-Encoding: aes128gcm\0'), 16);
      const nonce = step(salt, secret, Buffer.from('Content-Encoding: nonce\0'), 12);
      const decipher = createDecipheriv('aes-128-gcm', key, nonce);
      decipher.setAuthTag(sealed.subarray(-16));
      const plain = Buffer.concat([decipher.update(sealed.subarray(0, -16)), decipher.final()]);
      if (plain.at(-1) !== 2) throw new RangeError('no last record');
      return plain.subarray(0, -1).toString('utf8');
    },
  };
}
