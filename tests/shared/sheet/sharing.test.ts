// Slots of one part in a sheet: side by side or in turn, one word for the part, one figure for all rows in turn.

import { describe, expect, it } from 'vitest';
import { readPlacements } from '../../../shared/sheet/placements.ts';
import { readSheet, type SheetOptions } from '../../../shared/sheet/read.ts';
import { fromSetupSlots, toSetupSlots } from '../../../shared/sheet/taken.ts';
import { textToRows } from '../../../shared/sheet/text.ts';

function read(header: string, rows: readonly string[], options: SheetOptions = {}) {
  return readSheet(
    textToRows([`Slot,Part,Qty,Tape width,Pitch,${header}`, ...rows].join('\n')).rows,
    options,
  );
}
const row = (slot: string, part: string, rest: string) => `M1-F-${slot},${part},${rest}`;
const codes = (reading: ReturnType<typeof read>) => reading.problems.map(({ code, row: at }) => [code, at]);
const turns = (reading: ReturnType<typeof read>) =>
  toSetupSlots(reading.slots).map(({ slot, perPanel, turn }) => [slot, perPanel, turn]);

describe('a column for sharing', () => {
  it.each([
    ['Sharing', 'in turn', 'split'],
    ['Reparto', 'por turno', 'repartido'],
    ['Aufteilung', 'nacheinander', 'geteilt'],
    ['Partage', 'à tour de rôle', 'réparti'],
  ])('is understood as %s: %s, %s', (header, inTurn, split) => {
    const reading = read(header, [
      row('001', 'A', `12,8,4,${inTurn}`),
      row('002', 'A', `12,8,4,${inTurn}`),
      row('003', 'B', `4,8,4,${split}`),
      row('004', 'B', `2,8,4,${split}`),
      row('005', 'C', '1,8,4,'),
    ]);
    expect(codes(reading)).toEqual([]);
    expect(turns(reading)).toEqual([
      ['M1-F-001', 12, 1],
      ['M1-F-002', 12, 2],
      ['M1-F-003', 4, undefined],
      ['M1-F-004', 2, undefined],
      ['M1-F-005', 1, undefined],
    ]);
    const back = fromSetupSlots(toSetupSlots(reading.slots)).map(({ sharing }) => sharing);
    expect(back).toEqual(['inTurn', 'inTurn', null, null, null]);
  });

  it('one "in turn" speaks for the part, unless another row says "split"', () => {
    expect(turns(read('Sharing', [row('001', 'A', '12,8,4,'), row('002', 'a', '12,8,4,in turn')]))).toEqual([
      ['M1-F-001', 12, 1],
      ['M1-F-002', 12, 2],
    ]);
    const mixed = [
      row('001', 'A', '12,8,4,split'),
      row('002', 'A', '6,8,4,in turn'),
      row('003', 'A', '6,8,4,in turn'),
    ];
    expect(turns(read('Sharing', mixed)).map(([, , turn]) => turn)).toEqual([undefined, 1, 2]);
  });

  it('refuses two figures for one part in turn, and a word that is neither', () => {
    const differs = read('Sharing', [row('001', 'A', '12,8,4,in turn'), row('002', 'A', '6,8,4,in turn')]);
    expect(codes(differs)).toEqual([['turnUsageDiffers', 3]]);
    expect(codes(read('Sharing', [row('001', 'A', '12,8,4,sometimes')]))).toEqual([['sharingUnknown', 2]]);
  });

  it('takes the placement file’s sum for each slot in turn, and counts it once', () => {
    const placed = Array.from({ length: 5 }, (_, at) => `R${at + 1},A,${at},0,0,top`).join('\n');
    const placements = readPlacements(textToRows(`Designator,Part,X,Y,Rotation,Side\n${placed}`).rows);
    const open = [row('001', 'A', ',8,4,in turn'), row('002', 'A', ',8,4,in turn')];
    expect(turns(read('Sharing', open, { placements })).map(([, perPanel]) => perPanel)).toEqual([5, 5]);
    const stated = [row('001', 'A', '5,8,4,in turn'), row('002', 'A', '5,8,4,in turn')];
    expect(codes(read('Sharing', stated, { placements }))).toEqual([]);
    const beside = [row('001', 'A', '5,8,4,split'), row('002', 'A', '5,8,4,split')];
    expect(codes(read('Sharing', beside, { placements })).map(([code]) => code)).toContain('usageDisagrees');
  });
});
