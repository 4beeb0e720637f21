import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  chooseColumn,
  columnsToMap,
  headerKey,
  keepChoice,
  keptToMap,
  mapToKept,
} from '../../../shared/sheet/choice.ts';
import { type SheetField, sheetFields, sheetHeaderWords } from '../../../shared/sheet/fields.ts';
import { guessColumns, type SheetColumn } from '../../../shared/sheet/headers.ts';

const columns: readonly SheetColumn<SheetField>[] = [
  { index: 0, header: 'Address', field: 'slot' },
  { index: 1, header: 'Item', field: 'part' },
  { index: 2, header: 'Alt 1', field: 'alternates' },
  { index: 3, header: 'Alt 2', field: null },
];

describe('chooseColumn()', () => {
  test('moves a field that takes one column', () => {
    expect(chooseColumn(columns, 3, 'part').map(({ field }) => field)).toEqual([
      'slot',
      null,
      'alternates',
      'part',
    ]);
  });

  test('adds a column to a field that takes several', () => {
    const chosen = chooseColumn(columns, 3, 'alternates').map(({ field }) => field);
    expect(chosen).toEqual(['slot', 'part', 'alternates', 'alternates']);
  });

  test('sets a column aside', () => {
    expect(chooseColumn(columns, 0, null)[0]?.field).toBeNull();
  });
});

test('`columnsToMap()` names every field, so that nothing is guessed beside the choice', () => {
  const map = columnsToMap(columns, sheetFields);
  expect(Object.keys(map)).toHaveLength(sheetFields.length);
  expect(map).toMatchObject({ slot: ['Address'], alternates: ['Alt 1'], perPanel: null });
});

test('a choice that is kept and found again reads the columns as they were chosen', () => {
  const fields = fc.array(fc.constantFrom<SheetField | null>(null, ...sheetFields), {
    minLength: 3,
    maxLength: 9,
  });
  fc.assert(
    fc.property(fields, (chosen) => {
      const headers = chosen.map((_, index) => `Head ${String.fromCharCode(65 + index)}`);
      let shown: readonly SheetColumn<SheetField>[] = headers.map((header, index) => ({
        index,
        header,
        field: null,
      }));
      for (const [index, field] of chosen.entries()) shown = chooseColumn(shown, index, field);
      const map = keptToMap(mapToKept(columnsToMap(shown, sheetFields)), sheetFields);
      const again = guessColumns([headers], sheetHeaderWords, map);
      expect(again.columns.map(({ field }) => field)).toEqual(shown.map(({ field }) => field));
      expect(again.notFound).toEqual([]);
    }),
  );
});

test('`mapToKept()` writes several headers on lines of their own, and none for no column', () => {
  expect(mapToKept({ slot: 'A', alternates: ['B', 'C'], part: null })).toEqual({
    slot: 'A',
    alternates: 'B\nC',
    part: '',
  });
});

test('`keptToMap()` leaves out what it does not know and guesses what is not named', () => {
  expect(keptToMap({ slot: 'A', other: 'B', part: '' }, sheetFields)).toEqual({ slot: ['A'], part: null });
});

test('`headerKey()` is the same whatever the case, and another for another order', () => {
  const key = (...headers: string[]) => headerKey(headers.map((header) => ({ header })));
  expect(key('Slot', 'Part')).toBe(key('SLOT', 'part'));
  expect(key('Slot', 'Part')).not.toBe(key('Part', 'Slot'));
});

test('`keepChoice()` keeps the newest and drops the oldest', () => {
  let choices = {};
  for (const key of ['a', 'b', 'a', 'c']) choices = keepChoice(choices, { key, kept: { slot: key } }, 2);
  expect(choices).toEqual({ a: { slot: 'a' }, c: { slot: 'c' } });
  for (let at = 0; at < 41; at++) choices = keepChoice(choices, { key: `k${at}`, kept: {} });
  expect([Object.keys(choices).length, Object.keys(choices)[0]]).toEqual([40, 'k1']);
});
