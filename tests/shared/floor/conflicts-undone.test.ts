// What contradicts after entries were taken back, in every order of arrival on three tablets: what still contradicts is told, what does
// not is not, and a conflict that an entry mended is back where the entry is taken back.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyAll, applyEntry } from '../../../shared/floor/fold.ts';
import { createReplica, foldIn } from '../../../shared/floor/replica.ts';
import { emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { beginStory, idOf, type Story, tellPlant, unloaded, verified } from './story.ts';

const tablets = ['T1', 'T2', 'T3'] as const;
const slots = ['M1-F-001', 'M1-F-002', 'M1-R-003'] as const;
const reels = ['K1', 'K2', 'K3'] as const;

const actArb = fc.record({
  is: fc.constantFrom('load', 'load', 'load', 'splice', 'unload', 'correct', 'correct'),
  tablet: fc.constantFrom(...tablets),
  slot: fc.constantFrom(...slots),
  reel: fc.constantFrom(...reels),
  at: fc.integer({ min: 20, max: 60 }),
  which: fc.nat(20),
});
type Act = typeof actArb extends fc.Arbitrary<infer A> ? A : never;

function tell(acts: readonly Act[]): Story {
  const story = beginStory();
  tellPlant(story);
  const start = story.entries.at(-1);
  for (const { is, tablet, slot, reel, at, which } of acts) {
    const seen = start ? { seen: start } : {};
    if (is === 'load' || is === 'splice')
      story.tell('reel.verified', verified(slot, 'R-100', { act: is, reel, lot: `L-${reel}` }), {
        tablet,
        at,
        ...seen,
      });
    else if (is === 'unload')
      story.tell('reel.unloaded', unloaded(slot, { reel, part: 'R-100' }), { tablet, at, ...seen });
    else {
      const done = story.entries.filter(({ kind }) => kind === 'reel.verified' || kind === 'reel.unloaded');
      const of = done[which % Math.max(1, done.length)];
      // Nobody takes back what he has not seen.
      if (of)
        story.tell(
          'entry.corrected',
          { of: idOf(of), line: 'L1', slot: null, reason: 'slip' },
          { tablet, at, seen: of },
        );
    }
  }
  return story;
}

const fold = (entries: readonly Entry[]) => applyAll(emptyState(), [...entries].sort(compareEntries));
const standing = (floor: FloorState) =>
  JSON.stringify(
    [...floor.slots].map(([key, { tapes }]) => [key, tapes.map(({ reel, entry }) => [reel, entry])]).sort(),
  );
/** Reels on slots that contradict: of what kind, where and what. */
const told = (floor: FloorState) =>
  [...floor.conflicts.values()]
    .filter(({ kind }) => kind === 'reel-on-two-slots' || kind === 'slot-loaded-twice')
    .map(({ kind, slots: at, reel }) => JSON.stringify([kind, [...at].sort(), reel]))
    .sort();

/** True where every verdict put a tape on its slot: a label scanned again puts none, and stands for the scan before it. */
function isEachNew(entries: readonly Entry[]): boolean {
  const state = emptyState();
  return [...entries].sort(compareEntries).every((entry) => {
    applyEntry(state, entry);
    if (entry.kind !== 'reel.verified') return true;
    const id = entryId(entry);
    return [...state.slots.values()].some(({ tapes }) => tapes.some((tape) => tape.entry === id));
  });
}

/** Reels that stand on two slots: `reel slot slot`. */
function twice(floor: FloorState): readonly string[] {
  const at = [...floor.slots.values()].flatMap(({ slot, tapes }) =>
    [...new Set(tapes.map(({ reel }) => reel))].map((reel) => [reel, slot] as const),
  );
  return at
    .flatMap(([reel, slot]) =>
      at
        .filter(([other, there]) => other === reel && there > slot)
        .map(([, there]) => `${reel} ${slot} ${there}`),
    )
    .sort();
}
const twiceTold = (floor: FloorState) =>
  [
    ...new Set(
      [...floor.conflicts.values()].flatMap(({ kind, reel, slots: at }) =>
        kind === 'reel-on-two-slots' ? [`${reel} ${[...at].sort().join(' ')}`] : [],
      ),
    ),
  ].sort();

const runs = { numRuns: 600 };

describe('after entries of three tablets, some of them taken back', () => {
  test('a reel is told to stand on two slots where it does, and nowhere else', () => {
    let found = 0;
    fc.assert(
      fc.property(fc.array(actArb, { minLength: 1, maxLength: 16 }), (acts) => {
        const floor = fold(tell(acts).entries);
        found += twice(floor).length;
        expect(twiceTold(floor)).toEqual(twice(floor));
      }),
      runs,
    );
    expect(found).toBeGreaterThan(100);
  });

  test('a reel is where a slot holds it, and off the line where none does', () => {
    fc.assert(
      fc.property(fc.array(actArb, { minLength: 1, maxLength: 16 }), (acts) => {
        const floor = fold(tell(acts).entries);
        for (const { reel, at } of floor.reels.values()) {
          const holds = [...floor.slots.values()].filter(({ tapes }) =>
            tapes.some((tape) => tape.reel === reel),
          );
          expect(
            holds.map(({ slot }) => slot),
            reel,
          ).toEqual(at === null ? [] : expect.arrayContaining([at.slot]));
        }
      }),
      runs,
    );
  });

  // More may be told than that, where a step that is not its slot's newest could not be undone: a lead then looks once too often.
  test('what contradicts had the entries never been is told, where the same reels stand', () => {
    let compared = 0;
    let contradicting = 0;
    fc.assert(
      fc.property(fc.array(actArb, { minLength: 1, maxLength: 12 }), (acts) => {
        const { entries } = tell(acts);
        const taken = new Set(
          entries.flatMap(({ kind, payload }) => (kind === 'entry.corrected' ? [payload['of']] : [])),
        );
        if (taken.size === 0 || !isEachNew(entries)) return;
        // One step a slot is kept for taking back.
        const at = entries.filter((entry) => taken.has(entryId(entry))).map(({ payload }) => payload['slot']);
        if (new Set(at).size < at.length) return;
        const floor = fold(entries);
        const never = fold(
          entries.filter((entry) => entry.kind !== 'entry.corrected' && !taken.has(entryId(entry))),
        );
        // Of several steps on one slot the newest alone can be taken back.
        if (standing(floor) !== standing(never)) return;
        compared += 1;
        contradicting += never.conflicts.size;
        expect(told(floor)).toEqual(expect.arrayContaining([...told(never)]));
      }),
      { numRuns: 2000 },
    );
    expect(compared).toBeGreaterThan(200);
    expect(contradicting).toBeGreaterThan(50);
  });

  test('every tablet ends with the same, whatever came first', () => {
    fc.assert(
      fc.property(
        fc.array(actArb, { minLength: 2, maxLength: 14 }).chain((acts) => {
          const { entries } = tell(acts);
          const all = { minLength: entries.length, maxLength: entries.length };
          return fc.tuple(fc.constant(entries), fc.shuffledSubarray([...entries], all));
        }),
        ([entries, mixed]) => {
          let replica = createReplica();
          for (const [at, entry] of mixed.entries()) {
            if (foldIn(replica, [entry])) continue;
            replica = createReplica();
            foldIn(replica, mixed.slice(0, at + 1));
          }
          const wanted = fold(entries);
          expect([standing(replica.state), told(replica.state)]).toEqual([standing(wanted), told(wanted)]);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('told by hand', () => {
  const load = (story: Story, slot: string, reel: string, tablet = 'T1') =>
    story.tell('reel.verified', verified(slot, 'R-100', { reel }), { tablet });
  const back = (story: Story, of: Entry) =>
    story.tell('entry.corrected', { of: idOf(of), line: 'L1', slot: null, reason: 'slip' });
  const kinds = (story: Story) => [...story.floor().conflicts.values()].map(({ kind }) => kind);
  function begun(): Story {
    const story = beginStory();
    tellPlant(story);
    return story;
  }

  test('a reel on two slots is on one, once another is loaded onto the other; and on two where that load is taken back', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    load(story, 'M1-R-003', 'K1', 'T2');
    expect(kinds(story)).toEqual(['reel-on-two-slots']);
    const anew = load(story, 'M1-F-001', 'K2');
    expect(kinds(story)).toEqual(['slot-loaded-twice']);
    back(story, anew);
    expect(kinds(story)).toEqual(['reel-on-two-slots']);
  });

  test('a slot loaded twice is so again where the unload that mended it is taken back', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    load(story, 'M1-F-001', 'K2', 'T2');
    const off = story.tell('reel.unloaded', unloaded('M1-F-001', { reel: 'K2' }));
    expect(kinds(story)).toEqual([]);
    back(story, off);
    expect(kinds(story)).toEqual(['slot-loaded-twice']);
  });

  test('an unload taken back after another reel came on leaves two reels for one slot', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    const off = story.tell('reel.unloaded', unloaded('M1-F-001', { reel: 'K1' }));
    load(story, 'M1-F-001', 'K2', 'T2');
    expect(kinds(story)).toEqual([]);
    back(story, off);
    expect(kinds(story)).toEqual(['slot-loaded-twice']);
  });

  test('of three loads the middle one is taken back: the first and the last contradict', () => {
    const story = begun();
    const first = load(story, 'M1-F-001', 'K1');
    const middle = load(story, 'M1-F-001', 'K2', 'T2');
    const last = load(story, 'M1-F-001', 'K3', 'T3');
    back(story, middle);
    expect([...story.floor().conflicts.values()].map(({ entries }) => entries)).toEqual([
      [idOf(first), idOf(last)],
    ]);
  });
});
