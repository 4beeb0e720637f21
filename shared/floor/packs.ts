// What do the parts come in that a package holds, or that a slot is fed from? Method: what somebody said of the package itself, else what the slot
// is fed from: as the sheet says it, as the feeder's type says it, as the plant's list says it of the part. What nobody said is tape. A tape is
// spliced; a tray or a tube is exchanged; what lies loose is poured over what is left, and both are possible until the feeder was emptied out.

import { typeOf } from './feeder-types.ts';
import type { EntryOf } from './kinds.ts';
import { type FloorState, type SlotState, slotKey, type Tape } from './state.ts';
import { joins, type PackageKind, type VerifyAct } from './vocabulary.ts';
import { wantedOn } from './wanted.ts';

/** Applies one entry to what packages are. */
export function foldPacks(state: FloorState, entry: EntryOf<'reel.packed' | 'bulk.purged'>): void {
  if (entry.kind === 'bulk.purged') {
    state.loose.delete(looseKey(entry.payload));
    return;
  }
  const { reel, comesIn, tray, tube } = entry.payload;
  state.packs.set(reel, {
    comesIn,
    ...(tray === undefined ? {} : { tray }),
    ...(tube === undefined ? {} : { tube }),
  });
  const at = state.reels.get(reel)?.at ?? null;
  const key = at === null ? '' : slotKey(at.line, at.slot);
  const there = state.slots.get(key);
  if (there)
    state.slots.set(key, {
      ...there,
      tapes: there.tapes.map((tape) => (tape.reel === reel ? comingIn(tape, comesIn) : tape)),
    });
}

/** The tape as it comes in something; tape itself is not written down. */
export function comingIn<T extends Pick<Tape, 'comesIn'>>(tape: T, kind: PackageKind): T {
  const { comesIn: _, ...rest } = tape;
  return (kind === 'tape' ? rest : { ...rest, comesIn: kind }) as T; // the same but for what may be absent
}

/** What a package is, where somebody said; null where nobody did, or there is none. */
export function kindOfPackage(state: Pick<FloorState, 'packs'>, reel: string | null): PackageKind | null {
  return reel === null ? null : (state.packs.get(reel)?.comesIn ?? null);
}

/** What feeds on a slot now: that which was put on last. */
export function kindOnSlot({ tapes }: Pick<SlotState, 'tapes'>): PackageKind {
  return tapes.at(-1)?.comesIn ?? 'tape';
}

/** What a part comes in by the plant's list, where that names something else than tape; null otherwise: most parts come on tape too. */
export function kindListed(state: Pick<FloorState, 'listed'>, part: string | null): PackageKind | null {
  const kind = state.listed.get(part ?? '')?.comesIn ?? null;
  return kind === 'tape' ? null : kind;
}

/** What a package off the line counts as: as somebody said of it, else as the plant's list says of its part, else tape. */
export function kindOfReel(
  state: Pick<FloorState, 'packs' | 'listed'>,
  { reel, part }: { readonly reel: string; readonly part: string | null },
): PackageKind {
  return kindOfPackage(state, reel) ?? kindListed(state, part) ?? 'tape';
}

/**
 * What is put on a slot by this scan: the package's own kind, else the slot's, the feeder's, the part's by the list, else that of what stands there. Of
 * those but the first none counts that is not added as `act` adds: what is spliced onto a tape is tape, whatever a list says.
 */
export function kindComing(
  state: FloorState,
  of: {
    readonly act: VerifyAct;
    readonly line: string;
    readonly setup: string;
    readonly slot: string;
    readonly feeder: string | null;
    readonly reel: string | null;
  },
): PackageKind {
  const said = kindOfPackage(state, of.reel);
  if (said !== null) return said;
  const there = state.slots.get(slotKey(of.line, of.slot));
  const standing = there ? kindOnSlot(there) : 'tape';
  const wanted = wantedOn(state, of.setup, of.slot);
  const expected =
    wanted?.comesIn ?? feederTakes(state, of.feeder) ?? kindListed(state, wanted?.part ?? null) ?? standing;
  return joins(of.act) && moreBy(expected) !== of.act ? standing : expected;
}

/** What a feeder feeds from by its type; null where that does not say. */
function feederTakes(state: FloorState, feeder: string | null): PackageKind | null {
  return typeOf(state, feeder)?.comesIn ?? null;
}

/** How more of the part comes onto a slot on which this stands. */
export function moreBy(kind: PackageKind): Extract<VerifyAct, 'splice' | 'exchange' | 'refill'> {
  if (kind === 'tape' || kind === 'cut-tape') return 'splice';
  return kind === 'bulk' ? 'refill' : 'exchange';
}

/** True for a slot on which lots lie over each other: what was put on first may still come last. */
export function isMixed(slot: Pick<SlotState, 'tapes'>): boolean {
  return slot.tapes.length > 1 && holdsLoose(slot);
}

/** True for a slot on which something lies loose, whatever was put on it since. */
export function holdsLoose({ tapes }: Pick<SlotState, 'tapes'>): boolean {
  return tapes.some(({ comesIn }) => comesIn === 'bulk');
}

/** Where what lies loose in a feeder is kept while it stands on no slot: by the feeder, or by the slot where it has no name. */
export function looseKey(of: {
  readonly line: string;
  readonly slot: string;
  readonly feeder: string | null;
}): string {
  return of.feeder ?? slotKey(of.line, of.slot);
}

/** A slot was emptied: what lay loose on it stays in its feeder, unless that was emptied out. `left`: parts in it, null where nobody knows. */
export function keepLoose(
  state: FloorState,
  there: SlotState,
  of: { readonly purged: boolean; readonly left: number | null },
): void {
  if (!holdsLoose(there)) return;
  const last = there.tapes.length - 1;
  if (of.purged) state.loose.delete(looseKey(there));
  else
    state.loose.set(
      looseKey(there),
      there.tapes.map((tape, at) => ({
        ...tape,
        count: at === last ? of.left : 0,
        sd: 0,
        basis: 'counted-down',
      })),
    );
}

/** What may lie in a feeder already when something loose is poured into it. */
export function looseIn(
  state: FloorState,
  of: { readonly line: string; readonly slot: string; readonly feeder: string | null },
): readonly Tape[] {
  return state.loose.get(looseKey(of)) ?? [];
}
