// The store: places with an air of their own, packages cut in two and joined. Parts are kept: what is cut off and what is left add up.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blockedTapes, blockOn } from '../../../shared/floor/blocks.ts';
import { airAtPlace, whyNotMerged } from '../../../shared/floor/fold-store.ts';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { addPiece, type Made } from '../../../shared/floor/made-of.ts';
import { packageIdOf } from '../../../shared/floor/package-name.ts';
import { isOpened } from '../../../shared/floor/pick-order.ts';
import {
  beginStory,
  counted,
  idOf,
  type Story,
  started,
  startMs,
  tellPlant,
  unloaded,
  verified,
} from './story.ts';

const label = { part: 'U-1', supplierPart: null, lot: 'LT-1', dateCode: null, quantity: 1000 };

function put(story: Story, reel: string, more: Partial<PayloadOf<'reel.put'>> = {}): void {
  story.tell('reel.put', { ...label, reel, place: 'A1', via: 'typed', ...more });
}

function air(story: Story, reel: string, where: PayloadOf<'reel.aired'>['air'], second: number): void {
  story.tell('reel.aired', {
    ...label,
    reel,
    air: where,
    from: new Date(startMs + second * 1000).toISOString(),
    celsius: null,
    humidity: null,
    msl: '3',
    via: 'typed',
  });
}

function split(story: Story, reel: string, quantity: number): string {
  const count = story.floor().reels.get(reel)?.count ?? null;
  const left = count === null ? null : count - quantity;
  // The id of the entry that is about to be written names the new package.
  const into = packageIdOf(`T1/T1-life-1/${story.entries.length + 1}`);
  story.tell('reel.split', { reel, into, part: 'U-1', lot: 'LT-1', quantity, left, via: 'typed' });
  return into;
}

describe('a package that is cut', () => {
  test('has part, lot, place, date and floor life of the one that it came from, and the first keeps the rest', () => {
    const story = beginStory();
    put(story, 'K-1');
    air(story, 'K-1', 'floor', 1);
    story.tell('reel.dated', { reel: 'K-1', expires: '2027-01-31' });
    const into = split(story, 'K-1', 250);
    const floor = story.floor();
    expect(floor.reels.get(into)).toMatchObject({
      reel: into,
      part: 'U-1',
      lot: 'LT-1',
      count: 250,
      place: 'A1',
    });
    expect(floor.reels.get('K-1')).toMatchObject({ count: 750, place: 'A1' });
    expect(floor.exposures.get(into)).toEqual(floor.exposures.get('K-1'));
    expect(floor.expiries.get(into)).toBe('2027-01-31');
  });

  test('is none where the first is not known, or the id names another already', () => {
    const story = beginStory();
    put(story, 'K-1');
    put(story, 'K-2');
    const facts = { part: 'U-1', lot: 'LT-1', quantity: 10, left: 990, via: 'typed' as const };
    story.tell('reel.split', { ...facts, reel: 'K-1', into: 'K-2' });
    story.tell('reel.split', { ...facts, reel: 'K-9', into: 'K-3' });
    const floor = story.floor();
    expect(floor.reels.get('K-1')?.count).toBe(1000);
    expect(floor.reels.get('K-2')?.count).toBe(1000);
    expect(floor.reels.has('K-3')).toBe(false);
  });

  test('and joined again has all its parts, whatever was cut', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 300 }), { maxLength: 4 }), (cuts) => {
        const story = beginStory();
        put(story, 'K-1');
        const strips = cuts.filter(
          (cut, at) => cuts.slice(0, at).reduce((sum, each) => sum + each, cut) <= 1000,
        );
        const into = strips.map((cut) => split(story, 'K-1', cut));
        for (const from of into) {
          const floor = story.floor();
          const quantity = (floor.reels.get('K-1')?.count ?? 0) + (floor.reels.get(from)?.count ?? 0);
          const facts = {
            part: 'U-1',
            lot: 'LT-1',
            quantity,
            sd: 0,
            basis: 'combined',
            via: 'typed',
          } as const;
          story.tell('reel.merged', { ...facts, reel: 'K-1', from });
        }
        const floor = story.floor();
        expect(floor.reels.get('K-1')?.count).toBe(1000);
        expect(into.map((reel) => floor.reels.get(reel)?.count)).toEqual(into.map(() => 0));
      }),
      { numRuns: 20 },
    );
  });
});

