// Months that were away are looked for again by each server, whether it leads or not; each is told once; and what the trace process meets is heard.

import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { type HealthParts, watchStore } from '../../../src/server/health.ts';
import { MonthAway, PlaceChanged, type TextFault } from '../../../src/server/stores/month-store.ts';
import { hearFault, tellFault } from '../../../src/server/trace/faults.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const away = (month: string) => new MonthAway({ month }, `reelward-${month}.ndjson.gz is not in /disk`);
const aMinute = () => vi.advanceTimersByTimeAsync(60_000);

/** A server that does not lead; `files`: what is wrong with them. */
function watched(files: (only: ReadonlySet<string>) => readonly TextFault[] | Promise<readonly TextFault[]>) {
  const told: string[] = [];
  const store: HealthParts['store'] = {
    dialect: 'postgres',
    leads: () => false,
    sealedPage: async () => [],
    quickCheck: async () => [],
    monthFaults: async (_how, only = new Set()) => files(only),
  };
  const health = watchStore({ store, onTrouble: (trouble, where) => told.push(`${trouble}: ${where}`) });
  return { health, told };
}

it('end by themselves on a server that does not lead, and are told again where they come again', async () => {
  let faults: readonly TextFault[] = [away('2026-03'), away('2026-04')];
  const { health, told } = watched(() => faults);
  for (const fault of [...faults, ...faults]) expect(health.met(fault)).toBe('month-away');
  const both = faults.map(({ message }) => `month-away: ${message}`);
  expect(told).toEqual(both);
  await aMinute();
  expect(health.troubles()).toEqual(['month-away']);
  expect(told).toEqual(both);
  faults = [away('2026-04')];
  await aMinute();
  expect(health.troubles()).toEqual(['month-away']);
  health.met(away('2026-03'));
  expect(told).toEqual([...both, both[0]]);
  faults = [];
  await aMinute();
  expect(health.troubles()).toEqual([]);
  await health.stop();
});

it('alone are looked for, one look at a time, and one that is met meanwhile stays told', async () => {
  const looks: string[][] = [];
  let end = (_faults: readonly TextFault[]): void => undefined;
  const { health } = watched((only) => {
    looks.push([...only]);
    return new Promise((resolve) => {
      end = resolve;
    });
  });
  await aMinute();
  expect(looks).toEqual([]);
  health.met(away('2026-03'));
  await aMinute();
  await aMinute();
  expect(looks).toEqual([['2026-03']]);
  health.met(away('2026-04'));
  end([]);
  await health.lookForMonths();
  expect(health.troubles()).toEqual(['month-away']);
  await aMinute();
  expect(looks).toEqual([['2026-03'], ['2026-04']]);
  end([]);
  await health.lookForMonths();
  expect(health.troubles()).toEqual([]);
  await health.stop();
});

it('are heard from the trace process as what they are', async () => {
  const { health, told } = watched(() => []);
  const overThere = (error: Error) => hearFault(JSON.parse(JSON.stringify(tellFault(error))));
  const heard = overThere(away('2026-03'));
  expect(heard).toEqual(away('2026-03'));
  expect(health.met(heard)).toBe('month-away');
  expect(health.met(overThere(new PlaceChanged('it lies elsewhere')))).toBe('text-changed');
  expect(overThere(new Error('no room')).message).toBe('trace: no room');
  expect(told).toEqual([`month-away: ${away('2026-03').message}`, 'text-changed: it lies elsewhere']);
  await health.stop();
});
