// How storage stands is told as soon as the browser says it; whether the room ends soon follows, out of what is read once.

import { afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { screenStands } from '../../../src/app/device/later.ts';
import type { RoomSeen } from '../../../src/app/device/room-ahead.ts';
import { watchStorage } from '../../../src/app/watch-storage.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
let estimate = { usage: 0, quota: 1_000 };
let page = new EventTarget();

beforeAll(async () => {
  screenStands();
  await import('../../../src/app/follow-room.ts'); // there before: fake minutes pass faster than a module is fetched
});
beforeEach(() => {
  vi.useFakeTimers({ now: 20 * DAY_MS });
  estimate = { usage: 0, quota: 1_000 };
  page = new EventTarget();
  vi.stubGlobal('addEventListener', page.addEventListener.bind(page));
  const storage = {
    persisted: async () => false,
    persist: async () => true,
    estimate: async () => estimate,
  };
  vi.stubGlobal('navigator', { storage });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** A tablet that kept what was seen of its room; `read` answers with that. */
function tablet(read: () => Promise<readonly RoomSeen[] | undefined>) {
  const kept = {
    get: vi.fn(async () => ({ value: await read() })),
    put: vi.fn(async () => undefined),
  };
  const app = { store: { cache: { kept } }, clock: { nowMs: () => Date.now() } };
  return { kept, storage: watchStorage(app as unknown as Parameters<typeof watchStorage>[0]) }; // what is used of it here
}

/** Grew by 100 of its 1000 each day, from the day before yesterday. */
const grew = async (): Promise<readonly RoomSeen[]> =>
  [600, 700, 800].map((usedBytes, at) => ({ atMs: (17 + at) * DAY_MS, usedBytes }));

test('how storage stands is told without waiting for what is foreseen', async () => {
  estimate = { usage: 990, quota: 1_000 };
  const { storage } = tablet(() => new Promise(() => undefined)); // a log that never opens
  page.dispatchEvent(new Event('pointerdown'));
  await vi.waitFor(() => expect(storage.value.usedBytes).toBe(990));
  expect(storage.value).toMatchObject({ quotaBytes: 1_000, endsSoon: false });
});

test('room that is full within a week is told, and is not where it was freed', async () => {
  estimate = { usage: 900, quota: 1_000 };
  const { storage } = tablet(grew);
  page.dispatchEvent(new Event('pointerdown'));
  await vi.waitFor(() => expect(storage.value.endsSoon).toBe(true));
  estimate = { usage: 100, quota: 1_000 };
  await vi.advanceTimersByTimeAsync(15 * MINUTE_MS);
  expect(storage.value).toMatchObject({ usedBytes: 100, endsSoon: false });
});

test('what was seen is read once, and written once a day', async () => {
  const { kept, storage } = tablet(grew);
  for (let day = 0; day < 3; day += 1) {
    estimate = { usage: 900 + day, quota: 1_000 };
    await vi.advanceTimersByTimeAsync(DAY_MS);
  }
  await vi.waitFor(() => expect(storage.value.usedBytes).toBe(902));
  expect(kept.get).toHaveBeenCalledTimes(1);
  expect(kept.put).toHaveBeenCalledTimes(4);
});
