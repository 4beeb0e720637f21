// Which feeders stand on a line and how wide is each, with and without a record of the feeder? From memory of how slots are used.

import { describe, expect, test } from 'vitest';
import { diffSetups } from '../../../shared/changeover/diff.ts';
import { loadedFeeders, loadedFor } from '../../../shared/changeover/loaded.ts';
import { orderSteps } from '../../../shared/changeover/steps.ts';
import { beginStory, brookSetup, type Story, tellPlant, verified, wantedSlot } from '../floor/story.ts';

function tellLoaded(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('setup.taken', {
    ...brookSetup,
    setup: 'fern-bottom-b',
    slots: [wantedSlot('M1-F-010', 'L-400', { positions: 2 })],
  });
  story.tell('reel.verified', verified('M1-F-002', 'C-201'));
  return story;
}

describe('loadedFeeders()', () => {
  test('counts an alternate as the part that its slot wanted', () => {
    expect(loadedFeeders(tellLoaded().floor(), 'L1')).toEqual([
      { slot: 'M1-F-002', part: 'C-200', width: 1 },
    ]);
  });

  test('takes one position where nobody knows the width, and leaves other lines’ feeders to them', () => {
    const story = tellLoaded();
    story.tell('reel.verified', verified('M1-F-019', 'X-9', { setup: 'none' }));
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { line: 'L2', setup: 'none' }));
    expect(loadedFeeders(story.floor(), 'L1')).toEqual([
      { slot: 'M1-F-002', part: 'C-200', width: 1 },
      { slot: 'M1-F-019', part: 'X-9', width: 1 },
    ]);
  });

  test('takes a feeder’s width from its own record before the setup’s', () => {
    const story = tellLoaded();
    story.tell('feeder.known', { feeder: 'F-9', tapeWidthMm: 24, pitchesMm: [4], positions: 3 });
    story.tell('reel.verified', verified('M1-R-003', 'R-100', { feeder: 'F-9' }));
    expect(loadedFeeders(story.floor(), 'L1').find((each) => each.slot === 'M1-R-003')?.width).toBe(3);
  });

  test('knows how wide a feeder is by the setup that a changeover comes from', () => {
    const story = tellLoaded();
    story.tell('setup.chosen', { line: 'L1', setup: 'fern-bottom-b' });
    story.tell('reel.verified', verified('M1-F-010', 'L-400', { setup: 'fern-bottom-b' }));
    story.tell('changeover.began', {
      changeover: 'ch-1',
      line: 'L1',
      from: 'fern-bottom-b',
      setup: 'brook-top-a',
      product: 'Brook',
      lastPanel: null,
    });
    story.tell('setup.chosen', { line: 'L1', setup: 'brook-top-a' });
    // Brook wants one position there; the feeder that stands there was loaded for Fern and takes two.
    expect(loadedFeeders(story.floor(), 'L1').find((each) => each.slot === 'M1-F-010')?.width).toBe(2);
  });
});

test('loadedFor() lets a feeder move where its reel serves and it takes the tape, and nowhere else', () => {
  const story = beginStory();
  tellPlant(story);
  story.tell('setup.taken', {
    ...brookSetup,
    setup: 'next',
    slots: [
      wantedSlot('M1-F-001', 'R-100'),
      wantedSlot('M1-F-005', 'C-200', { alternates: ['C-201'] }),
      wantedSlot('M1-F-006', 'C-200', { tapeWidthMm: 24 }),
      wantedSlot('M1-F-007', 'U-300'),
    ],
  });
  story.tell('setup.chosen', { line: 'L1', setup: 'next' });
  story.tell('feeder.known', { feeder: 'F-8', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { setup: 'next', reel: 'K1' }));
  story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K2', feeder: 'F-8' }));
  const { loaded, rule } = loadedFor(story.floor(), 'L1', 'next');
  const one = loaded.find(({ slot }) => slot === 'M1-F-002')!;
  const serves = (slot: string) => rule.serves(one, { slot, part: '', width: 1 });
  expect(['M1-F-005', 'M1-F-006', 'M1-F-007', 'M1-F-009'].map(serves)).toEqual([true, false, false, false]);
  const right = loaded.find(({ slot }) => slot === 'M1-F-001')!;
  const stays = (there: typeof one, slot: string) => rule.stays(there, { slot, part: '', width: 1 });
  expect([stays(right, 'M1-F-001'), stays(one, 'M1-F-002'), stays(right, 'M1-F-005')]).toEqual([
    true,
    false,
    false,
  ]);
});

test.each([
  ['of one type trade places, so that none is parked', 'deep 8', 0],
  ['of different types stay apart where the setup asks for the type', 'twin 8', 1],
] as const)('feeders %s', (_, otherType, parked) => {
  const story = beginStory();
  tellPlant(story);
  const none = { hubToPickMm: null, intakeToPickMm: null, trailerMm: null, leaderMm: null };
  for (const type of ['deep 8', 'twin 8'])
    story.tell('feeder-type.known', { type, lanes: 1, drive: null, pocketMm: null, ...none });
  for (const [feeder, type] of [
    ['F-1', 'deep 8'],
    ['F-3', otherType],
  ] as const) {
    story.tell('feeder.known', { feeder, tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
    story.tell('feeder.typed', { feeder, type, ...none });
  }
  const slots = [
    wantedSlot('M1-F-001', 'U-300'),
    wantedSlot('M1-F-002', 'R-100', { feederType: 'deep 8' }),
    wantedSlot('M1-F-004', 'R-100', { feederType: otherType }),
  ];
  story.tell('setup.taken', { ...brookSetup, setup: 'next', slots });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', feeder: 'F-1', setup: 'x' }));
  story.tell('reel.verified', verified('M1-F-002', 'U-300', { reel: 'K2', setup: 'x' }));
  story.tell('reel.verified', verified('M1-F-003', 'R-100', { reel: 'K3', feeder: 'F-3', setup: 'x' }));
  const { loaded, rule } = loadedFor(story.floor(), 'L1', 'next');
  const wanted = slots.map(({ slot, part, positions }) => ({ slot, part, width: positions }));
  const found = diffSetups(loaded, wanted, undefined, rule);
  const plan = orderSteps(found.ok ? found.value : expect.fail('the setups have faults'));
  const unfit = plan.diff.move.filter(({ from, to }) => {
    const there = loaded.find(({ slot }) => slot === from);
    return !there || !rule.serves(there, { slot: to, part: '', width: 1 });
  });
  expect({ moves: plan.diff.move.length, unfit, parked: plan.parked }).toEqual({
    moves: 3,
    unfit: [],
    parked,
  });
});

test('loadedFor() moves no feeder that was set aside, whose scan on its new slot would be refused, and lets it stay where it is', () => {
  const story = beginStory();
  tellPlant(story);
  const slots = [wantedSlot('M1-F-001', 'R-100'), wantedSlot('M1-F-005', 'R-100')];
  story.tell('setup.taken', { ...brookSetup, setup: 'next', slots });
  story.tell('setup.chosen', { line: 'L1', setup: 'next' });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', feeder: 'F-8' }));
  const answers = () => {
    const { loaded, rule } = loadedFor(story.floor(), 'L1', 'next');
    const [one = expect.fail('nothing is loaded')] = loaded;
    const wanted = (slot: string) => ({ slot, part: 'R-100', width: 1 });
    return [rule.stays(one, wanted('M1-F-001')), rule.serves(one, wanted('M1-F-005'))];
  };
  expect(answers()).toEqual([true, true]);
  story.tell('feeder.set-aside', { feeder: 'F-8', reason: 'loses parts' });
  expect(answers()).toEqual([true, false]);
});
