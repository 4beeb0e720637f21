// A trace follows material through cuts and joins, checked against histories of which every part is known: no panel that has the material is
// left out, and nothing is told as sure that is not.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isUnderBlock } from '../../../shared/floor/blocks.ts';
import { packageIdOf } from '../../../shared/floor/package-name.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { tracePanel, tracePlaces } from '../../../shared/trace/ask.ts';
import { carriedBy, namesToo, partsAsked } from '../../../shared/trace/material.ts';
import type { Span } from '../../../shared/trace/order.ts';
import { type TraceIndex, traceLog } from '../../../shared/trace/stretches.ts';
import { suspectPanels } from '../../../shared/trace/suspects.ts';
import { idOf, type Story, started, unloaded, verified } from '../floor/story.ts';
import { type Deed, type Part, type Played, play, slot } from './cut-and-joined.ts';
import { begun, build, indexOf, load, placesOf } from './line-story.ts';

const deed: fc.Arbitrary<Deed> = fc.tuple(
  fc.constantFrom(
    'put',
    'put',
    'load',
    'load',
    'splice',
    'unload',
    'unload',
    'back',
    'back',
    'cut',
    'cut',
    'join',
    'build',
    'build',
    'build',
    'run',
  ),
  fc.nat(40),
  fc.nat(40),
);

const isIn = (span: Span | null, panel: number) => span !== null && panel >= span.first && panel <= span.last;

interface Told {
  readonly run: string;
  readonly sure: Span | null;
  readonly possible: Span | null;
}

/** Compares what is told of material with the parts that each panel got. */
function expectTrue(
  { panels }: Played,
  told: readonly Told[],
  of: { readonly name: string; readonly may: (part: Part) => boolean; readonly is: (part: Part) => boolean },
): void {
  for (const [key, parts] of panels) {
    const [run, number] = key.split(' ');
    const there = told.filter((place) => place.run === run);
    const panel = Number(number);
    if (parts.some(of.may))
      expect(
        there.some(({ possible }) => isIn(possible, panel)),
        `${of.name} is left out on ${key}`,
      ).toBe(true);
    if (there.some(({ sure }) => isIn(sure, panel)))
      expect(parts.some(of.is), `${of.name} is told as sure on ${key}`).toBe(true);
  }
}

/** What a panel is said to have: every lot of its parts, and none as sure that it has not. */
function expectPanelsTrue(index: TraceIndex, { panels }: Played): void {
  for (const [key, parts] of panels) {
    const [run, number = ''] = key.split(' ');
    const lots = tracePanel(index, number, run)?.slots.flatMap((each) => each.lots) ?? [];
    for (const { lot, in: packages } of parts) {
      expect(
        lots.map((each) => each.lot),
        `lot of ${key}`,
      ).toContain(lot);
      const named = lots.flatMap(({ reel, madeOf = [] }) => [reel, ...madeOf]);
      for (const name of packages) expect(named, `a reel of ${key}`).toContain(name);
    }
    for (const each of lots) if (each.sure) expect(parts.map(({ lot }) => lot)).toContain(each.lot);
  }
}

/** What stands on the slot is under a block by a reel or lot exactly where the trace finds that in it; how often by a lot not its own. */
function expectBlocksAgree(index: TraceIndex, { packages, lots }: Played): number {
  const { state } = index;
  const asked = [...packages.map((reel) => ({ reel })), ...lots.map((lot) => ({ lot }))];
  const tapes = [...state.slots.values()].flatMap((each) => each.tapes);
  const there = tapes.flatMap((tape) => {
    const stretch = index.stretches.filter((each) => each.there && each.entry === tape.entry).at(-1);
    return stretch ? [{ tape, stretch }] : [];
  });
  let others = 0;
  for (const each of asked)
    for (const { tape, stretch } of there) {
      const isUnder = isUnderBlock(state, { reel: null, lot: null, part: null, ...each }, tape);
      expect(isUnder, JSON.stringify(each)).toBe(carriedBy(state, each)(stretch) !== null);
      if (isUnder && 'lot' in each && tape.lot !== each.lot) others += 1;
    }
  return others;
}

