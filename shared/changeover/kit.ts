// What must be fetched for the next setup: per part the reels wanted, what the log knows off the line, what is short.
// Method: usage times panels, with an allowance for lost picks and for splices, against the reels that stay on this line, move on it or
// come off it, each with what the job that runs now will leave of it, and counted reels off the line in the line's order, alternates
// after the part's own. All with its spread: enough is only what is so with 95 % (normal law of the sum).
// Refused: counting reels of other lines as free; taking what stands here for missing because it has yet to be moved.

import { compareSlots } from '../floor/address.ts';
import { dateCodeReasons } from '../floor/age-limit.ts';
import { ageReasons, type Fit, type FitCode, type FitLife, fitVerdict, takenAs } from '../floor/fits.ts';
import { placeOf } from '../floor/fold-places.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import { comparePlaces } from '../floor/place-order.ts';
import { plantDay } from '../floor/plant-day.ts';
import {
  type Amount,
  ASSUMED_STRENGTH,
  chanceOfEnough,
  costVariance,
  ENOUGH,
  leftAfterRun,
  lossOn,
  lossPrior,
  partsShort,
  reelAmount,
  type SpliceCost,
  spliceCostFor,
  sumAmounts,
  takenBy,
} from '../floor/remaining.ts';
import { type ShelfReel, shelfFor } from '../floor/shelf.ts';
import { isBlocked } from '../floor/slot-right.ts';
import { type FloorState, type Reel, type Setup, type SlotState, slotKey } from '../floor/state.ts';
import { partPerPanel } from '../floor/turns.ts';
import { diffSetups, everyLaneOf, type FeederMove } from './diff.ts';
import { wantedWithLanes } from './lanes.ts';
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
  /** The same with its spread; null likewise. */
  readonly amount: Amount | null;
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
  /** Reels to fetch, in the line's order; at least one for each slot that is not loaded where there are that many. */
  readonly reels: readonly Reel[];
  readonly found: number;
  /** Parts missing in all reels found and on the line, those without a count left out; 0 where there is enough. */
  readonly short: number;
  /** The chance that what is found is enough, 0..1, by the spreads of counts, losses and skipped boards. */
  readonly chance: number;
  readonly enough: 'sure' | 'probably' | 'no';
  /** Parts missing so that it is enough with 95 %; 0 where it is. */
  readonly missing: number;
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
  /** ms since 1970: what has expired by then is not taken. */
  readonly nowMs: number;
  /** What is left of a reel's floor life as a part; null where it has no limit. */
  readonly lifeOf?: (reel: Reel, part: string) => FitLife | null;
}

/** What is known of one part's reels before any is chosen. */
interface KitPart {
  readonly part: string;
  readonly wanted: readonly SetupSlot[];
  readonly names: readonly string[];
  /** What all panels take: parts above 0. */
  readonly need: Amount;
  /** What a splice itself costs. */
  readonly splice: SpliceCost;
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
  const shelf = shelfFor(state, { line: setup.line, setup: setup.setup, nowMs: more.nowMs }, more.lifeOf);
  const here = reelsHere(state, setup);
  const parts = [...byPart].map(([part, slots]) =>
    kitPart(state, { setup, part, slots, shelf, here: here.get(part) ?? [] }, more),
  );
  const taken = new Set<string>();
  const picks = new Map<string, Reel[]>(parts.map(({ part }) => [part, []]));
  // Every part takes its own reels before any takes an alternate: that may be another part's own.
  for (const isAlternate of [false, true])
    for (const each of parts)
      pickReels(state, each, picks.get(each.part) ?? [], { line: setup.line, taken, isAlternate });
  return parts
    .map((each) =>
      toRow(each, picks.get(each.part) ?? [], enoughOf(state, setup.line, each, picks.get(each.part) ?? [])),
    )
    .sort(
      (a, b) => comparePlaces(placeIn(a), placeIn(b)) || compareSlots(a.slots[0] ?? '', b.slots[0] ?? ''),
    );
}

