import { describe, expect, test } from 'vitest';
import { ageReasons, type FitReel, fits, fitVerdict } from '../../../shared/floor/fits.ts';
import { plantDay } from '../../../shared/floor/plant-day.ts';
import { shelfFor } from '../../../shared/floor/shelf.ts';
import { wantedOn } from '../../../shared/floor/wanted.ts';
import { verifyReel } from '../../../shared/verdict/verify.ts';
import { beginStory, type Story, startMs, tellPlant, verified } from './story.ts';

const at = { line: 'L1', setup: 'brook-top-a', nowMs: startMs };
const plant = (): Story => {
  const story = beginStory();
  tellPlant(story);
  return story;
};
const put = (story: Story, reel: string, more: Partial<FitReel>) =>
  story.tell('reel.put', {
    reel,
    part: more.part ?? null,
    supplierPart: more.supplierPart ?? null,
    place: 'A1',
    quantity: 900,
    lot: more.lot ?? null,
    dateCode: null,
    via: 'typed',
  });

describe('fits()', () => {
  test('the shelf and the verdict say the same of every reel and every slot', () => {
    const story = plant();
    const parts = ['R-100', 'C-200', 'C-201', 'U-300', 'X-1', null];
    const makers = [null, 'SUP-300', 'SUP-999', 'C-200'];
    for (const part of parts)
      for (const supplierPart of makers)
        for (const lot of ['good', 'bad'])
          put(story, `K-${part}-${supplierPart}-${lot}`, { part, supplierPart, lot });
    const blocked = { reel: null, lot: null, part: null, reason: 'cracked' };
    story.tell('material.blocked', { ...blocked, block: 'lot', lot: 'bad' });
    story.tell('material.blocked', { ...blocked, block: 'part', part: 'U-300', lot: 'good' });
    const floor = story.floor();
    const shelf = shelfFor(floor, at);
    let taken = 0;
    for (const wanted of floor.setups.get(at.setup)?.slots ?? []) {
      const found = new Map(shelf(wanted).map(({ reel, fit }) => [reel.reel, fit]));
      for (const reel of floor.reels.values()) {
        const label = { ...reel, quantity: 900, expires: null };
        const question = {
          act: 'load',
          ...at,
          slot: wanted.slot,
          feeder: null,
          today: '2026-03-02',
        } as const;
        const answer = verifyReel(floor, { ...question, reel: label });
        const fit = fits(floor, { ...at, wanted }, reel, { today: null, floorLife: null });
        expect([fit.verdict, fit.part, fit.reasons.map(({ code }) => code).sort()]).toEqual([
          answer.verdict,
          answer.part,
          answer.reasons.map(({ code }) => code).sort(),
        ]);
        expect(found.get(reel.reel)).toEqual(fit.takes ? fit : undefined);
        if (fit.verdict === 'accepted') taken += 1;
      }
    }
    expect(taken).toBeGreaterThan(10);
  });

  test('a block on a part holds a reel whose label bears the maker’s number only', () => {
    const story = plant();
    story.tell('material.blocked', { block: 'b', reel: null, lot: null, part: 'U-300', reason: 'cracked' });
    const floor = story.floor();
    const wanted = wantedOn(floor, at.setup, 'M1-F-010');
    if (!wanted) throw new Error('told by tellPlant()');
    const reel = { reel: 'K-1', part: null, supplierPart: 'SUP-300', lot: null };
    const fit = fits(floor, { ...at, wanted }, reel, { today: null, floorLife: null });
    expect(fit).toMatchObject({ verdict: 'refused', takes: true, part: 'U-300' });
    expect(fit.reasons.map(({ code }) => code)).toContain('reel-blocked');
  });

  test('a maker whose approval was withdrawn counts no more, though the setup names it', () => {
    const story = plant();
    put(story, 'K-1', { supplierPart: 'SUP-300' });
    const shelf = () => {
      const floor = story.floor();
      const wanted = wantedOn(floor, at.setup, 'M1-F-010');
      return wanted ? shelfFor(floor, at)(wanted) : [];
    };
    expect(shelf()).toHaveLength(1);
    story.tell('supplier.withdrawn', { supplierPart: 'SUP-300', part: 'U-300' });
    expect(shelf()).toEqual([]);
  });

  test('what stands on a slot is not on the shelf', () => {
    const story = plant();
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K-1' }));
    const floor = story.floor();
    const wanted = wantedOn(floor, at.setup, 'M1-F-002');
    expect(wanted && shelfFor(floor, at)(wanted)).toEqual([]);
  });
});

describe('ageReasons()', () => {
  const codes = (...asked: Parameters<typeof ageReasons>) => ageReasons(...asked).map(({ code }) => code);

  test('a date that passed before the reel was let on its slot is decided; one that passed since is not', () => {
    const age = { today: '2026-03-10', floorLife: null };
    expect(codes({ expires: '2026-03-01' }, age)).toEqual(['expired']);
    expect(codes({ expires: '2026-03-10' }, age)).toEqual([]);
    expect(codes({ expires: '2026-03-01' }, { ...age, standsSince: '2026-03-02' })).toEqual([]);
    expect(codes({ expires: '2026-03-05' }, { ...age, standsSince: '2026-03-02' })).toEqual(['expired']);
  });

  test('a floor life counts as far as it is told', () => {
    const life = (leftSeconds: number, neededSeconds: number | null = null) => ({
      today: null,
      floorLife: { leftSeconds, neededSeconds },
    });
    expect(codes({}, life(0))).toEqual(['floor-life-over']);
    expect(codes({}, life(60, 61))).toEqual(['floor-life-short']);
    expect(codes({}, { ...life(60, 61), standsSince: null })).toEqual([]);
    expect(codes({}, life(60))).toEqual([]);
    expect(fitVerdict(ageReasons({}, life(0)))).toBe('refused');
  });
});

describe('plantDay()', () => {
  test('goes by the line’s own zone; by UTC where the line is not known', () => {
    const floor = plant().floor();
    const line = floor.lines.get('L1');
    if (!line) throw new Error('told by tellPlant()');
    const lateMs = Date.UTC(2026, 5, 30, 23, 30);
    expect(plantDay(floor, 'L1', lateMs)).toBe('2026-07-01');
    expect(plantDay(floor, 'none', lateMs)).toBe('2026-06-30');
    floor.lines.set('L1', { ...line, zone: 'America/Chicago' });
    expect(plantDay(floor, 'L1', Date.UTC(2026, 6, 1, 3))).toBe('2026-06-30');
    floor.lines.set('L1', { ...line, zone: 'Nowhere/Here' });
    expect(plantDay(floor, 'L1', lateMs)).toBe('2026-06-30');
  });
});
