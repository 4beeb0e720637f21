// What must be fetched for the next setup: per part the reels wanted, what the log knows off the line, what is short.
// Method: usage times panels, with an allowance for lost picks, against the reels that stay on this line, move on it or come off it, each
// with what the job that runs now will leave of it, and counted reels off the line; the fewest reels, fullest first, alternates
// after the part's own.
// Refused: counting reels of other lines as free; taking what stands here for missing because it has yet to be moved.

import { compareSlots } from '../floor/address.ts';
import {
  ageReasons,
  type Fit,
  type FitAge,
  type FitLife,
  fitVerdict,
  type ShelfReel,
  shelfFor,
  takenAs,
} from '../floor/fits.ts';
import { comparePlaces, placeOf } from '../floor/fold-places.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import { slotEstimate } from '../floor/remaining.ts';
import { isBlocked } from '../floor/slot-right.ts';
import { type FloorState, type Reel, type Setup, type SlotState, slotKey } from '../floor/state.ts';
import { partPerPanel } from '../floor/turns.ts';
import { perPanelOf } from '../floor/wanted.ts';
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

/** What a pick list is asked for. */
export interface KitQuestion {
  readonly panels: number;
  /** Share of picks lost, 0 <= loss < 1. */
  readonly loss: number;
  /** What is left of a reel's floor life as a part; null where it has no limit. */
  readonly lifeOf?: (reel: Reel, part: string) => FitLife | null;
}

/** What is known of one part's reels before any is chosen. */
interface KitPart {
  readonly part: string;
  readonly wanted: readonly SetupSlot[];
  readonly names: readonly string[];
  readonly needed: number;
  readonly here: readonly ReelHere[];
  readonly spent: readonly Reel[];
  /** Reels off the line that serve as they are, in the order to be taken. */
  readonly free: readonly ShelfReel[];
}

/**
 * The pick list of a setup for a number of panels. Whether a reel serves is asked of `fits.ts`: one of an approved maker counts, and an
 * alternate where the part's own reels do not reach. A reel counts for one part. In walking order of the store, then of the first slot.
 */
export function kitList(state: FloorState, setup: Setup, more: KitQuestion): readonly KitRow[] {
  const byPart = new Map<string, SetupSlot[]>();
  for (const slot of setup.slots) {
    if (slot.perPanel > 0) byPart.set(slot.part, [...(byPart.get(slot.part) ?? []), slot]);
  }
  const shelf = shelfFor(state, { line: setup.line, setup: setup.setup }, more.lifeOf);
  const here = reelsHere(state, setup);
  const parts = [...byPart].map(([part, slots]) =>
    kitPart(state, { part, slots, shelf, here: here.get(part) ?? [] }, more),
  );
  const taken = new Set<string>();
  const picks = new Map<string, Reel[]>(parts.map(({ part }) => [part, []]));
  // Every part takes its own reels before any takes an alternate: that may be another part's own.
  for (const isAlternate of [false, true])
    for (const each of parts) pickReels(each, picks.get(each.part) ?? [], { taken, isAlternate });
  return parts
    .map((each) => toRow(each, picks.get(each.part) ?? []))
    .sort(
      (a, b) => comparePlaces(placeIn(a), placeIn(b)) || compareSlots(a.slots[0] ?? '', b.slots[0] ?? ''),
    );
}

