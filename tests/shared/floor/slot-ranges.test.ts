// A line told by the first and the last slot of each bank.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bankKey, parseSlot } from '../../../shared/floor/address.ts';
import {
  lostSlots,
  MOST_POSITIONS,
  machinesOf,
  nextMachine,
  otherBank,
  rangesOf,
  readRange,
  type SlotRange,
  toldSlots,
} from '../../../shared/floor/slot-ranges.ts';

const range = (first: string, last: string): SlotRange => ({ first, last });
const faultOf = (first: string, last: string) => {
  const told = readRange(range(first, last));
  return told.ok ? null : told.error;
};
const lineOf = (...ranges: SlotRange[]) => {
  const told = machinesOf(ranges, (bank) => `bank ${bank}`);
  if (!told.ok) throw new Error(JSON.stringify(told.error));
  return { machines: told.value };
};

describe('one bank', () => {
  test.each([
    ['M1-F-001', 'M1-F-025', 'M1', 'F', 25],
    ['1-1-1', '1-1-48', '1', '1', 48],
    ['F1', 'F30', null, 'F', 30],
    ['M2R01', 'M2R18', 'M2', 'R', 18],
    ['3.01', '3.40', '3', null, 40],
    ['front 1', 'front 12', null, 'F', 12],
  ])('from %s to %s', (first, last, machine, bank, positions) => {
    expect(readRange(range(first, last))).toEqual({ ok: true, value: { machine, bank, positions, first } });
  });

  test.each([
    ['M1-F', 'M1-F-025', 'no-number'],
    ['M1-F-001', '', 'no-number'],
    ['M1-F-001A', 'M1-F-025A', 'no-number'],
    ['M1-F-001', 'M1-R-025', 'differs'],
    ['M1-F-001', 'M2-F-025', 'differs'],
    ['M1-F-003', 'M1-F-025', 'not-from-one'],
    ['M1-F-003', 'M1-F-002', 'not-from-one'],
    ['M1-F-001', `M1-F-${MOST_POSITIONS + 1}`, 'too-many'],
  ])('from %s to %s it is refused: %s', (first, last, fault) => {
    expect(faultOf(first, last)).toBe(fault);
  });
});

describe('a line', () => {
  const six = [1, 2, 3].flatMap((machine) =>
    ['F', 'R'].map((bank) => range(`M${machine}-${bank}-001`, `M${machine}-${bank}-025`)),
  );

  test('of three machines with two banks has its 150 slots, as they are written', () => {
    const line = lineOf(...six);
    expect(line.machines.map(({ machine, banks }) => [machine, banks.map(({ bank }) => bank)])).toEqual([
      ['M1', ['F', 'R']],
      ['M2', ['F', 'R']],
      ['M3', ['F', 'R']],
    ]);
    const slots = toldSlots(line);
    expect(slots).toHaveLength(150);
    expect([slots[0], slots[24], slots.at(-1)]).toEqual(['M1-F-001', 'M1-F-025', 'M3-R-025']);
    expect(rangesOf(line)).toEqual(six);
  });

  test('says every range that is wrong, and which bank is told twice', () => {
    const told = machinesOf(
      [range('M1-F-1', 'M1-F-9'), range('x', 'y'), range('m1/front/1', 'm1/front/4')],
      String,
    );
    expect(told).toEqual({
      ok: false,
      error: [
        { at: 1, code: 'no-number' },
        { at: 2, code: 'twice' },
      ],
    });
  });

  test('that grows smaller says which slots in use it loses', () => {
    const line = lineOf(range('M1-F-001', 'M1-F-010'));
    expect(lostSlots(line, ['M1-F-010', 'M1-F-011', 'M1-R-001', 'M1-F-011'])).toEqual([
      'M1-F-011',
      'M1-R-001',
    ]);
  });
});

describe('what comes beside a bank', () => {
  test.each([
    ['M1-F-001', 'M1-F-025', 'M1-R-001', 'M1-R-025'],
    ['m1/r/1', 'm1/r/9', 'm1/f/1', 'm1/f/9'],
    ['F1', 'F30', 'R1', 'R30'],
  ])('of %s … %s is %s … %s', (first, last, otherFirst, otherLast) => {
    expect(otherBank(range(first, last))).toEqual(range(otherFirst, otherLast));
  });

  test('is nothing where the text names no front or rear', () => {
    expect(otherBank(range('1-1-1', '1-1-9'))).toBeNull();
    expect(otherBank(range('x', 'y'))).toBeNull();
  });

  test('of a machine is the next one, with all its banks', () => {
    expect(nextMachine([range('M9-F-01', 'M9-F-20'), range('M9-R-01', 'M9-R-18')])).toEqual([
      range('M10-F-01', 'M10-F-20'),
      range('M10-R-01', 'M10-R-18'),
    ]);
    expect(nextMachine([range('M1-F-1', 'M1-F-2'), range('M2-F-1', 'M2-F-3')])).toEqual([
      range('M3-F-1', 'M3-F-3'),
    ]);
    expect(nextMachine([range('F1', 'F9')])).toEqual([]);
  });
});

test('whatever a bank’s texts look like, every slot is written once and read back to its place', () => {
  const joint = fc.constantFrom('-', '/', '.', '_', ' ');
  const told = fc.record({
    machine: fc.constantFrom('M1', '1', 'LINE2', 'A'),
    bank: fc.constantFrom('F', 'rear', '1', 'B2', 'left'),
    joint,
    digits: fc.integer({ min: 1, max: 4 }),
    positions: fc.integer({ min: 1, max: 120 }),
  });
  fc.assert(
    fc.property(told, ({ machine, bank, joint: between, digits, positions }) => {
      const text = (position: number) =>
        [machine, bank, String(position).padStart(digits, '0')].join(between);
      const read = readRange(range(text(1), text(positions)));
      expect(read.ok && read.value.positions).toBe(positions);
      const line = lineOf(range(text(1), text(positions)));
      const slots = toldSlots(line);
      expect(slots).toEqual(Array.from({ length: positions }, (_, step) => text(step + 1)));
      const keys = slots.map((slot) => `${bankKey(parseSlot(slot))}#${parseSlot(slot).position}`);
      expect(new Set(keys).size).toBe(positions);
      expect(lostSlots(line, slots)).toEqual([]);
    }),
  );
});

test('a bank of trays stays one, through the record and on the next machine', () => {
  const trays: SlotRange = { ...range('M1-T-01', 'M1-T-06'), holds: 'trays' };
  const line = lineOf(range('M1-F-01', 'M1-F-20'), trays);
  expect(line.machines[0]?.banks.map(({ bank, holds }) => [bank, holds])).toEqual([
    ['F', undefined],
    ['T', 'trays'],
  ]);
  expect(rangesOf(line)).toEqual([range('M1-F-01', 'M1-F-20'), trays]);
  expect(nextMachine(rangesOf(line))[1]).toEqual({ ...range('M2-T-01', 'M2-T-06'), holds: 'trays' });
});
