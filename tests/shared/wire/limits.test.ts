// The bounds fit into each other: what one end may send, the other may take.

import { describe, expect, it } from 'vitest';
import { canonicalText, draftOf } from '../../../shared/log/seal.ts';
import {
  bodyBytes,
  codeLifeMs,
  entryBytes,
  pageBytes,
  pageEntries,
  pinRounds,
  signatureWindowMs,
  snapshotBytes,
  snapshotEvery,
  snapshotUnpackedBytes,
  unpackedBytes,
} from '../../../shared/wire/limits.ts';
import { pushSchema } from '../../../shared/wire/messages.ts';
import { takePage } from '../../../shared/wire/pages.ts';
import { makeChain } from '../../contract/entries.ts';

describe('the limits', () => {
  it('never make a page that the server must refuse', () => {
    expect(entryBytes).toBeLessThan(pageBytes);
    // Every sign may take three bytes in UTF-8, and the entry that tips a page over is not in it.
    expect(pageBytes * 3).toBeLessThan(unpackedBytes);
    expect(entryBytes).toBeLessThan(bodyBytes);
    expect(pageEntries).toBeGreaterThan(0);
  });

  it('let the longest entry that is taken travel with others in a page', () => {
    const sizeOf = (letters: number) => {
      const [entry] = makeChain({ tablet: 't1', count: 1, payload: () => ({ text: 'x'.repeat(letters) }) });
      if (!entry) throw new Error('no entry');
      return { entry, bytes: Buffer.byteLength(canonicalText(draftOf(entry))) };
    };
    const { entry, bytes } = sizeOf(entryBytes - sizeOf(0).bytes);
    expect(bytes).toBe(entryBytes);
    const page = takePage([entry, entry]);
    expect(takePage([entry, sizeOf(0).entry]).entries).toHaveLength(2);
    expect(page.entries).toHaveLength(1);
    expect(Buffer.byteLength(page.texts.join(''))).toBeLessThan(bodyBytes);
  });

  it('let a page as full as it may be pass as a message', () => {
    const [entry] = makeChain({ tablet: 't1', count: 1 });
    const full = { sentMs: 1, entries: Array.from({ length: pageEntries }, () => entry) };
    expect(pushSchema.safeParse(full).success).toBe(true);
  });

  it('let what is packed unpack to more', () => {
    expect(unpackedBytes).toBeGreaterThan(bodyBytes);
    expect(snapshotUnpackedBytes).toBeGreaterThan(snapshotBytes);
    // A new snapshot is worth its way only where it spares several pages.
    expect(snapshotEvery).toBeGreaterThan(pageEntries);
  });

  it('make a PIN that is copied from a tablet costly to guess', () => {
    // The lock stops guesses at the server only; who has the hash guesses at leisure.
    expect(pinRounds).toBeGreaterThanOrEqual(600_000);
  });

  it('let a code that was read aloud live longer than the request that uses it', () => {
    expect(codeLifeMs).toBeGreaterThan(signatureWindowMs);
  });
});
