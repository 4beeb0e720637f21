// Joins the tablet to its plant's server, where it was enrolled; loaded after the first screen, since nothing waits for it.

import type { App } from '../app.ts';
import { signOut } from '../person/sign-in.ts';
import { createSyncLog } from '../store/sync-log.ts';
import { sleep } from '../sync/backoff.ts';
import type { Connection } from '../sync/connection.ts';
import { enrolTablet } from '../sync/enrol.ts';
import { createCaller } from '../sync/http.ts';
import { createSyncKey, newNonce } from '../sync/key.ts';
import { handPins } from '../sync/pins.ts';
import type { SyncWorld } from '../sync/ports.ts';
import { askRecord } from '../sync/records.ts';
import { onPageWake, startTabletSync } from '../sync/tablet.ts';

/** Starts sync; answers null where the page is not secure and so has no key to sign with. */
export async function connect(app: App): Promise<Connection | null> {
  const { keys, tablet } = app.store.identity;
  if (!keys) return null;
  const log = createSyncLog(app.store);
  const key = await createSyncKey(tablet, keys);
  const world: SyncWorld = {
    origin: '',
    fetch: (input, init) => fetch(input, init),
    nowMs: () => Date.now(),
    sawServer: app.sawServerTime,
    chance: () => Math.random(),
    sleep,
    nonce: newNonce,
  };
  const sync = startTabletSync({
    log,
    key,
    world,
    locks: navigator.locks ?? null,
    onWake: onPageWake,
    onStatus: (status) => {
      // Once, when it is heard: every later try is answered the same, and work goes on here by badge.
      const isNews = status.reason === 'tablet-revoked' && app.sync.peek()?.reason !== 'tablet-revoked';
      app.sync.value = status;
      const person = app.person.peek();
      if (isNews && person) signOut(app, person);
    },
  });
  return {
    handPins: async () => {
      const { serverEpoch, clockOffMs } = await log.readMemory();
      await handPins(log.pins, createCaller(world, key, { clockOffMs }), serverEpoch);
    },
    caller: async () => {
      const memory = await log.readMemory();
      return memory.enrolled ? createCaller(world, key, { clockOffMs: memory.clockOffMs }) : null;
    },
    enrol: async (code, name) => {
      const enrolled = await enrolTablet({ log, key, world }, { code, name, canBeScreen: true });
      if (enrolled.ok) sync.restart();
      return enrolled;
    },
    syncNow: sync.now,
    tookNote: sync.tookNote,
    bring: sync.bring,
    recordOf: async (entry) => {
      const { enrolled, clockOffMs } = await log.readMemory();
      if (!enrolled) return null;
      const told = await askRecord(createCaller(world, key, { clockOffMs }), enrolled.serverKey, entry);
      return told !== null && typeof told === 'object' && 'code' in told ? null : told;
    },
    plant: async () => (await log.readMemory()).enrolled?.plant ?? null,
  };
}
