// Histories of packages that are cut, joined, loaded, spliced and used up, told as a log, with every part known: which packages it was in and
// which panel it came on. The line is one slot of two parts a panel, counted where it is placed; every count that is told is true.

import { packageIdOf } from '../../../shared/floor/package-name.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import {
  beginStory,
  counted,
  idOf,
  type Story,
  started,
  tellPlant,
  unloaded,
  verified,
} from '../floor/story.ts';

export const slot = 'M1-F-001';
const PER_PANEL = 2;

/** One part: the packages through which it surely went, all that it was in after whatever join, and the lot that it is of. */
export interface Part {
  readonly through: ReadonlySet<string>;
  readonly in: ReadonlySet<string>;
  readonly lot: string;
}

/** What is done: numbers choose among what there is. */
export type Deed = readonly [
  act: 'put' | 'load' | 'splice' | 'unload' | 'back' | 'cut' | 'join' | 'build' | 'run',
  one: number,
  other: number,
];

interface Package {
  readonly reel: string;
  readonly lot: string;
  /** What its label says. */
  readonly told: string | null;
  readonly parts: Part[];
}

/** What the deeds came to. */
export interface Played {
  readonly entries: readonly Entry[];
  readonly packages: readonly string[];
  readonly lots: readonly string[];
  /** `run panel` -> the parts that it got. */
  readonly panels: ReadonlyMap<string, readonly Part[]>;
}

interface World {
  readonly story: Story;
  readonly packages: Package[];
  readonly on: Package[];
  readonly panels: Map<string, readonly Part[]>;
  /** The newest unload, while nothing was put on since, and what it took off. */
  off: { readonly entry: string; readonly was: Package } | null;
  run: number;
  built: number;
  second: number;
  cuts: number;
  lots: number;
}

const both = (set: ReadonlySet<string>, name: string) => new Set([...set, name]);
/** Packages that hands may take, the newest first. */
const free = ({ packages, on }: World) =>
  [...packages].reverse().filter((each) => !on.includes(each) && each.parts.length > 0);
const choose = <T>(list: readonly T[], at: number): T | undefined => list[at % Math.max(1, list.length)];

function facts({ reel, told, parts }: Package) {
  return { reel, lot: told, quantity: parts.length, part: 'R-100' } as const;
}

/** One package more: of a new lot, or of the lot before. */
function put(world: World, one: number, other: number): void {
  if (one % 3 !== 0 || world.lots === 0) world.lots += 1;
  const [reel, lot] = [`K-${world.packages.length + 1}`, `LT-${world.lots}`];
  const parts = Array.from(
    { length: 20 + (other % 40) },
    (): Part => ({ through: new Set([reel]), in: new Set([reel]), lot }),
  );
  const made = { reel, lot, told: lot, parts };
  world.packages.push(made);
  const { quantity } = facts(made);
  world.story.tell(
    'reel.put',
    { reel, part: 'R-100', supplierPart: null, lot, dateCode: null, quantity, place: 'A1', via: 'typed' },
    { tablet: 'T2', at: world.second },
  );
}

/** A piece of its own id, by a tablet whose clock may be ahead. */
function cut(world: World, one: number, other: number): void {
  const from = choose(free(world), one);
  if (!from || from.parts.length < 2) return;
  world.cuts += 1;
  const reel = packageIdOf(`T3/T3-life-1/${world.cuts}`);
  // Nobody knows which of them come off where they lie.
  const taken = from.parts
    .splice(other % from.parts.length, 1 + (other % 25))
    .map((part): Part => ({ ...part, through: both(part.through, reel), in: both(part.in, reel) }));
  world.story.tell(
    'reel.split',
    {
      reel: from.reel,
      into: reel,
      part: 'R-100',
      lot: from.told,
      quantity: taken.length,
      left: from.parts.length,
      via: 'typed',
    },
    { tablet: 'T3', at: world.second + (other % 2) * 40 },
  );
  // A piece may bear no lot.
  world.packages.push({ reel, lot: from.lot, told: one % 2 === 0 ? from.told : null, parts: taken });
}

