// A plant's own values: they stand in for the shipped cells, each answer says on what it rests, and the log keeps what was in force. Shipped cells are
// those of J-STD-033; "compared" are those that were seen in published copies.

import { describe, expect, test } from 'vitest';
import { lifeJudgedDrafts } from '../../../shared/desk/floor-life.ts';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { entryId } from '../../../shared/log/entry.ts';
import { bakeCell } from '../../../shared/moisture/bake.ts';
import { tableCell } from '../../../shared/moisture/derating.ts';
import { moistureOfSlot, moistureRuling, reelLife } from '../../../shared/moisture/reel-life.ts';
import { beginStory, startMs, tellPlant, wantedSlot } from '../floor/story.ts';

const hourMs = 3_600_000;
const slot = 'M1-F-001';
const lives = [{ class: 'C', level: '3', celsius: 30, humidity: 60, days: 5 }] as const;
const bakes = [{ body: 'thin', level: '3', celsius: 125, isLong: false, hours: 12 }] as const;
const ruled = (more: Partial<PayloadOf<'moisture.ruled'>> = {}): PayloadOf<'moisture.ruled'> => ({
  edition: 'our copy',
  source: 'table 7-1',
  cabinetPauses: false,
  lives: [...lives],
  bakes: [...bakes],
  ...more,
});
const described = (more: Partial<PayloadOf<'part.described'>> = {}): PayloadOf<'part.described'> => ({
  part: 'U-1',
  family: 'qfn',
  pins: 24,
  bodyMm: 0.9,
  bodyXMm: 4,
  bodyYMm: 4,
  isStacked: false,
  msl: null,
  source: '',
  ...more,
});

function told(more: Partial<PayloadOf<'part.described'>> = {}, rules?: Partial<PayloadOf<'moisture.ruled'>>) {
  const story = beginStory();
  tellPlant(story);
  story.tell('part.described', described(more));
  if (rules) story.tell('moisture.ruled', ruled(rules));
  const wanted = wantedSlot(slot, 'U-1', { msl: '3' });
  const setup = {
    setup: 'moist',
    product: 'Brook',
    side: 'top',
    revision: 'B',
    line: 'L1',
    source: '',
  } as const;
  story.tell('setup.taken', { ...setup, slots: [wanted] });
  const air = (where: 'floor' | 'dry' | 'bake', hour: number, celsius: number | null = null) =>
    story.tell(
      'reel.aired',
      {
        reel: 'K1',
        part: 'U-1',
        supplierPart: null,
        quantity: 9,
        lot: null,
        dateCode: null,
        air: where,
        from: new Date(startMs + hour * hourMs).toISOString(),
        celsius,
        humidity: where === 'dry' ? 5 : null,
        via: 'typed' as const,
      },
      { at: hour * 3600 },
    );
  const life = (hour: number) =>
    reelLife(story.floor(), 'K1', {
      line: 'L1',
      part: moistureOfSlot(story.floor(), wanted, null),
      nowMs: startMs + hour * hourMs,
    });
  return { story, air, life };
}

describe('cells', () => {
  const at = { celsius: 30, humidity: 60 } as const;
  const own = { lives: new Map([['C 3 30 60', 5]]), bakes: new Map([['thin 3 125 short', 12]]) };

  test('of the floor-life table say on what they rest', () => {
    expect(tableCell('3', 'A', at)).toEqual({ days: 7, source: 'copy' });
    expect(tableCell('3', 'C', at)).toEqual({ days: 7, source: 'copy' });
    expect(tableCell('3', 'B', at)).toEqual({ days: 7, source: 'copy' });
    expect(tableCell('3', 'B', { ...at, celsius: 25 })).toEqual({ days: 9, source: 'memory' });
    expect(tableCell('3', 'C', at, own)).toEqual({ days: 5, source: 'own' });
    expect(tableCell('4', 'C', at, own)).toEqual({ days: 3, source: 'memory' });
  });

  test('of the bake table too', () => {
    const cell = { celsius: 125, isLong: false } as const;
    expect(bakeCell('thin', '3', cell)).toEqual({ hours: 7, source: 'copy' });
    expect(bakeCell('thin', '2a', cell)).toEqual({ hours: 5, source: 'memory' });
    expect(bakeCell('thin', '3', cell, own)).toEqual({ hours: 12, source: 'own' });
    expect(bakeCell('large', '3', cell)).toEqual({ hours: 96, source: 'memory' });
    expect(bakeCell('large', '3', { celsius: 40, isLong: false })).toBeNull();
  });
});

