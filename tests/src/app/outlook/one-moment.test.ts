// A line's supply is worked out in steps while the floor changes between them: what comes of it is what one go would give at the end, never half of this floor
// and half of that one; and it comes, however fast entries do.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { createReplica, foldIn } from '../../../../shared/floor/replica.ts';
import { lineCalendar } from '../../../../shared/forecast/line-calendar.ts';
import { answerSupply } from '../../../../shared/forecast/supply.ts';
import { lineOutlook, type Outlook } from '../../../../shared/outlook/line.ts';
import { type Supply, supplyQuestionSteps, supplySteps } from '../../../../shared/outlook/supply.ts';
import { ofOneMoment, RESTARTS } from '../../../../src/app/outlook/one-moment.ts';
import {
  beginStory,
  type Story,
  started,
  startMs,
  tellPlant,
  verified,
  wantedSlot,
} from '../../../shared/floor/story.ts';
import { lineSupply } from '../../../shared/outlook/compute.ts';

const slots = {
  'M1-F-001': wantedSlot('M1-F-001', 'R-100'),
  'M1-F-002': wantedSlot('M1-F-002', 'R-200'),
  'M1-F-003': wantedSlot('M1-F-003', 'C-200', { alternates: ['C-201'] }),
};

/** A run of 4000 panels that needs more of every part than its slots have, and a store with a reel of each. */
function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  const facts = { product: 'Brook', side: 'top', revision: 'B', line: 'L1', source: 'test' } as const;
  story.tell('setup.taken', { setup: 'brook-b', ...facts, slots: Object.values(slots) });
  story.tell('setup.chosen', { line: 'L1', setup: 'brook-b' });
  for (const [slot, { part }] of Object.entries(slots)) {
    story.tell('reel.verified', verified(slot, part, { reel: `K-${slot}`, quantity: 200, setup: 'brook-b' }));
    story.tell('reel.put', putOf({ number: slot, part, quantity: 900, place: 'A-1' }));
  }
  story.tell('run.started', started('r1', { setup: 'brook-b', panelsWanted: 4000 }), { at: 60 });
  return story;
}

const part = fc.constantFrom('R-100', 'R-200', 'C-200', 'C-201');
const change = fc.oneof(
  fc.record({
    do: fc.constant('put' as const),
    number: fc.integer({ min: 1, max: 6 }).map(String),
    part,
    quantity: fc.option(fc.nat(5000)),
    place: fc.constantFrom('A-1', 'A-10', 'B-2'),
  }),
  fc.record({ do: fc.constant('block' as const), part }),
);
type Change = typeof change extends fc.Arbitrary<infer C> ? C : never;

function putOf(of: { number: string; part: string; quantity: number | null; place: string }) {
  const { number, part, quantity, place } = of;
  const label = { supplierPart: null, lot: null, dateCode: null, via: 'wedge' as const };
  return { ...label, part, quantity, place, reel: `X-${number}-${part}` };
}

/** Tells it; a late one comes from another tablet and belongs before much that was folded. */
function tell(story: Story, change: Change, isLate: boolean) {
  const telling = isLate ? { tablet: 'T2', at: 30 } : { at: 70 };
  if (change.do === 'put') return story.tell('reel.put', putOf(change), telling);
  const { part } = change;
  const block = `b-${story.entries.length}`;
  return story.tell('material.blocked', { block, reel: null, lot: null, part, reason: 'bent' }, telling);
}

/** A tablet's floor that goes on with what is told. */
function tablet(story: Story) {
  const replica = createReplica();
  foldIn(replica, story.entries);
  const store = { floor: () => replica.state, count: () => replica.count };
  const outlook = lineOutlook(replica.state, 'L1', {
    nowMs: startMs + 65_000,
    calendar: lineCalendar(replica.state, 'L1', startMs + 65_000),
  });
  if (outlook === null) throw new TypeError('Cannot ask for a supply as the line must run');
  return { replica, store, outlook };
}

function* wholeSupply(
  floor: Parameters<typeof supplySteps>[0],
  outlook: Outlook,
): Generator<undefined, Supply> {
  const ask = yield* supplyQuestionSteps(floor, outlook);
  yield;
  return yield* supplySteps(floor, outlook, { answer: answerSupply(ask.question), slots: ask.slots });
}

test('what comes of steps with changes in between is what one go comes to at their end', () => {
  const between = fc.array(fc.option(fc.record({ change, isLate: fc.boolean() }), { freq: 3 }), {
    maxLength: 40,
  });
  fc.assert(
    fc.property(between, (changes) => {
      const story = begun();
      const { replica, store, outlook } = tablet(story);
      const steps = ofOneMoment(store, () => wholeSupply(store.floor(), outlook));
      const left = [...changes];
      let step = steps.next();
      for (; step.done !== true; step = steps.next()) {
        const next = left.shift() ?? null;
        if (next !== null) foldIn(replica, [tell(story, next.change, next.isLate)]);
      }
      expect(step.value.slots).toHaveLength(3);
      // Folded from the start, by itself.
      expect(step.value).toEqual(lineSupply(story.floor(), outlook));
    }),
    { numRuns: 60 },
  );
});

test('an answer comes though something changes at every step; where nothing does, it is begun once', () => {
  const story = begun();
  const { store, outlook } = tablet(story);
  const begins = (count: () => number) => {
    let begun = 0;
    const steps = ofOneMoment({ floor: store.floor, count }, () => {
      begun += 1;
      return wholeSupply(store.floor(), outlook);
    });
    let taken = 0;
    while (steps.next().done !== true) taken += 1;
    return { begun, taken };
  };
  let count = 0;
  expect(begins(() => count++)).toEqual({ begun: RESTARTS + 1, taken: RESTARTS });
  const calm = begins(() => 1);
  expect(calm.begun).toBe(1);
  // As many steps as there are lists of reels at least, twice.
  expect(calm.taken).toBeGreaterThan(2 * Object.keys(slots).length);
});
