// How much of something each of many has at this moment; who has none any more is forgotten, so that nobody fills the memory with names.

/** Amounts by name, from 0. */
export interface Amounts {
  readonly of: (name: string) => number;
  /** Adds to one, or takes off where it is below 0. */
  readonly add: (name: string, by: number) => void;
}

/** Nobody has anything yet. */
export function createAmounts(): Amounts {
  const held = new Map<string, number>();
  const of = (name: string) => held.get(name) ?? 0;
  return {
    of,
    add: (name, by) => {
      const now = of(name) + by;
      if (now > 0) held.set(name, now);
      else held.delete(name);
    },
  };
}
