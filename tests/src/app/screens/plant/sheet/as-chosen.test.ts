// What the screen shows of chosen columns is what the reading makes of them.

import { expect, test } from 'vitest';
import { sheetHeaderWords } from '../../../../../../shared/sheet/fields.ts';
import { guessColumns } from '../../../../../../shared/sheet/headers.ts';
import { asChosen } from '../../../../../../src/app/screens/plant/sheet/as-chosen.ts';
import type { SheetSummary } from '../../../../../../src/worker/sheet-protocol.ts';

test('of columns with one name the first that nothing has taken is shown as taken, as it is read', () => {
  const columns = { slot: 'Address', part: 'item', perPanel: 'Item', note: null } as const;
  const headers = ['Address', 'Item', ' Item', 'Item'];
  const summary = {
    columns: headers.map((header, index) => ({ index, header, field: null, sample: [] })),
    placements: null,
    bill: null,
  } as unknown as SheetSummary; // all that is asked of it
  const shown = asChosen(summary, { columns, placementColumns: null, billColumns: null });
  const read = guessColumns([headers, ['M1-F-001', 'A', '4', 'B']], sheetHeaderWords, columns);
  expect(shown.columns.map(({ field }) => field)).toEqual(['slot', 'part', 'perPanel', null]);
  expect(read.columns.map(({ field }) => field)).toEqual(['slot', 'part', 'perPanel', null]);
});
