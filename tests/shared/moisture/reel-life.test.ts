// A reel's floor life out of the log, by the floor lives of J-STD-020 (168 h at level 3, 672 h at 2a) and the pause in dry storage.

import { describe, expect, test } from 'vitest';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { moistureOfParts, moistureOfSlot, reelLife } from '../../../shared/moisture/reel-life.ts';
import { beginStory, startMs, tellPlant, verified, wantedSlot } from '../floor/story.ts';

const hourMs = 3_600_000;
const slot = 'M1-F-001';
const level3 = { level: '3', bodyMm: null } as const;

function begun() {
  const story = beginStory();
  tellPlant(story);
  const air = (where: 'floor' | 'dry' | 'bake', hour: number, more: Partial<PayloadOf<'reel.aired'>> = {}) =>
    story.tell(
      'reel.aired',
      {
        reel: 'K1',
        part: 'R-100',
        supplierPart: null,
        quantity: 900,
        lot: null,
        dateCode: null,
        air: where,
        from: new Date(startMs + hour * hourMs).toISOString(),
        celsius: null,
        humidity: null,
        via: 'typed' as const,
        ...more,
      },
      { at: hour * 3600 },
    );
  return { story, air };
}

describe('reelLife()', () => {
  test('of a part without a level is no concern', () => {
    const { story } = begun();
    expect(reelLife(story.floor(), 'K1', { line: 'L1', part: null, nowMs: startMs })).toBeNull();
    expect(reelLife(story.floor(), null, { line: 'L1', part: null, label: '1', nowMs: startMs })).toBeNull();
  });

  test('is whole while the bag is closed', () => {
    const { story } = begun();
    const life = reelLife(story.floor(), 'K1', { line: 'L1', part: level3, nowMs: startMs });
    expect(life).toMatchObject({ isOpened: false, leftSeconds: 168 * 3600 });
  });

  test('of a reel that stands on a slot without more words has run since it was put there', () => {
    const { story } = begun();
    const nowMs = startMs + 10 * hourMs;
    const life = reelLife(story.floor(), '~x', { line: 'L1', part: level3, openedMs: startMs, nowMs });
    expect(life).toMatchObject({ isOpened: true, leftSeconds: 158 * 3600 });
  });

  test('runs on the floor, pauses at 5 % humidity, runs on', () => {
    const { story, air } = begun();
    air('floor', 0);
    air('dry', 20, { humidity: 5 });
    const inDry = reelLife(story.floor(), 'K1', { line: 'L1', part: level3, nowMs: startMs + 50 * hourMs });
    expect(inDry).toMatchObject({ leftSeconds: 148 * 3600, running: false, expiresMs: null });
    air('floor', 60);
    const life = reelLife(story.floor(), 'K1', { line: 'L1', part: level3, nowMs: startMs + 64 * hourMs });
    expect(life).toMatchObject({ leftSeconds: 144 * 3600, expiresMs: startMs + 208 * hourMs });
  });

  test('a bake begins it anew; before that it is over', () => {
    const { story, air } = begun();
    air('floor', 0);
    const over = reelLife(story.floor(), 'K1', { line: 'L1', part: level3, nowMs: startMs + 170 * hourMs });
    expect(over).toMatchObject({ leftSeconds: 0, expiresMs: startMs + 168 * hourMs });
    air('bake', 171, { celsius: 125 });
    air('floor', 267); // 96 h: the row of large ball grid arrays, as nobody stated the package
    const life = reelLife(story.floor(), 'K1', { line: 'L1', part: level3, nowMs: startMs + 268 * hourMs });
    expect(life?.leftSeconds).toBe(167 * 3600);
  });

  test('the worse of label and setup counts', () => {
    const { story } = begun();
    const left = (setup: '2a' | '3', label: string) =>
      reelLife(story.floor(), null, {
        line: 'L1',
        part: { level: setup, bodyMm: null },
        label,
        nowMs: startMs,
      })?.level;
    expect([left('2a', '3'), left('3', '2a'), left('3', 'nonsense')]).toEqual(['3', '3', '3']);
  });

  test('what the log was told for a later moment does not count yet', () => {
    const { story, air } = begun();
    air('floor', 30);
    expect(reelLife(story.floor(), 'K1', { line: 'L1', part: level3, nowMs: startMs })?.isOpened).toBe(false);
  });
});

describe('what setups say', () => {
  test('of a slot', () => {
    const { floor } = beginStory();
    const of = (more: Parameters<typeof wantedSlot>[2]) =>
      moistureOfSlot(floor(), wantedSlot(slot, 'R-100', more), null);
    expect(of({ msl: '2a', bodyMm: 1.4 })).toMatchObject({ level: '2a', bodyMm: 1.4 });
    expect(of({ msl: '1' })).toMatchObject({ level: null });
    expect(moistureOfSlot(floor(), null, null)).toBeNull();
  });

  test('of parts: the worst level of all setups, and no body where they differ, alternates included', () => {
    const { story } = begun();
    const setup = (id: string, slots: ReturnType<typeof wantedSlot>[]) =>
      story.tell('setup.taken', {
        setup: id,
        product: id,
        side: 'top',
        revision: 'A',
        line: 'L1',
        source: 'test',
        slots,
      });
    setup('a', [wantedSlot(slot, 'U-1', { msl: '2a', bodyMm: 2, alternates: ['U-2'] })]);
    setup('b', [wantedSlot(slot, 'U-1', { msl: '3', bodyMm: 3 }), wantedSlot('M1-F-002', 'R-9')]);
    const parts = moistureOfParts(story.floor());
    expect(parts.get('U-1')).toMatchObject({ level: '3', bodyMm: null });
    expect(parts.get('U-2')).toMatchObject({ level: '2a', bodyMm: 2 });
    expect(parts.has('R-9')).toBe(false);
  });
});

test('a load alone opens the bag in the log, where the setup states a level', () => {
  const { story } = begun();
  const slots = [wantedSlot(slot, 'R-100', { msl: '3' })];
  story.tell('setup.taken', {
    setup: 'moist',
    product: 'Brook',
    side: 'top',
    revision: 'B',
    line: 'L1',
    source: 'test',
    slots,
  });
  story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', setup: 'moist' }), { at: 3600 });
  const life = reelLife(story.floor(), 'K1', { line: 'L1', part: level3, nowMs: startMs + 8 * hourMs });
  expect(life).toMatchObject({ isOpened: true, leftSeconds: 161 * 3600 });
});
