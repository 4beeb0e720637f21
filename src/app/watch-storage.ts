// How the tablet's storage stands, followed for the banners: what the browser says at once, and then whether the room for the log ends soon.

import { type ReadonlySignal, signal } from '@preact/signals';
import type { App } from './app.ts';
import { later } from './device/later.ts';
import { askToKeep, readStorage, type StorageFollowed } from './device/storage.ts';

const LOOK_EVERY_MS = 60_000;

/** How the tablet's storage stands, looked at once the first screen stands and every minute from then; the browser is asked to keep it at the first touch. */
export function watchStorage(app: Pick<App, 'store' | 'clock'>): ReadonlySignal<StorageFollowed> {
  const nothing = { kept: null, usedBytes: null, quotaBytes: null };
  const storage = signal<StorageFollowed>({ ...nothing, endsSoon: false });
  let room: ReturnType<typeof import('./follow-room.ts').followRoom> | null = null;
  const look = async () => {
    const health = await readStorage();
    // Little room is told at once; what is foreseen has to be fetched.
    storage.value = { ...health, endsSoon: storage.peek().endsSoon };
    const soon = async () => {
      const { followRoom } = await import('./follow-room.ts');
      room ??= followRoom(app);
      return room(health);
    };
    const endsSoon = await soon().catch(() => false);
    if (endsSoon !== storage.peek().endsSoon) storage.value = { ...storage.peek(), endsSoon };
  };
  later(() => {
    void look();
    setInterval(() => void look(), LOOK_EVERY_MS);
  });
  addEventListener('pointerdown', () => void askToKeep().then(look), { once: true });
  return storage;
}
