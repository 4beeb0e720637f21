// The quick ways of the server say the same as the plain ones they stand for.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Entry, type Json, payloadLevelsMost } from '../../../shared/log/entry.ts';
import { entrySchema } from '../../../shared/log/entry-schema.ts';
import { canonicalText, draftOf } from '../../../shared/log/seal.ts';
import { createAppender } from '../../../src/server/appender.ts';
import { arePlainEntries, isPlainEntry } from '../../../src/server/envelope.ts';
import { draftText } from '../../../src/server/stores/canonical.ts';
import type { Appended, Checked } from '../../../src/server/stores/store.ts';
import { makeChain, toChecked } from '../../contract/entries.ts';

const [entry] = makeChain({ tablet: 't1', count: 1 });
const good = entry as Entry;

describe('`draftText()`', () => {
  const keys = fc.oneof(
    fc.constantFrom('10', '9', '__proto__', '', 'é', '\ud83d\ude00', '\ufb33', 'constructor'),
    fc.string({ unit: 'binary', maxLength: 4 }),
  );
  const value = fc.letrec((tie) => ({
    any: fc.oneof(
      { depthSize: 'small' },
      fc.string({ unit: 'binary' }),
      fc.double(),
      fc.boolean(),
      fc.constant(null),
      fc.array(tie('any')),
      fc.dictionary(keys, tie('any')),
    ),
  })).any;

  it('writes what the general writer writes, and throws where it throws', () => {
    fc.assert(
      fc.property(fc.dictionary(keys, value), (payload) => {
        const parsed = JSON.parse(JSON.stringify({ ...good, payload })) as Entry;
        let wanted: string | null = null;
        try {
          wanted = canonicalText(draftOf(parsed));
        } catch {
          expect(() => draftText(parsed)).toThrow();
        }
        if (wanted !== null) expect(draftText(parsed).body).toBe(wanted);
      }),
      { numRuns: 500 },
    );
  });
});

describe('a payload', () => {
  const [plain] = makeChain({ tablet: 't1', count: 1 });
  const withText = (text: string) => ({ ...plain, payload: JSON.parse(text) }) as Entry;
  const nested = (levels: number) => `${'{"a":'.repeat(levels)}1${'}'.repeat(levels)}`;

  it('with a number beyond any is refused, as null would stand in the log', () => {
    expect(() => draftText(withText('{"x":[1e400]}'))).toThrow(/Infinity/);
    expect(() => draftText(withText('{"x":[1e300]}'))).not.toThrow();
  });

  it('has 64 levels at most, for the server as for every other reader', () => {
    for (const open of ['', '{"1":']) {
      const levels = open === '' ? payloadLevelsMost : payloadLevelsMost - 1;
      const close = open === '' ? '' : '}';
      const [most, more] = [levels, levels + 1].map((count) => withText(open + nested(count) + close));
      expect(draftText(most as Entry).body).toBe(canonicalText(draftOf(most as Entry)));
      expect(entrySchema.safeParse(most).success).toBe(true);
      expect(() => draftText(more as Entry)).toThrow(/more than 64 levels/);
      expect(entrySchema.safeParse(more).success).toBe(false);
    }
    // Deeper than any stack: refused, not thrown at.
    expect(entrySchema.safeParse(withText(nested(100_000))).success).toBe(false);
  });
});

describe('`isPlainEntry()`', () => {
  it('accepts what a tablet writes', () => {
    for (const one of makeChain({ tablet: 't1', count: 3 })) expect(isPlainEntry(one)).toBe(true);
  });

  it('accepts nothing that the schema refuses', () => {
    const anything = fc.oneof(
      fc.anything(),
      fc.constantFrom<Json>(
        '',
        'x',
        'a b',
        0,
        1,
        -1,
        1.5,
        2 ** 53,
        null,
        {},
        [],
        '2026-02-30T00:00:00Z',
        '2026-13-01T00:00:00Z',
        'f'.repeat(64),
        'é'.repeat(65),
      ),
    );
    const field = fc.constantFrom(...Object.keys(good), 'hlc.ms', 'hlc.n', 'extra');
    fc.assert(
      fc.property(field, anything, (name, value) => {
        const changed = name.startsWith('hlc.')
          ? { ...good, hlc: { ...good.hlc, [name.slice(4)]: value } }
          : { ...good, [name]: value };
        const parsed: unknown = JSON.parse(JSON.stringify(changed) ?? 'null');
        if (isPlainEntry(parsed)) expect(entrySchema.safeParse(parsed).success).toBe(true);
      }),
      { numRuns: 1_000 },
    );
  });
});

