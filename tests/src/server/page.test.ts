// The quick walk over a pushed page reads what the long way reads, and nothing that the long way refuses.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry, JsonObject } from '../../../shared/log/entry.ts';
import { canonicalText, draftOf, hashText, sealEntry } from '../../../shared/log/seal.ts';
import { pageEntries } from '../../../shared/wire/limits.ts';
import { pushSchema } from '../../../shared/wire/messages.ts';
import { takePage } from '../../../shared/wire/pages.ts';
import type { ArrivedEntry } from '../../../src/server/arrived.ts';
import { readEntry } from '../../../src/server/checked.ts';
import { readPage } from '../../../src/server/page.ts';
import { verdictPayload } from '../../bench/server-process.ts';
import { makeChain, newKey } from '../../contract/entries.ts';

const key = newKey();
const chain = makeChain({ tablet: 't1', count: 3, key, payload: verdictPayload });
const [first] = chain as [Entry, Entry, Entry];

/** A page as a tablet writes it. */
function written(entries: readonly Entry[]): string {
  return `{"sentMs":17,"entries":${takePage(entries).texts.join('')}}`;
}

function read(text: string) {
  return readPage(Buffer.from(text));
}

/** What an entry says, wherever its text stands. */
function said(entry: ArrivedEntry) {
  const { tablet, epoch, seq, prev, hash, sig, kind, hlc, atMs, body } = entry;
  return { tablet, epoch, seq, prev, hash, sig, kind, hlc, atMs, body, bodyHash: entry.bodyHash() };
}

/** The same page the long way; null where it is refused. */
function longWay(text: string) {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return null;
  }
  if (!pushSchema.safeParse(value).success) return null;
  const { sentMs, entries } = value as { readonly sentMs: number; readonly entries: readonly Entry[] };
  try {
    return { sentMs, entries: entries.map(readEntry).map(said) };
  } catch {
    return null; // nested too deep, or half a character
  }
}

/** Both ways agree wherever the quick one answers; says whether it did. */
function agree(text: string): boolean {
  const quick = read(text);
  if (quick === null) return false;
  expect({ sentMs: quick.sentMs, entries: quick.entries.map(said) }).toEqual(longWay(text));
  return true;
}

function withPayload(payload: JsonObject): string {
  return written([{ ...sealEntry({ ...first, payload }), sig: first.sig }]);
}

/** Payload text put in as it is; the hash is left as it was, since no reader of pages looks at it. */
function withText(payload: string): string {
  return written([first]).replace(/"payload":\{.*\},"prev"/, () => `"payload":${payload},"prev"`);
}

