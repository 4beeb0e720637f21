// A counter's file against the reels that the log knows: which counts can be taken over, and why others cannot.

import { reelOf } from '../../../../../shared/floor/gone-reels.ts';
import type { DraftEntry } from '../../../../../shared/floor/kinds.ts';
import type { FloorState } from '../../../../../shared/floor/state.ts';
import type { ReelRow } from '../../../../../shared/sheet/reel-counts.ts';

/** What becomes of a row: it is counted, says what the log says already, or is left out for a reason. */
export const countStates = ['counted', 'differs', 'loaded', 'unknown', 'same'] as const;
export type CountState = (typeof countStates)[number];

/** A row with what becomes of it. */
export interface CountedRow extends ReelRow {
  readonly is: CountState;
  /** What the log thought, parts; null where nobody knew. */
  readonly before: number | null;
}

function stateOf(floor: FloorState, row: ReelRow): CountState {
  const reel = reelOf(floor, row.reel);
  if (reel === undefined) return 'unknown';
  // On the line panels are built from it meanwhile: only a count there says which panel it was.
  if (reel.at !== null) return 'loaded';
  // The file may call the part by the plant's number or by its maker's.
  const names = [reel.part, reel.supplierPart].filter((name) => name !== null);
  if (row.part !== '' && names.length > 0 && !names.includes(row.part)) return 'differs';
  if (row.lot !== '' && reel.lot !== null && row.lot !== reel.lot) return 'differs';
  return reel.count === row.count && reel.basis === 'machine' ? 'same' : 'counted';
}

/** The rows of a counter's file, those that change something first, then those to look at, each in the order of the file. */
export function countedRows(floor: FloorState, rows: readonly ReelRow[]): readonly CountedRow[] {
  const all = rows.map((row) => ({
    ...row,
    is: stateOf(floor, row),
    before: reelOf(floor, row.reel)?.count ?? null,
  }));
  return countStates.flatMap((state) => all.filter(({ is }) => is === state));
}

/** The entries that take the counts over: each reel as counted by a machine. A counter's own error is not told by its file: none is claimed. */
export function countEntries(floor: FloorState, rows: readonly CountedRow[]): readonly DraftEntry[] {
  return rows.flatMap(({ is, reel, count }): readonly DraftEntry[] => {
    const known = reelOf(floor, reel);
    if (is !== 'counted' || known === undefined) return [];
    const { part, lot } = known;
    const facts = { line: null, slot: null, reel, part, lot, panels: 0 };
    return [{ kind: 'reel.counted', payload: { ...facts, quantity: count, sd: 0, basis: 'machine' } }];
  });
}