function kitPart(
  state: FloorState,
  of: {
    readonly part: string;
    readonly slots: readonly SetupSlot[];
    readonly shelf: (wanted: SetupSlot) => readonly ShelfReel[];
    readonly here: readonly ReelHere[];
  },
  { panels, loss, lifeOf }: KitQuestion,
): KitPart {
  const { part, slots } = of;
  const isOver = (reel: Reel) =>
    fitVerdict(ageReasons({}, ageOf(lifeOf?.(reel, part) ?? null))) !== 'accepted';
  const spentHere = of.here
    .flatMap(({ reel }) => state.reels.get(reel) ?? [])
    .filter((reel) => reel.count !== 0 && isOver(reel));
  // Slots of one part may have alternates of their own.
  const known = new Map(
    slots.flatMap((slot) => of.shelf(slot).map((each) => [each.reel.reel, each] as const)),
  );
  const off = [...known.values()].sort((a, b) => Number(a.fit.part !== part) - Number(b.fit.part !== part));
  return {
    part,
    wanted: slots,
    names: slots.map(({ slot }) => slot).sort(compareSlots),
    needed: Math.ceil((partPerPanel(slots) * panels) / (1 - loss) - 1e-9),
    here: of.here.filter(({ reel }) => !spentHere.some((spent) => spent.reel === reel)),
    spent: [
      ...spentHere,
      ...off.flatMap(({ reel, fit }) => (reel.count !== 0 && isSpent(fit) ? [reel] : [])),
    ],
    free: off.filter(({ fit }) => fit.verdict === 'accepted'),
  };
}

/** True where nothing but its floor life speaks against a reel. */
function isSpent(fit: Fit): boolean {
  const against = fit.reasons.filter((reason) => fitVerdict([reason]) !== 'accepted');
  return (
    against.length > 0 && against.every(({ code }) => code === 'floor-life-over' || code === 'bake-short')
  );
}

function ageOf(floorLife: FitLife | null): FitAge {
  return { today: null, floorLife };
}

/** Takes reels for a part until it has enough and each slot has one; those taken are marked so that no other part counts them. */
function pickReels(
  { part, needed, names, here, free }: KitPart,
  reels: Reel[],
  { taken, isAlternate }: { readonly taken: Set<string>; readonly isAlternate: boolean },
): void {
  const served = here.filter(({ to }) => to !== null).length;
  let found = foundIn(here, reels);
  for (const { reel, fit } of free) {
    if (found >= needed && reels.length >= names.length - served) return;
    if ((fit.part !== part) !== isAlternate || taken.has(reel.reel) || (reel.count ?? 0) <= 0) continue;
    taken.add(reel.reel);
    reels.push(reel);
    found += reel.count ?? 0;
  }
}

function foundIn(here: readonly ReelHere[], reels: readonly Reel[]): number {
  const standing = here.reduce((sum, { left }) => sum + (left ?? 0), 0);
  return reels.reduce((sum, { count }) => sum + (count ?? 0), standing);
}

function toRow({ part, wanted, names, needed, here, spent, free }: KitPart, reels: readonly Reel[]): KitRow {
  const found = foundIn(here, reels);
  const uncounted = free.filter(({ reel }) => reel.count === null).length;
  return {
    part,
    slots: names,
    needed,
    isOnLine: here.filter(({ to }) => to !== null).length === names.length,
    here,
    reels,
    found,
    short: Math.max(0, needed - found),
    spent,
    uncounted: uncounted + here.filter(({ left }) => left === null).length,
    msl: wanted.find((slot) => slot.msl !== undefined)?.msl ?? null,
  };
}

/** Where the first of a row's reels lies that has a place; empty where none has. */
function placeIn(row: Pick<KitRow, 'reels'>): string {
  return row.reels.map((reel) => placeOf(reel) ?? '').sort(comparePlaces)[0] ?? '';
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
    const part = there && servesIn(state, setup, there);
    if (there && part) add(part, reelOn(state, there, null));
  }
  return here;
}

/** The part of a setup that a reel which stands on the line could serve as it is: its own, else one that it is an alternate of; null where none. */
function servesIn(state: FloorState, { line, slots }: Setup, there: SlotState): string | null {
  const tape = there.tapes.at(-1);
  if (tape === undefined || isBlocked(state, there)) return null;
  const served = slots.flatMap((wanted) => {
    const as = takenAs(state, line, wanted, tape.part);
    return as === null ? [] : [{ part: wanted.part, isOwn: as === wanted.part }];
  });
  return (served.find(({ isOwn }) => isOwn) ?? served[0])?.part ?? null;
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
