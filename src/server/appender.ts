// Joins appends that wait at the same time into one transaction: one flush to the disk for all of them. A plant of three
// hundred tablets then costs a few flushes a second instead of three hundred.

import type { Appended, Checked, Store } from './stores/store.ts';

/** Entries in one transaction at most: bounds how long a flush holds the others up. */
const ENTRIES_AT_ONCE = 4_000;

interface Waiting {
  readonly sender: string;
  readonly entries: readonly Checked[];
  readonly resolve: (appended: Appended) => void;
  readonly reject: (error: unknown) => void;
}

export interface Appender {
  /** Resolves when the entries are durable. */
  readonly append: (sender: string, entries: readonly Checked[]) => Promise<Appended>;
  /** Resolves when nothing waits any more. */
  readonly drained: () => Promise<void>;
}

/** The one door through which a process appends. */
export function createAppender(store: Pick<Store, 'append'>, nowMs: () => number): Appender {
  let waiting: Waiting[] = [];
  let running: Promise<void> | null = null;

  const takeSome = (): readonly Waiting[] => {
    let count = 0;
    let entries = 0;
    for (const next of waiting) {
      if (count > 0 && entries + next.entries.length > ENTRIES_AT_ONCE) break;
      entries += next.entries.length;
      count += 1;
    }
    const some = waiting.slice(0, count);
    waiting = waiting.slice(count);
    return some;
  };

  const run = async () => {
    // Those who ask within the same turn go together.
    await new Promise<void>((resolve) => setImmediate(resolve));
    while (waiting.length > 0) {
      const some = takeSome();
      try {
        const results = await store.append(some, nowMs());
        some.forEach((one, index) => {
          const result = results[index];
          if (result) one.resolve(result);
          else one.reject(new RangeError('Cannot answer an append as the store must answer each batch'));
        });
      } catch (error) {
        for (const one of some) one.reject(error);
      }
    }
    running = null;
  };

  return {
    append: (sender, entries) =>
      new Promise((resolve, reject) => {
        waiting.push({ sender, entries, resolve, reject });
        running ??= run();
      }),
    drained: async () => {
      while (running) await running;
    },
  };
}
