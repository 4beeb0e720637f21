// Sync as the page uses it: one window leads, the loop runs there, and it looks again when the tablet wakes or comes online.

import { asLeader, type Locks } from './leader.ts';
import { type SyncLoop, startSync } from './loop.ts';
import { noStatus, type SyncKey, type SyncLog, type SyncStatus, type SyncWorld } from './ports.ts';
import type { BroughtHead } from './witness.ts';

export interface TabletSync {
  /** Syncs now instead of when the wait is over. */
  readonly now: () => void;
  /** Begins anew, e.g. after the tablet was enrolled. */
  readonly restart: () => void;
  /** A person took note that the server's log went back. */
  readonly tookNote: () => void;
  /** Checks a head that another tablet was shown. */
  readonly bring: (note: string) => Promise<BroughtHead>;
  readonly stop: () => Promise<void>;
}

export interface TabletSyncOptions {
  readonly log: SyncLog;
  readonly key: SyncKey;
  readonly world: SyncWorld;
  readonly locks: Locks | null;
  readonly onStatus: (status: SyncStatus) => void;
  /** Told when the tablet becomes visible or comes online; returns how to stop. */
  readonly onWake: (listener: () => void) => () => void;
}

const waitingForLead: SyncStatus = { ...noStatus, phase: 'follower' };

/** Starts sync; it goes on until stopped. */
export function startTabletSync(options: TabletSyncOptions): TabletSync {
  let loop: SyncLoop | null = null;
  let running = new AbortController();
  let done: Promise<void> = Promise.resolve();
  const begin = () => {
    running = new AbortController();
    const { signal } = running;
    options.onStatus(waitingForLead);
    const lead = asLeader(options.locks, signal, async () => {
      loop = startSync({ ...options, signal });
      await loop.done;
      // Not enrolled: keeps the lead, so that no other window repeats the question.
      if (!signal.aborted)
        await new Promise<void>((resolve) => signal.addEventListener('abort', () => resolve()));
    });
    done = done.then(() => lead);
  };
  begin();
  const unwatch = options.onWake(() => loop?.now());
  return {
    now: () => loop?.now(),
    tookNote: () => loop?.tookNote(),
    bring: async (note) => (await loop?.bring(note)) ?? 'not-checked',
    restart: () => {
      running.abort();
      begin();
    },
    stop: async () => {
      unwatch();
      running.abort();
      await done;
    },
  };
}

/** The page's own wake-ups: shown again, or online again. */
export function onPageWake(listener: () => void): () => void {
  const shown = () => {
    if (document.visibilityState === 'visible') listener();
  };
  document.addEventListener('visibilitychange', shown);
  window.addEventListener('online', listener);
  return () => {
    document.removeEventListener('visibilitychange', shown);
    window.removeEventListener('online', listener);
  };
}
