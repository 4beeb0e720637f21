// A line as it is in truth: machines that place part by part from tapes of which nobody knows the exact count, panels between them,
// and a place where panels are counted. Every placement is kept with the reel that it came from.

import { type Chance, chanceNormal } from '../../shared/kit/chance.ts';

/** A reel: what its label says, and what is on it. */
export interface Reel {
  readonly id: string;
  readonly lot: string;
  readonly label: number;
  left: number;
}

/** A slot with the tapes that hang on it, the running one first. */
export interface Slot {
  readonly name: string;
  readonly machine: string;
  readonly perPanel: number;
  /** The board of each placement on a panel. */
  readonly boards: readonly number[];
  readonly loss: number;
  tapes: Reel[];
  /** Goes up when the slot is seen to be right, and when what stands there comes off. */
  epoch: number;
}

/** A panel: its code, and for each slot the reels whose parts it carries. */
export interface Panel {
  readonly code: string;
  /** Boards on which nothing is placed. */
  readonly skipped: ReadonlySet<number>;
  readonly carries: Map<string, Set<string>>;
  /** For each slot the epochs in which it got parts from it. */
  readonly epochs: Map<string, Set<number>>;
}

interface Machine {
  readonly name: string;
  readonly slots: readonly Slot[];
  /** Panels that wait before it. */
  readonly waiting: Panel[];
  /** The most that may wait before it. */
  readonly room: number;
  atWork: { readonly panel: Panel; slot: number; placed: number } | null;
}

/** A step of the line: something moved, nothing could, or a machine stands for want of parts. */
export type Step =
  | { readonly is: 'moved' }
  | { readonly is: 'stuck' }
  | { readonly is: 'counted'; readonly panel: Panel }
  | { readonly is: 'empty'; readonly slot: Slot };

export interface Belt {
  readonly slots: readonly Slot[];
  /** Panels that may have passed a slot's machine beyond those counted: least and most. */
  readonly range: (machine: string) => { readonly least: number; readonly most: number };
  /** One thing happens somewhere on the line. `feeds`: a new panel may come in. */
  readonly step: (feeds: boolean) => Step;
  /** True where no panel is on the line. */
  readonly isClear: () => boolean;
}

/** A reel with what is on it off its label by the stated share (one deviation). */
export function newReel(id: string, lot: string, label: number, share: number, chance: Chance): Reel {
  return { id, lot, label, left: Math.max(1, Math.round(chanceNormal(chance, label, share * label))) };
}

/** Builds a line. `countAt`: how many machines stand before the place of counting. */
export function createBelt(
  of: {
    readonly machines: readonly { name: string; slots: readonly Slot[]; room: number }[];
    readonly countAt: number;
    readonly countRoom: number;
  },
  chance: Chance,
  newPanel: () => Panel,
): Belt {
  const machines: Machine[] = of.machines.map((each) => ({ ...each, waiting: [], atWork: null }));
  const atCount: Panel[] = [];

  /** Where a panel goes after `index` machines. */
  const roomAfter = (index: number) => {
    if (index === of.countAt) return atCount.length < of.countRoom;
    const next = machines[index];
    return next === undefined || next.waiting.length < next.room;
  };
  const passOn = (index: number, panel: Panel) => {
    if (index === of.countAt) atCount.push(panel);
    else machines[index]?.waiting.push(panel);
  };
  /** A counted panel goes on to the machine behind the place of counting. */
  const roomBehindCount = () => {
    const next = machines[of.countAt];
    return next === undefined || next.waiting.length < next.room;
  };

  function place(machine: Machine, index: number): Step {
    const work = machine.atWork;
    if (!work) {
      const panel = machine.waiting.shift();
      if (!panel) return { is: 'stuck' };
      machine.atWork = { panel, slot: 0, placed: 0 };
      return { is: 'moved' };
    }
    // A few placements, so that hands can come in between.
    for (let left = 1 + Math.floor(chance() * 12); left > 0; left--) {
      const slot = machine.slots[work.slot];
      if (!slot) {
        if (!roomAfter(index + 1)) return { is: 'stuck' };
        machine.atWork = null;
        passOn(index + 1, work.panel);
        return { is: 'moved' };
      }
      if (work.placed >= slot.perPanel) {
        work.slot += 1;
        work.placed = 0;
        continue;
      }
      if (work.panel.skipped.has(slot.boards[work.placed] ?? 0)) {
        work.placed += 1;
        continue;
      }
      while (slot.tapes[0] && slot.tapes[0].left <= 0) slot.tapes.shift();
      const tape = slot.tapes[0];
      if (!tape) return { is: 'empty', slot };
      tape.left -= 1;
      if (chance() < slot.loss) continue;
      const carries = work.panel.carries.get(slot.name) ?? new Set<string>();
      work.panel.carries.set(slot.name, carries.add(tape.id));
      const epochs = work.panel.epochs.get(slot.name) ?? new Set<number>();
      work.panel.epochs.set(slot.name, epochs.add(slot.epoch));
      work.placed += 1;
    }
    return { is: 'moved' };
  }

  const step = (feeds: boolean): Step => {
    const at = Math.floor(chance() * (machines.length + 2));
    const machine = machines[at];
    if (machine) return place(machine, at);
    if (at === machines.length) {
      const first = machines[0];
      const isCountFirst = of.countAt === 0;
      if (
        !feeds ||
        !(isCountFirst ? atCount.length < of.countRoom : (first?.waiting.length ?? 0) < (first?.room ?? 0))
      )
        return { is: 'stuck' };
      passOn(0, newPanel());
      return { is: 'moved' };
    }
    if (atCount.length === 0 || !roomBehindCount()) return { is: 'stuck' };
    const panel = atCount.shift() as Panel; // just looked
    if (of.countAt < machines.length) machines[of.countAt]?.waiting.push(panel);
    return { is: 'counted', panel };
  };

  return {
    slots: machines.flatMap((machine) => machine.slots),
    range: (name) => {
      const index = machines.findIndex((machine) => machine.name === name);
      const held = (from: number, to: number) =>
        machines.slice(from, to).reduce((sum, machine) => sum + machine.room + 1, 0);
      // Done by the machine and not counted: what waits and is at work between, and what waits to be counted.
      if (index < of.countAt) return { least: 0, most: held(index + 1, of.countAt) + of.countRoom };
      return { least: -held(of.countAt, index + 1), most: 0 };
    },
    step,
    isClear: () =>
      atCount.length === 0 && machines.every((machine) => machine.waiting.length === 0 && !machine.atWork),
  };
}
