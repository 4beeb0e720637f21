// The texts that are signed, and the proof that travels with a request.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  checkpointText,
  entryText,
  formatProof,
  parseProof,
  type RequestProof,
  requestText,
} from '../../../shared/wire/signing.ts';

const base64 = (length: number) =>
  fc.string({ unit: fc.constantFrom(...'ABCXYZabcxyz019_-'), minLength: length, maxLength: length });

describe('a proof', () => {
  const proof = fc.record({
    tablet: fc.string({ unit: fc.constantFrom(...'abc-=!~'), minLength: 1, maxLength: 64 }),
    timeMs: fc.nat(),
    nonce: base64(24),
    sig: base64(86),
  });

  it('reads back as it was written', () => {
    fc.assert(
      fc.property(proof, (one) => {
        expect(parseProof(formatProof(one))).toEqual(one);
      }),
    );
  });

  it('is never read from noise', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(parseProof(text)).toBeNull();
      }),
    );
  });

  it('covers each part of the request', () => {
    const request = { method: 'POST', path: '/api/push', bodyHash: 'a'.repeat(64), timeMs: 1, nonce: 'n' };
    const changes = [
      { method: 'PUT' },
      { path: '/api/pull' },
      { bodyHash: 'b'.repeat(64) },
      { timeMs: 2 },
      { nonce: 'm' },
    ];
    const texts = [request, ...changes.map((change) => ({ ...request, ...change }))].map(requestText);
    expect(new Set(texts).size).toBe(texts.length);
  });

  const whole: RequestProof = {
    tablet: 't1',
    timeMs: 1_772_431_200_000,
    nonce: 'n'.repeat(24),
    sig: 's'.repeat(86),
  };

  it.each<[string, Partial<RequestProof>]>([
    ['a tablet of 64 signs', { tablet: 't'.repeat(64) }],
    ['a time of 15 digits', { timeMs: 999_999_999_999_999 }],
    ['a nonce of 16 signs', { nonce: 'n'.repeat(16) }],
    ['a nonce of 64 signs', { nonce: 'n'.repeat(64) }],
  ])('is read with %s', (_, change) => {
    expect(parseProof(formatProof({ ...whole, ...change }))).toEqual({ ...whole, ...change });
  });

  it.each<[string, Partial<RequestProof>]>([
    ['a tablet of 65 signs', { tablet: 't'.repeat(65) }],
    ['a tablet without a name', { tablet: '' }],
    ['a tablet with a comma', { tablet: 'a,b' }],
    ['a tablet with a blank', { tablet: 'a b' }],
    ['a tablet with a letter that no header carries', { tablet: 'é' }],
    ['a time of 16 digits', { timeMs: 1_000_000_000_000_000 }],
    ['a time before 1970', { timeMs: -1 }],
    ['a time between two ms', { timeMs: 1.5 }],
    ['a nonce of 15 signs', { nonce: 'n'.repeat(15) }],
    ['a nonce of 65 signs', { nonce: 'n'.repeat(65) }],
    ['a signature of 85 signs', { sig: 's'.repeat(85) }],
    ['a signature of 87 signs', { sig: 's'.repeat(87) }],
    ['a signature in another alphabet', { sig: `${'s'.repeat(85)}+` }],
  ])('is not read with %s', (_, change) => {
    expect(parseProof(formatProof({ ...whole, ...change }))).toBeNull();
  });

  it('is not read with anything before, after, between or missing', () => {
    const header = formatProof(whole);
    expect(parseProof(header)).toEqual(whole);
    const bent = [
      ` ${header}`,
      `${header} `,
      `${header}\n`,
      `${header},more=1`,
      header.replace('Reelward', 'reelward'),
      header.replace('Reelward', 'Bearer'),
      header.replace(',', ', '),
      header.replace(/,nonce=[^,]*/, ''),
    ];
    for (const text of bent) expect(parseProof(text), JSON.stringify(text)).toBeNull();
  });
});

/** What no line of a request or an answer can hold is a line's end. */
const line = fc.string({ maxLength: 20 }).filter((text) => !text.includes('\n'));
const request = fc.record({
  method: fc.constantFrom('GET', 'POST', 'PUT', 'DELETE'),
  path: line,
  bodyHash: line,
  timeMs: fc.maxSafeNat(),
  nonce: line,
});
const point = fc.record({
  serverEpoch: line,
  pos: fc.maxSafeNat(),
  root: line,
  atMs: fc.maxSafeNat(),
  headsHash: line,
});

describe('a signed text', () => {
  it('of a request says each fact on a line of its own', () => {
    fc.assert(
      fc.property(request, (one) => {
        const { method, path, bodyHash, timeMs, nonce } = one;
        const facts = ['reelward request', method, path, bodyHash, String(timeMs), nonce];
        expect(requestText(one).split('\n')).toEqual(facts);
        expect(requestText({ ...one, method: method.toLowerCase() })).toBe(requestText(one));
      }),
    );
  });

  it('of a checkpoint says each fact on a line of its own', () => {
    fc.assert(
      fc.property(point, (one) => {
        const { serverEpoch, pos, root, atMs, headsHash } = one;
        const facts = ['reelward checkpoint', serverEpoch, String(pos), root, String(atMs), headsHash];
        expect(checkpointText(one).split('\n')).toEqual(facts);
      }),
    );
  });

  it('of one thing never passes for another', () => {
    const point = { serverEpoch: 'e', pos: 1, root: 'a'.repeat(64), atMs: 1, headsHash: 'b'.repeat(64) };
    const request = { method: 'POST', path: '/', bodyHash: 'c'.repeat(64), timeMs: 1, nonce: 'n' };
    const texts = [checkpointText(point), requestText(request)];
    for (const text of texts) expect(text).not.toMatch(/^[0-9a-f]{64}$/);
    expect(texts[0]?.split('\n')[0]).not.toBe(texts[1]?.split('\n')[0]);
    expect(entryText('d'.repeat(64))).toMatch(/^[0-9a-f]{64}$/);
  });

  it('of a request is never that of a checkpoint or of an entry, whatever they say', () => {
    fc.assert(
      fc.property(request, point, (asked, said) => {
        const texts = [requestText(asked), checkpointText(said)];
        expect(texts[0]).not.toBe(texts[1]);
        for (const text of texts) expect(text).not.toMatch(/^[0-9a-f]{64}$/);
      }),
    );
  });
});
