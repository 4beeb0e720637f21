// No reader of what comes from outside throws or hangs, whatever it is given: valid samples, mutated by their own structure. A fixed share of
// what `npm run bench -- fuzz` reads a million of; the seed is fixed, so that a run says the same again.

import { describe, expect, test } from 'vitest';
import { type FuzzTarget, runTarget } from './target.ts';
import { targets } from './targets.ts';

const SEED = 20_260_302;
const MOST = 2_000;
/** What takes long by itself gets fewer: a fortieth of its part of a million. */
const casesOf = ({ share }: FuzzTarget) => Math.min(MOST, Math.ceil(share / 40));

describe('a reader given mutated samples', () => {
  test.each(targets.map((target) => [target.name, target] as const))('%s', async (_, target) => {
    const { cases, failed } = await runTarget(target, { seed: SEED, cases: casesOf(target) });
    expect(failed).toBeNull();
    expect(cases).toBe(casesOf(target));
  });
});

test('the shares make a million', () => {
  expect(targets.reduce((sum, { share }) => sum + share, 0)).toBeGreaterThanOrEqual(1_000_000);
});

test('a reader that throws is found, with a plan that shows it again', async () => {
  const target = {
    name: 'planted',
    share: 0,
    input: ({ steps }: { readonly steps: readonly unknown[] }) => 'x'.repeat(steps.length),
    read: (input: string | Uint8Array) => {
      if (input.length > 2) throw new RangeError('too long');
    },
  };
  const { failed } = await runTarget(target, { seed: 1, cases: 200 });
  expect(failed?.error).toContain('too long');
  expect(failed?.input).toBe('xxx');
});
