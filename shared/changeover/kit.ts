// What must be fetched for the next setup: per part the reels wanted, what the log knows off the line, what is short.
// Method: usage times panels, with an allowance for lost picks, against the reels that stay on this line, move on it or come off it, each
// with what the job that runs now will leave of it, and counted reels off the line; the fewest reels, fullest first.
// Refused: counting reels of other lines as free; taking what stands here for missing because it has yet to be moved.

import { compareSlots } from '../floor/address.ts';
import { slotEstimate } from '../floor/estimate.ts';
import { comparePlaces, placeOf } from '../floor/fold-places.ts';
import { perPanelOf } from '../floor/left.ts';
import { isBlocked } from '../floor/slot-right.ts';
import { type FloorState, type Reel, type Setup, type SlotState, slotKey } from '../floor/state.ts';
import { partPerPanel } from '../floor/turns.ts';
import { diffSetups } from './diff.ts';
import { loadedFor } from './loaded.ts';

/** A reel of the part that stands on this line. */
export interface ReelHere {
  /** As on its tape: its own id, else `~` and the entry that named it. */
  readonly reel: string;
  readonly slot: string;
  /** Where it will stand: its own slot where it stays; null where it comes off, or stays unused where it is. */
  readonly to: string | null;
  /** Parts left once the job that runs now is done, as far as is known, whole; null where its count is not known. */
  readonly left: number | null;
}

/** One part of the pick list. */
export interface KitRow {
  readonly part: string;
  /** Where it goes, in walking order. */
  readonly slots: readonly string[];
  /** Parts for all panels, lost picks included, rounded up. */
  readonly needed: number;
  /** Every slot of the part gets a reel that stands on the line already, so nothing need be fetched to start. */
  readonly isOnLine: boolean;
  /** Reels of the part on this line, those that stay or move first, each group in walking order. */
  readonly here: readonly ReelHere[];
  /** Reels to fetch, fullest first; at least one for each slot that is not loaded where there are that many. */
  readonly reels: readonly Reel[];
  readonly found: number;
  /** Parts missing in all reels found and on the line, those without a count left out; 0 where there is enough. */
  readonly short: number;
  /** Reels of the part, on the line or off it, that may not be used as they are; they count as none. */
  readonly spent: readonly Reel[];
  /** Reels of the part, on the line or off it, whose count nobody knows. */
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
  const here = reelsHere(state, setup);
  return [...byPart]
    .map(([part, slots]): KitRow => {
      const names = slots.map((slot) => slot.slot).sort(compareSlots);
      const perPanel = partPerPanel(slots);
      const needed = Math.ceil((perPanel * more.panels) / (1 - more.loss) - 1e-9);
      const isSpent = (reel: Reel) => reel.count !== 0 && (more.isSpent?.(reel, part) ?? false);
      const onLine = here.get(part) ?? [];
      const spentHere = onLine.flatMap(({ reel }) => state.reels.get(reel) ?? []).filter(isSpent);
      const standing = onLine.filter(({ reel }) => !spentHere.some((spent) => spent.reel === reel));
      const served = standing.filter(({ to }) => to !== null).length;
      const known = free.get(part) ?? [];
      const spentOff = known.filter(isSpent);
      const all = known.filter((reel) => !spentOff.includes(reel));
      const counted = all
        .filter((reel) => (reel.count ?? 0) > 0)
        .sort((a, b) => (b.count ?? 0) - (a.count ?? 0));
      const reels: Reel[] = [];
      let found = standing.reduce((sum, { left }) => sum + (left ?? 0), 0);
      for (const reel of counted) {
        if (found >= needed && reels.length >= names.length - served) break;
        reels.push(reel);
        found += reel.count ?? 0;
      }
      return {
        ...{ part, slots: names, needed, reels, found, short: Math.max(0, needed - found) },
        spent: [...spentHere, ...spentOff],
        here: standing,
        isOnLine: served === names.length,
        uncounted:
          all.filter((reel) => reel.count === null).length +
          standing.filter(({ left }) => left === null).length,
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

/** Reels on the setup's line by the part that they will serve. Where the change cannot be planned, only what is right already. */
function reelsHere(state: FloorState, setup: Setup): ReadonlyMap<string, readonly ReelHere[]> {
  const { line } = setup;
  const { loaded, rule } = loadedFor(state, line, setup.setup);
  const wanted = setup.slots.map(({ slot, part, positions }) => ({ slot, part, width: positions }));
  const diff = diffSetups(loaded, wanted, undefined, rule);
  const partOn = new Map(setup.slots.map(({ slot, part }) => [slot, part]));
  const placed = diff.ok
    ? [...diff.value.keep.map(({ slot }) => [slot, slot] as const), ...moved(diff.value.move)]
    : loaded.flatMap((one) => (rule.stays(one, one) ? [[one.slot, one.slot] as const] : []));
  const here = new Map<string, ReelHere[]>();
  const add = (part: string, reel: ReelHere) => here.set(part, [...(here.get(part) ?? []), reel]);
  const on = (slot: string) => state.slots.get(slotKey(line, slot));
  for (const [slot, to] of placed) {
    const there = on(slot);
    if (there) add(partOn.get(to) ?? '', reelOn(state, there, to));
  }
  for (const { slot } of diff.ok ? [...diff.value.takeOut, ...diff.value.stay] : []) {
    const there = on(slot);
    const part = there?.tapes.at(-1)?.part;
    if (there && part && !isBlocked(state, there)) add(part, reelOn(state, there, null));
  }
  return here;
}

function reelOn(state: FloorState, there: SlotState, to: string | null): ReelHere {
  const reel = there.tapes.at(-1)?.reel ?? '';
  return { reel, slot: there.slot, to, left: leftAfterRun(state, there) };
}

function moved(moves: readonly { readonly from: string; readonly to: string }[]) {
  return moves.map(({ from, to }) => [from, to] as const);
}

/**
 * Parts that the line's present run leaves on a slot, whole; null where the count is not known. Of slots used in turn each is taken to
 * feed the rest alone, so that it is rather too little.
 */
function leftAfterRun(state: FloorState, loaded: SlotState): number | null {
  const { parts, loss } = slotEstimate(state, loaded);
  if (parts === null) return null;
  const run = state.runs.get(state.current.get(loaded.line) ?? '');
  const panels = run ? Math.max(0, run.panelsWanted - run.done) : 0;
  const picks = run
    ? (panels * perPanelOf(state, run.setup, loaded.slot)) / (1 - loss.alpha / (loss.alpha + loss.beta))
    : 0;
  return Math.max(0, Math.floor(parts - picks));
}