test('in any history of loads, splices, cuts and joins no panel is left out and nothing sure is wrong', () => {
  let followed = 0;
  let sure = 0;
  let blocked = 0;
  const history = fc.array(deed, { minLength: 10, maxLength: 60 });
  // The same histories each time, in which enough is followed, sure and blocked, and others beside them.
  const examples = fc.sample(history, { seed: 11, numRuns: 150 }).map((deeds): [typeof deeds] => [deeds]);
  fc.assert(
    fc.property(history, (deeds) => {
      const played = play(deeds);
      const index = traceLog(played.entries);
      for (const name of played.packages) {
        const of = {
          name,
          may: (part: Part) => part.in.has(name),
          is: (part: Part) => part.through.has(name),
        };
        const places = tracePlaces(index, { reel: name });
        expectTrue(played, places, of);
        followed += places.filter(({ reel }) => reel !== name).length;
        sure += places.filter((place) => place.reel !== name && place.sure !== null).length;
        expectTrue(played, suspectPanels(index, { cause: 'blocked', material: { reel: name } }).runs, of);
        const under = new Set(namesToo(index.state, { reel: name }));
        for (const { reel } of places)
          expect(reel === name || under.has(String(reel).toLowerCase()), 'the store finds it').toBe(true);
      }
      for (const name of played.lots) {
        const isOf = ({ lot }: Part) => lot === name;
        expectTrue(played, tracePlaces(index, { lot: name }), { name, may: isOf, is: isOf });
      }
      expectPanelsTrue(index, played);
      blocked += expectBlocksAgree(index, played);
    }),
    { numRuns: 250, examples },
  );
  expect(followed).toBeGreaterThan(100);
  expect(sure).toBeGreaterThan(3);
  expect(blocked).toBeGreaterThan(20);
});

/** A line on which a reel is before its run starts. */
function on(reel: string | null, lot?: string): Story {
  const story = begun();
  load(story, reel, lot === undefined ? {} : { lot });
  story.tell('run.started', started('r1'));
  return story;
}

/** A cut of a reel off the line: the piece's own id. */
function cut(story: Story, reel: string, quantity: number, at?: number): string {
  const tablet = at === undefined ? 'T1' : 'T2';
  const into = packageIdOf(
    `${tablet}/${tablet}-life-1/${story.entries.filter((each) => each.tablet === tablet).length + 1}`,
  );
  const facts = { reel, into, part: 'R-100', lot: null, quantity, left: null, via: 'typed' } as const;
  story.tell('reel.split', facts, at === undefined ? {} : { tablet, at });
  return into;
}
function join(story: Story, reel: string, from: string) {
  const facts = { reel, from, part: 'R-100', lot: null, quantity: null, sd: 0 } as const;
  story.tell('reel.merged', { ...facts, basis: 'combined', via: 'typed' });
}
const off = (story: Story, reel: string | null) =>
  story.tell(
    'reel.unloaded',
    unloaded(slot, { reel, part: 'R-100', run: 'r1', quantity: 100, basis: 'machine' }),
  );

