// What a reel's floor life rests on: the parts list and the setups, the time on a level 6 label, and its newest bake where that was too short.
// Bakes by J-STD-033: a level 3 body above 2 mm wants 8 days at 90 °C.

import { describe, expect, test } from 'vitest';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import {
  bakeLet,
  moistureOfParts,
  moistureOfSlot,
  openBake,
  packageOf,
  reelLife,
} from '../../../shared/moisture/reel-life.ts';
import { beginStory, brookSetup, idOf, type Story, startMs, tellPlant, wantedSlot } from '../floor/story.ts';

const hourMs = 3_600_000;
const level3 = { level: '3', bodyMm: null } as const;

function describePart(story: Story, part: string, more: Partial<PayloadOf<'part.described'>> = {}) {
  const unknown = { family: null, pins: null, bodyMm: null, bodyXMm: null, bodyYMm: null, isStacked: null };
  story.tell('part.described', { part, ...unknown, msl: null, source: '', ...more });
}

function takeSetup(story: Story, setup: string, slots: readonly ReturnType<typeof wantedSlot>[]) {
  story.tell('setup.taken', { ...brookSetup, setup, slots: [...slots] });
}

/** A reel of level 3 whose stays are told in hours from the start. */
function aired() {
  const story = beginStory();
  tellPlant(story);
  const air = (where: 'floor' | 'bake', hour: number) =>
    idOf(
      story.tell(
        'reel.aired',
        {
          reel: 'K1',
          part: 'R-100',
          supplierPart: null,
          quantity: 100,
          lot: null,
          dateCode: null,
          air: where,
          from: new Date(startMs + hour * hourMs).toISOString(),
          celsius: where === 'bake' ? 90 : null,
          humidity: null,
          via: 'typed',
        },
        { at: Math.round(hour * 3600) },
      ),
    );
  const approve = (of: string, hours: number, hour: number) =>
    story.tell(
      'bake.approved',
      {
        reel: 'K1',
        line: 'L1',
        of,
        hours,
        celsius: 90,
        reason: 'maker’s sheet',
        by: 'lea',
        checked: 'tablet',
      },
      { at: hour * 3600 },
    );
  const at = (hour: number) => {
    const nowMs = startMs + hour * hourMs;
    const life = reelLife(story.floor(), 'K1', { line: 'L1', part: level3, nowMs });
    const exposure = story.floor().exposures.get('K1');
    return { life, open: openBake(exposure, life, nowMs), word: bakeLet(exposure, life, nowMs) };
  };
  return { story, air, approve, at };
}

describe('a bake that was too short', () => {
  test('is open from the moment it ends, with its own entry, and not while the reel is in the oven', () => {
    const { air, at } = aired();
    air('floor', 0);
    const bake = air('bake', 170);
    air('floor', 180);
    expect(at(179).open).toBeNull();
    expect(at(180).open).toMatchObject({ of: bake, hours: 10, wanted: 8 * 24 });
    expect(at(185).word).toBeNull();
  });

  test('counts by the word of a lead, and a bake long enough needs none', () => {
    const { air, approve, at } = aired();
    air('floor', 0);
    const bake = air('bake', 170);
    air('floor', 180);
    approve(bake, 10, 183);
    expect(at(184)).toMatchObject({
      open: null,
      word: { by: 'lea', hours: 10 },
      life: { leftSeconds: 164 * 3600 },
    });
    air('bake', 185);
    air('floor', 185 + 8 * 24);
    expect(at(380)).toMatchObject({ open: null, word: null });
  });

  test('is the newest one, whatever became of those before', () => {
    const { air, approve, at } = aired();
    air('floor', 0);
    const first = air('bake', 170);
    air('floor', 180);
    approve(first, 10, 181);
    const second = air('bake', 360);
    air('floor', 364);
    expect(at(365).open).toMatchObject({ of: second, hours: 4 });
    expect(at(365).word).toBeNull();
  });

  test('keeps its word where rounding took seconds off it, and loses it where it was a minute shorter', () => {
    for (const [short, left] of [
      [20, 168 * 3600 - 3600],
      [60, 0],
    ] as const) {
      const { air, approve, at } = aired();
      air('floor', 0);
      const bake = air('bake', 170);
      air('floor', 180 - short / 3600);
      approve(bake, 10, 181);
      const { life } = at(181 - short / 3600);
      expect(life?.leftSeconds, `${short} s shorter`).toBeCloseTo(left, 3);
    }
  });

  test('of a reel that the log does not know, or whose part has no limit, is none', () => {
    const { air, at } = aired();
    air('floor', 0);
    expect(at(200)).toMatchObject({ open: null, word: null });
    expect(openBake(undefined, null, startMs)).toBeNull();
    expect(bakeLet(undefined, null, startMs)).toBeNull();
  });
});