function join(world: World, one: number, other: number): void {
  const kept = choose(free(world), one);
  const gone = choose(free(world), other);
  if (!kept || !gone || kept === gone) return;
  const came = gone.parts.splice(0).map((part): Part => ({ ...part, in: both(part.in, kept.reel) }));
  // Head or tail, as hands do it.
  if (other % 2 === 0) kept.parts.push(...came);
  else kept.parts.unshift(...came);
  world.story.tell(
    'reel.merged',
    {
      reel: kept.reel,
      from: gone.reel,
      part: 'R-100',
      lot: kept.told,
      quantity: kept.parts.length,
      sd: 0,
      basis: 'combined',
      via: 'typed',
    },
    { tablet: 'T2', at: world.second },
  );
}

function mount(world: World, act: 'load' | 'splice', one: number): void {
  const { story, on } = world;
  if (act === 'load') unload(world);
  const next = choose(free(world), one % 5);
  if (!next || (act === 'load') !== (on.length === 0)) return;
  story.tell(
    'reel.verified',
    verified(slot, 'R-100', {
      ...facts(next),
      act,
      run: runOf(world),
      ...(act === 'splice' ? { cut: 0 } : {}),
    }),
    {
      at: world.second,
    },
  );
  on.push(next);
  world.off = null;
}

function unload(world: World): void {
  const [last, ...others] = [...world.on].reverse();
  if (!last || others.some(({ parts }) => parts.length > 0)) return;
  const entry = world.story.tell(
    'reel.unloaded',
    unloaded(slot, { ...facts(last), run: runOf(world), basis: 'machine' }),
    {
      at: world.second,
    },
  );
  world.on.splice(0);
  world.off = others.length > 0 ? null : { entry: idOf(entry), was: last };
}

/** An unload is taken back: the reel was on its slot all along, whatever was cut off it or joined with it since. It is counted then. */
function back(world: World): void {
  const { story, off, second } = world;
  if (off === null || off.was.parts.length === 0) return;
  story.tell('entry.corrected', { of: off.entry, line: 'L1', slot, reason: 'slip' }, { at: second });
  const count = {
    ...facts(off.was),
    line: 'L1',
    slot,
    sd: 0,
    basis: 'machine',
    panels: world.built,
  } as const;
  story.tell('reel.counted', count, { at: second });
  world.on.push(off.was);
  world.off = null;
}

const runOf = ({ run }: World) => `r${run}`;

function build(world: World, panels: number): void {
  for (let panel = 0; panel < panels; panel++) {
    if (world.on.reduce((sum, { parts }) => sum + parts.length, 0) < PER_PANEL) return;
    const got: Part[] = [];
    for (const { parts } of world.on) got.push(...parts.splice(0, PER_PANEL - got.length));
    world.built += 1;
    world.second += 1;
    world.panels.set(`${runOf(world)} ${world.built}`, got);
    world.story.tell('panels.counted', counted(runOf(world), 1), { at: world.second });
  }
}

function begin(world: World): void {
  if (world.run > 0) {
    const ended = { run: runOf(world), line: 'L1', panels: world.built, note: '' };
    world.story.tell('run.ended', ended, { at: world.second });
    world.second += 1;
  }
  world.run += 1;
  world.built = 0;
  world.story.tell('run.started', started(runOf(world)), { at: world.second });
}

/** Does the deeds one after the other; what cannot be done is left. */
export function play(deeds: readonly Deed[]): Played {
  const story = beginStory();
  tellPlant(story, { rules: { labelShare: 0 } });
  story.tell('line.tape-ruled', { line: 'L1', trailerMm: 0, leaderMm: null });
  story.tell('line.panels-ruled', {
    line: 'L1',
    machines: [{ machine: 'M1', least: 0, most: 0 }],
    missed: 0,
  });
  const world: World = {
    story,
    packages: [],
    on: [],
    panels: new Map(),
    run: 0,
    built: 0,
    off: null,
    second: 20,
    cuts: 0,
    lots: 0,
  };
  begin(world);
  for (const [act, one, other] of deeds) {
    world.second += 2;
    if (act === 'put') put(world, one, other);
    else if (act === 'cut') cut(world, one, other);
    else if (act === 'join') join(world, one, other);
    else if (act === 'unload') unload(world);
    else if (act === 'back') back(world);
    else if (act === 'build') build(world, 1 + (one % 9));
    else if (act === 'run') begin(world);
    else mount(world, act, one);
  }
  return {
    entries: [...story.entries].sort(compareEntries),
    packages: world.packages.map(({ reel }) => reel),
    lots: [...new Set(world.packages.map(({ lot }) => lot))],
    panels: world.panels,
  };
}
