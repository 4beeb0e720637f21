// Which reel goes to which slot for the rest of a run, all certain: 1000 panels of ten parts.

import { expect, test } from 'vitest';
import type { LinePace, SlotLoad } from '../../../shared/forecast/run-out.ts';
import { answerSupply } from '../../../shared/forecast/supply.ts';
import { workingTime } from '../../../shared/forecast/working-time.ts';

const pace: LinePace = { nowMs: 0, panelSeconds: 30, panelsLeft: 1000, calendar: workingTime([]) };
const load = (slot: string, left: number): SlotLoad => ({ slot, perPanel: 10, left, sd: 0, loss: 0 });
const reel = (name: string, parts: number) => ({ reel: name, parts, sd: 0 });

test('a slot takes reels until its run is done, and no reel that an earlier slot took', () => {
  const answer = answerSupply({
    pace,
    slots: [
      { load: load('a', 2000), takes: 'own' },
      { load: load('b', 2000), takes: 'shared' },
      { load: load('c', 10_000), takes: 'shared' },
      { load: load('d', 9000), takes: 'none' },
      { load: load('e', 2000), takes: 'own' },
    ],
    waiting: new Map([
      ['own', [reel('R1', 4000), reel('R2', 4000), reel('R3', 3000)]],
      ['shared', [reel('R2', 4000), reel('R4', 8000), reel('R5', 8000)]],
    ]),
  });
  expect(answer.map(({ takes, lasts, bring }) => [takes.join(' '), lasts, bring?.parts ?? 0])).toEqual([
    ['R1 R2', true, 0],
    ['R4', true, 0],
    ['', true, 0],
    ['', false, 1000],
    ['R3', false, 5000],
  ]);
  // One end for what runs and one for each reel taken.
  expect(answer.map(({ ends }) => ends.map((end) => end.reel).join(' '))).toEqual([
    ' R1 R2',
    ' R4',
    '',
    '',
    ' R3',
  ]);
});

test('what splices cost is missing too: a reel more where they take the last parts', () => {
  const waiting = new Map([['own', [reel('R1', 4000), reel('R2', 4000), reel('R3', 100)]]]);
  const takes = (splice?: { parts: number; sd: number }) =>
    answerSupply({
      pace,
      slots: [{ load: load('a', 2000), takes: 'own', ...(splice && { splice }) }],
      waiting,
    })[0]?.takes.length;
  expect([takes(), takes({ parts: 5, sd: 0 })]).toEqual([2, 3]);
});
