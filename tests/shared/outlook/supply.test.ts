// What the store must bring: whose reels count, how large a full one is, by when, and where one lies that nobody counted.

import { describe, expect, test } from 'vitest';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import type { SupplyAnswer } from '../../../shared/forecast/supply.ts';
import { lineOutlook } from '../../../shared/outlook/line.ts';
import { fullReelSteps, supplyQuestionSteps, supplySteps } from '../../../shared/outlook/supply.ts';
import { toTheEnd } from '../../to-the-end.ts';
import { beginStory, type Story, started, startMs, tellPlant, verified, wantedSlot } from '../floor/story.ts';

const [one, two, three] = ['M1-F-001', 'M1-F-002', 'M1-F-003'] as const;

/** 1000 panels of two placements: R-100 on two slots and C-200, for which C-201 serves as well; each slot has 200 parts. */
function begun(): Story {
  const story = beginStory();
  tellPlant(story, { rules: { labelShare: 0.01 } });
  story.tell('setup.taken', {
    setup: 'twins',
    product: 'Brook',
    side: 'top',
    revision: 'B',
    line: 'L1',
    source: 'test',
    slots: [
      wantedSlot(one, 'R-100'),
      wantedSlot(two, 'R-100'),
      wantedSlot(three, 'C-200', { alternates: ['C-201'] }),
    ],
  });
  story.tell('setup.chosen', { line: 'L1', setup: 'twins' });
  for (const slot of [one, two, three])
    story.tell(
      'reel.verified',
      verified(slot, slot === three ? 'C-200' : 'R-100', {
        reel: `K-${slot}`,
        quantity: 200,
        setup: 'twins',
      }),
    );
  story.tell('run.started', started('r1', { setup: 'twins', panelsWanted: 1000 }), { at: 60 });
  return story;
}

const put = (story: Story, reel: string, part: string, quantity: number | null, place = 'A-1') =>
  story.tell('reel.put', {
    reel,
    part,
    supplierPart: null,
    quantity,
    lot: null,
    dateCode: null,
    place,
    via: 'wedge',
  });

function asked(story: Story) {
  const floor = story.floor();
  const nowMs = startMs + 60_000;
  const outlook = lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  if (!outlook) throw new TypeError('Cannot go on as the line must run');
  return { floor, outlook, nowMs, ...toTheEnd(supplyQuestionSteps(floor, outlook)) };
}

describe('supplyQuestionSteps()', () => {
  test('lists the reels off the line once for all slots that take the same parts, with their spread', () => {
    const story = begun();
    put(story, 'X1', 'R-100', 4000);
    put(story, 'X2', 'C-201', 500);
    put(story, 'X3', 'C-200', 300);
    put(story, 'X4', 'C-200', null);
    const { question, slots } = asked(story);
    const lists = new Map(slots.map(({ slot }, at) => [slot, question.slots[at]?.takes ?? '']));
    expect(lists.get(one)).toBe(lists.get(two));
    expect(lists.get(three)).not.toBe(lists.get(one));
    const listOf = (slot: string) => question.waiting.get(lists.get(slot) ?? '');
    // One percent of what the label says; the slot's own part before its alternate, and none that nobody counted.
    expect(listOf(one)).toEqual([{ reel: 'X1', parts: 4000, sd: 40 }]);
    expect(listOf(three)).toEqual([
      { reel: 'X3', parts: 300, sd: 3 },
      { reel: 'X2', parts: 500, sd: 5 },
    ]);
    expect(question.waiting.size).toBe(2);
  });

  test('asks for slots that run out before the run ends, and for no others', () => {
    const story = begun();
    story.tell(
      'reel.counted',
      {
        line: 'L1',
        slot: two,
        reel: `K-${two}`,
        part: 'R-100',
        lot: null,
        quantity: 9000,
        sd: 0,
        basis: 'typed',
        panels: 0,
      },
      { at: 60 },
    );
    expect(asked(story).slots.map(({ slot }) => slot)).toEqual([one, three]);
  });
});

describe('supplySteps()', () => {
  const answer = (bring: SupplyAnswer['bring'], takes: readonly string[] = []): SupplyAnswer => ({
    ends: [],
    lasts: bring === null,
    bring,
    takes,
  });

  test('puts together what is missing, by when it must lie there, in reels as large as the log has seen', () => {
    const story = begun();
    put(story, 'X1', 'R-100', 1000);
    const { floor, outlook, slots, nowMs } = asked(story);
    const at = (slot: string) => slots.findIndex((each) => each.slot === slot);
    const answers: SupplyAnswer[] = [];
    answers[at(one)] = answer({ parts: 1001, byMs: nowMs - 5000 });
    answers[at(two)] = answer({ parts: 900, byMs: nowMs + 9000 }, ['X1', 'gone']);
    answers[at(three)] = answer(null);
    const supply = toTheEnd(supplySteps(floor, outlook, { answer: answers, slots }));
    // A time that is past is now; a reel of 1000 for each slot, two where 1001 parts are missing.
    expect(supply.picks).toEqual([{ place: '', part: 'R-100', reels: 3, byMs: nowMs, slots: [one, two] }]);
    expect(supply.slots.flatMap(({ waiting }) => waiting.map(({ reel }) => reel))).toEqual(['X1']);
    expect(toTheEnd(supplySteps(floor, outlook, { answer: answers.slice(0, 1), slots })).slots).toHaveLength(
      1,
    );
  });

  test('says where a reel lies that nobody counted, the first on the way; what nobody placed comes last', () => {
    const story = begun();
    put(story, 'X1', 'R-100', null, 'B-2');
    put(story, 'X2', 'R-100', null, 'A-7');
    put(story, 'X3', 'R-100', 10, 'A-1');
    put(story, 'X4', 'R-100', null, 'A-2');
    story.tell('material.blocked', { block: 'b', reel: 'X4', lot: null, part: null, reason: 'bent' });
    const { floor, outlook, slots } = asked(story);
    const all = slots.map(() => answer({ parts: 10, byMs: startMs }));
    expect(
      toTheEnd(supplySteps(floor, outlook, { answer: all, slots })).picks.map(({ part, place }) => [
        part,
        place,
      ]),
    ).toEqual([
      ['R-100', 'A-7'],
      ['C-200', ''],
    ]);
  });
});

test('a full reel holds what one was measured or weighed with, unless a larger one was seen', () => {
  const story = begun();
  const full = (parts: number, by: 'tape' | 'weight') =>
    story.tell('reel.calibrated', {
      part: 'R-100',
      parts,
      outerMm: by === 'tape' ? 178 : null,
      hubMm: by === 'tape' ? 60 : null,
      massG: by === 'weight' ? 400 : null,
      emptyG: by === 'weight' ? 100 : null,
    });
  const size = () => toTheEnd(fullReelSteps(story.floor()))('R-100');
  expect(size()).toBe(200); // as on the slots
  story.tell('reel.verified', verified(one, 'R-100', { reel: null, quantity: 700, setup: 'twins' }));
  story.tell('reel.verified', verified(three, 'C-200', { reel: null, quantity: 800, setup: 'twins' }));
  expect(size()).toBe(700); // one without an id is known by its slot alone
  full(3000, 'weight');
  expect(size()).toBe(3000);
  full(2500, 'tape');
  expect(size()).toBe(2500);
  put(story, 'X1', 'R-100', 2600);
  put(story, 'X2', 'C-200', 9000);
  put(story, 'X3', 'R-100', 100);
  expect(size()).toBe(2600);
});
