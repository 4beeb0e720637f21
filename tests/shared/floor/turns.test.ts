// Slots used in turn, told as stories: who has taken what, by the first that has parts.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placedSinceLedger } from '../../../shared/floor/remaining.ts';
import { partPerPanel, turnGroup } from '../../../shared/floor/turns.ts';
import { counted, idOf, started, unloaded } from './story.ts';
import { begunInTurn, build, load, turnSlots, used } from './turns-story.ts';

const [one, two, three] = turnSlots;

describe('usedPlacements() in turn', () => {
  test('the first feeds until it is empty, then the second, then the third', () => {
    const story = begunInTurn();
    load(story, one, 'K1', 100);
    load(story, two, 'K2', 60);
    load(story, three, 'K3', 500);
    build(story, 40);
    expect([used(story, one), used(story, two), used(story, three)]).toEqual([80, 0, 0]);
    build(story, 20);
    expect([used(story, one), used(story, two), used(story, three)]).toEqual([100, 20, 0]);
    build(story, 40);
    expect([used(story, one), used(story, two), used(story, three)]).toEqual([100, 60, 40]);
  });

  test('the last that is loaded shows what it owes: nothing behind it takes over', () => {
    const story = begunInTurn();
    load(story, one, 'K1', 100);
    load(story, two, 'K2', 60);
    build(story, 100);
    expect([used(story, one), used(story, two)]).toEqual([100, 100]);
  });

  test('a splice or a new reel on the first lets the second rest again, with what it has taken kept', () => {
    const story = begunInTurn();
    load(story, one, 'K1', 100);
    load(story, two, 'K2', 500);
    build(story, 60); // 120 placements: 100 and 20
    story.tell('reel.unloaded', unloaded(one, { reel: 'K1', quantity: 0, basis: 'machine' }));
    build(story, 5); // the second alone: 10 more
    load(story, one, 'K4', 400);
    build(story, 50);
    expect([used(story, one), used(story, two)]).toEqual([100, 30]);
    load(story, one, 'K5', 400, 'splice');
    build(story, 300); // 600 more: 700 of the first's 800
    expect([used(story, one), used(story, two)]).toEqual([700, 30]);
  });

  test('keeps to it when the run ends and the next begins', () => {
    const story = begunInTurn();
    load(story, one, 'K1', 100);
    load(story, two, 'K2', 500);
    build(story, 60);
    story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 60, note: '' });
    expect([used(story, one), used(story, two)]).toEqual([100, 20]);
    story.tell('run.started', started('run-2', { setup: 'turns' }));
    story.tell('panels.counted', counted('run-2', 10));
    expect([used(story, one), used(story, two)]).toEqual([100, 40]);
  });

  test('a loss brings the second in sooner: 100 parts at 10 % are 90 placements', () => {
    const story = begunInTurn({ rules: { loss: 0.1 } });
    load(story, one, 'K1', 100);
    load(story, two, 'K2', 500);
    build(story, 50);
    expect(used(story, one)).toBeCloseTo(90, 9);
    expect(used(story, two)).toBeCloseTo(10, 9);
  });

  test('a slot that is alone with its turn, or has none, takes all', () => {
    const story = begunInTurn();
    const setup = story.floor().setups.get('turns');
    expect(setup && turnGroup(setup, 'M1-R-004')).toEqual([]);
    expect(setup && turnGroup(setup, two).map(({ slot }) => slot)).toEqual([one, two, three]);
    load(story, two, 'K2', 500);
    build(story, 50);
    expect(used(story, two)).toBe(100);
  });
});

test('what was taken off has given its share of what was built meanwhile, where that is taken back after a splice', () => {
  const story = begunInTurn();
  load(story, one, 'K1', 200);
  load(story, two, 'K2', 2000);
  build(story, 50); // 100 of the first's 200
  const off = story.tell('reel.unloaded', unloaded(two, { reel: 'K2' }));
  build(story, 100); // 200: the first had 100 left, the second would have given as many
  load(story, one, 'K3', 1000, 'splice');
  build(story, 100);
  story.tell('entry.corrected', { of: idOf(off), line: 'L1', slot: null, reason: 'wrong slot' });
  expect(used(story, two)).toBe(100);
});

