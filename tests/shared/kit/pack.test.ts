// Maps, sets and infinity through JSON and back: whatever a state holds comes back equal, and a state that was written otherwise is refused.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { packValue, unpackValue } from '../../../shared/kit/pack.ts';

const throughJson = (value: unknown) => unpackValue(JSON.parse(JSON.stringify(packValue(value))));

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
