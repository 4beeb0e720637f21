// Maps, sets and infinity through JSON and back: whatever a state holds comes back equal, and a state that was written otherwise is refused.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { packClosely, packValue, unpackValue } from '../../../shared/kit/pack.ts';
import { untable } from '../../../shared/kit/pack-table.ts';

const throughJson = (value: unknown, pack = packValue) =>
  unpackValue(JSON.parse(JSON.stringify(pack(value))));

/** What a state may be made of; keys that look like the mark among them. */
const { value: stateArb } = fc.letrec<{ value: unknown }>((tie) => ({
  value: fc.oneof(
    { depthSize: 'small' },
    fc.integer(),
    fc.string(),
    fc.boolean(),
    fc.constantFrom(null, Number.POSITIVE_INFINITY),
    fc.array(tie('value'), { maxLength: 4 }),
    fc
      .array(fc.tuple(fc.oneof(fc.string(), fc.integer()), tie('value')), { maxLength: 4 })
      .map((each) => new Map(each)),
    fc.array(fc.oneof(fc.string(), fc.integer()), { maxLength: 4 }).map((each) => new Set(each)),
    fc.dictionary(fc.constantFrom('a', 'of', '$', 'map'), tie('value'), { noNullPrototype: true }),
  ),
}));

/** Lists and maps long enough to stand as tables, of records with few shapes among them. */
const recordArb = fc.oneof(
  { weight: 8, arbitrary: fc.record({ id: fc.string(), $: stateArb, count: fc.integer() }) },
  { weight: 8, arbitrary: fc.record({ count: fc.integer(), id: fc.string() }) },
  { weight: 1, arbitrary: fc.constant({}) },
  { weight: 1, arbitrary: fc.constant(JSON.parse('{"__proto__": 1}')) },
);
const recordsArb = fc.oneof(
  fc.array(recordArb, { minLength: 6, maxLength: 40 }),
  fc.array(fc.oneof({ weight: 20, arbitrary: recordArb }, stateArb), { minLength: 6, maxLength: 40 }),
);

/** Each object as its fields in their order: a state that was read must be written alike. */
const inOrder = (value: unknown) => JSON.stringify(packValue(value));

