// What a cell of an export is: a moment, a count, a name beside an id, or the text that it was.

import { describe, expect, test } from 'vitest';
import { takeName } from '../../../shared/floor/people.ts';
import { parseExport } from '../../../shared/log/export-read.ts';
import {
  csvHeader,
  exportColumns,
  itemToCsv,
  itemToWorkbookRow,
  workbookDays,
} from '../../../shared/log/export-rows.ts';
import { beginStory, verified } from '../floor/story.ts';

describe('cells of an export', () => {
  test('people have their names beside their ids, and an altered name is found', () => {
    const story = beginStory();
    story.tell('person.added', { person: 'ana', name: 'Ana', role: 'lead', badge: 'B-1', pin: null });
    story.tell('line.crewed', { line: 'L1', operators: 2 });
    const names = new Map<string, string>();
    const lines = story.entries.map((entry) => {
      takeName(names, entry);
      return itemToCsv(entry, names);
    });
    const csv = [csvHeader(), ...lines].join('');
    expect(csv.split('\r\n')[2]).toContain(',ana,Ana,line.crewed,');
    expect(parseExport(csv, takeName).faults).toEqual([]);
    expect(parseExport(csv.replace('ana,Ana,line', 'ana,Bo,line'), takeName).faults).toMatchObject([
      { row: 3, column: 'whoName', wanted: 'Ana', found: 'Bo' },
    ]);
  });

  test('a workbook has moments and counts as such, and a lot as the text that it is', () => {
    const item = beginStory().tell('reel.verified', verified('M1-F-001', 'R-100', { lot: '=1+1' }));
    const row = itemToWorkbookRow({ ...item, at: '2026-03-02T07:30:00+01:00' }, 1);
    const cell = (column: (typeof exportColumns)[number]) => row[exportColumns.indexOf(column)];
    expect(cell('at')).toEqual({ wallMs: Date.UTC(2026, 2, 2, 7, 30) });
    // 2026-03-02 is day 46083 of a workbook's calendar (computed by hand: 126 years, 31 leap days, day 61, and the day that never was).
    expect(workbookDays({ wallMs: Date.UTC(2026, 2, 2, 12) })).toBeCloseTo(46_083.5, 8);
    expect(cell('quantity')).toBe(1000);
    expect(cell('seq')).toBe(item.seq);
    expect(cell('lot')).toBe('=1+1');
  });
});
