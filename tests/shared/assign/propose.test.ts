// Which slot each part of a new board gets on a line that stands and builds other boards; checked against the rules that the page tells.

import { describe, expect, test } from 'vitest';
import { collide, linePlaces, takenKeys } from '../../../shared/assign/places.ts';
import { type ProposalQuestion, proposeSlots } from '../../../shared/assign/propose.ts';
import type { Line } from '../../../shared/floor/state.ts';

const lineOf = (...banks: readonly number[]): Pick<Line, 'machines'> => ({
  machines: banks.map((positions, at) => ({
    machine: `M${at + 1}`,
    name: `Machine ${at + 1}`,
    banks: [{ bank: 'F', name: 'Front', positions }],
  })),
});
const part = (name: string, width = 1, perPanel = 1) => ({ part: name, width, perPanel });
const at = (slot: string, name: string, width = 1) => ({ slot, part: name, width });
const slots = (question: Partial<ProposalQuestion> & Pick<ProposalQuestion, 'parts'>) =>
  Object.fromEntries(
    proposeSlots({ line: lineOf(10), standing: [], elsewhere: [], ...question }).map((each) => [
      each.part,
      each.slot ?? each.reason ?? '',
    ]),
  );

describe('what is known comes first', () => {
  test('a part stays where it stands, however the files write its capitals, and keeps the text of its slot', () => {
    expect(slots({ parts: [part('bw-1')], standing: [at('m1/f/7', 'BW-1')] })).toEqual({ 'bw-1': 'm1/f/7' });
  });

  test('a part that stands nowhere goes where another setup has it', () => {
    expect(slots({ parts: [part('A')], elsewhere: [at('M1-F-009', 'A')] })).toEqual({ A: 'M1-F-009' });
  });

  test('what stands comes before what another setup says, and the first setup before the next', () => {
    const elsewhere = [at('M1-F-009', 'A'), at('M1-F-004', 'B'), at('M1-F-005', 'B')];
    expect(slots({ parts: [part('A'), part('B')], standing: [at('M1-F-002', 'A')], elsewhere })).toEqual({
      A: 'M1-F-002',
      B: 'M1-F-004',
    });
  });

  test('what a person said stands, and what stood there goes elsewhere', () => {
    const found = slots({
      parts: [{ ...part('A'), said: 'M1-F-002' }, part('B')],
      standing: [at('M1-F-002', 'B')],
    });
    expect(found['A']).toBe('M1-F-002');
    expect(found['B']).not.toBe('M1-F-002');
    expect(found['B']).toMatch(/^M1-F-0\d\d$/);
  });
});

describe('new parts keep out of the way', () => {
  test('they take positions that neither a feeder on the line nor another setup wants', () => {
    const standing = [1, 2, 3].map((position) => at(`M1-F-00${position}`, `S${position}`));
    const elsewhere = [4, 5, 6, 7].map((position) => at(`M1-F-00${position}`, `E${position}`));
    const found = slots({ parts: [part('A'), part('B', 2)], standing, elsewhere });
    const taken = Object.values(found).map((slot) => Number(slot?.slice(-3)));
    expect(Math.min(...taken)).toBe(8);
  });

  test('where room is short, a feeder that no setup wants gives way first', () => {
    const standing = [at('M1-F-001', 'LOOSE'), at('M1-F-002', 'E2')];
    const elsewhere = [2, 3, 4].map((position) => at(`M1-F-00${position}`, `E${position}`));
    expect(slots({ line: lineOf(4), parts: [part('A')], standing, elsewhere })).toEqual({ A: 'M1-F-001' });
  });

  test('a wide feeder moves a narrow one that splits its room, and nothing is in anything’s way', () => {
    const found = slots({
      line: lineOf(4),
      parts: [part('A'), part('W', 3)],
      standing: [at('M1-F-002', 'A')],
    });
    const places = linePlaces(lineOf(4), []);
    const keys = [takenKeys(places, found['A'] ?? '', 1), takenKeys(places, found['W'] ?? '', 3)] as const;
    expect(collide(...keys)).toBe(false);
  });
});

