// A link's own files, desk and source in a folder, under a clock that the test moves; what is counted comes from the tablets' own fold.

import { cpSync } from 'node:fs';
import { applyAll } from '../../../../shared/floor/fold.ts';
import type { EntryKind, PayloadOf } from '../../../../shared/floor/kinds.ts';
import { emptyState, type FloorState } from '../../../../shared/floor/state.ts';
import type { Entry } from '../../../../shared/log/entry.ts';
import { compareEntries } from '../../../../shared/log/order.ts';
import type { HermesStation } from '../../../../src/link/config.ts';
import { openHeld } from '../../../../src/link/held.ts';
import { openHermes } from '../../../../src/link/hermes/source.ts';
import { type HermesTimes, usualTimes } from '../../../../src/link/hermes/times.ts';
import { openIdentity } from '../../../../src/link/identity.ts';
import { openSpool } from '../../../../src/link/spool.ts';
import { openStationDesk } from '../../../../src/link/station-desk.ts';
import { newFolder } from '../../../contract/databases.ts';
import { beginStory, type Story, startMs } from '../../../shared/floor/story.ts';
import { clock as machinesClock } from './machine.ts';

/** The clock is the test's; only how often it is looked at is true time. */
export const quick: HermesTimes = { ...usualTimes, lookMs: 5, againMs: 5, strangeMs: 5 };

/** A station of a line, by the machine's address. */
export function stationAt(
  connect: string,
  line = 'L1',
  more: Partial<HermesStation['source']> = {},
): HermesStation {
  return {
    station: `${line}-exit`,
    line,
    machine: null,
    at: 'out',
    source: { kind: 'hermes', connect, ...more },
  };
}

/** What a link heard, and what the floor makes of it. */
export interface Plant {
  /** Where the link's files are. */
  readonly folder: () => string;
  readonly clock: { ms: number };
  readonly people: Story;
  /** Starts the link in its folder, as after a kill. */
  readonly start: () => Promise<void>;
  /** Ends in order. */
  readonly stop: () => Promise<void>;
  /** The power goes: what was on the disk in this moment is all there is. */
  readonly cutPower: () => void;
  /** Time passes; the desk looks up every second of it. */
  readonly pass: (seconds: number) => Promise<void>;
  readonly entries: () => Promise<readonly Entry[]>;
  readonly of: <K extends EntryKind>(kind: K) => Promise<readonly PayloadOf<K>[]>;
  /** What was noticed, and how often so far by what is told. */
  readonly noticed: () => Promise<readonly string[]>;
  readonly floor: () => Promise<FloorState>;
  readonly done: (line?: string) => Promise<number>;
  readonly faults: unknown[];
  readonly remove: () => Promise<void>;
}

/** Opens a plant with its lines and runs; nothing is heard yet. */
export function openPlant(stations: readonly HermesStation[], times: HermesTimes = quick): Plant {
  const clock = { ms: 0 };
  const folders = [newFolder()];
  const faults: unknown[] = [];
  const people = beginStory();
  const now = () => ({ ms: clock.ms, wallMs: startMs + clock.ms });
  const folder = () => folders.at(-1)?.path ?? '';
  let link: ReturnType<typeof open> | null = null;
  const abandoned: Promise<unknown>[] = [];

  const open = () => {
    const identity = openIdentity(folder());
    const spool = openSpool(folder(), identity, () => now().wallMs, false);
    const held = openHeld(folder(), false);
    const heard = stations.map((station) => {
      let silentMs = () => 32_000;
      const parts = { held, write: spool.write, start: now(), silentMs: () => silentMs() };
      const desk = openStationDesk(station, parts);
      const source = openHermes(station, {
        folder: folder(),
        now,
        desk,
        say: () => undefined,
        onFault: (fault) => faults.push(fault),
        chance: () => 0,
        times,
        flush: false,
      });
      silentMs = source.silentMs;
      return { station, desk, source };
    });
    return { identity, spool, held, heard };
  };
  const entries = async (): Promise<readonly Entry[]> => {
    const all: Entry[] = [];
    for (;;) {
      const page = link ? await link.spool.log.entriesAfter(link.identity, all.length, 500) : [];
      if (page.length === 0) return all;
      all.push(...page);
    }
  };
  const of: Plant['of'] = async (kind) =>
    (await entries()).filter((entry) => entry.kind === kind).map(({ payload }) => payload as never);
  const floor = async () =>
    applyAll(emptyState(), [...people.entries, ...(await entries())].sort(compareEntries));
  const close = async ({ spool, held, heard }: ReturnType<typeof open>) => {
    await Promise.all(heard.map(({ source }) => source.stop()));
    await held.close();
    await spool.close();
  };
  for (const { line, station } of stations) {
    const machines = [{ machine: 'M1', name: 'M1', banks: [{ bank: 'F', name: 'F', positions: 10 }] }];
    people.tell('line.defined', { line, name: line, zone: 'UTC', machines }, { at: 0 });
    people.tell('line.counted-by', { line, station }, { at: 0 });
    const job = { setup: 's', product: 'p', panelsWanted: 1_000_000, panelPrefix: null };
    const pace = { panelSeconds: 12, panelSd: 0 };
    people.tell('run.started', { run: `run-${line}`, line, ...job, ...pace }, { at: 1 });
  }
  clock.ms = 5_000;
  machinesClock.ms = startMs + clock.ms;
  return {
    folder,
    clock,
    people,
    faults,
    entries,
    of,
    floor,
    start: async () => {
      link = open();
      for (const { station, desk, source } of link.heard) {
        const { station: name, line, machine, at } = station;
        const means = { means: 'hermes', version: 'test', address: station.source.connect };
        await link.spool.write('station.known', { station: name, line, machine, at, ...means });
        await source.recall();
        await desk.settle();
        source.start();
      }
    },
    stop: async () => {
      if (link) await close(link);
    },
    cutPower: () => {
      const before = folder();
      folders.push(newFolder());
      cpSync(before, folder(), { recursive: true });
      // What it still does goes nowhere.
      if (link) abandoned.push(close(link).catch(() => undefined));
      link = null;
    },
    pass: async (seconds) => {
      for (let at = 0; at < seconds; at += 1) {
        clock.ms += 1_000;
        machinesClock.ms += 1_000;
        for (const { desk } of link?.heard ?? []) await desk.tick(now());
      }
    },
    noticed: async () => (await of('station.noticed')).map(({ what, said }) => `${what}: ${said}`),
    done: async (line = 'L1') => (await floor()).runs.get(`run-${line}`)?.done ?? 0,
    remove: async () => {
      if (link) await close(link);
      await Promise.all(abandoned);
      for (const each of folders) each.remove();
    },
  };
}
