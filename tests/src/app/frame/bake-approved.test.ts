// A bake shorter than its row of J-STD-033 (level 3, body above 2 mm: 8 days at 90 °C), let count by a lead: once, for that bake as the
// lead saw it. Another bake, and an exposure that uses the life up, are judged anew.

import { describe, expect, test } from 'vitest';
import { floorLifeOf } from '../../../../shared/desk/floor-life.ts';
import type { PayloadOf } from '../../../../shared/floor/kinds.ts';
import type { Air } from '../../../../shared/floor/vocabulary.ts';
import { bakeLet, openBake, reelLife } from '../../../../shared/moisture/reel-life.ts';
import { verifyReel } from '../../../../shared/verdict/verify.ts';
import { heldBake } from '../../../../src/app/frame/let-bake.ts';
import { reelLifeText } from '../../../../src/app/words/life-text.ts';
import { beginStory, idOf, started, startMs, tellPlant, verified } from '../../../shared/floor/story.ts';

const hourMs = 3_600_000;
const slot = 'M1-F-001';
const part = { level: '3', bodyMm: null } as const;

/** Over after 168 h on the floor, into the oven at 170 h, out at 180 h: ten hours at 90 °C. */
function bakedShort() {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1', { panelsWanted: 100, panelSeconds: 30 }));
  const air = (where: Air, hour: number, toldAt = hour) =>
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
        msl: '3',
        via: 'typed',
        celsius: where === 'bake' ? 90 : null,
        humidity: null,
      },
      { at: toldAt * 3600 },
    );
  air('floor', 0);
  const bake = idOf(air('bake', 170));
  const out = idOf(air('floor', 180));
  const approve = (atHour: number, more: Partial<PayloadOf<'bake.approved'>> = {}) =>
    idOf(
      story.tell(
        'bake.approved',
        {
          reel: 'K1',
          line: 'L1',
          of: bake,
          hours: 10,
          celsius: 90,
          reason: 'maker’s sheet',
          by: 'lea',
          checked: 'tablet' as const,
          ...more,
        },
        { at: atHour * 3600 },
      ),
    );
  const scan = (hour: number) => {
    const floor = story.floor();
    const reel = { reel: 'K1', part: 'R-100', supplierPart: null, quantity: 100, lot: null, msl: null };
    const asked = { act: 'load', line: 'L1', setup: 'brook-top-a', slot, reel } as const;
    const floorLife = floorLifeOf(floor, asked, startMs + hour * hourMs);
    const { verdict, reasons } = verifyReel(floor, {
      ...asked,
      feeder: null,
      today: '2026-03-02',
      floorLife,
    });
    return [verdict, ...reasons.map(({ code }) => code)];
  };
  const lifeAt = (hour: number) =>
    reelLife(story.floor(), 'K1', { line: 'L1', part, nowMs: startMs + hour * hourMs });
  return { story, air, bake, out, approve, scan, lifeAt };
}

describe('a short bake', () => {
  test('holds the reel at each scan, until a lead lets it count', () => {
    const { approve, scan } = bakedShort();
    expect([scan(181), scan(182)]).toEqual([
      ['held', 'bake-short'],
      ['held', 'bake-short'],
    ]);
    approve(183);
    expect([scan(184), scan(200)]).toEqual([['accepted'], ['accepted']]);
  });

  test('that counts begins the floor life anew at its end', () => {
    const { approve, lifeAt } = bakedShort();
    expect(lifeAt(184)?.leftSeconds).toBe(0);
    approve(183);
    expect(lifeAt(184)?.leftSeconds).toBe((168 - 4) * 3600);
  });

  test('that counts is no word on the next one', () => {
    const { air, approve, scan } = bakedShort();
    approve(183);
    air('bake', 360);
    air('floor', 365);
    expect(scan(366)).toEqual(['held', 'bake-short']);
  });

  test('that counts gives one floor life and no more', () => {
    const { approve, scan } = bakedShort();
    approve(183);
    expect(scan(180 + 169)).toEqual(['refused', 'floor-life-over']);
  });

  test('that turns out shorter than the lead saw is held again', () => {
    const { air, approve, scan } = bakedShort();
    approve(183);
    air('floor', 171, 184); // out of the oven after one hour, as somebody enters late
    expect(scan(185)).toEqual(['held', 'bake-short']);
  });

  test('is held again where the word on it is taken back', () => {
    const { story, approve, scan } = bakedShort();
    const word = approve(183);
    story.tell(
      'entry.corrected',
      { of: word, line: null, slot: null, reason: 'other reel' },
      { at: 184 * 3600 },
    );
    expect(scan(185)).toEqual(['held', 'bake-short']);
  });

  test.each([
    ['what was no bake', (ids: { out: string }) => ids.out],
    ['a bake that nobody told', () => 'T9/T9-life-1/9'],
  ])('a word on %s changes nothing', (_, of) => {
    const told = bakedShort();
    told.approve(183, { of: of(told) });
    expect(told.scan(185)).toEqual(['held', 'bake-short']);
  });
});

describe('what a lead is asked', () => {
  test('names the bake, its hours and what the table wants', () => {
    const { story, bake, lifeAt } = bakedShort();
    const exposure = story.floor().exposures.get('K1');
    expect(openBake(exposure, lifeAt(185), startMs + 185 * hourMs)).toEqual({
      of: bake,
      hours: 10,
      celsius: 90,
      wanted: 8 * 24,
      source: 'memory',
    });
    expect(bakeLet(exposure, lifeAt(185), startMs + 185 * hourMs)).toBeNull();
  });

  test('is nothing while the reel is in the oven, and nothing once it counts', () => {
    const { story, approve, lifeAt } = bakedShort();
    const at = (hour: number) =>
      openBake(story.floor().exposures.get('K1'), lifeAt(hour), startMs + hour * hourMs);
    expect(at(175)).toBeNull();
    approve(183);
    expect(at(185)).toBeNull();
  });

  test('stands on the reel, with the name of the lead', () => {
    const { story, approve } = bakedShort();
    story.tell('person.added', { person: 'lea', name: 'Lea Arden', role: 'lead', badge: 'B-7', pin: null });
    const text = () =>
      reelLifeText(story.floor(), 'K1', {
        line: 'L1',
        part,
        nowMs: startMs + 185 * hourMs,
        zone: 'UTC',
      });
    expect(text()).toMatchObject({ text: expect.stringContaining('baked shorter'), tone: 'stop' });
    approve(183);
    const after = text();
    expect(after).toMatchObject({ bake: null, tone: null });
    expect(after?.text).toContain('short bake counts: Lea Arden');
    expect(after?.text).not.toContain('baked shorter');
  });

  test('is offered with a hold for that bake, and with no other', () => {
    const { story, bake, approve } = bakedShort();
    const nowMs = startMs + 185 * hourMs;
    const hold = (code: string, reel: string | null = 'K1') => {
      story.tell('reel.verified', verified(slot, 'R-100', { reel, verdict: 'held', reasons: [{ code }] }), {
        at: 182 * 3600,
      });
      const held = [...story.floor().holds.values()].at(-1);
      if (!held) throw new TypeError('Cannot go on as the reel must be held');
      return heldBake(story.floor(), held, nowMs);
    };
    expect(hold('bake-short')).toMatchObject({ reel: 'K1', line: 'L1', bake: { of: bake, hours: 10 } });
    expect(hold('expired')).toBeNull();
    expect(hold('bake-short', null)).toBeNull();
    approve(183);
    expect(hold('bake-short')).toBeNull();
  });
});
