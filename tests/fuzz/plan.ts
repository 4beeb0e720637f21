// What is done to a valid sample, as numbers: which sample, and a few steps of which each form makes its own mutation. Numbers alone, since
// fast-check draws, repeats and shrinks them; a failing case is its plan.

import fc from 'fast-check';

/** One mutation: what is done (0 to 63), and three numbers of 16 bits for where, with what and how much. */
export type Step = readonly [act: number, a: number, b: number, c: number];

/** One case. */
export interface Plan {
  /** Any number: counted round the samples. */
  readonly sample: number;
  readonly steps: readonly Step[];
}

const MOST_STEPS = 5;
const sixteen = fc.nat(0xffff);

/** Plans, evenly drawn: every place of a sample is as likely as its ends. */
export const plans: fc.Arbitrary<Plan> = fc.noBias(
  fc.record({
    sample: sixteen,
    steps: fc.array(fc.tuple(fc.nat(63), sixteen, sixteen, sixteen), {
      minLength: 1,
      maxLength: MOST_STEPS,
    }) as fc.Arbitrary<readonly Step[]>,
  }),
);

/** The item at a number, counted round; throws where there is none. */
export function pick<T>(items: readonly T[], at: number): T {
  const item = items[at % items.length];
  if (item === undefined) throw new RangeError('Cannot pick as there must be an item: the list is empty');
  return item;
}

/** A number of 16 bits as a place in something of this length, its end included. */
export function placeIn(length: number, at: number): number {
  return Math.floor((at / 0x10000) * (length + 1));
}

/** How often something is repeated: mostly a few times, seldom many; `bits` is the most as a power of two. */
export function timesOf(number: number, bits: number): number {
  return 2 ** (number % (bits + 1));
}
