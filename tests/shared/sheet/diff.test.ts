import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diffSheets } from '../../../shared/sheet/diff.ts';
import { readSheet } from '../../../shared/sheet/read.ts';
import { toSetupSlots } from '../../../shared/sheet/taken.ts';

function slotsOf(...rows: readonly (readonly (string | number)[])[]) {
  return readSheet([['Slot', 'Part', 'Qty', 'Tape width', 'Pitch', 'Alternates'], ...rows]).slots;
}

describe('diffSheets()', () => {
  it('gives added, removed and changed slots with the fields that changed', () => {
    const before = slotsOf(
      ['M1-F-001', 'A', 1, 8, 4, 'X;Y'],
      ['M1-F-002', 'B', 2, 8, 4, ''],
      ['M1-F-003', 'C', 3, 8, 4, ''],
    );
    const after = slotsOf(
      ['M1-F-003', 'C', 3, 8, 4, ''],
      ['M1-F-001', 'A', 6, 8, 2, 'Y;X'],
      ['M1-F-004', 'D', 1, 8, 4, ''],
    );
    const diff = diffSheets(before, after);
    expect(diff.added.map((slot) => slot.slot)).toEqual(['M1-F-004']);
    expect(diff.removed.map((slot) => slot.slot)).toEqual(['M1-F-002']);
    expect(diff.same).toBe(1);
    expect(diff.changed).toMatchObject([
      {
        slot: 'M1-F-001',
        fields: [
          { field: 'perPanel', before: 1, after: 6 },
          { field: 'pitch', before: 4, after: 2 },
        ],
      },
    ]);
  });

  it('finds nothing in a revision against itself, and the other way round what it found', () => {
    const row = fc.tuple(
      fc.integer({ min: 1, max: 9 }),
      fc.constantFrom('A', 'B', 'C'),
      fc.integer({ min: 1, max: 3 }),
    );
    const sheet = fc
      .uniqueArray(row, { selector: ([slot]) => slot, maxLength: 9 })
      .map((rows) => slotsOf(...rows.map(([slot, part, count]) => [`M1-F-${slot}`, part, count, 8, 4, ''])));
    fc.assert(
      fc.property(sheet, sheet, (one, two) => {
        expect(diffSheets(one, one)).toEqual({ added: [], removed: [], changed: [], same: one.length });
        const there = diffSheets(one, two);
        const back = diffSheets(two, one);
        expect(back.added).toEqual(there.removed);
        expect(back.removed).toEqual(there.added);
        expect(back.changed).toHaveLength(there.changed.length);
        expect(there.added.length + there.changed.length + there.same).toBe(two.length);
      }),
    );
  });
});

describe('toSetupSlots()', () => {
  it('gives the slots that a setup keeps, positions from the tape width where none are stated', () => {
    expect(toSetupSlots(slotsOf(['M1-F-001', 'A', 3, 16, 8, 'X;Y']))).toEqual([
      {
        slot: 'M1-F-001',
        part: 'A',
        perPanel: 3,
        tapeWidthMm: 16,
        pitchMm: 8,
        positions: 2,
        alternates: ['X', 'Y'],
        supplierParts: [],
        critical: false,
      },
    ]);
  });

  it("takes 0 for usage that nobody states, 1 position without a width, and the site's positions", () => {
    expect(toSetupSlots(slotsOf(['M1-F-001', 'A', '', '', '', '']))).toMatchObject([
      { perPanel: 0, positions: 1 },
    ]);
    expect(toSetupSlots(slotsOf(['M1-F-001', 'A', 1, 16, 8, '']), { 16: 3 })).toMatchObject([
      { positions: 3 },
    ]);
  });
});
