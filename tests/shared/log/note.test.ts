// Signed notes: the published example of the form checks, what we write reads back, and nothing altered does.

import { createHash, createPublicKey, generateKeyPairSync, sign, verify } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromBase64, fromBase64Url, toBase64 } from '../../../shared/kit/base64.ts';
import {
  ecdsaFromDer,
  formatNote,
  formatNoteKey,
  type NoteKey,
  noteKeyId,
  p256NoteKey,
  parseNote,
  parseNoteKey,
  signaturesBy,
} from '../../../shared/log/note.ts';

/** Source: documentation of golang.org/x/mod/sumdb/note, from memory; that the signature holds shows that it was remembered right. */
const published = {
  key: 'PeterNeumann+c74f20a3+ARpc2QcUPDhMQegwxbzhKqiBfsVkmqq/LDE4izWy10TW',
  note: `If you think cryptography is the answer to your problem,
then you don't know what your problem is.

\u2014 PeterNeumann x08go/ZJkuBS9UG/SffcvIAQxVBtiFupLLr8pAcElZInNIuGUgYN1FFYC2pZSNXgKvqfqdngotpRZb6KE6RyyBwJnAM=
`,
};

const holds = (key: NoteKey, text: string, bytes: Uint8Array) =>
  verify(
    null,
    Buffer.from(text),
    createPublicKey({
      key: Buffer.concat([Buffer.from('302a300506032b6570032100', 'hex'), key.key]),
      format: 'der',
      type: 'spki',
    }),
    bytes,
  );

describe('a signed note', () => {
  it('as published is read, and its signature holds by the published key', () => {
    const key = parseNoteKey(published.key);
    const note = parseNote(published.note);
    if (!key || !note) throw new Error('not read');
    expect(noteKeyId(key)).toBe('c74f20a3');
    expect(formatNoteKey(key)).toBe(published.key);
    const [bytes] = signaturesBy(note, key);
    expect(bytes && holds(key, note.text, bytes)).toBe(true);
    expect(bytes && formatNote(note.text, [{ key, bytes }])).toBe(published.note);
  });

  it('with any text of printable signs reads back as it was written', () => {
    const key: NoteKey = { name: 'a', type: 'ed25519', key: new Uint8Array(32) };
    const other: NoteKey = { ...key, name: 'b' };
    const line = fc.string({ unit: 'grapheme' }).map((text) => text.replace(/[\u0000-\u001f]/g, ' '));
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1 }),
        fc.uint8Array({ minLength: 1, maxLength: 80 }),
        (lines, bytes) => {
          const text = `${lines.join('\n')}\n`;
          const note = parseNote(
            formatNote(text, [
              { key, bytes },
              { key: other, bytes },
            ]),
          );
          expect(note?.text).toBe(text);
          expect(note && signaturesBy(note, key)).toEqual([bytes]);
          expect(note && signaturesBy(note, other)).toEqual([bytes]);
        },
      ),
    );
  });

  it('is none without a text, a blank line, a dash, a name or whole base64, or with a control sign', () => {
    const { note } = published;
    const altered = [
      '',
      'text\n',
      note.replace('\n\n', '\n'),
      note.replace('\u2014', '-'),
      note.replace('\u2014 PeterNeumann ', '\u2014  '),
      note.replace('PeterNeumann', 'Peter+Neumann'),
      note.replace('JnAM=', 'JnAN='),
      note.replace('JnAM=\n', 'JnAM= x\n'),
      note.slice(0, -1),
      note.replace('problem', 'pro\tblem'),
      `${note}${note.slice(note.indexOf('\u2014')).repeat(16)}`,
    ];
    for (const text of altered) expect(parseNote(text), text).toBeNull();
    expect(() => formatNote('no line end', [])).toThrow(RangeError);
  });

  it('names a key of P-256 by the hash of its DER, and turns its signature into the form of browsers', () => {
    const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
    const { x = '', y = '' } = publicKey.export({ format: 'jwk' });
    const point = Buffer.concat([Buffer.of(4), Buffer.from(x, 'base64url'), Buffer.from(y, 'base64url')]);
    const key = p256NoteKey('plant', point.toString('base64url'));
    if (!key) throw new Error('no key');
    const der = publicKey.export({ type: 'spki', format: 'der' });
    expect(noteKeyId(key)).toBe(createHash('sha256').update(der).digest('hex').slice(0, 8));
    for (let at = 0; at < 64; at += 1) {
      const text = Buffer.from(`text ${at}`);
      const joined = ecdsaFromDer(sign('sha256', text, privateKey));
      expect(joined && verify('sha256', text, { key: publicKey, dsaEncoding: 'ieee-p1363' }, joined)).toBe(
        true,
      );
    }
    expect(ecdsaFromDer(Uint8Array.of(0x30, 6, 2, 1, 1, 2, 2, 1))).toBeNull();
    expect(p256NoteKey('plant', 'abc')).toBeNull();
  });
});

describe('base64', () => {
  it('is that of the engine, both ways, and no second text for the same bytes is taken', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 100 }), (bytes) => {
        const text = Buffer.from(bytes).toString('base64');
        expect(toBase64(bytes)).toBe(text);
        expect(fromBase64(text)).toEqual(bytes);
        expect(fromBase64Url(Buffer.from(bytes).toString('base64url'))).toEqual(bytes);
      }),
    );
    for (const text of ['A', 'AA', 'AB==', 'AAB=', 'A A=', 'AA=A', '===='])
      expect(fromBase64(text), text).toBeNull();
  });
});
