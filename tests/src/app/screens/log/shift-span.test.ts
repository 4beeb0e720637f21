// From when until when the shift's report is: a stop that goes on is told as long as it is, not up to a minute longer.

import { expect, test } from 'vitest';
import { readFloorEntry } from '../../../../../shared/floor/kinds.ts';
import type { Entry } from '../../../../../shared/log/entry.ts';
import { shiftReport } from '../../../../../shared/shift/report.ts';
import { beginOf, endOf } from '../../../../../src/app/screens/log/shift-span.ts';
import { beginStory, started, startMs, tellPlant } from '../../../../shared/floor/story.ts';

const read = (entries: readonly Entry[]) => entries.map(readFloorEntry).filter((entry) => entry !== null);
const HOUR_MS = 3_600_000;

test('a stop that goes on is told as long as it has been, with what was entered at this very moment', () => {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1', { panelsWanted: 100 }));
  story.tell('run.stopped', { line: 'L1', run: 'run-1', reason: 'jam', note: '' }, { at: 60 });
  const nowMs = startMs + 65_000;
  const fromMs = beginOf('shift', startMs - HOUR_MS, nowMs);
  const report = (ms: number) =>
    shiftReport(story.floor(), read(story.entries), { line: 'L1', fromMs, toMs: endOf(ms) });
  expect(report(nowMs).stops).toMatchObject([
    { fromMs: startMs + 60_000, toMs: endOf(nowMs), reason: 'jam', isOpen: true },
  ]);
  expect(endOf(nowMs) - nowMs).toBeLessThan(1000);
  expect(report(startMs + 60_000).stops).toHaveLength(1);
});

test('it begins with the shift, else so many hours before, and at the same moment all through a minute', () => {
  const nowMs = startMs - (startMs % 60_000);
  expect(beginOf('shift', 17, nowMs)).toBe(17);
  expect(beginOf(12, 17, nowMs)).toBe(nowMs - 12 * HOUR_MS);
  expect(beginOf('shift', null, nowMs)).toBe(nowMs - 8 * HOUR_MS);
  expect(beginOf(12, null, nowMs + 59_999)).toBe(beginOf(12, null, nowMs));
});
