// What skipped boards leave in doubt: who got nothing, and where a tape ended that fewer boards drew on.

import { expect, test } from 'vitest';
import type { SetupSlot } from '../../../shared/floor/kinds.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { tracePanel, tracePlaces } from '../../../shared/trace/ask.ts';
import { traceLog } from '../../../shared/trace/stretches.ts';
import { suspectPanels } from '../../../shared/trace/suspects.ts';
import {
  beginStory,
  brookSetup,
  counted,
  type Story,
  started,
  tellPlant,
  verified,
  wantedSlot,
} from '../floor/story.ts';

const slot = 'M1-F-001';

/** A run of panels of two boards, counted where the machine lets them go; one reel of 400 on the slot, spliced after 40 panels. */
function begun(slots: readonly SetupSlot[]): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('line.panels-ruled', {
    line: 'L1',
    machines: [{ machine: 'M1', least: 0, most: 0 }],
    missed: 0,
  });
  story.tell('setup.taken', { ...brookSetup, setup: 'two-up', boardsPerPanel: 2, slots: [...slots] });
  story.tell('setup.chosen', { line: 'L1', setup: 'two-up' });
  const setup = 'two-up';
  story.tell('reel.verified', verified(slot, 'R-100', { setup, reel: 'K1', quantity: 100 }));
  story.tell('run.started', started('r1', { setup }));
  return story;
}

const placesOf = (story: Story) =>
  tracePlaces(traceLog([...story.entries].sort(compareEntries)), { slot }).map(
    ({ reel, sure, possible }) => ({
      reel,
      sure,
      possible,
    }),
  );

test('a reel that every board draws on is surely on each panel, one that serves some boards is not', () => {
  const rows: readonly (readonly [readonly SetupSlot[], isSure: boolean, why: string])[] = [
    [[wantedSlot(slot, 'R-100')], true, 'one placement a board'],
    [[wantedSlot(slot, 'R-100', { perPanel: 3 })], false, 'more on one board than on the other'],
    [
      [wantedSlot(slot, 'R-100'), wantedSlot('M1-F-002', 'C-200', { perPanel: 1 })],
      false,
      'another part is on one board alone: the boards are not one product',
    ],
    [
      [wantedSlot(slot, 'R-100'), wantedSlot('M1-F-002', 'R-100')],
      false,
      'another slot of the part may serve the other board',
    ],
    [
      [wantedSlot(slot, 'R-100'), wantedSlot('M1-F-002', 'C-200'), wantedSlot('M1-F-003', 'C-200')],
      true,
      'the slots of another part may share the boards as they like',
    ],
  ];
  for (const [slots, isSure, why] of rows) {
    const story = begun(slots);
    story.tell('panels.counted', counted('r1', 10));
    const all = { first: 1, last: 10 };
    expect(placesOf(story), why).toEqual([{ reel: 'K1', sure: isSure ? all : null, possible: all }]);
  }
});

test('says that it rests on which boards a slot serves, unless no board was skipped or the doubt is taken already', () => {
  const guessedBy = (slots: readonly SetupSlot[], skipped?: number) => {
    const story = begun(slots);
    story.tell('panels.counted', {
      ...counted('r1', 10, null),
      ...(skipped === undefined ? {} : { skipped }),
    });
    const index = traceLog([...story.entries].sort(compareEntries));
    const [place] = tracePlaces(index, { slot });
    const suspects = suspectPanels(index, { cause: 'wrong-reel', material: { reel: 'K1' } });
    expect(tracePanel(index, '3')?.guessed).toEqual(place?.guessed);
    expect(suspects.guessed).toEqual(place?.guessed);
    return place?.guessed.includes('boards');
  };
  const alike = [wantedSlot(slot, 'R-100')];
  expect(guessedBy(alike), 'nobody said').toBe(true);
  expect(guessedBy(alike, 3), 'some were skipped').toBe(true);
  expect(guessedBy(alike, 0), 'none was').toBe(false);
  expect(guessedBy([wantedSlot(slot, 'R-100', { perPanel: 3 })]), 'nothing is sure anyway').toBe(false);
});

// 100 parts, 40 panels of two placements: 20 left where no board was skipped. Another reel is spliced on; 30 panels follow.
test('where a tape ended follows from counts only as far as somebody said which boards were skipped', () => {
  const tell = (skipped?: { readonly before: number; readonly after: number }) => {
    const story = begun([wantedSlot(slot, 'R-100')]);
    const count = (add: number, boards: number | undefined) =>
      story.tell('panels.counted', {
        ...counted('r1', add),
        ...(boards === undefined ? {} : { skipped: boards }),
      });
    count(40, skipped?.before);
    const facts = { act: 'splice', run: 'r1', setup: 'two-up', reel: 'K2' } as const;
    story.tell('reel.verified', verified(slot, 'R-100', facts));
    count(30, skipped?.after);
    return placesOf(story).find(({ reel }) => reel === 'K1');
  };
  expect(tell(), 'nobody said').toEqual({
    reel: 'K1',
    sure: { first: 1, last: 40 },
    possible: { first: 1, last: 70 },
  });
  // 20 parts, 4.8 more by the label, last 25 panels if one board of each is built, and 12 were any skipped before.
  expect(tell({ before: 0, after: 0 })?.possible?.last).toBeLessThan(70);
  // 60 boards of 80 were skipped before: 80 parts are left, and 30 panels take 60 at most.
  expect(tell({ before: 60, after: 0 })?.possible).toEqual({ first: 1, last: 70 });
});
