// New feeders on their free places, put better without one more of them being put in: heavy users on other machines, look-alikes apart.
// Method: single moves to free places and swaps of two feeders of one width, each only where it helps. Refused: to move what stands or what other setups want.

import { likeness, likenessTells, type SeenPart } from './look-alikes.ts';

/** Where a feeder begins: machine and bank by their number in the line's record, position from 1. */
export interface Spot {
  readonly machine: number;
  readonly bank: number;
  readonly position: number;
}

/** A feeder that may be put elsewhere. `width` in positions. */
export interface Movable extends SeenPart {
  readonly width: number;
  readonly perPanel: number;
  readonly spot: Spot;
}

/** What the feeders are arranged on. */
export interface Ground {
  /** Positions by machine and bank. */
  readonly banks: readonly (readonly number[])[];
  /** Positions that are not free, by `machine/bank/position` from 0, 0 and 1; null = nobody knows of which part. */
  readonly taken: ReadonlyMap<string, SeenPart | null>;
  /** Placements per panel on each machine, those of `Movable` parts not counted. */
  readonly load: readonly number[];
}

const mostMoves = 500;
const mostRounds = 20;
const keyAt = ({ machine, bank, position }: Spot, step = 0) => `${machine}/${bank}/${position + step}`;

/** Feeders while they are moved: by their index in `at`. */
interface Floorplan {
  readonly at: readonly Movable[];
  readonly ground: Ground;
  readonly put: (index: number, spot: Spot) => void;
  /** Two feeders of one width take each other's place. */
  readonly swap: (one: number, other: number) => void;
  /** Free places of a machine that a feeder fits on, in walking order. */
  readonly freeSpots: (index: number, machine: number) => readonly Spot[];
  readonly like: (a: SeenPart, b: SeenPart) => number;
  /** How like a feeder is to its two neighbours. */
  readonly cost: (index: number) => number;
}

const keysOf = (spot: Spot, width: number) => Array.from({ length: width }, (_, step) => keyAt(spot, step));

function floorplan(movable: readonly Movable[], ground: Ground): Floorplan {
  const at: Movable[] = [...movable];
  const cells = new Map<string, number>();
  const known = new Map<string, number>();
  const fill = (index: number) => {
    const { spot, width } = at[index]!; // indexes run over `at`
    for (const key of keysOf(spot, width)) cells.set(key, index);
  };
  const put = (index: number, spot: Spot) => {
    const before = at[index]!; // indexes run over `at`
    for (const key of keysOf(before.spot, before.width)) if (cells.get(key) === index) cells.delete(key);
    at[index] = { ...before, spot };
    fill(index);
  };
  const like = (a: SeenPart, b: SeenPart) => {
    const key = `${a.part}\n${b.part}`;
    const found = known.get(key) ?? likeness(a, b);
    known.set(key, found);
    return found;
  };
  const seenAt = (spot: Spot, step: number): SeenPart | null => {
    const index = cells.get(keyAt(spot, step));
    return index === undefined ? (ground.taken.get(keyAt(spot, step)) ?? null) : (at[index] ?? null);
  };
  for (const index of at.keys()) fill(index);
  return {
    at,
    ground,
    put,
    like,
    swap(one, other) {
      const [a, b] = [at[one]!.spot, at[other]!.spot]; // indexes run over `at`
      put(one, b);
      put(other, a);
    },
    freeSpots(index, machine) {
      const { width } = at[index]!; // indexes run over `at`
      const isFree = (key: string) => (cells.get(key) ?? index) === index && !ground.taken.has(key);
      return (ground.banks[machine] ?? []).flatMap((positions, bank) =>
        Array.from({ length: Math.max(0, positions - width + 1) }, (_, from) => ({
          machine,
          bank,
          position: from + 1,
        })).filter((spot) => keysOf(spot, width).every(isFree)),
      );
    },
    cost(index) {
      const each = at[index]!; // indexes run over `at`
      return [-1, each.width].reduce((sum, step) => {
        const beside = seenAt(each.spot, step);
        return beside === null ? sum : sum + like(each, beside);
      }, 0);
    },
  };
}

