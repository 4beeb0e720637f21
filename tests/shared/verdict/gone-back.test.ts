// A reel that was used up long ago and comes back, or is only spoken of: nothing takes it for a new one, and no order in which entries come makes another state.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blockOn } from '../../../shared/floor/blocks.ts';
import { applyAll } from '../../../shared/floor/fold.ts';
import { type WhyNotMerged, whyNotMerged } from '../../../shared/floor/fold-store.ts';
import { isLongGone, reelOf } from '../../../shared/floor/gone-reels.ts';
import { packageIdOf } from '../../../shared/floor/package-name.ts';
import { createReplica, foldIn, type Replica, snapshotOf } from '../../../shared/floor/replica.ts';
import { shelfFor } from '../../../shared/floor/shelf.ts';
import { emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { wantedOn } from '../../../shared/floor/wanted.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { reelLife } from '../../../shared/moisture/reel-life.ts';
import { goneThings } from '../../../shared/search/floor-things.ts';
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
import { actArb, label, tell, useUp } from './gone-story.ts';

const days = (count: number) => count * 24 * 3600;
const put = { ...label, place: 'A', via: 'typed' } as const;

/** K1 and K2 used up, and noted as such. */
function usedUp(): Story {
  const story = beginStory();
  tellPlant(story);
  useUp(story, ['K1', 'K2', 'K3']);
  story.tell('run.started', started('r1'));
  return story;
}

/** Thirty-one days later. */
function longAgo(): Story {
  const story = usedUp();
  story.tell('run.started', started('r2'), { at: days(31) });
  expect(story.floor().reels.has('K1')).toBe(false);
  return story;
}

describe('a reel that was used up', () => {
  test.each([
    { is: 'the reel', names: { reel: 'K1', lot: null, part: null } },
    { is: 'its lot', names: { reel: null, lot: 'L-K1', part: null } },
    { is: 'its part', names: { reel: null, lot: null, part: 'R-100' } },
  ])('stays while a block names $is', ({ names }) => {
    const story = usedUp();
    story.tell('material.blocked', { block: 'B1', ...names, reason: 'held back' });
    story.tell('run.started', started('r2'), { at: days(31) });
    expect(story.floor().reels.get('K1')).toMatchObject({ lot: 'L-K1', count: 0 });
    story.tell('material.released', { block: 'B1', by: 'lea', reason: 'cleared' });
    story.tell('run.started', started('r3'), { at: days(32) });
    expect(story.floor().reels.has('K1')).toBe(false);
  });

  test('is none where it came off uncounted, reckoned to be empty', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 10 }));
    story.tell('run.started', started('r1'));
    story.tell('panels.counted', { run: 'r1', line: 'L1', add: 50, panels: 50, serial: null, via: 'typed' });
    story.tell('reel.unloaded', unloaded('M1-F-001', { reel: 'K1', part: 'R-100' }));
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K2' }));
    story.tell('reel.unloaded', unloaded('M1-F-001', { reel: 'K2', part: 'R-100', quantity: 0 }));
    expect(story.floor().reels.get('K1')).toMatchObject({ count: 0, cameOff: { part: 'R-100' } });
    story.tell('run.started', started('r2'));
    story.tell('run.started', started('r3'), { at: days(31) });
    expect(story.floor().reels.has('K1')).toBe(true);
  });

  test('and came back is kept for thirty days since it was used up anew', () => {
    const story = usedUp();
    story.tell('reel.verified', verified('M1-F-002', 'R-100', { reel: 'K1' }), { at: days(29) });
    story.tell('reel.unloaded', unloaded('M1-F-002', { reel: 'K1', part: 'R-100', quantity: 0 }));
    story.tell('reel.verified', verified('M1-F-002', 'R-100', { reel: 'K4' }));
    story.tell('reel.unloaded', unloaded('M1-F-002', { reel: 'K4', part: 'R-100', quantity: 0 }));
    story.tell('run.started', started('r2'), { at: days(31) });
    expect([...story.floor().reels.keys()].sort()).toEqual(['K1', 'K3', 'K4']);
    story.tell('run.started', started('r3'), { at: days(62) });
    expect(story.floor().reels.has('K1')).toBe(false);
  });
});

