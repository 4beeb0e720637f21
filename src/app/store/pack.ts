// The folded state as bytes for another tablet, and back.

import { emptyState, type FloorState, type FoldPosition } from '../../../shared/floor/state.ts';
import { packClosely, unpackValue } from '../../../shared/kit/pack.ts';
import { chainId, type Entry, isWithinLevels } from '../../../shared/log/entry.ts';
import { entrySchema } from '../../../shared/log/entry-schema.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { hashDraft } from '../../../shared/log/seal.ts';
import type { Bootstrap } from './bootstrap.ts';

/** What one tablet hands to another: the state at a place in folding order, and the entries after it. */
export interface BootstrapPack {
  readonly bootstrap: Bootstrap;
  readonly tail: readonly Entry[];
}

/** Levels of places and chain ends, and of the lists that they stand in. */
const PLACE_LEVELS = 4;

/** Bytes of a state. */
export function packBootstrap({ bootstrap, tail }: BootstrapPack): Uint8Array {
  return new TextEncoder().encode(
    JSON.stringify({ ...bootstrap, state: packClosely(bootstrap.state), tail }),
  );
}

/** Null where the bytes are no whole state of this fold: whatever is in doubt is left, since the log itself can be pulled. */
export function unpackBootstrap(bytes: Uint8Array, fold: string): BootstrapPack | null {
  try {
    const { tail, ...rest } = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
    const state = unpackValue(rest.state);
    const bootstrap = {
      fold: rest.fold,
      state,
      position: rest.position,
      count: rest.count,
      heads: rest.heads,
    };
    if (bootstrap.fold !== fold || !isState(state) || !Array.isArray(tail)) return null;
    if (!isPosition(bootstrap.position) || !isHeads(bootstrap.heads)) return null;
    // Whatever else stands in them is kept too.
    if (!isWithinLevels([bootstrap.position, bootstrap.heads], PLACE_LEVELS)) return null;
    // A chain is folded without a gap: as many entries as its numbers say, or something is missing.
    const held = bootstrap.heads.reduce((sum: number, head) => sum + head.seq, 0);
    if (bootstrap.count !== held) return null;
    const entries = tail.map((entry) => entrySchema.parse(entry));
    return goesOn(bootstrap as Bootstrap, entries)
      ? { bootstrap: bootstrap as Bootstrap, tail: entries }
      : null;
  } catch {
    return null;
  }
}

/** True where the tail comes after the state, each entry sealed, and to the one before it in its chain. */
function goesOn({ position, heads }: Bootstrap, tail: readonly Entry[]): boolean {
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

function isHeads(value: unknown): value is Bootstrap['heads'] {
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
