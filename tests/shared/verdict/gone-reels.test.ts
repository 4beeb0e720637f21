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
import { packageIdOf } from '../../../shared/floor/package-name.ts';
import { recognise } from '../../../shared/floor/recognise.ts';
import { copyState, emptyState, type FloorState } from '../../../shared/floor/state.ts';
import type { VerifyAct } from '../../../shared/floor/vocabulary.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
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

const slots = ['M1-F-001', 'M1-F-002', 'M1-R-003'] as const;
const reels = ['K1', 'K2', 'K3', 'K4', 'K5', null] as const;
const acts = ['load', 'splice', 'exchange', 'sweep'] as const satisfies readonly VerifyAct[];

const actArb = fc.record({
  is: fc.constantFrom(
    'load',
    'load',
    'splice',
    'used up',
    'used up',
    'used up',
    'unload',
    'hold',
    'clear',
    'correct',
    'put',
    'count',
    'date',
    'air',
    'name',
    'block',
    'split',
    'merge',
    'run',
  ),
  tablet: fc.constantFrom('T1', 'T2'),
  slot: fc.constantFrom(...slots),
  reel: fc.constantFrom(...reels),
  at: fc.integer({ min: 30, max: 90 }),
  which: fc.nat(30),
});
type Act = typeof actArb extends fc.Arbitrary<infer A> ? A : never;

const label = { part: 'R-100', supplierPart: null, lot: 'L-1', dateCode: null, quantity: 500 } as const;

/** Reels that stood on one slot, one after the other, till nothing was left. */
function useUp(story: Story, used: readonly string[]): void {
  for (const reel of used) {
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel, lot: `L-${reel}` }));
    story.tell('reel.unloaded', unloaded('M1-F-001', { reel, part: 'R-100', quantity: 0 }));
  }
}

