// How many placements per panel does each slot serve, by the placement file, and does the sheet agree?
// Method: placements are summed by part (an alternate that has no slot of its own counts for the part it stands in for), for one side or
// both; a part's slots share its sum. A slot list is for one side, a placement file often holds both, so where the side is not
// stated it is the scope that agrees best with the sheet. Disagreement is a warning: the sheet's own entry stands; only a placed part that
// has no slot at all is an error.

import type { PlacementReading, PlacementTotal } from './placements.ts';
import type { ProblemSink } from './problems.ts';
import { type PlacementScope, placementScopes } from './scope.ts';
import { statedUsage } from './sharing.ts';
import type { SheetSlot } from './slot.ts';
import { joinByPlace } from './usage-by-place.ts';

/** Placements of one part inside a scope. */
export function placementsOf(total: PlacementTotal, scope: PlacementScope): number {
  return scope === 'both' ? total.top + total.bottom : total[scope];
}

interface PartUsage {
  /** Placements per panel by the file. */
  placed: number;
  readonly slots: SheetSlot[];
}

/** The parts of the sheet with their slots, each part's key in capitals. */
function partsOf(slots: readonly SheetSlot[]): Map<string, PartUsage> {
  const usageByPart = new Map<string, PartUsage>();
  for (const slot of slots) {
    const usage = usageByPart.get(slot.part.toUpperCase());
    if (usage) usage.slots.push(slot);
    else usageByPart.set(slot.part.toUpperCase(), { placed: 0, slots: [slot] });
  }
  return usageByPart;
}

function addPlacements(
  slots: readonly SheetSlot[],
  totals: readonly PlacementTotal[],
  counting: { readonly scope: PlacementScope; readonly boards: number },
) {
  const usageByPart = partsOf(slots);
  const partByAlternate = new Map<string, string>();
  for (const slot of slots) {
    for (const alternate of slot.alternates)
      partByAlternate.set(alternate.toUpperCase(), slot.part.toUpperCase());
  }
  const withoutSlot: { total: PlacementTotal; count: number }[] = [];
  for (const total of totals) {
    const count = placementsOf(total, counting.scope) * counting.boards;
    const key = total.part.toUpperCase();
    const usage = usageByPart.get(key) ?? usageByPart.get(partByAlternate.get(key) ?? '');
    if (usage) usage.placed += count;
    else if (count > 0) withoutSlot.push({ total, count });
  }
  return { usageByPart, withoutSlot };
}

/** The scope that agrees best: most parts with the same usage, then fewest parts that only one of the two names; both before one side. */
function bestScope(
  slots: readonly SheetSlot[],
  placements: PlacementReading,
  boards: number,
): PlacementScope {
  const sides = new Set(slots.map((slot) => slot.side));
  const [only] = sides;
  if (sides.size === 1 && only) return only;
  if (sides.size > 1) return 'both';
  let best: PlacementScope = 'both';
  let bestScore = Number.NEGATIVE_INFINITY;
  for (const scope of placementScopes) {
    const { usageByPart, withoutSlot } = addPlacements(slots, placements.parts, { scope, boards });
    let score = -withoutSlot.length;
    for (const usage of usageByPart.values()) {
      if (usage.placed === 0) score -= 1;
      else if (usage.placed === statedUsage(usage.slots)) score += 3;
    }
    if (score > bestScore) {
      bestScore = score;
      best = scope;
    }
  }
  return best;
}

/** Fills what the sheet lacks for one part, or says why it cannot. */
function fillPart(usage: PartUsage, column: string | null, sink: ProblemSink): readonly SheetSlot[] {
  const { slots, placed } = usage;
  const [first] = slots;
  const part = first?.part ?? '';
  const place = { row: first?.row ?? null, column };
  const open = slots.filter((slot) => slot.perPanel === null);
  const stated = statedUsage(slots.map((slot) => ({ ...slot, perPanel: slot.perPanel ?? 0 }))) ?? 0;
  if (placed === 0) {
    if (open.length > 0 || stated > 0) sink.add('partNotPlaced', place, { part });
    return slots;
  }
  const isInTurn = open.length > 0 && open.every(({ sharing }) => sharing === 'inTurn');
  if ((open.length === 1 || isInTurn) && placed > stated) {
    return slots.map((slot) => (slot.perPanel === null ? { ...slot, perPanel: placed - stated } : slot));
  }
  if (open.length > 1 && placed > stated) {
    sink.add('usageSplitUnknown', place, { part, wanted: placed - stated, found: open.length });
  } else if (placed !== stated || open.length > 0) {
    sink.add('usageDisagrees', place, { part, found: stated, wanted: placed });
  }
  return slots;
}

/** The whole ratio of sheet to file that holds for every part (three or more), or null. */
function commonRatio(usages: Iterable<PartUsage>): number | null {
  let ratio: number | null = null;
  let parts = 0;
  for (const usage of usages) {
    const stated = statedUsage(usage.slots);
    if (stated === null || usage.placed === 0) return null;
    const found = stated / usage.placed;
    if (!Number.isInteger(found) || found < 2 || (ratio !== null && found !== ratio)) return null;
    ratio = found;
    parts++;
  }
  return parts >= 3 ? ratio : null;
}

/** How usage is to be joined, and where problems go. */
export interface UsageOptions {
  /** Which placements count; else the sheet's own side column, else the scope that agrees best. */
  readonly side?: PlacementScope;
  /** Multiplies the file's counts; default 1. */
  readonly boardsPerPanel?: number;
  /** The header of the sheet's column for placements per panel. */
  readonly column: string | null;
  /** The header of the sheet's column of designators. */
  readonly placeColumn?: string | null;
  readonly sink: ProblemSink;
}

/**
 * Supplies placements per panel that the sheet lacks and compares those that it states; rows that name designators are joined by them, the others by
 * part. Problems go to the sink.
 */
export function joinUsage(
  given: readonly SheetSlot[],
  all: PlacementReading,
  options: UsageOptions,
): { readonly slots: readonly SheetSlot[]; readonly scope: PlacementScope } {
  const { column, sink } = options;
  const boards = options.boardsPerPanel ?? 1;
  const byPlace = given.some(({ designators }) => designators.length > 0)
    ? joinByPlace(given, all, { ...options, boards })
    : null;
  const slots = byPlace?.others ?? given;
  const placements = byPlace?.rest ?? all;
  const scope = byPlace?.scope ?? options.side ?? bestScope(slots, placements, boards);
  const { usageByPart, withoutSlot } = addPlacements(slots, placements.parts, { scope, boards });
  const filledByRow = new Map<number, SheetSlot>((byPlace?.named ?? []).map((slot) => [slot.row, slot]));
  for (const usage of usageByPart.values()) {
    for (const slot of fillPart(usage, column, sink)) filledByRow.set(slot.row, slot);
  }
  for (const { total, count } of withoutSlot) {
    sink.add('partWithoutSlot', { row: null }, { part: total.part, found: count, first: total.firstRow });
  }
  const ratio = commonRatio(usageByPart.values());
  if (ratio !== null) sink.add('usageRatio', { row: null, column }, { ratio });
  return { slots: given.map((slot) => filledByRow.get(slot.row) ?? slot), scope };
}