const middle = fc.oneof(
  fc.record({ is: fc.constant('build' as const), panels: fc.integer({ min: 1, max: 80 }), slot: fc.nat(1) }),
  fc.record({
    is: fc.constant('splice' as const),
    panels: fc.integer({ min: 20, max: 300 }),
    slot: fc.nat(1),
  }),
  fc.record({ is: fc.constant('run' as const), panels: fc.constant(0), slot: fc.nat(1) }),
);

test('an unload that is taken back leaves every slot of its turn as if it had never been, whatever was spliced meanwhile', () => {
  const slots = [one, two, three] as const;
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 2 }),
      fc.tuple(...slots.map(() => fc.integer({ min: 40, max: 300 }))),
      fc.array(middle, { minLength: 1, maxLength: 8 }),
      fc.boolean(),
      (at, quantities, acts, isMeasured) => {
        const tellAll = (isMistaken: boolean) => {
          const story = begunInTurn({ rules: isMeasured ? { hubToPickMm: 400, intakeToPickMm: 40 } : {} });
          for (const [place, slot] of slots.entries()) load(story, slot, `K${place}`, quantities[place] ?? 0);
          build(story, 15);
          const off = isMistaken
            ? story.tell('reel.unloaded', unloaded(slots[at] ?? one, { reel: `K${at}` }))
            : null;
          const others = slots.filter((_, place) => place !== at);
          let run = 1;
          for (const [step, act] of acts.entries()) {
            if (act.is === 'build') story.tell('panels.counted', counted(`run-${run}`, act.panels));
            if (act.is === 'splice') load(story, others[act.slot] ?? two, `S${step}`, act.panels, 'splice');
            if (act.is !== 'run') continue;
            story.tell('run.ended', { run: `run-${run}`, line: 'L1', panels: 0, note: '' });
            run += 1;
            story.tell('run.started', started(`run-${run}`, { setup: 'turns' }));
          }
          const of = off && idOf(off);
          if (of) story.tell('entry.corrected', { of, line: 'L1', slot: null, reason: 'wrong slot' });
          story.tell('panels.counted', counted(`run-${run}`, 10));
          const floor = story.floor();
          return slots.map((slot) => {
            const there = floor.slots.get(`L1/${slot}`);
            const placed = there ? placedSinceLedger(floor, there).count : null;
            const { joint } = there?.ledger ?? { joint: null };
            return { placed, joint: joint?.placed ?? null, instead: there?.instead };
          });
        };
        const [mistaken, never] = [tellAll(true), tellAll(false)];
        for (const [place, { placed, joint, instead }] of mistaken.entries()) {
          expect(instead).toBeUndefined();
          expect(placed).toBeCloseTo(never[place]?.placed ?? -1, 6);
          expect(joint ?? -1).toBeCloseTo(never[place]?.joint ?? -1, 6);
        }
      },
    ),
    { numRuns: 300 },
  );
});

test('what contradicted has given its share of what was built meanwhile, where a lead says later that it is there', () => {
  const story = begunInTurn();
  load(story, one, 'K1', 200);
  const kept = idOf(load(story, two, 'K2', 2000));
  build(story, 50);
  load(story, two, 'K9', 2000);
  build(story, 100);
  load(story, one, 'K3', 1000, 'splice');
  build(story, 100);
  const [conflict] = story.floor().conflicts.values();
  const settled = { conflict: conflict?.conflict ?? '', line: 'L1', slot: two, keep: kept } as const;
  story.tell('conflict.settled', { ...settled, reason: 'looked', by: 'lea' });
  expect(story.floor().slots.get(`L1/${two}`)?.tapes).toMatchObject([{ reel: 'K2' }]);
  expect(used(story, two)).toBe(100);
});

describe('partPerPanel()', () => {
  test('adds what is side by side, and counts what is in turn once', () => {
    expect(partPerPanel([{ perPanel: 4 }, { perPanel: 2 }])).toBe(6);
    expect(
      partPerPanel([
        { perPanel: 6, turn: 1 },
        { perPanel: 6, turn: 2 },
      ]),
    ).toBe(6);
    expect(partPerPanel([{ perPanel: 6, turn: 1 }, { perPanel: 6, turn: 2 }, { perPanel: 2 }])).toBe(8);
  });
});
