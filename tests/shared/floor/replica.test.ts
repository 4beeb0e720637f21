// A replica that gets its entries late, early, doubled and in batches says the same as a fold of the sorted log.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyAll } from '../../../shared/floor/fold.ts';
import { createReplica, foldIn, foldSteps, type Replica, snapshotOf } from '../../../shared/floor/replica.ts';
import { copyState, emptyState } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { mergeLogs } from '../../../shared/log/merge.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { beginStory, counted, idOf, started, tellPlant, unloaded, verified } from './story.ts';

const slots = ['M1-F-001', 'M1-F-002', 'M1-F-010', 'M1-R-003'];
const tablets = ['T1', 'T2', 'T3'];

/** One act of one tablet, as numbers: what, where, which reel, which tablet, how many seconds later (or earlier). */
const act = fc.record({
  what: fc.constantFrom(
    'load',
    'splice',
    'hold',
    'clear',
    'unload',
    'count',
    'panels',
    'run',
    'end',
    'back',
    'settle',
    'sweep',
  ),
  slot: fc.nat(slots.length - 1),
  reel: fc.nat(5),
  tablet: fc.nat(tablets.length - 1),
  later: fc.integer({ min: -5, max: 5 }),
  of: fc.nat(40),
});
type Act = typeof act extends fc.Arbitrary<infer T> ? T : never;

/** Plays acts of several tablets whose clocks disagree; corrections and settlements name entries and conflicts that exist. */
function play(acts: readonly Act[]): readonly Entry[] {
  const story = beginStory();
  tellPlant(story);
  let second = 100;
  let runs = 0;
  for (const { what, slot, reel, tablet, later, of } of acts) {
    second = Math.max(50, second + later);
    const telling = { tablet: tablets[tablet] ?? 'T1', at: second };
    const place = slots[slot] ?? 'M1-F-001';
    const run = `run-${Math.max(1, runs)}`;
    const named = story.entries[of % story.entries.length];
    const facts = { reel: `K${reel}`, lot: `lot-${reel % 2}`, quantity: 100 + reel };
    switch (what) {
      case 'load':
      case 'splice':
      case 'sweep':
        story.tell('reel.verified', verified(place, 'R-100', { ...facts, act: what }), telling);
        break;
      case 'hold':
        story.tell('reel.verified', verified(place, 'R-100', { ...facts, verdict: 'held' }), telling);
        break;
      case 'clear': {
        const holds = story.entries.filter((entry) => entry.payload['verdict'] === 'held');
        const held = holds[of % Math.max(1, holds.length)];
        const where = { line: 'L1', slot: null, reason: 'seen', by: 'lea', checked: 'tablet' } as const;
        if (held) story.tell('hold.cleared', { of: idOf(held), ...where }, telling);
        break;
      }
      case 'unload':
        story.tell('reel.unloaded', unloaded(place), telling);
        break;
      case 'count': {
        const what = {
          reel: null,
          part: null,
          lot: null,
          quantity: 50,
          sd: 2,
          basis: 'weighed',
          panels: 0,
        } as const;
        story.tell('reel.counted', { line: 'L1', slot: place, ...what }, telling);
        break;
      }
      case 'panels':
        story.tell('panels.counted', counted(run, reel + 1), telling);
        break;
      case 'run':
        runs += 1;
        story.tell('run.started', started(`run-${runs}`), telling);
        break;
      case 'end':
        story.tell('run.ended', { run, line: 'L1', panels: 0, note: '' }, telling);
        break;
      case 'back':
        if (named)
          story.tell('entry.corrected', { of: idOf(named), line: 'L1', slot: null, reason: 'slip' }, telling);
        break;
      case 'settle': {
        const [conflict] = story.floor().conflicts.values();
        const keep = conflict?.entries[of % 2] ?? null;
        const why = { line: 'L1', slot: null, reason: 'seen', by: 'lea' };
        if (conflict) story.tell('conflict.settled', { conflict: conflict.conflict, keep, ...why }, telling);
        break;
      }
    }
  }
  return story.entries;
}

/** The entries in another order, cut into batches, some given twice; drawn from numbers so that fast-check can shrink it. */
function arrivals(log: readonly Entry[], keys: readonly number[]): readonly (readonly Entry[])[] {
  const key = (at: number) => keys[at % keys.length] ?? 0;
  const mixed = log
    .map((entry, at) => ({ entry, key: key(at) * 7919 + key(at + 3) }))
    .sort((a, b) => a.key - b.key)
    .map(({ entry }) => entry);
  const batches: Entry[][] = [];
  let from = 0;
  for (let turn = 0; from < mixed.length; turn += 1) {
    const size = 1 + (key(turn) % 9);
    batches.push(mixed.slice(from, from + size));
    if (key(turn + 1) % 3 === 0) batches.push(mixed.slice(Math.max(0, from - 4), from + 2));
    from += size;
  }
  return batches;
}

