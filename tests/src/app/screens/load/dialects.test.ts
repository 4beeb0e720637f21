// However a plant writes its slots, each goes from the sheet's text to a place on the map, keeps its spelling, is recognised when its
// label is scanned, and has its place in the walk. The dialects are common practice, written down from memory.

import { describe, expect, test } from 'vitest';
import { compareSlots } from '../../../../../shared/floor/address.ts';
import { growLine } from '../../../../../shared/floor/line-grow.ts';
import { setupProgress } from '../../../../../shared/floor/progress.ts';
import { recognise } from '../../../../../shared/floor/recognise.ts';
import { emptyState, type Line } from '../../../../../shared/floor/state.ts';
import { readSheet } from '../../../../../shared/sheet/read.ts';
import { toSetupSlots } from '../../../../../shared/sheet/taken.ts';
import { textToRows } from '../../../../../shared/sheet/text.ts';
import { mapBanks } from '../../../../../src/app/screens/load/model.ts';

const names = { machine: (machine: string) => machine, bank: (bank: string) => bank };

/** One plant's way to write two neighbouring slots and one further on. */
const dialects: readonly (readonly [first: string, second: string, later: string])[] = [
  ['M1-F-001', 'M1-F-002', 'M2-R-010'],
  ['M1-1-001', 'M1-1-002', 'M1-2-001'],
  ['M1-F1-001', 'M1-F1-002', 'M1-F2-001'],
  ['F1', 'F2', 'R1'],
  ['F01', 'F02', 'R10'],
  ['2', '3', '14'],
  ['001', '002', '110'],
  ['2A', '2B', '3A'],
  ['12.03', '12.04', '13.01'],
  ['1.2', '1.10', '2.1'],
  ['B1.F.45', 'B1.F.46', 'B2.R.1'],
  ['m1/front/1', 'm1/front/2', 'm1/rear/1'],
  ['M1_F_01', 'M1_F_02', 'M1_R_01'],
  ['M1:F:1', 'M1:F:2', 'M2:F:1'],
  ['M1 F 1', 'M1 F 2', 'M1 R 1'],
  ['M1F1', 'M1F2', 'M1R1'],
  ['M1F001', 'M1F002', 'M2F001'],
  ['A-1', 'A-2', 'B-1'],
  ['A1', 'A2', 'AA1'],
  ['M1-001', 'M1-002', 'M2-001'],
  ['LINE-2-M1-R-7', 'LINE-2-M1-R-8', 'LINE-2-M2-R-1'],
  ['M1-F-001A', 'M1-F-001B', 'M1-F-002A'],
  ['M1-F-001-1', 'M1-F-001-2', 'M1-F-002-1'],
  ['M1-F-1/1', 'M1-F-1/2', 'M1-F-2/1'],
  ['M1.F.1.1', 'M1.F.1.2', 'M1.F.1.3'],
  ['Front-1', 'Front-2', 'Rear-1'],
  ['vorne 1', 'vorne 2', 'hinten 1'],
  ['delantero/1', 'delantero/2', 'trasero/1'],
  ['M1-vorn-1', 'M1-vorn-2', 'M1-hinten-1'],
  ['T1-F-1', 'T1-F-2', 'T2-F-1'],
  ['Table1-1', 'Table1-2', 'Table2-1'],
  ['1-1', '1-2', '2-1'],
  ['1/1', '1/2', '4/20'],
  ['1-1-1', '1-1-2', '1-2-1'],
  ['01-02-003', '01-02-004', '02-01-001'],
  ['S1', 'S2', 'S12'],
  ['SLOT 1', 'SLOT 2', 'SLOT 12'],
  ['Z12-F-100', 'Z12-F-101', 'Z12-F-120'],
  ['left tray', 'right tray', 'stick'],
  ['TRAY-A', 'TRAY-B', 'TRAY-C'],
  ['M1-F-X', 'M1-F-Y', 'M1-R-X'],
  ['M1-TRAY-1', 'M1-TRAY-2', 'M1-F-001'],
  ['M1-F-001', 'F2', 'left tray'],
  ['Ö1', 'Ö2', 'Ö3'],
];

function lineOf(texts: readonly string[]) {
  const rows = texts.map((slot, index) => `"${slot}";R-${100 + index};4;8;4`).join('\n');
  const { rows: cells } = textToRows(`Slot;Part;Qty;Tape width;Pitch\n${rows}\n`);
  const reading = readSheet(cells);
  const errors = reading.problems.filter(({ severity }) => severity === 'error');
  const slots = toSetupSlots(reading.slots);
  const bare: Line = { line: 'L1', name: 'one', zone: 'Europe/London', machines: [] };
  const { line, grown } = growLine(bare, slots, names);
  const floor = emptyState();
  floor.lines.set('L1', line);
  floor.setups.set('S1', {
    setup: 'S1',
    product: 'P',
    side: 'top',
    revision: 'A',
    line: 'L1',
    source: '',
    takenMs: 0,
    slots: [...slots],
  });
  floor.chosen.set('L1', 'S1');
  return { errors, slots, line, grown, floor, banks: mapBanks(line, setupProgress(floor, 'L1'), null) };
}

describe('slots as plants write them', () => {
  test('there are at least forty ways', () => {
    expect(new Set(dialects.map((texts) => texts.join())).size).toBeGreaterThanOrEqual(40);
  });

  test.each(dialects)('%s, %s, %s: from sheet to map, none lost', (...texts) => {
    const { errors, slots, line, floor, banks } = lineOf(texts);
    expect(errors).toEqual([]);
    expect(slots.map(({ slot }) => slot)).toEqual(texts);
    const places = banks.flatMap((bank) => bank.places);
    expect(places.map(({ slot }) => slot).sort()).toEqual([...texts].sort());
    for (const slot of texts) {
      expect(recognise(floor, 'L1', slot)).toEqual([{ is: 'slot', line: 'L1', slot }]);
    }
    const walk = setupProgress(floor, 'L1').slots.map(({ slot }) => slot);
    expect(walk).toEqual([...texts].sort(compareSlots));
    expect(growLine(line, slots, names).grown).toEqual([]);
  });

  test('a label that writes a slot in another way names the slot as the sheet writes it', () => {
    const { floor } = lineOf(['M1-F-014', 'm1/rear/3', 'M1-F-015A']);
    const named = (text: string) => recognise(floor, 'L1', text);
    expect(named('M1F14')).toEqual([{ is: 'slot', line: 'L1', slot: 'M1-F-014' }]);
    expect(named('M1-R-003')).toEqual([{ is: 'slot', line: 'L1', slot: 'm1/rear/3' }]);
    expect(named('m1-f-15a')).toEqual([{ is: 'slot', line: 'L1', slot: 'M1-F-015A' }]);
    expect(named('M1-F-016')).toEqual([]);
  });

  test('an unplanned slot of a numbered bank is a slot, not an unknown code', () => {
    const { floor } = lineOf(['M1-1-001', 'M1-1-010']);
    expect(recognise(floor, 'L1', 'M1-1-005')).toEqual([{ is: 'slot', line: 'L1', slot: 'M1-1-005' }]);
  });
});
