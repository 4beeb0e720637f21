// Run-outs as one question: what is said, which bars, and the rows of a spreadsheet.

import { describe, expect, test } from 'vitest';
import type { Came } from '../../../../../shared/shift/in-time.ts';
import { dryPlot } from '../../../../../src/app/screens/log/dry-plot.ts';
import { plotToCsv } from '../../../../../src/app/screens/log/shift-files.ts';

const atMs = Date.parse('2026-03-02T06:00:00Z');
const came = (is: Came['is'], minutes: number, left: number | null = 80): Came => ({
  is,
  left,
  slot: 'M1-F-001',
  atMs: atMs + minutes * 60_000,
});
const stop = { fromMs: atMs + 600_000, toMs: atMs + 840_000, reason: 'run-out', isOpen: false } as const;

describe('run-outs', () => {
  test('are told as prevented, not sure and missed, with what that means', () => {
    const all = [came('prevented', 1), came('prevented', 2), came('unsure', 3, null), came('late', 11, 0)];
    const plot = dryPlot({ dry: [stop], came: all }, 'UTC');
    expect(plot.answer).toBe('1 stop, 4\u00a0min. 2 run-outs prevented.');
    expect(plot.bars.map(({ name, value, text }) => [name, value, text])).toEqual([
      ['Prevented', 2, '2 ×'],
      ['Not sure', 1, '1 ×'],
      ['Missed, 06:10', 1, '4\u00a0min'],
    ]);
    expect(plot.note).toMatch(/^Prevented: .*Not sure: /);
    const [heads, ...rows] = plotToCsv(plot).trim().split('\r\n');
    expect(heads).toContain('run-out');
    expect(rows.map((row) => row.replace(/"\d{4}-[^"]*"/, 'time'))).toEqual([
      '"prevented",time,"M1-F-001",80,',
      '"prevented",time,"M1-F-001",80,',
      '"not sure",time,"M1-F-001",,',
      '"missed",time,,,4',
      '"too late",time,"M1-F-001",0,',
    ]);
  });

  test('are none where nothing came and nothing stopped; what is not there is not explained', () => {
    const none = dryPlot({ dry: [], came: [] }, 'UTC');
    expect(none.bars).toEqual([]);
    expect(none.note).toBeUndefined();
    expect(none.answer).toBe('No stop for an empty slot was entered.');
    expect(dryPlot({ dry: [], came: [came('prevented', 1)] }, 'UTC').note).not.toMatch(/Not sure/);
    expect(dryPlot({ dry: [], came: [came('late', 1)] }, 'UTC').bars).toEqual([]);
  });
});
