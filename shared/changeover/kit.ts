// What must be fetched for the next setup: per part the reels wanted, what the log knows off the line, what is short.
// Method: usage times panels, with an allowance for lost picks, against counted reels off the line; the fewest reels, fullest first.
// Refused: counting reels that stand on a line as free; they come off only with the changeover.

import { compareSlots } from '../setup/address.ts';
import { comparePlaces, placeOf } from '../setup/fold-places.ts';
import type { FloorState, Reel, Setup } from '../setup/state.ts';
import { partPerPanel } from '../setup/turns.ts';

/** One part of the pick list. */
export interface KitRow {
  readonly part: string;
  /** Where it goes, in walking order. */
  readonly slots: readonly string[];
  /** Parts for all panels, lost picks included, rounded up. */
  readonly needed: number;
  /** Stays on the line with the right part already, so nothing need be fetched to start. */
  readonly isOnLine: boolean;
  /** Reels to fetch, fullest first; at least one for each slot that is not loaded where there are that many. */
  readonly reels: readonly Reel[];
  readonly found: number;
  /** Parts missing in all reels found and on the line; 0 where there is enough. */
  readonly short: number;
  /** Reels of the part off the line that may not be used as they are; they count as none. */
  readonly spent: readonly Reel[];
  /** Reels of the part off the line whose count nobody knows. */
  readonly uncounted: number;
  /** Moisture level as the setup states it; null where it states none. */
  readonly msl: string | null;
}

/**
 * The pick list of a setup for a number of panels. `loss`: share of picks lost, 0 <= loss < 1. `isSpent`: whether a reel may not be used
 * as it is (its floor life is over, say). In walking order of the store, then of the first slot.
 */
export function kitList(
  state: FloorState,
  setup: Setup,
  more: {
    readonly panels: number;
    readonly loss: number;
    readonly isSpent?: (reel: Reel, part: string) => boolean;
  },
): readonly KitRow[] {
  const byPart = new Map<string, Setup['slots'][number][]>();
  for (const slot of setup.slots) {
    if (slot.perPanel > 0) byPart.set(slot.part, [...(byPart.get(slot.part) ?? []), slot]);
  }
  const free = freeReels(state);
  return [...byPart]
    .map(([part, slots]): KitRow => {
      const names = slots.map((slot) => slot.slot).sort(compareSlots);
      const perPanel = partPerPanel(slots);
      const needed = Math.ceil((perPanel * more.panels) / (1 - more.loss) - 1e-9);
      const loaded = names.filter((slot) => carries(state, setup, { slot, part }));
      const onLine = loaded.reduce((sum, slot) => sum + countOn(state, setup.line, slot), 0);
      const known = free.get(part) ?? [];
      const spent = known.filter((reel) => reel.count !== 0 && (more.isSpent?.(reel, part) ?? false));
      const all = known.filter((reel) => !spent.includes(reel));
      const counted = all
        .filter((reel) => (reel.count ?? 0) > 0)
        .sort((a, b) => (b.count ?? 0) - (a.count ?? 0));
      const reels: Reel[] = [];
      let found = onLine;
      for (const reel of counted) {
        if (found >= needed && reels.length >= names.length - loaded.length) break;
        reels.push(reel);
        found += reel.count ?? 0;
      }
      return {
        ...{ part, slots: names, needed, reels, found, short: Math.max(0, needed - found) },
        spent,
        isOnLine: loaded.length === names.length,
        uncounted: all.filter((reel) => reel.count === null).length,
        msl: slots.find((slot) => slot.msl !== undefined)?.msl ?? null,
      };
    })
    .sort(
      (a, b) => comparePlaces(placeIn(a), placeIn(b)) || compareSlots(a.slots[0] ?? '', b.slots[0] ?? ''),
    );
}

/** Where the first of a row's reels lies that has a place; empty where none has. */
function placeIn(row: Pick<KitRow, 'reels'>): string {
  return row.reels.map((reel) => placeOf(reel) ?? '').sort(comparePlaces)[0] ?? '';
}

/** Reels that stand on no slot, by part. */
function freeReels(state: FloorState): ReadonlyMap<string, readonly Reel[]> {
  const free = new Map<string, Reel[]>();
  for (const reel of state.reels.values()) {
    if (reel.at !== null || reel.part === null) continue;
    const there = free.get(reel.part);
    if (there) there.push(reel);
    else free.set(reel.part, [reel]);
  }
  return free;
}

function carries(state: FloorState, setup: Setup, { slot, part }: { slot: string; part: string }): boolean {
  return state.slots.get(`${setup.line}/${slot}`)?.tapes.at(-1)?.part === part;
}

/** What the slot's reels last counted; what a run has taken since is not looked at, so it is at most this much. */
function countOn(state: FloorState, line: string, slot: string): number {
  return (state.slots.get(`${line}/${slot}`)?.tapes ?? []).reduce((sum, tape) => sum + (tape.count ?? 0), 0);
}
