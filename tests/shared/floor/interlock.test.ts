// What a machine hears when it asks about materials: right only for the very reel that was verified there; wrong where the log knows it;
// the plant's choice where nobody can know.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyAll } from '../../../shared/floor/fold.ts';
import { answerPlaces, answersAs, resultOf } from '../../../shared/floor/interlock.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import type { BelievedPlace } from '../../../shared/floor/station-state.ts';
import { interlockWhys, type UnsureResult } from '../../../shared/floor/vocabulary.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { beginStory, idOf, type Story, tellPlant, unloaded, verified } from './story.ts';

const [one, two] = ['M1-F-001', 'M1-F-002'];
const place = (slot: string, reel: string | null, part: string | null = null): BelievedPlace => ({
  slot,
  reel,
  part,
  feeder: null,
});
const load = (story: Story, slot: string, part: string, reel: string, more: object = {}) =>
  story.tell('reel.verified', verified(slot, part, { reel, lot: `LOT-${reel}`, ...more }));

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  load(story, one, 'R-100', 'K1');
  load(story, two, 'C-200', 'K2');
  return story;
}
const answer = (story: Story, asked: BelievedPlace, unsure: UnsureResult = 'Warning') => {
  const [first] = answerPlaces(story.floor(), 'L1', [asked], unsure);
  return [first?.result, first?.why];
};

describe('a machine that asks about a reel on a slot', () => {
  test('hears Success for the very reel that was verified there, also for one joined to it', () => {
    const story = begun();
    load(story, one, 'R-100', 'K5', { act: 'splice' });
    expect(answer(story, place(one, 'K1'))).toEqual(['Success', 'verified']);
    expect(answer(story, place('m1/f/1', 'K5'))).toEqual(['Success', 'verified']);
  });

  test('hears Failed for a reel that is known to be another one', () => {
    expect(answer(begun(), place(one, 'K2'))).toEqual(['Failed', 'other-reel']);
    expect(answer(begun(), place(one, null, 'C-200'))).toEqual(['Failed', 'other-part']);
  });

  test('is not told of another part where it calls an alternate by its program’s part, or writes a part in its own way', () => {
    const story = beginStory();
    const comparison = { ignoreCase: false, ignoreSpaces: false, ignoreDashes: true, packingSuffixes: [] };
    tellPlant(story, { rules: { comparison } });
    load(story, two, 'C-201', 'K3');
    for (const part of ['C-201', 'C-200', 'C200'])
      expect(answer(story, place(two, null, part)), part).toEqual(['Warning', 'no-reel-told']);
    expect(answer(story, place(two, null, 'R-100'))).toEqual(['Failed', 'other-part']);
  });

  test('hears Failed for the reel that was refused there last, until one is let on', () => {
    const story = begun();
    story.tell('reel.unloaded', unloaded(one, { reel: 'K1' }));
    load(story, one, 'U-300', 'K8', { verdict: 'refused' });
    expect(answer(story, place(one, 'K8'))).toEqual(['Failed', 'refused']);
    expect(answer(story, place(one, null))).toEqual(['Failed', 'refused']);
    expect(answer(story, place(one, 'K1'))).toEqual(['Warning', 'not-verified']);
    load(story, one, 'R-100', 'K1');
    expect(answer(story, place(one, 'K1'))).toEqual(['Success', 'verified']);
    expect(answer(story, place(one, 'K8'))[0]).not.toBe('Success');
  });

  test('hears Failed where a verdict waits for a lead', () => {
    const story = begun();
    load(story, 'M1-F-010', 'U-300', 'K6', { verdict: 'held' });
    expect(answer(story, place('M1-F-010', 'K6'))).toEqual(['Failed', 'held']);
  });

  test('hears the plant’s choice while two tablets contradict each other about the slot', () => {
    const story = begun();
    story.tell('reel.verified', verified(one, 'R-100', { reel: 'K5', lot: 'A' }), { tablet: 'T1', at: 100 });
    story.tell('reel.verified', verified(one, 'R-100', { reel: 'K6', lot: 'B' }), { tablet: 'T2', at: 100 });
    expect(story.floor().conflicts.size).toBeGreaterThan(0);
    expect(answer(story, place(one, 'K6'))).toEqual(['Warning', 'in-conflict']);
    expect(answer(story, place(two, 'K2'))).toEqual(['Success', 'verified']);
  });

  test('hears the plant’s choice where nobody can know', () => {
    const story = begun();
    const unsure: [BelievedPlace, string][] = [
      [place('M1-F-010', 'K6'), 'not-verified'],
      [place('B1.F.45', 'K1'), 'unknown-slot'],
      [place(one, 'MAT-77'), 'unknown-reel'],
      [place(one, null), 'no-reel-told'],
      [place(one, null, 'R-100'), 'no-reel-told'],
    ];
    for (const [asked, why] of unsure) {
      expect(answer(story, asked, 'Warning')).toEqual(['Warning', why]);
      expect(answer(story, asked, 'Failed')).toEqual(['Failed', why]);
    }
    expect(answer(beginStory(), place(one, 'K1'))).toEqual(['Warning', 'unknown-slot']);
  });

  test('never hears Success for anything but a verified reel, whatever it names', () => {
    const text = fc.constantFrom('K1', 'K2', 'K9', 'R-100', 'C-200', '', '__proto__', '~T1/x/1');
    const slot = fc.constantFrom(one, two, 'M1-F-010', 'M1-R-003', 'X', '#', '__proto__');
    const floor = begun().floor();
    fc.assert(
      fc.property(fc.array(fc.record({ slot, reel: fc.option(text), part: fc.option(text) })), (rows) => {
        const places = rows.map((row) => ({ ...row, feeder: null }));
        const answers = answerPlaces(floor, 'L1', places, 'Failed');
        expect(answers).toHaveLength(places.length);
        answers.forEach(({ result }, at) => {
          const asked = places[at];
          const isVerified =
            (asked?.slot === one && asked.reel === 'K1') || (asked?.slot === two && asked.reel === 'K2');
          expect(result).toBe(isVerified ? 'Success' : 'Failed');
        });
      }),
    );
    expect(interlockWhys.filter((why) => resultOf(why, 'Warning') === 'Success')).toEqual(['verified']);
  });

  test('is turned on and off by an engineer’s word, and its last answer is kept', () => {
    const story = begun();
    const station = { station: 'placer', line: 'L1' };
    story.tell('station.answered', { ...station, results: [] });
    expect(story.floor().interlocks.get('placer')).toMatchObject({ on: false, last: { results: [] } });
    story.tell('station.interlock-ruled', { ...station, on: true, unsure: 'Failed' });
    const results = [{ slot: one, reel: 'K1', part: null, result: 'Success', why: 'verified' }] as const;
    story.tell('station.answered', { ...station, results: [...results] });
    story.tell('station.interlock-ruled', { ...station, on: false, unsure: 'Failed' });
    expect(story.floor().interlocks.get('placer')).toMatchObject({ on: false, last: { results } });
  });

  test('keeps what each place was answered last, and when the newest answer was told, also one that the log had', () => {
    const story = begun();
    const station = { station: 'placer', line: 'L1' };
    const row = (slot: string, reel: string, result: 'Success' | 'Failed') =>
      ({ slot, reel, part: null, result, why: result === 'Success' ? 'verified' : 'other-reel' }) as const;
    story.tell('station.answered-again', { ...station, times: 3 });
    expect(story.floor().interlocks.get('placer')).toBeUndefined();
    story.tell('station.answered', {
      ...station,
      results: [row(one, 'K1', 'Success'), row('M1-F-002', 'K2', 'Success'), row('?', 'K8', 'Failed')],
    });
    story.tell('station.answered', {
      ...station,
      results: [row(one, 'K2', 'Failed'), row('?', 'K9', 'Failed')],
    });
    const again = story.tell('station.answered-again', { ...station, times: 1 });
    expect(story.floor().interlocks.get('placer')?.last).toEqual({
      atMs: again.hlc.ms,
      results: [
        row('M1-F-002', 'K2', 'Success'),
        row(one, 'K2', 'Failed'),
        row('?', 'K8', 'Failed'),
        row('?', 'K9', 'Failed'),
      ],
    });
    // Reels at places that are no slot come and go; slots stay, however long nothing new was said of them.
    for (let reel = 0; reel < 300; reel += 1)
      story.tell('station.answered', { ...station, results: [row('?', `X${reel}`, 'Failed')] });
    story.tell('station.answered', { ...station, results: [row(one, 'X299', 'Success')] });
    const kept = story.floor().interlocks.get('placer')?.last?.results ?? [];
    expect(kept.slice(0, 2)).toEqual([row('M1-F-002', 'K2', 'Success'), row(one, 'X299', 'Success')]);
    expect(kept.some(({ slot, reel }) => slot === '?' && reel === 'X299')).toBe(false);
    expect(kept.length).toBeLessThan(110);
  });
});