describe('a reel that is blocked by its id', () => {
  const blocked = { block: 'b1', reel: 'K-1', lot: null, part: null, reason: 'bent leads' };

  test('blocks what was cut off from it and from that by who had not heard of it, until the block is lifted', () => {
    const story = beginStory();
    put(story, 'K-1');
    story.tell('material.blocked', blocked);
    const into = split(story, 'K-1', 250);
    const more = split(story, into, 50);
    put(story, 'K-2');
    const floor = story.floor();
    const on = (reel: string) => blockOn(floor, { reel, lot: 'LT-1', part: 'U-1' });
    expect([into, more, 'K-2'].map(on)).toEqual(['b1', 'b1', null]);
    story.tell('material.released', { block: 'b1', reason: 'straightened', by: 'ana' });
    expect(blockOn(story.floor(), { reel: into, lot: 'LT-1', part: 'U-1' })).toBeNull();
  });

  const blockedOf = (story: Story, reels: readonly string[]) => {
    const floor = story.floor();
    return reels.filter((reel) => blockOn(floor, { reel, lot: 'LT-1', part: 'U-1' }) !== null);
  };
  const join = (story: Story, reel: string, from: string, quantity: number, at?: number) =>
    story.tell(
      'reel.merged',
      { reel, from, part: 'U-1', lot: 'LT-1', quantity, sd: 0, basis: 'combined', via: 'typed' },
      at === undefined ? {} : { tablet: 'T2', at },
    );

  test('blocks what was cut off from it before, on the same tablet or on one that was away, also where it stands on a slot', () => {
    const story = beginStory();
    tellPlant(story);
    put(story, 'K-1');
    const into = split(story, 'K-1', 250);
    const more = split(story, into, 50);
    story.tell('material.blocked', blocked);
    expect(blockedOf(story, ['K-1', into, more])).toEqual(['K-1', into, more]);
    story.tell('reel.verified', verified('M1-F-001', 'U-1', { reel: more, lot: 'LT-1' }));
    expect(blockedTapes(story.floor(), 'L1').map(({ tape, block }) => [tape.reel, block.block])).toEqual([
      [more, 'b1'],
    ]);
  });

  test('blocks a piece whose cut is told with a later clock than the verdict on it, and one of a reel of which nothing else was told', () => {
    const story = beginStory();
    const into = packageIdOf('T2/T2-life-1/1');
    const cut = {
      reel: 'K-1',
      into,
      part: 'U-1',
      lot: 'LT-1',
      quantity: 10,
      left: null,
      via: 'typed',
    } as const;
    put(story, into);
    story.tell('reel.split', cut, { tablet: 'T2', at: 90 });
    story.tell('material.blocked', blocked, { at: 100 });
    expect(blockedOf(story, [into])).toEqual([into]);
    const alone = beginStory();
    alone.tell('material.blocked', blocked);
    alone.tell('reel.split', cut, { tablet: 'T2' });
    expect(blockedOf(alone, [into])).toEqual([into]);
    expect(alone.floor().reels.get(into)).toMatchObject({ part: 'U-1', lot: 'LT-1', count: 10 });
  });

  test.each([
    ['K-1', 'K-2'],
    ['K-2', 'K-1'],
  ])(
    'is joined by hands that had not heard of it, %s with %s: what both make is under the block in either order',
    (reel, from) => {
      for (const at of [40, 60]) {
        const story = beginStory();
        put(story, 'K-1');
        put(story, 'K-2');
        story.tell('material.blocked', blocked, { at: 50 });
        join(story, reel, from, 2000, at);
        const floor = story.floor();
        expect([floor.reels.get(reel)?.count, floor.reels.get(from)?.count]).toEqual([2000, 0]);
        expect(blockedOf(story, [reel])).toEqual([reel]);
        story.tell('material.released', { block: 'b1', reason: 'straightened', by: 'ana' });
        expect(blockedOf(story, [reel])).toEqual([]);
      }
    },
  );

  test('blocks nothing that was cut off from another before the two were joined', () => {
    const story = beginStory();
    put(story, 'K-1');
    put(story, 'K-2');
    const before = split(story, 'K-2', 100);
    join(story, 'K-2', 'K-1', 1900);
    const after = split(story, 'K-2', 100);
    story.tell('material.blocked', blocked);
    expect(blockedOf(story, [before, after, 'K-2'])).toEqual([after, 'K-2']);
  });

  test('is known by the id that it got since, to what was cut off from it before and after', () => {
    const story = beginStory();
    tellPlant(story);
    const load = story.tell('reel.verified', verified('M1-F-001', 'U-1', { reel: null, lot: 'LT-1' }));
    story.tell('reel.unloaded', unloaded('M1-F-001', { reel: null, part: 'U-1', lot: 'LT-1' }));
    const [was, reel] = [`~${idOf(load)}`, packageIdOf(idOf(load))];
    const before = split(story, was, 50);
    const named = { sd: 0, basis: 'label', via: 'typed' } as const;
    story.tell('reel.named', { ...label, ...named, reel, was });
    const after = split(story, was, 50);
    story.tell('material.blocked', { ...blocked, reel });
    expect(blockedOf(story, [before, after, reel])).toEqual([before, after, reel]);
  });

  test('is joined with none, and none with it', () => {
    const story = beginStory();
    put(story, 'K-1');
    put(story, 'K-2');
    story.tell('material.blocked', blocked);
    const floor = story.floor();
    const [one, other] = [floor.reels.get('K-1'), floor.reels.get('K-2')];
    if (!one || !other) throw new Error('both were put');
    expect(whyNotMerged(floor, one, other)).toBe('blocked');
    expect(whyNotMerged(floor, other, one)).toBe('blocked');
  });
});