// The panel at work when a reel changed may have parts of both.
describe('a reel that was asked for', () => {
  test('has the panels of its pieces, and of pieces of those, as surely as they have', () => {
    const story = on('K-1', 'LA');
    build(story, 3);
    off(story, 'K-1');
    const piece = cut(story, 'K-1', 50);
    const more = cut(story, piece, 20);
    load(story, more, { lot: null });
    build(story, 4);
    expect(placesOf(story, 'k-1')).toEqual([
      ['r1', [1, 3], [1, 4]],
      ['r1', [5, 7], [4, 7]],
    ]);
    expect(placesOf(story, piece)).toEqual([['r1', [5, 7], [4, 7]]]);
    const index = indexOf(story);
    expect(partsAsked(index.state, { reel: more })).toEqual({ madeOf: ['K-1', piece], wentInto: [] });
    expect(partsAsked(index.state, { reel: 'K-1' })).toEqual({ madeOf: [], wentInto: [piece, more] });
    // The lot of a piece whose label says none is that of the reel.
    expect(tracePlaces(index, { lot: 'la' }).map(({ reel, lot, sure }) => [reel, lot, sure?.last])).toEqual([
      ['K-1', 'LA', 3],
      [more, 'LA', 7],
    ]);
    expect(tracePanel(index, '6', 'r1')?.slots[0]?.lots).toEqual([
      { lot: 'LA', reel: more, supplierPart: null, madeOf: ['K-1', piece], sure: true, mixed: false },
    ]);
  });

  test('may be on the panels of what it was joined with from then on, and of itself nothing is sure by then', () => {
    const story = on('K-1', 'LA');
    build(story, 3);
    off(story, 'K-1');
    join(story, 'K-1', 'K-2');
    load(story, 'K-1', { lot: 'LA' });
    build(story, 2);
    expect(placesOf(story, 'K-2')).toEqual([['r1', null, [4, 5]]]);
    expect(placesOf(story, 'K-1')).toEqual([
      ['r1', [1, 3], [1, 4]],
      ['r1', null, [4, 5]],
    ]);
    const { runs } = suspectPanels(indexOf(story), { cause: 'blocked', material: { reel: 'K-2' } });
    expect(runs.map(({ sure, possible }) => [sure, possible])).toEqual([[null, { first: 4, last: 6 }]]);
  });

  test('is sure again of the panels of what its own piece was joined back to', () => {
    const story = begun();
    const piece = cut(story, 'K-1', 20);
    join(story, 'K-1', piece);
    load(story, 'K-1');
    story.tell('run.started', started('r1'));
    build(story, 2);
    expect(placesOf(story, 'K-1')).toEqual([['r1', [1, 2], [1, 2]]]);
    expect(placesOf(story, piece)).toEqual([['r1', null, [1, 2]]]);
  });

  test('has the panels of a piece whose cut is told with a later clock than the panels, and of a piece of that', () => {
    const story = begun();
    const piece = packageIdOf('T2/T2-life-1/1');
    const more = cut(story, piece, 5);
    load(story, more);
    story.tell('run.started', started('r1'));
    build(story, 2);
    off(story, more);
    load(story, 'K-9');
    build(story, 2);
    expect(cut(story, 'K-1', 50, 500)).toBe(piece);
    expect(placesOf(story, 'K-1')).toEqual([['r1', [1, 2], [1, 3]]]);
  });

  test('has the panels from before it got its id, and those of what was cut off it by then', () => {
    const story = begun();
    const was = `~${idOf(load(story, null, { lot: 'LA' }))}`;
    story.tell('run.started', started('r1'));
    build(story, 2);
    off(story, null);
    const piece = cut(story, was, 20);
    load(story, piece, { lot: 'LA' });
    build(story, 3);
    const reel = packageIdOf(was.slice(1));
    const label = {
      part: 'R-100',
      supplierPart: null,
      lot: 'LA',
      dateCode: null,
      quantity: 80,
      sd: 0,
    } as const;
    story.tell('reel.named', { ...label, reel, was, basis: 'label', via: 'typed' });
    expect(placesOf(story, reel)).toEqual([
      ['r1', [1, 2], [1, 3]],
      ['r1', [4, 5], [3, 5]],
    ]);
    const index = indexOf(story);
    expect(tracePlaces(index, { reel }).map((place) => place.reel)).toEqual([reel, piece]);
    expect(namesToo(index.state, { reel })).toEqual(
      expect.arrayContaining([piece, reel, was].map((name) => name.toLowerCase())),
    );
  });

  test('is told by its id where another entry than that which put it on had named it', () => {
    const story = begun();
    const first = load(story, null, { lot: 'LA' });
    const was = `~${idOf(first)}`;
    off(story, null);
    load(story, was, { lot: 'LA' });
    story.tell('run.started', started('r1'));
    build(story, 2);
    const reel = packageIdOf(idOf(first));
    const label = { part: 'R-100', supplierPart: null, lot: 'LA', dateCode: null, quantity: 80 } as const;
    story.tell('reel.named', { ...label, reel, was, sd: 0, basis: 'label', via: 'typed' });
    const index = indexOf(story);
    for (const question of [{ reel }, { lot: 'LA' }])
      expect(tracePlaces(index, question).map((place) => place.reel)).toEqual([reel]);
    expect(tracePanel(index, '1', 'r1')?.slots[0]?.lots.map((lot) => lot.reel)).toEqual([reel]);
  });

  test('may be in another that was there under the id that its piece was given', () => {
    const story = on('K-2');
    build(story, 2);
    off(story, 'K-2');
    const facts = { reel: 'K-1', into: 'K-2', part: 'R-100', lot: null, quantity: 5, left: null } as const;
    story.tell('reel.split', { ...facts, via: 'typed' });
    load(story, 'K-2');
    build(story, 2);
    expect(placesOf(story, 'K-1')).toEqual([['r1', null, [3, 4]]]);
  });

  test('may be on all panels of a reel that it was joined with on the slot', () => {
    const story = on('K-1');
    build(story, 2);
    join(story, 'K-1', 'K-2');
    build(story, 2);
    expect(placesOf(story, 'K-2')).toEqual([['r1', null, [1, 4]]]);
  });

  test('may be in what it was joined with while that was told to be off the slot in error', () => {
    const story = on('K-1', 'LA');
    build(story, 3);
    const mistake = off(story, 'K-1');
    join(story, 'K-1', 'K-2');
    story.tell('entry.corrected', { of: idOf(mistake), line: 'L1', slot, reason: 'slip' });
    build(story, 3);
    expect(placesOf(story, 'K-2')).toEqual([['r1', null, [1, 6]]]);
    expect(placesOf(story, 'K-1')).toEqual([['r1', null, [1, 6]]]);
  });

  test('does not surely have the panels of a piece whose label contradicts its own', () => {
    const story = on('K-1', 'LA');
    build(story, 1);
    off(story, 'K-1');
    const piece = cut(story, 'K-1', 50);
    load(story, piece, { lot: 'LX' });
    build(story, 3);
    expect(placesOf(story, 'K-1')[1]).toEqual(['r1', null, [2, 4]]);
  });
});

