// Reels that were used up long ago leave the state. Property: over random histories a tablet with less says of every reel, on every slot, what it
// would say with all of it, or that the server must be asked; also after more has happened.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blockOn } from '../../../shared/floor/blocks.ts';
import { applyAll, applyEntry } from '../../../shared/floor/fold.ts';
import {
  forgetReels,
  GONE_AFTER_MS,
  isLongGone,
  isReelKnown,
  reelOf,
} from '../../../shared/floor/gone-reels.ts';
import { answerPlaces } from '../../../shared/floor/interlock.ts';
import { recognise } from '../../../shared/floor/recognise.ts';
import { copyState, emptyState, type FloorState } from '../../../shared/floor/state.ts';
import type { VerifyAct } from '../../../shared/floor/vocabulary.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { verifyReel } from '../../../shared/verdict/verify.ts';
import {
  beginStory,
  idOf,
  type Story,
  started,
  startMs,
  tellPlant,
  unloaded,
  verified,
} from '../floor/story.ts';
import { actArb, label, namesIn, slots, tell, useUp } from './gone-story.ts';

const acts = ['load', 'splice', 'exchange', 'sweep'] as const satisfies readonly VerifyAct[];

/** The label in hand, as the desk makes a reel of it: what is on it the log knows better. */
function inHand(state: FloorState, reel: string | null) {
  const known = reel === null ? undefined : reelOf(state, reel);
  const expires = reel === null ? null : (state.expiries.get(reel) ?? null);
  return {
    reel,
    ...label,
    lot: known?.lot ?? `L-${reel}`,
    expires,
    quantity: known?.count ?? label.quantity,
  };
}

/** Compares every answer; how many say that the server must be asked. */
function compare(thin: FloorState, whole: FloorState, names: readonly (string | null)[]): number {
  let asked = 0;
  for (const reel of names) {
    if (reel !== null) {
      expect(isReelKnown(thin, reel) || reel.startsWith('~')).toBe(
        isReelKnown(whole, reel) || reel.startsWith('~'),
      );
      expect(recognise(thin, 'L1', reel)).toEqual(recognise(whole, 'L1', reel));
    }
    for (const slot of slots) {
      const places = [{ slot, reel, part: 'R-100', feeder: null }];
      expect(reel?.startsWith('~') ? null : answerPlaces(thin, 'L1', places, 'Warning')).toEqual(
        reel?.startsWith('~') ? null : answerPlaces(whole, 'L1', places, 'Warning'),
      );
      for (const act of acts) {
        const question = {
          act,
          line: 'L1',
          setup: 'brook-top-a',
          slot,
          feeder: null,
          today: '2026-03-02',
        } as const;
        const answer = verifyReel(thin, { ...question, reel: inHand(thin, reel) });
        const ofServer = answer.reasons.some(({ code }) => code === 'reel-gone');
        if (ofServer) {
          asked += 1;
          expect(answer.verdict).not.toBe('accepted');
          continue;
        }
        const told = verifyReel(whole, { ...question, reel: inHand(whole, reel) });
        // What stands on its slot was let there by a lead: a sweep asks no more of it, as far as its label does not tell its last day.
        const isPassed = act === 'sweep' && reel !== null && isLongGone(thin, reel);
        // Nor does a tablet know that a block of its lot of before is on what hands joined it into: the trace does.
        const but = (of: typeof told) =>
          of.reasons.filter(({ code }) => code !== 'expired' && code !== 'reel-blocked');
        if (isPassed) expect(but(answer)).toEqual(but(told));
        else expect(answer).toEqual(told);
      }
    }
    const asNamed = { reel, lot: null, part: null };
    if (reel === null || !isLongGone(thin, reel))
      expect(blockOn(thin, asNamed)).toBe(blockOn(whole, asNamed));
  }
  return asked;
}

describe('a state without reels that were used up long ago', () => {
  test('answers as the whole one does, or says that the server must be asked', () => {
    let asked = 0;
    fc.assert(
      fc.property(fc.array(actArb, { minLength: 1, maxLength: 24 }), fc.nat(12), (told, part) => {
        const { entries } = tell(told);
        const sorted = [...entries].sort(compareEntries);
        const at = Math.min(sorted.length, part + 16);
        const whole = applyAll(emptyState(), sorted.slice(0, at));
        const thin = copyState(whole);
        for (const nowMs of [startMs, startMs + GONE_AFTER_MS]) forgetReels(thin, nowMs);
        const names = namesIn(entries);
        asked += compare(thin, whole, names);
        for (const entry of sorted.slice(at)) {
          applyEntry(whole, entry);
          applyEntry(thin, entry);
        }
        asked += compare(thin, whole, names);
      }),
      { numRuns: 60 },
    );
    expect(asked).toBeGreaterThan(40);
  });
});

/** A reel that was loaded, came off empty, and is as old as that, as runs start. */
function usedUpLongAgo(): Story {
  const story = beginStory();
  tellPlant(story);
  useUp(story, ['K1', 'K2']);
  story.tell('run.started', started('r1'));
  return story;
}

