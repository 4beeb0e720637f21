// How a backlog is cut into pages.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../../shared/log/entry.ts';
import { pageBytes, pageEntries } from '../../../shared/wire/limits.ts';
import { type PageBounds, takePage } from '../../../shared/wire/pages.ts';
import { makeChain } from '../../contract/entries.ts';

/** Pages of a backlog until nothing is left of it. */
function allPages(entries: readonly Entry[], bounds: PageBounds): readonly (readonly Entry[])[] {
  const pages: (readonly Entry[])[] = [];
  for (let rest = entries; rest.length > 0; ) {
    const page = takePage(rest, bounds).entries;
    if (page.length === 0) throw new Error('a page is empty though entries are left');
    pages.push(page);
    rest = rest.slice(page.length);
  }
  return pages;
}

describe('`takePage()`', () => {
  const chain = makeChain({
    tablet: 't1',
    count: 130,
    payload: (seq) => ({ text: 'x'.repeat((seq * 37) % 200) }),
  });

  it('takes a run from the start, within both bounds, and at least one entry', () => {
    fc.assert(
      fc.property(
        fc.nat(130),
        fc.integer({ min: 1, max: 150 }),
        fc.integer({ min: 1, max: 80_000 }),
        (from, entries, bytes) => {
          const rest = chain.slice(from);
          const { entries: page, texts } = takePage(rest, { entries, bytes });
          expect(texts.join('')).toBe(JSON.stringify(page));
          expect(page).toEqual(rest.slice(0, page.length));
          expect(page.length).toBeLessThanOrEqual(entries);
          if (rest.length > 0) expect(page.length).toBeGreaterThan(0);
          const size = (count: number) => JSON.stringify(rest.slice(0, count)).length;
          if (page.length > 1) expect(size(page.length)).toBeLessThanOrEqual(bytes);
          if (page.length < Math.min(entries, rest.length))
            expect(size(page.length + 1)).toBeGreaterThan(bytes);
        },
      ),
      // So many parts that the next entry fills the page but for the array's bracket.
      { examples: [[28, 70, 29_535]] },
    );
  });

  it('brings the whole backlog, each entry once and in its order, whatever the bounds', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 150 }), fc.integer({ min: 1, max: 80_000 }), (entries, bytes) => {
        expect(allPages(chain, { entries, bytes }).flat()).toEqual(chain);
      }),
    );
  });

  it('of nothing is an empty page', () => {
    expect(takePage([])).toEqual({ entries: [], texts: ['[', ']'] });
  });

  it.each([1, 49, 50, 51, 100, 101, 130])('writes %i entries as one JSON array', (count) => {
    const entries = chain.slice(0, count);
    expect(JSON.parse(takePage(entries).texts.join(''))).toEqual(entries);
  });

  it('lets an entry that is longer than a page travel alone', () => {
    const payload = (seq: number) => ({ text: 'x'.repeat(seq === 2 ? pageBytes : 1) });
    const three = makeChain({ tablet: 't1', count: 3, payload });
    expect(allPages(three, {}).map((one) => one.map((entry) => entry.seq))).toEqual([[1], [2], [3]]);
  });

  it('takes as many as the wire allows where nobody says otherwise', () => {
    const [entry] = chain;
    const many = Array.from({ length: pageEntries + 1 }, () => entry as Entry);
    expect(takePage(many).entries).toHaveLength(pageEntries);
    expect(takePage(many.slice(1)).entries).toHaveLength(pageEntries);
  });

  it('takes what fits to the last sign', () => {
    const few = chain.slice(0, 3);
    const bytes = JSON.stringify(few).length;
    expect(takePage(few, { bytes }).entries).toHaveLength(3);
    expect(takePage(chain.slice(0, 4), { bytes }).entries).toHaveLength(3);
  });
});