describe('a reel that was found where it did not belong', () => {
  function found(reel: string | null) {
    const story = on('K-1', 'LA');
    build(story, 3);
    const reasons = [{ code: 'not-the-loaded-reel' }];
    const facts = { act: 'sweep', verdict: 'refused', reel, lot: 'LR', run: 'r1' } as const;
    const sweep = story.tell('reel.verified', verified(slot, 'C-200', { ...facts, reasons }));
    return { story, sweep };
  }

  test('has on those panels what it was joined with while it may have stood there, and nothing later', () => {
    const { story } = found('K-2');
    join(story, 'K-2', 'K-3');
    expect(placesOf(story, 'K-3')).toEqual([['r1', null, [1, 3]]]);
    off(story, 'K-1');
    join(story, 'K-2', 'K-4');
    expect(placesOf(story, 'K-3')).toEqual([['r1', null, [1, 3]]]);
    expect(placesOf(story, 'K-4')).toEqual([]);
  });

  test('is found by the id that it got since', () => {
    const { story, sweep } = found(null);
    const reel = packageIdOf(idOf(sweep));
    const label = { part: 'C-200', supplierPart: null, lot: 'LR', dateCode: null, quantity: 80 } as const;
    const was = `~${idOf(sweep)}`;
    story.tell('reel.named', { ...label, reel, was, sd: 0, basis: 'label', via: 'typed' });
    expect(tracePlaces(indexOf(story), { reel }).map((place) => [place.reel, place.possible])).toEqual([
      [reel, { first: 1, last: 3 }],
    ]);
  });
});

test('lots that were joined though that was not to be done are both on the panels, and neither is sure', () => {
  const story = on('K-2', 'LB');
  build(story, 1);
  off(story, 'K-2');
  join(story, 'K-1', 'K-2');
  load(story, 'K-1', { lot: 'LA' });
  build(story, 2);
  const index = traceLog([...story.entries].sort(compareEntries));
  for (const lot of ['LA', 'LB']) {
    const last = tracePlaces(index, { lot }).at(-1);
    expect([last?.sure, last?.possible]).toEqual([null, { first: 2, last: 3 }]);
  }
  expect(
    tracePanel(index, '3', 'r1')?.slots[0]?.lots.map(({ lot, reel, sure }) => [lot, reel, sure]),
  ).toEqual([
    ['LA', 'K-1', false],
    ['LB', 'K-2', false],
  ]);
});
