import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { growLine } from '../../../shared/floor/line-grow.ts';
import { isOnLinePlace } from '../../../shared/floor/place.ts';
import { emptyState, type Line } from '../../../shared/floor/state.ts';
import { wantedSlot } from './story.ts';

const names = { machine: (machine: string) => `Machine ${machine}`, bank: (bank: string) => bank };
const bare: Line = { line: 'L1', name: 'one', zone: 'Europe/London', machines: [] };
const known: Line = {
  ...bare,
  machines: [{ machine: 'M1', name: 'First', banks: [{ bank: 'F', name: 'front', positions: 20 }] }],
};

describe('growLine()', () => {
  test('defines machines and banks in walking order, each as long as its last feeder reaches', () => {
    const slots = [
      wantedSlot('M10-R-004', 'A', { positions: 2 }),
      wantedSlot('M2-R-001', 'B'),
      wantedSlot('M2-F-012', 'C', { positions: 3 }),
      wantedSlot('M2-F-002', 'D'),
    ];
    const { line, grown } = growLine(bare, slots, names);
    expect(line.machines).toEqual([
      {
        machine: 'M2',
        name: 'Machine M2',
        banks: [
          { bank: 'F', name: 'F', positions: 14 },
          { bank: 'R', name: 'R', positions: 1 },
        ],
      },
      { machine: 'M10', name: 'Machine M10', banks: [{ bank: 'R', name: 'R', positions: 5 }] },
    ]);
    expect(grown.map(({ machine, bank, before, after }) => [machine, bank, before, after])).toEqual([
      ['M2', 'F', 0, 14],
      ['M2', 'R', 0, 1],
      ['M10', 'R', 0, 5],
    ]);
  });

  test('keeps names and takes nothing away where the setup uses less', () => {
    const { line, grown } = growLine(known, [wantedSlot('M1-F-003', 'A')], names);
    expect(line).toEqual(known);
    expect(grown).toEqual([]);
  });

  test('a new bank holds trays where the setup has nothing else on it', () => {
    const tray = { comesIn: 'tray' } as const;
    const slots = [
      wantedSlot('M1-T-001', 'A', tray),
      wantedSlot('M1-T-004', 'B', tray),
      wantedSlot('M1-R-001', 'C', tray),
      wantedSlot('M1-R-002', 'D'),
    ];
    expect(growLine(known, slots, names).line.machines[0]?.banks).toEqual([
      { bank: 'F', name: 'front', positions: 20 },
      { bank: 'R', name: 'R', positions: 2 },
      { bank: 'T', name: 'T', positions: 4, holds: 'trays' },
    ]);
  });

  test('lengthens a bank and says by how much', () => {
    const { line, grown } = growLine(known, [wantedSlot('M1-F-020', 'A', { positions: 2 })], names);
    expect(line.machines[0]?.banks).toEqual([{ bank: 'F', name: 'front', positions: 21 }]);
    expect(grown).toEqual([{ machine: 'M1', bank: 'F', before: 20, after: 21 }]);
  });

  test('puts a slot without machine and bank onto the only ones, and one without a number nowhere', () => {
    const slots = [wantedSlot('left tray', 'A'), wantedSlot('14', 'B'), wantedSlot('F21', 'C')];
    expect(growLine(known, slots, names).grown).toEqual([
      { machine: 'M1', bank: 'F', before: 20, after: 21 },
    ]);
  });

  test('gives every full address a place, and asking again adds nothing', () => {
    const address = fc.tuple(
      fc.integer({ min: 1, max: 4 }),
      fc.constantFrom('F', 'R'),
      fc.integer({ min: 1, max: 99 }),
    );
    fc.assert(
      fc.property(fc.array(address, { minLength: 1, maxLength: 20 }), (addresses) => {
        const slots = addresses.map(([machine, bank, at]) =>
          wantedSlot(`M${machine}-${bank}-${String(at).padStart(3, '0')}`, 'A'),
        );
        const { line } = growLine(known, slots, names);
        const state = emptyState();
        state.lines.set('L1', line);
        for (const { slot } of slots) expect(isOnLinePlace(state, 'L1', slot)).toBe(true);
        expect(growLine(line, slots, names)).toEqual({ line, grown: [] });
      }),
    );
  });
});
