// How often something may be done in an hour, by name.

const HOUR_MS = 3_600_000;

/** Counts of the running hour. */
export interface Hourly {
  /** True where it may be done once more; counts nothing. */
  readonly has: (name: string) => boolean;
  /** Counts one; false where it may not be done. */
  readonly take: (name: string) => boolean;
  /** One that was counted did not come about. */
  readonly giveBack: (name: string) => void;
}

/** At most `most` an hour for each name. */
export function createHourly(most: number, nowMs: () => number): Hourly {
  let hour = 0;
  let counts = new Map<string, number>();
  const countOf = (name: string) => {
    const now = Math.floor(nowMs() / HOUR_MS);
    if (now !== hour) [hour, counts] = [now, new Map()];
    return counts.get(name) ?? 0;
  };
  return {
    has: (name) => countOf(name) < most,
    take: (name) => {
      const count = countOf(name);
      if (count >= most) return false;
      counts.set(name, count + 1);
      return true;
    },
    giveBack: (name) => {
      counts.set(name, Math.max(0, countOf(name) - 1));
    },
  };
}
