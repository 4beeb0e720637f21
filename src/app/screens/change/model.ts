// A line against the setup that comes next: what stays, moves, comes out, goes in; in which order of hands.

import {
  type BankSizes,
  diffSetups,
  partsTwice,
  type SetupDiff,
  type SetupFault,
} from '../../../../shared/changeover/diff.ts';
import { type WantedFor, wantedWithLanes } from '../../../../shared/changeover/lanes.ts';
import { loadedFor } from '../../../../shared/changeover/loaded.ts';
import { orderSteps, type StepPlan } from '../../../../shared/changeover/steps.ts';
import { compareSlots } from '../../../../shared/floor/address.ts';
import { standingAt } from '../../../../shared/floor/lanes.ts';
import { type ValueUnit, valueUnits } from '../../../../shared/floor/part-value.ts';
import { recordedBankKey } from '../../../../shared/floor/place.ts';
import {
  type Changeover,
  type FloorState,
  type Setup,
  type SlotState,
  slotKey,
} from '../../../../shared/floor/state.ts';
import { isDropped } from '../../../../shared/floor/state-change.ts';
import { wantedOn } from '../../../../shared/floor/wanted.ts';
import type { ChangeFault } from './fault-text.ts';

/** What a change to a setup takes, or why it cannot be. */
export type ChangePlan =
  | {
      readonly fits: true;
      readonly diff: SetupDiff;
      readonly steps: StepPlan;
      readonly twice: readonly { readonly part: string; readonly slots: readonly string[] }[];
    }
  | { readonly fits: false; readonly faults: readonly ChangeFault[] };

/** Positions of each bank of a line. */
export function bankSizes(floor: FloorState, line: string): BankSizes {
  const banks = floor.lines
    .get(line)
    ?.machines.flatMap((machine) =>
      machine.banks.map((bank) => [recordedBankKey(machine.machine, bank.bank), bank.positions] as const),
    );
  return Object.fromEntries(banks ?? []);
}

/** What changing a line to a setup takes. */
export function planChange(floor: FloorState, line: string, setup: Setup): ChangePlan {
  const wanted = wantedWithLanes(floor, line, setup);
  const { loaded, rule } = loadedFor(floor, line, setup.setup, wanted);
  const own = wanted.filter((each) => each.line === line);
  const found = diffSetups(loaded, wanted, bankSizes(floor, line), rule);
  if (!found.ok)
    return { fits: false, faults: found.error.map((fault) => withCause(floor, line, fault, wanted)) };
  return { fits: true, diff: found.value, steps: orderSteps(found.value), twice: partsTwice(own) };
}

/** The fault with the lane that needs another part there, or the feeder that is loaded and wider by its record than its slot wants. */
function withCause(
  floor: FloorState,
  line: string,
  fault: SetupFault,
  wanted: readonly WantedFor[],
): ChangeFault {
  if (fault.side !== 'loaded') {
    if (fault.code !== 'slot-twice' && fault.code !== 'overlap') return fault;
    const kept = wanted.find(
      (each) => each.line !== line && (each.slot === fault.slot || each.slot === fault.with?.slot),
    );
    if (!kept) return fault;
    const lane = floor.lines.get(kept.line)?.name ?? kept.line;
    return { ...fault, kept: { slot: kept.slot, part: kept.part, lane } };
  }
  for (const slot of [fault.slot, fault.with?.slot]) {
    const feeder = floor.feeders.get(floor.slots.get(slotKey(line, slot ?? ''))?.feeder ?? '');
    const own = wantedOn(floor, floor.chosen.get(line) ?? '', slot ?? '');
    if (feeder && feeder.positions > (own?.positions ?? 1))
      return { ...fault, feeder: { feeder: feeder.feeder, positions: feeder.positions } };
  }
  return fault;
}

/** Slots that were changed since a changeover began, newest first: the ticks of its list. */
export function doneSlots(floor: FloorState, changeover: Changeover): readonly SlotState[] {
  return standingAt(floor, changeover.line)
    .filter((slot) => slot.atMs >= changeover.beganMs)
    .sort((a, b) => b.atMs - a.atMs || compareSlots(a.slot, b.slot));
}

/** A number that a person typed, comma or point; null where it is none. */
export function readFigure(text: string): number | null {
  const trimmed = text.trim().replace(',', '.');
  if (trimmed === '') return null;
  const value = Number(trimmed);
  return Number.isFinite(value) ? value : null;
}

/** The newest measurement of a part in any changeover, where its unit is one that is offered. */
export function lastMeasured(
  floor: FloorState,
  part: string,
): { readonly least: number; readonly most: number; readonly unit: ValueUnit } | null {
  const all = [...floor.changeovers.values()]
    .filter((changeover) => !isDropped(changeover))
    .flatMap((changeover) => changeover.measured)
    .filter((each) => each.part === part && Object.hasOwn(valueUnits, each.unit))
    .sort((a, b) => b.atMs - a.atMs);
  const newest = all[0];
  return newest ? { least: newest.least, most: newest.most, unit: newest.unit as ValueUnit } : null; // filtered above
}
