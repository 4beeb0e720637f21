// What does one board take, part by part, and what of its files is not placed?
// Method: with a bill the join has said it; without one the placement file's own names count, times the boards of a panel.

import { designatorKey } from './designators.ts';
import type { JoinedBill } from './join.ts';
import type { LeftOutReason } from './placement-row.ts';
import type { Placement, PlacementReading } from './placements.ts';
import { type SheetProblem, sheetProblem } from './problems.ts';

/** A part of a board. */
export interface BoardPart {
  readonly part: string;
  /** Whether it is called by its value, since no file has a number for it. */
  readonly isNamedByValue: boolean;
  /** Makers' numbers that the bill approves. */
  readonly supplierParts: readonly string[];
  /** Placements per panel. */
  readonly top: number;
  readonly bottom: number;
  readonly designators: readonly string[];
  /** As the files write them; '' = not stated. */
  readonly value: string;
  readonly package: string;
}

/** A designator that is not placed; `reason` null = the two files or the bill say so. */
export interface NotPlaced {
  readonly designator: string;
  readonly reason: LeftOutReason | null;
}

/** A board as its files describe it. */
export interface BoardReading {
  readonly parts: readonly BoardPart[];
  readonly notPlaced: readonly NotPlaced[];
  readonly problems: readonly SheetProblem[];
}

/** What the first placement of each part says, by part in capitals. */
function firstByPart(placements: readonly Placement[]): ReadonlyMap<string, Placement> {
  const first = new Map<string, Placement>();
  for (const placement of placements) {
    const key = placement.part.toUpperCase();
    const known = first.get(key);
    if (known === undefined || (known.package === '' && placement.package !== '')) first.set(key, placement);
  }
  return first;
}

function unbilled(reading: PlacementReading, boards: number): readonly BoardPart[] {
  const namesByPart = new Map<string, string[]>();
  for (const { part, designator } of reading.placements) {
    const names = namesByPart.get(part) ?? [];
    names.push(designator);
    namesByPart.set(part, names);
  }
  const first = firstByPart(reading.placements);
  return reading.parts.map(({ part, top, bottom }) => ({
    part,
    isNamedByValue: first.get(part.toUpperCase())?.isNamedByValue ?? false,
    supplierParts: [],
    top: top * boards,
    bottom: bottom * boards,
    designators: [...new Set(namesByPart.get(part) ?? [])],
    value: first.get(part.toUpperCase())?.value ?? '',
    package: first.get(part.toUpperCase())?.package ?? '',
  }));
}

function billed(joined: JoinedBill): readonly BoardPart[] {
  const first = firstByPart(joined.placements);
  return joined.parts.map((part) => ({
    ...part,
    isNamedByValue: first.get(part.part.toUpperCase())?.isNamedByValue ?? false,
    value: first.get(part.part.toUpperCase())?.value ?? '',
    package: first.get(part.part.toUpperCase())?.package ?? '',
  }));
}

/** The parts of a board from its placement file, and from the bill laid over it where there is one. `boardsPerPanel` >= 1. */
export function readBoard(
  reading: PlacementReading,
  joined: JoinedBill | null,
  boardsPerPanel: number,
): BoardReading {
  const left = reading.leftOut.map(({ placement, reason }) => ({ designator: placement.designator, reason }));
  if (joined !== null) {
    const reasons = new Map(left.map(({ designator, reason }) => [designatorKey(designator), reason]));
    const notPlaced = joined.notPlaced.map((designator) => ({
      designator,
      reason: reasons.get(designatorKey(designator)) ?? null,
    }));
    return { parts: billed(joined), notPlaced, problems: [] };
  }
  // A file that holds a panel already is not multiplied again.
  const isPanel = reading.boards > 1 && boardsPerPanel > 1;
  const problems =
    isPanel && reading.boards !== boardsPerPanel
      ? [sheetProblem('boardsInFile', { row: null }, { found: reading.boards, wanted: boardsPerPanel })]
      : [];
  return {
    parts: unbilled(reading, isPanel ? 1 : boardsPerPanel),
    notPlaced: left.filter(({ designator }) => designator !== ''),
    problems,
  };
}
