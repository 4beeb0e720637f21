// Whatever order the entries of several tablets arrive in, cut into whatever pages, some of them twice and some late: every tablet
// ends with the same floor, its disagreements included.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyAll } from '../../../shared/floor/fold.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { arrivals, receive, textOf } from './arrivals.ts';
import { beginStory, counted, idOf, started, tellPlant, unloaded, verified } from './story.ts';

const tablets = ['T1', 'T2', 'T3'] as const;
const slots = ['M1-F-001', 'M1-R-003'] as const;
const reels = ['K1', 'K2', 'K3'] as const;

/** One act on one of the tablets, told at a time that may run behind the others'. */
const actArb = fc.record({
  is: fc.constantFrom('load', 'splice', 'unload', 'count', 'panels', 'correct', 'settle'),
  tablet: fc.constantFrom(...tablets),
  slot: fc.constantFrom(...slots),
  reel: fc.constantFrom(...reels),
  at: fc.integer({ min: 20, max: 60 }),
});
type Act = typeof actArb extends fc.Arbitrary<infer A> ? A : never;

function tell(acts: readonly Act[]): readonly Entry[] {
  const story = beginStory();
  tellPlant(story);
  const start = story.tell('run.started', started('r1'));
  for (const { is, tablet, slot, reel, at } of acts) {
    const telling = { tablet, at, seen: start };
    const loaded = story.entries.filter((entry) => entry.kind === 'reel.verified').at(-1);
    if (is === 'load' || is === 'splice') {
      const facts = verified(slot, 'R-100', { act: is, reel, lot: `L-${reel}`, run: 'r1' });
      story.tell('reel.verified', facts, telling);
    } else if (is === 'unload') {
      story.tell('reel.unloaded', unloaded(slot, { run: 'r1', reel, quantity: 10 }), telling);
    } else if (is === 'count') {
      const counts = { quantity: 500, sd: 2, basis: 'weighed' as const, panels: 0 };
      story.tell('reel.counted', { line: 'L1', slot, reel, part: 'R-100', lot: null, ...counts }, telling);
    } else if (is === 'panels') {
      story.tell('panels.counted', counted('r1', 7), telling);
    } else if (is === 'correct' && loaded) {
      story.tell('entry.corrected', { of: idOf(loaded), line: 'L1', slot, reason: 'wrong' }, telling);
    } else if (is === 'settle') {
      const conflict = [...story.floor().conflicts.values()][0];
      const keep = conflict?.entries[0] ?? null;
      const facts = {
        conflict: conflict?.conflict ?? 'none',
        line: 'L1',
        slot,
        keep,
        reason: 'seen',
        by: 'lea',
      };
      story.tell('conflict.settled', facts, telling);
    }
  }
  return story.entries;
}

describe('entries of several tablets', () => {
  test('give the same floor and the same disagreements in every order, with drops and repeats', () => {
    let disagreements = 0;
    fc.assert(
      fc.property(
        fc.array(actArb, { minLength: 1, maxLength: 25 }).chain((acts) => {
          const entries = tell(acts);
          return fc.tuple(fc.constant(entries), arrivals(entries), arrivals(entries));
        }),
        ([entries, one, two]) => {
          const wanted = applyAll(emptyState(), [...entries].sort(compareEntries));
          disagreements += wanted.conflicts.size;
          const text = textOf(wanted);
          expect(textOf(receive(one))).toBe(text);
          expect(textOf(receive(two))).toBe(text);
        },
      ),
      { numRuns: 200 },
    );
    // The acts are such that tablets do disagree: else nothing was tried.
    expect(disagreements).toBeGreaterThan(20);
  });
});