describe('packClosely() and unpackValue()', () => {
  test('bring back what a state holds, records in their order and fields in theirs', () => {
    fc.assert(
      fc.property(fc.oneof(stateArb, recordsArb), (value) => {
        const back = throughJson(value, packClosely);
        expect(back).toEqual(value);
        expect(inOrder(back)).toBe(inOrder(value));
      }),
    );
    fc.assert(
      fc.property(recordsArb, (values) => {
        const map = new Map(values.map((value, at) => [`k${at}`, value]));
        expect(inOrder(throughJson(map, packClosely))).toBe(inOrder(map));
      }),
    );
  });

  test('name the fields of many records once', () => {
    const records = new Map(
      Array.from({ length: 100 }, (_, at) => [`R${at}`, { reel: `R${at}`, count: at }]),
    );
    expect(JSON.stringify(packClosely(records)).match(/count/g)).toHaveLength(1);
  });

  test.each([
    ['no list', 'x'],
    ['a record of no shape', [[['a']], [0, 1], [[[1, 2]]]]],
    ['a record whose shape is no number', [[['a']], ['0'], [[[1]]]]],
    ['too few values', [[['a', 'b']], [0, 0], [[[1, 2], [1]]]]],
    ['too many values', [[['a']], [0], [[[1, 2]]]]],
    ['a column too few', [[['a', 'b']], [0], [[[1]]]]],
    ['columns of no shape', [[['a']], [0], [[[1]], [[1]]]]],
    ['a column too many', [[['a']], [0], [[[1], [1]]]]],
    ['a field whose name is no text', [[[1]], [0], [[[1]]]]],
    ['a record of a shape between two', [[['a'], ['b']], [0.5], [[[1]], [[1]]]]],
  ])('refuse a table with %s', (_, table) => {
    expect(() => unpackValue({ $: 'rows', of: table })).toThrow(TypeError);
    expect(() => unpackValue({ $: 'records', of: [['k'], table] })).toThrow(TypeError);
  });

  test('leave out a field that is undefined, as JSON does', () => {
    const records = Array.from({ length: 20 }, (_, at) => (at % 2 ? { id: at, of: undefined } : { id: at }));
    expect(throughJson(records, packClosely)).toStrictEqual(throughJson(records));
  });

  test('refuse tables within tables that are nested deeper than can be kept', () => {
    const nested = (depth: number, close: (inner: unknown) => unknown) => {
      let value: unknown = 1;
      for (let at = 0; at < depth; at++) value = close(value);
      return value;
    };
    const rows = (inner: unknown) => ({ $: 'rows', of: [[['a']], [0], [[[inner]]]] });
    const records = (inner: unknown) => ({ $: 'records', of: [['k'], [[['a']], [0], [[[inner]]]]] });
    for (const close of [rows, records]) {
      expect(unpackValue(nested(90, close))).toBeDefined();
      expect(() => unpackValue(nested(110, close))).toThrow(TypeError);
    }
  });

  test('give a record a field of its own for any name, and change no other object', () => {
    const table = [[['__proto__', 'of']], [0], [[[{ polluted: true }], [1]]]];
    const [record] = unpackValue({ $: 'rows', of: table }) as readonly object[];
    expect(Object.keys(record ?? {})).toEqual(['__proto__', 'of']);
    expect(Object.getPrototypeOf(record)).toBe(Object.prototype);
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });

  test('make no record of a table that is not whole', () => {
    const table = [[['a']], [0, 0], [[[{ $: 'endless' }]]]];
    let made = 0;
    expect(() =>
      untable(table, (value) => {
        made += 1;
        return value;
      }),
    ).toThrow(TypeError);
    expect(made).toBe(0);
  });

  test('refuse a table with more keys than records, or none', () => {
    for (const of of [
      [
        ['k', 'l'],
        [[['a']], [0], [[[1]]]],
      ],
      [[[['a']], [0], [[[1]]]]],
      1,
    ])
      expect(() => unpackValue({ $: 'records', of })).toThrow(TypeError);
  });
});

describe('packValue() and unpackValue()', () => {
  test('bring back what a state holds', () => {
    fc.assert(
      fc.property(stateArb, (value) => {
        expect(throughJson(value)).toEqual(value);
      }),
    );
  });

  test('keep the order of maps and sets, and maps within maps', () => {
    const value = new Map([
      ['b', new Map([[2, new Set(['z', 'a'])]])],
      ['a', new Map([[1, new Set(['x'])]])],
    ]);
    const back = throughJson(value) as typeof value;
    expect([...back.keys()]).toEqual(['b', 'a']);
    expect([...(back.get('b')?.get(2) ?? [])]).toEqual(['z', 'a']);
  });

  test('take an object that looks like a marked one for what it is', () => {
    for (const value of [
      { $: 'map', of: [['a', 1]] },
      { $: 'endless' },
      { $: 'plain', of: { $: 'set', of: [] } },
    ])
      expect(throughJson(value)).toEqual(value);
  });

  test.each([
    ['a map that holds no list', { $: 'map', of: { a: 1 } }],
    ['a set that holds nothing', { $: 'set' }],
    ['a map whose items are no pairs', { $: 'map', of: [1] }],
    ['a mark that is written nowhere', { $: 'tree', of: [['a', 1]] }],
    ['a mark that is no word', { $: 1, of: [] }],
  ])('refuse %s, however deep it lies', (_, value) => {
    expect(() => unpackValue(value)).toThrow(TypeError);
    expect(() => unpackValue([{ deep: value }])).toThrow(TypeError);
  });

  test('refuse what is nested deeper than can be kept, in values and in keys', () => {
    const nested = (levels: number): unknown => JSON.parse('['.repeat(levels) + ']'.repeat(levels));
    expect(unpackValue(nested(200))).toEqual(nested(200));
    for (const value of [
      nested(201),
      nested(50_000),
      { $: 'map', of: [[nested(50_000), 1]] },
      { $: 'set', of: [nested(50_000)] },
    ])
      expect(() => unpackValue(value)).toThrow(TypeError);
  });
});
