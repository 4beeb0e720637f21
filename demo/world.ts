// The floor as it truly is, which the log only knows by labels and counts: how many parts are on each tape, which feeders
// lose picks, when a tape really ended. Method: every loss is drawn as the number of good picks before it (geometric law), so
// that a panel costs one subtraction a slot and the law is exact.

import type { PayloadOf, SetupSlot } from '../shared/floor/kinds.ts';
import { type Chance, chanceBelow, chanceNormal } from '../shared/kit/chance.ts';
import { takesTape } from './feeders.ts';
import { familyOf } from './parts.ts';
import type { LabelledReel, ReelStore } from './reels.ts';

/** One tape on a slot. */
export interface TrueTape {
  readonly label: LabelledReel;
  /** Parts really left up to the pick point. */
  left: number;
  opensMs: number | null;
  closesMs: number | null;
}

/** A slot with its feeder and tapes, the running one first. */
export interface TrueSlot {
  readonly wanted: SetupSlot;
  readonly feeder: string;
  readonly loss: number;
  goodPicks: number;
  readonly tapes: TrueTape[];
}

/** A reel that came off the line with parts on it. */
export interface StockReel {
  readonly label: LabelledReel;
  readonly left: number;
}

/** How a tape ended: another was joined to it, or the line stood. */
export type TapeEnd = 'spliced' | 'dry';

/** What really happened, for tests and benches; the log does not hold it. Moments in ms since 1970. */
export interface ShiftTruth {
  readonly reels: {
    readonly reel: string;
    readonly part: string;
    readonly label: number;
    readonly parts: number;
  }[];
  readonly feeders: { readonly slot: string; readonly feeder: string; readonly loss: number }[];
  /** The pick that found the tape's end. `panels`: done in the run then. The window is when splicing was possible. */
  readonly ends: {
    readonly slot: string;
    readonly reel: string;
    readonly run: string;
    readonly atMs: number;
    readonly panels: number;
    readonly how: TapeEnd;
    readonly opensMs: number | null;
    readonly closesMs: number | null;
  }[];
  readonly stops: {
    readonly reason: 'jam' | 'no-boards' | 'run-out' | 'break';
    readonly slot: string | null;
    readonly fromMs: number;
    readonly toMs: number;
  }[];
  readonly walks: {
    readonly leftMs: number;
    readonly slots: readonly string[];
    spliced: number;
    vain: number;
    late: number;
    /** Parts still to come before the windows of the slots visited in vain opened: what cutting there would have wasted. */
    vainParts: number;
  }[];
  readonly panelEndsMs: number[];
  readonly picks: Map<string, { placed: number; lost: number }>;
}

/** Everything that the simulated floor consists of. */
export interface World {
  readonly chance: Chance;
  readonly store: ReelStore;
  readonly slots: Map<string, TrueSlot>;
  readonly stock: Map<string, StockReel[]>;
  readonly freeFeeders: PayloadOf<'feeder.known'>[];
  /** A feeder keeps its loss wherever it goes. */
  readonly losses: Map<string, number>;
  readonly truth: ShiftTruth;
}

/** A truth with nothing in it yet. */
export function emptyTruth(): ShiftTruth {
  return { reels: [], feeders: [], ends: [], stops: [], walks: [], panelEndsMs: [], picks: new Map() };
}

/** Picks until the next loss, that one not counted. `loss`: probability, 0 <= loss < 1. */
export function drawGoodPicks(chance: Chance, loss: number): number {
  if (loss <= 0) return Number.POSITIVE_INFINITY;
  return Math.floor(Math.log(1 - chance()) / Math.log(1 - loss));
}

/** A feeder's own share of lost picks: most lose one in a thousand, one in twelve is worn. */
export function drawLoss(chance: Chance): number {
  const worn = chance() < 1 / 12;
  const typical = worn ? 0.012 : 0.0015;
  return Math.min(0.05, typical * Math.exp(chanceNormal(chance, 0, 0.6)));
}

/** A new full or part reel from the store; its true count is off the label by a few. `expires`: printed on it where given. */
export function takeNew(
  world: World,
  part: string,
  printed: { readonly quantity: number; readonly expires?: string },
): StockReel {
  const { quantity } = printed;
  const label = world.store.next(part, printed);
  const deviation = Math.max(1.5, quantity * 0.002);
  const left = Math.max(0, Math.round(chanceNormal(world.chance, quantity, deviation)));
  world.truth.reels.push({ reel: label.reel ?? '', part, label: quantity, parts: left });
  return { label, left };
}

/** Panels for which an opened reel must last to be worth a walk. */
const WORTH_PANELS = 40;

/** The reel that a hand fetches for a slot: one that was opened before and is worth it, else a full one. */
export function fetchReel(world: World, wanted: SetupSlot): StockReel {
  const { part, perPanel } = wanted;
  const opened = world.stock.get(part) ?? [];
  const at = opened.findIndex((reel) => reel.left >= perPanel * WORTH_PANELS);
  const [reel] = at < 0 ? [] : opened.splice(at, 1);
  return reel ?? takeNew(world, part, { quantity: familyOf(part).full });
}

/** Takes a free feeder for a slot; throws where none is left, which would be a fault of the plant. */
export function takeFeeder(world: World, wanted: SetupSlot): string {
  const { tapeWidthMm, pitchMm } = familyOf(wanted.part);
  const at = world.freeFeeders.findIndex((feeder) => takesTape(feeder, { tapeWidthMm, pitchMm }));
  const [feeder] = at < 0 ? [] : world.freeFeeders.splice(at, 1);
  if (!feeder) throw new RangeError(`Cannot load as a feeder must be free: current value is ${wanted.slot}`);
  return feeder.feeder;
}

/** A slot as it is after a load. */
export function makeSlot(world: World, wanted: SetupSlot, feeder: string): TrueSlot {
  const loss = world.losses.get(feeder) ?? drawLoss(world.chance);
  world.losses.set(feeder, loss);
  return { wanted, feeder, loss, goodPicks: drawGoodPicks(world.chance, loss), tapes: [] };
}

/** What a reel still has when the shift begins: anything from nearly empty to full. */
export function startQuantity(chance: Chance, wanted: SetupSlot): number {
  const { full } = familyOf(wanted.part);
  if (chance() < 0.15) return full;
  const least = Math.min(full, wanted.perPanel * 25 + chanceBelow(chance, 40));
  return Math.max(least, Math.round(full * (0.04 + 0.96 * chance())));
}