describe('what is known of a part', () => {
  test('is the body of the parts list before that of a setup, and the worse of both levels', () => {
    const story = beginStory();
    describePart(story, 'U-1', { bodyMm: 0.9, msl: '3' });
    const of = (more: Parameters<typeof wantedSlot>[2]) =>
      moistureOfSlot(story.floor(), wantedSlot('M1-F-001', 'U-1', more), null);
    expect(of({ msl: '2a', bodyMm: 2 })).toMatchObject({ level: '3', bodyMm: 0.9 });
    expect(of({ msl: '4', bodyMm: 2 })).toMatchObject({ level: '4', bodyMm: 0.9 });
    expect(of({})).toMatchObject({ level: '3', bodyMm: 0.9 });
  });

  test('has a body only where both its length and its width are known', () => {
    const known = {
      part: 'U-1',
      family: 'qfn',
      pins: 24,
      bodyMm: 0.9,
      isStacked: false,
      msl: null,
      source: '',
    } as const;
    expect(packageOf({ ...known, bodyXMm: 4, bodyYMm: 5 })).toEqual({
      family: 'qfn',
      pins: 24,
      isStacked: false,
      bodyMm: [4, 5],
    });
    expect(packageOf({ ...known, bodyXMm: 4, bodyYMm: null }).bodyMm).toBeNull();
    expect(packageOf({ ...known, bodyXMm: null, bodyYMm: 5 }).bodyMm).toBeNull();
    expect(packageOf(undefined)).toEqual({ family: null, pins: null, bodyMm: null, isStacked: null });
  });

  test('over all setups: parts that only the list knows are there, those at level 1 are not, and an alternate has its own package', () => {
    const story = beginStory();
    tellPlant(story);
    describePart(story, 'U-list', { msl: '2a', bodyMm: 1.2 });
    describePart(story, 'U-2', { family: 'bga', msl: null });
    takeSetup(story, 'a', [
      wantedSlot('M1-F-001', 'U-1', { msl: '3', bodyMm: 2, alternates: ['U-2'] }),
      wantedSlot('M1-F-002', 'R-1', { msl: '1', bodyMm: 2 }),
    ]);
    const parts = moistureOfParts(story.floor());
    expect(parts.get('U-list')).toMatchObject({ level: '2a', bodyMm: 1.2 });
    expect(parts.get('U-1')).toMatchObject({ level: '3', bodyMm: 2, package: { family: null } });
    expect(parts.get('U-2')).toMatchObject({ level: '3', bodyMm: 2, package: { family: 'bga' } });
    expect(parts.has('R-1')).toBe(false);
  });

  test('over all setups: bodies that differ once are not known for good, those that agree or are stated once are', () => {
    const story = beginStory();
    tellPlant(story);
    const slots = (differing: number, stated: { bodyMm?: number }) => [
      wantedSlot('M1-F-001', 'U-differ', { msl: '3', bodyMm: differing }),
      wantedSlot('M1-F-002', 'U-once', { msl: '3', ...stated }),
      wantedSlot('M1-F-003', 'U-same', { msl: '3', bodyMm: 1.4 }),
    ];
    takeSetup(story, 'a', slots(2, {}));
    takeSetup(story, 'b', slots(3, { bodyMm: 1.6 }));
    takeSetup(story, 'c', slots(3, {}));
    const parts = moistureOfParts(story.floor());
    expect(parts.get('U-differ')?.bodyMm).toBeNull();
    expect(parts.get('U-once')?.bodyMm).toBe(1.6);
    expect(parts.get('U-same')?.bodyMm).toBe(1.4);
  });
});

describe('a reel of level 6', () => {
  const level6 = { level: '6', bodyMm: null } as const;

  test('asks for the time on its label until somebody entered it; before its bake it has no life either way', () => {
    const story = beginStory();
    tellPlant(story);
    const life = () =>
      reelLife(story.floor(), 'K1', { line: 'L1', part: level6, openedMs: startMs, nowMs: startMs });
    expect(life()).toMatchObject({ wantsLabelTime: true, leftSeconds: 0 });
    story.tell('reel.timed', { reel: 'K1', hours: 6 });
    expect(life()).toMatchObject({ wantsLabelTime: false, leftSeconds: 0 });
  });

  test('is the only one that is asked for that time', () => {
    const life = reelLife(beginStory().floor(), 'K1', { line: 'L1', part: level3, nowMs: startMs });
    expect(life?.wantsLabelTime).toBe(false);
  });
});

test('a reel that was opened at a moment still to come has its whole life', () => {
  const life = reelLife(beginStory().floor(), '~x', {
    line: 'L1',
    part: level3,
    openedMs: startMs + hourMs,
    nowMs: startMs,
  });
  expect(life?.leftSeconds).toBe(168 * 3600);
});
