// The tablet's log as sync sees it: its chains, what comes after a number, and what sync remembers.

import Dexie from 'dexie';
import type { Head, SignedCheckpoint } from '../../../shared/wire/messages.ts';
import { emptyMemory, type SyncLog, type SyncMemory } from '../sync/ports.ts';
import type { Store } from './store.ts';

/** Wraps the store for sync. */
export function createSyncLog(store: Store): SyncLog {
  const { entries, meta } = store.log;
  return {
    heads: async () => {
      const heads: Head[] = [];
      // From chain to chain: two look-ups each, however long the chains are.
      let from: unknown[] = [Dexie.minKey];
      for (;;) {
        const first = await entries.where('[tablet+epoch+seq]').above(from).first();
        if (!first) return heads;
        const end = [first.tablet, first.epoch, Dexie.maxKey];
        const last = await entries
          .where('[tablet+epoch+seq]')
          .between([first.tablet, first.epoch, 0], end)
          .last();
        if (last)
          heads.push({ tablet: last.tablet, epoch: last.epoch, seq: last.seq, hash: last.entry.hash });
        from = end;
      }
    },
    entriesAfter: async ({ tablet, epoch }, seq, limit) => {
      const rows = await entries
        .where('[tablet+epoch+seq]')
        .between([tablet, epoch, seq], [tablet, epoch, Dexie.maxKey], false, true)
        .limit(limit)
        .toArray();
      return rows.map((row) => row.entry);
    },
    takeIn: store.takeIn,
    readMemory: async () => ({
      ...emptyMemory,
      ...((await meta.get('sync'))?.value as Partial<SyncMemory> | undefined), // written below only
    }),
    writeMemory: async (memory) => {
      await meta.put({ key: 'sync', value: memory });
    },
    keepCheckpoint: async (checkpoint: SignedCheckpoint) => {
      await meta.put({ key: 'checkpoint', value: checkpoint });
    },
    onAppend: (listener) =>
      store.onChange((added) => {
        if (added.some((entry) => entry.tablet === store.identity.tablet)) listener();
      }),
  };
}
