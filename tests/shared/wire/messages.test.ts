// What tablet and server say to each other.

import { describe, expect, it } from 'vitest';
import { pageEntries } from '../../../shared/wire/limits.ts';
import { infoSchema, pulledSchema, pushSchema } from '../../../shared/wire/messages.ts';
import { makeChain } from '../../contract/entries.ts';

describe('messages', () => {
  it('drop fields that they do not know, but refuse them in an entry', () => {
    const [entry] = makeChain({ tablet: 't1', count: 1 });
    const push = { sentMs: 1, entries: [entry], more: true };
    expect(pushSchema.parse(push)).toEqual({ sentMs: 1, entries: [entry] });
    expect(pushSchema.safeParse({ sentMs: 1, entries: [{ ...entry, more: true }] }).success).toBe(false);
  });

  it('refuse a page over the limit', () => {
    const [entry] = makeChain({ tablet: 't1', count: 1 });
    const push = { sentMs: 1, entries: Array.from({ length: pageEntries + 1 }, () => entry) };
    expect(pushSchema.safeParse(push).success).toBe(false);
  });

  it('refuse what is not theirs', () => {
    for (const value of [null, [], 'x', 1, {}]) {
      expect(infoSchema.safeParse(value).success).toBe(false);
      expect(pulledSchema.safeParse(value).success).toBe(false);
    }
  });
});
