// One lane changes over while the other goes on: no feeder that the other needs is moved or taken out, and what both want differently is told.

import { expect, test } from 'vitest';
import { comesOut } from '../../../shared/desk/runs-already.ts';
import type { SetupSlot } from '../../../shared/floor/kinds.ts';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { lookAtLine } from '../../../shared/floor/slot-right.ts';
import { planChange } from '../../../src/app/screens/change/model.ts';
import {
  beginStory,
  brookSetup,
  type Story,
  started,
  tellPlant,
  verified,
  wantedSlot,
} from '../floor/story.ts';

const lane2 = laneLine('L1', 2);

/** Lane 2 builds from M1-F-001 and M1-F-005, both loaded; lane 1, loaded for its own product, changes to `next`. */
function planOf(next: readonly SetupSlot[], tellMore: (story: Story) => void = () => undefined) {
  const story = beginStory();
  tellPlant(story);
  const line = story.floor().lines.get('L1');
  if (!line) throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
  story.tell('line.defined', { ...line, line: lane2, name: 'Lane 2' });
  const theirs = [wantedSlot('M1-F-001', 'R-100'), wantedSlot('M1-F-005', 'Z-500')];
  story.tell('setup.taken', {
    ...brookSetup,
    setup: 'fell-top-a',
    product: 'Fell',
    line: lane2,
    slots: theirs,
  });
  story.tell('setup.chosen', { line: lane2, setup: 'fell-top-a' });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K2' }));
  story.tell(
    'reel.verified',
    verified('M1-F-005', 'Z-500', { reel: 'K5', line: lane2, setup: 'fell-top-a' }),
  );
  story.tell('run.started', started('b', { line: lane2, setup: 'fell-top-a' }));
  tellMore(story);
  story.tell('setup.taken', { ...brookSetup, setup: 'next', product: 'Next', slots: [...next] });
  const floor = story.floor();
  const setup = floor.setups.get('next');
  if (!setup) throw new TypeError('Cannot plan as the setup must be taken: current value is none');
  return { floor, plan: planChange(floor, 'L1', setup) };
}

test('what the other lane builds from stays, also where the next product would want its feeder elsewhere or its place', () => {
  const { plan } = planOf([wantedSlot('M1-F-003', 'R-100'), wantedSlot('M1-F-007', 'Z-500')]);
  if (!plan.fits) throw new TypeError('Cannot look at the plan as it must fit: current value is a fault');
  const touched = [...plan.diff.move.map(({ from }) => from), ...plan.diff.takeOut.map(({ slot }) => slot)];
  expect(touched).not.toContain('M1-F-001');
  expect(touched).not.toContain('M1-F-005');
  expect(plan.diff.putIn.map(({ slot }) => slot)).toEqual(['M1-F-003', 'M1-F-007']);
});

test('a slot that both want with one part is kept once', () => {
  const { plan } = planOf([wantedSlot('M1-F-001', 'R-100')]);
  expect(plan.fits && plan.diff.keep.map(({ slot }) => slot)).toEqual(['M1-F-001', 'M1-F-005']);
});

test('a slot that both want with different parts cannot be, and says which', () => {
  const { plan } = planOf([wantedSlot('M1-F-001', 'C-200')]);
  expect(!plan.fits && plan.faults).toEqual([
    expect.objectContaining({
      code: 'slot-twice',
      slot: 'M1-F-001',
      side: 'wanted',
      kept: { slot: 'M1-F-001', part: 'R-100', lane: 'Lane 2' },
    }),
  ]);
});

test('a slot that the next product itself wants twice is told, also with the same part', () => {
  const { plan } = planOf([wantedSlot('M1-F-003', 'R-100'), wantedSlot('M1-F-003', 'R-100')]);
  expect(!plan.fits && plan.faults).toEqual([
    expect.objectContaining({ code: 'slot-twice', slot: 'M1-F-003', at: 1 }),
  ]);
});

test('what two other lanes take under different numbers stays as the one thing that it is', () => {
  const lane3 = laneLine('L1', 3);
  const { plan } = planOf([wantedSlot('M1-F-003', 'R-100')], (story) => {
    const line = story.floor().lines.get('L1');
    if (line) story.tell('line.defined', { ...line, line: lane3, name: 'Lane 3' });
    const slots = [wantedSlot('M1-F-005', 'Z-501', { alternates: ['Z-500'] })];
    story.tell('setup.taken', { ...brookSetup, setup: 'tarn-top-a', product: 'Tarn', line: lane3, slots });
    story.tell('setup.chosen', { line: lane3, setup: 'tarn-top-a' });
  });
  expect(plan.fits && plan.diff.keep.map(({ slot }) => slot)).toEqual(['M1-F-001', 'M1-F-005']);
});

test('what another lane needs is no surplus, and its slot’s scan takes nothing out', () => {
  const { floor } = planOf([wantedSlot('M1-F-003', 'R-100')]);
  const surplus = lookAtLine(floor, 'L1', 'next').surplus.map(({ loaded }) => loaded.slot);
  expect(surplus).toEqual(['M1-F-002']);
  const changing = {
    ...floor,
    changing: new Map([['L1', 'c']]),
    chosen: new Map(floor.chosen).set('L1', 'next'),
  };
  expect(comesOut('M1-F-002', { floor: changing, line: 'L1' })).toBe(true);
  expect(comesOut('M1-F-001', { floor: changing, line: 'L1' })).toBe(false);
  expect(comesOut('M1-F-005', { floor: changing, line: 'L1' })).toBe(false);
});
