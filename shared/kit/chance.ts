// Seeded chance, so that every simulated shift and every search can be repeated.
// Method: the 32-bit mixing generator "mulberry32" (public domain); fast, 2^32 period, good enough for search and
// simulation, never for secrets.

/** A source of numbers in [0, 1) that repeats for the same seed. */
export type Chance = () => number;

/** Makes a source of numbers in [0, 1). `seed`: any integer; the same seed gives the same numbers. */
export function seededChance(seed: number): Chance {
  // In an array of its own: a plain variable above 2^31 would be a new object with every number drawn.
  const state = Int32Array.of(seed);
  return () => {
    let mixed = (state[0]! + 0x6d2b79f5) | 0;
    state[0] = mixed;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A whole number from 0 to `below` - 1, each equally likely (bias < 2^-32 × below). `below`: whole, >= 1. */
export function chanceBelow(chance: Chance, below: number): number {
  return Math.floor(chance() * below);
}

/** One draw from a normal distribution by the polar form of Box and Muller (1958, Ann. Math. Stat. 29, 610). */
export function chanceNormal(chance: Chance, mean: number, deviation: number): number {
  for (;;) {
    const x = 2 * chance() - 1;
    const y = 2 * chance() - 1;
    const square = x * x + y * y;
    if (square > 0 && square < 1) return mean + deviation * x * Math.sqrt((-2 * Math.log(square)) / square);
  }
}
