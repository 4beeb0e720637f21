// Floor life in the log: opened by loading, told by people, paused in dry storage, taken back; the same from any order of arrival.

import { describe, expect, test } from 'vitest';
import { applyAll } from '../../../shared/floor/fold.ts';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { beginStory, idOf, startMs, tellPlant, verified, wantedSlot } from './story.ts';

const slot = 'M1-R-003';

function aired(
  air: PayloadOf<'reel.aired'>['air'],
  hour: number,
  more: Partial<PayloadOf<'reel.aired'>> = {},
): PayloadOf<'reel.aired'> {
  return {
    reel: 'K1',
    part: 'R-100',
    supplierPart: null,
    quantity: 5000,
    lot: 'L-7',
    dateCode: null,
    air,
    from: new Date(startMs + hour * 3_600_000).toISOString(),
    celsius: null,
    humidity: null,
    via: 'typed' as const,
    ...more,
  };
}

const staysOf = (floor: FloorState, reel = 'K1') =>
  floor.exposures.get(reel)?.periods.map(({ air, fromMs }) => [air, (fromMs - startMs) / 3_600_000]);

function begun() {
  const story = beginStory();
  tellPlant(story);
  return story;
}

describe('reel.aired', () => {
  test('makes a reel known that nobody has verified', () => {
    const story = begun();
    story.tell('reel.aired', aired('floor', 1, { msl: '3' }), { at: 7200 });
    expect(story.floor().reels.get('K1')).toMatchObject({ part: 'R-100', count: 5000, at: null });
    expect(story.floor().exposures.get('K1')).toMatchObject({ msl: '3' });
  });

  test('periods stand by the time they began, whatever order they are told in', () => {
    const story = begun();
    story.tell('reel.aired', aired('dry', 2, { humidity: 5 }), { at: 4 * 3600 });
    story.tell('reel.aired', aired('floor', 1), { at: 5 * 3600 });
    expect(staysOf(story.floor())).toEqual([
      ['floor', 1],
      ['dry', 2],
    ]);
  });

  test('what is still to come is not believed', () => {
    const story = begun();
    story.tell('reel.aired', aired('floor', 30), { at: 3600 });
    expect(staysOf(story.floor())).toEqual([['floor', 1]]);
  });

  test('a moment that no clock has changes nothing', () => {
    const story = begun();
    story.tell('reel.aired', aired('floor', 0, { from: 'yesterday' }));
    expect(story.floor().exposures.size).toBe(0);
  });

  test('taken back, it never was', () => {
    const story = begun();
    const told = story.tell('reel.aired', aired('floor', 1), { at: 7200 });
    story.tell('entry.corrected', { of: idOf(told), line: null, slot: null, reason: 'other reel' });
    expect(story.floor().exposures.has('K1')).toBe(false);
  });
});

describe('a reel that goes onto a slot', () => {
  const load = (more: Partial<PayloadOf<'reel.verified'>> = {}) =>
    verified(slot, 'R-100', { reel: 'K1', feeder: 'F-1', setup: 'moist', ...more });
  const begunMoist = (msl = '3') => {
    const story = begun();
    const slots = [wantedSlot(slot, 'R-100', { msl })];
    story.tell('setup.taken', {
      setup: 'moist',
      product: 'Brook',
      side: 'top',
      revision: 'B',
      line: 'L1',
      source: 'test',
      slots,
    });
    return story;
  };

  test('has its bag open since then, where its setup states a level', () => {
    const story = begunMoist();
    story.tell('reel.verified', load(), { at: 3600 });
    expect(staysOf(story.floor())).toEqual([['floor', 1]]);
  });

  test('has it open from the moment it is made ready on a feeder, away from the line', () => {
    const story = begunMoist();
    const facts = { feeder: 'F-2', line: 'L1', setup: 'moist', slot, reel: 'K1', part: 'R-100' };
    const none = { supplierPart: null, lot: null, dateCode: null, quantity: 100 };
    story.tell('feeder.readied', { ...facts, ...none, of: 'T1/T1-life-1/1' }, { at: 3600 });
    story.tell('reel.verified', load({ feeder: 'F-2' }), { at: 7200 });
    expect(staysOf(story.floor())).toEqual([['floor', 1]]);
  });

  test('has it open where it is an alternate that the parts list gives a level, and the slot’s own part has none', () => {
    const story = begunMoist('1');
    const body = { bodyMm: 0.9, bodyXMm: 4, bodyYMm: 4, isStacked: false };
    story.tell('part.described', { part: 'R-101', family: 'qfn', pins: 24, msl: '3', source: '', ...body });
    story.tell('reel.verified', load({ part: 'R-101' }), { at: 3600 });
    expect(staysOf(story.floor())).toEqual([['floor', 1]]);
  });

  test('is of no concern without a level, or at level 1', () => {
    const story = begunMoist('1');
    story.tell('reel.verified', load());
    expect(story.floor().exposures.size).toBe(0);
  });

  test('has it open only once a lead has cleared it, where it was held; refused, it stays in its bag', () => {
    const story = begunMoist();
    story.tell('reel.verified', load({ verdict: 'refused' }), { at: 1800 });
    const held = story.tell('reel.verified', load({ verdict: 'held' }), { at: 3600 });
    expect(story.floor().exposures.size).toBe(0);
    story.tell(
      'hold.cleared',
      { of: idOf(held), line: 'L1', slot, reason: 'looked at', by: 'ana', checked: 'tablet' },
      { at: 7200 },
    );
    expect(staysOf(story.floor())).toEqual([['floor', 2]]);
  });

  test('comes out of dry storage; one that lies open already gets no new period', () => {
    const story = begunMoist();
    story.tell('reel.aired', aired('floor', 0), { at: 600 });
    story.tell('reel.aired', aired('dry', 1, { humidity: 5 }), { at: 3600 });
    story.tell('reel.verified', load(), { at: 7200 });
    story.tell('reel.verified', load({ act: 'sweep' }), { at: 9000 });
    story.tell('reel.verified', load(), { at: 10_800 });
    expect(staysOf(story.floor())).toEqual([
      ['floor', 0],
      ['dry', 1],
      ['floor', 2],
    ]);
  });

  test('is in its bag again where the load is taken back', () => {
    const story = begunMoist();
    const told = story.tell('reel.verified', load());
    story.tell('entry.corrected', { of: idOf(told), line: 'L1', slot, reason: 'wrong slot' });
    expect(story.floor().exposures.size).toBe(0);
  });

  test('without an id of its own it is the entry’s reel', () => {
    const story = begunMoist();
    const told = story.tell('reel.verified', load({ reel: null }));
    expect([...story.floor().exposures.keys()]).toEqual([`~${idOf(told)}`]);
  });
});

test('a copy of the state is not touched by later entries', () => {
  const story = begun();
  story.tell('reel.aired', aired('floor', 0), { at: 600 });
  const before = story.floor();
  const periods = before.exposures.get('K1')?.periods;
  applyAll(before, [story.tell('reel.aired', aired('dry', 1), { at: 7200 })]);
  expect(periods).toHaveLength(1);
  expect(emptyState().exposures.size).toBe(0);
});
