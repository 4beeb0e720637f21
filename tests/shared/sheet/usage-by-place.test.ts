import { describe, expect, it } from 'vitest';
import { readPlacements } from '../../../shared/sheet/placements.ts';
import { readSheet } from '../../../shared/sheet/read.ts';
import { textToRows } from '../../../shared/sheet/text.ts';

const placements = readPlacements(
  'Ref,Value,X,Y,Side\nR1,10k,1,1,top\nR2,10k,2,1,top\nR3,10k,3,1,bottom\nC1,100n,4,1,top\nC2,100n,5,1,top\nU1,MCU,6,1,top\n',
);
const read = (text: string, options: Parameters<typeof readSheet>[1] = {}) => {
  const { slots, problems, placementScope } = readSheet(textToRows(text).rows, { placements, ...options });
  return {
    usage: slots.map(({ slot, perPanel }) => `${slot} ${perPanel}`),
    codes: problems
      .filter(({ code }) => !/^(?:columnAbsent|noApprovedReels)$/.test(code))
      .map(({ code, row }) => `${code} ${row}`),
    placementScope,
    slots,
  };
};

describe('readSheet() with rows that name designators', () => {
  it('counts by designator, whatever the part is called in the placement file', () => {
    const sheet =
      'Slot,Part,Designators\nM1-F-001,BW-1,R1\nM1-F-002,BW-1,"R2, R3"\nM1-F-003,BW-2,C1-C2\nM1-F-004,BW-3,U1\n';
    expect(read(sheet, { boardsPerPanel: 2 })).toMatchObject({
      usage: ['M1-F-001 2', 'M1-F-002 4', 'M1-F-003 4', 'M1-F-004 2'],
      codes: [],
      placementScope: 'both',
    });
  });

  it('counts the side that all its designators are on', () => {
    const sheet = 'Slot,Part,Designators\nM1-F-001,BW-1,"R1,R2"\nM1-F-003,BW-2,"C1,C2"\nM1-F-004,BW-3,U1\n';
    expect(read(sheet)).toMatchObject({
      usage: ['M1-F-001 2', 'M1-F-003 2', 'M1-F-004 1'],
      codes: [],
      placementScope: 'top',
    });
  });

  it('tells what only one of the two names, and a stated figure that differs', () => {
    const sheet =
      'Slot,Part,Qty,Designators\nM1-F-001,BW-1,3,"R1,R2"\nM1-F-003,BW-2,2,"C1,C2,C9"\nM1-F-005,BW-2,1,C2\n';
    const { codes } = read(sheet);
    expect(readSheet(textToRows(sheet).rows, { placements }).problems).toContainEqual(
      expect.objectContaining({ code: 'sheetDesignatorNotPlaced', row: 3, column: 'Designators' }),
    );
    expect(codes).toEqual(
      expect.arrayContaining([
        'usageDisagrees 2',
        'sheetDesignatorNotPlaced 3',
        'sheetDesignatorTwice 4',
        'designatorWithoutSlot null',
      ]),
    );
  });

  it('leaves rows without designators to the join by part', () => {
    const sheet = 'Slot,Part,Designators\nM1-F-001,BW-1,"R1,R2,R3"\nM1-F-003,100n,\nM1-F-004,MCU,\n';
    expect(read(sheet)).toMatchObject({ usage: ['M1-F-001 3', 'M1-F-003 2', 'M1-F-004 1'], codes: [] });
  });

  it('takes the makers that the bill approves where the sheet names none', () => {
    const makers = new Map([['BW-1', ['KP-1']]]);
    const { slots } = read('Slot,Part,Designators\nM1-F-001,bw-1,"R1,R2,R3"\n', { makers });
    expect(slots[0]?.supplierParts).toEqual(['KP-1']);
  });

  it('refuses a column of parts that holds designators', () => {
    const sheet = `Slot,Part,Qty\n${[1, 2, 3, 4, 5].map((at) => `M1-F-00${at},R${at},1`).join('\n')}\n`;
    expect(readSheet(textToRows(sheet).rows).problems).toContainEqual(
      expect.objectContaining({ code: 'partsAreDesignators', severity: 'error', column: 'Part' }),
    );
  });
});
