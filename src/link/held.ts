// The highest total held of each device's boot, on disk before a device is told so. The log itself gets a total less often: a year of it
// must stay small. What was held and is not in the log yet goes there at the next start.

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openLines, readLines, writeWhole } from './files.ts';

/** One boot of a station's device. */
export interface HeldBoot {
  readonly boot: string;
  /** Highest total that a device was told is held. */
  total: number;
  /** Highest total in the log. */
  logged: number;
}

/** A total that fell without the device being switched on anew. */
export interface Fall {
  readonly times: number;
  readonly base: number;
}

/** Totals by station, the newest boot last; and what was noticed of each already. */
export interface Held {
  readonly boots: (station: string) => readonly HeldBoot[];
  /** Names of what was told of the station. */
  readonly told: (station: string) => ReadonlySet<string>;
  /** Other devices' boots under its name. */
  readonly foreign: (station: string) => ReadonlySet<string>;
  /** Boots whose total fell: how often, and from where it counts on. */
  readonly falls: (station: string) => ReadonlyMap<string, Fall>;
  /** Known at once; resolves when it is on the disk, as the others do. */
  readonly hold: (station: string, boot: string, total: number) => Promise<void>;
  /** It is in the log, which holds it on its own; nobody waits for this. */
  readonly logged: (station: string, boot: string, total: number) => void;
  readonly tell: (station: string, what: string) => Promise<void>;
  readonly setForeign: (station: string, boot: string) => Promise<void>;
  readonly fall: (station: string, boot: string, base: number) => Promise<void>;
  /** Totals that the station had left for the log when it was last kept; null where it never was. */
  readonly spared: (station: string) => number | null;
  readonly keepSpared: (station: string, totals: number) => void;
  readonly close: () => Promise<void>;
}

const BOOTS_KEPT = 32;
/** Lines after which the file is written anew. */
const LINES_MOST = 50_000;

interface StationHeld {
  boots: HeldBoot[];
  readonly told: Set<string>;
  readonly foreign: Set<string>;
  readonly falls: Map<string, Fall>;
}

type Line = readonly [
  station: string,
  is: 'held' | 'logged' | 'told' | 'foreign' | 'fell',
  name: string,
  total: number,
  times?: number,
];

/** Opens what is held in a folder. `flush`: as of lines. */
export function openHeld(folder: string, flush = true): Held {
  const stations = new Map<string, StationHeld>();
  const of = (station: string): StationHeld => {
    const there = stations.get(station) ?? {
      boots: [],
      told: new Set(),
      foreign: new Set(),
      falls: new Map(),
    };
    stations.set(station, there);
    return there;
  };
  const take = ([station, is, name, total, times]: Line): void => {
    const held = of(station);
    if (is === 'told') held.told.add(name);
    else if (is === 'foreign') held.foreign.add(name);
    else if (is === 'fell') held.falls.set(name, { times: times ?? 1, base: total });
    else {
      let boot = held.boots.find((each) => each.boot === name);
      if (!boot) {
        boot = { boot: name, total: 0, logged: -1 };
        held.boots = [...held.boots, boot].slice(-BOOTS_KEPT);
      }
      boot.total = Math.max(boot.total, total);
      if (is === 'logged') boot.logged = Math.max(boot.logged, total);
    }
  };
  const file = join(folder, 'held.ndjson');
  if (existsSync(file)) for (const line of readLines(file)) take(JSON.parse(line) as Line); // written below
  const all = () =>
    [...stations].flatMap(([station, { boots, told, foreign, falls }]): Line[] => [
      ...boots.flatMap(({ boot, total, logged }): Line[] => [
        [station, 'held', boot, total],
        ...(logged < 0 ? [] : ([[station, 'logged', boot, logged]] as const)),
      ]),
      ...[...told].map((name): Line => [station, 'told', name, 0]),
      ...[...foreign].map((name): Line => [station, 'foreign', name, 0]),
      ...[...falls].map(([name, { base, times }]): Line => [station, 'fell', name, base, times]),
    ]);
  const wholeText = () => all().map((line) => `${JSON.stringify(line)}\n`);
  writeWhole(file, wholeText().join(''));
  const lines = openLines(file, flush);
  // In a file of its own: a program of before it reads the other one whole.
  const sparedFile = join(folder, 'spared.json');
  const spared: Record<string, number> = existsSync(sparedFile)
    ? (JSON.parse(readFileSync(sparedFile, 'utf8')) as Record<string, number>) // written below
    : {};
  let count = 0;
  const add = async (line: Line): Promise<void> => {
    take(line);
    count += 1;
    if (count <= LINES_MOST) return lines.add(JSON.stringify(line));
    count = 0;
    return lines.renew(() => wholeText().join(''));
  };
  const note = (line: Line): void => {
    take(line);
    count += 1;
    lines.note(JSON.stringify(line));
  };
  return {
    boots: (station) => of(station).boots,
    told: (station) => of(station).told,
    foreign: (station) => of(station).foreign,
    hold: (station, boot, total) => add([station, 'held', boot, total]),
    logged: (station, boot, total) => note([station, 'logged', boot, total]),
    tell: (station, what) => add([station, 'told', what, 0]),
    falls: (station) => of(station).falls,
    setForeign: (station, boot) => add([station, 'foreign', boot, 0]),
    fall: (station, boot, base) =>
      add([station, 'fell', boot, base, (of(station).falls.get(boot)?.times ?? 0) + 1]),
    spared: (station) => (Object.hasOwn(spared, station) ? (spared[station] ?? null) : null),
    keepSpared: (station, totals) => {
      if (spared[station] === totals) return;
      spared[station] = totals;
      writeWhole(sparedFile, JSON.stringify(spared));
    },
    close: () => lines.close(),
  };
}