function tell(told: readonly Act[]): Story {
  const story = beginStory();
  tellPlant(story);
  useUp(story, ['K1', 'K2', 'K3', 'K4', 'K5']);
  const start = story.entries.at(-1);
  const pieces: string[] = [];
  // What is told of a lot agrees with its label.
  const lots = new Map<string | null, string>(reels.map((reel) => [reel, `L-${reel}`]));
  for (const [number, { is, tablet, slot, reel: drawn, at, which }] of told.entries()) {
    const how = { tablet, at, ...(start ? { seen: start } : {}) };
    const verdicts = story.entries.filter(({ kind }) => kind === 'reel.verified' || kind === 'reel.unloaded');
    const some = verdicts[which % Math.max(1, verdicts.length)];
    const since = some ? { tablet, at, seen: some } : how;
    const named = [...reels, ...pieces];
    const reel = named[(reels.indexOf(drawn) + which) % named.length] ?? null;
    const from = named[which % named.length] ?? null;
    const lot = lots.get(reel) ?? 'L-1';
    const tellOf: Readonly<Record<Act['is'], () => void>> = {
      load: () => story.tell('reel.verified', verified(slot, 'R-100', { act: 'load', reel, lot }), how),
      splice: () => story.tell('reel.verified', verified(slot, 'R-100', { act: 'splice', reel, lot }), how),
      hold: () => story.tell('reel.verified', verified(slot, 'R-100', { reel, lot, verdict: 'held' }), how),
      'used up': () => story.tell('reel.unloaded', unloaded(slot, { reel, part: 'R-100', quantity: 0 }), how),
      unload: () => story.tell('reel.unloaded', unloaded(slot, { reel, part: 'R-100' }), how),
      clear: () => {
        const facts = { line: 'L1', slot, by: 'lea', checked: 'tablet', reason: 'fits' } as const;
        if (some) story.tell('hold.cleared', { of: idOf(some), ...facts }, since);
      },
      correct: () => {
        const facts = { line: 'L1', slot: null, reason: 'slip' } as const;
        if (some) story.tell('entry.corrected', { of: idOf(some), ...facts }, since);
      },
      put: () => {
        if (reel !== null) story.tell('reel.put', { ...label, lot, reel, place: 'A', via: 'typed' }, how);
      },
      count: () => {
        const facts = { line: null, slot: null, reel, part: 'R-100', lot: null, panels: 0 } as const;
        const count = { quantity: which % 3 === 0 ? 0 : 40, sd: 0, basis: 'one-by-one' } as const;
        story.tell('reel.counted', { ...facts, ...count }, how);
      },
      date: () => {
        if (reel !== null) story.tell('reel.dated', { reel, expires: '2026-01-31' }, how);
      },
      air: () => {
        const air = { air: 'floor', celsius: null, humidity: null, msl: '3' } as const;
        const from = new Date(startMs + at * 1000).toISOString();
        if (reel !== null) story.tell('reel.aired', { ...label, ...air, lot, reel, from, via: 'typed' }, how);
      },
      name: () => {
        if (!some) return;
        const was = idOf(some);
        const facts = { ...label, sd: 0, basis: 'label', via: 'typed' } as const;
        story.tell('reel.named', { ...facts, reel: packageIdOf(was), was: `~${was}` }, since);
      },
      block: () => {
        const facts = { lot: reel === null ? 'L-K1' : null, part: null, reason: 'held back' };
        story.tell('material.blocked', { block: `B${number}`, reel, ...facts }, how);
      },
      split: () => {
        if (from === null) return;
        const chain = story.entries.filter((entry) => entry.tablet === tablet);
        const into = packageIdOf(`${tablet}/${tablet}-life-1/${chain.length + 1}`);
        const cut = { reel: from, into, part: 'R-100', lot: lots.get(from) ?? 'L-1', quantity: 10, left: 0 };
        lots.set(into, cut.lot);
        story.tell('reel.split', { ...cut, via: 'typed' }, how);
        pieces.push(into);
      },
      merge: () => {
        if (reel === null || from === null || from === reel) return;
        const facts = { part: 'R-100', lot, quantity: 90, sd: 0, basis: 'combined' } as const;
        story.tell('reel.merged', { ...facts, reel, from, via: 'typed' }, how);
      },
      run: () => story.tell('run.started', started(`r${number}`), how),
    };
    tellOf[is]();
  }
  return story;
}

/** All that may be named. */
function namesIn(entries: readonly Entry[]): readonly (string | null)[] {
  const told = entries.filter(({ kind }) => kind === 'reel.verified' || kind === 'reel.split');
  const ids = told.flatMap((entry) => [`~${entryId(entry)}`, packageIdOf(entryId(entry))]);
  return [...reels, 'nobody knows', ...ids];
}

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
        } else expect(answer).toEqual(verifyReel(whole, { ...question, reel: inHand(whole, reel) }));
      }
    }
    const asNamed = { reel, lot: null, part: null };
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

  test('is asked about until a lead has decided, whatever people tell of it before', () => {
    const story = usedUpLongAgo();
    story.tell('run.started', started('r3'), { at: days(31) });
    story.tell('reel.put', { ...label, reel: 'K1', place: 'A', via: 'typed' });
    expect(reelOf(story.floor(), 'K1')).toMatchObject({ part: 'R-100', count: 0, place: 'A' });
    const facts = { line: null, slot: null, reel: 'K1', part: 'R-100', lot: null, panels: 0 } as const;
    story.tell('reel.counted', { ...facts, quantity: 40, sd: 0, basis: 'one-by-one' });
    expect(isLongGone(story.floor(), 'K1')).toBe(true);
    const held = story.tell('reel.verified', verified('M1-F-002', 'R-100', { reel: 'K1', verdict: 'held' }));
    const cleared = { line: 'L1', slot: 'M1-F-002', by: 'lea', checked: 'tablet', reason: 'seen' } as const;
    story.tell('hold.cleared', { of: idOf(held), ...cleared });
    expect(isLongGone(story.floor(), 'K1')).toBe(false);
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
