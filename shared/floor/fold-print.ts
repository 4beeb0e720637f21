// Which packages the plant gave an id, which labels it printed, and on which paper. A package that is named keeps all that was known of it:
// the name it had until then is replaced wherever it stands, and what another tablet writes under the old name later is of the new one.

import { entryId } from '../log/entry.ts';
import { goneAs, reelSeen } from './gone-reels.ts';
import type { EntryOf, FloorEntry } from './kinds.ts';
import { packageIdOf } from './package-name.ts';
import { entryInName, hasOwnId } from './reel-id.ts';
import type { FloorState, Reel } from './state.ts';
import type { LabelSubject } from './vocabulary.ts';

/** Kinds that this fold handles. */
type PrintEntry = EntryOf<'reel.named' | 'labels.printed' | 'labels.sized' | 'labels.size-withdrawn'>;

/** Applies one entry to names, prints and sizes. */
export function foldPrint(state: FloorState, entry: PrintEntry): void {
  switch (entry.kind) {
    case 'reel.named':
      name(state, entry.payload, entryId(entry));
      return;
    case 'labels.printed': {
      const { what, names } = entry.payload;
      for (const each of names) {
        const key = printKey(what, each);
        state.prints.set(key, { times: (state.prints.get(key)?.times ?? 0) + 1, atMs: entry.hlc.ms });
      }
      return;
    }
    case 'labels.sized':
      state.labelSizes.set(entry.payload.size, entry.payload);
      return;
    case 'labels.size-withdrawn':
      state.labelSizes.delete(entry.payload.size);
      return;
    default:
      entry satisfies never;
  }
}

/** Where a print stands in the map. */
export function printKey(what: LabelSubject, name: string): string {
  return `${what} ${name}`;
}

/** How often a label was given to a printer, as far as this log says. */
export function timesPrinted(state: Pick<FloorState, 'prints'>, what: LabelSubject, name: string): number {
  return state.prints.get(printKey(what, name))?.times ?? 0;
}

/** True for a package that came without an id: it has none yet, or the plant's own. Its maker's label then does not name it. */
export function cameWithoutId(state: Pick<FloorState, 'named'>, reel: string): boolean {
  return !hasOwnId(reel) || state.named.has(reel);
}

/**
 * The entry with the id that a package got since in the place of the name that it had: whoever wrote it had not heard of the id.
 * Entries about anything else are returned as they are.
 */
export function asNamed<E extends FloorEntry>(state: Pick<FloorState, 'named'>, entry: E): E {
  const { payload } = entry;
  if (!('reel' in payload) || typeof payload.reel !== 'string') return entry;
  const reel = idSince(state, payload.reel);
  if (entry.kind !== 'reel.merged')
    return reel === payload.reel ? entry : { ...entry, payload: { ...payload, reel } };
  const from = idSince(state, entry.payload.from);
  return reel === payload.reel && from === entry.payload.from
    ? entry
    : { ...entry, payload: { ...payload, reel, from } };
}

/** The id that a package got since it was first named; its name as it is where it got none. */
export function idSince({ named }: Pick<FloorState, 'named'>, name: string): string {
  if (hasOwnId(name)) return name;
  const id = idOf(name);
  return id !== null && named.get(id) === name ? id : name;
}

/** The id that the package of an old name gets; null where that names no entry. */
function idOf(was: string): string | null {
  const entry = entryInName(was);
  return entry !== null && /^.+\/[1-9]\d{0,14}$/.test(entry) ? packageIdOf(entry) : null;
}

function name(state: FloorState, facts: EntryOf<'reel.named'>['payload'], entry: string): void {
  const was = facts.was ?? `~${entry}`;
  const { reel } = facts;
  // An id that is not that of the package is none of ours; one that another package has already stays with that.
  if (idOf(was) !== reel || state.named.has(reel) || state.reels.has(reel)) return;
  state.named.set(reel, was);
  const { part, supplierPart, lot, dateCode, quantity, sd, basis } = facts;
  const asTold: Reel = {
    reel,
    part,
    supplierPart,
    lot,
    dateCode,
    count: quantity,
    sd,
    basis: basis ?? 'label',
    at: null,
  };
  const known = { ...reelSeen(state, { ...asTold, reel: was }), reel, ...goneAs(state, was, reel) };
  state.reels.delete(was);
  state.reels.set(reel, known);
  const byReel: readonly Map<string, unknown>[] = [
    state.exposures,
    state.expiries,
    state.labelTimes,
    state.packs,
    state.madeOf,
  ];
  for (const map of byReel) moveKey(map, was, reel);
  const { slots, takenOff, blocks, madeOf, conflicts, mended, carts, loose, ready, handovers } = state;
  const naming: readonly Map<string, unknown>[] = [
    slots,
    takenOff,
    blocks,
    madeOf,
    conflicts,
    mended,
    carts,
    loose,
    ready,
    handovers,
  ];
  for (const map of naming) replaceIn(map, was, reel);
}

function moveKey<V>(map: Map<string, V>, from: string, to: string): void {
  const value = map.get(from);
  if (value === undefined) return;
  map.delete(from);
  map.set(to, value);
}

function replaceIn<V>(map: Map<string, V>, from: string, to: string): void {
  for (const [key, value] of map) {
    const replaced = withText(value, from, to);
    if (replaced !== value) map.set(key, replaced);
  }
}

/** The value with one text in the place of another, however deep; the very same where it does not hold it. */
function withText<V>(value: V, from: string, to: string): V {
  if (value === from) return to as V; // both are texts
  if (value instanceof Map) {
    const copy = new Map(value);
    replaceIn(copy, from, to);
    return [...copy].some(([key, each]) => value.get(key) !== each) ? (copy as V) : value; // the same kinds of values
  }
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).map(([key, each]) => [key, withText(each, from, to)] as const);
  if (entries.every(([key, each]) => each === (value as Record<string, unknown>)[key])) return value;
  return (Array.isArray(value) ? entries.map(([, each]) => each) : Object.fromEntries(entries)) as V; // same keys, same kinds
}