describe('a reel', () => {
  test('has the life of the plant’s own cell, and its bake is held to the plant’s own hours', () => {
    const { air, life } = told({}, {});
    air('floor', 0);
    expect(life(20)).toMatchObject({ leftSeconds: 100 * 3600, source: 'own', packageClasses: ['C'] });
    air('bake', 130, 125);
    air('floor', 141);
    expect(life(142)).toMatchObject({
      leftSeconds: 0,
      shortBake: { hours: 11, celsius: 125, wanted: 12, source: 'own' },
    });
    air('bake', 150, 125);
    air('floor', 162);
    expect(life(163)).toMatchObject({ leftSeconds: 119 * 3600, shortBake: null, hotBakeHours: 23 });
  });

  test('of level 4 stands still in a 5 % cabinet only where the plant’s edition says so', () => {
    const left = (cabinetPauses: boolean) => {
      const { air, life } = told({ msl: '4' }, { cabinetPauses, lives: [], bakes: [] });
      air('floor', 0);
      air('dry', 10);
      return life(40)?.leftSeconds;
    };
    expect([left(false), left(true)]).toEqual([32 * 3600, 62 * 3600]);
  });

  test('of level 6 has the hours of its label from the end of its bake, also in a cabinet', () => {
    const { story, air, life } = told({ msl: '6' });
    air('bake', 0, 125);
    air('floor', 60);
    expect(life(61)).toMatchObject({ leftSeconds: 0, wantsLabelTime: true });
    story.tell('reel.timed', { reel: 'K1', hours: 6 }, { at: 61 * 3600 });
    expect(life(61)).toMatchObject({ leftSeconds: 5 * 3600, wantsLabelTime: false });
    air('dry', 62);
    expect(life(65)).toMatchObject({ leftSeconds: 3600 });
  });

  test('of level 6 is not opened by a short bake', () => {
    const { story, air, life } = told({ msl: '6' });
    story.tell('reel.timed', { reel: 'K1', hours: 6 });
    air('bake', 0, 40);
    air('floor', 1);
    expect(life(2)).toMatchObject({ leftSeconds: 0, shortBake: { hours: 1, celsius: 40, wanted: 240 } });
  });
});

test('an alternate without a described package counts as the worst, not as its part', () => {
  const { story } = told();
  const wanted = wantedSlot(slot, 'U-1', { msl: '3', alternates: ['U-9'] });
  expect(moistureOfSlot(story.floor(), wanted, null)?.package?.family).toBe('qfn');
  expect(moistureOfSlot(story.floor(), wanted, 'U-9')?.package?.family).toBeNull();
});

test('beside a verdict the log keeps level, classes, climate, and which values were in force', () => {
  const asked = (story: ReturnType<typeof told>['story']) =>
    lifeJudgedDrafts(
      story.floor(),
      {
        act: 'load',
        line: 'L1',
        setup: 'moist',
        slot,
        reel: { reel: 'K1', part: 'U-1', quantity: 9, msl: null },
      },
      startMs + hourMs,
    )[0]?.payload;
  const plain = told();
  plain.air('floor', 0);
  expect(asked(plain.story)).toMatchObject({
    line: 'L1',
    slot,
    reel: 'K1',
    part: 'U-1',
    msl: '3',
    packageClass: 'C',
    leftSeconds: 167 * 3600,
    celsius: 30,
    humidity: 60,
    hotHours: 0,
    restsOn: 'copy',
    values: null,
  });
  const own = told({}, {});
  own.air('floor', 0);
  expect(asked(own.story)).toMatchObject({
    leftSeconds: 119 * 3600,
    restsOn: 'own',
    edition: 'our copy',
    values: moistureRuling(own.story.floor())?.entry,
  });
});

test('a time on a label that is taken back was never told', () => {
  const { story } = told({ msl: '6' });
  const of = entryId(story.tell('reel.timed', { reel: 'K1', hours: 6 }));
  expect(story.floor().labelTimes.get('K1')?.hours).toBe(6);
  story.tell('entry.corrected', { of, line: null, slot: null, reason: 'typed wrong' });
  expect(story.floor().labelTimes.has('K1')).toBe(false);
});
