// More lines of the invented plant: each with a shift of its own, none in the way of another.

import { describe, expect, test } from 'vitest';
import { simulateLines } from '../../demo/more-lines.ts';
import { simulateShift } from '../../demo/simulate.ts';
import { applyEntry } from '../../shared/floor/fold.ts';
import { readFloorEntry } from '../../shared/floor/kinds.ts';
import { emptyState } from '../../shared/floor/state.ts';
import { verifyChains } from '../../shared/log/chain.ts';

const settings = { seed: 3, hours: 2, startMs: Date.UTC(2026, 2, 2, 6) };
const entries = simulateLines(settings, 3);
const floor = emptyState();
for (const entry of entries) applyEntry(floor, entry);

describe('a demo of three lines', () => {
  test('has whole chains of two tablets a line, all of kinds that fold', () => {
    expect(verifyChains(entries)).toMatchObject({ ok: true, entries: entries.length, tablets: 6 });
    expect(entries.filter((entry) => readFloorEntry(entry) === null)).toEqual([]);
  });

  test('has three lines, each with a run and loaded slots of its own', () => {
    expect([...floor.lines.values()].map(({ name }) => name)).toEqual(['Line 2', 'Line 3', 'Line 4']);
    for (const line of floor.lines.keys()) {
      const run = floor.runs.get(floor.current.get(line) ?? '');
      expect(run?.line).toBe(line);
      expect(run?.done).toBeGreaterThan(100);
      expect([...floor.slots.values()].filter((slot) => slot.line === line).length).toBeGreaterThan(100);
    }
  });

  test('has no reel, feeder or setup on two lines, and no conflict', () => {
    expect(floor.conflicts.size).toBe(0);
    const homes = new Map<string, Set<string>>();
    for (const { line, feeder, tapes } of floor.slots.values())
      for (const name of [feeder ?? '', ...tapes.map(({ reel }) => reel)])
        homes.set(name, (homes.get(name) ?? new Set()).add(line));
    expect([...homes].filter(([name, lines]) => name !== '' && lines.size > 1)).toEqual([]);
    expect(new Set(floor.chosen.values()).size).toBe(3);
  });

  test('leaves the first line as it is alone', () => {
    const alone = simulateShift(settings).entries;
    expect(entries.filter(({ tablet }) => tablet.startsWith('demo0-'))).toEqual(alone);
    expect(simulateLines(settings, 1)).toEqual(alone);
  });
});
