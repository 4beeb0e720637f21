// A label scanned twice and its quantity typed is one reel: the newest verdict on it for its slot closes what it answers, in whatever
// order the entries arrive; and a reel that a lead cleared is of the part that it was cleared for.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyAll } from '../../../shared/floor/fold.ts';
import { createReplica, foldIn } from '../../../shared/floor/replica.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { tracePlaces } from '../../../shared/trace/ask.ts';
import { traceLog } from '../../../shared/trace/stretches.ts';
import { beginStory, counted, idOf, type Story, started, tellPlant, verified } from './story.ts';

const noQuantity = [{ code: 'no-quantity' }];
const held = { verdict: 'held', reasons: noQuantity, quantity: null, basis: null } as const;
const typed = { quantity: 800, basis: 'typed' } as const;

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  return story;
}
const clear = (story: Story, of: Entry, more: Parameters<Story['tell']>[2] = {}) =>
  story.tell(
    'hold.cleared',
    {
      of: idOf(of),
      line: 'L1',
      slot: 'M1-F-001',
      reason: 'seen',
      by: 'lea',
      checked: 'tablet',
    },
    more,
  );

describe('a label without quantity', () => {
  for (const reel of ['K-1', null]) {
    const label = { reel, lot: 'LOT7', dateCode: '2608' };
    const name = reel === null ? 'without an id' : 'with an id';

    test(`${name}, scanned twice and then typed, leaves nothing open`, () => {
      const story = begun();
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { ...label, ...held }));
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { ...label, ...held }));
      expect(story.floor().holds.size).toBe(1);
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { ...label, ...typed }));
      const floor = story.floor();
      expect(floor.holds.size).toBe(0);
      expect(floor.slots.get('L1/M1-F-001')?.tapes).toMatchObject([{ part: 'R-100', count: 800 }]);
      expect(floor.reels.size).toBe(1);
    });

    test(`${name}, cleared on one tablet and typed on the one that had scanned it, is one reel`, () => {
      const story = begun();
      const hold = story.tell('reel.verified', verified('M1-F-001', 'R-100', { ...label, ...held }), {
        tablet: 'T1',
        at: 20,
      });
      clear(story, hold, { tablet: 'T2', at: 30 });
      story.tell('reel.verified', verified('M1-F-001', 'R-100', { ...label, ...typed }), {
        tablet: 'T1',
        at: 40,
      });
      const floor = story.floor();
      expect(floor.conflicts.size).toBe(0);
      expect(floor.slots.get('L1/M1-F-001')).toMatchObject({
        tapes: [{ part: 'R-100', count: 800, basis: 'typed' }],
        ledger: { parts: 800 },
      });
      expect([...floor.reels.values()]).toMatchObject([{ count: 800, at: { slot: 'M1-F-001' } }]);
    });
  }

  test('of another lot or on another slot answers nothing', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'A', ...held }));
    story.tell('reel.verified', verified('M1-R-003', 'R-100', { lot: 'A', ...typed }));
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'B', ...typed }));
    expect(story.floor().holds.size).toBe(1);
  });

  test('loaded without an id by two tablets may be two reels: a lead is still asked', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'A' }), { tablet: 'T1', at: 20 });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'A' }), { tablet: 'T2', at: 30 });
    expect(story.floor().conflicts.size).toBe(1);
  });

  test('ends the same in every order of arrival', () => {
    const tellingArb = fc.record({
      is: fc.constantFrom('held', 'accepted', 'refused', 'cleared', 'declined'),
      tablet: fc.constantFrom('T1', 'T2'),
      reel: fc.constantFrom('K-1', null),
      at: fc.integer({ min: 20, max: 60 }),
    });
    fc.assert(
      fc.property(
        fc.array(tellingArb, { minLength: 2, maxLength: 8 }).chain((acts) => {
          const story = begun();
          const start = story.entries.at(-1);
          for (const { is, tablet, reel, at } of acts) {
            const more = { tablet, at, ...(start ? { seen: start } : {}) };
            const facts = is === 'held' ? held : is === 'refused' ? { verdict: 'refused' as const } : typed;
            if (is === 'cleared' || is === 'declined') {
              const of = story.entries.filter((entry) => entry.payload['verdict'] === 'held').at(-1);
              if (!of) continue;
              if (is === 'cleared') clear(story, of, more);
              else {
                const payload = { of: idOf(of), line: 'L1', slot: 'M1-F-001', reason: 'no', by: 'lea' };
                story.tell('hold.declined', payload, more);
              }
            } else {
              story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel, lot: 'A', ...facts }), more);
            }
          }
          const { entries } = story;
          const all = { minLength: entries.length, maxLength: entries.length };
          return fc.tuple(fc.constant(entries), fc.shuffledSubarray([...entries], all));
        }),
        ([entries, arrival]) => {
          const wanted = applyAll(emptyState(), [...entries].sort(compareEntries));
          const replica = createReplica();
          for (const entry of arrival) expect(foldIn(replica, [entry])).toBe(true);
          expect(replica.state).toEqual(wanted);
          // No hold stands beside a later verdict on the same reel.
          const verdicts = [...entries].sort(compareEntries).filter(({ kind }) => kind === 'reel.verified');
          for (const hold of wanted.holds.values()) {
            const newest = verdicts.filter(({ payload }) => payload['reel'] === hold.facts.reel).at(-1);
            expect(newest && idOf(newest)).toBe(hold.entry);
          }
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('a reel that a lead cleared', () => {
  test('is of the part that its slot wanted, with the lot and quantity of its label, on the slot, in the list and in the trace', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    const reasons = [{ code: 'supplier-part-not-approved', supplierPart: 'SUP-X', wanted: 'U-300' }];
    const label = { reel: 'K-9', supplierPart: 'SUP-X', lot: 'LOT9', quantity: 500 };
    const hold = story.tell(
      'reel.verified',
      verified('M1-F-010', null, { ...label, run: 'run-1', verdict: 'held', reasons }),
    );
    story.tell('hold.cleared', {
      of: idOf(hold),
      line: 'L1',
      slot: 'M1-F-010',
      reason: 'seen',
      by: 'lea',
      checked: 'tablet',
    });
    story.tell('panels.counted', counted('run-1', 10));
    const floor = story.floor();
    const facts = { part: 'U-300', supplierPart: 'SUP-X', lot: 'LOT9', count: 500 };
    expect(floor.slots.get('L1/M1-F-010')?.tapes).toMatchObject([facts]);
    expect(floor.reels.get('K-9')).toMatchObject(facts);
    const found = tracePlaces(traceLog(story.entries), { part: 'U-300' });
    expect(found).toMatchObject([{ slot: 'M1-F-010', lot: 'LOT9' }]);
  });
});