describe('`arePlainEntries()`', () => {
  const [first, second] = makeChain({ tablet: 't1', count: 2 }) as [Entry, Entry];

  it('accepts a chain, and entries that do not go on from each other', () => {
    expect(arePlainEntries([first, second])).toBe(true);
    expect(arePlainEntries([second, first, first])).toBe(true);
  });

  it('accepts no list with an entry that the schema refuses, whatever the one before it says', () => {
    const bad = ['', 'F'.repeat(64), `${'0'.repeat(63)}"`, null, 7];
    for (const hash of bad) {
      expect(arePlainEntries([first, { ...second, prev: hash }])).toBe(false);
      expect(
        arePlainEntries([
          { ...first, hash },
          { ...second, prev: hash },
        ]),
      ).toBe(false);
      expect(arePlainEntries([first, second, { ...second, hash }])).toBe(false);
      expect(arePlainEntries([{ ...first, prev: hash }, second])).toBe(false);
    }
  });
});

describe('`createAppender()`', () => {
  const answer = (sender: string): Appended => ({
    acks: [{ tablet: sender, epoch: 'e1', seq: 1 }],
    faults: [],
    head: { pos: 1, root: '' },
    tree: { size: 0, root: '' },
    places: [],
    added: 1,
  });

  it('joins what waits at the same time into one append, and answers each by itself', async () => {
    const sizes: number[] = [];
    const store = {
      marks: async () => [],
      append: async (batches: readonly { readonly sender: string }[]) => {
        sizes.push(batches.length);
        return batches.map(({ sender }) => answer(sender));
      },
    };
    const appender = createAppender(store, () => 0);
    const names = Array.from({ length: 50 }, (_, at) => `t${at}`);
    const answers = await Promise.all(names.map((name) => appender.append(name, [toChecked(good)])));
    expect(answers.map((one) => one.acks[0]?.tablet)).toEqual(names);
    expect(sizes).toEqual([50]);
  });

  it('that fails tells all who waited, and goes on with the next', async () => {
    let fails = true;
    const store = {
      marks: async () => [],
      append: async (batches: readonly { readonly sender: string }[]) => {
        if (fails) throw new Error('disk full');
        return batches.map(({ sender }) => answer(sender));
      },
    };
    const appender = createAppender(store, () => 0);
    const both = await Promise.allSettled([appender.append('a', []), appender.append('b', [])]);
    expect(both.map((one) => one.status)).toEqual(['rejected', 'rejected']);
    fails = false;
    expect((await appender.append('c', [])).acks[0]?.tablet).toBe('c');
    await appender.drained();
  });

  it('lets a page that overtook the one before it wait for that, and one without such a page for a moment only', async () => {
    const taken: number[] = [];
    const store = {
      marks: async () => [{ tablet: 't1', epoch: 'e1', seq: taken.at(-1) ?? 0 }],
      append: async (
        batches: readonly { readonly sender: string; readonly entries: readonly Checked[] }[],
      ) => {
        for (const { entries } of batches) taken.push(...entries.map((one) => one.seq));
        return batches.map(({ sender }) => answer(sender));
      },
    };
    const pages = makeChain({ tablet: 't1', count: 8 }).map((one) => toChecked(one));
    const page = (from: number) => pages.slice(from, from + 2);
    const appender = createAppender(store, () => 0);
    await appender.append('t1', page(0));
    await Promise.all([6, 4, 2].map((from) => appender.append('t1', page(from))));
    expect(taken).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    // What another process took in meanwhile is asked for; what nobody has goes to the store, which calls it a gap.
    taken.push(20);
    const late = makeChain({ tablet: 't1', count: 31 }).map((one) => toChecked(one));
    await appender.append('t1', late.slice(20, 22));
    await appender.append('t1', late.slice(29, 30));
    expect(taken.slice(-3)).toEqual([21, 22, 30]);
    const stopped = appender.append('t1', late.slice(30));
    await appender.drained();
    await stopped;
  });
});
