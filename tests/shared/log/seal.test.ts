// The seal against published values: RFC 8785's own examples and NIST's SHA-256 examples.

import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type EntryDraft, firstPrev, type Json } from '../../../shared/log/entry.ts';
import {
  canonicalText,
  draftOf,
  hashDraft,
  hashText,
  sealEntry,
  wellFormed,
} from '../../../shared/log/seal.ts';

/** The number whose IEEE 754 bits these are. */
function fromBits(hex: string): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setBigUint64(0, BigInt(`0x${hex}`));
  return view.getFloat64(0);
}

describe('`canonicalText()`', () => {
  // RFC 8785 appendix B, "Number Serialization Samples".
  it.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['8000000000000001', '-5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['ffefffffffffffff', '-1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['c340000000000000', '-9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['44b52d02c7e14af7', '1.0000000000000001e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef4f', '999999999999999900000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555553', '333333333.3333332'],
    ['41b3de4355555554', '333333333.33333325'],
    ['41b3de4355555555', '333333333.3333333'],
    ['41b3de4355555556', '333333333.3333334'],
    ['41b3de4355555557', '333333333.33333343'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('writes the number with bits %s as %s', (bits, text) => {
    expect(canonicalText(fromBits(bits))).toBe(text);
  });

  // RFC 8785 appendix B: not allowed in JSON.
  it.each(['7fffffffffffffff', '7ff0000000000000'])('throws for bits %s', (bits) => {
    expect(() => canonicalText(fromBits(bits))).toThrow();
  });

  it('orders keys and writes texts as in RFC 8785 section 3.2.2 and 3.2.3', () => {
    const value = {
      numbers: [Number('333333333.33333329'), 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      string: '\u20ac$\u000F\u000aA\'\u0042\u0022\u005c\\"/',
      literals: [null, true, false],
    };
    expect(canonicalText(value)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"\u20ac$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  it('sorts keys by UTF-16 code units, as in RFC 8785 section 3.2.3', () => {
    const value = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    };
    const order = [...canonicalText(value).matchAll(/:"([^"]*)"/g)].map((match) => match[1]);
    expect(order).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ]);
  });

  it('throws for half a character', () => {
    expect(() => canonicalText({ text: '\ud800' })).toThrow();
  });

  it('does not depend on the order in which keys were written, and reads back the same', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.array(fc.nat(), { minLength: 20, maxLength: 20 }), (value, seeds) => {
        const clean = wellFormed(JSON.parse(JSON.stringify(value)) as Json);
        const text = canonicalText(clean);
        expect(canonicalText(shuffled(clean, seeds))).toBe(text);
        expect(JSON.parse(text)).toEqual(clean);
      }),
    );
  });
});

/** The same value with keys put in another order. */
function shuffled(value: Json, seeds: readonly number[]): Json {
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map((item) => shuffled(item as Json, seeds));
  const keys = Object.keys(value);
  const order = keys
    .map((key, at) => ({ key, rank: seeds[at % seeds.length] ?? 0 }))
    .sort((a, b) => a.rank - b.rank);
  const result: Record<string, Json> = {};
  for (const { key } of order) {
    const item = (value as Record<string, Json>)[key] ?? null;
    Object.defineProperty(result, key, {
      value: shuffled(item, seeds),
      enumerable: true,
      configurable: true,
      writable: true,
    });
  }
  return result;
}

describe('`hashText()`', () => {
  // FIPS 180-4 example messages, as published with their digests by NIST (Cryptographic Standards and Guidelines, examples).
  it.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
  ])('of the published message gives the published digest', (message, digest) => {
    expect(hashText(message)).toBe(digest);
  });

  it('agrees with the platform on UTF-8', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(hashText(text)).toBe(createHash('sha256').update(text, 'utf8').digest('hex'));
      }),
    );
  });
});

const draft: EntryDraft = {
  v: 1,
  tablet: 't1',
  epoch: 'e1',
  seq: 1,
  at: '2026-03-02T06:00:00.000+01:00',
  hlc: { ms: 1_772_427_600_000, n: 0 },
  who: 'p1',
  kind: 'reel.verified',
  payload: { slot: 'M1-F-014' },
  prev: firstPrev,
};

describe('`sealEntry()`', () => {
  it('covers every field but the signature', () => {
    const sealed = sealEntry(draft);
    expect(hashDraft(sealed)).toBe(sealed.hash);
    expect(hashDraft({ ...sealed, sig: 'x' } as EntryDraft)).toBe(sealed.hash);
    const changes: readonly Partial<EntryDraft>[] = [
      { tablet: 't2' },
      { epoch: 'e2' },
      { seq: 2 },
      { at: '2026-03-02T06:00:00.001+01:00' },
      { hlc: { ms: 1_772_427_600_000, n: 1 } },
      { who: null },
      { kind: 'reel.refused' },
      { payload: { slot: 'M1-F-015' } },
      { prev: '1'.repeat(64) },
    ];
    for (const change of changes) expect(hashDraft({ ...draft, ...change })).not.toBe(sealed.hash);
  });

  it('writes as JSON the very text that the hash covers, with hash and signature behind it', () => {
    const sealed = sealEntry({ ...draft, payload: { slot: 'M1-F-014', lot: { b: [1], a: 'ü' } } });
    const text = canonicalText(draftOf(sealed));
    expect(JSON.stringify(sealed)).toBe(`${text.slice(0, -1)},"hash":"${sealed.hash}","sig":null}`);
    expect(text).toContain('"payload":{"lot":{"a":"ü","b":[1]},"slot":"M1-F-014"}');
  });

  it('drops what is not part of a draft', () => {
    const extra = { ...draft, note: 'x' } as EntryDraft;
    expect(sealEntry(extra)).toEqual(sealEntry(draft));
    expect(Object.keys(draftOf(extra))).not.toContain('note');
  });
});

describe('`wellFormed()`', () => {
  it.each([
    ['\ud800', '\ufffd'],
    ['a\udc00b', 'a\ufffdb'],
    ['\ud83d\ude00', '\ud83d\ude00'],
    ['\ud83d\ud83d\ude00', '\ufffd\ud83d\ude00'],
  ])('leaves only whole characters', (text, whole) => {
    expect(wellFormed({ key: [text] })).toEqual({ key: [whole] });
  });

  it('makes every JSON value one that can be sealed', () => {
    fc.assert(
      fc.property(fc.jsonValue({ stringUnit: 'binary' }), (value) => {
        expect(() => canonicalText(wellFormed(value as Json))).not.toThrow();
      }),
    );
  });
});
