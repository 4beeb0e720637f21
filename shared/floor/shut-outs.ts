// Until when is a ticket good on a tablet that the server shut out? Up to then: by time, as a ticket ends with its hours, so that what the
// tablet did before and brought later stays proven. Whoever is let in again gets a new ticket, and the server gives none in between: one from
// later than a shut-out is not touched by it, and one from before stays over.
// Refused: the place in the log, which tells when an entry came and not when it was written; the word that the tablet was let in again, with
// which a ticket of before would prove what was written while it was out.

import type { EntryOf } from './kinds.ts';

/** The part of the state that shut-outs stand in. */
export interface ShutOutState {
  /** Tablet -> when the server shut it out, each time, ms since 1970 by the server's clock. */
  readonly shutOuts: Map<string, readonly number[]>;
}

/** Takes note of one. That the server told it was looked at before. */
export function foldShutOut({ shutOuts }: ShutOutState, { at, payload }: EntryOf<'tablet.shut-out'>): void {
  shutOuts.set(payload.tablet, [...(shutOuts.get(payload.tablet) ?? []), Date.parse(at)]);
}

/** When a ticket that is good from `fromMs` to `untilMs` on a tablet ends there, ms since 1970. */
export function endOnTablet(
  { shutOuts }: ShutOutState,
  tablet: string,
  { fromMs, untilMs }: { readonly fromMs: number; readonly untilMs: number },
): number {
  const later = (shutOuts.get(tablet) ?? []).filter((ms) => ms >= fromMs);
  return Math.min(untilMs, ...later);
}