describe('a reel that came off uncounted', () => {
  function cameOff(): Story {
    const story = beginStory();
    tellPlant(story);
    story.tell('run.started', started('run-1'));
    const facts = { reel: 'K-1', quantity: 1000, lot: 'LT-1', run: 'run-1' };
    story.tell('reel.verified', verified('M1-F-001', 'R-100', facts));
    story.tell('panels.counted', counted('run-1', 100));
    story.tell(
      'reel.unloaded',
      unloaded('M1-F-001', { reel: 'K-1', run: 'run-1', quantity: null, panels: 100 }),
    );
    return story;
  }
  const countOff = (story: Story, quantity: number) =>
    story.tell('reel.counted', {
      line: 'L1',
      slot: null,
      reel: 'K-1',
      part: 'R-100',
      lot: 'LT-1',
      quantity,
      sd: 0,
      basis: 'typed',
      panels: 0,
    });

  test('shows its loss when it is counted, and none once a part of it was cut off', () => {
    const whole = cameOff();
    countOff(whole, 790);
    expect(whole.floor().finished.get('R-100')).toHaveLength(1);
    const cut = cameOff();
    split(cut, 'K-1', 300);
    countOff(cut, 490);
    expect(cut.floor().finished.get('R-100') ?? []).toEqual([]);
    const first = cut.floor().reels.get('K-1');
    expect(first && isOpened(first)).toBe(true);
  });

  test('shows none once another was joined to it', () => {
    const story = cameOff();
    const into = split(story, 'K-1', 300);
    const facts = { part: 'R-100', lot: 'LT-1', sd: 0, basis: 'combined', via: 'typed' } as const;
    story.tell('reel.merged', { ...facts, reel: 'K-1', from: into, quantity: 800 });
    countOff(story, 790);
    expect(story.floor().finished.get('R-100') ?? []).toEqual([]);
  });
});

