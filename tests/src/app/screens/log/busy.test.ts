// What takes a while is told as long as it goes on, and no longer, also where it fails.

import { expect, test } from 'vitest';
import { whileBusy } from '../../../../../src/app/screens/log/busy.ts';

const told = async (work: () => Promise<void>) => {
  const said: (string | null)[] = [];
  const say = (text: string | null) => void said.push(text);
  await whileBusy(work, { text: 'at it', onBusy: say, onFailed: () => say('failed') });
  return said;
};

test('is told from its beginning to its end', async () => {
  expect(await told(async () => undefined)).toEqual(['at it', null]);
});

test('is over as well where it fails, which is said', async () => {
  expect(await told(() => Promise.reject(new Error('the log cannot be read')))).toEqual([
    'at it',
    'failed',
    null,
  ]);
});
