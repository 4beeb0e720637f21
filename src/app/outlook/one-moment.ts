// An answer of one moment, worked out in steps while the floor may change between them: it begins anew with what is there then.

import type { App } from '../app.ts';

/** So often an answer begins anew; where entries come faster than it takes, it is made in one go, else there would never be one. */
export const RESTARTS = 3;

/** The steps that `make` begins, and once more from the start each time that something was folded in between; the floor's own entries alone count. */
export function* ofOneMoment<T>(
  store: Pick<App['store'], 'floor' | 'count'>,
  make: () => Iterator<undefined, T>,
): Generator<undefined, T> {
  for (let begun = 0; ; begun += 1) {
    const [floor, count] = [store.floor(), store.count()];
    const steps = make();
    for (let isSame = true; isSame; ) {
      const step = steps.next();
      if (step.done === true) return step.value;
      if (begun >= RESTARTS) continue;
      yield;
      isSame = store.floor() === floor && store.count() === count;
    }
  }
}
