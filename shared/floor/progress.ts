// How far a line is made ready for its setup: slot by slot, in walking order, and what to do next. What each slot is comes from
// slot-right.ts; here it is counted.

import { lookAtLine, type SlotAnswer, type SlotLook, slotLooker, walkingOrder } from './slot-right.ts';
import type { FloorState, SlotState, Sweep } from './state.ts';
import { wantedOn } from './wanted.ts';

/**
 * What a slot of the setup still needs. `other` = what is on it must come out; `held` = waits for a lead; `kept` = another lane needs what is on
 * it, so that nothing is to be done there.
 */
export const slotPhases = ['missing', 'held', 'verified', 'other', 'kept'] as const;
export type SlotPhase = (typeof slotPhases)[number];

const phaseOf: Readonly<Record<SlotAnswer, SlotPhase>> = {
  right: 'verified',
  empty: 'missing',
  held: 'held',
  'other-part': 'other',
  'wrong-feeder': 'other',
  blocked: 'other',
};

function phaseIn({ is, keptFor }: Pick<SlotLook, 'is' | 'keptFor'>): SlotPhase {
  return keptFor === null ? phaseOf[is] : 'kept';
}

/** One slot of the setup against the floor. */
export interface SlotProgress extends SlotLook {
  readonly phase: SlotPhase;
}

/** A line against its setup. */
export interface SetupProgress {
  readonly setup: string | null;
  /** In walking order. */
  readonly slots: readonly SlotProgress[];
  readonly verified: number;
  readonly held: number;
  /** The first slot in walking order that still needs a reel. */
  readonly next: SlotProgress | null;
  /** Loaded slots that the setup does not use. */
  readonly unwanted: readonly SlotState[];
  /** Those of them that stand where the setup wants another feeder: they must come out, the others may stay. */
  readonly inTheWay: ReadonlySet<string>;
}

/** The sweep of a line that goes on; null where none was begun, or it has ended: nothing that is seen counts for it any more. */
export function openSweep(state: Pick<FloorState, 'sweeps'>, line: string): Sweep | null {
  const sweep = state.sweeps.get(line);
  return sweep?.endedMs === null ? sweep : null;
}

/** What one slot of the line's setup still needs; null where the setup does not use it. The same as in `setupProgress`. */
export function slotPhase(state: FloorState, line: string, slot: string): SlotPhase | null {
  const setup = state.chosen.get(line);
  const wanted = setup === undefined ? null : wantedOn(state, setup, slot);
  return setup === undefined || wanted === null ? null : phaseIn(slotLooker(state, line, setup)(wanted));
}

/** The first slot in walking order that still needs a reel; null where there is none. The same as `setupProgress(…).next`. */
export function nextMissing(state: FloorState, line: string): string | null {
  const setup = state.chosen.get(line);
  if (setup === undefined) return null;
  const look = slotLooker(state, line, setup);
  return walkingOrder(state, setup).find((wanted) => look(wanted).is === 'empty')?.slot ?? null;
}

/** True where every slot of the line's setup has what it wants, or stands for another lane: none waits for a lead, none holds another part. */
export function isAllLoaded(state: FloorState, line: string): boolean {
  const setup = state.chosen.get(line);
  if (setup === undefined) return false;
  const look = slotLooker(state, line, setup);
  return walkingOrder(state, setup).every((wanted) => ['verified', 'kept'].includes(phaseIn(look(wanted))));
}

/** Compares a line with the setup chosen for it, or with the one named. Cost: linear in slots, and their sorting. */
export function setupProgress(
  state: FloorState,
  line: string,
  setup: string | null = state.chosen.get(line) ?? null,
): SetupProgress {
  const look = lookAtLine(state, line, setup);
  const slots = look.slots.map((each): SlotProgress => ({ ...each, phase: phaseIn(each) }));
  const count = (phase: SlotPhase) => slots.filter((each) => each.phase === phase).length;
  return {
    setup,
    slots,
    verified: count('verified'),
    held: count('held'),
    next: slots.find(({ phase }) => phase === 'missing') ?? null,
    unwanted: look.surplus.map(({ loaded }) => loaded),
    inTheWay: new Set(look.surplus.filter((each) => each.isInTheWay).map(({ loaded }) => loaded.slot)),
  };
}
