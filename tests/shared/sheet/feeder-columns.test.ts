// What a sheet says of the feeder, and whose makers a product's list holds.

import { describe, expect, it } from 'vitest';
import { readSheet } from '../../../shared/sheet/read.ts';
import { fromSetupSlots, toSetupSlots } from '../../../shared/sheet/taken.ts';
import { textToRows } from '../../../shared/sheet/text.ts';

describe('what the feeder must be', () => {
  it('comes from columns of its own into the setup, and back', () => {
    const text =
      'Slot,Part,Qty,Feeder type,Feeder drive,Pocket depth\nM1-F-1,R-1,2,twin 8,electric,2.5\nM1-F-2,R-2,1,,,deep\n';
    const reading = readSheet(textToRows(text).rows);
    const wanted = toSetupSlots(reading.slots);
    expect(wanted[0]).toMatchObject({ feederType: 'twin 8', drive: 'electric', pocketMm: 2.5 });
    expect(wanted[1]).not.toHaveProperty('feederType');
    expect(reading.problems).toContainEqual(expect.objectContaining({ row: 3, code: 'pocketUnreadable' }));
    expect(fromSetupSlots(wanted)[0]).toMatchObject({
      feederType: 'twin 8',
      drive: 'electric',
      pocketMm: 2.5,
    });
  });

  it('makers approved by hand silence the warning and never become the product’s own list', () => {
    const approved = new Map([['R-1', ['MK-1']]]);
    const reading = readSheet(textToRows('Slot,Part,Qty\nM1-F-1,R-1,2\nM1-F-2,R-2,1\n').rows, { approved });
    expect(reading.slots.map(({ supplierParts }) => supplierParts)).toEqual([[], []]);
    expect(reading.problems.filter(({ code }) => code === 'noApprovedReels').map(({ row }) => row)).toEqual([
      3,
    ]);
  });
});