describe('what has no slot says why', () => {
  test('wider than any bank, and no room', () => {
    const parts = [part('HUGE', 5), part('A', 1, 9), part('B', 1, 1), part('W', 3)];
    expect(slots({ line: lineOf(4), parts })).toEqual({
      HUGE: 'too-wide',
      A: expect.stringMatching(/^M1-F/),
      B: expect.stringMatching(/^M1-F/),
      W: 'no-room',
    });
  });

  test('a line without banks takes nothing', () => {
    expect(slots({ line: { machines: [] }, parts: [part('A')] })).toEqual({ A: 'too-wide' });
  });
});

describe('lanes and places of their own', () => {
  test('a part keeps its lane and its tray, and no whole feeder takes the lane’s position', () => {
    const elsewhere = [at('M1-F-001A', 'L'), at('TRAY-X', 'T')];
    const found = slots({
      line: lineOf(3),
      parts: [part('L'), part('T', 2), part('A'), part('B')],
      elsewhere,
    });
    expect(found).toMatchObject({ L: 'M1-F-001A', T: 'TRAY-X' });
    expect([found['A'], found['B']].sort()).toEqual(['M1-F-002', 'M1-F-003']);
  });
});

describe('how slots are written', () => {
  test('like their neighbours in the bank', () => {
    expect(slots({ line: lineOf(9), parts: [part('A')], elsewhere: [at('m1f3', 'X')] })).toEqual({
      A: expect.stringMatching(/^m1f\d$/),
    });
  });

  test('a line that names neither machine nor bank gets bare numbers', () => {
    const line: Pick<Line, 'machines'> = {
      machines: [{ machine: '–', name: '–', banks: [{ bank: '–', name: '–', positions: 20 }] }],
    };
    const found = slots({ line, parts: [part('A')], elsewhere: [at('07', 'X')] });
    expect(found['A']).toMatch(/^\d\d$/);
  });

  test('every text that is written means its own place', () => {
    const line = lineOf(12, 12);
    const places = linePlaces(line, ['M1-F-4', 'M2-F-011', 'M2-F-011B', 'HAND']);
    for (const machine of [0, 1])
      for (let position = 1; position <= 12; position++)
        expect(places.find(places.write(machine, 0, position))).toEqual({
          machine,
          bank: 0,
          position,
          lane: null,
        });
    expect(places.others).toEqual(['M2-F-011B', 'HAND']);
  });
});

test('a family of boards on a line of three machines: all fits, nothing overlaps, what stands stays', () => {
  const line = lineOf(50, 50, 50);
  const parts = Array.from({ length: 90 }, (_, index) => part(`P${index}`, index % 9 === 0 ? 3 : 1, index));
  const standing = parts.slice(0, 30).map((each, index) => at(`M1-F-0${String(1 + index)}`, each.part));
  const asked = { line, parts, standing: standing.filter((_, index) => index % 3 !== 0), elsewhere: [] };
  const answer = proposeSlots(asked);
  const places = linePlaces(line, []);
  const keys = answer.map(({ slot }, index) => takenKeys(places, slot ?? '', parts[index]?.width ?? 1));
  expect(answer.every(({ slot }) => slot !== null)).toBe(true);
  expect(new Set(keys.flat()).size).toBe(keys.flat().length);
  for (const stays of asked.standing)
    expect(answer.find((each) => each.part === stays.part)?.slot).toBe(stays.slot);
});

