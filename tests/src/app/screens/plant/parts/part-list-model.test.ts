// The plant's list of parts as the page takes it in: an empty cell changes nothing, makers are added, each entry stays small enough to be sent.

import { describe, expect, test } from 'vitest';
import { forgetReels, GONE_AFTER_MS } from '../../../../../../shared/floor/gone-reels.ts';
import type { PayloadOf } from '../../../../../../shared/floor/kinds.ts';
import type { Json } from '../../../../../../shared/log/entry.ts';
import { canonicalText } from '../../../../../../shared/log/seal.ts';
import { readPartList } from '../../../../../../shared/sheet/part-list.ts';
import { textToRows } from '../../../../../../shared/sheet/text.ts';
import { entryBytes } from '../../../../../../shared/wire/limits.ts';
import { countEntries, countedRows } from '../../../../../../src/app/screens/plant/parts/counts-model.ts';
import {
  changedFields,
  compareList,
  formEntries,
  formToPart,
  knownParts,
  listEntries,
  makersByPart,
  partAsListed,
  partForm,
} from '../../../../../../src/app/screens/plant/parts/part-list-model.ts';
import { beginStory, type Story, tellPlant } from '../../../../../shared/floor/story.ts';
import { useUp } from '../../../../../shared/verdict/gone-story.ts';

const rowsOf = (text: string) => readPartList(textToRows(text).rows).parts;

function take(story: Story, text: string): void {
  const { changed } = compareList(story.floor(), rowsOf(text));
  for (const { kind, payload } of listEntries(
    changed.map(({ part }) => part),
    'parts.csv',
  ))
    story.tell(kind, payload as never);
}

const asKnown = (story: Story, part: string) =>
  partAsListed(story.floor(), part, makersByPart(story.floor()).get(part) ?? []);

describe('a list that comes in', () => {
  test('is new at first, and changes nothing the second time', () => {
    const story = beginStory();
    const text = 'Part;Value;Package;MPN\nR-1;10k;0402;ZR-1\nR-2;22k;0402;ZR-2';
    expect(compareList(story.floor(), rowsOf(text))).toMatchObject({ fresh: 2, same: 0 });
    take(story, text);
    expect(compareList(story.floor(), rowsOf(text))).toMatchObject({ changed: [], fresh: 0, same: 2 });
  });

  test('adds makers to a part that has as many as one entry takes, and loses none', () => {
    const story = beginStory();
    const makers = (from: number) => Array.from({ length: 150 }, (_, at) => `MAKER-${from + at}`).join('|');
    take(story, `Part;MPN\nR-1;${makers(0)}`);
    take(story, `Part;MPN\nR-1;${makers(150)}`);
    expect(asKnown(story, 'R-1').makers).toHaveLength(300);
    // Saved again as it stands, nothing is withdrawn.
    const known = asKnown(story, 'R-1');
    const saved = formToPart(partForm(known));
    if ('wrong' in saved) throw new Error(saved.wrong);
    for (const { kind, payload } of formEntries(known, saved)) story.tell(kind, payload as never);
    expect(asKnown(story, 'R-1').makers).toHaveLength(300);
  });

  test('changes what it says and keeps what it does not say', () => {
    const story = beginStory();
    take(story, 'Part;Value;Package;MSL;MPN\nU-1;;LQFP-64;3;AA-1');
    const rows = rowsOf('Part;MSL;MPN\nU-1;4;BB-1');
    const { changed } = compareList(story.floor(), rows);
    expect(changed.map(changedFields)).toEqual([['msl', 'supplierParts']]);
    take(story, 'Part;MSL;MPN\nU-1;4;BB-1');
    expect(asKnown(story, 'U-1')).toMatchObject({
      package: 'LQFP-64',
      family: 'lqfp',
      pins: 64,
      msl: '4',
      makers: [
        { supplierPart: 'AA-1', product: null },
        { supplierPart: 'BB-1', product: null },
      ],
    });
  });

  test('of 2,000 parts with the longest texts goes in entries that each stay under the size of one', () => {
    const long = 'ж'.repeat(200);
    const parts = Array.from({ length: 2000 }, (_, at) => ({
      ...asKnown(beginStory(), `P-${at}`),
      description: long,
      value: long,
      tolerance: long,
      package: long,
      orientation: long,
      makers: [{ supplierPart: long, product: long }],
    }));
    const entries = listEntries(parts, 'parts.csv');
    const sizes = entries.map(({ payload }) => new TextEncoder().encode(JSON.stringify(payload)).length);
    expect(Math.max(...sizes)).toBeLessThan(entryBytes);
    const listed = entries.flatMap(({ payload }) => (payload as PayloadOf<'parts.listed'>).parts);
    expect(listed).toHaveLength(2000);
  });
});

describe('prices of a list', () => {
  const text = 'Part;Value;Price;Currency\nR-1;10k;0.012;EUR';

  test('come in entries of their own, and change nothing the second time, in whatever row another tablet has their fields', () => {
    const story = beginStory();
    const { changed } = compareList(story.floor(), rowsOf(text));
    const parts = changed.map(({ part }) => part);
    const entries = listEntries(parts, 'parts.csv');
    expect(entries.map(({ kind }) => kind)).toEqual(['parts.listed', 'parts.priced']);
    for (const { kind, payload } of entries) story.tell(kind, JSON.parse(canonicalText(payload as Json)));
    expect(compareList(story.floor(), rowsOf(text))).toMatchObject({ changed: [], same: 1 });
    expect(
      compareList(story.floor(), rowsOf(text.replace('0.012', '0.02'))).changed.map(changedFields),
    ).toEqual([['price']]);
  });

  test('are told apart by what they say, not by the row of their fields', () => {
    const price = { currency: 'EUR', each: 0.012 };
    const part = { ...asKnown(beginStory(), 'R-1'), price };
    const before = { ...part, price: { each: 0.012, currency: 'EUR' } };
    expect(changedFields({ part, before })).toEqual([]);
    expect(changedFields({ part, before: { ...before, price: { each: 0.012, currency: 'USD' } } })).toEqual([
      'price',
    ]);
  });

  test('are taken away by the form that has none any more', () => {
    const story = beginStory();
    take(story, text);
    const before = asKnown(story, 'R-1');
    const after = formToPart({ ...partForm(before), price: '', currency: '' });
    if ('wrong' in after) throw new Error(after.wrong);
    for (const { kind, payload } of formEntries(before, after)) story.tell(kind, payload as never);
    expect(story.floor().prices.size).toBe(0);
    expect(asKnown(story, 'R-1').value).toBe('10k');
  });
});

