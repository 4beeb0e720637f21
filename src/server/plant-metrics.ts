// What an administrator is woken for: how the store, its backups, its checks and the plant's tablets stand, asked when somebody asks for it.
// Names are ours; units are in the names.

import { statfsSync } from 'node:fs';
import { Gauge, type Registry } from 'prom-client';
import { roomShare } from '../../shared/wire/state-room.ts';
import { wireVersion } from '../../shared/wire/version.ts';
import type { StoreHealth } from './health.ts';
import type { PushDesk } from './push/desk.ts';
import type { SeenBook } from './seen.ts';
import { signaturesTo } from './signatures.ts';
import { readStateSize } from './state-room.ts';
import { backupMade } from './stores/backup.ts';
import type { Store } from './stores/store.ts';
import { storeTroubles } from './stores/trouble.ts';
import { within } from './within.ts';

/** Whoever asks waits no longer than this for the database, ms; what it did not tell in time is left out. */
const ASK_MS = 2_000;

export interface PlantMetricsParts {
  readonly registry: Registry;
  /** For what names tablets. */
  readonly tablets: Registry;
  readonly folder: string;
  readonly store: Pick<Store, 'head' | 'readMeta' | 'listTablets' | 'measure'>;
  readonly health: Pick<StoreHealth, 'troubles'>;
  readonly seen: Pick<SeenBook, 'wires' | 'write'>;
  readonly push: Pick<PushDesk, 'counts'>;
}

/** Adds them to the registry. */
export function addPlantMetrics(parts: PlantMetricsParts): void {
  const registers = [parts.registry];
  addStoreMetrics(parts, registers);
  addStateMetrics(parts, registers);
  addTabletMetrics(parts, [parts.tablets]);
  new Gauge({
    name: 'reelward_disk_free_bytes',
    help: 'Room on the disk of the data folder',
    registers,
    collect() {
      const { bavail, bsize } = statfsSync(parts.folder);
      this.set(bavail * bsize);
    },
  });
  new Gauge({
    name: 'reelward_push_messages',
    help: 'Messages to closed apps since the server began, by whether they reached their push service',
    labelNames: ['end'],
    registers,
    collect() {
      const { sent, failed } = parts.push.counts();
      this.set({ end: 'sent' }, sent);
      this.set({ end: 'failed' }, failed);
    },
  });
  new Gauge({
    name: 'reelward_store_trouble',
    help: 'What is wrong with the store: 1 where it is, by its kind',
    labelNames: ['trouble'],
    registers,
    collect() {
      const found = parts.health.troubles();
      for (const trouble of storeTroubles) this.set({ trouble }, found.includes(trouble) ? 1 : 0);
    },
  });
}

/** A gauge whose number the store knows. */
function asked(
  { name, help }: { readonly name: string; readonly help: string },
  registers: Registry[],
  ask: () => Promise<number>,
): void {
  new Gauge({
    name,
    help,
    registers,
    async collect() {
      this.reset();
      const value = await within(ask(), ASK_MS, null).catch(() => null);
      // No number is better than an old one: an alert for its absence tells more.
      if (value === null) this.remove();
      else this.set(value);
    },
  });
}

function addStoreMetrics({ store }: PlantMetricsParts, registers: Registry[]): void {
  asked({ name: 'reelward_store_bytes', help: 'Size of the store' }, registers, async () => {
    return (await store.measure()).bytes;
  });
  asked({ name: 'reelward_log_entries', help: 'Entries in the log' }, registers, async () => {
    return (await store.head()).pos;
  });
  asked(
    { name: 'reelward_aside_entries', help: 'Entries kept aside, since they are no part of the log' },
    registers,
    async () => (await store.measure()).aside,
  );
  asked(
    { name: 'reelward_checks_behind_entries', help: 'Entries whose signatures have still to be checked' },
    registers,
    async () => {
      const [{ pos }, checked] = await Promise.all([store.head(), store.readMeta(signaturesTo)]);
      return Math.max(0, pos - Number(checked ?? 0));
    },
  );
  asked(
    {
      name: 'reelward_backup_seconds',
      help: 'When the last backup was made and read back; 0 where none was',
    },
    registers,
    async () => Number((await store.readMeta(backupMade)) ?? 0) / 1000,
  );
}

function addStateMetrics({ store }: PlantMetricsParts, registers: Registry[]): void {
  asked(
    {
      name: 'reelward_new_tablet_state_share',
      help: 'Share of what may be handed to a new tablet that the state takes: above 1 it reads the whole log instead; 0 where none was made yet',
    },
    registers,
    async () => {
      const told = await readStateSize(store);
      return told === null ? 0 : roomShare(told);
    },
  );
}

function addTabletMetrics({ store, seen }: PlantMetricsParts, registers: Registry[]): void {
  new Gauge({
    name: 'reelward_tablet_seen_seconds',
    help: 'When an enrolled tablet was last heard of, seconds since 1970; 0 where never',
    labelNames: ['tablet', 'name'],
    registers,
    async collect() {
      this.reset();
      await within(seen.write(), ASK_MS, null).catch(() => null);
      const tablets = (await within(store.listTablets(), ASK_MS, null).catch(() => null)) ?? [];
      for (const { tablet, name, seenMs, revokedMs } of tablets)
        if (revokedMs === null) this.set({ tablet, name }, (seenMs ?? 0) / 1000);
    },
  });
  new Gauge({
    name: 'reelward_tablet_wire_version',
    help: 'The version of the wire that a tablet spoke last, since this process began',
    labelNames: ['tablet'],
    registers,
    collect() {
      this.reset();
      for (const [tablet, wire] of seen.wires()) this.set({ tablet }, wire);
    },
  });
  new Gauge({
    name: 'reelward_wire_version',
    help: 'The newest version of the wire that this server speaks',
    registers,
    collect() {
      this.set(wireVersion);
    },
  });
}
