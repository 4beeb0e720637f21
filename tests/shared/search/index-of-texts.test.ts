// Finding in general: everything by its exact text, nothing without it, the best first, and what is alike never merged.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Findable, findTexts, indexTexts } from '../../../shared/search/index-of-texts.ts';

type Kind = 'a' | 'b';
const order: readonly Kind[] = ['a', 'b'];
const find = (things: readonly Findable<Kind, number>[], text: string, most = 1000) =>
  findTexts([indexTexts(things)], text, { most, order });
const thing = (number: number, ...names: string[]): Findable<Kind, number> => ({
  kind: 'a',
  thing: number,
  names,
  about: [],
});

const code = fc.stringMatching(/^[A-C0-2]{1,3}([-_ ./]?[a-c0-2]{1,3}){0,2}$/);
const things = fc.array(
  fc.record({
    kind: fc.constantFrom<Kind>('a', 'b'),
    thing: fc.nat(),
    names: fc.array(code, { maxLength: 2 }),
    about: fc.array(code, { maxLength: 3 }),
  }),
  { maxLength: 12 },
);

/** Told apart from the code under test: character by character, a number as its digits without zeros before them. */
function pieces(text: string, keepZeros: boolean): string {
  let told = '';
  for (const [piece] of text.toUpperCase().matchAll(/\d+|[A-Z]/g)) {
    if (/\d/.test(piece)) told += keepZeros ? piece : `<${piece.replace(/^0+(?=\d)/, '')}`;
    else told += piece;
  }
  return told;
}
const contains = (text: string, query: string) =>
  pieces(text, true).includes(pieces(query, true)) || pieces(text, false).includes(pieces(query, false));

describe('what is found', () => {
  it('is everything by each of its texts, as written and as people write it', () => {
    fc.assert(
      fc.property(things, (all) => {
        const index = indexTexts(all);
        for (const { kind, thing: wanted, names, about } of all) {
          for (const text of [...names, ...about]) {
            for (const asked of [text, ` ${text.toLowerCase()} `, text.replace(/[-_ ./]/g, '')]) {
              const group = findTexts([index], asked, { most: 1000, order }).find(
                (each) => each.kind === kind,
              );
              expect(group?.first.map((hit) => hit.thing)).toContain(wanted);
            }
          }
        }
      }),
    );
  });

  it('is exactly what has the text in it, however it is asked', () => {
    fc.assert(
      fc.property(things, code, (all, asked) => {
        const wanted = all.filter(({ names, about }) =>
          [...names, ...about].some((text) => contains(text, asked)),
        );
        const found = find(all, asked);
        expect(found.reduce((sum, { count }) => sum + count, 0)).toBe(wanted.length);
        for (const { kind, count, first } of found) {
          expect(first).toHaveLength(count);
          for (const hit of first) expect(contains(hit.text ?? '', asked)).toBe(true);
          expect(count).toBe(wanted.filter((each) => each.kind === kind).length);
        }
      }),
    );
  });

  it('is told once each, however many of its texts fit', () => {
    expect(find([thing(1, 'R-14', 'R14', 'R-140')], 'r14')[0]).toMatchObject({ count: 1 });
  });

  it('is nothing for blanks, and for signs between codes alone', () => {
    expect(find([thing(1, 'R-14')], '  ')).toEqual([]);
    expect(find([thing(1, 'R-14')], '-')).toEqual([]);
    expect(find([thing(1, '--')], '--')[0]?.first[0]).toMatchObject({ thing: 1, fit: 'exact' });
  });
});

