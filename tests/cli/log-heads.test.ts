// What heads prove of an exported log, by keys of the plant's list: up to where, until a tablet was shut out, and over what a file leaves out.

import { createPublicKey } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { withoutSecrets } from '../../shared/floor/secrets.ts';
import type { Omitted } from '../../shared/log/chain.ts';
import type { Entry, JsonObject } from '../../shared/log/entry.ts';
import type { ListedKey } from '../../shared/log/plant-list.ts';
import { checkSignatures } from '../../src/cli/log-file.ts';
import { makeChain, newKey, signedBy, startMs } from '../contract/entries.ts';

const key = newKey();
const listed = (until: string | null = null): readonly ListedKey[] => [
  { tablet: 't1', key: key.publicKey, since: new Date(startMs).toISOString(), until },
];
const { kty, crv, x, y } = createPublicKey(key.private).export({ format: 'jwk' });
const opening = { name: 'front', app: '1', key: { kty, crv, x, y } as JsonObject, previous: null };
const [first] = makeChain({ tablet: 't1', count: 1, kind: 'tablet.opened', payload: () => opening }) as [
  Entry,
];
const chain = [first, ...makeChain({ tablet: 't1', count: 5, after: first })];
/** Numbers of the entries that lack a head, and whose lack is the file's own fault. */
const lacking = (entries: readonly Entry[], omitted: readonly Omitted[] = []) => {
  const { lacksHead } = checkSignatures(entries, listed(), omitted);
  return entries.filter(lacksHead).map(({ seq }) => seq);
};
const headed = (entries: readonly Entry[], ...heads: readonly number[]) =>
  entries.map((one) => (heads.includes(one.seq) ? signedBy(key, one) : one));
const words = (entries: readonly Entry[], until: string | null = null) => {
  const { keyOf } = checkSignatures(entries, listed(until));
  return entries.map((entry) => {
    const by = keyOf(entry);
    return typeof by === 'string' || by === null ? by : 'proven';
  });
};

describe('`checkSignatures()`', () => {
  test('proves every entry up to the last head, in any order of the lines', () => {
    const entries = headed(chain, 2, 4);
    const wanted = ['proven', 'proven', 'proven', 'proven', 'not-signed', 'not-signed'];
    expect(words(entries)).toEqual(wanted);
    expect(words([...entries].reverse())).toEqual([...wanted].reverse());
    expect(checkSignatures(entries, listed()).signedTo).toEqual([
      { tablet: 't1', epoch: 'e1', signedTo: 4, lastSeq: 6, notVouched: 2 },
    ]);
  });

  test('goes by the head where a tablet was shut out: what was signed in time is proven', () => {
    const until = new Date(startMs + 4_500).toISOString();
    expect(words(headed(chain, 2, 6), until)).toEqual([
      'proven',
      'proven',
      ...[3, 4, 5, 6].map(() => 'shut-out-before'),
    ]);
  });

  test('vouches across nothing that is gone, replaced, or has its text left out', () => {
    const entries = headed(chain, 6);
    const gone = entries.filter(({ seq }) => seq !== 4);
    expect(words(gone)).toEqual(['not-signed', 'not-signed', 'not-signed', 'proven', 'proven']);
    const bent = entries.map((one) => (one.seq === 4 ? { ...one, payload: { text: 'bent' } } : one));
    expect(words(bent).slice(0, 3)).toEqual(['not-signed', 'not-signed', 'not-signed']);
    const person = { person: 'ana', name: 'Ana', role: 'lead', badge: 'B-1', pin: null };
    const before = chain.slice(0, 3);
    const secret = makeChain({
      tablet: 't1',
      count: 1,
      after: before[2] as Entry,
      kind: 'person.added',
      payload: () => person,
    });
    const rest = makeChain({ tablet: 't1', count: 1, after: secret[0] as Entry });
    const told = headed([...before, ...secret, ...rest], 5).map((one) => withoutSecrets(one) as Entry);
    expect(words(told)).toEqual(['not-signed', 'not-signed', 'not-signed', 'proven', 'proven']);
    // That is no fault of the file.
    expect(lacking(told)).toEqual([]);
    // As tablets send it: what stands before such an entry is signed by itself.
    const sent = headed(told, 3);
    expect(words(sent)).toEqual(told.map(() => 'proven'));
  });

  test('tells of an end without a head, and of none where the file leaves out what may hold it or is broken before', () => {
    const entries = headed(chain, 2, 4);
    expect(lacking(entries)).toEqual([5, 6]);
    expect(lacking(headed(chain, 6))).toEqual([]);
    const { hash } = chain[5] as Entry;
    const left = { tablet: 't1', epoch: 'e1', fromSeq: 7, toSeq: 9, hash };
    expect(lacking(entries, [left])).toEqual([]);
    expect(lacking(entries.filter(({ seq }) => seq !== 5))).toEqual([6]);
    const forged = headed(chain, 2).map((one) => (one.seq === 6 ? { ...one, sig: 'A'.repeat(86) } : one));
    expect(lacking(forged)).toEqual([]);
  });
});
