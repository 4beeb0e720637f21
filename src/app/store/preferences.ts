// This tablet's preferences and other small things that may be lost: kept in the cache database, read once at the start.

import type { Preferences } from '../app.ts';
import type { CacheDatabase } from './database.ts';

export const firstPreferences: Preferences = {
  line: null,
  person: null,
  language: 'en',
  pseudo: null,
  theme: 'auto',
  camera: null,
  sound: true,
  signedInMs: null,
  sheetColumns: {},
  scanner: null,
};

/** Reads the preferences; what is missing or unreadable is as on the first day. */
export async function readPreferences(cache: CacheDatabase): Promise<Preferences> {
  const row = await cache.kept.get('preferences').catch(() => undefined); // a broken cache is a fresh one
  return { ...firstPreferences, ...(row?.value as Partial<Preferences> | undefined) };
}

/** Keeps the preferences. */
export async function keepPreferences(cache: CacheDatabase, preferences: Preferences): Promise<void> {
  await cache.kept.put({ key: 'preferences', value: preferences }).catch(() => undefined); // may be lost by its nature
}

/** Reads a named small thing from the cache. */
export async function readKept<T>(cache: CacheDatabase, key: string): Promise<T | null> {
  const row = await cache.kept.get(key).catch(() => undefined);
  return (row?.value as T | undefined) ?? null; // written by keep() under the same key only
}

/** Keeps a named small thing in the cache. */
export async function keep(cache: CacheDatabase, key: string, value: unknown): Promise<void> {
  await cache.kept.put({ key, value }).catch(() => undefined);
}
