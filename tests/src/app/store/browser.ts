// The parts of a browser that the tablet's store stands on, for tests in Node: a database and a small memory beside it.

import 'fake-indexeddb/auto';

const kept = new Map<string, string>();

/** What `localStorage` holds; Node 20 has none. */
const besideStorage: Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'clear'> = {
  getItem: (key) => kept.get(key) ?? null,
  setItem: (key, value) => void kept.set(key, value),
  removeItem: (key) => void kept.delete(key),
  clear: () => kept.clear(),
};

Object.defineProperty(globalThis, 'localStorage', { value: besideStorage, configurable: true });
