import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  tableFloorLife,
  tableHumidities,
  tableLevels,
  tableTemperatures,
} from '../../../shared/moisture/derating.ts';
import { classOfThickness, packageClasses, standardLifeSeconds } from '../../../shared/moisture/levels.ts';

interface PublishedRow {
  readonly level: (typeof tableLevels)[number];
  readonly celsius: number;
  readonly days: readonly (number | null)[];
}
const published: { readonly rows: readonly PublishedRow[] } = JSON.parse(
  readFileSync(new URL('../../fixtures/moisture/class-a.json', import.meta.url), 'utf8'),
);

function days(
  level: (typeof tableLevels)[number],
  packageClass: 'A' | 'B' | 'C',
  celsius: number,
  humidity: number,
) {
  const life = tableFloorLife(level, packageClass, { celsius, humidity });
  return life === null ? null : life.seconds / 86_400;
}

describe('tableFloorLife()', () => {
  it.each(published.rows)('gives the published days of class A for level $level at $celsius °C', (row) => {
    expect(row.days).toHaveLength(tableHumidities.length);
    for (const [at, humidity] of tableHumidities.entries()) {
      const wanted = row.days[at] ?? Number.POSITIVE_INFINITY;
      expect(days(row.level, 'A', row.celsius, humidity)).toBe(wanted);
    }
  });

  it('has a published row for every level and temperature of class A', () => {
    expect(published.rows).toHaveLength(tableLevels.length * tableTemperatures.length);
  });

  // J-STD-020 table 5-1: the floor life at 30 °C / 60 % is the level's own, whatever the class.
  it.each(packageClasses)('gives the standard floor life at 30 °C and 60 % in class %s', (packageClass) => {
    for (const level of tableLevels) {
      const life = tableFloorLife(level, packageClass, { celsius: 30, humidity: 60 });
      expect(life?.seconds).toBe(standardLifeSeconds[level]);
    }
  });

  // Classes B and C are from memory: a slip would most likely break the order, since moister, warmer and more sensitive never last longer.
  it.each(packageClasses)(
    'never gets longer with humidity, temperature or level in class %s',
    (packageClass) => {
      for (const [levelAt, level] of tableLevels.entries()) {
        for (const [rowAt, celsius] of tableTemperatures.entries()) {
          for (const [columnAt, humidity] of tableHumidities.entries()) {
            const here = days(level, packageClass, celsius, humidity) ?? Number.NaN;
            const moister = tableHumidities[columnAt + 1];
            const warmer = tableTemperatures[rowAt + 1];
            const higher = tableLevels[levelAt + 1];
            if (moister) expect(days(level, packageClass, celsius, moister)).toBeLessThanOrEqual(here);
            if (warmer) expect(days(level, packageClass, warmer, humidity)).toBeLessThanOrEqual(here);
            if (higher) expect(days(higher, packageClass, celsius, humidity)).toBeLessThanOrEqual(here);
          }
        }
      }
    },
  );

  it.each([
    // Thin level 3 (TSOP, TQFP): 7 days at 30/60, 1 day at 30/70, as quoted at https://smtnet.com/Forums/index.cfm?fuseaction=view_thread&Thread_ID=309
    {
      level: '3',
      packageClass: 'C',
      celsius: 30,
      humidity: 60,
      wanted: 7,
      reason: 'published anchor of class C',
    },
    {
      level: '3',
      packageClass: 'C',
      celsius: 30,
      humidity: 70,
      wanted: 1,
      reason: 'published anchor of class C',
    },
    { level: '3', packageClass: 'A', celsius: 25, humidity: 50, wanted: 9, reason: 'a cell of class A' },
    {
      level: '3',
      packageClass: 'A',
      celsius: 22,
      humidity: 41,
      wanted: 9,
      reason: 'rounded up to 25 °C and 50 %',
    },
    {
      level: '3',
      packageClass: 'A',
      celsius: 12,
      humidity: 60,
      wanted: 12,
      reason: 'colder than the table: its coldest row',
    },
    {
      level: '5a',
      packageClass: 'C',
      celsius: 35,
      humidity: 90,
      wanted: 0.5,
      reason: 'the last cell, from memory',
    },
    {
      level: '3',
      packageClass: 'A',
      celsius: 35.1,
      humidity: 50,
      wanted: null,
      reason: 'warmer than the table',
    },
    {
      level: '3',
      packageClass: 'A',
      celsius: 30,
      humidity: 90.5,
      wanted: null,
      reason: 'moister than the table',
    },
  ] as const)(
    'gives $wanted days for level $level, class $packageClass, $celsius °C, $humidity %: $reason',
    (row) => {
      expect(days(row.level, row.packageClass, row.celsius, row.humidity)).toBe(row.wanted);
    },
  );
});

describe('classOfThickness()', () => {
  it.each([
    [3.1, 'A'],
    [3.099, 'B'],
    [2.1, 'B'],
    [2.099, 'C'],
    [0.3, 'C'],
  ] as const)('puts %s mm into class %s (J-STD-033 table 7-1)', (thickness, wanted) => {
    expect(classOfThickness(thickness)).toBe(wanted);
  });

  it('throws when the thickness is not above 0', () => {
    expect(() => classOfThickness(0)).toThrow(RangeError);
    expect(() => classOfThickness(Number.NaN)).toThrow('must be above 0 mm');
  });
});
