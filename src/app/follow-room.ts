// Is the room for the log full within a week? What was used is remembered on the tablet, a look a day.

import type { App } from './app.ts';
import { DAYS_TOLD, daysLeft, type RoomSeen, withSeen } from './device/room-ahead.ts';
import type { StorageHealth } from './device/storage.ts';
import { keep, readKept } from './store/preferences.ts';

const SEEN = 'room-seen';

/** Answers whether the room for the log is full within a week if it fills as it did lately; what was seen of it is read once. */
export function followRoom({
  store,
  clock,
}: Pick<App, 'store' | 'clock'>): (health: StorageHealth) => Promise<boolean> {
  let seen: readonly RoomSeen[] | null = null;
  return async (health) => {
    const { usedBytes } = health;
    if (usedBytes === null) return false;
    seen ??= (await readKept<readonly RoomSeen[]>(store.cache, SEEN)) ?? [];
    const nowMs = clock.nowMs();
    const before = seen;
    seen = withSeen(before, { atMs: nowMs, usedBytes });
    if (seen !== before) await keep(store.cache, SEEN, seen);
    const days = daysLeft(seen, health, nowMs);
    return days !== null && days <= DAYS_TOLD;
  };
}