describe('a reel that hands put away or baked is none that was used up', () => {
  const baked = { ...label, air: 'bake', celsius: 125, humidity: null, msl: '3', via: 'typed' } as const;
  const bake = (story: Story, at: number) => {
    const from = new Date(startMs + at * 1000).toISOString();
    story.tell('reel.aired', { ...baked, reel: 'K1', from }, { at });
  };

  test('where it came back, was baked and lies on a shelf uncounted: its bake stays known', () => {
    const story = longAgo();
    bake(story, days(32));
    story.tell('reel.put', { ...put, reel: 'K1' }, { at: days(34) });
    for (const [run, at] of [
      ['r3', 35],
      ['r4', 70],
    ] as const)
      story.tell('run.started', started(run), { at: days(at) });
    expect(story.floor().reels.get('K1')).toMatchObject({ place: 'A', count: 0, gone: true });
    expect(story.floor().exposures.get('K1')?.periods).toMatchObject([{ air: 'bake' }]);
  });

  test('where it was baked, and nobody said where it lies', () => {
    const story = longAgo();
    bake(story, days(32));
    story.tell('run.started', started('r3'), { at: days(35) });
    story.tell('run.started', started('r4'), { at: days(70) });
    expect(story.floor().exposures.get('K1')?.periods).toMatchObject([{ air: 'bake' }]);
  });

  test('where it was joined, reckoned to be empty, and put away with what was on it', () => {
    const story = usedUp();
    story.tell('reel.put', { ...put, reel: 'K1' });
    story.tell('run.started', started('r2'), { at: days(31) });
    story.tell('run.started', started('r3'), { at: days(62) });
    expect(story.floor().reels.get('K1')).toMatchObject({ lot: 'L-K1', place: 'A' });
    expect(story.floor().reels.get('K1')?.gone).toBeUndefined();
  });

  test('and its time counts anew from when somebody had it in hand', () => {
    const story = usedUp();
    const from = new Date(startMs + days(29) * 1000).toISOString();
    const facts = { ...baked, air: 'floor', celsius: null, reel: 'K1', from } as const;
    story.tell('reel.aired', facts, { at: days(29) });
    story.tell('run.started', started('r2'), { at: days(31) });
    expect(story.floor().reels.has('K1')).toBe(true);
  });
});

