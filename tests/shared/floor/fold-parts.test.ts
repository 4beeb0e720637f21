// The plant's list of parts: packages, makers and age limits from it are those that everything else asks for.

import { describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import { ageLimitOf } from '../../../shared/floor/age-limit.ts';
import { type PayloadOf, schemaOf } from '../../../shared/floor/kinds.ts';
import { makerKey } from '../../../shared/floor/maker-lists.ts';
import { isApprovedMaker } from '../../../shared/floor/makers.ts';
import { copyForPractice } from '../../../shared/floor/practice-copy.ts';
import { beginStory, brookSetup, type Story, tellPlant } from './story.ts';

type Listed = PayloadOf<'parts.listed'>['parts'][number];

const blank: Omit<Listed, 'part'> = {
  description: null,
  value: null,
  tolerance: null,
  package: null,
  family: null,
  pins: null,
  bodyMm: null,
  bodyXMm: null,
  bodyYMm: null,
  msl: null,
  comesIn: null,
  tapeWidthMm: null,
  pitchMm: null,
  ageMonths: null,
  orientation: null,
  makers: [],
};
const exactly = { ignoreCase: false, ignoreSpaces: false, ignoreDashes: false, packingSuffixes: [] };

function list(story: Story, ...parts: readonly (Partial<Listed> & { readonly part: string })[]): void {
  story.tell('parts.listed', { source: 'parts.csv', parts: parts.map((part) => ({ ...blank, ...part })) });
}

describe('a listed part', () => {
  test('has its package where floor life asks for it; stacked dies stay as a person said', () => {
    const story = beginStory();
    const known = { family: null, pins: null, bodyMm: null, bodyXMm: null, bodyYMm: null, msl: null };
    story.tell('part.described', { part: 'U-1', ...known, isStacked: true, source: 'hand' });
    list(story, { part: 'U-1', family: 'bga', pins: 256, bodyMm: 1.4, bodyXMm: 17, bodyYMm: 17, msl: '3' });
    expect(story.floor().parts.get('U-1')).toEqual({
      part: 'U-1',
      family: 'bga',
      pins: 256,
      bodyMm: 1.4,
      bodyXMm: 17,
      bodyYMm: 17,
      msl: '3',
      isStacked: true,
      source: 'parts.csv',
    });
  });

  test('of which the list says no package is none to describe', () => {
    const story = beginStory();
    list(story, { part: 'R-1', value: '10k' });
    expect(story.floor().parts.has('R-1')).toBe(false);
    expect(story.floor().listed.get('R-1')).toMatchObject({ value: '10k', source: 'parts.csv' });
  });

  test('is replaced whole by a newer entry, and gone once taken off; its approvals stay', () => {
    const story = beginStory();
    list(story, { part: 'R-1', value: '10k', makers: [{ supplierPart: 'ZR-1', product: null }] });
    list(story, { part: 'R-1', description: 'Resistor' });
    expect(story.floor().listed.get('R-1')).toMatchObject({ value: null, description: 'Resistor' });
    story.tell('part.unlisted', { part: 'R-1', reason: 'not used' });
    const floor = story.floor();
    expect(floor.listed.has('R-1')).toBe(false);
    expect(floor.approvedByHand.get('ZR-1')).toEqual(['R-1']);
  });

  test('has the picture that came last, or none', () => {
    const story = beginStory();
    const picture = 'data:image/png;base64,AAAA';
    story.tell('part.pictured', { part: 'R-1', picture });
    expect(story.floor().pictures.get('R-1')).toBe(picture);
    story.tell('part.pictured', { part: 'R-1', picture: null });
    expect(story.floor().pictures.size).toBe(0);
  });
});

describe('prices', () => {
  const price = (story: Story, part: string, each: number | null) =>
    story.tell('parts.priced', {
      source: 'prices.csv',
      parts: [{ part, price: each === null ? null : { each, currency: 'EUR' } }],
    });

  test('stand apart from the list, whose entries an older tablet reads whole: an entry of the list has none, and takes none away', () => {
    const story = beginStory();
    const withPrice = { ...blank, part: 'R-1', price: { each: 1, currency: null } };
    const told = { source: 'parts.csv', parts: [withPrice] };
    expect(z.safeParse(schemaOf('parts.listed'), told).success).toBe(false);
    list(story, { part: 'R-1', value: '10k' });
    price(story, 'R-1', 0.012);
    list(story, { part: 'R-1', value: '11k' });
    expect(story.floor().prices.get('R-1')).toEqual({ each: 0.012, currency: 'EUR', source: 'prices.csv' });
  });

  test('are replaced, taken away, and gone with the part', () => {
    const story = beginStory();
    price(story, 'R-1', 0.012);
    price(story, 'R-1', 0.014);
    price(story, 'R-2', 3);
    price(story, 'R-3', 4);
    price(story, 'R-3', null);
    story.tell('part.unlisted', { part: 'R-2', reason: 'not used' });
    const { prices } = story.floor();
    expect([...prices].map(([part, { each }]) => [part, each])).toEqual([['R-1', 0.014]]);
  });
});

describe('makers of the list', () => {
  const setupOf = (setup: string, product: string): PayloadOf<'setup.taken'> => ({
    ...brookSetup,
    setup,
    product,
    slots: [
      {
        slot: 'F-1',
        part: 'R-1',
        perPanel: 1,
        tapeWidthMm: 8,
        pitchMm: 4,
        positions: 1,
        alternates: [],
        supplierParts: [],
      },
    ],
  });
  const approved = (story: Story, setup: string, supplierPart: string) =>
    isApprovedMaker(story.floor(), setup, { part: 'R-1', supplierPart }, exactly);

  test('for one product count there alone, also in a setup taken in later', () => {
    const story = beginStory();
    story.tell('setup.taken', setupOf('S1', 'Lamp'));
    list(story, {
      part: 'R-1',
      makers: [
        { supplierPart: 'ZR-1', product: 'Lamp' },
        { supplierPart: 'OKR-1', product: null },
      ],
    });
    story.tell('setup.taken', setupOf('S2', 'Lamp'));
    story.tell('setup.taken', setupOf('S3', 'Clock'));
    expect(['S1', 'S2', 'S3'].map((setup) => approved(story, setup, 'ZR-1'))).toEqual([true, true, false]);
    // A product with a list of its own is approved by nothing else.
    expect(['S1', 'S2', 'S3'].map((setup) => approved(story, setup, 'OKR-1'))).toEqual([false, false, true]);
  });

  test('withdrawn are withdrawn everywhere, until the list approves them anew', () => {
    const story = beginStory();
    const makers = [
      { supplierPart: 'ZR-1', product: 'Lamp' },
      { supplierPart: 'ZR-2', product: 'Lamp' },
    ];
    story.tell('setup.taken', setupOf('S1', 'Lamp'));
    list(story, { part: 'R-1', makers });
    story.tell('supplier.withdrawn', { supplierPart: 'ZR-1', part: 'R-1' });
    story.tell('setup.taken', setupOf('S2', 'Lamp'));
    expect(['S1', 'S2'].map((setup) => approved(story, setup, 'ZR-1'))).toEqual([false, false]);
    expect(approved(story, 'S2', 'ZR-2')).toBe(true);
    list(story, { part: 'R-1', makers });
    expect(['S1', 'S2'].map((setup) => approved(story, setup, 'ZR-1'))).toEqual([true, true]);
  });
});

describe('the age limit of the list', () => {
  test('counts before a class of the line; a rule for the very part before both', () => {
    const story = beginStory();
    story.tell('line.age-ruled', {
      line: 'L1',
      limits: [
        { begins: 'R-', months: 36 },
        { begins: 'R-2', months: 12 },
      ],
    });
    list(story, { part: 'R-1', ageMonths: 24 }, { part: 'R-2', ageMonths: 24 }, { part: 'R-3' });
    const floor = story.floor();
    expect(['R-1', 'R-2', 'R-3', 'C-1'].map((part) => ageLimitOf(floor, 'L1', part))).toEqual([
      24,
      12,
      36,
      null,
    ]);
    expect(ageLimitOf(floor, 'L2', 'R-1')).toBe(24);
  });
});

test('a practice floor has the list too', () => {
  const story = beginStory();
  tellPlant(story);
  list(story, { part: 'R-1', value: '10k', msl: '3', makers: [{ supplierPart: 'ZR-1', product: 'Lamp' }] });
  story.tell('parts.priced', {
    source: 'p.csv',
    parts: [{ part: 'R-1', price: { each: 2, currency: null } }],
  });
  const copy = beginStory();
  for (const { kind, payload } of copyForPractice(story.floor(), 'L1')) copy.tell(kind, payload as never);
  expect(copy.floor().listed.get('R-1')).toMatchObject({ value: '10k' });
  expect(copy.floor().prices).toEqual(story.floor().prices);
  expect(copy.floor().parts.get('R-1')?.msl).toBe('3');
  expect(copy.floor().productMakers.get(makerKey('Lamp', 'R-1'))).toEqual(['ZR-1']);
});