describe('where the plant gives tickets and none proves it', () => {
  /** As a link folds it that knows the plant's key: nobody here has a ticket. */
  const judged = (story: Story) =>
    applyAll(emptyState(), [...story.entries].sort(compareEntries), {
      before: new Map(),
      claimsOf: () => null,
      signedBy: () => null,
      isOfServer: () => false,
    });

  test('a reel that only a lead’s word let on is not sure; the same word in a plant without tickets is', () => {
    const story = begun();
    const held = load(story, 'M1-F-010', 'U-300', 'K6', { verdict: 'held' });
    story.tell('hold.cleared', {
      of: idOf(held),
      line: 'L1',
      slot: 'M1-F-010',
      reason: 'looked at',
      by: 'lea',
      checked: 'tablet',
    });
    const asked = [place('M1-F-010', 'K6'), place(one, 'K1')];
    expect(answerPlaces(story.floor(), 'L1', asked, 'Failed').map(({ why }) => why)).toEqual([
      'verified',
      'verified',
    ]);
    expect(answerPlaces(judged(story), 'L1', asked, 'Failed')).toMatchObject([
      { result: 'Failed', why: 'unproven' },
      { result: 'Success', why: 'verified' },
    ]);
  });

  test('an engineer’s word turns nothing on', () => {
    const story = begun();
    expect(answersAs(story.floor(), 'placer')).toBeNull();
    const rule = (on: boolean) =>
      story.tell('station.interlock-ruled', { station: 'placer', line: 'L1', on, unsure: 'Failed' });
    rule(true);
    expect(answersAs(story.floor(), 'placer')).toBe('Failed');
    expect(answersAs(judged(story), 'placer')).toBeNull();
    rule(false);
    expect(answersAs(story.floor(), 'placer')).toBeNull();
  });
});