describe('a reel that was used up long ago', () => {
  test('is not poured together with another, and what hands put into another makes that one of its kind', () => {
    const story = longAgo();
    story.tell('reel.put', { ...put, reel: 'K9' });
    const why = (): WhyNotMerged | null => {
      const [kept, from] = [reelOf(story.floor(), 'K9'), reelOf(story.floor(), 'K1')];
      return kept && from ? whyNotMerged(story.floor(), kept, from) : null;
    };
    expect(why()).toBe('gone');
    expect(isLongGone(story.floor(), 'K9')).toBe(false);
    const facts = {
      part: 'R-100',
      lot: 'L-1',
      quantity: 90,
      sd: 0,
      basis: 'combined',
      via: 'typed',
    } as const;
    story.tell('reel.merged', { ...facts, reel: 'K9', from: 'K1' });
    expect(story.floor().reels.get('K9')).toMatchObject({ count: 500, gone: true });
  });

  test('passes that on to what is cut off it, also where the piece bears an id that a mark fits', () => {
    const story = longAgo();
    const own = { part: 'R-100', lot: null, quantity: 20, left: 20, via: 'typed' } as const;
    story.tell('reel.put', { ...put, reel: 'K1' });
    const chain = story.entries.filter(({ tablet }) => tablet === 'T1').length;
    const into = packageIdOf(`T1/${story.entries[0]?.epoch}/${chain + 1}`);
    story.tell('reel.split', { ...own, reel: 'K1', into });
    expect(story.floor().reels.get(into)).toMatchObject({ count: 20, lot: 'L-1', gone: true });
  });

  test('is told by its label, and known as one, whatever names it first', () => {
    const aired = { ...label, air: 'floor', celsius: null, humidity: null, msl: '3', via: 'typed' } as const;
    const from = new Date(startMs + days(32) * 1000).toISOString();
    const known = { part: 'R-100', lot: 'L-1', count: 0, gone: true };
    const one = longAgo();
    one.tell('reel.aired', { ...aired, reel: 'K1', from });
    expect(one.floor().reels.get('K1')).toMatchObject(known);
    const other = longAgo();
    other.tell('reel.put', { ...put, reel: 'K1' });
    expect(other.floor().reels.get('K1')).toMatchObject(known);
    // A machine's word of when it was opened counts for it as for one that is known.
    const third = longAgo();
    third.tell('parts.aired', {
      line: 'L1',
      station: 'S1',
      says: 'opened',
      late: 0,
      reels: ['K1', 'nobody'],
    });
    expect([...third.floor().exposures.keys()]).toEqual(['K1']);
    expect(third.floor().reels.get('K1')).toMatchObject({ count: 0, gone: true });
  });

  test.each(['reel.put', 'reel.aired'] as const)(
    'and was spoken of by its id alone is told by the label that %s reads later, and its count stays',
    (kind) => {
      const counted = { line: null, slot: null, reel: 'K1', part: null, lot: null, panels: 0 } as const;
      const story = longAgo();
      story.tell('reel.counted', { ...counted, quantity: 40, sd: 0, basis: 'one-by-one' });
      expect(story.floor().reels.get('K1')).toMatchObject({ part: null, lot: null, count: 40, gone: true });
      story.tell('material.blocked', {
        block: 'B1',
        reel: null,
        lot: 'L-1',
        part: null,
        reason: 'held back',
      });
      if (kind === 'reel.put') story.tell(kind, { ...put, reel: 'K1' });
      else {
        const from = new Date(startMs + days(31) * 1000).toISOString();
        const air = { air: 'floor', celsius: null, humidity: null, msl: '3', from } as const;
        story.tell(kind, { ...label, ...air, reel: 'K1', via: 'typed' });
      }
      const floor = story.floor();
      const reel = floor.reels.get('K1');
      expect(reel).toMatchObject({ part: 'R-100', lot: 'L-1', count: 40, basis: 'one-by-one', gone: true });
      expect(reel && blockOn(floor, reel)).toBe('B1');
      // What is told already stays: another label does not make it another reel.
      story.tell('reel.put', { ...put, reel: 'K1', part: 'C-200', lot: 'L-2' });
      expect(story.floor().reels.get('K1')).toMatchObject({ part: 'R-100', lot: 'L-1' });
    },
  );

  test('that had no id stays one when an entry gives it an id', () => {
    const story = beginStory();
    tellPlant(story);
    const load = story.tell('reel.verified', verified('M1-F-001', 'R-100'));
    story.tell('reel.unloaded', unloaded('M1-F-001', { part: 'R-100', quantity: 0 }));
    useUp(story, ['K2']);
    for (const [run, at] of [
      ['r1', 100],
      ['r2', days(31)],
    ] as const)
      story.tell('run.started', started(run), { at });
    expect(story.floor().reels.has(`~${idOf(load)}`)).toBe(false);
    const reel = packageIdOf(idOf(load));
    const facts = { ...label, sd: 0, basis: 'label', via: 'typed' } as const;
    story.tell('reel.named', { ...facts, reel, was: `~${idOf(load)}` });
    expect(story.floor().reels.get(reel)).toMatchObject({ reel, part: 'R-100', count: 0, gone: true });
  });

  test('is offered as one that a lead must decide on, and found by its whole id alone', () => {
    const story = longAgo();
    expect(goneThings(story.floor(), ' K1 ')).toMatchObject([{ thing: { reel: 'K1' }, names: ['K1'] }]);
    expect(goneThings(story.floor(), 'K')).toEqual([]);
    story.tell('reel.put', { ...put, reel: 'K1' });
    const counted = { line: null, slot: null, reel: 'K1', part: 'R-100', lot: null, panels: 0 } as const;
    story.tell('reel.counted', { ...counted, quantity: 40, sd: 0, basis: 'one-by-one' });
    const floor = story.floor();
    const wanted = wantedOn(floor, 'brook-top-a', 'M1-F-001');
    const at = { line: 'L1', setup: 'brook-top-a', nowMs: startMs + days(32) * 1000 };
    const shelf = wanted ? shelfFor(floor, at)(wanted) : [];
    const there = shelf.find(({ reel }) => reel.reel === 'K1');
    expect(there?.fit).toMatchObject({ verdict: 'held', reasons: [{ code: 'reel-gone', reel: 'K1' }] });
    expect(goneThings(floor, 'K1')).toEqual([]);
  });

  test('has no floor life left that anybody knew of, until it is baked', () => {
    const story = longAgo();
    story.tell('reel.put', { ...put, reel: 'K1' });
    const part = { level: '3', bodyMm: 1 } as const;
    const lifeAt = (at: number, reel: string) =>
      reelLife(story.floor(), reel, { line: 'L1', part, nowMs: startMs + at * 1000 });
    expect(lifeAt(days(32), 'K9')).toMatchObject({ leftSeconds: 168 * 3600, isOpened: false });
    expect(lifeAt(days(32), 'K1')).toMatchObject({ leftSeconds: 0, expiresMs: null, isOpened: true });
    // Over since now at the latest; once it is told of, since then.
    expect(lifeAt(days(32), 'K1')?.endsByMs).toBe(startMs + days(32) * 1000);
    const facts = { ...label, msl: '3', via: 'typed', reel: 'K1', humidity: null } as const;
    const airOf = (at: number, air: 'bake' | 'floor') => {
      const from = new Date(startMs + at * 1000).toISOString();
      story.tell('reel.aired', { ...facts, air, celsius: air === 'bake' ? 125 : null, from }, { at });
    };
    airOf(days(33), 'bake');
    airOf(days(60), 'floor');
    expect(lifeAt(days(60), 'K1')?.leftSeconds).toBe(168 * 3600);
    // From then on it ends as any other does.
    const endMs = startMs + days(67) * 1000;
    expect(lifeAt(days(61), 'K1')).toMatchObject({ expiresMs: endMs, endsByMs: endMs });
    expect(lifeAt(days(68), 'K1')).toMatchObject({ leftSeconds: 0, expiresMs: endMs, endsByMs: endMs });
  });
});