describe('a part’s form', () => {
  test('says what it was opened with', () => {
    const story = beginStory();
    take(
      story,
      'Part;Value;Tol;Package;Thickness;Body size;MPN;For product;Age\nU-1;1 µF;5 %;0603;0.8;1.6x0.8;AA-1;Lamp;24',
    );
    const part = asKnown(story, 'U-1');
    expect(formToPart(partForm(part))).toEqual(part);
  });

  test('names the field that cannot be read', () => {
    const form = partForm(asKnown(beginStory(), 'R-1'));
    expect(formToPart({ ...form, part: ' ' })).toEqual({ wrong: 'part' });
    expect(formToPart({ ...form, bodySize: '17' })).toEqual({ wrong: 'bodySize' });
    expect(formToPart({ ...form, ageMonths: 'soon' })).toEqual({ wrong: 'ageMonths' });
  });

  test('withdraws makers that were taken out of it', () => {
    const story = beginStory();
    take(story, 'Part;MPN\nR-1;ZR-1001, ZR-2001');
    const before = asKnown(story, 'R-1');
    const after = formToPart({ ...partForm(before), makers: 'ZR-2001\nZR-3001; Lamp' });
    if ('wrong' in after) throw new Error(after.wrong);
    const entries = formEntries(before, after);
    expect(entries.map(({ kind }) => kind)).toEqual(['supplier.withdrawn', 'parts.listed']);
    for (const { kind, payload } of entries) story.tell(kind, payload as never);
    expect(asKnown(story, 'R-1').makers).toEqual([
      { supplierPart: 'ZR-2001', product: null },
      { supplierPart: 'ZR-3001', product: 'Lamp' },
    ]);
  });
});

test('a maker’s number that the form narrows to one product is good for that product alone', () => {
  const story = beginStory();
  take(story, 'Part;MPN\nR-1;ZR-2001');
  const before = asKnown(story, 'R-1');
  const after = formToPart({ ...partForm(before), makers: 'ZR-2001; Lamp' });
  if ('wrong' in after) throw new Error(after.wrong);
  for (const { kind, payload } of formEntries(before, after)) story.tell(kind, payload as never);
  expect(asKnown(story, 'R-1').makers).toEqual([{ supplierPart: 'ZR-2001', product: 'Lamp' }]);
});

test('known are parts of the list, described packages and parts of setups, each once', () => {
  const story = beginStory();
  tellPlant(story);
  take(story, 'Part\nA-1\nA-2');
  const parts = knownParts(story.floor());
  expect(parts.slice(0, 2)).toEqual(['A-1', 'A-2']);
  expect(new Set(parts).size).toBe(parts.length);
});

test('of a counter’s file only known reels off the line are counted, and each row says why not', () => {
  const story = beginStory();
  const label = { supplierPart: null, lot: 'LT-1', dateCode: null, quantity: 5000, via: 'typed' as const };
  for (const reel of ['K-1', 'K-2', 'K-3'])
    story.tell('reel.put', { ...label, reel, part: 'R-100', place: 'A1' });
  story.tell('reel.counted', {
    line: null,
    slot: null,
    reel: 'K-2',
    part: 'R-100',
    lot: 'LT-1',
    quantity: 77,
    sd: 0,
    basis: 'machine',
    panels: 0,
  });
  const row = (reel: string, count: number, part = '', lot = '') => ({ row: 2, reel, count, part, lot });
  const rows = countedRows(story.floor(), [
    row('K-9', 1),
    row('K-1', 4800, 'R-100'),
    row('K-2', 77),
    row('K-3', 10, 'R-999'),
  ]);
  expect(rows.map(({ reel, is, before }) => [reel, is, before])).toEqual([
    ['K-1', 'counted', 5000],
    ['K-3', 'differs', 5000],
    ['K-9', 'unknown', null],
    ['K-2', 'same', 77],
  ]);
  for (const { kind, payload } of countEntries(story.floor(), rows)) story.tell(kind, payload as never);
  expect(story.floor().reels.get('K-1')).toMatchObject({ count: 4800, basis: 'machine', place: 'A1' });
});

test('a count of a reel that was used up long ago is taken over as of one that the log knows', () => {
  const story = beginStory();
  tellPlant(story);
  useUp(story, ['K-1', 'K-2']);
  const floor = story.floor();
  for (const nowMs of [0, GONE_AFTER_MS]) forgetReels(floor, nowMs);
  expect(floor.reels.has('K-1')).toBe(false);
  const rows = countedRows(floor, [{ row: 2, reel: 'K-1', count: 40, part: 'R-100', lot: '' }]);
  expect(rows).toMatchObject([{ is: 'counted', before: 0 }]);
  expect(countEntries(floor, rows)).toMatchObject([
    { kind: 'reel.counted', payload: { reel: 'K-1', quantity: 40 } },
  ]);
});
