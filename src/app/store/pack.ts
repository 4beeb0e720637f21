// The folded state as bytes for another tablet, and back. Method: JSON in which maps and sets are marked. The browser's own
// structured clone was passed over: it has no bytes that may leave the page.

import { chainId, type Entry, entrySchema } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { hashDraft } from '../../../shared/log/seal.ts';
import { emptyState, type FloorState, type FoldPosition } from '../../../shared/setup/state.ts';
import type { Borrowed } from './borrowed.ts';

/** What one tablet hands to another: the state at a place in folding order, and the entries after it. */
export interface Handed {
  readonly borrowed: Borrowed;
  readonly tail: readonly Entry[];
}

/** Marks an object that stands for something else; a plain object with a key of this name is wrapped. */
const MARK = '$';

/** Bytes of a state. */
export function packHanded({ borrowed, tail }: Handed): Uint8Array {
  return new TextEncoder().encode(JSON.stringify({ ...borrowed, state: packValue(borrowed.state), tail }));
}

/** Null where the bytes are no whole state of this fold: whatever is in doubt is left, since the log itself can be pulled. */
export function unpackHanded(bytes: Uint8Array, fold: string): Handed | null {
  try {
    const { tail, ...rest } = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
    const state = unpackValue(rest.state);
    const borrowed = {
      fold: rest.fold,
      state,
      position: rest.position,
      count: rest.count,
      heads: rest.heads,
    };
    if (borrowed.fold !== fold || !isState(state) || !Array.isArray(tail)) return null;
    if (!isPosition(borrowed.position) || !isHeads(borrowed.heads)) return null;
    // A chain is folded without a gap: as many entries as its numbers say, or something is missing.
    const held = borrowed.heads.reduce((sum: number, head) => sum + head.seq, 0);
    if (borrowed.count !== held) return null;
    const entries = tail.map((entry) => entrySchema.parse(entry));
    return goesOn(borrowed as Borrowed, entries) ? { borrowed: borrowed as Borrowed, tail: entries } : null;
  } catch {
    return null;
  }
}

/** True where the tail comes after the state, each entry sealed, and to the one before it in its chain. */
function goesOn({ position, heads }: Borrowed, tail: readonly Entry[]): boolean {
  const ends = new Map<string, { readonly seq: number; readonly hash?: string }>(
    heads.map((head) => [chainId(head), head]),
  );
  return tail.every((entry) => {
    const end = ends.get(chainId(entry));
    ends.set(chainId(entry), entry);
    return (
      compareEntries(entry, position) > 0 &&
      entry.seq === (end?.seq ?? 0) + 1 &&
      (end?.hash === undefined || end.hash === entry.prev) &&
      hashDraft(entry) === entry.hash
    );
  });
}

/** A value as JSON can hold it: maps and sets marked. */
export function packValue(value: unknown): unknown {
  if (value instanceof Map)
    return { [MARK]: 'map', of: [...value].map(([key, item]) => [key, packValue(item)]) };
  if (value instanceof Set) return { [MARK]: 'set', of: [...value].map(packValue) };
  if (Array.isArray(value)) return value.map(packValue);
  if (typeof value !== 'object' || value === null) return value;
  const packed: Record<string, unknown> = {};
  for (const [key, item] of Object.entries(value)) packed[key] = packValue(item);
  return MARK in packed ? { [MARK]: 'plain', of: packed } : packed;
}

function unpackValue(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(unpackValue);
  if (typeof value !== 'object' || value === null) return value;
  const { [MARK]: mark, of } = value as Record<string, unknown>; // an object out of JSON
  if (mark === undefined) return unpackObject(value);
  if (mark === 'plain') return unpackObject(of as object); // written above; anything else throws or fails the checks
  if (!Array.isArray(of)) throw new TypeError('Cannot read a state: a map or set must hold a list');
  if (mark === 'set') return new Set(of.map(unpackValue));
  return new Map(of.map(([key, item]: [unknown, unknown]) => [key, unpackValue(item)]));
}

function unpackObject(value: object): object {
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, unpackValue(item)]));
}

/** The same containers under the same names as an empty state; what is in them is as the sender's fold made it. */
function isState(value: unknown): value is FloorState {
  if (typeof value !== 'object' || value === null) return false;
  const wanted = Object.entries(emptyState());
  const there = value as Record<string, unknown>; // looked at below
  return (
    Object.keys(there).length === wanted.length &&
    wanted.every(([key, container]) => there[key]?.constructor === container.constructor)
  );
}

function isPosition(value: unknown): value is FoldPosition {
  const position = value as FoldPosition | null; // looked at below
  return (
    typeof position === 'object' &&
    Number.isSafeInteger(position?.hlc?.ms) &&
    Number.isSafeInteger(position?.hlc?.n) &&
    isChainEnd(position)
  );
}

function isHeads(value: unknown): value is Borrowed['heads'] {
  return Array.isArray(value) && value.every(isChainEnd);
}

function isChainEnd(value: unknown): boolean {
  const end = value as Partial<FoldPosition> | null; // looked at below
  return (
    typeof end?.tablet === 'string' &&
    typeof end.epoch === 'string' &&
    Number.isSafeInteger(end.seq) &&
    Number(end.seq) > 0
  );
}