function kitPart(
  state: FloorState,
  of: {
    readonly setup: Setup;
    readonly part: string;
    readonly slots: readonly SetupSlot[];
    readonly shelf: (wanted: SetupSlot) => readonly ShelfReel[];
    readonly here: readonly ReelHere[];
  },
  { panels, loss, nowMs, lifeOf }: KitQuestion,
): KitPart {
  const { part, slots } = of;
  const { line, setup } = of.setup;
  const names = slots.map(({ slot }) => slot).sort(compareSlots);
  const learnt = lossOn(state, { line, part, feeder: '', slot: '' });
  const assumed = lossPrior({ mean: loss, strength: ASSUMED_STRENGTH });
  const today = plantDay(state, line, nowMs);
  const isOver = (reel: Reel) =>
    fitVerdict([
      ...ageReasons(
        { expires: state.expiries.get(reel.reel) ?? null },
        { today, floorLife: lifeOf?.(reel, part) ?? null },
      ),
      ...dateCodeReasons(state, { line, part }, reel, { today }),
    ]) !== 'accepted';
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
    names,
    need: takenBy(state, {
      setup,
      perPanel: partPerPanel(slots),
      panels,
      loss: learnt.reels > 0 ? learnt : assumed,
    }),
    splice: spliceCostFor(state, { line, slot: names[0] ?? '', feeder: null, part }),
    here: of.here.filter(({ reel }) => !spentHere.some((spent) => spent.reel === reel)),
    spent: [
      ...spentHere,
      ...off.flatMap(({ reel, fit }) => (reel.count !== 0 && isSpent(fit) ? [reel] : [])),
    ],
    free: off.filter(({ fit }) => fit.verdict === 'accepted'),
  };
}

/** What a date or a clock took from a reel, where it would serve else. */
const BY_AGE: ReadonlySet<FitCode> = new Set<FitCode>([
  'floor-life-over',
  'bake-short',
  'bake-hours-over',
  'label-time-missing',
  'expired',
  'date-code-old',
  'date-code-unknown',
]);

/** True where nothing but its age speaks against a reel. */
function isSpent(fit: Fit): boolean {
  const against = fit.reasons.filter((reason) => fitVerdict([reason]) !== 'accepted');
  return against.length > 0 && against.every(({ code }) => BY_AGE.has(code));
}

/** Takes reels for a part until it surely has enough and each slot has one; those taken are marked so that no other part counts them. */
function pickReels(
  state: FloorState,
  of: KitPart,
  reels: Reel[],
  by: { readonly line: string; readonly taken: Set<string>; readonly isAlternate: boolean },
): void {
  const { part, names, here, free } = of;
  const served = here.filter(({ to }) => to !== null).length;
  for (const { reel, fit } of free) {
    const isServed = reels.length >= names.length - served;
    if (isServed && chanceOfEnough(enoughOf(state, by.line, of, reels)) >= ENOUGH) return;
    if ((fit.part !== part) !== by.isAlternate || by.taken.has(reel.reel) || (reel.count ?? 0) <= 0) continue;
    by.taken.add(reel.reel);
    reels.push(reel);
  }
}

/** What is found less what is needed, splices paid for: each reel beyond one a slot is a splice. */
function enoughOf(state: FloorState, line: string, of: KitPart, reels: readonly Reel[]): Amount {
  const standing = of.here.flatMap(({ amount }) => amount ?? []);
  const found = sumAmounts([...standing, ...reels.flatMap((reel) => reelAmount(state, line, reel) ?? [])]);
  const splices = Math.max(0, standing.length + reels.length - of.names.length);
  return {
    parts: found.parts - of.need.parts - splices * of.splice.parts,
    variance: found.variance + of.need.variance + costVariance(of.splice, splices),
    sd: found.sd + of.need.sd,
  };
}

function foundIn(here: readonly ReelHere[], reels: readonly Reel[]): number {
  const standing = here.reduce((sum, { left }) => sum + (left ?? 0), 0);
  return reels.reduce((sum, { count }) => sum + (count ?? 0), standing);
}

function toRow(of: KitPart, reels: readonly Reel[], more: Amount): KitRow {
  const { part, wanted, names, here, spent, free } = of;
  const needed = Math.ceil(of.need.parts - 1e-9);
  const found = foundIn(here, reels);
  const chance = chanceOfEnough(more);
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
    chance,
    enough: chance >= ENOUGH ? 'sure' : chance >= 0.5 ? 'probably' : 'no',
    missing: partsShort(more),
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
  const wanted = wantedWithLanes(state, line, setup);
  const { loaded, rule } = loadedFor(state, line, setup.setup, wanted);
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
  for (const slot of diff.ok ? [...diff.value.takeOut, ...diff.value.stay].flatMap(everyLaneOf) : []) {
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
  // Of slots used in turn each is taken to feed the rest alone, so that it is rather too little.
  const amount = leftAfterRun(state, there);
  return { reel, slot: there.slot, to, left: amount === null ? null : Math.floor(amount.parts), amount };
}

function moved(moves: readonly FeederMove[]) {
  return moves.flatMap(({ from, to, lanes = [] }) => [
    [from, to] as const,
    ...lanes.map((lane) => [lane.from, lane.to] as const),
  ]);
}
