// The screen is kept on while somebody works; a browser that lets go of it when the page is hidden is asked again, and a refusal is told.

import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type Awake, keepAwake } from '../../../../src/app/device/wake.ts';

/** A lock as the browser gives it; it lets go by itself when the page is hidden. */
class Lock extends EventTarget {
  released = false;
  async release(): Promise<void> {
    if (this.released) return;
    this.released = true;
    this.dispatchEvent(new Event('release'));
  }
}

class Page extends EventTarget {
  visibilityState: 'visible' | 'hidden' = 'visible';
}

let page: Page;
let locks: Lock[];
let refuses: boolean;

const held = () => locks.filter(({ released }) => !released).length;
/** Lets all that was begun come to its end. */
const settle = () => vi.advanceTimersByTimeAsync(0);

async function turn(state: 'visible' | 'hidden'): Promise<void> {
  page.visibilityState = state;
  if (state === 'hidden') for (const lock of locks) await lock.release();
  page.dispatchEvent(new Event('visibilitychange'));
  await settle();
}

beforeEach(() => {
  vi.useFakeTimers();
  page = new Page();
  locks = [];
  refuses = false;
  vi.stubGlobal('document', page);
  const request = async () => {
    if (refuses) throw new DOMException('The battery is low.', 'NotAllowedError');
    const lock = new Lock();
    locks.push(lock);
    return lock;
  };
  vi.stubGlobal('navigator', { wakeLock: { request } });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('is held as long as it is wanted, and let go after', async () => {
  const [state, wanted] = [signal<Awake>('free'), signal(false)];
  keepAwake(state, () => wanted.value);
  await settle();
  expect([state.value, locks.length]).toEqual(['free', 0]);
  wanted.value = true;
  await settle();
  expect([state.value, held()]).toEqual(['held', 1]);
  wanted.value = false;
  await settle();
  expect([state.value, held()]).toEqual(['free', 0]);
});

test('is asked for again once the page is seen again, and not while it is hidden', async () => {
  const state = signal<Awake>('free');
  keepAwake(state, () => true);
  await settle();
  await turn('hidden');
  expect([state.value, held()]).toEqual(['free', 0]);
  await turn('visible');
  expect([state.value, held(), locks.length]).toEqual(['held', 1, 2]);
});

test('that is refused is told, and asked for again when the page is seen again', async () => {
  const state = signal<Awake>('free');
  refuses = true;
  keepAwake(state, () => true);
  await settle();
  expect([state.value, held()]).toEqual(['refused', 0]);
  refuses = false;
  await turn('hidden');
  await turn('visible');
  expect([state.value, held()]).toEqual(['held', 1]);
});

test('that changes its mind while it is asked ends as it was wanted last', async () => {
  const [state, wanted] = [signal<Awake>('free'), signal(true)];
  keepAwake(state, () => wanted.value);
  wanted.value = false;
  await settle();
  expect([state.value, held()]).toEqual(['free', 0]);
});

test('that the browser does not know is told', () => {
  vi.stubGlobal('navigator', {});
  const state = signal<Awake>('free');
  keepAwake(state, () => true);
  expect(state.value).toBe('unsupported');
});