describe('new feeders are arranged', () => {
  const neighbours = (found: Readonly<Record<string, string>>, one: string, other: string) => {
    const [a, b] = [found[one] ?? '', found[other] ?? ''];
    return a.slice(0, -3) === b.slice(0, -3) && Math.abs(Number(a.slice(-3)) - Number(b.slice(-3))) === 1;
  };
  const names = ['CAP-10012', 'CAP-10013', 'RES-47', 'IC-9000', 'CON-77-A', 'DIO-333'];

  test('look-alikes stand apart, on the same number of places', () => {
    const found = slots({ parts: names.map((name) => part(name)) });
    expect(new Set(Object.values(found)).size).toBe(6);
    expect(neighbours(found, 'CAP-10012', 'CAP-10013')).toBe(false);
  });

  test('a look-alike that stands on the line is kept away from too, and does not move', () => {
    const found = slots({
      line: lineOf(6),
      parts: names.slice(1).map((name) => part(name)),
      standing: [at('M1-F-003', 'CAP-10012')],
    });
    expect(neighbours({ ...found, 'CAP-10012': 'M1-F-003' }, 'CAP-10012', 'CAP-10013')).toBe(false);
    expect(Object.values(found)).not.toContain('M1-F-003');
  });

  test('one value in two sizes stands apart', () => {
    const resistor = (name: string, size: string) => ({ ...part(name), value: '10k', package: size });
    const found = slots({
      parts: [resistor('RES-47', 'R_0402'), resistor('TX-9', 'R_0603'), part('IC-9000')],
    });
    expect(neighbours(found, 'RES-47', 'TX-9')).toBe(false);
  });

  test('where there is no room to keep them apart, all still have a place', () => {
    const found = slots({ line: lineOf(2), parts: [part('CAP-10012'), part('CAP-10013')] });
    expect(Object.values(found).sort()).toEqual(['M1-F-001', 'M1-F-002']);
  });

  test('heavy users stand on different machines, as evenly as their numbers allow', () => {
    const found = slots({
      line: lineOf(10, 10, 10),
      parts: [part('A', 1, 60), part('B', 1, 50), part('C', 1, 40), part('D', 1, 30), part('E', 1, 30)],
    });
    const perPanel: Readonly<Record<string, number>> = { A: 60, B: 50, C: 40, D: 30, E: 30 };
    const load = new Map<string, number>();
    for (const [name, slot] of Object.entries(found))
      load.set(slot.slice(0, 2), (load.get(slot.slice(0, 2)) ?? 0) + (perPanel[name] ?? 0));
    // 210 over three machines: 70 each would be even; of these five numbers no split has a heaviest machine under 80.
    expect(Math.max(...load.values())).toBe(80);
  });
});

describe('places for trays', () => {
  const line: Pick<Line, 'machines'> = {
    machines: [
      {
        machine: 'M1',
        name: 'Machine 1',
        banks: [
          { bank: 'F', name: 'Front', positions: 4 },
          { bank: 'T', name: 'Trays', positions: 2, holds: 'trays' },
        ],
      },
    ],
  };
  const tray = (name: string) => ({ ...part(name), isOnTray: true });

  test('take what comes on trays, and nothing else', () => {
    const found = slots({ line, parts: [part('A'), tray('B'), part('C'), tray('D'), part('W', 2)] });
    expect([found['B'], found['D']].sort()).toEqual(['M1-T-001', 'M1-T-002']);
    for (const name of ['A', 'C', 'W']) expect(found[name]).toMatch(/^M1-F-/);
  });

  test('a tray part without a place for trays left has no slot, however much room feeders leave', () => {
    const found = slots({ line, parts: [tray('B'), tray('D'), tray('E')] });
    expect(Object.values(found).filter((slot) => slot === 'no-room')).toHaveLength(1);
    expect(Object.values(found).filter((slot) => slot.startsWith('M1-T-'))).toHaveLength(2);
  });

  test('what a person said and what stands is kept, on either kind of place', () => {
    const found = slots({
      line,
      parts: [{ ...tray('B'), said: 'M1-F-001' }, part('A'), tray('D')],
      standing: [at('M1-F-003', 'D')],
    });
    expect(found).toMatchObject({ B: 'M1-F-001', D: 'M1-F-003' });
    expect(found['A']).toMatch(/^M1-F-00[24]$/);
  });

  test('on a line without places for trays they stand where feeders do', () => {
    expect(slots({ line: lineOf(3), parts: [tray('B')] })['B']).toMatch(/^M1-F-/);
  });
});