/** A move that brings the most loaded machine and another closer together: to a free place, or against a lighter feeder of one width. */
interface Relief {
  readonly to: number;
  /** Placements that change the machine. */
  readonly by: number;
  readonly act: () => void;
}

/** The first relief for a machine, its heaviest feeders first, the least loaded machines first; null where there is none. */
function reliefOf(plan: Floorplan, from: number, load: readonly number[]): Relief | null {
  const others = load.map((_, machine) => machine).sort((a, b) => load[a]! - load[b]! || a - b); // machines of the list
  const on = (machine: number) =>
    [...plan.at.entries()]
      .filter(([, { spot }]) => spot.machine === machine)
      .sort(([a, one], [b, other]) => other.perPanel - one.perPanel || a - b);
  const helps = (to: number, by: number) => by > 0 && load[from]! - load[to]! > by; // machines of the list
  for (const [index, { perPanel }] of on(from))
    for (const to of others) {
      const free = helps(to, perPanel) ? plan.freeSpots(index, to)[0] : undefined;
      if (free !== undefined) return { to, by: perPanel, act: () => plan.put(index, free) };
    }
  for (const [index, { perPanel, width }] of on(from))
    for (const to of others)
      for (const [other, lighter] of on(to)) {
        const by = perPanel - lighter.perPanel;
        if (lighter.width === width && helps(to, by)) return { to, by, act: () => plan.swap(index, other) };
      }
  return null;
}

/** Moves heavy users from the most loaded machine to less loaded ones, as long as that brings two of them closer together. */
function spread(plan: Floorplan): void {
  const load = [...plan.ground.load];
  for (const { spot, perPanel } of plan.at) load[spot.machine] = (load[spot.machine] ?? 0) + perPanel;
  for (let move = 0; move < mostMoves; move++) {
    const from = load.indexOf(Math.max(...load));
    const relief = from < 0 ? null : reliefOf(plan, from, load);
    if (relief === null) return;
    relief.act();
    load[from]! -= relief.by;
    load[relief.to]! += relief.by;
  }
}

/** The best swap or move for one feeder on its own machine; a swap before a move, the nearest place first. Does it, and tells whether there was one. */
function better(plan: Floorplan, index: number, mayMove: boolean): boolean {
  const mine = plan.at[index]!; // indexes run over `at`
  const { spot, width } = mine;
  let best: { readonly gain: number; readonly act: () => void } | null = null;
  for (const [other, { spot: there, width: theirs }] of plan.at.entries()) {
    if (other === index || theirs !== width || there.machine !== spot.machine) continue;
    const before = plan.cost(index) + plan.cost(other);
    plan.swap(index, other);
    const gain = before - plan.cost(index) - plan.cost(other);
    plan.swap(index, other);
    if (gain > (best?.gain ?? 0)) best = { gain, act: () => plan.swap(index, other) };
  }
  if (mayMove) {
    const before = plan.cost(index);
    const far = (each: Spot) =>
      Math.abs(each.bank - spot.bank) * 1000 + Math.abs(each.position - spot.position);
    for (const free of [...plan.freeSpots(index, spot.machine)].sort((a, b) => far(a) - far(b))) {
      plan.put(index, free);
      const gain = before - plan.cost(index);
      plan.put(index, spot);
      if (gain > (best?.gain ?? 0)) best = { gain, act: () => plan.put(index, free) };
    }
  }
  best?.act();
  return best !== null;
}

/** Arranges feeders on free places. Deterministic; in the order given. Changes nothing about how many are put in. */
export function arrange(movable: readonly Movable[], ground: Ground): readonly Movable[] {
  const plan = floorplan(movable, ground);
  spread(plan);
  // Gaps between feeders cost room: where likeness tells nothing they are not worth it.
  const mayMove = likenessTells(movable);
  for (let round = 0, isBetter = true; isBetter && round < mostRounds; round++) {
    isBetter = false;
    for (const index of plan.at.keys())
      if (plan.cost(index) > 0 && better(plan, index, mayMove)) isBetter = true;
  }
  return plan.at;
}
