// The tablet's log as sync sees it: its chains, what comes after a number, and what sync remembers.

import Dexie from 'dexie';
import { needsOwnSignature } from '../../../shared/floor/unvouched.ts';
import { chainId } from '../../../shared/log/entry.ts';
import type { Head } from '../../../shared/wire/messages.ts';
import { emptyMemory, type PicturePort, type SyncLog, type SyncMemory } from '../sync/ports.ts';
import { syncKey } from './database.ts';
import { packBootstrap, unpackBootstrap } from './pack.ts';
import { tabletPictures } from './pictures.ts';
import { keepPlantKeys } from './plant-keys.ts';
import { forgetSeen } from './preferences.ts';
import { recordPort } from './records.ts';
import { forgetSecrets, notePinsHanded, pinsToHand } from './secrets.ts';
import type { Store } from './store.ts';

/** Wraps the store for sync. */
export function createSyncLog(store: Store): SyncLog {
  const { entries, meta } = store.log;
  const entriesAfter: SyncLog['entriesAfter'] = async ({ tablet, epoch }, seq, limit) => {
    const rows = await entries
      .where('[tablet+epoch+seq]')
      .between([tablet, epoch, seq], [tablet, epoch, Dexie.maxKey], false, true)
      .limit(limit)
      .toArray();
    // While history still comes in there may be a hole: what lies behind it is not to be offered yet.
    const hole = rows.findIndex((row, at) => row.seq !== seq + 1 + at);
    return (hole < 0 ? rows : rows.slice(0, hole)).map((row) => row.entry);
  };
  const log: SyncLog = {
    heads: () => headsOf(entries),
    entriesAfter,
    records: recordPort(store.cache, () => store.identity, entriesAfter),
    takeIn: store.takeIn,
    firstOf: async ({ tablet, epoch }) => (await entries.get([tablet, epoch, 1]))?.entry ?? null,
    signsItself: needsOwnSignature,
    quarantine: store.quarantine,
    rightClocks: store.rightClocks,
    beginNewLife: store.beginNewLife,
    readMemory: async () => ({
      ...emptyMemory,
      ...((await meta.get(syncKey))?.value as Partial<SyncMemory> | undefined), // written below only
    }),
    writeMemory: async (memory) => {
      await meta.put({ key: syncKey, value: memory });
    },
    keepPlantKeys: (keys) => keepPlantKeys(store.log, keys),
    keepTicketStart: store.trustTickets,
    pins: {
      waiting: async (serverEpoch) => [...(await pinsToHand(store.log, serverEpoch))],
      handed: (pins, serverEpoch) => notePinsHanded(store.log, pins, serverEpoch),
    },
    pictures: picturePort(store),
    forgetPlant: async () => {
      await forgetSecrets(store.log);
      await forgetSeen(store.cache);
    },
    onAppend: (listener) =>
      store.onChange((added) => {
        if (added.some((entry) => entry.tablet === store.identity.tablet)) listener();
      }),
    snapshots: {
      get fold() {
        return store.foldName();
      },
      make: async () => {
        const { acked } = await log.readMemory();
        const handed = await store.giveBootstrap(log.heads);
        if (!handed) return null;
        // What the server does not hold yet would be in the state, and in the next tablet's log perhaps never.
        const own = (await log.heads()).filter((head) => head.tablet === store.identity.tablet);
        if (own.some((head) => (acked[chainId(head)] ?? 0) < head.seq)) return null;
        return packBootstrap(handed);
      },
      take: async (bytes, from) => {
        const handed = unpackBootstrap(bytes, store.foldName());
        if (!handed) return false;
        return store.takeBootstrap({ ...handed, bootstrap: { ...handed.bootstrap, from } });
      },
    },
  };
  return log;
}

/** The end of each chain, from chain to chain: two look-ups each, however long the chains are. */
async function headsOf(entries: Store['log']['entries']): Promise<Head[]> {
  const heads: Head[] = [];
  let from: unknown[] = [Dexie.minKey];
  for (;;) {
    const first = await entries.where('[tablet+epoch+seq]').above(from).first();
    if (!first) return heads;
    const end = [first.tablet, first.epoch, Dexie.maxKey];
    const last = await entries
      .where('[tablet+epoch+seq]')
      .between([first.tablet, first.epoch, 0], end)
      .last();
    if (last) heads.push({ tablet: last.tablet, epoch: last.epoch, seq: last.seq, hash: last.entry.hash });
    from = end;
  }
}

/** Pictures of labels, for the server to keep. Where no line keeps any, what keeps them is not even opened. */
function picturePort(store: Store): PicturePort {
  let isKept = false;
  return {
    waiting: async (serverEpoch, most) => {
      isKept ||= store.floor().pictureRules.size > 0;
      if (!isKept) return [];
      const kept = await tabletPictures().waiting(serverEpoch, most);
      return kept.map(({ sha256, of, untilMs, bytes }) => ({
        sha256,
        of,
        untilMs,
        bytes: new Uint8Array(bytes),
      }));
    },
    sent: (sha256, serverEpoch) => tabletPictures().sent(sha256, serverEpoch),
  };
}
