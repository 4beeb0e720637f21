// Messages that a push service cannot read: the worked example of RFC 8291 (section 5 and appendix A).

import { describe, expect, it } from 'vitest';
import { encryptPush, mostPushBytes } from '../../../../src/server/push/encrypt.ts';
import { newReceiver } from './receiver.ts';

const bytes = (text: string) => Buffer.from(text, 'base64url');

describe('`encryptPush()`', () => {
  it('makes the message of the RFC 8291 example, octet for octet', () => {
    const sealed = encryptPush(
      'When I grow up, I want to be a watermelon',
      {
        publicKey: bytes(
          'BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4',
        ),
        auth: bytes('BTBZMqHH6r4Tts7J_aSIgg'),
      },
      {
        privateKey: bytes('yfWPiYE-n46HLnH0KqZOF1fJJU3MYrct3AELtAQ-oRw'),
        salt: bytes('DGv6ra1nlYgDCS1FRnbzlw'),
      },
    );
    expect(sealed.toString('base64url')).toBe(
      'DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A_yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN',
    );
  });

  it('is read by whoever has the private key, and by nobody else; no two are alike', () => {
    const [reader, other] = [newReceiver(), newReceiver()];
    const one = encryptPush('Line 2', reader.keys);
    expect(reader.read(one)).toBe('Line 2');
    expect(() => other.read(one)).toThrow();
    expect(encryptPush('Line 2', reader.keys).equals(one)).toBe(false);
    expect(reader.read(encryptPush('é'.repeat(Math.floor(mostPushBytes / 2)), reader.keys))).toMatch(/^é+$/);
  });

  it('refuses what does not fit, and a key that is no point of the curve', () => {
    const { keys } = newReceiver();
    expect(encryptPush('x'.repeat(mostPushBytes), keys)).toHaveLength(4096);
    expect(() => encryptPush('x'.repeat(mostPushBytes + 1), keys)).toThrow(RangeError);
    const none = { ...keys, publicKey: Buffer.alloc(65, 4) };
    expect(() => encryptPush('x', none)).toThrow(RangeError);
  });
});
