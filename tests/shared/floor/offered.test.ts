// A setup that a machine asks for: counts when all of it is here, and reads as a sheet with all that it says.

import { describe, expect, test } from 'vitest';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { sheetOfOffer } from '../../../shared/floor/offered.ts';
import { readSheet } from '../../../shared/sheet/read.ts';
import { textToRows } from '../../../shared/sheet/text.ts';
import { beginStory, type Story, tellPlant } from './story.ts';

const wants = [
  { slot: 'M1-F-001', part: 'R-100', alternates: ['R-101', 'R-102'], suppliers: ['MK 1'] },
  { slot: 'M1-F-002', part: 'C "200"', alternates: [], suppliers: [] },
];
const offer = (story: Story, more: Partial<PayloadOf<'setup.offered'>> = {}) =>
  story.tell('setup.offered', {
    station: 'placer',
    line: 'L1',
    report: 'o1',
    page: 0,
    pages: 1,
    recipe: 'BROOK-TOP',
    revision: 'C',
    wants,
    ...more,
  });
const offered = (story: Story) => story.floor().offers.get('placer');

describe('a setup that a machine asks for', () => {
  test('is kept when all its pages are here, and changes no setup', () => {
    const story = beginStory();
    tellPlant(story);
    const before = story.floor();
    offer(story, { pages: 2, wants: wants.slice(0, 1) });
    expect(offered(story)).toBeUndefined();
    offer(story, { pages: 2, page: 1, wants: wants.slice(1) });
    expect(offered(story)).toMatchObject({ recipe: 'BROOK-TOP', rows: wants });
    offer(story, { report: 'o2', pages: 3, page: 2 });
    expect(offered(story)?.report).toBe('o1');
    offer(story, { report: 'o3', recipe: null });
    expect(offered(story)).toMatchObject({ report: 'o3', recipe: null });
    expect(story.floor().setups).toEqual(before.setups);
    expect(story.floor().chosen).toEqual(before.chosen);
  });

  test('reads as a sheet with its slots, parts, alternates and makers’ parts; placements a panel are missing and asked for', () => {
    const reading = readSheet(textToRows(sheetOfOffer({ rows: wants })).rows);
    expect(reading.columns.map(({ field }) => field)).toEqual([
      'slot',
      'part',
      'alternates',
      'supplierParts',
    ]);
    expect(
      reading.slots.map(({ slot, part, alternates, supplierParts }) => [
        slot,
        part,
        alternates,
        supplierParts,
      ]),
    ).toEqual([
      ['M1-F-001', 'R-100', ['R-101', 'R-102'], ['MK 1']],
      ['M1-F-002', 'C "200"', [], []],
    ]);
    const absent = reading.problems.filter(({ code }) => code === 'columnAbsent');
    expect(absent.map(({ facts }) => facts['wanted'])).toContain('placements per panel');
  });
});
