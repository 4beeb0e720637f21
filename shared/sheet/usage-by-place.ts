// How many placements per panel does each row of a sheet serve that names reference designators?
// Method: the placements at its designators are counted, whatever part text stands in either file; what the sheet names and the file does not
// place is told by row, and so is what no row names. Rows without designators are left to the join by part.

import { designatorKey } from './designators.ts';
import { type Placement, type PlacementReading, totalsOf } from './placements.ts';
import type { ProblemSink } from './problems.ts';
import type { PlacementScope } from './scope.ts';
import type { SheetSlot } from './slot.ts';

/** Rows joined by designator, and what is left for the join by part. */
export interface UsageByPlace {
  readonly named: readonly SheetSlot[];
  readonly others: readonly SheetSlot[];
  readonly rest: PlacementReading;
  readonly scope: PlacementScope;
}

interface PlaceOptions {
  readonly side?: PlacementScope;
  readonly boards: number;
  readonly column: string | null;
  /** The header of the sheet's column of designators. */
  readonly placeColumn?: string | null;
  readonly sink: ProblemSink;
}

/** The side that all places of the sheet are on, else both. */
function scopeOf(placements: readonly Placement[], rowByKey: ReadonlyMap<string, SheetSlot>): PlacementScope {
  const sides = new Set<Placement['side']>();
  for (const { designator, side } of placements) if (rowByKey.has(designatorKey(designator))) sides.add(side);
  const [only] = sides;
  return sides.size === 1 && only !== undefined ? only : 'both';
}

function rowsByKey(
  slots: readonly SheetSlot[],
  { sink, placeColumn = null }: PlaceOptions,
): ReadonlyMap<string, SheetSlot> {
  const rowByKey = new Map<string, SheetSlot>();
  for (const slot of slots) {
    for (const designator of slot.designators) {
      const key = designatorKey(designator);
      const first = rowByKey.get(key);
      if (first === undefined) rowByKey.set(key, slot);
      else if (first !== slot && slot.sharing !== 'inTurn')
        sink.add(
          'sheetDesignatorTwice',
          { row: slot.row, column: placeColumn },
          { designator, first: first.row },
        );
    }
  }
  return rowByKey;
}

/** Counts placements at each row's designators; problems go to the sink. */
export function joinByPlace(
  slots: readonly SheetSlot[],
  all: PlacementReading,
  options: PlaceOptions,
): UsageByPlace {
  const { sink, boards } = options;
  const rowByKey = rowsByKey(slots, options);
  const scope = options.side ?? scopeOf(all.placements, rowByKey);
  const countByRow = new Map<number, number>();
  const placed = new Set<string>();
  const rest: Placement[] = [];
  for (const placement of all.placements) {
    const key = designatorKey(placement.designator);
    const slot = rowByKey.get(key);
    if (slot === undefined) {
      if (scope === 'both' || placement.side === scope) rest.push(placement);
      continue;
    }
    placed.add(key);
    if (scope === 'both' || placement.side === scope)
      countByRow.set(slot.row, (countByRow.get(slot.row) ?? 0) + 1);
    tellPart(placement, slot, options);
  }
  const named: SheetSlot[] = [];
  const others: SheetSlot[] = [];
  for (const slot of slots) {
    if (slot.designators.length === 0) others.push(slot);
    else named.push(fillRow(slot, { count: (countByRow.get(slot.row) ?? 0) * boards, placed }, options));
  }
  return {
    named,
    others,
    rest: {
      ...all,
      placements: leftByPart(rest, others, sink),
      parts: totalsOf(leftByPart(rest, others, null)),
    },
    scope,
  };
}

/** Placements that no row names and whose part has a row without designators; the others are told. */
function leftByPart(
  rest: readonly Placement[],
  others: readonly SheetSlot[],
  sink: ProblemSink | null,
): readonly Placement[] {
  const parts = new Set(
    others.flatMap(({ part, alternates }) => [part, ...alternates]).map((part) => part.toUpperCase()),
  );
  return rest.filter((placement) => {
    const isLeft = parts.has(placement.part.toUpperCase());
    if (!isLeft) {
      const { designator, row, part } = placement;
      sink?.add(
        'designatorWithoutSlot',
        { row: null },
        { designator: designator || '(none)', first: row, part },
      );
    }
    return isLeft;
  });
}

function tellPart(placement: Placement, slot: SheetSlot, { sink, placeColumn = null }: PlaceOptions): void {
  if (placement.isNamedByValue || placement.part === '') return;
  const known = [slot.part, ...slot.alternates, ...slot.supplierParts].map((part) => part.toUpperCase());
  if (known.includes(placement.part.toUpperCase())) return;
  const facts = { designator: placement.designator, found: slot.part, wanted: placement.part };
  sink.add('sheetPartDiffers', { row: slot.row, column: placeColumn }, facts);
}

function fillRow(
  slot: SheetSlot,
  found: { readonly count: number; readonly placed: ReadonlySet<string> },
  options: PlaceOptions,
): SheetSlot {
  const { sink, column, placeColumn = null } = options;
  for (const designator of slot.designators) {
    if (!found.placed.has(designatorKey(designator)))
      sink.add('sheetDesignatorNotPlaced', { row: slot.row, column: placeColumn }, { designator });
  }
  if (slot.perPanel === null) return { ...slot, perPanel: found.count };
  if (slot.perPanel !== found.count)
    sink.add(
      'usageDisagrees',
      { row: slot.row, column },
      { part: slot.part, found: slot.perPanel, wanted: found.count },
    );
  return slot;
}