/** What a tablet has that gets entries in pieces, and begins anew from all it has where it cannot go back. */
function arrive(pieces: readonly (readonly Entry[])[]): FloorState {
  let replica: Replica = createReplica(undefined, null, 1);
  const all: Entry[] = [];
  for (const [at, piece] of pieces.entries()) {
    all.push(...piece);
    // Now and then it is closed, and goes on from what it kept.
    const kept = at % 3 === 2 ? snapshotOf(replica) : null;
    if (kept) replica = createReplica(kept, null, 1);
    if (foldIn(replica, piece)) continue;
    replica = createReplica(undefined, null, 1);
    foldIn(replica, all);
  }
  return replica.state;
}

describe('entries that come late', () => {
  test('name a reel that left meanwhile, and bring it back from the log', () => {
    const story = usedUp();
    const late = story.tell('reel.verified', verified('M1-F-002', 'R-100', { reel: 'K1', lot: 'L-K1' }), {
      tablet: 'T2',
      at: days(20),
    });
    story.tell('run.started', started('r2'), { at: days(31), tablet: 'T3' });
    const sorted = [...story.entries].sort(compareEntries);
    const others = sorted.filter((entry) => entry !== late);
    expect(arrive([others]).reels.has('K1')).toBe(false);
    const state = arrive([others, [late]]);
    expect(state.reels.get('K1')).toMatchObject({ lot: 'L-K1', at: { slot: 'M1-F-002' } });
    expect(state.reels.get('K1')?.gone).toBeUndefined();
    expect(state).toEqual(applyAll(emptyState(), sorted));
  });

  test('of a tablet that did not know that it had left put it on as one that was used up', () => {
    const story = longAgo();
    story.tell('reel.verified', verified('M1-F-002', 'R-100', { reel: 'K1', lot: 'L-K1' }), {
      tablet: 'T2',
      at: days(32),
    });
    expect(story.floor().reels.get('K1')).toMatchObject({
      at: { slot: 'M1-F-002' },
      lot: 'L-K1',
      gone: true,
    });
  });

  test('make the same state in any order', () => {
    const turn = fc.record({ at: fc.integer({ min: 0, max: 120 }), act: actArb });
    let left = 0;
    fc.assert(
      fc.property(
        fc.array(turn, { minLength: 4, maxLength: 24 }),
        fc.array(fc.nat(1000), { minLength: 60, maxLength: 60 }),
        (turns, order) => {
          // Some acts a day, and runs that start in between for a third of a year.
          const told = turns.map(({ at, act }) => ({ ...act, at: 100 + days(at) }));
          const start = { is: 'run', slot: 'M1-F-001', reel: null, which: 0 } as const;
          const runs = [0, 10, 35, 45, 70, 90, 125].map((at, run) => {
            const tablet = run % 2 === 0 ? 'T1' : 'T2';
            return { ...start, tablet, at: 90 + days(at) } as const;
          });
          const { entries } = tell([...told, ...runs].sort((a, b) => a.at - b.at));
          const sorted = [...entries].sort(compareEntries);
          const whole = applyAll(emptyState(), sorted);
          if (whole.goneReels.size > 0) left += 1;
          const mixed = sorted
            .map((entry, at) => ({ entry, key: order[at % order.length] ?? 0 }))
            .sort((a, b) => a.key - b.key)
            .map(({ entry }) => entry);
          const pieces = Array.from({ length: Math.ceil(mixed.length / 5) }, (_, at) =>
            mixed.slice(at * 5, at * 5 + 5),
          );
          const state = arrive(pieces);
          expect(state).toEqual(whole);
          expect([...state.reels.keys()]).toEqual([...whole.reels.keys()]);
        },
      ),
      { numRuns: 60 },
    );
    expect(left).toBeGreaterThan(20);
  });
});
