// Ready for offline, and updates: a new version is offered when no task is open in any window, never forced.

import { type ReadonlySignal, signal } from '@preact/signals';
import type { Workbox } from 'workbox-window';
import { later } from './later.ts';

/** What the page knows about its own offline copy. */
export type OfflineState = 'unsupported' | 'getting-ready' | 'ready';

/** The service worker as the app sees it. */
export interface Offline {
  readonly state: ReadonlySignal<OfflineState>;
  /** True while a newer version waits. */
  readonly updateWaits: ReadonlySignal<boolean>;
  /** Moves all windows to the newer version; false where a window has an open task. */
  readonly update: () => Promise<boolean>;
}

const HOUR_MS = 3_600_000;
/** Windows that do not answer within this time are taken for closed. */
const ANSWER_MS = 600;

/** Registers the service worker and watches for newer versions. `openTasks` counts what an update would disturb. */
export function startOffline(openTasks: () => number): Offline {
  const state = signal<OfflineState>('serviceWorker' in navigator ? 'getting-ready' : 'unsupported');
  const updateWaits = signal(false);
  if (state.value === 'unsupported') return { state, updateWaits, update: async () => false };

  const windows = new BroadcastChannel('reelward-update');
  let worker: Workbox | null = null;
  let accepted = false;
  windows.onmessage = (message: MessageEvent<string>) => {
    if (message.data === 'busy?' && openTasks() > 0) windows.postMessage('busy');
    if (message.data === 'moving') accepted = true;
  };
  navigator.serviceWorker.ready.then(
    () => {
      state.value = 'ready';
    },
    () => undefined, // stays "getting ready", which is the truth
  );
  const look = () => void worker?.update().catch(() => undefined); // offline: the next look will do
  async function register(): Promise<void> {
    const { Workbox } = await import('workbox-window');
    worker = new Workbox('/sw.js', { updateViaCache: 'none' });
    worker.addEventListener('waiting', () => {
      updateWaits.value = true;
    });
    worker.addEventListener('controlling', () => {
      // The first visit is taken over without a reload; only an accepted update needs the new code at once.
      if (accepted) location.reload();
    });
    await worker.register();
    setInterval(look, HOUR_MS);
  }
  later(() => {
    register().catch(() => {
      state.value = 'unsupported'; // a page that is not served securely has no worker
    });
  });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') look();
  });

  async function othersBusy(): Promise<boolean> {
    return new Promise((resolve) => {
      const answers = new BroadcastChannel('reelward-update');
      answers.onmessage = (message: MessageEvent<string>) => {
        if (message.data !== 'busy') return;
        answers.close();
        resolve(true);
      };
      answers.postMessage('busy?');
      setTimeout(() => {
        answers.close();
        resolve(false);
      }, ANSWER_MS);
    });
  }

  return {
    state,
    updateWaits,
    update: async () => {
      if (openTasks() > 0 || (await othersBusy())) return false;
      accepted = true;
      windows.postMessage('moving');
      worker?.messageSkipWaiting();
      return true;
    },
  };
}
