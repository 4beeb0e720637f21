// The trace's index as it is kept in the store: what has changed since it was last written, and the index again from that.
// Method: the state's values never change in place, so what differs by identity is what has to be written.

import { FOLD_VERSION } from '../../../shared/floor/fold-version.ts';
import { copyState, type FloorState } from '../../../shared/floor/state.ts';
import { packValue, unpackValue } from '../../../shared/kit/pack.ts';
import type { OrderKey } from '../../../shared/log/order.ts';
import { asAsked } from '../../../shared/trace/question.ts';
import type { Stretch, TraceIndex } from '../../../shared/trace/stretches.ts';
import type { TraceRow, TraceStretch } from '../stores/store.ts';

/** How far the index goes. */
export interface TracePlace {
  /** Entries up to this position of the log were looked at. */
  readonly untilPos: number;
  /** The newest entry of them in the index, in folding order; null for none. */
  readonly position: OrderKey | null;
  /** Entries in the index. */
  readonly count: number;
}

/** The part under which open stretches stand; the other parts are the state's own. */
const OPEN = 'open stretches';
/** Sets have keys only. */
const MEMBER = 'true';

const textOf = (value: unknown) => JSON.stringify(packValue(value));

/** The rows that bring what is written from one index to another. */
export function changedRows(
  written: { readonly state: FloorState; readonly open: ReadonlyMap<string, string> },
  index: TraceIndex,
): {
  readonly put: readonly TraceRow[];
  readonly drop: readonly Pick<TraceRow, 'part' | 'key'>[];
  readonly open: ReadonlyMap<string, string>;
} {
  const put: TraceRow[] = [];
  const drop: Pick<TraceRow, 'part' | 'key'>[] = [];
  const parts = new Map<string, ReadonlyMap<string, unknown> | ReadonlySet<string>>(
    Object.entries(written.state),
  );
  for (const [part, container] of Object.entries(index.state) as [
    string,
    ReadonlyMap<string, unknown> | ReadonlySet<string>,
  ][]) {
    const before = parts.get(part);
    for (const [key, value] of container.entries()) {
      if (!before?.has(key))
        put.push({ part, key, value: container instanceof Set ? MEMBER : textOf(value) });
      else if (before instanceof Map && before.get(key) !== value)
        put.push({ part, key, value: textOf(value) });
    }
    for (const key of before?.keys() ?? []) if (!container.has(key)) drop.push({ part, key });
  }
  // Open stretches do change in place: their texts are compared.
  const open = new Map([...index.open].map(([key, slot]) => [key, textOf(slot)]));
  for (const [key, value] of open) if (written.open.get(key) !== value) put.push({ part: OPEN, key, value });
  for (const key of written.open.keys()) if (!open.has(key)) drop.push({ part: OPEN, key });
  return { put, drop, open };
}

/** What `changedRows` compares with: the index as it stands. */
export function asWritten(index: TraceIndex): {
  readonly state: FloorState;
  readonly open: ReadonlyMap<string, string>;
} {
  return {
    state: copyState(index.state),
    open: new Map([...index.open].map(([key, slot]) => [key, textOf(slot)])),
  };
}

/** An index that rows are put into. */
export function putRows(index: TraceIndex, rows: readonly TraceRow[]): void {
  const parts = index.state as unknown as Record<string, Map<string, unknown> | Set<string>>; // named below
  for (const { part, key, value } of rows) {
    if (part === OPEN) {
      const slot = unpackValue(JSON.parse(value)) as Map<string, Stretch>; // written above only
      index.open.set(key, slot);
      index.stretches.push(...slot.values());
      continue;
    }
    const container = parts[part];
    if (container instanceof Set) container.add(key);
    else container?.set(key, unpackValue(JSON.parse(value)));
  }
}

/** A stretch as the store keeps it: what is looked for in any letter case stands in one, and the body as it was. */
export function toRow(stretch: Stretch): TraceStretch {
  const { run, slot, feeder, part, lot, who, at } = stretch;
  const inAnyCase = (fact: string | null) => (fact === null ? null : asAsked(fact));
  return {
    run,
    slot: asAsked(slot),
    feeder: inAnyCase(feeder),
    // One without an id is found by what the log calls it.
    reel: inAnyCase(stretch.reel ?? stretch.unnamed ?? null),
    part: asAsked(part),
    lot: inAnyCase(lot),
    who,
    atMs: Date.parse(at),
    body: textOf(stretch),
  };
}

/** The stretch that `toRow` wrote. */
export function fromBody(body: string): Stretch {
  return unpackValue(JSON.parse(body)) as Stretch; // written above only
}

/** Names what folded the index: another version of it makes the index anew. Bump the first number when stretches change. */
const FOLD = `trace-4 floor-${FOLD_VERSION}`;

/** A place as text. */
export function placeText(place: TracePlace): string {
  return JSON.stringify({ fold: FOLD, ...place });
}

/** The place; null for none, or for one of another fold. */
export function readPlaceText(text: string | null): TracePlace | null {
  if (text === null) return null;
  const { fold: of, untilPos, position, count } = JSON.parse(text) as TracePlace & { readonly fold: string }; // written above only
  return of === FOLD ? { untilPos, position, count } : null;
}
