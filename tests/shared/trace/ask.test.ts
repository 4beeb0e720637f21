// Quality's questions asked of a story whose answers are known by hand.

import { describe, expect, test } from 'vitest';
import { compareEntries } from '../../../shared/log/order.ts';
import { tracePanel, tracePlaces } from '../../../shared/trace/ask.ts';
import type { TraceQuestion } from '../../../shared/trace/question.ts';
import { type TraceIndex, traceLog } from '../../../shared/trace/stretches.ts';
import { beginStory, brookSetup, counted, started, tellPlant, unloaded, verified } from '../floor/story.ts';

const { index, splitAt } = tellShift();

/** One run of 60 panels: two slots loaded, one of them spliced after panel 40 with 20 parts left by the count. */
function tellShift(): { readonly index: TraceIndex; readonly splitAt: string } {
  const story = beginStory();
  tellPlant(story);
  story.tell('line.panels-ruled', {
    line: 'L1',
    machines: [{ machine: 'M1', least: 0, most: 0 }],
    missed: 0,
  });
  story.tell(
    'reel.verified',
    verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LA', quantity: 100, dateCode: '2605', feeder: 'F1' }),
  );
  story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K2', lot: 'LB', quantity: 5000 }));
  story.tell('run.started', started('r1'));
  story.tell('panels.counted', counted('r1', 1, 'SN-1'));
  story.tell('panels.counted', counted('r1', 39));
  const joined = story.tell(
    'reel.verified',
    verified('M1-F-001', 'R-100', { act: 'splice', run: 'r1', reel: 'K3', lot: 'LB', feeder: 'F1' }),
    { who: 'bo' },
  );
  story.tell('panels.counted', counted('r1', 9));
  story.tell('panels.counted', counted('r1', 1, 'SN-50'));
  story.tell('panels.counted', counted('r1', 10));
  return { index: traceLog([...story.entries].sort(compareEntries)), splitAt: joined.at };
}

describe('tracePlaces()', () => {
  // 100 - 40 × 2 = 20 parts were left at most, the label in doubt by 4.7535 × 1 part: ⌈24.8 ÷ 2⌉ = 13 panels after the 40th, and the one
  // at work. At least 100 - 4.8 - 80 ÷ 0.9 = 6.4 parts were left where a tenth of all picks is lost, the most that a feeder loses: 2 panels.
  test('answers by lot, reel, part, feeder, slot, person, run and time', () => {
    const before = new Date(Date.parse(splitAt) - 1).toISOString();
    const rows: readonly (readonly [question: TraceQuestion, reels: string, why: string])[] = [
      [{ lot: 'LA' }, 'K1', 'one lot on one slot'],
      [{ lot: 'LB' }, 'K3 K2', 'one lot on two slots'],
      [{ lot: ' lb ' }, 'K3 K2', 'a lot in small letters'],
      [{ reel: 'k3' }, 'K3', 'a reel in small letters'],
      [{ part: 'r-100', feeder: 'f1' }, 'K1 K3', 'a part and a feeder in small letters'],
      [{ slot: 'm1-r-003' }, 'K2', 'a slot in small letters'],
      [{ lot: 'L B' }, '', 'a blank within is another lot'],
      [{ reel: 'K3' }, 'K3', 'a reel'],
      [{ part: 'R-100' }, 'K1 K3 K2', 'a part'],
      [{ feeder: 'F1' }, 'K1 K3', 'a feeder'],
      [{ slot: 'M1-R-003' }, 'K2', 'a slot'],
      [{ who: 'bo' }, 'K3', 'who joined it'],
      [{ run: 'r2' }, '', 'a run that was not'],
      [{ lot: 'LB', slot: 'M1-F-001' }, 'K3', 'two at once'],
      [{ from: splitAt }, 'K3', 'from a moment on'],
      [{ to: before }, 'K1 K2', 'up to a moment'],
    ];
    for (const [question, reels, why] of rows) {
      const found = tracePlaces(index, question).map((place) => place.reel);
      expect(found.join(' '), why).toBe(reels);
    }
  });

  test('gives sure and possible panels, the codes among them, and whether it goes on', () => {
    expect(tracePlaces(index, { lot: 'LA' })).toMatchObject([
      {
        product: 'Brook',
        run: 'r1',
        dateCode: '2605',
        sure: { first: 1, last: 42 },
        possible: { first: 1, last: 54 },
        serials: ['SN-1', 'SN-50'],
        goesOn: false,
      },
    ]);
    expect(tracePlaces(index, { reel: 'K3' })).toMatchObject([
      {
        sure: { first: 55, last: 60 },
        possible: { first: 43, last: 60 },
        serials: ['SN-50'],
        goesOn: true,
      },
    ]);
  });
});

describe('tracePanel()', () => {
  const lotsOn = (panel: string, run?: string) =>
    tracePanel(index, panel, run)?.slots.map(({ slot, lots }) => [
      slot,
      lots.map((lot) => `${lot.lot}${lot.sure ? '' : '?'}`).join(' '),
    ]);

  test('gives one lot where it is sure and both around a joint', () => {
    const rows: readonly (readonly [panel: string, lots: string, why: string])[] = [
      ['1', 'LA', 'the first'],
      ['42', 'LA', 'the last that surely carries it'],
      ['43', 'LA? LB?', 'in doubt'],
      ['54', 'LA? LB?', 'in doubt'],
      ['55', 'LB', 'the first that surely carries the next'],
      ['SN-50', 'LA? LB?', 'by its code'],
    ];
    for (const [panel, lots, why] of rows) {
      expect(lotsOn(panel), why).toEqual([
        ['M1-F-001', lots],
        ['M1-R-003', 'LB'],
      ]);
    }
  });

  test('finds no panel that was not built', () => {
    for (const panel of ['0', '61', 'SN-2', '', '1.5']) expect(tracePanel(index, panel), panel).toBeNull();
    expect(tracePanel(index, '1', 'r2')).toBeNull();
  });

  test('gives all runs in which a panel was counted, both sides and repeats, the newest first among them', () => {
    const story = beginStory();
    tellPlant(story);
    const machines = [{ machine: 'M1', least: 0, most: 0 }];
    story.tell('line.panels-ruled', { line: 'L1', machines, missed: 0 });
    story.tell('setup.taken', { ...brookSetup, setup: 'bottom', side: 'bottom', revision: 'B' });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LA' }));
    story.tell('run.started', started('r1', { setup: 'bottom' }));
    story.tell('panels.counted', counted('r1', 1, 'PN0'));
    story.tell('reel.unloaded', unloaded('M1-F-001', { reel: 'K1' }));
    story.tell('run.ended', { run: 'r1', line: 'L1', panels: 1, note: '' });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K2', lot: 'LB' }));
    story.tell('run.started', started('r2'));
    story.tell('panels.counted', counted('r2', 1, 'PN0'));
    const found = tracePanel(traceLog([...story.entries].sort(compareEntries)), 'PN0');
    expect(found).toMatchObject({ run: 'r2', side: 'top' });
    expect(
      found?.runs.map(({ run, side, slots }) => [run, side, slots[0]?.lots.map(({ lot }) => lot)]),
    ).toEqual([
      ['r1', 'bottom', ['LA']],
      ['r2', 'top', ['LB']],
    ]);
    expect(tracePanel(traceLog([...story.entries].sort(compareEntries)), 'PN0', 'r1')?.runs).toHaveLength(1);
  });
});
