// The plant signs one root for each size of the log: whatever lies in the store, a second is refused, and the log gets another name, since the
// process that begins after this one remembers no head.

import { expect, it } from 'vitest';
import { openServerKey } from '../../../src/server/keys.ts';
import { troubleOf } from '../../../src/server/stores/trouble.ts';
import { createHeadSigner } from '../../../src/server/tree-heads.ts';
import { usePlant } from './use-plant.ts';

const plant = usePlant();
const rootOf = (digit: string) => digit.repeat(64);
const errorOf = (work: () => unknown): Error => {
  try {
    work();
  } catch (error) {
    return error as Error;
  }
  throw new Error('nothing was refused');
};

it('a second root for a size is refused, also of the heads just before the newest', async () => {
  const { plant: key } = await openServerKey(plant.server.running.store);
  const heads = createHeadSigner(key);
  for (let size = 1; size <= 1_000; size += 1) {
    const note = heads.sign({ size, root: rootOf('a') });
    if (size === 1) continue;
    expect(troubleOf(errorOf(() => heads.sign({ size: size - 1, root: rootOf('b') })))).toBe('lost');
    expect(heads.sign({ size, root: rootOf('a') })).toBe(note);
  }
});

it('a server whose log forked ends, and the log gets another name', async () => {
  const { context, store, over } = plant.server.running;
  const before = await store.serverEpoch();
  context.heads.sign({ size: 1, root: rootOf('a') });
  context.health.met(errorOf(() => context.heads.sign({ size: 1, root: rootOf('b') })));
  expect(await over).toContain('earlier log');
  expect(await store.serverEpoch()).not.toBe(before);
});
