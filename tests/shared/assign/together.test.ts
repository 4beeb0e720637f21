// Slots for several boards at once: never more feeders put in than board after board, and all that a person said stands.

import { describe, expect, test } from 'vitest';
import type { PlacedPart, WantedPart } from '../../../shared/assign/propose.ts';
import { proposeSlots } from '../../../shared/assign/propose.ts';
import { proposeTogether } from '../../../shared/assign/together.ts';
import type { Line } from '../../../shared/floor/state.ts';
import { actOut, boardFamily } from './cases.ts';

const lineOf = (...banks: readonly number[]): Pick<Line, 'machines'> => ({
  machines: banks.map((positions, at) => ({
    machine: `M${at + 1}`,
    name: `Machine ${at + 1}`,
    banks: [{ bank: 'F', name: 'Front', positions }],
  })),
});
const part = (name: string, width = 1): WantedPart => ({ part: name, width, perPanel: 1 });
const slotsOf = (answer: ReturnType<typeof proposeTogether>) =>
  answer.map((found) => Object.fromEntries(found.map((each) => [each.part, each.slot ?? each.reason ?? ''])));

describe('boards together', () => {
  test('a part of both stands on one slot, and where there is room nothing is put in twice', () => {
    const boards = [
      [part('A'), part('B')],
      [part('B'), part('C', 2)],
    ];
    const [one, two] = slotsOf(proposeTogether({ line: lineOf(8), standing: [], elsewhere: [] }, boards));
    expect(one?.['B']).toBe(two?.['B']);
    expect(new Set([one?.['A'], one?.['B'], two?.['C']]).size).toBe(3);
  });

  test('one board is proposed as it is alone', () => {
    const place = { line: lineOf(8), standing: [], elsewhere: [{ slot: 'M1-F-004', part: 'A', width: 1 }] };
    const parts = [part('A'), part('B')];
    expect(proposeTogether(place, [parts])).toEqual([proposeSlots({ ...place, parts })]);
  });

  test('what a person said for a board stands, and trays keep their places', () => {
    const line: Pick<Line, 'machines'> = {
      machines: [
        {
          machine: 'M1',
          name: 'Machine 1',
          banks: [
            { bank: 'F', name: 'Front', positions: 3 },
            { bank: 'T', name: 'Trays', positions: 1, holds: 'trays' },
          ],
        },
      ],
    };
    const boards = [
      [{ ...part('A'), said: 'M1-F-003' }, part('B'), part('C')],
      [part('D'), part('B'), { ...part('T'), isOnTray: true }],
    ];
    const [one, two] = slotsOf(proposeTogether({ line, standing: [], elsewhere: [] }, boards));
    expect(one?.['A']).toBe('M1-F-003');
    expect(two?.['T']).toBe('M1-T-001');
    expect(one?.['B']).toBe(two?.['B']);
  });
});

test.each([1, 2, 3])('family %i: not one feeder more than board after board', (seed) => {
  const question = boardFamily(seed);
  const line = {
    machines: question.line.machines.map(({ machine, banks }) => ({
      machine,
      name: machine,
      banks: banks.map(({ bank, positions }) => ({ bank, name: bank, positions })),
    })),
  };
  const sum = (counts: readonly number[]) => counts.reduce((total, count) => total + count, 0);
  const jobsOf = (answer: ReturnType<typeof proposeTogether>) =>
    answer.map((found, at) => ({
      id: question.jobs[at]?.id ?? '',
      slots: found.flatMap(({ part: name, slot }) => (slot === null ? [] : [{ part: name, slot }])),
      changes: 0,
    }));
  const before: PlacedPart[] = [];
  const after = question.jobs.map(({ parts }) => {
    const found = proposeSlots({ line, parts, standing: [], elsewhere: before });
    for (const { part: name, slot } of found)
      before.push({
        part: name,
        slot: slot ?? '',
        width: parts.find((each) => each.part === name)?.width ?? 1,
      });
    return found;
  });
  const together = proposeTogether(
    { line, standing: [], elsewhere: [] },
    question.jobs.map(({ parts }) => parts),
  );
  // What it costs is acted out by the tests' own count, which throws where feeders overlap or a part has no place.
  expect(sum(actOut(question, jobsOf(together)))).toBeLessThanOrEqual(sum(actOut(question, jobsOf(after))));
});