describe('two packages', () => {
  test('are joined only off the line, of one part, lot and date, with no floor life of their own', () => {
    const story = beginStory();
    put(story, 'K-1');
    put(story, 'K-2');
    put(story, 'K-3', { lot: 'LT-2' });
    put(story, 'K-4', { part: 'U-2' });
    put(story, 'K-5', { dateCode: '2610' });
    put(story, 'K-6');
    air(story, 'K-6', 'floor', 1);
    const floor = story.floor();
    const why = (reel: string) => {
      const [kept, gone] = [floor.reels.get('K-1'), floor.reels.get(reel)];
      return kept && gone ? whyNotMerged(floor, kept, gone) : 'unknown';
    };
    expect(['K-1', 'K-2', 'K-3', 'K-4', 'K-5', 'K-6'].map(why)).toEqual([
      'same',
      null,
      'other-lot',
      'other-part',
      'other-lot',
      'opened',
    ]);
    const facts = {
      part: 'U-1',
      lot: 'LT-1',
      quantity: 2000,
      sd: 0,
      basis: 'combined',
      via: 'typed',
    } as const;
    // What another tablet wrote against that changes nothing.
    story.tell('reel.merged', { ...facts, reel: 'K-1', from: 'K-3' });
    expect(story.floor().reels.get('K-3')?.count).toBe(1000);
  });
});

describe('the air at a place', () => {
  const describe_ = (story: Story, place: string, where: PayloadOf<'place.described'>['air']) =>
    story.tell('place.described', { place, air: where, celsius: null, humidity: where === 'dry' ? 5 : null });

  test('counts for an opened reel that is put there, once; a closed bag keeps its air', () => {
    const story = beginStory();
    describe_(story, 'DRY', 'dry');
    put(story, 'K-1');
    put(story, 'K-2');
    air(story, 'K-1', 'floor', 1);
    expect(airAtPlace(story.floor(), 'K-1', 'DRY')).toEqual({ air: 'dry', celsius: null, humidity: 5 });
    expect(airAtPlace(story.floor(), 'K-2', 'DRY')).toBeNull();
    expect(airAtPlace(story.floor(), 'K-1', 'A2')).toBeNull();
  });

  test('ends where the reel leaves the cabinet for a shelf, and goes on from cabinet to cabinet', () => {
    const story = beginStory();
    describe_(story, 'DRY', 'dry');
    describe_(story, 'OVEN', 'bake');
    put(story, 'K-1');
    air(story, 'K-1', 'floor', 1);
    put(story, 'K-1', { place: 'DRY' });
    air(story, 'K-1', 'dry', 10);
    expect(airAtPlace(story.floor(), 'K-1', 'A2')?.air).toBe('floor');
    expect(airAtPlace(story.floor(), 'K-1', 'OVEN')?.air).toBe('bake');
    // A shelf again: it says nothing any more.
    describe_(story, 'DRY', null);
    expect(story.floor().placeAirs.has('DRY')).toBe(false);
    expect(airAtPlace(story.floor(), 'K-1', 'A2')).toBeNull();
  });
});

test('entries have the ids by which new packages are named', () => {
  const story = beginStory();
  put(story, 'K-1');
  const into = split(story, 'K-1', 10);
  const last = story.entries.at(-1);
  expect(last && packageIdOf(idOf(last))).toBe(into);
});

test('a cut of a new piece looks at no other package, however many were cut before', () => {
  let looks = 0;
  class Watched<K, V> extends Map<K, V> {
    override *[Symbol.iterator]() {
      for (const each of this.entries()) {
        looks += 1;
        yield each;
      }
      return undefined;
    }
  }
  const state = { madeOf: new Watched<string, Made>() };
  for (let piece = 0; piece < 50; piece++) addPiece(state, `P-${piece}`, `K-${piece % 7}`);
  expect(looks).toBe(0);
  // One that was named before it was told to be a piece is looked for in all.
  addPiece(state, 'K-3', 'S');
  expect(looks).toBeGreaterThan(50);
  expect(state.madeOf.get('P-3')?.all).toEqual(expect.arrayContaining(['K-3', 'S', 'P-3']));
});
