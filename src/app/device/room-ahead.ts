// When is the room for the log full, if it fills as it did lately? Method: what the browser said of it once a day, for two weeks; the growth from
// the second of these to now, since it grows by what a plant does in a day. Refused: the growth of an hour, as a page's own files come and go; the
// first day, in which a new tablet fetches the log.

import { DAY_MS } from '../../../shared/kit/moment.ts';
import type { StorageHealth } from './storage.ts';

/** How much was used at one moment. */
export interface RoomSeen {
  readonly atMs: number;
  readonly usedBytes: number;
}

/** Days that are remembered, and the least from which anything is foreseen. */
const DAYS_KEPT = 14;
const DAYS_LEAST = 2;
/** People are told so many days before. */
export const DAYS_TOLD = 7;

/** What is remembered with one more look: one a day. A clock that was set back begins anew. */
export function withSeen(seen: readonly RoomSeen[], now: RoomSeen): readonly RoomSeen[] {
  const last = seen.at(-1);
  if (last === undefined || now.atMs < last.atMs) return [now];
  return now.atMs - last.atMs < DAY_MS ? seen : [...seen, now].slice(-DAYS_KEPT);
}

/** Days until nothing is left at the growth seen, 0 or more; null where that is not known, or it does not grow. */
export function daysLeft(seen: readonly RoomSeen[], health: StorageHealth, nowMs: number): number | null {
  const { usedBytes, quotaBytes } = health;
  const [, first] = seen;
  if (first === undefined || usedBytes === null || quotaBytes === null) return null;
  const days = (nowMs - first.atMs) / DAY_MS;
  const grown = usedBytes - first.usedBytes;
  if (days < DAYS_LEAST || grown <= 0) return null;
  return (Math.max(0, quotaBytes - usedBytes) / grown) * days;
}
