// Which reels has the plant used up so long ago that the state keeps no more of them than that? A plant uses up hundreds of thousands in a few
// years, and each new tablet would be handed all of them.
// Method: by a rule of the entries alone, as every tablet, the server and the command line must come to one state: as a run starts, what is seen to be
// used up is noted, and what was noted long enough ago leaves. A mark stays of it, 36 bits of hashes of its name: a reel that comes back is known as
// one that was used up, of which lot and floor life are not known, and a lead decides each time that it is to be put on (reason `reel-gone`), since
// nothing brings its floor life back. The trace keeps its lot (trace/whole-reels.ts). What a slot, a cart, a hold, a contradiction, a cut, a join, a
// block or a take-back may name stays whole. A mark of another reel fits once in some hundred thousand new ones: then a lead is asked without need.
// Refused: ids as they are, which are of any length; a filter of fixed size, which would fit more and more; to forget reels that are not used up,
// whose count and floor life nobody could give back; to take a reel that a lead let pass once for one of which all is known.

import { blockOn } from './blocks.ts';
import type { FloorState, Reel } from './state.ts';

/** How long a reel that was used up is kept whole, ms: longer than a tablet is away or a spool lies about. Chosen here. */
export const GONE_AFTER_MS = 30 * 24 * 3_600_000;

/** What marks are written in: twelve bits of a hash name a row, and 24 of another stand in it, six a sign. */
const SIGNS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const ROW_SIGNS = 2;
const MARK_SIGNS = 4;

type Known = Pick<FloorState, 'reels' | 'goneReels'>;

/** What the log has of a reel: as it was last seen, or no more than that it was used up long ago; undefined where nothing names it. */
export function reelOf(state: Known, name: string): Reel | undefined {
  return state.reels.get(name) ?? (isMarked(state, name) ? usedUp(name) : undefined);
}

/** True where the log names a reel, however long ago it was used up. */
export function isReelKnown(state: Known, name: string): boolean {
  return state.reels.has(name) || isMarked(state, name);
}

/** True for a reel that was used up long ago: its floor life and last day are not known, nor its lot where no label told it since. */
export function isLongGone(state: Known, name: string): boolean {
  return reelOf(state, name)?.gone === true;
}

/** What says of a record that its parts are of packages of which one was used up long ago; nothing where none was. */
export function goneAs(state: Known, ...names: readonly string[]): Pick<Reel, 'gone'> {
  return names.some((name) => isLongGone(state, name)) ? { gone: true } : {};
}

/**
 * A reel as the log has it, else as its label says. Of one that was used up long ago the label still tells what it is, where nothing did since it
 * came back, and not what is on it.
 */
export function reelSeen(state: Known, label: Reel): Reel {
  const known = reelOf(state, label.reel);
  if (!known?.gone) return known ?? label;
  return {
    ...known,
    part: known.part ?? label.part,
    supplierPart: known.supplierPart ?? label.supplierPart,
    lot: known.lot ?? label.lot,
    dateCode: known.dateCode ?? label.dateCode,
  };
}

/** Takes note that a reel is in use again: as it is used up anew, its time is counted anew. */
export function backInUse(state: Pick<FloorState, 'usedUp'>, reel: string): void {
  state.usedUp.delete(reel);
}

/** Takes out what was used up long ago. Called as a run starts; cost: one walk over the reels and over what stands on slots and carts. */
export function forgetReels(state: FloorState, nowMs: number): void {
  const named = namedElsewhere(state);
  for (const reel of state.usedUp.keys()) {
    const there = state.reels.get(reel);
    if (!there || !isUsedUp(state, there)) state.usedUp.delete(reel);
  }
  for (const reel of state.reels.values()) {
    if (!isUsedUp(state, reel)) continue;
    const sinceMs = state.usedUp.get(reel.reel);
    if (sinceMs === undefined) state.usedUp.set(reel.reel, nowMs);
    else if (nowMs - sinceMs >= GONE_AFTER_MS && !named.has(reel.reel) && blockOn(state, reel) === null)
      forget(state, reel.reel);
  }
}

