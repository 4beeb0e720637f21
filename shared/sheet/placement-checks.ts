// What does not add up between the placements of a file: designators twice, one part in several packages?
// Method: a file of a panel names every designator as often as it has boards; where only some stand twice, the later ones are told and not counted.
// Parts that are named by their value are told apart by their package, since a value alone is no part.

import { designatorKey } from './designators.ts';
import type { Placement } from './placements.ts';
import type { ProblemSink } from './problems.ts';

/** How many times most designators stand in the file: the boards of its panel; 1 where they do not agree. */
function boardsOf(timesByKey: ReadonlyMap<string, number>): number {
  const designatorsByTimes = new Map<number, number>();
  for (const times of timesByKey.values())
    designatorsByTimes.set(times, (designatorsByTimes.get(times) ?? 0) + 1);
  for (const [times, count] of designatorsByTimes)
    if (times > 1 && count >= timesByKey.size * 0.6) return times;
  return 1;
}

/**
 * Takes out what stands twice at one place, and what repeats a designator that others of the file do not repeat. `column`: the header of the
 * designators' column.
 */
export function dropDoubled(
  placements: readonly Placement[],
  column: string | null,
  sink: ProblemSink,
): {
  readonly placements: readonly Placement[];
  readonly doubled: readonly Placement[];
  readonly boards: number;
} {
  const firstByPlace = new Map<string, Placement>();
  const doubled: Placement[] = [];
  const apart: Placement[] = [];
  for (const placement of placements) {
    const { designator, side, x, y, row } = placement;
    const place = `${designatorKey(designator)}\u0000${side}\u0000${x}\u0000${y}`;
    const first = designator === '' || x === null || y === null ? undefined : firstByPlace.get(place);
    if (first === undefined) {
      if (x !== null && y !== null) firstByPlace.set(place, placement);
      apart.push(placement);
      continue;
    }
    sink.add('placementTwice', { row, column }, { designator, first: first.row });
    doubled.push(placement);
  }
  const timesByKey = new Map<string, number>();
  const keyed = apart.filter(({ designator }) => designator !== '');
  for (const { designator } of keyed) {
    const key = designatorKey(designator);
    timesByKey.set(key, (timesByKey.get(key) ?? 0) + 1);
  }
  const boards = boardsOf(timesByKey);
  const seen = new Map<string, { times: number; readonly row: number }>();
  const kept = apart.filter((placement) => {
    if (placement.designator === '') return true;
    const key = designatorKey(placement.designator);
    const known = seen.get(key);
    if (known === undefined) seen.set(key, { times: 1, row: placement.row });
    else if (++known.times > boards) {
      sink.add(
        'designatorTwice',
        { row: placement.row, column },
        { designator: placement.designator, first: known.row },
      );
      doubled.push(placement);
      return false;
    }
    return true;
  });
  for (const [key, { times, row }] of seen) {
    if (times < boards)
      sink.add('designatorSeldom', { row, column }, { designator: key, found: times, wanted: boards });
  }
  return { placements: kept, doubled, boards };
}

/**
 * Names parts by value and package where a value comes in several packages, and tells what cannot be told apart. `column`: the header of
 * the packages' column.
 */
export function checkPackages(
  placements: readonly Placement[],
  column: string | null,
  sink: ProblemSink,
): readonly Placement[] {
  if (placements.every((placement) => placement.package === '')) return placements;
  const firstByPart = new Map<string, Map<string, Placement>>();
  for (const placement of placements) {
    const key = `${placement.isNamedByValue ? 'v' : 'p'}${placement.part.toUpperCase()}`;
    const byPackage = firstByPart.get(key) ?? new Map<string, Placement>();
    firstByPart.set(key, byPackage);
    const name = placement.package.toUpperCase();
    if (!byPackage.has(name)) byPackage.set(name, placement);
  }
  const several = new Set<string>();
  for (const [key, byPackage] of firstByPart)
    tellPackages({ isValue: key.startsWith('v'), key, column }, byPackage, several, sink);
  return placements.map((placement) =>
    several.has(`v${placement.part.toUpperCase()}`) && placement.isNamedByValue && placement.package !== ''
      ? { ...placement, part: `${placement.part} ${placement.package}` }
      : placement,
  );
}

function tellPackages(
  part: { readonly isValue: boolean; readonly key: string; readonly column: string | null },
  byPackage: ReadonlyMap<string, Placement>,
  several: Set<string>,
  sink: ProblemSink,
): void {
  const { isValue, key, column } = part;
  const named = [...byPackage].filter(([name]) => name !== '').map(([, placement]) => placement);
  const bare = byPackage.get('');
  if (isValue && bare !== undefined)
    sink.add(
      'valueWithoutPackage',
      { row: bare.row, column },
      { part: bare.part, designator: bare.designator },
    );
  const [first, ...others] = named;
  if (first === undefined || others.length === 0) return;
  if (isValue) several.add(key);
  for (const other of others) {
    const code = isValue ? 'valueInPackages' : 'partInPackages';
    sink.add(
      code,
      { row: other.row, column },
      { part: other.part, found: other.package, wanted: first.package, first: first.row },
    );
  }
}
