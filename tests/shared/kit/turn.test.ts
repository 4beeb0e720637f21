// Work in turn: none begins before the one before it is over, and a failure is told to whoever asked for it alone.

import { expect, test } from 'vitest';
import { openTurn } from '../../../shared/kit/turn.ts';

test('each begins when the one before is over, also after one that failed', async () => {
  const inTurn = openTurn();
  const told: string[] = [];
  const work = (name: string, fails = false) =>
    inTurn(async () => {
      told.push(`${name} begins`);
      await Promise.resolve();
      told.push(`${name} ends`);
      if (fails) throw new Error(name);
      return name;
    });
  const ended = await Promise.allSettled([work('a'), work('b', true), work('c')]);
  expect(told).toEqual(['a begins', 'a ends', 'b begins', 'b ends', 'c begins', 'c ends']);
  expect(ended).toMatchObject([
    { status: 'fulfilled', value: 'a' },
    { status: 'rejected', reason: { message: 'b' } },
    { status: 'fulfilled', value: 'c' },
  ]);
});
