// Chains of entries for tests, sealed and signed as a tablet does it.

import { createPrivateKey, generateKeyPairSync, type KeyObject, sign } from 'node:crypto';
import { type Entry, firstPrev, type JsonObject } from '../../shared/log/entry.ts';
import { canonicalText, draftOf, sealEntry } from '../../shared/log/seal.ts';
import { entryText } from '../../shared/wire/signing.ts';
import type { Checked } from '../../src/server/stores/store.ts';

/** 2026-03-02T06:00:00Z. */
export const startMs = Date.UTC(2026, 2, 2, 6);

export interface TestKey {
  readonly publicKey: string;
  readonly private: KeyObject;
  readonly sign: (text: string) => string;
}

/** A P-256 key pair. */
export function newKey(): TestKey {
  const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const { x = '', y = '' } = publicKey.export({ format: 'jwk' });
  const point = Buffer.concat([Buffer.from([4]), Buffer.from(x, 'base64url'), Buffer.from(y, 'base64url')]);
  const key = createPrivateKey(privateKey.export({ type: 'pkcs8', format: 'pem' }));
  return {
    publicKey: point.toString('base64url'),
    private: key,
    sign: (text) =>
      sign('sha256', Buffer.from(text), { key, dsaEncoding: 'ieee-p1363' }).toString('base64url'),
  };
}

/** An entry with the signature of a key. */
export function signedBy(key: TestKey, entry: Entry): Entry {
  return { ...entry, sig: key.sign(entryText(entry.hash)) };
}

export interface ChainOptions {
  readonly tablet: string;
  readonly epoch?: string;
  readonly count: number;
  readonly key?: TestKey | null;
  /** The entry that the chain goes on from. */
  readonly after?: Entry;
  readonly kind?: string;
  readonly payload?: (seq: number) => JsonObject;
  readonly atMs?: number;
}

/** A chain of sealed entries, one a second. */
export function makeChain(options: ChainOptions): Entry[] {
  const { tablet, epoch = 'e1', count, key = null, after } = options;
  const entries: Entry[] = [];
  let prev = after?.hash ?? firstPrev;
  const first = (after?.seq ?? 0) + 1;
  for (let seq = first; seq < first + count; seq += 1) {
    const ms = (options.atMs ?? startMs) + seq * 1000;
    const sealed = sealEntry({
      v: 1,
      tablet,
      epoch,
      seq,
      at: new Date(ms).toISOString(),
      hlc: { ms, n: 0 },
      who: 'p1',
      kind: options.kind ?? 'test.noted',
      payload: options.payload ? options.payload(seq) : { text: `note ${seq}` },
      prev,
    });
    entries.push(key ? signedBy(key, sealed) : sealed);
    prev = sealed.hash;
  }
  return entries;
}

/** The list with another entry at one place. */
export function placed(entries: readonly Entry[], at: number, entry: Entry): readonly Entry[] {
  return entries.map((one, index) => (index === at ? entry : one));
}

/** An entry as the store takes it. */
export function toChecked(entry: Entry, change: Partial<Checked> = {}): Checked {
  const { tablet, epoch, seq, prev, hash, sig, kind, hlc } = entry;
  const body = canonicalText(draftOf(entry));
  const atMs = Date.parse(entry.at);
  return {
    tablet,
    epoch,
    seq,
    prev,
    hash,
    sig,
    kind,
    hlc,
    atMs,
    body,
    aheadMs: 0,
    via: null,
    fault: null,
    ...change,
  };
}