/** Feeds a replica as its owner must: where an entry belongs before the oldest copy, all is folded anew. */
function feed(replica: Replica, batches: readonly (readonly Entry[])[], known: Entry[]): Replica {
  let current = replica;
  for (const batch of batches) {
    known.push(...batch);
    if (foldIn(current, batch)) continue;
    current = createReplica();
    expect(foldIn(current, mergeLogs(known).entries)).toBe(true);
  }
  return current;
}

const fullFold = (log: readonly Entry[]) => applyAll(emptyState(), [...log].sort(compareEntries));
const keysArb = fc.array(fc.nat(1000), { minLength: 1, maxLength: 50 });

describe('foldIn()', () => {
  test('gives the state of the sorted log, whatever the order, the batches and the repeats', () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 60 }), keysArb, (acts, keys) => {
        const log = play(acts);
        const replica = feed(createReplica(), arrivals(log, keys), []);
        expect(replica.state).toEqual(fullFold(log));
        expect(replica.count).toBe(log.length);
      }),
      { numRuns: 120 },
    );
  });

  test('goes on from a snapshot as if it had folded all, and leaves the snapshot alone', () => {
    fc.assert(
      fc.property(fc.array(act, { minLength: 5, maxLength: 60 }), fc.nat(60), keysArb, (acts, cut, keys) => {
        const log = [...play(acts)].sort(compareEntries);
        const first = createReplica();
        foldIn(first, log.slice(0, 1 + (cut % log.length)));
        const snapshot = snapshotOf(first);
        if (!snapshot) throw new TypeError('Cannot go on as a folded replica must give a snapshot');
        const kept = copyState(snapshot.state);
        const rest = log.slice(snapshot.count);
        const replica = feed(createReplica(snapshot), arrivals(rest, keys), log.slice(0, snapshot.count));
        expect(replica.state).toEqual(fullFold(log));
        expect(replica.count).toBe(log.length);
        expect(snapshot.state).toEqual(kept);
      }),
      { numRuns: 60 },
    );
  });

  test('changes nothing for entries that are there already', () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 40 }), keysArb, (acts, keys) => {
        const log = play(acts);
        const replica = createReplica();
        foldIn(replica, log);
        const before = copyState(replica.state);
        for (const batch of arrivals(log, keys)) {
          expect(foldIn(replica, batch)).toBe(true);
          expect(replica.state).toEqual(before);
          expect(replica.count).toBe(log.length);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('takes a late entry into a long log through its copies, and asks for a fold from the start only beyond the oldest', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('run.started', started('run-1'));
    for (let panel = 0; panel < 6000; panel += 1) story.tell('panels.counted', counted('run-1', 1));
    const late = (at: number) =>
      story.tell('panels.counted', counted('run-1', 1000), { tablet: `late-${at}`, at });
    const log = [...story.entries];
    const replica = createReplica();
    foldIn(replica, log);
    expect(foldIn(replica, [late(5900)])).toBe(true);
    expect(foldIn(replica, [late(3000), late(4000)])).toBe(true);
    expect(replica.state.runs.get('run-1')?.done).toBe(9000);
    expect(replica.count).toBe(log.length + 3);
    expect(foldIn(replica, [late(100)])).toBe(false);
    expect(replica.count).toBe(log.length + 3);
    expect(foldIn(replica, [])).toBe(true);
  });

  test('keeps copies few: the tail stays short however long the log grows', () => {
    const story = beginStory();
    story.tell('run.started', started('run-1'));
    const replica = createReplica();
    for (let panel = 0; panel < 12_000; panel += 1)
      foldIn(replica, [story.tell('panels.counted', counted('run-1', 1))]);
    expect(replica.marks.length).toBeLessThanOrEqual(12);
    expect(replica.tail.length).toBeLessThan(6000);
    expect(replica.tail.length).toBe(replica.count - (replica.marks[0]?.count ?? 0));
  });
});

test('between two steps of `foldSteps()` the floor is that of some entries in folding order, and loses nothing that it had', () => {
  fc.assert(
    fc.property(fc.array(act, { minLength: 3, maxLength: 30 }), fc.nat(30), (acts, cut) => {
      const log = [...play(acts)].sort(compareEntries);
      const early = log.filter((_, at) => (at + cut) % 3 !== 0);
      const replica = createReplica();
      foldIn(replica, early);
      const rest = log.filter((entry) => !early.includes(entry));
      const steps = foldSteps(replica, rest);
      const before = { count: replica.count, state: copyState(replica.state) };
      for (let step = steps.next(); !step.done; step = steps.next()) {
        expect(replica.count).toBeGreaterThanOrEqual(before.count);
        const upTo = log.filter((entry) => replica.position && compareEntries(entry, replica.position) <= 0);
        if (replica.count === before.count) expect(replica.state).toEqual(before.state);
        else expect([replica.count, replica.state]).toEqual([upTo.length, fullFold(upTo)]);
      }
      expect([replica.count, replica.state]).toEqual([log.length, fullFold(log)]);
    }),
    { numRuns: 60 },
  );
});

test('`snapshotOf()` answers null before any entry', () => {
  expect(snapshotOf(createReplica())).toBeNull();
});