describe('`readPage()`', () => {
  it('reads what a tablet writes', () => {
    const page = read(written(chain));
    expect(page?.sentMs).toBe(17);
    expect(page?.entries.map((one) => one.body)).toEqual(chain.map((one) => canonicalText(draftOf(one))));
    expect(page?.entries.map((one) => hashText(one.body))).toEqual(chain.map((one) => one.hash));
    expect(agree(written(chain))).toBe(true);
  });

  it('reads names and hashes that change and come again', () => {
    const others = makeChain({ tablet: 't10', epoch: 'e11', count: 2, key, kind: 'test.noted.twice' });
    const [one, two] = others as [Entry, Entry];
    const [, second, third] = chain as [Entry, Entry, Entry];
    expect(agree(written([first, one, second, two, third, first]))).toBe(true);
  });

  it('leaves the bytes of a page for the long way as they were', () => {
    const text = written(chain).replace(/\}\]\}$/, '} ]}');
    const bytes = Buffer.from(text);
    expect(readPage(bytes)).toBeNull();
    expect(bytes.toString()).toBe(text);
  });

  it('reads entries without a person, without a signature and with texts of any script', () => {
    const one = sealEntry({
      ...first,
      who: null,
      payload: { note: 'Prüfung "ok" \\ 検査 😀\n\u0001\u001f' },
    });
    expect(one.sig).toBeNull();
    expect(agree(written([one]))).toBe(true);
  });

  it.each([
    '{}',
    '{"a":[],"b":{}}',
    '{"":1,"a":{"a":0,"aa":[1,2,[3]],"b":true}}',
    '{"a":-1,"b":0.5,"c":1e+21,"d":1e-7,"e":123456789012345680000,"f":false,"g":null}',
    String.raw`{"a":"\b\f\n\r\t\"\\\u0000\u001f"}`,
  ])('reads the payload %s, which is canonical', (payload) => {
    expect(agree(withText(payload))).toBe(true);
  });

  it.each([
    ['keys out of order', '{"b":1,"a":1}'],
    ['a longer key before the shorter', '{"aa":1,"a":1}'],
    ['a key twice', '{"a":1,"a":1}'],
    ['a blank', '{"a": 1}'],
    ['a number written otherwise', '{"a":1.0}'],
    ['a leading zero', '{"a":01}'],
    ['minus zero', '{"a":-0}'],
    ['a number too long to be exact', '{"a":1234567890123456789}'],
    ['a number without end', '{"a":1e400}'],
    ['an escape that is not needed', String.raw`{"a":"\/"}`],
    ['a control character in its long form', String.raw`{"a":"\u000a"}`],
    ['an escape in upper case', String.raw`{"a":"\u001F"}`],
    ['half a character', String.raw`{"a":"\ud800"}`],
    ['a bare control character', '{"a":"\n"}'],
    ['the key that is none', '{"__proto__":1}'],
    ['a comma too many', '{"a":1,}'],
    ['a list with a comma too many', '{"a":[1,]}'],
    ['a word that is none', '{"a":nil}'],
    ['a list for an object', '[]'],
    ['nesting without end', `{"a":${'['.repeat(100)}${']'.repeat(100)}}`],
  ])('leaves %s to the long way', (_, payload) => {
    expect(read(withText(payload))).toBeNull();
  });

  it.each([
    ['an older order of keys', written([first]).replace('"v":1,"who":"p1"', '"who":"p1","v":1')],
    ['another key', written([first]).replace('"v":1', '"u":1,"v":1')],
    ['another version', written([first]).replace('"v":1', '"v":2')],
    ['a date that is none', written([first]).replace('"at":"2026-03', '"at":"2026-13')],
    ['a name with a blank', written([first]).replace('"epoch":"e1"', '"epoch":"e 1"')],
    ['an empty name', written([first]).replace('"epoch":"e1"', '"epoch":""')],
    ['a name too long', written([first]).replace('"epoch":"e1"', `"epoch":"${'e'.repeat(65)}"`)],
    ['number 0', written([first]).replace('"seq":1,', '"seq":0,')],
    ['a hash in upper case', written([first]).replace(`"hash":"${first.hash}`, `"hash":"${'A'.repeat(64)}`)],
    ['a hash too short', written([first]).replace(first.hash, first.hash.slice(1))],
    ['an empty page', written([])],
    ['text behind the page', `${written([first])} `],
    [
      'too many entries',
      written([first]).replace(/\[(.*)\]\}$/, (_, one) => `[${Array(pageEntries + 1).fill(one)}]}`),
    ],
    ['an entry too large', withPayload({ text: 'x'.repeat(400_000) })],
  ])('leaves %s to the long way', (_, text) => {
    expect(text).not.toBe(written([first]));
    expect(read(text)).toBeNull();
  });

  it('agrees with the long way on whatever payload a tablet may write', () => {
    let read = 0;
    const keys = fc.oneof(fc.string({ maxLength: 4 }), fc.string({ unit: 'binary', maxLength: 4 }));
    fc.assert(
      fc.property(fc.dictionary(keys, fc.jsonValue(), { maxKeys: 4 }), (payload) => {
        let text: string;
        try {
          text = withPayload(payload as JsonObject);
        } catch {
          return; // half a character: cannot be sealed
        }
        if (agree(text)) read += 1;
      }),
      { numRuns: 500 },
    );
    expect(read).toBeGreaterThan(50);
  });

  it('agrees with the long way on pages with a byte changed, taken out or put in', () => {
    const text = withPayload({ a: [1, 0.5, -2e-9], b: { c: 'x"\\\n', d: null }, e: true });
    const chars = fc.constantFrom(...'{}[]",:\\ 0159-+.eEabntu_\n\u0000ü');
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.constantFrom(0, 1), fc.option(chars), (at, out, char) => {
        agree(text.slice(0, at) + (char ?? '') + text.slice(at + out));
      }),
      { numRuns: 3_000 },
    );
  });

  it('ends at every place where a page is cut off', () => {
    const text = written([first]);
    for (let end = 0; end < text.length; end += 1) expect(read(text.slice(0, end))).toBeNull();
  });
});
