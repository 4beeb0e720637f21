// Is whoever signed in still there? Counts from the last touch and from the sign-in, by the wall clock and by a steady one at once: the
// longer of the two counts, so that a clock set back makes nobody stay, and a sleep that stops the steady clock neither.
// Where the wall clock reads earlier than what was kept, the time in between is unknown, and nobody is taken to be there.

import type { Clock } from './clock.ts';

/** Clocks are never read to the second by people; a smaller step back is no setting back. */
const STEP_MS = 60_000;

/** What is kept over a reload, by the wall clock; null where it is not known. */
export interface KeptPresence {
  readonly usedMs: number | null;
  readonly signedInMs: number | null;
}

/** When it ends: without a touch, and at the latest. */
export interface PresenceLimits {
  readonly idleMs: number;
  readonly shiftMs: number;
}

/** Follows one person at a time. */
export interface Presence {
  /** Somebody touched the tablet or scanned. */
  readonly used: () => void;
  /** Somebody signed in just now. */
  readonly signedIn: () => void;
  /** Why whoever signed in is there no longer; null while they are. */
  readonly ended: (limits: PresenceLimits) => 'idle' | 'shift' | null;
  readonly kept: () => KeptPresence;
}

interface Mark {
  readonly wallMs: number;
  readonly steadyMs: number;
}

/** Goes on from what was kept. `steady` only grows while the page lives. */
export function createPresence(
  clocks: { readonly wall: Clock; readonly steady: Clock },
  kept: KeptPresence | null,
): Presence {
  const now = (): Mark => ({ wallMs: clocks.wall.nowMs(), steadyMs: clocks.steady.nowMs() });
  const restored = (ms: number | null | undefined): Mark | null => {
    const here = now();
    if (ms === null || ms === undefined) return here;
    return here.wallMs < ms - STEP_MS ? null : { wallMs: ms, steadyMs: here.steadyMs };
  };
  let used = restored(kept?.usedMs);
  let signedIn = restored(kept?.signedInMs);
  const since = (mark: Mark | null): number => {
    if (!mark) return Number.POSITIVE_INFINITY;
    const here = now();
    return Math.max(here.wallMs - mark.wallMs, here.steadyMs - mark.steadyMs);
  };
  return {
    used: () => {
      used = now();
    },
    signedIn: () => {
      used = now();
      signedIn = now();
    },
    ended: ({ idleMs, shiftMs }) =>
      since(used) >= idleMs ? 'idle' : since(signedIn) >= shiftMs ? 'shift' : null,
    kept: () => ({ usedMs: used?.wallMs ?? null, signedInMs: signedIn?.wallMs ?? null }),
  };
}
