// What a link's floor does without changes no answer: compared with the whole floor's after each page, over whatever people do with reels.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { simulateShift } from '../../../demo/simulate.ts';
import { applyEntry } from '../../../shared/floor/fold.ts';
import { answerPlaces } from '../../../shared/floor/interlock.ts';
import { packageIdOf } from '../../../shared/floor/package-name.ts';
import { createReplica, foldIn } from '../../../shared/floor/replica.ts';
import { emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { thinReplica } from '../../../src/link/floor-thin.ts';
import { payloadExamples } from '../../shared/floor/examples.ts';
import {
  beginStory,
  idOf,
  type Story,
  started,
  tellPlant,
  unloaded,
  verified,
} from '../../shared/floor/story.ts';

const slots = ['M1-F-001', 'M1-F-002', 'M1-R-003'] as const;
const reels = ['K1', 'K2', 'K3', 'K4', null] as const;

const actArb = fc.record({
  is: fc.constantFrom(
    'load',
    'load',
    'load',
    'splice',
    'refuse',
    'hold',
    'clear',
    'unload',
    'correct',
    'put',
    'put bare',
    'count',
    'name',
    'block',
    'block',
    'split',
    'split',
    'merge',
    'run',
  ),
  tablet: fc.constantFrom('T1', 'T2'),
  slot: fc.constantFrom(...slots),
  reel: fc.constantFrom(...reels),
  at: fc.integer({ min: 20, max: 80 }),
  which: fc.nat(30),
});
type Act = typeof actArb extends fc.Arbitrary<infer A> ? A : never;

function tell(acts: readonly Act[]): Story {
  const story = beginStory();
  tellPlant(story);
  const start = story.entries.at(-1);
  const pieces: string[] = [];
  for (const [number, { is, tablet, slot, reel: drawn, at, which }] of acts.entries()) {
    const how = { tablet, at, ...(start ? { seen: start } : {}) };
    const verdicts = story.entries.filter(({ kind }) => kind === 'reel.verified' || kind === 'reel.unloaded');
    // What was cut off is worked with as any other reel.
    const named = [...reels, ...pieces];
    const reel = named[(reels.indexOf(drawn) + which) % named.length] ?? null;
    const from = named[which % named.length] ?? null;
    const some = verdicts[which % Math.max(1, verdicts.length)];
    const label = { part: 'R-100', supplierPart: null, lot: 'L-1', dateCode: null, quantity: 500 };
    if (is === 'load' || is === 'splice')
      story.tell('reel.verified', verified(slot, 'R-100', { act: is, reel, lot: `L-${reel}` }), how);
    else if (is === 'refuse' || is === 'hold') {
      const verdict = is === 'refuse' ? 'refused' : 'held';
      story.tell('reel.verified', verified(slot, 'R-100', { reel, verdict }), how);
    } else if (is === 'unload') story.tell('reel.unloaded', unloaded(slot, { reel, part: 'R-100' }), how);
    else if (is === 'put' && reel !== null)
      story.tell('reel.put', { ...label, reel, place: 'A', via: 'typed' }, how);
    else if (is === 'put bare' && reel !== null)
      story.tell('reel.put', { ...label, lot: null, reel, place: 'A', via: 'typed' }, how);
    else if (is === 'block')
      story.tell(
        'material.blocked',
        {
          block: `B${number}`,
          reel,
          lot: reel === null ? 'L-K1' : null,
          part: null,
          reason: 'held back',
        },
        how,
      );
    else if (is === 'split' && from !== null) {
      const chain = story.entries.filter((entry) => entry.tablet === tablet);
      // The id of the entry that is about to be written names the new package.
      const into = packageIdOf(`${tablet}/${tablet}-life-1/${chain.length + 1}`);
      const { part, lot } = label;
      story.tell('reel.split', { reel: from, into, part, lot, quantity: 10, left: 90, via: 'typed' }, how);
      pieces.push(into);
    } else if (is === 'merge' && reel !== null && from !== null && from !== reel) {
      const { part, lot } = label;
      const facts = { part, lot, quantity: 90, sd: 0, basis: 'combined', via: 'typed' } as const;
      story.tell('reel.merged', { ...facts, reel, from }, how);
    } else if (is === 'run') {
      story.tell('run.started', started(`r${number}`), how);
      if (which % 2 === 0)
        story.tell(
          'run.ended',
          { run: `r${number}`, line: 'L1', panels: 0, note: '' },
          { ...how, at: at + 1 },
        );
    } else if (some && is === 'correct')
      story.tell(
        'entry.corrected',
        { of: idOf(some), line: 'L1', slot: null, reason: 'slip' },
        { tablet, at, seen: some },
      );
    else if (some && is === 'name')
      story.tell(
        'reel.named',
        {
          ...label,
          reel: packageIdOf(idOf(some)),
          was: `~${idOf(some)}`,
          sd: 0,
          basis: 'label',
          via: 'typed',
        },
        { tablet, at, seen: some },
      );
    else if (some && is === 'clear')
      story.tell(
        'hold.cleared',
        { of: idOf(some), line: 'L1', slot, by: 'lea', checked: 'tablet', reason: 'fits' },
        {
          tablet,
          at,
          seen: some,
        },
      );
  }
  return story;
}

/** Every answer that a machine could get, of each slot and each reel that was ever named. */
function answersOf(
  state: FloorState,
  line: string,
  asked: { readonly slots: readonly string[]; readonly reels: readonly (string | null)[] },
  knows: (reel: string) => boolean,
) {
  const places = asked.slots.flatMap((slot) =>
    asked.reels.map((reel) => ({ slot, reel, part: 'R-100', feeder: null })),
  );
  return answerPlaces(state, line, places, 'Warning').map(({ why }, at) => {
    const reel = places[at]?.reel ?? null;
    return why === 'unknown-reel' && reel !== null && knows(reel) ? 'other-reel' : why;
  });
}

/** Folds in pages, thin and whole; how many reels were done without at the end. */
function compare(
  entries: readonly Entry[],
  line: string,
  page: number,
  asked: Parameters<typeof answersOf>[2],
): number {
  const sorted = [...entries].sort(compareEntries);
  const replica = createReplica();
  const whole = emptyState();
  const known = new Set<string>();
  for (let at = 0; at < sorted.length; at += page) {
    const some = sorted.slice(at, at + page);
    foldIn(replica, some);
    for (const entry of some) applyEntry(whole, entry);
    thinReplica(replica, known);
    const has = (reel: string) => known.has(reel) || replica.state.reels.has(reel);
    expect(answersOf(replica.state, line, asked, has)).toEqual(
      answersOf(whole, line, asked, (reel) => whole.reels.has(reel)),
    );
  }
  for (const reel of replica.state.reels.keys()) expect(whole.reels.has(reel)).toBe(true);
  return [...known].filter((reel) => !replica.state.reels.has(reel)).length;
}

describe('a floor without what no answer asks for', () => {
  test('answers as the whole one does, whatever people did with reels', () => {
    let gone = 0;
    fc.assert(
      fc.property(
        fc.array(actArb, { minLength: 1, maxLength: 18 }),
        fc.integer({ min: 1, max: 6 }),
        (acts, page) => {
          const { entries } = tell(acts);
          const names = entries.flatMap((entry) => [`~${entryId(entry)}`, packageIdOf(entryId(entry))]);
          gone += compare(entries, 'L1', page, { slots, reels: [...reels, 'nobody knows', ...names] });
        },
      ),
      { numRuns: 250 },
    );
    expect(gone).toBeGreaterThan(20);
  });

  test('knows no package by the name that it had before it got an id', () => {
    const at = { tablet: 'T1', slot: 'M1-F-001', at: 20 } as const;
    const { entries } = tell([
      { ...at, is: 'load', reel: null, which: 0 },
      { ...at, is: 'correct', reel: null, which: 0 },
      { ...at, is: 'name', reel: null, which: 0 },
    ]);
    const names = entries.flatMap((entry) => [`~${entryId(entry)}`, packageIdOf(entryId(entry))]);
    expect(compare(entries, 'L1', 1, { slots, reels: names })).toBe(0);
  });

  test('knows a piece of a blocked reel, and forgets what was measured', () => {
    const story = beginStory();
    tellPlant(story);
    const label = { part: 'R-100', supplierPart: null, lot: 'L-1', dateCode: null, quantity: 500 };
    story.tell('reel.put', { ...label, reel: 'K1', place: 'A', via: 'typed' });
    const into = packageIdOf(`T1/T1-life-1/${story.entries.length + 1}`);
    const cut = { reel: 'K1', into, part: 'R-100', lot: 'L-1', quantity: 10, left: 490 };
    story.tell('reel.split', { ...cut, via: 'typed' });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: into, lot: 'L-1' }));
    story.tell('material.blocked', { block: 'B', reel: 'K1', lot: null, part: null, reason: 'cracked' });
    compare(story.entries, 'L1', 1, { slots, reels: ['K1', into] });
    const replica = createReplica();
    foldIn(replica, story.entries);
    replica.state.values.set('K1', payloadExamples['reel.measured']);
    thinReplica(replica, new Set());
    expect(replica.state.values.size).toBe(0);
    const [answer] = answerPlaces(
      replica.state,
      'L1',
      [{ slot: 'M1-F-001', reel: into, part: 'R-100', feeder: null }],
      'Warning',
    );
    expect(answer).toMatchObject({ result: 'Failed', why: 'blocked' });
  });

  test('knows the lot of a reel that it forgot before that was joined with another', () => {
    const story = beginStory();
    tellPlant(story);
    const label = { part: 'R-100', supplierPart: null, dateCode: null, quantity: 500 };
    for (const [reel, lot] of [
      ['G', 'L-1'],
      ['K', 'L-2'],
    ] as const)
      story.tell('reel.put', { ...label, lot, reel, place: 'A', via: 'typed' });
    const facts = { part: 'R-100', lot: null, quantity: 90, sd: 0, basis: 'combined', via: 'typed' } as const;
    story.tell('reel.merged', { ...facts, reel: 'K', from: 'G' });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K', lot: 'L-2' }));
    story.tell('material.blocked', { block: 'B', reel: null, lot: 'L-1', part: null, reason: 'cracked' });
    compare(story.entries, 'L1', 1, { slots, reels: ['G', 'K'] });
    const asked = [{ slot: 'M1-F-001', reel: 'K', part: 'R-100', feeder: null }];
    expect(answerPlaces(story.floor(), 'L1', asked, 'Warning')).toMatchObject([{ why: 'blocked' }]);
  });

  test('knows the lot of a reel that it forgot, and that was put away once more by a scan that named none', () => {
    const story = beginStory();
    tellPlant(story);
    const label = { part: 'R-100', supplierPart: null, dateCode: null, quantity: 500 };
    for (const lot of ['L-1', null])
      story.tell('reel.put', { ...label, lot, reel: 'G', place: 'A', via: 'typed' });
    const facts = { part: 'R-100', lot: null, quantity: 90, sd: 0, basis: 'combined', via: 'typed' } as const;
    story.tell('reel.merged', { ...facts, reel: 'K', from: 'G' });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K', lot: 'L-2' }));
    story.tell('material.blocked', { block: 'B', reel: null, lot: 'L-1', part: null, reason: 'cracked' });
    compare(story.entries, 'L1', 1, { slots, reels: ['G', 'K'] });
    const asked = [{ slot: 'M1-F-001', reel: 'K', part: 'R-100', feeder: null }];
    expect(answerPlaces(story.floor(), 'L1', asked, 'Warning')).toMatchObject([{ why: 'blocked' }]);
  });

  test('answers as the whole one does over a shift', () => {
    const { entries } = simulateShift({ seed: 3, hours: 8, startMs: Date.UTC(2026, 2, 2, 6) });
    const line = String(entries.find(({ kind }) => kind === 'line.defined')?.payload['line']);
    const named = (key: string) => [
      ...new Set(
        entries.flatMap(({ payload }) => (typeof payload[key] === 'string' ? [String(payload[key])] : [])),
      ),
    ];
    const all = named('reel');
    const gone = compare(entries, line, 400, {
      slots: named('slot').slice(0, 12),
      reels: [null, ...all.filter((_, at) => at % 9 === 0)],
    });
    // Most stand on a slot, or stood there before the one that does.
    expect(gone).toBeGreaterThan(0);
  });
});
