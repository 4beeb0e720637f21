// The slot map: every slot that is wanted or loaded stands on it, at its place, with what it is.

import { describe, expect, test } from 'vitest';
import { laneLine } from '../../../../../shared/floor/lanes.ts';
import { openSweep, setupProgress } from '../../../../../shared/floor/progress.ts';
import type { Line, Sweep } from '../../../../../shared/floor/state.ts';
import {
  countStandings,
  mapBanks,
  sweepMissing,
  sweepSlots,
} from '../../../../../src/app/screens/load/model.ts';
import {
  beginStory,
  brookSetup,
  type Story,
  tellPlant,
  verified,
  wantedSlot,
} from '../../../../shared/floor/story.ts';

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  return story;
}

function mapOf(story: Story, sweep: Sweep | null = null) {
  const floor = story.floor();
  return mapBanks(floor.lines.get('L1') as Line, setupProgress(floor, 'L1'), sweep);
}

const sweepOf = (story: Story) => openSweep(story.floor(), 'L1');

describe('mapBanks()', () => {
  test('has every bank of the line, also those with nothing on them, and its slots in walking order', () => {
    const banks = mapOf(begun());
    expect(banks.map(({ machineName, bankName, positions }) => [machineName, bankName, positions])).toEqual([
      ['first', 'front', 20],
      ['first', 'rear', 20],
    ]);
    expect(banks.map(({ places }) => places.map(({ slot, position }) => [slot, position]))).toEqual([
      [
        ['M1-F-001', 1],
        ['M1-F-002', 2],
        ['M1-F-010', 10],
      ],
      [['M1-R-003', 3]],
    ]);
  });

  test('tells what each slot is, and how many places its feeder takes', () => {
    const story = begun();
    story.tell('setup.taken', {
      ...brookSetup,
      slots: brookSetup.slots.map((slot) => ({ ...slot, positions: slot.slot === 'M1-F-010' ? 3 : 1 })),
    });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
    const places = mapOf(story).flatMap((bank) => bank.places);
    expect(
      places.map(({ slot, phase, positions, loaded }) => [slot, phase, positions, loaded !== null]),
    ).toEqual([
      ['M1-F-001', 'verified', 1, true],
      ['M1-F-002', 'missing', 1, false],
      ['M1-F-010', 'missing', 3, false],
      ['M1-R-003', 'missing', 1, false],
    ]);
  });

  test('shows what stands where nothing is wanted: it may stay, or it is in the way of a wider feeder', () => {
    const story = begun();
    story.tell('setup.taken', {
      ...brookSetup,
      setup: 'wide',
      slots: [wantedSlot('M1-F-004', 'Z-1'), wantedSlot('M1-F-015', 'Z-2')],
    });
    story.tell('setup.chosen', { line: 'L1', setup: 'wide' });
    story.tell('reel.verified', verified('M1-F-004', 'Z-1', { reel: 'K1', setup: 'wide' }));
    story.tell('reel.verified', verified('M1-F-015', 'Z-2', { reel: 'K2', setup: 'wide' }));
    story.tell('setup.taken', {
      ...brookSetup,
      slots: [wantedSlot('M1-F-003', 'C-1', { positions: 3 })],
    });
    story.tell('setup.chosen', { line: 'L1', setup: 'brook-top-a' });
    const floor = story.floor();
    const progress = setupProgress(floor, 'L1');
    const places = mapOf(story).flatMap((bank) => bank.places);
    expect(places.map(({ slot, phase, progress: wanted }) => [slot, phase, wanted !== null])).toEqual([
      ['M1-F-003', 'missing', true],
      ['M1-F-004', progress.inTheWay.has('M1-F-004') ? 'other' : 'spare', false],
      ['M1-F-015', 'spare', false],
    ]);
    expect([...progress.inTheWay]).toEqual(['M1-F-004']);
  });

  test('gives a slot that no bank of the line holds a bank at the end, one for all of its like', () => {
    const story = begun();
    story.tell('setup.taken', {
      ...brookSetup,
      slots: [
        wantedSlot('M1-T-002', 'A'),
        wantedSlot('M1-T-001', 'B'),
        wantedSlot('M9-F-001', 'C'),
        wantedSlot('M1-F-001', 'D'),
      ],
    });
    const banks = mapOf(story);
    const extra = banks.slice(2);
    expect(extra.map(({ machine, machineName, bank }) => [machine, machineName, bank])).toEqual([
      ['M1', 'first', 'T'],
      ['M9', 'M9', 'F'],
    ]);
    expect(extra.map(({ places }) => places.map(({ slot }) => slot))).toEqual([
      ['M1-T-001', 'M1-T-002'],
      ['M9-F-001'],
    ]);
    expect(banks[0]?.places.map(({ slot }) => slot)).toEqual(['M1-F-001']);
  });

  test('marks what a sweep has seen while it goes on, and nothing once it has ended', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K2' }));
    story.tell('sweep.started', { line: 'L1', sweep: 's1' });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { act: 'sweep', reel: 'K1' }));
    const seen = () =>
      mapOf(story, sweepOf(story)).flatMap(({ places }) =>
        places.flatMap((place) => (place.seen ? [place.slot] : [])),
      );
    expect(seen()).toEqual(['M1-F-001']);
    expect(sweepMissing(setupProgress(story.floor(), 'L1'), sweepOf(story) as Sweep)).toEqual(['M1-F-002']);
    story.tell('sweep.ended', { line: 'L1', sweep: 's1', seen: 1, missing: ['M1-F-002'] });
    expect(seen()).toEqual([]);
  });

  test('without a sweep nothing counts as seen', () => {
    expect(
      mapOf(begun())
        .flatMap(({ places }) => places)
        .some(({ seen }) => seen),
    ).toBe(false);
  });
});

test('a slot that another lane needs is counted apart with that lane’s name, and no sweep of this one waits for it', () => {
  const story = begun();
  const lane = laneLine('L1', 2);
  const line = { ...(story.floor().lines.get('L1') as Line), line: lane, name: 'Lane 2' }; // told by the story
  story.tell('line.defined', line);
  const slots = [wantedSlot('M1-F-001', 'Z-100'), wantedSlot('M1-F-019', 'Z-900')];
  story.tell('setup.taken', { ...brookSetup, setup: 'fell', product: 'Fell', line: lane, slots });
  story.tell('setup.chosen', { line: lane, setup: 'fell' });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  const facts = { line: lane, setup: 'fell', reel: 'K2' };
  story.tell('reel.verified', verified('M1-F-019', 'Z-900', facts));
  const floor = story.floor();
  const progress = setupProgress(floor, lane);
  const banks = mapBanks(line, progress, null, floor.lines);
  expect([...countStandings(banks)]).toEqual([
    ['kept', 1],
    ['verified', 1],
  ]);
  const places = banks.flatMap((bank) => bank.places);
  expect(places.map(({ slot, keptFor }) => [slot, keptFor ?? null])).toEqual([
    ['M1-F-001', floor.lines.get('L1')?.name],
    ['M1-F-019', null],
  ]);
  expect(sweepSlots(progress)).toEqual(['M1-F-019']);
});
