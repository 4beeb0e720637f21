// Room for the log on this tablet: asked to be kept, and watched.

/** What the browser says about its storage. Null where it does not say. */
export interface StorageHealth {
  /** True where the browser promised not to clear it by itself. */
  readonly kept: boolean | null;
  readonly usedBytes: number | null;
  readonly quotaBytes: number | null;
}

/** The same as it is followed. */
export interface StorageFollowed extends StorageHealth {
  /** True where the room for the log is full within a week if it fills as it did lately; false until that is known. */
  readonly endsSoon: boolean;
}

/** Below this much room people are told. */
export const reserveBytes = 50 * 1024 * 1024;

/** Asks the browser to keep the log; best after a tap, as some browsers decide by use. */
export async function askToKeep(): Promise<boolean> {
  return (await navigator.storage?.persist?.().catch(() => false)) ?? false;
}

/** Reads the state of storage. */
export async function readStorage(): Promise<StorageHealth> {
  const kept = (await navigator.storage?.persisted?.().catch(() => null)) ?? null;
  const estimate = await navigator.storage?.estimate?.().catch(() => undefined);
  return { kept, usedBytes: estimate?.usage ?? null, quotaBytes: estimate?.quota ?? null };
}

/** Bytes left, null where the browser does not say. */
export function roomLeft(health: StorageHealth): number | null {
  if (health.quotaBytes === null || health.usedBytes === null) return null;
  return Math.max(0, health.quotaBytes - health.usedBytes);
}