/**
 * One that came off uncounted is reckoned to be empty, and parts may be on it yet. Nor does anybody put away, dry or bake an empty reel: its count is
 * wrong rather, or nobody has counted it yet.
 */
function isUsedUp(state: FloorState, { reel, at, count, cameOff, place }: Reel): boolean {
  if (at !== null || count !== 0 || cameOff || place !== undefined) return false;
  const air = state.exposures.get(reel)?.periods.at(-1)?.air;
  return air !== 'dry' && air !== 'bake';
}

function forget(state: FloorState, reel: string): void {
  const { reels, usedUp: noted, exposures, expiries, labelTimes, values, packs } = state;
  for (const map of [reels, noted, exposures, expiries, labelTimes, values, packs]) map.delete(reel);
  // Nobody can scan a name that only the log has; but an entry may yet give the package an id by it.
  mark(state, reel);
}

/** All texts of what may yet ask for a reel by its name. */
function namedElsewhere(state: FloorState): ReadonlySet<string> {
  const { slots, takenOff, conflicts, mended, holds, carts, loose, ready, madeOf, findings, blocks } = state;
  const texts = new Set<string>(madeOf.keys());
  addTexts([slots, takenOff, conflicts, mended, holds, carts, loose, ready, madeOf, findings, blocks], texts);
  return texts;
}

/** All texts in a value. */
export function addTexts(value: unknown, into: Set<string>): void {
  if (typeof value === 'string') into.add(value);
  else if (value instanceof Map) for (const each of value.values()) addTexts(each, into);
  else if (value !== null && typeof value === 'object')
    for (const each of Object.values(value)) addTexts(each, into);
}

/**
 * Two hashes of a text, 32 bits each: FNV-1a (draft-eastlake-fnv) with its prime and with another odd factor, mixed at the end as MurmurHash3 is,
 * both from memory. They need to spread names, and to keep nothing secret: SHA-256 would cost the first screen four kilobytes.
 */
function hashesOf(text: string): readonly [number, number] {
  let [one, other] = [0x811c9dc5, 0x9e3779b9];
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    one = Math.imul(one ^ code, 0x01000193);
    other = Math.imul(other ^ code, 0x85ebca6b);
  }
  return [mixed(one), mixed(other)];
}

function mixed(hash: number): number {
  const once = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  const twice = Math.imul(once ^ (once >>> 13), 0xc2b2ae35);
  return (twice ^ (twice >>> 16)) >>> 0;
}

/** The upper bits of a hash. */
function written(hash: number, signs: number): string {
  return Array.from({ length: signs }, (_, at) => SIGNS[(hash >>> (26 - 6 * at)) & 63]).join('');
}

function placeOfMark(name: string): { readonly row: string; readonly mark: string } {
  const [one, other] = hashesOf(name);
  return { row: written(one, ROW_SIGNS), mark: written(other, MARK_SIGNS) };
}

function marksIn(row: string): string[] {
  return row.match(/.{4}/g) ?? []; // MARK_SIGNS
}

/** In order, so that what came first does not show. */
function mark(state: FloorState, name: string): void {
  const place = placeOfMark(name);
  const there = marksIn(state.goneReels.get(place.row) ?? '');
  if (!there.includes(place.mark)) state.goneReels.set(place.row, [...there, place.mark].sort().join(''));
}

function isMarked({ goneReels }: Known, name: string): boolean {
  if (goneReels.size === 0) return false;
  const place = placeOfMark(name);
  return marksIn(goneReels.get(place.row) ?? '').includes(place.mark);
}

function usedUp(reel: string): Reel {
  const facts = { part: null, supplierPart: null, lot: null, dateCode: null };
  return { reel, ...facts, count: 0, sd: 0, basis: 'counted-down', at: null, gone: true };
}