describe('leading zeros', () => {
  const slots = [thing(1, 'M1-F-014'), thing(2, 'M1-F-140'), thing(3, 'M1-F-015')];
  const askedFor = (text: string) => find(slots, text)[0]?.first.map((hit) => hit.thing);

  it('may be left out and added', () => {
    expect(askedFor('m1f14')).toEqual([1, 2]);
    expect(askedFor('m1f015')).toEqual([3]);
    expect(askedFor('M1-F-0014')).toEqual([1, 2]);
    expect(askedFor('M1-F-00140')).toEqual([2]);
  });

  it('say where a number begins: 05 is not in 15', () => {
    expect(find([thing(1, 'A15')], '05')).toEqual([]);
    expect(find([thing(1, 'A15')], '5')[0]?.count).toBe(1);
  });

  it('of a number of zeros leave one', () => {
    expect(find([thing(1, 'A-000')], 'a0')[0]?.count).toBe(1);
  });
});

describe('the order', () => {
  it('is the exact code, the same but for what does not count, beginnings, pieces', () => {
    const all = [thing(1, 'XR-14'), thing(2, 'R-140'), thing(3, 'R-0014'), thing(4, 'R-14')];
    expect(find(all, 'R-14')[0]?.first.map(({ thing: each, fit }) => [each, fit])).toEqual([
      [4, 'exact'],
      [3, 'same'],
      [2, 'start'],
      [1, 'within'],
    ]);
  });

  it('puts a thing’s own code before what is about it', () => {
    const all: Findable<Kind, number>[] = [
      { kind: 'a', thing: 1, names: ['Z'], about: ['LOT-7'] },
      { kind: 'a', thing: 2, names: ['LOT-7'], about: [] },
    ];
    expect(find(all, 'LOT-7')[0]?.first.map((hit) => [hit.thing, hit.isOwn])).toEqual([
      [2, true],
      [1, false],
    ]);
  });

  it('is the given one where nothing else tells things apart, and tells how many there are beyond the first', () => {
    const all = Array.from({ length: 20 }, (_, at) => thing(at, `R-${100 + at}`));
    const [group] = find(all, 'R-1', 8);
    expect(group?.count).toBe(20);
    expect(group?.first.map((hit) => hit.thing)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  });

  it('of kinds is by their best find', () => {
    const all: Findable<Kind, number>[] = [
      { kind: 'a', thing: 1, names: ['XR-14'], about: [] },
      { kind: 'b', thing: 2, names: ['R-14'], about: [] },
    ];
    expect(find(all, 'r14').map(({ kind }) => kind)).toEqual(['b', 'a']);
    expect(find(all, '14').map(({ kind }) => kind)).toEqual(['a', 'b']);
  });
});

describe('several indexes', () => {
  it('are searched as one', () => {
    fc.assert(
      fc.property(things, code, fc.nat(12), (all, asked, cut) => {
        const parts = [all.slice(0, cut), all.slice(cut)].map((part) => indexTexts(part));
        expect(findTexts(parts, asked, { most: 3, order })).toEqual(find(all, asked, 3));
      }),
    );
  });
});

describe('codes that are alike', () => {
  it('stay apart and are named', () => {
    const [group] = find([thing(1, 'R-14'), thing(2, 'R14'), thing(3, 'r-014'), thing(4, 'R-141')], 'R14');
    expect(group?.first.map((hit) => hit.thing)).toEqual([2, 1, 3, 4]);
    expect(group?.alike).toEqual(['R-14', 'R14', 'r-014']);
  });

  it('are none where one code is meant', () => {
    expect(find([thing(1, 'R-14'), thing(4, 'R-141')], 'r14')[0]?.alike).toEqual([]);
  });
});

describe('what leads to a thing as a whole only', () => {
  const badge: Findable<Kind, number> = {
    kind: 'a',
    thing: 1,
    names: ['Mara'],
    about: [],
    whole: ['B-2201'],
  };

  it('finds it, and is not shown', () => {
    expect(find([badge], 'B-2201')[0]?.first[0]).toMatchObject({ thing: 1, text: null });
  });

  it('does not by a piece, nor in another case', () => {
    for (const text of ['B-220', '2201', 'b-2201', 'B2201']) expect(find([badge], text)).toEqual([]);
  });
});
