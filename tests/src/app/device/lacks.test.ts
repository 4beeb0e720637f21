// What an engine lacks is told by what it has, one by one.

import { expect, test } from 'vitest';
import { engineLacks } from '../../../../src/app/device/lacks.ts';

const whole = {
  wakeLock: {},
  vibrate: () => true,
  serial: {},
  storage: { persist: async () => true },
};
const lacksOf = (engine: object) => engineLacks(engine as Navigator); // what is asked of one

test('an engine with everything lacks nothing', () => {
  expect(lacksOf(whole)).toEqual([]);
});

test('each thing that is not there is told, storage also where it cannot be asked to keep', () => {
  const { wakeLock: _, ...dark } = whole;
  expect(lacksOf(dark)).toEqual(['awake']);
  const { vibrate: __, ...still } = whole;
  expect(lacksOf(still)).toEqual(['vibration']);
  const { serial: ___, ...keys } = whole;
  expect(lacksOf(keys)).toEqual(['serial']);
  expect(lacksOf({ ...whole, storage: {} })).toEqual(['keeps']);
  expect(lacksOf({})).toEqual(['awake', 'vibration', 'keeps', 'serial']);
});