const days = (count: number) => count * 24 * 3600;

describe('a reel that was used up', () => {
  test('is kept whole for thirty days, and is known as used up from then on', () => {
    const story = usedUpLongAgo();
    story.tell('run.started', started('r2'), { at: days(29) });
    expect(story.floor().reels.has('K1')).toBe(true);
    story.tell('run.started', started('r3'), { at: days(31) });
    const floor = story.floor();
    expect(floor.reels.has('K1')).toBe(false);
    expect(reelOf(floor, 'K1')).toMatchObject({ count: 0, at: null, gone: true });
    expect(isReelKnown(floor, 'K9')).toBe(false);
    const asked = { act: 'load', line: 'L1', setup: 'brook-top-a', slot: 'M1-F-001', feeder: null } as const;
    const answerOf = (reel: string) =>
      verifyReel(floor, { ...asked, today: '2026-04-02', reel: inHand(floor, reel) });
    expect(answerOf('K1')).toMatchObject({ verdict: 'held', reasons: [{ code: 'reel-gone', reel: 'K1' }] });
    expect(answerOf('K9').verdict).toBe('accepted');
    // What took off K2 can be taken back.
    expect(floor.reels.has('K2')).toBe(true);
  });

  test('is asked about each time that it is to go onto a slot, whatever people tell of it, and not while it stands there', () => {
    const story = usedUpLongAgo();
    story.tell('run.started', started('r3'), { at: days(31) });
    story.tell('reel.put', { ...label, reel: 'K1', place: 'A', via: 'typed' });
    expect(reelOf(story.floor(), 'K1')).toMatchObject({ part: 'R-100', count: 0, place: 'A' });
    const facts = { line: null, slot: null, reel: 'K1', part: 'R-100', lot: null, panels: 0 } as const;
    story.tell('reel.counted', { ...facts, quantity: 40, sd: 0, basis: 'one-by-one' });
    expect(isLongGone(story.floor(), 'K1')).toBe(true);
    const held = story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K1', verdict: 'held' }));
    const cleared = { line: 'L1', slot: 'M1-R-003', by: 'lea', checked: 'tablet', reason: 'seen' } as const;
    story.tell('hold.cleared', { of: idOf(held), ...cleared });
    const asked = {
      line: 'L1',
      setup: 'brook-top-a',
      slot: 'M1-R-003',
      feeder: null,
      today: '2026-04-03',
    } as const;
    const answerOf = (act: VerifyAct) =>
      verifyReel(story.floor(), { ...asked, act, reel: inHand(story.floor(), 'K1') }).reasons;
    expect(story.floor().reels.get('K1')?.at?.slot).toBe('M1-R-003');
    expect(answerOf('sweep')).toEqual([]);
    story.tell('reel.unloaded', unloaded('M1-R-003', { reel: 'K1', part: 'R-100', quantity: 30 }));
    expect(answerOf('load')).toEqual([{ code: 'reel-gone', reel: 'K1' }]);
  });

  test('is hardly ever taken for another: of names that differ little, no more than chance has it', () => {
    const state = emptyState();
    const facts = { part: 'P', supplierPart: null, lot: null, dateCode: null, sd: 0, at: null } as const;
    const kinds = [
      (at: number) => `R-${390_000 + at}`,
      (at: number) => `${at}`,
      (at: number) => `LP${at * 7}X`,
    ];
    const each = 30_000;
    for (const name of kinds)
      for (let at = 0; at < each; at += 1)
        state.reels.set(name(at), { ...facts, reel: name(at), count: 0, basis: 'typed' });
    for (const nowMs of [0, GONE_AFTER_MS]) forgetReels(state, nowMs);
    let wrong = 0;
    for (const name of kinds)
      for (let at = each; at < 2 * each; at += 1) if (isReelKnown(state, name(at))) wrong += 1;
    // 90,000 marks of 36 bits and as many other names: 0.1 by chance.
    expect(wrong).toBeLessThanOrEqual(2);
  });

  test('leaves the same marks whatever came first', () => {
    const [one, other] = [emptyState(), emptyState()];
    const names = Array.from({ length: 3000 }, (_, at) => `R-${at}`);
    const reel = { part: 'P', supplierPart: null, lot: null, dateCode: null, sd: 0, at: null } as const;
    for (const [state, order] of [
      [one, names],
      [other, [...names].reverse()],
    ] as const) {
      for (const name of order) {
        state.reels.set(name, { ...reel, reel: name, count: 0, basis: 'typed' });
        for (const nowMs of [0, GONE_AFTER_MS]) if (name.endsWith('99')) forgetReels(state, nowMs);
      }
      for (const nowMs of [GONE_AFTER_MS, 2 * GONE_AFTER_MS]) forgetReels(state, nowMs);
    }
    expect(one.reels.size).toBe(0);
    expect(new Map([...one.goneReels].sort())).toEqual(new Map([...other.goneReels].sort()));
    for (const name of names) expect(isReelKnown(one, name)).toBe(true);
  });
});
