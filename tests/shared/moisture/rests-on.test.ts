// What a floor life says it rests on: a cell that was seen in a published copy, one from memory, the plant's own; and its notes in words.

import { describe, expect, test } from 'vitest';
import {
  tableCell,
  tableHumidities,
  tableLevels,
  tableTemperatures,
} from '../../../shared/moisture/derating.ts';
import { floorLife } from '../../../shared/moisture/floor-life.ts';
import { floorLifeNote } from '../../../shared/moisture/notes.ts';
import { reelLife } from '../../../shared/moisture/reel-life.ts';
import { beginStory, startMs, tellPlant } from '../floor/story.ts';

const hourMs = 3_600_000;

describe('the source of a cell', () => {
  test('is a published copy for all of class A', () => {
    for (const level of tableLevels)
      for (const celsius of tableTemperatures)
        for (const humidity of tableHumidities)
          expect(tableCell(level, 'A', { celsius, humidity }).source).toBe('copy');
  });

  test('is memory in the other classes, but for the one cell of class C that a copy shows and the levels’ own lives', () => {
    const source = (
      packageClass: 'B' | 'C',
      level: '3' | '4',
      humidity: 50 | 60 | 70,
      celsius: 25 | 30 = 30,
    ) => tableCell(level, packageClass, { celsius, humidity }).source;
    expect(source('C', '3', 70)).toBe('copy');
    expect(source('C', '3', 60)).toBe('copy');
    expect(source('C', '3', 50)).toBe('memory');
    expect(source('C', '4', 70)).toBe('memory');
    expect(source('B', '3', 70)).toBe('memory');
    expect(source('C', '3', 70, 25)).toBe('memory');
  });
});

test('the table has the columns of the standard, from 5 % on', () => {
  expect(tableHumidities).toEqual([5, 10, 20, 30, 40, 50, 60, 70, 80, 90]);
  expect(tableTemperatures).toEqual([20, 25, 30, 35]);
});

test('the life of level 2 in mild air is from memory, that of level 2a was seen in a copy', () => {
  const source = (level: '2' | '2a') => {
    const climate = { celsius: 30, humidity: 60 };
    const life = floorLife({ level, nowMs: hourMs, thicknessMm: 1, openedMs: 0, climate, history: [] });
    return life.ok ? life.value.source : null;
  };
  expect([source('2'), source('2a')]).toEqual(['memory', 'copy']);
});

describe('very dry cabinets', () => {
  test('stop the clock of levels 4 to 5a only where the plant’s edition says so: not before anybody entered that', () => {
    const left = (cabinetPauses: boolean | null) => {
      const story = beginStory();
      tellPlant(story);
      if (cabinetPauses !== null)
        story.tell('moisture.ruled', {
          edition: 'our copy',
          source: '5.3',
          cabinetPauses,
          lives: [],
          bakes: [],
        });
      const air = (where: 'floor' | 'dry', hour: number) =>
        story.tell(
          'reel.aired',
          {
            reel: 'K1',
            part: 'R-100',
            supplierPart: null,
            quantity: 9,
            lot: null,
            dateCode: null,
            air: where,
            from: new Date(startMs + hour * hourMs).toISOString(),
            celsius: 22,
            humidity: where === 'dry' ? 4 : 50,
            via: 'typed',
          },
          { at: hour * 3600 },
        );
      air('floor', 0);
      air('dry', 20);
      const part = { level: '4', bodyMm: null } as const;
      return reelLife(story.floor(), 'K1', { line: 'L1', part, nowMs: startMs + 40 * hourMs })?.leftSeconds;
    };
    expect(left(null)).toBe(left(false));
    expect(left(true)).toBeGreaterThan(left(null) ?? 0);
  });
});

describe('notes', () => {
  const notes = (history: Parameters<typeof floorLife>[0]['history']) => {
    const life = floorLife({
      level: '3',
      nowMs: 300 * hourMs,
      thicknessMm: 1,
      openedMs: 0,
      climate: { celsius: 25, humidity: 50 },
      history,
    });
    return life.ok ? life.value.notes.map(({ code }) => code) : [];
  };
  const floor = { where: 'floor', fromMs: 0, toMs: 10 * hourMs, celsius: 25, humidity: 50 } as const;

  test('tell of hours in a hot oven only where there were any', () => {
    const bake = {
      where: 'bake',
      fromMs: 10 * hourMs,
      toMs: 20 * hourMs,
      celsius: 125,
      humidity: null,
    } as const;
    const hot = (codes: readonly string[]) => codes.filter((code) => code.startsWith('hotBakes'));
    expect(hot(notes([floor]))).toEqual([]);
    expect(hot(notes([floor, bake]))).toEqual(['hotBakes']);
    expect(hot(notes([floor, { ...bake, toMs: 200 * hourMs }]))).toEqual(['hotBakesOver']);
  });

  test('say moments as dates, and keep them as numbers beside', () => {
    const { message, facts } = floorLifeNote('gapAsFloor', { from: startMs, to: startMs + hourMs });
    expect(message).toContain('2026-03-02T06:00:00Z');
    expect(message).toContain('2026-03-02T07:00:00Z');
    expect(facts).toEqual({ from: startMs, to: startMs + hourMs });
  });
});
