// A body arrives as it was written: in pieces or whole, in any script, packed or not, with the hash of what travels.

import { createHash } from 'node:crypto';
import { gunzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodeAll, gzip, packBody } from '../../../../src/app/sync/pack.ts';

const hashOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

describe('`encodeAll()`', () => {
  it('writes the same bytes as one text does', () => {
    const text = fc.oneof(fc.string(), fc.string({ unit: 'grapheme' }), fc.constant('é料😀'.repeat(40)));
    fc.assert(
      fc.property(fc.array(text), (texts) => {
        expect(Buffer.from(encodeAll(texts)).equals(Buffer.from(texts.join('')))).toBe(true);
      }),
    );
  });
});

describe('`packBody()`', () => {
  it('packs what is long enough, and hashes what travels', async () => {
    const texts = ['{"a":"', 'é'.repeat(2_000), '"}'];
    const { bytes, hash, headers } = await packBody({ texts });
    expect(gunzipSync(bytes ?? new Uint8Array()).toString()).toBe(texts.join(''));
    expect(hash).toBe(hashOf(bytes ?? new Uint8Array()));
    expect(headers).toEqual({ 'content-type': 'application/json', 'content-encoding': 'gzip' });
  });

  it('leaves short JSON and bytes as they are, and sends nothing where nothing is wanted', async () => {
    const short = await packBody({ json: { a: 1 } });
    expect(Buffer.from(short.bytes ?? []).toString()).toBe('{"a":1}');
    expect(short.headers).toEqual({ 'content-type': 'application/json' });
    const raw = await packBody({ bytes: new Uint8Array([1, 2, 3]) });
    expect(raw).toMatchObject({ hash: hashOf(new Uint8Array([1, 2, 3])) });
    expect(raw.headers).toEqual({ 'content-type': 'application/octet-stream' });
    expect(await packBody({})).toEqual({ bytes: null, hash: hashOf(new Uint8Array()), headers: {} });
  });
});

describe('`gzip()`', () => {
  it('packs a large body whole', async () => {
    const plain = Buffer.from(Array.from({ length: 200_000 }, (_, at) => `${at * 7919}`).join());
    expect(gunzipSync(await gzip(plain)).equals(plain)).toBe(true);
  });
});
