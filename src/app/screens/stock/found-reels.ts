// Which reels does a search find, and which of them are shown? Twenty thousand packages are looked through at every letter typed.
// Method: the text of a reel's record is made once, since records are replaced and never changed; of what is found only those that are shown are
// put in order. All of it goes in steps, between which the page draws and answers. Refused: sorting all of them at each letter.

import { blockReasons } from '../../../../shared/floor/fits.ts';
import { placeOf } from '../../../../shared/floor/fold-places.ts';
import { reelOf } from '../../../../shared/floor/gone-reels.ts';
import { sortByPlaceSteps } from '../../../../shared/floor/place-order.ts';
import type { FloorState, Reel } from '../../../../shared/floor/state.ts';
import { type LifeAsked, reelLife } from '../../../../shared/moisture/reel-life.ts';

/** What the list is narrowed to. */
export const reelFilters = ['all', 'store', 'line', 'opened', 'blocked'] as const;
export type ReelFilter = (typeof reelFilters)[number];

interface Known {
  readonly text: string;
  /** Part, then id: the order of the list. */
  readonly key: string;
}

const known = new WeakMap<Reel, Known>();

function knownOf(reel: Reel): Known {
  const there = known.get(reel);
  if (there) return there;
  const { part, supplierPart, lot, dateCode, at } = reel;
  const text = [reel.reel, part, supplierPart, lot, dateCode, at?.slot, placeOf(reel)]
    .join(' ')
    .toLowerCase();
  const made = { text, key: `${part ?? ''}\u0000${reel.reel}` };
  known.set(reel, made);
  return made;
}

/** True for a reel with something left, off the line. */
function isInStore({ at, count }: Reel): boolean {
  return at === null && count !== 0;
}

function isIn(floor: FloorState, reel: Reel, filter: ReelFilter): boolean {
  switch (filter) {
    case 'all':
      return true;
    case 'store':
      return isInStore(reel);
    case 'line':
      return reel.at !== null;
    case 'opened':
      // Its floor life runs, or stands only where it lies dry.
      return reel.count !== 0 && floor.exposures.has(reel.reel);
    case 'blocked':
      return floor.blocks.size > 0 && blockReasons(floor, reel).length > 0;
    default:
      return filter satisfies never;
  }
}

/** What a search found. */
export interface FoundReels {
  /** The first of them in the order of the list. */
  readonly shown: readonly Reel[];
  readonly count: number;
}

/** What is asked for. */
interface AskedReels {
  readonly query: string;
  readonly filter: ReelFilter;
  /** So many are shown. */
  readonly most: number;
}

/**
 * Reels that hold every word of the query, the first `most` of them by part and id; one that was used up long ago by its whole id. Linear in the
 * reels, in steps; what changes between two of them may be in or not.
 */
export function* findSteps(floor: FloorState, asked: AskedReels): Generator<undefined, FoundReels> {
  const words = asked.query
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const first = new Smallest(asked.most);
  let count = 0;
  let at = 0;
  for (const reel of floor.reels.values()) {
    at += 1;
    if (at % AT_ONCE === 0) yield;
    if (asked.filter !== 'all' && !isIn(floor, reel, asked.filter)) continue;
    const { text, key } = knownOf(reel);
    if (!words.every((word) => text.includes(word))) continue;
    count += 1;
    first.add(reel, key);
  }
  const name = asked.query.trim();
  const gone = asked.filter !== 'all' || floor.reels.has(name) ? undefined : reelOf(floor, name);
  if (gone) first.add(gone, knownOf(gone).key);
  return { shown: first.list(), count: gone ? count + 1 : count };
}

/** When an opened reel's floor life ends, or was over at the latest (ms since 1970); infinite where nothing ends. */
export function lifeEndOf(floor: FloorState, reel: Reel, asked: LifeAsked): number {
  return reelLife(floor, reel.reel, asked)?.endsByMs ?? Number.POSITIVE_INFINITY;
}

/** Opened ones looked through for the first that end. */
const MOST_OPENED = 2000;
/** Ends of floor lives that a step works out. */
const ENDS_AT_ONCE = 20;

/** As `findSteps()`; opened reels by `endOf`, the moment at which their floor life ends. */
export function* listSteps(
  floor: FloorState,
  asked: AskedReels & { readonly endOf: (reel: Reel) => number },
): Generator<undefined, FoundReels> {
  if (asked.filter !== 'opened') return yield* findSteps(floor, asked);
  const found = yield* findSteps(floor, { ...asked, most: MOST_OPENED });
  const ends: { readonly reel: Reel; readonly endMs: number }[] = [];
  for (const reel of found.shown) {
    ends.push({ reel, endMs: asked.endOf(reel) });
    if (ends.length % ENDS_AT_ONCE === 0) yield;
  }
  ends.sort((a, b) => (a.endMs === b.endMs ? 0 : a.endMs - b.endMs));
  return { shown: ends.slice(0, asked.most).map(({ reel }) => reel), count: found.count };
}

/** The reels with the smallest keys, in order: kept in a list that is cut back now and then. */
class Smallest {
  readonly #most: number;
  #kept: { readonly reel: Reel; readonly key: string }[] = [];
  #limit: string | null = null;

  constructor(most: number) {
    this.#most = most;
  }

  add(reel: Reel, key: string): void {
    if (this.#limit !== null && key > this.#limit) return;
    this.#kept.push({ reel, key });
    if (this.#kept.length >= this.#most * 4) this.#cut();
  }

  list(): readonly Reel[] {
    this.#cut();
    return this.#kept.map(({ reel }) => reel);
  }

  #cut(): void {
    this.#kept.sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
    this.#kept.length = Math.min(this.#kept.length, this.#most);
    if (this.#kept.length === this.#most) this.#limit = this.#kept.at(-1)?.key ?? null;
  }
}

/** What lies at one place. */
export interface PlaceHeld {
  readonly place: string;
  readonly reels: number;
  /** Different parts there. */
  readonly parts: number;
}

/** Reels that a step looks at. */
const AT_ONCE = 250;

/**
 * Every place at which something lies or that has an air of its own, in walking order; empty packages lie nowhere. Linear in the reels, in
 * steps; what changes between two of them may be in or not.
 */
export function* placeSteps(floor: FloorState): Generator<undefined, readonly PlaceHeld[]> {
  // Most places hold a few parts: a list is looked through faster than a set is made.
  const held = new Map<string, { reels: number; parts: string[] | Set<string> }>();
  for (const place of floor.placeAirs.keys()) held.set(place, { reels: 0, parts: [] });
  let at = 0;
  for (const reel of floor.reels.values()) {
    at += 1;
    if (at % AT_ONCE === 0) yield;
    const place = placeOf(reel);
    if (place === null || reel.count === 0) continue;
    const there = held.get(place);
    const part = reel.part ?? reel.supplierPart ?? '';
    if (there) {
      there.reels += 1;
      there.parts = withPart(there.parts, part);
    } else held.set(place, { reels: 1, parts: [part] });
  }
  const places = [...held].map(([place, { reels, parts }]) => ({
    place,
    reels,
    parts: Array.isArray(parts) ? parts.length : parts.size,
  }));
  return yield* sortByPlaceSteps(places, ({ place }) => place);
}

/** Parts of a place that are still kept as a list. */
const LISTED = 24;

function withPart(parts: string[] | Set<string>, part: string): string[] | Set<string> {
  if (!Array.isArray(parts)) return parts.add(part);
  if (parts.includes(part)) return parts;
  parts.push(part);
  return parts.length > LISTED ? new Set(parts) : parts;
}
