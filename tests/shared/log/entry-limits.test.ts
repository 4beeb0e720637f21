// The ends of what an entry may hold, and of what an export names first.

import { describe, expect, test } from 'vitest';
import { z } from 'zod/mini';
import { verifyChains } from '../../../shared/log/chain.ts';
import { driftLimitMs } from '../../../shared/log/clock.ts';
import { clockCountMost, clockMsMost, isBounded } from '../../../shared/log/entry.ts';
import { entrySchema } from '../../../shared/log/entry-schema.ts';
import { parseExport } from '../../../shared/log/export-read.ts';
import { csvHeader, itemToCsv } from '../../../shared/log/export-rows.ts';
import { verifyExport } from '../../../shared/log/export-verify.ts';
import { beginStory, verified } from '../floor/story.ts';

describe('clock readings', () => {
  test('fit 42 bits of milliseconds and 31 of a counter, the last ones included', () => {
    expect(clockMsMost).toBe(4_398_046_511_103);
    expect(clockCountMost).toBe(2_147_483_647);
    expect(isBounded({ ms: clockMsMost, n: clockCountMost })).toBe(true);
    expect(isBounded({ ms: clockMsMost + 1, n: 0 })).toBe(false);
    expect(isBounded({ ms: 0, n: clockCountMost + 1 })).toBe(false);
  });

  test('of another tablet may be five minutes ahead', () => {
    expect(driftLimitMs).toBe(300_000);
  });
});

test('a tablet’s name is one visible letter or more', () => {
  const entry = beginStory().tell('reel.verified', verified('M1-F-001', 'R-100'));
  const isEntry = (tablet: string) => z.safeParse(entrySchema, { ...entry, tablet }).success;
  expect([isEntry('T'), isEntry('T1'), isEntry(''), isEntry('T 1'), isEntry('T'.repeat(65))]).toEqual([
    true,
    true,
    false,
    false,
    false,
  ]);
});

describe('an export', () => {
  const lines = () => {
    const story = beginStory();
    for (const lot of ['LA', 'LB', 'LC']) story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot }));
    return story.entries.map((entry) => itemToCsv(entry));
  };

  test('names the altered cell with the lowest number in its chain, wherever its row stands', () => {
    const altered = lines().map((line, at) => (at === 1 ? line : line.replace(/(L[ABC])(?=,)/, 'LX')));
    const report = verifyExport(parseExport([csvHeader(), ...altered.reverse()].join('')));
    expect(report.faults).toHaveLength(2);
    expect(report).toMatchObject({
      ok: false,
      firstBroken: { seq: 1, column: 'lot', wanted: 'LA', found: 'LX' },
    });
  });

  test('that is a header without a line end is an empty log', () => {
    expect(parseExport(csvHeader().trimEnd())).toEqual({ entries: [], omitted: [], faults: [] });
  });
});

test('half a character in an entry of an export is named as a fault, and stops nothing', () => {
  const entry = beginStory().tell('reel.verified', verified('M1-F-001', 'R-100'));
  const text = JSON.stringify({ ...entry, payload: { ...entry.payload, lot: 'L\ud800' } });
  const { entries } = parseExport(text);
  expect(entries).toHaveLength(1);
  expect(verifyChains(entries).firstBroken).toMatchObject({
    fault: 'hash-differs',
    wanted: 'a text that can be sealed',
  });
});

test('a file of many records that are none has a fault for each line', () => {
  const { faults, entries } = parseExport('{}\n'.repeat(1_200));
  expect(entries).toEqual([]);
  expect(faults.map(({ row }) => row)).toEqual(Array.from({ length: 1_200 }, (_, at) => at + 1));
  expect([faults[0]?.column, faults[1_100]?.column]).toEqual(['v', '']);
  expect(faults.every(({ code, found }) => code === 'not-a-record' && found === '{}')).toBe(true);
  // One that is nearly one is told in full however many came before.
  const entry = beginStory().tell('reel.verified', verified('M1-F-001', 'R-100'));
  const late = parseExport(`${'{}\n'.repeat(1_200)}${JSON.stringify({ ...entry, seq: 'x' })}`);
  expect(late.faults.at(-1)?.column).toBe('seq');
});
