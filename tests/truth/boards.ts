// Panels of several boards: which of them a slot serves, which are marked bad and get nothing, and what a count says of it.

import { type Chance, chanceBelow } from '../../shared/kit/chance.ts';
import type { Panel } from './belt.ts';

const between = (chance: Chance, low: number, high: number) => low + chanceBelow(chance, high - low + 1);

/**
 * The board of each placement of a slot: as many on each board, or on some of them only. `isOdd`: not a multiple of the boards, so that
 * a setup tells that its boards are not one product; `isHidden`: a multiple of them all the same, so that no setup tells.
 */
export function usedBoards(
  chance: Chance,
  boards: number,
  how: { readonly isAlike: boolean; readonly isOdd: boolean; readonly isHidden: boolean },
): readonly number[] {
  if (how.isAlike && boards > 1) {
    const each = between(chance, 1, Math.max(1, Math.floor(12 / boards)));
    return Array.from({ length: each * boards }, (_, at) => 1 + (at % boards));
  }
  const some = Array.from({ length: between(chance, 1, boards) }, () => between(chance, 1, boards));
  const used = Array.from(
    { length: between(chance, 1, 12) },
    () => some[chanceBelow(chance, some.length)] ?? 1,
  );
  if (how.isHidden) {
    const all = boards * Math.max(1, Math.floor(12 / boards / 2));
    return Array.from({ length: all }, () => some[chanceBelow(chance, some.length)] ?? 1);
  }
  return how.isOdd && boards > 1 && used.length % boards === 0 ? [...used, used[0] ?? 1] : used;
}

/** Boards of a panel that are marked bad; one at least is built. */
export function skippedBoards(chance: Chance, boards: number, share: number): ReadonlySet<number> {
  const skipped = new Set<number>();
  if (boards === 1) return skipped;
  const built = between(chance, 1, boards);
  for (let board = 1; board <= boards; board++) if (board !== built && chance() < share) skipped.add(board);
  return skipped;
}

/** What a count says of skipped boards: how many, which, or nothing. `says`: the share of counts that say anything. */
export function saidSkips(
  { chance, boards, says }: { readonly chance: Chance; readonly boards: number; readonly says: number },
  panels: readonly (Panel | null)[],
): object {
  if (boards === 1 || chance() >= says) return {};
  const [only, ...others] = panels;
  if (others.length === 0 && chance() < 0.5) return { skipped: [...(only?.skipped ?? [])] };
  return { skipped: panels.reduce((sum, panel) => sum + (panel?.skipped.size ?? 0), 0) };
}
