// What a verdict is told of hot bakes, and what the log keeps of a floor life that was judged. 96 h above 90 °C at most: J-STD-033 section 4.2,
// from memory. 168 h at level 3 by J-STD-020.

import { describe, expect, test } from 'vitest';
import {
  datedDrafts,
  floorLifeOf,
  lifeJudgedDrafts,
  lifeOnShelf,
  openedDrafts,
} from '../../../shared/desk/floor-life.ts';
import type { ReelInHand } from '../../../shared/desk/model.ts';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { SHIPPED_EDITION } from '../../../shared/moisture/values.ts';
import { beginStory, brookSetup, idOf, startMs, tellPlant, wantedSlot } from '../floor/story.ts';

const hourMs = 3_600_000;
const reel = { reel: 'K1', part: 'U-1', quantity: 10, msl: null } as const;
const asked = { act: 'load', line: 'L1', setup: 'moist', slot: 'M1-F-001', reel } as const;

/** A level 3 part whose reel lay open for 10 h, then in a bake of 125 °C for so many hours, then open again. */
function baked(hours: number, msl = '3') {
  const story = beginStory();
  tellPlant(story);
  const body = { bodyMm: 0.9, bodyXMm: 4, bodyYMm: 4, isStacked: false };
  const named = { part: 'U-1', family: 'qfn', pins: 24, msl: null, source: '' } as const;
  story.tell('part.described', { ...named, ...body });
  const slots = [wantedSlot('M1-F-001', 'U-1', { msl, alternates: ['U-2'] })];
  story.tell('setup.taken', { ...brookSetup, setup: 'moist', slots });
  story.tell('setup.chosen', { line: 'L1', setup: 'moist' });
  const air = (where: 'floor' | 'bake', hour: number) => {
    const facts = { reel: 'K1', part: 'U-1', supplierPart: null, quantity: 10, lot: null, dateCode: null };
    const heat = { celsius: where === 'bake' ? 125 : null, humidity: null };
    const from = new Date(startMs + hour * hourMs).toISOString();
    story.tell('reel.aired', { ...facts, ...heat, air: where, from, via: 'typed' }, { at: hour * 3600 });
  };
  air('floor', 0);
  air('bake', 10);
  air('floor', 10 + hours);
  return story;
}
const at = (hour: number) => startMs + hour * hourMs;

describe('hours of hot bakes', () => {
  test.each([
    [95, null],
    [96, null],
    [96.36, 96.4],
    [100, 100],
    [123.44, 123.4],
  ])('%s of them are asked about as %s', (hours, told) => {
    const floor = baked(hours).floor();
    const now = at(10 + hours + 2);
    const hot = told === null ? null : { hours: told, most: 96 };
    expect(floorLifeOf(floor, asked, now)?.hotBakes).toEqual(hot);
    expect(lifeOnShelf(floor, 'L1', now)(floor.reels.get('K1')!, 'U-1')?.hotBakes).toEqual(hot);
  });

  test('are asked about in air so dry that nothing runs out, and only they', () => {
    for (const [hours, hot] of [
      [100, { hours: 100, most: 96 }],
      [20, undefined],
    ] as const) {
      const story = baked(hours, '2a');
      story.tell('line.climate-ruled', { line: 'L1', celsius: 20, humidity: 5 });
      const life = floorLifeOf(story.floor(), asked, at(10 + hours + 2));
      expect(life?.leftSeconds ?? null).toBeNull();
      expect(life?.hotBakes).toEqual(hot);
      expect(lifeJudgedDrafts(story.floor(), asked, at(10 + hours + 2))).toEqual([]);
    }
  });
});

describe('what the log keeps of a judged floor life', () => {
  test('hours as a person reads them, the climate, and the edition that was in force', () => {
    const story = baked(23.44);
    // 2 h open since a bake that sets all back: 166 h are left of 168.
    const [draft, ...others] = lifeJudgedDrafts(story.floor(), asked, at(10 + 23.44 + 2));
    expect(others).toEqual([]);
    expect(draft?.payload).toMatchObject({
      line: 'L1',
      slot: 'M1-F-001',
      reel: 'K1',
      part: 'U-1',
      msl: '3',
      celsius: 30,
      humidity: 60,
      leftSeconds: 166 * 3600,
      hotHours: 23.4,
      edition: SHIPPED_EDITION,
      values: null,
    });
  });

  test('names the plant’s own edition where one of its values decided, and the shipped one where none did', () => {
    const own = (cell: PayloadOf<'moisture.ruled'>['lives'][number]) => {
      const story = baked(23);
      const rule = { edition: 'our copy', source: 'table 7-1', cabinetPauses: false, bakes: [] };
      const values = idOf(story.tell('moisture.ruled', { ...rule, lives: [cell] }));
      const [draft] = lifeJudgedDrafts(story.floor(), asked, at(35));
      return { values, payload: draft?.payload };
    };
    const used = own({ class: 'C', level: '3', celsius: 30, humidity: 60, days: 5 });
    // 5 days are 120 h, 2 h are gone.
    const facts = { edition: 'our copy', restsOn: 'own', values: used.values, leftSeconds: 118 * 3600 };
    expect(used.payload).toMatchObject(facts);
    const other = own({ class: 'A', level: '5', celsius: 30, humidity: 60, days: 1 });
    const shipped = { edition: SHIPPED_EDITION, values: other.values, leftSeconds: 166 * 3600 };
    expect(other.payload).toMatchObject(shipped);
    expect(other.payload).not.toMatchObject({ restsOn: 'own' });
  });
});

describe('an opened bag and a date on the label', () => {
  const inHand: ReelInHand = {
    codes: [],
    via: 'wedge',
    reel: 'K7',
    part: 'U-1',
    supplierPart: null,
    quantity: 10,
    labelQuantity: 10,
    basis: 'label',
    lot: null,
    dateCode: null,
    expires: '2026-09-01',
    msl: '3',
    questions: [],
  };

  test('an opened bag is of the part that was judged, else of the part on the label', () => {
    const { floor } = baked(1);
    const opened = (part: string | null) =>
      openedDrafts(floor(), { act: 'load', verdict: 'held', reel: inHand, part }, startMs)[0]?.payload;
    expect(opened('U-2')).toMatchObject({ reel: 'K7', part: 'U-2' });
    expect(opened(null)).toMatchObject({ reel: 'K7', part: 'U-1' });
  });

  test('the last day of use is told once, and again where another label says another day', () => {
    const story = baked(1);
    const [draft] = datedDrafts(story.floor(), inHand);
    expect(draft).toEqual({ kind: 'reel.dated', payload: { reel: 'K7', expires: '2026-09-01' } });
    if (draft?.kind === 'reel.dated') story.tell('reel.dated', draft.payload);
    expect(datedDrafts(story.floor(), inHand)).toEqual([]);
    expect(datedDrafts(story.floor(), { ...inHand, expires: '2026-08-01' })).toHaveLength(1);
    expect(datedDrafts(story.floor(), { ...inHand, expires: null })).toEqual([]);
    expect(datedDrafts(story.floor(), { ...inHand, reel: null })).toEqual([]);
  });
});
