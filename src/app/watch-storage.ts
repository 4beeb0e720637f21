// How the tablet's storage stands, followed for the banners: what the browser says at once, and then whether the room for the log ends soon.

import { type ReadonlySignal, signal } from '@preact/signals';
import type { App } from './app.ts';
import { later } from './device/later.ts';
import type { RoomSeen } from './device/room-ahead.ts';
import { askToKeep, readStorage, type StorageFollowed, type StorageHealth } from './device/storage.ts';
import { keep, readKept } from './store/preferences.ts';

const SEEN = 'room-seen';
const LOOK_EVERY_MS = 60_000;

/** How the tablet's storage stands, looked at once the first screen stands and every minute from then; the browser is asked to keep it at the first touch. */
export function watchStorage(app: Pick<App, 'store' | 'clock'>): ReadonlySignal<StorageFollowed> {
  const nothing = { kept: null, usedBytes: null, quotaBytes: null };
  const storage = signal<StorageFollowed>({ ...nothing, endsSoon: false });
  const endsSoon = roomAhead(app);
  const look = async () => {
    const health = await readStorage();
    // Little room is told at once; what is foreseen has to be fetched.
    storage.value = { ...health, endsSoon: storage.peek().endsSoon };
    const soon = await endsSoon(health).catch(() => false);
    storage.value = { ...storage.peek(), endsSoon: soon };
  };
  later(() => {
    void look();
    setInterval(() => void look(), LOOK_EVERY_MS);
  });
  addEventListener('pointerdown', () => void askToKeep().then(look), { once: true });
  return storage;
}

/** Answers whether the room for the log is full within a week if it fills as it did lately; what was seen of it is read once. */
function roomAhead({ store, clock }: Pick<App, 'store' | 'clock'>) {
  let seen: readonly RoomSeen[] | null = null;
  return async (health: StorageHealth): Promise<boolean> => {
    const { usedBytes } = health;
    if (usedBytes === null) return false;
    const { DAYS_TOLD, daysLeft, withSeen } = await import('./device/room-ahead.ts');
    seen ??= (await readKept<readonly RoomSeen[]>(store.cache, SEEN)) ?? [];
    const nowMs = clock.nowMs();
    const before = seen;
    seen = withSeen(before, { atMs: nowMs, usedBytes });
    if (seen !== before) await keep(store.cache, SEEN, seen);
    const days = daysLeft(seen, health, nowMs);
    return days !== null && days <= DAYS_TOLD;
  };
}
