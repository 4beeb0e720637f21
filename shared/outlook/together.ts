// Do the walks of two lines fall together? Each line's walks are laid out for people of its own; whoever serves both can be at one only. Pure.

import type { WalkPlan } from './walks.ts';

/** The first moment at which a walk of either plan is on at once, ms since 1970; null where none is. */
export function walksTogetherMs(
  one: Pick<WalkPlan, 'walks'> | null,
  other: Pick<WalkPlan, 'walks'> | null,
): number | null {
  const shared = (one?.walks ?? []).flatMap((mine) =>
    (other?.walks ?? []).flatMap((theirs) => {
      const fromMs = Math.max(mine.startMs, theirs.startMs);
      return fromMs < Math.min(mine.endMs, theirs.endMs) ? [fromMs] : [];
    }),
  );
  return shared.length === 0 ? null : Math.min(...shared);
}
